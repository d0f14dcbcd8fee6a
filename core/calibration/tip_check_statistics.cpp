#include "core/calibration/tip_check_statistics.hpp"

#include <cmath>

namespace swathbook::calibration {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr int fewest_for_grubbs = 7;

/// Probability that |t| stays below the t whose angle has this sine, tan(angle) = t /
/// sqrt(freedom).
double probability_inside(double sine, int freedom) {
    const double cosine_squared = 1.0 - sine * sine;
    const bool odd = freedom % 2 == 1;
    double term = odd ? std::sqrt(cosine_squared) : 1.0;
    double sum = freedom == 1 ? 0.0 : term;
    for (int k = odd ? 3 : 2; k <= freedom - 2; k += 2) {
        term *= cosine_squared * static_cast<double>(k - 1) / static_cast<double>(k);
        sum += term;
    }
    return odd ? 2.0 / pi * (std::asin(sine) + sine * sum) : sine * sum;
}

double sine_for(double inside, int freedom) {
    double low = 0.0;
    double high = 1.0;
    constexpr int halvings = 60;
    for (int i = 0; i < halvings; ++i) {
        const double middle = 0.5 * (low + high);
        (probability_inside(middle, freedom) < inside ? low : high) = middle;
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

double student_t(double inside, int freedom) {
    const double sine = sine_for(inside, freedom);
    return std::sqrt(static_cast<double>(freedom)) * sine / std::sqrt(1.0 - sine * sine);
}

double grubbs_critical(int count, double significance) {
    const auto n = static_cast<double>(count);
    // sqrt(t^2 / (n - 2 + t^2)) is the sine of the angle whose tangent is t / sqrt(n - 2).
    return (n - 1.0) / std::sqrt(n) * sine_for(1.0 - significance / n, count - 2);
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
