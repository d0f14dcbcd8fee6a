#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/calibration/detail/measured.hpp"
#include "core/calibration/entry_limits.hpp"

namespace swathbook::calibration::detail {
namespace {

constexpr std::size_t most_repeats = 1000;
constexpr int most_tips = 400;

Result<void> check_widths(const CalibrateRequest& request, const Notes& notes) {
    SWATHBOOK_CHECK(within(request.width, width_limits, "width", "Width", notes));
    SWATHBOOK_CHECK(
        within(request.wetted_width, width_limits, "wetted_width", "Wetted width", notes));
    SWATHBOOK_CHECK(within(request.spacing, width_limits, "spacing", "Tip spacing", notes));
    SWATHBOOK_CHECK(within(request.band_width, width_limits, "band_width", "Band width", notes));
    SWATHBOOK_CHECK(within(request.row_spacing, width_limits, "row_spacing", "Row spacing", notes));
    if (request.tips && (*request.tips < 1 || *request.tips > most_tips)) {
        return fail(ErrorCode::out_of_range, "tips",
                    fmt::format("The number of tips is {}. It must be from 1 to {}.", *request.tips,
                                most_tips));
    }
    return {};
}

Result<void> check_catch(const Catch& one, std::size_t index, const Notes& notes) {
    // The path is written only when something is wrong: this runs for every catch.
    const auto path = [index](const char* member) {
        return fmt::format("catches[{}]{}", index, member);
    };
    if (one.amount && one.weight) {
        return fail(ErrorCode::inconsistent, path(""),
                    "This catch has both an amount and a weight. Enter the one that was measured.");
    }
    if (!one.amount && !one.weight) {
        return fail(ErrorCode::invalid_input, path(".amount"),
                    "This catch has no amount. Enter what the jug showed (\"46 fl oz\") or what "
                    "the scale showed as weight (\"1.36 kg\").");
    }
    const auto named = [&path](Result<void> result, const char* member) -> Result<void> {
        if (!result) {
            result.error().field = path(member);
        }
        return result;
    };
    SWATHBOOK_CHECK(named(within(one.amount, catch_limits, "", "Amount caught", notes), ".amount"));
    SWATHBOOK_CHECK(
        named(within(one.weight, catch_weight_limits, "", "Weight caught", notes), ".weight"));
    return named(within(one.time, run_time_limits, "", "Catch time", notes), ".time");
}

Result<void> check_repeats(const CalibrateRequest& request, const Notes& notes) {
    if (request.course_times.size() > most_repeats || request.catches.size() > most_repeats) {
        return fail(ErrorCode::out_of_range,
                    request.catches.size() > most_repeats ? "catches" : "course_times",
                    fmt::format("More than {} repeats were entered. That is a data file, not a "
                                "calibration; split it.",
                                most_repeats));
    }
    for (std::size_t i = 0; i < request.course_times.size(); ++i) {
        auto checked = within(request.course_times[i], run_time_limits, "", "Course time", notes);
        if (!checked) {
            checked.error().field = fmt::format("course_times[{}]", i);
            return checked;
        }
    }
    for (std::size_t i = 0; i < request.catches.size(); ++i) {
        SWATHBOOK_CHECK(check_catch(request.catches[i], i, notes));
    }
    return {};
}

Result<void> check_single_values(const CalibrateRequest& request, const Notes& notes) {
    SWATHBOOK_CHECK(within(request.course_length, course_length_limits, "course_length",
                           "Course length", notes));
    SWATHBOOK_CHECK(within(request.speed, speed_limits, "speed", "Speed", notes));
    SWATHBOOK_CHECK(within(request.flow, flow_limits, "flow", "Flow", notes));
    SWATHBOOK_CHECK(within(request.refill, catch_limits, "refill", "Refill", notes));
    SWATHBOOK_CHECK(within(request.area, area_limits, "area", "Area", notes));
    SWATHBOOK_CHECK(within(request.tank_volume, tank_limits, "tank_volume", "Tank volume", notes));
    SWATHBOOK_CHECK(within(request.carrier_density, density_limits, "carrier_density",
                           "Carrier density", notes));
    return within(request.believed_output, output_limits, "believed_output", "Believed output",
                  notes);
}

Result<void> check_tolerances(const CalibrateRequest& request, const Notes& notes) {
    SWATHBOOK_CHECK(
        within(request.timing_slip, slip_limits, "timing_slip", "Stopwatch slip", notes));
    SWATHBOOK_CHECK(within(request.length_tolerance, tolerance_limits, "length_tolerance",
                           "Length tolerance", notes));
    SWATHBOOK_CHECK(within(request.width_tolerance, tolerance_limits, "width_tolerance",
                           "Width tolerance", notes));
    SWATHBOOK_CHECK(within(request.volume_tolerance, tolerance_limits, "volume_tolerance",
                           "Volume tolerance", notes));
    SWATHBOOK_CHECK(within(request.speed_tolerance, tolerance_limits, "speed_tolerance",
                           "Speed tolerance", notes));
    return within(request.mark_tolerance, catch_limits, "mark_tolerance", "Mark tolerance", notes);
}

Result<void> check_beliefs(const CalibrateRequest& request, const Notes& notes) {
    if (request.assumed) {
        SWATHBOOK_CHECK(
            within(request.assumed->width, width_limits, "assumed.width", "Assumed width", notes));
        SWATHBOOK_CHECK(
            within(request.assumed->speed, speed_limits, "assumed.speed", "Assumed speed", notes));
    }
    if (request.hand) {
        SWATHBOOK_CHECK(
            within(request.hand->output, output_limits, "hand.output", "Hand answer", notes));
        SWATHBOOK_CHECK(
            within(request.hand->speed, speed_limits, "hand.speed", "Hand speed", notes));
        SWATHBOOK_CHECK(within(request.hand->flow, flow_limits, "hand.flow", "Hand flow", notes));
        SWATHBOOK_CHECK(
            within(request.hand->width, width_limits, "hand.width", "Hand width", notes));
        SWATHBOOK_CHECK(within(request.hand->area, area_limits, "hand.area", "Hand area", notes));
    }
    if (request.speed_swings.size() > most_repeats) {
        return fail(ErrorCode::out_of_range, "speed_swings",
                    fmt::format("More than {} stretches were entered. Join those of nearly the "
                                "same speed.",
                                most_repeats));
    }
    for (std::size_t i = 0; i < request.speed_swings.size(); ++i) {
        const SpeedShare& share = request.speed_swings[i];
        auto checked = within(share.speed, speed_limits, "", "Speed", notes);
        if (!checked) {
            checked.error().field = fmt::format("speed_swings[{}].speed", i);
            return checked;
        }
        if (!std::isfinite(share.parts) || share.parts <= 0.0 || share.parts > 1e6) {
            return fail(ErrorCode::out_of_range, fmt::format("speed_swings[{}].parts", i),
                        fmt::format("The share of the distance is {}. It must be above zero; parts "
                                    "are compared with each other, so 1 and 1 is half and half.",
                                    share.parts));
        }
    }
    return {};
}

/// What came out was measured in one way: two ways could contradict each other unseen.
Result<void> check_one_measurement(const CalibrateRequest& request) {
    const int ways =
        (request.refill ? 1 : 0) + (request.flow ? 1 : 0) + (request.catches.empty() ? 0 : 1);
    if (ways > 1) {
        return fail(ErrorCode::inconsistent, request.refill ? "refill" : "flow",
                    "More than one of catches, flow and refill was entered. Enter the one that was "
                    "measured, and calibrate again for another.");
    }
    const bool weighed = std::ranges::any_of(
        request.catches, [](const Catch& one) { return one.weight.has_value(); });
    if (weighed && request.caught == CarrierCaught::solution && !request.carrier_density) {
        return fail(ErrorCode::invalid_input, "carrier_density",
                    "The liquid of the job was caught on a scale, and its density is missing. "
                    "Enter it (\"10.65 lb/gal\"), or catch water.");
    }
    return {};
}

}  // namespace

double slip_of(const CalibrateRequest& request) {
    return request.timing_slip ? request.timing_slip->value.si() : usual_slip_s;
}

Result<void> check_entries(const CalibrateRequest& request, const Notes& notes) {
    SWATHBOOK_CHECK(check_widths(request, notes));
    SWATHBOOK_CHECK(check_single_values(request, notes));
    SWATHBOOK_CHECK(check_repeats(request, notes));
    SWATHBOOK_CHECK(check_tolerances(request, notes));
    SWATHBOOK_CHECK(check_one_measurement(request));
    return check_beliefs(request, notes);
}

Result<CalibrationMethod> method_of(const CalibrateRequest& request) {
    if (request.method) {
        return *request.method;
    }
    if (request.refill) {
        return CalibrationMethod::refill;
    }
    if (request.flow) {
        return CalibrationMethod::flow_and_speed;
    }
    if (request.catches.empty()) {
        return fail(ErrorCode::invalid_input, "catches",
                    "Nothing was caught. Enter catches, a flow, or the refill of a known area.");
    }
    if (request.course_length) {
        return CalibrationMethod::course_and_catch;
    }
    if (request.speed) {
        return CalibrationMethod::flow_and_speed;
    }
    if (request.area) {
        return CalibrationMethod::timed_plot;
    }
    return fail(ErrorCode::invalid_input, "course_length",
                "The ground is missing. Enter the length of the course (and the width), the speed, "
                "or the area of the plot.");
}

}  // namespace swathbook::calibration::detail
