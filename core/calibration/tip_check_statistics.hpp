#pragma once

#include <cstddef>
#include <optional>
#include <span>

/// Spread of a set of catches, and a published test for the odd one out.
namespace swathbook::calibration {

struct Spread {
    double mean = 0.0;
    double deviation = 0.0;             ///< standard deviation with n - 1
    double variation = 0.0;             ///< coefficient of variation, deviation / mean, with n - 1
    double variation_population = 0.0;  ///< the same with n; 5 % smaller for 10 tips
};

/// @param values one or more, all above 0; one value has no spread (0)
/// @source CV = standard deviation / mean; n - 1 because the catches are a sample of what the tips
/// do
[[nodiscard]] Spread spread_of(std::span<const double> values);

/// Two-sided critical value of Grubbs' test at 5 %: the largest distance from the mean, in standard
/// deviations, that chance allows among n tips.
///
/// @accuracy relative 1e-9, by bisection of the tail in student_t.hpp
///
///   G = (n - 1) / sqrt(n) * sqrt(t^2 / (n - 2 + t^2)),  t exceeded with probability 0.05 / (2 n)
///
/// @source Grubbs, F. E., Technometrics 11(1):1-21, 1969; formula in NIST/SEMATECH e-Handbook of
///         Statistical Methods 1.3.5.17.1
[[nodiscard]] double grubbs_critical(int count, double significance = 0.05);

struct OutlierTest {
    std::size_t index = 0;   ///< of the value farthest from the mean
    double statistic = 0.0;  ///< its distance in standard deviations
    double critical = 0.0;
    bool is_outlier = false;
};

/// Grubbs' test on the farthest value. Nothing for six values or fewer, where the test calls most
/// points outliers (the Handbook's warning), nor when all values are equal.
[[nodiscard]] std::optional<OutlierTest> grubbs_test(std::span<const double> values);

}  // namespace swathbook::calibration
