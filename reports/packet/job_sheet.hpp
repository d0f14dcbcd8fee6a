#pragma once

#include <string>
#include <vector>

#include "core/geometry/area.hpp"
#include "reports/packet/calibration_sheet.hpp"
#include "reports/packet/common.hpp"
#include "reports/packet/computed.hpp"
#include "reports/packet/crew_sheet.hpp"
#include "reports/packet/mixing_card.hpp"
#include "reports/packet/tip_sheet.hpp"

namespace swathbook::reports {

using ComputedArea = Computed<geometry::AreaRequest, geometry::AreaAnswer>;

/// What a person typed about the job. What is empty prints as a line to write on.
struct JobText {
    std::string name{};
    std::string place{};
    std::string customer{};
    std::string target{};       ///< plants to control
    std::string planned_for{};  ///< date, as typed
    std::string operator_name{};
    std::string licence{};
    std::string supervised{};  ///< who works under the licence
};

/// What the job sheet is made from; pointers outlive the call.
struct JobParts {
    const JobText& job;
    const std::vector<ComputedArea>& areas;
    const std::vector<ComputedCalibration>& calibrations;
    const std::vector<ComputedLoads>& loads;
    const std::vector<ComputedTipCheck>& tip_checks;
    const std::vector<ComputedCrew>& crews;
};

/// For whoever is in charge on the ground: ground, sprayers, products and loads, the limits that
/// bind, what to check first, weather to write down, and the cautions where the act happens.
[[nodiscard]] Sheet job_sheet(const JobParts& parts, const Voice& voice);

/// The facts of the job, as they open the cover and the job sheet.
[[nodiscard]] Facts job_facts(const JobText& job, const Voice& voice);

}  // namespace swathbook::reports
