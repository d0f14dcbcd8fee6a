#pragma once

#include <span>

namespace swathbook::calibration {

/// What repeated measurements of one thing say about it.
struct Repeats {
    int count = 0;
    double mean = 0.0;
    /// Standard deviation of one measurement, with count - 1; 0 when there is only one.
    double deviation = 0.0;
};

/// @param values  at least one; finite
/// @accuracy two passes, so that the spread of close readings keeps its digits
[[nodiscard]] Repeats repeats_of(std::span<const double> values);

}  // namespace swathbook::calibration
