#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "reports/packet/calibration_sheet.hpp"
#include "reports/packet/crew_sheet.hpp"
#include "reports/packet/job_sheet.hpp"
#include "reports/packet/mixing_card.hpp"
#include "reports/packet/record_form.hpp"
#include "reports/packet/tip_sheet.hpp"

namespace swathbook::reports {

/// Everything a printed packet is made from. What is empty leaves its sheet out; the cover and the
/// job sheet are always there.
struct PacketInput {
    JobText job{};
    std::vector<ComputedArea> areas{};
    std::vector<ComputedCalibration> calibrations{};
    std::vector<ComputedTipCheck> tip_checks{};
    std::vector<ComputedCrew> crews{};
    std::vector<ComputedLoads> loads{};
    std::optional<ComputedRecordCheck> record{};
    std::vector<RecordValue> record_values{};

    Language language = Language::english;  ///< mixing cards carry both whatever this says
    UnitSystem units = UnitSystem::us;
    PaperSize paper = PaperSize::letter;
    std::string printed_at{};  ///< RFC 3339, "2031-05-14T06:30:00Z"; never taken from a clock here
    std::string notebook{};    ///< id, as the footer shows it
    std::string model_version{};
};

/// The packet as a document, before it is laid out.
[[nodiscard]] Result<Document> packet_document(const PacketInput& input);

/// The packet as the bytes of a PDF. Writes no file.
///
/// @errors invalid_input{printed_at} when it is no RFC 3339 date and time; unavailable without
/// fonts
/// @cases  tests/unit/reports/packet_test.cpp on the demo scenario in data/demo/
[[nodiscard]] Result<std::string> packet_pdf(const PacketInput& input);

/// Answers a request of one of the packet's operations and adds it to the packet: "area",
/// "calibrate", "tip-check", "crew", "loads" or "record-check". The working is always made, and the
/// units are the packet's. A second record-check takes the place of the first.
///
/// @param name    the user's word for what the request is about
/// @param request JSON as `swathbook compute` takes it
/// @errors those of the operation; unsupported when the operation has no sheet
[[nodiscard]] Result<void> add_to_packet(PacketInput& packet, std::string name,
                                         std::string_view operation, std::string_view request);

}  // namespace swathbook::reports
