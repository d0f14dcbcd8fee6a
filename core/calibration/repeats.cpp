#include "core/calibration/repeats.hpp"

#include <cmath>

#include "core/base/assert.hpp"

namespace swathbook::calibration {

Repeats repeats_of(std::span<const double> values) {
    SWATHBOOK_ASSERT(!values.empty(), "repeats need at least one value");
    Repeats repeats;
    repeats.count = static_cast<int>(values.size());
    double sum = 0.0;
    for (const double value : values) {
        sum += value;
    }
    repeats.mean = sum / repeats.count;
    if (repeats.count > 1) {
        double squares = 0.0;
        for (const double value : values) {
            squares += (value - repeats.mean) * (value - repeats.mean);
        }
        repeats.deviation = std::sqrt(squares / (repeats.count - 1));
    }
    return repeats;
}

}  // namespace swathbook::calibration
