#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "core/quantity/dimension.hpp"

namespace swathbook {

/// The units that unit text is built from. "lb/100 gal" is pound and gallon; squares and cubes of
/// lengths and quotients are put together by the reader (detail/unit_text.hpp).
enum class Atom : std::uint8_t {
    metre,
    centimetre,
    millimetre,
    kilometre,
    micrometre,
    inch,
    foot,
    yard,
    mile,
    rod,
    chain,
    acre,
    hectare,
    litre,
    millilitre,
    centilitre,
    decilitre,
    hectolitre,
    gallon,  ///< US; imperial must be written
    quart,
    pint,
    fluid_ounce,
    cup,
    tablespoon,
    teaspoon,
    imperial_gallon,
    imperial_quart,
    imperial_pint,
    imperial_fluid_ounce,
    ounce,  ///< of weight; the bare word is refused because it can mean a fluid ounce
    pound,
    gram,
    kilogram,
    milligram,
    microgram,
    tonne,
    short_ton,
    long_ton,
    grain,
    second,
    minute,
    hour,
    day,
    week,
    mile_per_hour,
    kilometre_per_hour,
    knot,
    foot_per_second,
    foot_per_minute,
    gallon_per_minute,
    gallon_per_hour,
    litre_per_minute,
    psi,
    bar,
    millibar,
    pascal,
    hectopascal,
    kilopascal,
    megapascal,
    degree,
    radian,
    kelvin,
    celsius,
    fahrenheit,
    percent,
    gallon_per_acre,
    ppm,
    grain_per_gallon,
    each,
};

/// One unit with its exact factor.
struct UnitRow {
    Atom atom;
    std::string_view name;  ///< a spelling that parse reads
    Dimension dimension;
    double si;          ///< SI units in one of it
    double zero = 0.0;  ///< its zero point in SI (temperatures)
};

[[nodiscard]] std::span<const UnitRow> all_units();
[[nodiscard]] const UnitRow& row_of(Atom atom);

}  // namespace swathbook
