#include <fmt/format.h>

#include "api/each_operation.hpp"
#include "api/json/json.hpp"
#include "reports/packet/packet.hpp"

namespace swathbook::reports {
namespace {

/// Reads a request with the operation's own description, then asks core as the operation does, so
/// that the answer keeps its C++ type and its notes.
template <class Request, class Answer>
Result<Computed<Request, Answer>> compute(std::string name, const api::Operation& described,
                                          std::string_view text, UnitSystem units,
                                          Result<Answer> (*ask)(const Request&, Notes&)) {
    SWATHBOOK_TRY(body, api::parse_json(text));
    Computed<Request, Answer> computed;
    computed.name = std::move(name);
    SWATHBOOK_CHECK(api::detail::read_request(described.request(), body, &computed.request));
    computed.notes = Notes(units, true);
    SWATHBOOK_TRY(answer, ask(computed.request, computed.notes));
    computed.answer = std::move(answer);
    return computed;
}

template <class List, class Request, class Answer>
Result<void> add(List& list, std::string name, const api::Operation& operation,
                 std::string_view text, UnitSystem units,
                 Result<Answer> (*ask)(const Request&, Notes&)) {
    SWATHBOOK_TRY(computed, compute(std::move(name), operation, text, units, ask));
    list.push_back(std::move(computed));
    return {};
}

}  // namespace

Result<void> add_to_packet(PacketInput& packet, std::string name, std::string_view operation,
                           std::string_view request) {
    const UnitSystem units = packet.units;
    if (operation == "area") {
        return add(packet.areas, std::move(name), api::area_operation(), request, units,
                   &geometry::area);
    }
    if (operation == "calibrate") {
        return add(packet.calibrations, std::move(name), api::calibrate_operation(), request, units,
                   &calibration::calibrate);
    }
    if (operation == "tip-check") {
        return add(packet.tip_checks, std::move(name), api::tip_check_operation(), request, units,
                   &job::tip_check);
    }
    if (operation == "crew") {
        return add(packet.crews, std::move(name), api::crew_operation(), request, units,
                   &calibration::crew);
    }
    if (operation == "loads") {
        return add(packet.loads, std::move(name), api::loads_operation(), request, units,
                   &mix::loads);
    }
    if (operation == "record-check") {
        SWATHBOOK_TRY(computed, compute(std::move(name), api::record_check_operation(), request,
                                        units, &notebook::record_check));
        packet.record = std::move(computed);
        return {};
    }
    return fail(
        ErrorCode::unsupported, "operation",
        fmt::format(
            "\"{}\" has no sheet in a packet. Those that have: area, calibrate, crew, loads, "
            "record-check, tip-check.",
            operation));
}

}  // namespace swathbook::reports
