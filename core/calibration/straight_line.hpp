#pragma once

#include <optional>
#include <span>

namespace swathbook::calibration {

/// The straight line that comes nearest to points, by least squares of the heights.
struct StraightLine {
    int count = 0;
    double slope = 0.0;
    double intercept = 0.0;
    double mean_across = 0.0;
    double spread_across = 0.0;       ///< sum of squares of (x - mean x)
    double residual_deviation = 0.0;  ///< with count - 2; 0 for two points
    double slope_error = 0.0;         ///< standard error
    double intercept_error = 0.0;
    double explained = 0.0;  ///< R squared; 1 when all heights are equal

    [[nodiscard]] double at(double across) const { return intercept + slope * across; }
    /// Standard error of the line itself there.
    [[nodiscard]] double error_at(double across) const;
};

/// @param across,heights  as many of each, at least two, not all at one place across
/// @return nothing where there is no such line
/// @accuracy 1e-11 relative on the reference data below (means taken off first)
/// @source ordinary least squares; NIST Statistical Reference Datasets, Norris:
///         https://www.itl.nist.gov/div898/strd/lls/data/Norris.shtml
/// @cases  tests/unit/calibration/straight_line_test.cpp
[[nodiscard]] std::optional<StraightLine> straight_line(std::span<const double> across,
                                                        std::span<const double> heights);

/// Where a line reaches a height, and between which places it does with 95 % confidence.
struct Crossing {
    double across = 0.0;
    double low = 0.0;
    std::optional<double> high{};  ///< absent when the interval has no end
};

/// @param factor  97.5 % point of Student's t with count - 2 degrees of freedom
/// @return nothing when the slope's interval holds zero: the line then has no crossing to speak of
/// @source E. C. Fieller's interval for a ratio, as applied to inverse prediction of the mean line
///         (from memory); checked by putting both ends back into the band of the line
[[nodiscard]] std::optional<Crossing> crossing_of(const StraightLine& line, double height,
                                                  double factor);

}  // namespace swathbook::calibration
