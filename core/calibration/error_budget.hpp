#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/reading.hpp"

namespace swathbook::calibration {

/// Where the uncertainty of a calibration comes from.
enum class ErrorSource : std::uint8_t {
    course_time,      ///< timing the course: scatter of the runs and the slip of the stopwatch
    catch_amount,     ///< reading what was caught: scatter of the catches and the marks of the jug
    catch_time,       ///< opening and closing the catch on the second
    vessel,           ///< the measuring jug itself, or the flow meter
    tips_not_caught,  ///< tips whose spray was not caught may flow differently
    course_length,    ///< taping the course
    width,            ///< the width served: tape, or where the edge of a swath is
    area,             ///< the measured plot or field
    speed,            ///< an entered speed: how finely and how steadily it was read
    flow,             ///< an entered flow: how finely it was read
    refill_mark,      ///< telling when the tank stands at its mark again
};
inline constexpr int error_source_count = 11;

[[nodiscard]] std::string_view phrase_of(ErrorSource source);

/// One independent relative uncertainty of the output.
struct ErrorTerm {
    ErrorSource source = ErrorSource::width;
    double relative = 0.0;  ///< standard uncertainty of the output from this, as a share of it
    double degrees_of_freedom = 0.0;  ///< infinity where the size is known, not sampled
    int repeats = 0;  ///< measurements averaged in it; 0 where repeating would not shrink it
};

/// Terms of one output, multiplied together: relative variances add.
struct ErrorBudget {
    std::vector<ErrorTerm> terms;

    /// A limit that the error is surely within, anywhere inside equally likely: +- limit / sqrt 3.
    /// @param repeats  how many independent measurements are averaged; 0 for one that repeats share
    void add_limit(ErrorSource source, double relative_limit, int repeats = 0);
    /// Scatter of repeated measurements: the deviation of one, and how many are averaged.
    void add_scatter(ErrorSource source, double relative_deviation, int repeats);
    void add(ErrorTerm term);
};

/// What a budget adds up to.
struct Combined {
    double relative = 0.0;            ///< standard uncertainty
    double degrees_of_freedom = 0.0;  ///< effective
    double plus_minus = 0.0;          ///< half the 95 % interval, as a share of the value
};

/// Sum in quadrature, with the effective degrees of freedom of a sum of few-repeat terms.
///
/// @source first-order propagation of independent relative terms; Welch-Satterthwaite formula:
///         NIST Technical Note 1297, appendix B (B.3)
[[nodiscard]] Combined combine(const ErrorBudget& budget);

/// The share of the variance that one source has; 0 to 1.
struct SourceShare {
    ErrorSource source = ErrorSource::width;
    double relative = 0.0;    ///< standard uncertainty from this source
    double plus_minus = 0.0;  ///< half the 95 % interval if this were the only source
    double share = 0.0;
    bool repeats_help = false;
};

/// Sources of a budget by falling share; those that contribute nothing are left out.
[[nodiscard]] std::vector<SourceShare> shares_of(const ErrorBudget& budget);

/// How many more repeats would bring the interval to a wanted size.
struct RepeatPlan {
    bool reachable = false;
    int more_course_times = 0;
    int more_catches = 0;
    /// Half interval with the planned repeats; with endless repeats when not reachable.
    double plus_minus = 0.0;
};

/// Adds repeats where each helps most, until the half interval is at most `wanted`.
///
/// @valid   at most 20 more repeats of each are tried: beyond that nobody stands in a field
/// @source  scatter taken as it was measured; where there is one reading only, its scatter is not
///          known and the plan can only shrink the slip and the resolution
[[nodiscard]] RepeatPlan plan_repeats(const ErrorBudget& budget, double wanted);

/// A value with the interval that a budget gives it. The lower end never falls below zero.
template <Kind K>
[[nodiscard]] Estimate<K> estimate_of(Quantity<K> value, const Combined& combined) {
    if (combined.plus_minus <= 0.0) {
        return Estimate<K>(value);
    }
    const double down = combined.plus_minus < 1.0 ? 1.0 - combined.plus_minus : 0.0;
    return Estimate<K>(value, value * down, value * (1.0 + combined.plus_minus));
}

}  // namespace swathbook::calibration
