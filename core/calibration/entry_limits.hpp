#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {

/// What a field measurement can be before it is a slip of the pen. Both ends are in SI; the lower
/// one is allowed.
struct EntryLimits {
    Kind kind;
    double least;
    double most;
    std::string_view reason;  ///< why the limits stand there, said to the person
};

/// The widest field booms are about 150 ft (common practice); half an inch is a wiped band.
inline constexpr EntryLimits width_limits{
    Kind::length, 0.5 * inches.si, 200.0 * feet.si,
    "no ground sprayer serves less than half an inch or more than 200 ft; check the unit"};
/// Published courses run from 5.7 ft to 660 ft and timed roads to a mile; 5 miles leaves room.
inline constexpr EntryLimits course_length_limits{
    Kind::length, 1.0 * feet.si, 5.0 * miles.si,
    "a measured course is between 1 ft and 5 miles; check the unit"};
/// One minute is the usual catch, a refilled field a few hours; one hour is one timed run.
inline constexpr EntryLimits run_time_limits{
    Kind::duration, 0.5, 3600.0,
    "a timed run or catch is between half a second and one hour; check minutes against seconds"};
inline constexpr EntryLimits speed_limits{
    Kind::speed, 0.1 * miles_per_hour.si, 30.0 * miles_per_hour.si,
    "people walk at 1 to 4 mph and rigs spray at up to 30 mph; a sprayer that stands still has no "
    "output per area"};
inline constexpr EntryLimits flow_limits{Kind::flow, 1e-4 * us_gallons_per_minute.si,
                                         500.0 * us_gallons_per_minute.si,
                                         "sprayer flow is between 0.0001 and 500 gal/min"};
inline constexpr EntryLimits catch_limits{Kind::volume, 0.1 * millilitres.si,
                                          1000.0 * us_gallons.si,
                                          "a catch or refill is between 0.1 mL and 1000 gal"};
inline constexpr EntryLimits catch_weight_limits{Kind::mass, 0.1 * grams.si, 10000.0 * pounds.si,
                                                 "a weighed catch is between 0.1 g and 10000 lb"};
inline constexpr EntryLimits tank_limits{Kind::volume, 0.1 * litres.si, 10000.0 * us_gallons.si,
                                         "tanks hold between 0.1 L and 10000 gal"};
/// From one square foot (a spot) to a thousand acres (a field sprayed to a refill mark).
inline constexpr EntryLimits area_limits{
    Kind::area, square_feet.si, 1000.0 * acres.si,
    "a plot or field for calibration is between 1 ft2 and 1000 ac; check the unit"};
inline constexpr EntryLimits density_limits{
    Kind::density, 0.5 * kilograms_per_litre.si, 2.5 * kilograms_per_litre.si,
    "spray liquids weigh between 0.5 and 2.5 kg/L (4 to 21 lb/gal)"};
inline constexpr EntryLimits output_limits{Kind::mix_per_area, 0.001 * us_gallons_per_acre.si,
                                           100000.0 * us_gallons_per_acre.si,
                                           "an output is between 0.001 and 100000 gal/ac"};
inline constexpr EntryLimits tolerance_limits{
    Kind::fraction, 0.0, 0.5, "a tolerance is between 0 and 50 % of the thing measured"};
inline constexpr EntryLimits slip_limits{Kind::duration, 0.0, 5.0,
                                         "a stopwatch slip is between 0 and 5 seconds"};

/// Checks one measured value.
///
/// @param si     the value
/// @param text   what was typed; printed back when it is not empty
/// @param field  path of the request member, for Error.field
/// @param what   the thing measured, as the first words of the message: "Course length"
/// @errors invalid_input when it is not a finite number; out_of_range beyond the limits
[[nodiscard]] Result<void> within(double si, std::string_view text, const EntryLimits& limits,
                                  std::string_view field, std::string_view what,
                                  const Notes& notes);

template <Kind K>
[[nodiscard]] Result<void> within(const Reading<K>& reading, const EntryLimits& limits,
                                  std::string_view field, std::string_view what,
                                  const Notes& notes) {
    return within(reading.value.si(), reading.text, limits, field, what, notes);
}
template <Kind K>
[[nodiscard]] Result<void> within(const std::optional<Reading<K>>& reading,
                                  const EntryLimits& limits, std::string_view field,
                                  std::string_view what, const Notes& notes) {
    if (!reading) {
        return {};
    }
    return within(*reading, limits, field, what, notes);
}

}  // namespace swathbook::calibration
