#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/calibration/detail/closeness.hpp"
#include "core/calibration/detail/measured.hpp"
#include "core/calibration/entry_limits.hpp"
#include "core/calibration/repeats.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::calibration::detail {
namespace {

constexpr double eighty_percent = 0.8;
constexpr double eighty_percent_tolerance = 0.10;
/// A speed meter on a test bench is passed within 5 % (see docs/methods/calibration.md).
constexpr double speed_meter_limit = 0.05;

template <Kind K>
double relative_half_step(const Reading<K>& reading) {
    return reading.half_step_si / reading.value.si();
}
double tolerance_or(const std::optional<Reading<Kind::fraction>>& entered, double usual) {
    return entered ? entered->value.si() : usual;
}

double usual_width_tolerance(SprayerKind sprayer) {
    switch (sprayer) {
        case SprayerKind::boom: return 0.005;
        case SprayerKind::band: return 0.02;
        case SprayerKind::boomless:
        case SprayerKind::backpack:
        case SprayerKind::handgun: return 0.04;
    }
    return 0.04;
}

struct Width {
    double si = 0.0;
    double limit = 0.0;  ///< relative
};

Width entered_width(const CalibrateRequest& request, const Reading<Kind::length>& reading) {
    return {reading.value.si(),
            std::max(closeness_of(reading), tolerance_or(request.width_tolerance,
                                                         usual_width_tolerance(request.sprayer)))};
}

Result<void> check_wetted(const CalibrateRequest& request, const Notes& notes) {
    if (request.width && request.wetted_width &&
        request.width->value > request.wetted_width->value * 1.000001) {
        return fail(ErrorCode::inconsistent, "width",
                    fmt::format("The effective width {} is wider than the wetted width {}. "
                                "Effective is the part that counts, never more than was wetted.",
                                show(*request.width, notes.units()),
                                show(*request.wetted_width, notes.units())));
    }
    return {};
}

Width width_by_80_percent(const CalibrateRequest& request, Notes& notes) {
    const double wetted = request.wetted_width->value.si();
    const Width width{eighty_percent * wetted,
                      tolerance_or(request.width_tolerance, eighty_percent_tolerance)};
    notes.find(Severity::advice, "width_by_80_percent_rule",
               fmt::format("No effective width was entered: 80 % of the wetted {} is {}. The rule "
                           "holds only for edges that taper over a fifth of the width; the overlap "
                           "that is driven decides.",
                           show(*request.wetted_width, notes.units()),
                           show(Length::from_si(width.si), notes.units())),
               "LSU AgCenter; University of Kentucky ENTFACT-805");
    return width;
}

/// Width of the ground that the caught spray falls on; 0 when none was entered.
Result<Width> width_of(const CalibrateRequest& request, const TipPlan& plan, Notes& notes) {
    SWATHBOOK_CHECK(check_wetted(request, notes));
    if (request.sprayer == SprayerKind::band) {
        const auto& reading = request.band_width ? request.band_width : request.width;
        if (reading) {
            return entered_width(request, *reading);
        }
        return request.row_spacing ? entered_width(request, *request.row_spacing) : Width{};
    }
    if (request.width) {
        return entered_width(request, *request.width);
    }
    if (request.spacing) {
        Width width = entered_width(request, *request.spacing);
        width.si *= plan.tips;
        return width;
    }
    if (request.wetted_width) {
        return width_by_80_percent(request, notes);
    }
    return Width{};
}

tl::unexpected<Error> missing(const char* field, const char* text) {
    return fail(ErrorCode::invalid_input, field, text);
}

Result<void> time_the_course(const CalibrateRequest& request, Ground& ground, ErrorBudget& budget) {
    if (request.course_times.empty()) {
        return {};
    }
    std::vector<double> times;
    times.reserve(request.course_times.size());
    double half_steps = 0.0;
    for (const auto& time : request.course_times) {
        times.push_back(time.value.si());
        half_steps = std::max(half_steps, closeness_of_time(time));
    }
    const Repeats repeats = repeats_of(times);
    ground.course_time = repeats.mean;
    const double slip = slip_of(request);
    budget.add_scatter(ErrorSource::course_time, repeats.deviation / repeats.mean, repeats.count);
    budget.add_limit(ErrorSource::course_time,
                     std::sqrt(slip * slip + half_steps * half_steps) / repeats.mean,
                     repeats.count);
    return {};
}

Result<void> check_run_speed(const CalibrateRequest& request, Ground& ground, Notes& notes) {
    if (ground.length <= 0.0 || ground.course_time <= 0.0) {
        return {};
    }
    ground.speed = ground.length / ground.course_time;
    notes.show([&] {
        // 3600 s/h / 5280 ft/mi = 0.68182; 3600 s/h / 1000 m/km = 3.6.
        const bool us = notes.units() == UnitSystem::us;
        return Step{
            request.course_times.size() > 1 ? "Ground speed, from the mean time" : "Ground speed",
            fmt::format("{} / {} x {}", show(request.course_length->value, notes.units()),
                        show(Duration::from_si(ground.course_time), notes.units()),
                        us ? "0.68182" : "3.6"),
            show(Speed::from_si(ground.speed), notes.units())};
    });
    const auto run = [&] {
        return fmt::format("{} in {}", show(*request.course_length, notes.units()),
                           show(Duration::from_si(ground.course_time), notes.units()));
    };
    if (ground.speed > speed_limits.most || ground.speed < speed_limits.least) {
        return fail(ErrorCode::out_of_range, "course_times",
                    fmt::format("{} is {}. Sprayers work between {} and {}; check the length, and "
                                "minutes against seconds.",
                                run(), show(Speed::from_si(ground.speed), notes.units()),
                                show(Speed::from_si(speed_limits.least), notes.units()),
                                show(Speed::from_si(speed_limits.most), notes.units())));
    }
    if (request.speed &&
        std::fabs(request.speed->value.si() / ground.speed - 1.0) > speed_meter_limit) {
        notes.find(Severity::warning, "speed_meter_disagrees",
                   fmt::format("The meter said {}, the course says {} ({}). The course is used; "
                               "have the meter checked, or measure the course again.",
                               show(*request.speed, notes.units()),
                               show(Speed::from_si(ground.speed), notes.units()), run()));
    }
    return {};
}

/// Length of the course, or the plot's area, whichever was measured.
Result<void> measure_course(const CalibrateRequest& request, CalibrationMethod method,
                            const Width& width, Ground& ground, ErrorBudget& budget) {
    const double length_tolerance = tolerance_or(request.length_tolerance, usual_length_tolerance);
    const bool area_counts =
        method == CalibrationMethod::refill || method == CalibrationMethod::timed_plot;
    if (area_counts && request.area) {
        ground.area = request.area->value.si();
        budget.add_limit(ErrorSource::area,
                         std::max(closeness_of(*request.area), std::sqrt(2.0) * length_tolerance));
        return {};
    }
    if (width.si <= 0.0) {
        return missing(request.sprayer == SprayerKind::band ? "band_width" : "width",
                       "The width is missing. Enter the effective width served by the tips that "
                       "were caught (for a boom, the tip spacing will do).");
    }
    budget.add_limit(ErrorSource::width, width.limit);
    if (!request.course_length) {
        return {};
    }
    ground.length = request.course_length->value.si();
    ground.area = ground.length * ground.width;
    budget.add_limit(ErrorSource::course_length,
                     std::max(closeness_of(*request.course_length), length_tolerance));
    return {};
}

Result<void> need_ground(const CalibrateRequest& request, CalibrationMethod method,
                         const Ground& ground) {
    switch (method) {
        case CalibrationMethod::course_and_catch:
            if (ground.length <= 0.0) {
                return missing("course_length",
                               "The course length is missing. Enter the distance between the "
                               "stakes, such as \"113 ft\".");
            }
            return {};
        case CalibrationMethod::flow_and_speed:
            if (ground.speed <= 0.0) {
                return missing("speed",
                               "The speed is missing. Enter it, or the course length and the times "
                               "it took.");
            }
            return {};
        case CalibrationMethod::refill:
        case CalibrationMethod::timed_plot:
            if (ground.area <= 0.0) {
                return missing("area",
                               "The area is missing. Enter it, or its width and course length.");
            }
            if (method == CalibrationMethod::timed_plot && request.course_times.empty()) {
                return missing(
                    "course_times",
                    "The time it took to spray the plot is missing. Enter at least one.");
            }
            return {};
    }
    return {};
}

/// An area entered beside width and length must be that area.
Result<void> check_area(const CalibrateRequest& request, const Ground& ground, const Notes& notes) {
    constexpr double same_area = 0.02;
    if (!request.area || !request.course_length || ground.width <= 0.0) {
        return {};
    }
    const double by_sides = ground.width * request.course_length->value.si();
    if (std::fabs(request.area->value.si() / by_sides - 1.0) <= same_area) {
        return {};
    }
    return fail(
        ErrorCode::inconsistent, "area",
        fmt::format("The area {} is not the width times the course length, {}. Leave out "
                    "what was not measured.",
                    show(*request.area, notes.units()),
                    show(Area::from_si(by_sides), notes.units() == UnitSystem::us ? "ft2" : "m2")));
}

/// Times and speed, as far as the method has them.
Result<void> measure_motion(const CalibrateRequest& request, CalibrationMethod method,
                            Ground& ground, ErrorBudget& budget, Notes& notes) {
    if (method == CalibrationMethod::refill) {
        return {};
    }
    SWATHBOOK_CHECK(time_the_course(request, ground, budget));
    // A plot may be sprayed in several strips: its time says nothing about the speed.
    if (method != CalibrationMethod::timed_plot) {
        SWATHBOOK_CHECK(check_run_speed(request, ground, notes));
    }
    if (method == CalibrationMethod::flow_and_speed && ground.speed <= 0.0 && request.speed) {
        ground.speed = request.speed->value.si();
        budget.add_limit(ErrorSource::speed,
                         std::max(relative_half_step(*request.speed),
                                  tolerance_or(request.speed_tolerance, usual_speed_tolerance)));
    }
    return {};
}

}  // namespace

Result<Ground> ground_of(const CalibrateRequest& request, CalibrationMethod method,
                         const TipPlan& plan, ErrorBudget& budget, Notes& notes) {
    SWATHBOOK_TRY(width, width_of(request, plan, notes));
    Ground ground;
    ground.width = width.si;
    SWATHBOOK_CHECK(check_area(request, ground, notes));
    SWATHBOOK_CHECK(measure_course(request, method, width, ground, budget));
    SWATHBOOK_CHECK(measure_motion(request, method, ground, budget, notes));
    SWATHBOOK_CHECK(need_ground(request, method, ground));
    return ground;
}

}  // namespace swathbook::calibration::detail
