#include "core/calibration/error_budget.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "core/base/sort.hpp"
#include "core/calibration/student_t.hpp"

namespace swathbook::calibration {
namespace {

constexpr double endless = std::numeric_limits<double>::infinity();
constexpr int most_planned = 20;

bool is_timing(ErrorSource source) {
    return source == ErrorSource::course_time;
}

struct Sums {
    double variance = 0.0;
    double spread = 0.0;  ///< sum of squared variances over their degrees of freedom

    void add(double relative_variance, double degrees) {
        variance += relative_variance;
        spread += relative_variance * relative_variance / degrees;
    }
};

Combined combined_of(const Sums& sums) {
    Combined combined;
    combined.relative = std::sqrt(sums.variance);
    combined.degrees_of_freedom =
        sums.spread > 0.0 ? sums.variance * sums.variance / sums.spread : endless;
    combined.plus_minus = combined.relative * student_t_95(combined.degrees_of_freedom);
    return combined;
}

/// The sums as they would be with more repeats of the courses and of the catches.
Sums sums_with_more(const ErrorBudget& budget, int courses, int catches) {
    Sums sums;
    for (const ErrorTerm& term : budget.terms) {
        const int extra = is_timing(term.source) ? courses : catches;
        const double square = term.relative * term.relative;
        if (term.repeats == 0 || extra == 0) {
            sums.add(square, term.degrees_of_freedom);
        } else {
            sums.add(square * term.repeats / (term.repeats + extra),
                     term.degrees_of_freedom + extra);
        }
    }
    return sums;
}

/// What would be left if repeats were endless.
double floor_of(const ErrorBudget& budget) {
    Sums fixed;
    for (const ErrorTerm& term : budget.terms) {
        if (term.repeats == 0) {
            fixed.add(term.relative * term.relative, term.degrees_of_freedom);
        }
    }
    return combined_of(fixed).plus_minus;
}

bool has_repeatable(const ErrorBudget& budget, bool timing) {
    return std::ranges::any_of(budget.terms, [timing](const ErrorTerm& term) {
        return term.repeats > 0 && is_timing(term.source) == timing;
    });
}

}  // namespace

std::string_view phrase_of(ErrorSource source) {
    switch (source) {
        case ErrorSource::course_time: return "timing the course";
        case ErrorSource::catch_amount: return "the amount caught";
        case ErrorSource::catch_time: return "timing the catch";
        case ErrorSource::vessel: return "the measuring jug or meter";
        case ErrorSource::tips_not_caught: return "the tips not caught";
        case ErrorSource::course_length: return "the length of the course";
        case ErrorSource::width: return "the width";
        case ErrorSource::area: return "the measured area";
        case ErrorSource::speed: return "the speed";
        case ErrorSource::flow: return "the flow";
        case ErrorSource::refill_mark: return "the refill mark";
    }
    return "an unnamed term";
}

void ErrorBudget::add(ErrorTerm term) {
    if (term.relative > 0.0) {
        terms.push_back(term);
    }
}

void ErrorBudget::add_limit(ErrorSource source, double relative_limit, int repeats) {
    const double averaged = repeats > 1 ? std::sqrt(static_cast<double>(repeats)) : 1.0;
    add({source, relative_limit / std::sqrt(3.0) / averaged, endless, repeats});
}

void ErrorBudget::add_scatter(ErrorSource source, double relative_deviation, int repeats) {
    if (repeats > 1) {
        add({source, relative_deviation / std::sqrt(static_cast<double>(repeats)),
             static_cast<double>(repeats - 1), repeats});
    }
}

Combined combine(const ErrorBudget& budget) {
    return combined_of(sums_with_more(budget, 0, 0));
}

std::vector<SourceShare> shares_of(const ErrorBudget& budget) {
    std::array<Sums, error_source_count> sums{};
    std::array<bool, error_source_count> repeatable{};
    double total = 0.0;
    for (const ErrorTerm& term : budget.terms) {
        const auto index = static_cast<std::size_t>(term.source);
        const double square = term.relative * term.relative;
        sums[index].add(square, term.degrees_of_freedom);
        repeatable[index] = repeatable[index] || term.repeats > 0;
        total += square;
    }
    std::vector<SourceShare> shares;
    shares.reserve(error_source_count);
    for (std::size_t i = 0; i < sums.size(); ++i) {
        if (sums[i].variance > 0.0) {
            const Combined alone = combined_of(sums[i]);
            shares.push_back({static_cast<ErrorSource>(i), alone.relative, alone.plus_minus,
                              sums[i].variance / total, repeatable[i]});
        }
    }
    sort_list(shares, [](const SourceShare& a, const SourceShare& b) { return a.share > b.share; });
    return shares;
}

RepeatPlan plan_repeats(const ErrorBudget& budget, double wanted) {
    RepeatPlan plan;
    plan.plus_minus = combine(budget).plus_minus;
    if (plan.plus_minus <= wanted) {
        plan.reachable = true;
        return plan;
    }
    const double lowest = floor_of(budget);
    if (lowest >= wanted) {
        plan.plus_minus = lowest;
        return plan;
    }
    const bool can_time = has_repeatable(budget, true);
    const bool can_catch = has_repeatable(budget, false);
    while (plan.plus_minus > wanted) {
        const bool may_time = can_time && plan.more_course_times < most_planned;
        const bool may_catch = can_catch && plan.more_catches < most_planned;
        if (!may_time && !may_catch) {
            return plan;
        }
        const Sums timed = sums_with_more(budget, plan.more_course_times + 1, plan.more_catches);
        const Sums caught = sums_with_more(budget, plan.more_course_times, plan.more_catches + 1);
        const bool time_next = may_time && (!may_catch || timed.variance <= caught.variance);
        ++(time_next ? plan.more_course_times : plan.more_catches);
        plan.plus_minus = combined_of(time_next ? timed : caught).plus_minus;
    }
    plan.reachable = true;
    return plan;
}

}  // namespace swathbook::calibration
