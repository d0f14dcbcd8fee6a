#pragma once

#include <algorithm>

#include "core/quantity/reading.hpp"

/// How closely a reading was read, told by the digits that were typed.
namespace swathbook::calibration::detail {

/// "1/8 acre", "1 qt" and "2 gal" are written of things laid out and filled to a mark; their last
/// digit does not mean half an acre or half a gallon. No jug, stopwatch or tape is read worse than
/// this.
inline constexpr double roughest_reading = 0.025;

/// Half the last digit typed over the reading, 0.025 at most. Not for speed meters, which are read
/// to the whole mile per hour.
template <Kind K>
[[nodiscard]] double closeness_of(const Reading<K>& reading) {
    return std::min(reading.half_step_si / reading.value.si(), roughest_reading);
}

/// In seconds. Whole minutes are what a watch was stopped at: only its slip counts.
[[nodiscard]] inline double closeness_of_time(const Reading<Kind::duration>& time) {
    constexpr double half_a_minute = 30.0;
    return time.half_step_si >= half_a_minute ? 0.0 : closeness_of(time) * time.value.si();
}

}  // namespace swathbook::calibration::detail
