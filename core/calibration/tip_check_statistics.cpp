#include "core/calibration/tip_check_statistics.hpp"

#include <cmath>

#include "core/calibration/student_t.hpp"

namespace swathbook::calibration {
namespace {

constexpr int fewest_for_grubbs = 7;

/// Of the angle whose tangent is t / sqrt(freedom), where t is exceeded with this probability.
double sine_exceeded_with(double probability, int freedom) {
    const auto degrees = static_cast<double>(freedom);
    double low = 0.0;
    double high = 1.0;
    constexpr int halvings = 50;
    for (int i = 0; i < halvings; ++i) {
        const double sine = 0.5 * (low + high);
        const double t = std::sqrt(degrees) * sine / std::sqrt(1.0 - sine * sine);
        (student_t_upper_tail(t, degrees) > probability ? low : high) = sine;
    }
    return 0.5 * (low + high);
}

}  // namespace

Spread spread_of(std::span<const double> values) {
    const auto count = static_cast<double>(values.size());
    double sum = 0.0;
    for (const double value : values) {
        sum += value;
    }
    Spread spread;
    spread.mean = sum / count;
    if (values.size() < 2) {
        return spread;
    }
    double squares = 0.0;
    for (const double value : values) {
        squares += (value - spread.mean) * (value - spread.mean);
    }
    spread.deviation = std::sqrt(squares / (count - 1.0));
    spread.variation = spread.deviation / spread.mean;
    spread.variation_population = std::sqrt(squares / count) / spread.mean;
    return spread;
}

double grubbs_critical(int count, double significance) {
    const auto n = static_cast<double>(count);
    // sqrt(t^2 / (n - 2 + t^2)) is the sine of the angle whose tangent is t / sqrt(n - 2).
    return (n - 1.0) / std::sqrt(n) * sine_exceeded_with(significance / (2.0 * n), count - 2);
}

std::optional<OutlierTest> grubbs_test(std::span<const double> values) {
    const Spread spread = spread_of(values);
    constexpr double no_spread = 1e-12;
    if (values.size() < fewest_for_grubbs || spread.variation < no_spread) {
        return std::nullopt;
    }
    OutlierTest test;
    for (std::size_t i = 0; i < values.size(); ++i) {
        const double distance = std::fabs(values[i] - spread.mean) / spread.deviation;
        if (distance > test.statistic) {
            test.statistic = distance;
            test.index = i;
        }
    }
    test.critical = grubbs_critical(static_cast<int>(values.size()));
    test.is_outlier = test.statistic > test.critical;
    return test;
}

}  // namespace swathbook::calibration
