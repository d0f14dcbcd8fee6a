#include <algorithm>
#include <cmath>
#include <limits>
#include <string_view>

#include <fmt/format.h>

#include "core/calibration/detail/closeness.hpp"
#include "core/calibration/detail/measured.hpp"
#include "core/calibration/repeats.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration::detail {
namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

/// One catch in SI. `rate` is flow when a time is known, else the volume per course.
struct OneCatch {
    double volume = 0.0;
    double rate = 0.0;
    double relative_half_step = 0.0;
    double relative_time_limit = 0.0;
    std::string_view tip{};
};

struct TipGroup {
    std::string_view tip;
    double sum = 0.0;
    double squares = 0.0;  ///< about the mean, after the second pass
    int count = 0;
    double least = endless;
    double most = 0.0;
    [[nodiscard]] double mean() const { return sum / count; }
};

double liquid_density(const CalibrateRequest& request) {
    if (request.caught == CarrierCaught::solution) {
        return request.carrier_density->value.si();
    }
    return Density::of(water_lb_per_gal, pounds_per_us_gallon).si();
}

Result<std::vector<OneCatch>> read_catches(const CalibrateRequest& request,
                                           CalibrationMethod method, const Ground& ground,
                                           Caught& caught) {
    std::vector<OneCatch> catches;
    catches.reserve(request.catches.size());
    const double slip = slip_of(request);
    double time_sum = 0.0;
    int timed = 0;
    for (std::size_t i = 0; i < request.catches.size(); ++i) {
        const Catch& entered = request.catches[i];
        OneCatch one;
        one.tip = entered.tip;
        if (entered.amount) {
            one.volume = entered.amount->value.si();
            one.relative_half_step = closeness_of(*entered.amount);
        } else {
            caught.weighed = true;
            one.volume = entered.weight->value.si() / liquid_density(request);
            one.relative_half_step = closeness_of(*entered.weight);
        }
        double time = ground.course_time;
        double half_step = 0.0;
        if (entered.time) {
            time = entered.time->value.si();
            half_step = closeness_of_time(*entered.time);
            time_sum += time;
            ++timed;
        } else if (method == CalibrationMethod::flow_and_speed) {
            return fail(ErrorCode::invalid_input, fmt::format("catches[{}].time", i),
                        "The catch time is missing. Flow needs to know how long the jug was under "
                        "the spray; enter it, such as \"60 s\".");
        }
        one.rate = time > 0.0 ? one.volume / time : one.volume;
        if (time > 0.0) {
            one.relative_time_limit = std::sqrt(slip * slip + half_step * half_step) / time;
        }
        catches.push_back(one);
    }
    if (timed > 0 && ground.course_time <= 0.0 && method != CalibrationMethod::flow_and_speed) {
        return fail(ErrorCode::invalid_input, "course_times",
                    "A catch time was entered but no course time: how the two compare decides the "
                    "answer. Enter the time the course took.");
    }
    caught.catch_time = timed > 0 ? time_sum / timed : 0.0;
    return catches;
}

/// Catches of the same tip belong together; unlabelled ones stand for a tip each.
std::vector<TipGroup> group_by_tip(const std::vector<OneCatch>& catches, bool one_group) {
    std::vector<TipGroup> groups;
    groups.reserve(one_group ? 1 : catches.size());
    const auto group_of = [&](const OneCatch& one) {
        return std::ranges::find_if(groups, [&](const TipGroup& group) {
            return one_group || (!one.tip.empty() && group.tip == one.tip);
        });
    };
    for (const OneCatch& one : catches) {
        auto group = group_of(one);
        if (group == groups.end()) {
            groups.push_back({one.tip});
            group = groups.end() - 1;
        }
        group->sum += one.rate;
        ++group->count;
        group->least = std::min(group->least, one.rate);
        group->most = std::max(group->most, one.rate);
    }
    std::size_t next = 0;
    for (const OneCatch& one : catches) {
        const bool alone = one.tip.empty() && !one_group;
        TipGroup& group = alone ? groups[next++] : *group_of(one);
        group.squares += (one.rate - group.mean()) * (one.rate - group.mean());
    }
    return groups;
}

/// Scatter of repeats of the same thing, pooled over the tips.
void add_repeat_scatter(const std::vector<TipGroup>& groups, double mean, int rounds,
                        ErrorBudget& budget) {
    double squares = 0.0;
    double degrees = 0.0;
    double weight = 0.0;
    for (const TipGroup& group : groups) {
        squares += group.squares;
        degrees += group.count - 1;
        weight += 1.0 / group.count;
    }
    if (degrees <= 0.0) {
        return;
    }
    const double tips = static_cast<double>(groups.size());
    const double deviation = std::sqrt(squares / degrees) / mean;
    budget.add({ErrorSource::catch_amount, deviation * std::sqrt(weight) / tips, degrees, rounds});
}

/// What the caught tips cannot say about those that were not caught.
void add_tip_sampling(const std::vector<TipGroup>& groups, const TipPlan& plan, double mean,
                      ErrorBudget& budget) {
    const auto caught = static_cast<double>(groups.size());
    const double left_out = plan.tips_known ? 1.0 - caught / plan.tips : 1.0;
    if (left_out <= 0.0) {
        return;
    }
    if (groups.size() < 2) {
        budget.add_limit(ErrorSource::tips_not_caught, uncaught_tip_limit * left_out);
        return;
    }
    double squares = 0.0;
    for (const TipGroup& group : groups) {
        squares += (group.mean() - mean) * (group.mean() - mean);
    }
    const double deviation = std::sqrt(squares / (caught - 1.0)) / mean;
    budget.add(
        {ErrorSource::tips_not_caught, deviation * std::sqrt(left_out / caught), caught - 1.0, 0});
}

void add_reading_terms(const std::vector<OneCatch>& catches, int rounds, ErrorBudget& budget) {
    double steps = 0.0;
    double times = 0.0;
    for (const OneCatch& one : catches) {
        steps += one.relative_half_step * one.relative_half_step;
        times += one.relative_time_limit * one.relative_time_limit;
    }
    // A limit is uniform: its variance is a third; the mean of n independent ones an nth of that.
    const double count = static_cast<double>(catches.size());
    budget.add({ErrorSource::catch_amount, std::sqrt(steps / 3.0) / count, endless, rounds});
    budget.add({ErrorSource::catch_time, std::sqrt(times / 3.0) / count, endless, rounds});
}

void add_vessel(const CalibrateRequest& request, ErrorBudget& budget) {
    budget.add_limit(ErrorSource::vessel, request.volume_tolerance
                                              ? request.volume_tolerance->value.si()
                                              : usual_volume_tolerance);
}

Result<Caught> caught_in_jugs(const CalibrateRequest& request, CalibrationMethod method,
                              const TipPlan& plan, const Ground& ground, ErrorBudget& budget,
                              Notes& notes) {
    Caught caught;
    if (request.catches.empty()) {
        return fail(ErrorCode::invalid_input, "catches",
                    "Nothing was caught. Enter at least one catch with its amount.");
    }
    SWATHBOOK_TRY(catches, read_catches(request, method, ground, caught));
    // Repeats of one tip that serves the width alone are repeats, not different tips.
    const bool one_group = !plan.one_tip || (plan.tips_known && plan.tips <= 1.0);
    const std::vector<TipGroup> groups = group_by_tip(catches, one_group);
    double sum = 0.0;
    double volumes = 0.0;
    for (const TipGroup& group : groups) {
        sum += group.mean();
        caught.repeats_ratio = std::max(caught.repeats_ratio, group.most / group.least);
    }
    for (const OneCatch& one : catches) {
        volumes += one.volume;
    }
    const double mean = sum / static_cast<double>(groups.size());
    const int rounds = std::max(1, static_cast<int>(catches.size() / groups.size()));
    const double total = plan.one_tip ? mean * plan.tips : mean;
    const bool timed = ground.course_time > 0.0 || caught.catch_time > 0.0;
    caught.catches = static_cast<int>(catches.size());
    caught.mean_catch = volumes / static_cast<double>(catches.size());
    caught.flow = timed ? total : 0.0;
    caught.volume = ground.course_time > 0.0 ? total * ground.course_time : timed ? 0.0 : total;
    if (timed && (plan.one_tip || request.tips)) {
        caught.flow_per_tip = plan.one_tip ? mean : mean / plan.tips;
    }
    add_reading_terms(catches, rounds, budget);
    add_repeat_scatter(groups, mean, rounds, budget);
    if (plan.one_tip && !one_group) {
        add_tip_sampling(groups, plan, mean, budget);
    }
    add_vessel(request, budget);
    if (timed) {
        notes.show([&] {
            return Step{plan.one_tip ? "Flow of the tips serving the width" : "Flow",
                        fmt::format("{} {}{}",
                                    caught.catches == 1
                                        ? std::string("one catch of")
                                        : fmt::format("mean of {} catches,", caught.catches),
                                    show(Volume::from_si(caught.mean_catch),
                                         notes.units() == UnitSystem::us ? "fl oz" : "mL"),
                                    plan.one_tip ? fmt::format(", x {} tips", plan.tips) : ""),
                        show(Flow::from_si(caught.flow), notes.units())};
        });
    }
    return caught;
}

Result<Caught> caught_by_refill(const CalibrateRequest& request, ErrorBudget& budget) {
    if (!request.refill) {
        return fail(ErrorCode::invalid_input, "refill",
                    "The refill is missing. Enter the water that brought the tank back to its "
                    "mark, such as \"4 gal\".");
    }
    Caught caught;
    caught.volume = request.refill->value.si();
    constexpr double mark_share_of_tank = 0.005;
    double mark = closeness_of(*request.refill) * caught.volume;
    if (request.mark_tolerance) {
        mark = request.mark_tolerance->value.si();
    } else if (request.tank_volume) {
        mark = std::max(mark, mark_share_of_tank * request.tank_volume->value.si());
    }
    // The mark is met twice: before the run and after the refill.
    budget.add_limit(ErrorSource::refill_mark, std::sqrt(2.0) * mark / caught.volume);
    add_vessel(request, budget);
    return caught;
}

Caught entered_flow(const CalibrateRequest& request, const TipPlan& plan, ErrorBudget& budget,
                    Notes& notes) {
    Caught caught;
    const bool of_one_tip = request.catch_covers == CatchCovers::one_tip;
    caught.flow = request.flow->value.si() * (of_one_tip ? plan.tips : 1.0);
    if (of_one_tip && plan.tips > 1.0) {
        notes.show([&] {
            return Step{"Flow of the tips serving the width",
                        fmt::format("{} x {} tips", show(*request.flow, notes.units()), plan.tips),
                        show(Flow::from_si(caught.flow), notes.units())};
        });
    }
    if (request.tips) {
        caught.flow_per_tip = caught.flow / *request.tips;
    }
    budget.add_limit(ErrorSource::flow, closeness_of(*request.flow));
    add_vessel(request, budget);
    return caught;
}

}  // namespace

Result<TipPlan> tip_plan_of(const CalibrateRequest& request) {
    TipPlan plan;
    plan.tips = request.tips ? *request.tips : 1.0;
    const auto labelled =
        std::ranges::count_if(request.catches, [](const Catch& one) { return !one.tip.empty(); });
    if (labelled > 0 && labelled < static_cast<std::ptrdiff_t>(request.catches.size())) {
        return fail(ErrorCode::invalid_input, "catches",
                    "Some catches name their tip and some do not. Name the tip of every catch, or "
                    "of none.");
    }
    if (labelled > 0 && request.catch_covers == CatchCovers::all_tips) {
        return fail(ErrorCode::inconsistent, "catch_covers",
                    "The catches name single tips, yet are said to be of all tips. Take the tip "
                    "names away, or say one_tip.");
    }
    if (labelled > 0) {
        plan.one_tip = true;
    } else if (request.catch_covers) {
        plan.one_tip = *request.catch_covers == CatchCovers::one_tip;
    } else if (plan.tips > 1.0 && !request.catches.empty()) {
        return fail(ErrorCode::invalid_input, "catch_covers",
                    fmt::format("{} tips serve the width, and the catches do not say whether each "
                                "is of one tip or of all of them. Enter catch_covers as one_tip or "
                                "all_tips, or name the tip of each catch.",
                                plan.tips));
    } else {
        plan.one_tip = !request.width && request.spacing.has_value();
    }
    if (!plan.one_tip || request.tips) {
        return plan;
    }
    if (request.width && request.spacing) {
        plan.tips = request.width->value / request.spacing->value;
    } else if (!request.spacing && labelled > 0) {
        std::vector<std::string_view> names;
        for (const Catch& one : request.catches) {
            if (std::ranges::find(names, one.tip) == names.end()) {
                names.emplace_back(one.tip);
            }
        }
        plan.tips = static_cast<double>(names.size());
    } else {
        // By its spacing alone, a catch speaks for one tip of a boom of unknown length.
        plan.tips_known = !request.spacing;
    }
    return plan;
}

Result<Caught> caught_of(const CalibrateRequest& request, CalibrationMethod method,
                         const TipPlan& plan, const Ground& ground, ErrorBudget& budget,
                         Notes& notes) {
    if (method == CalibrationMethod::refill) {
        return caught_by_refill(request, budget);
    }
    if (method == CalibrationMethod::flow_and_speed && request.flow) {
        return entered_flow(request, plan, budget, notes);
    }
    return caught_in_jugs(request, method, plan, ground, budget, notes);
}

}  // namespace swathbook::calibration::detail
