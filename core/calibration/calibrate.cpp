#include "core/calibration/calibrate.hpp"

#include <fmt/format.h>

#include "core/calibration/detail/consequences.hpp"
#include "core/calibration/detail/measured.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

using detail::Caught;
using detail::Ground;
using detail::Outcome;

constexpr double wanted_interval = 0.05;

/// The interval of one factor of the output: only the terms that belong to it.
Combined combine_of(const ErrorBudget& budget, std::initializer_list<ErrorSource> sources) {
    ErrorBudget part;
    part.terms.reserve(budget.terms.size());
    for (const ErrorTerm& term : budget.terms) {
        for (const ErrorSource source : sources) {
            if (term.source == source) {
                part.terms.push_back(term);
            }
        }
    }
    return combine(part);
}

double output_of(CalibrationMethod method, const Ground& ground, const Caught& caught) {
    if (method == CalibrationMethod::flow_and_speed) {
        return caught.flow / (ground.speed * ground.width);
    }
    return caught.volume / ground.area;
}

void show_output(const Outcome& outcome, Notes& notes) {
    notes.show([&] {
        const Ground& ground = outcome.ground;
        const UnitSystem units = notes.units();
        const bool us = units == UnitSystem::us;
        const std::string result = show(MixPerArea::from_si(outcome.output), units);
        if (outcome.method == CalibrationMethod::flow_and_speed) {
            // 43560 ft2/ac / 88 ft/min per mph = 495; 10000 m2/ha / (1000/60) m/min per km/h = 600.
            return Step{"Output, flow over speed and width",
                        fmt::format("{} x {} / ({} x {})", us ? "495" : "600",
                                    show(Flow::from_si(outcome.caught.flow), units),
                                    show(Speed::from_si(ground.speed), units),
                                    show(Length::from_si(ground.width), units)),
                        result};
        }
        const std::string area = show(Area::from_si(ground.area), us ? "ft2" : "m2", 6);
        return Step{outcome.method == CalibrationMethod::refill ? "Output, refill over area"
                                                                : "Output, catch over area",
                    fmt::format("{} x {} / {}",
                                show(Volume::from_si(outcome.caught.volume), us ? "gal" : "L", 5),
                                us ? "43560" : "10000", area),
                    result};
    });
}

void fill_ground(CalibrateAnswer& answer, const Outcome& outcome, const ErrorBudget& budget) {
    const Ground& ground = outcome.ground;
    if (ground.width > 0.0) {
        answer.width = Length::from_si(ground.width);
    }
    if (ground.area > 0.0) {
        answer.course_area = Area::from_si(ground.area);
    }
    if (ground.course_time > 0.0) {
        answer.mean_course_time = Duration::from_si(ground.course_time);
    }
    if (ground.speed > 0.0) {
        answer.speed = estimate_of(
            Speed::from_si(ground.speed),
            combine_of(budget,
                       {ErrorSource::course_time, ErrorSource::course_length, ErrorSource::speed}));
        if (ground.width > 0.0) {
            answer.area_per_time = AreaPerTime::from_si(ground.speed * ground.width);
        }
    }
    if (outcome.caught.flow > 0.0) {
        const Combined combined = combine_of(
            budget, {ErrorSource::catch_amount, ErrorSource::catch_time, ErrorSource::vessel,
                     ErrorSource::tips_not_caught, ErrorSource::flow});
        answer.flow = estimate_of(Flow::from_si(outcome.caught.flow), combined);
        if (outcome.caught.flow_per_tip > 0.0) {
            answer.flow_per_tip = estimate_of(Flow::from_si(outcome.caught.flow_per_tip), combined);
        }
    }
}

void fill_budget(CalibrateAnswer& answer, const ErrorBudget& budget, Notes& notes) {
    const std::vector<SourceShare> shares = shares_of(budget);
    answer.error_budget.reserve(shares.size());
    for (const SourceShare& share : shares) {
        BudgetLine line;
        line.source = share.source;
        line.text = phrase_of(share.source);
        line.plus_minus = Fraction::from_si(share.plus_minus);
        line.share = Fraction::from_si(share.share);
        line.repeats_help = share.repeats_help;
        answer.error_budget.push_back(std::move(line));
    }
    if (!shares.empty()) {
        answer.largest_term = shares.front().source;
    }
    for (const BudgetLine& line : answer.error_budget) {
        notes.show([&] {
            return Step{
                fmt::format("Uncertainty from {}", line.text), "alone, 95 %",
                fmt::format("+-{} ({} of the variance)", show(line.plus_minus, notes.units(), 2),
                            show(line.share, notes.units(), 2))};
        });
    }
}

std::string planned_text(const RepeatPlan& plan) {
    std::string text;
    if (plan.more_course_times > 0) {
        text = fmt::format("{} more timed run{}", plan.more_course_times,
                           plan.more_course_times == 1 ? "" : "s");
    }
    if (plan.more_catches > 0) {
        text += fmt::format("{}{} more catch{}", text.empty() ? "" : " and ", plan.more_catches,
                            plan.more_catches == 1 ? "" : "es");
    }
    return text;
}

std::string repeat_text(const RepeatPlan& plan, const CalibrateAnswer& answer, const Notes& notes) {
    const std::string reached = show(Fraction::from_si(plan.plus_minus), notes.units(), 2);
    if (plan.reachable && plan.more_course_times + plan.more_catches == 0) {
        return fmt::format("The interval is within +-5 % already (+-{}).", reached);
    }
    if (plan.reachable) {
        return fmt::format("{} like these would bring the interval to +-{}.", planned_text(plan),
                           reached);
    }
    for (const BudgetLine& line : answer.error_budget) {
        if (!line.repeats_help) {
            return fmt::format(
                "Repeats cannot bring the interval to +-5 %: +-{} is left. Measure "
                "{} better{}.",
                reached, line.text,
                line.source == ErrorSource::tips_not_caught ? ", that is, catch every tip" : "");
        }
    }
    return fmt::format("Even twenty more repeats leave +-{}: find out why the runs differ.",
                       reached);
}

void fill_repeats(CalibrateAnswer& answer, const ErrorBudget& budget, const Notes& notes) {
    const RepeatPlan plan = plan_repeats(budget, wanted_interval);
    answer.repeats.reachable = plan.reachable;
    answer.repeats.more_course_times = plan.more_course_times;
    answer.repeats.more_catches = plan.more_catches;
    answer.repeats.plus_minus = Fraction::from_si(plan.plus_minus);
    answer.repeats.text = repeat_text(plan, answer, notes);
}

/// The two acres of a band sprayer: neither is chosen for the person.
void fill_bands(CalibrateAnswer& answer, const Outcome& outcome, const Combined& combined,
                Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    const auto over = [&](const Reading<Kind::length>& width) {
        return estimate_of(
            MixPerArea::from_si(outcome.output * outcome.ground.width / width.value.si()),
            combined);
    };
    const auto& band = request.band_width ? request.band_width : request.width;
    if (band) {
        answer.band_output = over(*band);
    }
    if (request.row_spacing) {
        answer.field_output = over(*request.row_spacing);
    }
    if (answer.band_output && answer.field_output) {
        notes.find(Severity::warning, "two_acres",
                   fmt::format("{} on each acre under the bands is {} on each acre of field. The "
                               "label says which acre its rate counts; read it before mixing.",
                               show(answer.band_output->value, notes.units()),
                               show(answer.field_output->value, notes.units())),
                   "University of Missouri Extension G1270A");
        return;
    }
    notes.find(Severity::advice, "one_acre_only",
               answer.band_output
                   ? "This is per acre under the bands only. Enter the row spacing to see the acre "
                     "of field beside it."
                   : "This is per acre of field. Enter the band width to see the acre under the "
                     "bands beside it; the label says which one its rate counts.",
               "University of Missouri Extension G1270A");
}

Result<void> check_bands(const CalibrateRequest& request, const Notes& notes) {
    const auto& band = request.band_width ? request.band_width : request.width;
    if (request.sprayer == SprayerKind::band && band && request.row_spacing &&
        band->value > request.row_spacing->value) {
        return fail(
            ErrorCode::inconsistent, "band_width",
            fmt::format("The band of {} is wider than the row spacing of {}: bands would "
                        "overlap. Check both, or calibrate as a boom.",
                        show(*band, notes.units()), show(*request.row_spacing, notes.units())));
    }
    return {};
}

Result<void> fill_consequences(CalibrateAnswer& answer, const Outcome& outcome, Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    if (outcome.ground.area > 0.0 && outcome.method != CalibrationMethod::flow_and_speed) {
        answer.shortcut = shortcut_of_course(detail::area_of_one_catch(outcome));
    }
    if (request.carrier_density) {
        answer.density = detail::density_of(outcome, notes);
    }
    if (request.believed_output) {
        answer.believed = detail::believed_of(outcome, notes);
    }
    if (request.assumed) {
        SWATHBOOK_TRY(assumed, detail::assumed_of(outcome, notes));
        answer.assumed = std::move(assumed);
    }
    if (!request.speed_swings.empty()) {
        SWATHBOOK_TRY(swings, detail::swings_of(outcome, notes));
        answer.speed_swings = std::move(swings);
    }
    if (request.hand) {
        answer.hand = detail::hand_check_of(outcome, notes);
    }
    return {};
}

void fill_tank(CalibrateAnswer& answer, const CalibrateRequest& request, const Combined& combined,
               Notes& notes) {
    if (!request.tank_volume) {
        return;
    }
    // The tank of the job holds the liquid of the job.
    const MixPerArea output =
        answer.density ? answer.density->solution_output : answer.output.value;
    const auto ground = Area::from_si(request.tank_volume->value.si() / output.si());
    answer.tank_area = estimate_of(ground, combined);
    notes.show([&] {
        return Step{"Ground that one tank covers",
                    fmt::format("{} / {}", show(*request.tank_volume, notes.units()),
                                show(output, notes.units())),
                    show(ground, notes.units())};
    });
}

}  // namespace

Result<CalibrateAnswer> calibrate(const CalibrateRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(detail::check_entries(request, notes));
    SWATHBOOK_CHECK(check_bands(request, notes));
    SWATHBOOK_TRY(method, detail::method_of(request));
    SWATHBOOK_TRY(plan, detail::tip_plan_of(request));
    ErrorBudget budget;
    budget.terms.reserve(16);
    SWATHBOOK_TRY(ground, detail::ground_of(request, method, plan, budget, notes));
    SWATHBOOK_TRY(caught, detail::caught_of(request, method, plan, ground, budget, notes));

    const Combined combined = combine(budget);
    const double output = output_of(method, ground, caught);
    const Outcome outcome{request, method, plan, ground, caught, output, combined.plus_minus};
    CalibrateAnswer answer;
    answer.method = method;
    answer.output = estimate_of(MixPerArea::from_si(output), combined);
    answer.plus_minus = Fraction::from_si(combined.plus_minus);
    show_output(outcome, notes);
    fill_ground(answer, outcome, budget);
    fill_budget(answer, budget, notes);
    fill_repeats(answer, budget, notes);
    if (request.sprayer == SprayerKind::band) {
        fill_bands(answer, outcome, combined, notes);
    }
    detail::find_traps(outcome, notes);
    SWATHBOOK_CHECK(fill_consequences(answer, outcome, notes));
    fill_tank(answer, request, combined, notes);
    return answer;
}

}  // namespace swathbook::calibration
