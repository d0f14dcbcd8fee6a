#include "core/calibration/tip_check_wear.hpp"

#include <cmath>
#include <cstddef>

#include "core/base/assert.hpp"
#include "core/calibration/student_t.hpp"

namespace swathbook::calibration {
namespace {

constexpr double normal_95 = 1.959963984540054;

struct Mean {
    double value = 0.0;
    double standard_error = 0.0;
};

/// Two independent spreads as one.
double joined(double first, double second) {
    return std::sqrt(first * first + second * second);
}

Mean mean_difference(std::span<const double> now, std::span<const double> then) {
    const auto count = static_cast<double>(now.size());
    Mean mean;
    for (std::size_t i = 0; i < now.size(); ++i) {
        mean.value += (now[i] - then[i]) / count;
    }
    double squares = 0.0;
    for (std::size_t i = 0; i < now.size(); ++i) {
        const double off = now[i] - then[i] - mean.value;
        squares += off * off;
    }
    if (now.size() > 1) {
        mean.standard_error = std::sqrt(squares / (count - 1.0) / count);
    }
    return mean;
}

}  // namespace

WearTrend wear_between(std::span<const double> now, std::span<const double> then, double resolution,
                       double limit) {
    SWATHBOOK_ASSERT(now.size() == then.size() && !now.empty(), "the same tips at both checks");
    const auto count = static_cast<double>(now.size());
    const Mean rise = mean_difference(now, then);
    // A reading is anywhere within its half-step: variance h^2 / 3; two readings per tip.
    const double reading = resolution * std::sqrt(2.0 / 3.0 / count);
    const double t = now.size() > 1 ? student_t_95(count - 1.0) : 0.0;
    const double spread = joined(t * rise.standard_error, normal_95 * reading);

    WearTrend trend;
    for (const double deviation : now) {
        trend.now += deviation / count;
    }
    trend.gained = rise.value;
    trend.gained_low = rise.value - spread;
    trend.gained_high = rise.value + spread;
    const double room = std::fmax(0.0, limit - trend.now);
    if (room == 0.0) {
        trend.left = trend.left_low = trend.left_high = 0.0;
        return trend;
    }
    if (trend.gained > 0.0) {
        trend.left = room / trend.gained;
        trend.left_low = room / trend.gained_high;
    }
    if (trend.gained_low > 0.0) {
        trend.left_high = room / trend.gained_low;
    }
    return trend;
}

}  // namespace swathbook::calibration
