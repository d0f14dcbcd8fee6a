#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.hpp"
#include "core/quantity/quantity.hpp"

/// Directions on the compass: read, named, compared and averaged on the circle.
namespace swathbook::weather {

/// A direction as a person gave it, clockwise from north, 0 up to 360 degrees.
struct Direction {
    Angle angle{};
    Angle half_step{};  ///< a word of the 16 points is good to 11.25 degrees
};

/// Reads "225 deg", "225", "SW", "south-west", "WSW".
///
/// A bare number counts as degrees here: no other unit is met on a wind rose.
/// @errors invalid_input when it is none of them; out_of_range below 0 or above 360 degrees
[[nodiscard]] Result<Direction> parse_direction(std::string_view text, std::string_view field);

/// The nearest of the 16 points: "SW".
[[nodiscard]] std::string_view compass_word(Angle direction);

/// "SW (225 deg)".
[[nodiscard]] std::string direction_words(Angle direction);

/// The lesser angle between two directions, 0 to 180 degrees.
[[nodiscard]] Angle angle_between(Angle a, Angle b);

/// The opposite direction, 0 up to 360 degrees: where the wind goes that comes from here.
[[nodiscard]] Angle opposite(Angle direction);

/// Directions averaged as arrows of equal length laid end to end: 350 and 10 degrees give 0, not
/// 180.
struct MeanDirection {
    double resultant_length = 0.0;  ///< 1 when all agree, 0 when they cancel
    /// Absent when the arrows cancel (resultant length below 1e-9): there is no mean then.
    std::optional<Angle> mean{};
    std::optional<Angle> deviation{};  ///< sqrt(-2 ln R)
};

/// @valid  one or more directions
/// @source S. R. Jammalamadaka and A. SenGupta, Topics in Circular Statistics (2001), section 1.3;
///         the deviation: K. V. Mardia and P. E. Jupp, Directional Statistics (2000), 2.3.11
/// @cases  tests/unit/weather/direction_test.cpp
/// Identities: turning every direction by one angle turns the mean by it and leaves the length; the
/// order does not matter beyond rounding.
[[nodiscard]] MeanDirection mean_of(std::span<const Angle> directions);

}  // namespace swathbook::weather
