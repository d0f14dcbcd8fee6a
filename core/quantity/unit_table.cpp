#include "core/quantity/unit_table.hpp"

#include <array>
#include <cstddef>

#include "core/base/assert.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {
namespace {

using A = Atom;
using D = Dimension;

/// Kilograms in a grain and SI (mass fraction) in a grain per US gallon of water at 1 kg/L.
constexpr double grain_kg = 64.79891e-6;
constexpr double kilograms_per_litre_of_water_si = 1000.0;

constexpr std::array units{
    UnitRow{A::metre, "m", D::length, metres.si},
    UnitRow{A::centimetre, "cm", D::length, centimetres.si},
    UnitRow{A::millimetre, "mm", D::length, millimetres.si},
    UnitRow{A::kilometre, "km", D::length, kilometres.si},
    UnitRow{A::micrometre, "um", D::length, 1e-6},
    UnitRow{A::inch, "in", D::length, inches.si},
    UnitRow{A::foot, "ft", D::length, feet.si},
    UnitRow{A::yard, "yd", D::length, yards.si},
    UnitRow{A::mile, "mi", D::length, miles.si},
    UnitRow{A::rod, "rod", D::length, 5.0292},
    UnitRow{A::chain, "chain", D::length, 20.1168},
    UnitRow{A::acre, "ac", D::area, acres.si},
    UnitRow{A::hectare, "ha", D::area, hectares.si},
    UnitRow{A::litre, "L", D::volume, litres.si},
    UnitRow{A::millilitre, "mL", D::volume, millilitres.si},
    UnitRow{A::centilitre, "cL", D::volume, 1e-5},
    UnitRow{A::decilitre, "dL", D::volume, 1e-4},
    UnitRow{A::hectolitre, "hL", D::volume, 0.1},
    UnitRow{A::gallon, "gal", D::volume, us_gallons.si},
    UnitRow{A::quart, "qt", D::volume, us_quarts.si},
    UnitRow{A::pint, "pt", D::volume, us_pints.si},
    UnitRow{A::fluid_ounce, "fl oz", D::volume, us_fluid_ounces.si},
    UnitRow{A::cup, "cup", D::volume, 236.5882365e-6},
    UnitRow{A::tablespoon, "tbsp", D::volume, 14.78676478125e-6},
    UnitRow{A::teaspoon, "tsp", D::volume, 4.92892159375e-6},
    UnitRow{A::imperial_gallon, "imp gal", D::volume, imperial_gallons.si},
    UnitRow{A::imperial_quart, "imp qt", D::volume, 1.1365225e-3},
    UnitRow{A::imperial_pint, "imp pt", D::volume, 0.56826125e-3},
    UnitRow{A::imperial_fluid_ounce, "imp fl oz", D::volume, imperial_fluid_ounces.si},
    UnitRow{A::ounce, "oz wt", D::mass, ounces_weight.si},
    UnitRow{A::pound, "lb", D::mass, pounds.si},
    UnitRow{A::gram, "g", D::mass, grams.si},
    UnitRow{A::kilogram, "kg", D::mass, kilograms.si},
    UnitRow{A::milligram, "mg", D::mass, 1e-6},
    UnitRow{A::microgram, "ug", D::mass, 1e-9},
    UnitRow{A::tonne, "tonne", D::mass, 1000.0},
    UnitRow{A::short_ton, "short ton", D::mass, 907.18474},
    UnitRow{A::long_ton, "long ton", D::mass, 1016.0469088},
    UnitRow{A::grain, "grain", D::mass, grain_kg},
    UnitRow{A::second, "s", D::time, seconds.si},
    UnitRow{A::minute, "min", D::time, minutes.si},
    UnitRow{A::hour, "h", D::time, hours.si},
    UnitRow{A::day, "day", D::time, days.si},
    UnitRow{A::week, "week", D::time, 604800.0},
    UnitRow{A::mile_per_hour, "mph", D::speed, miles_per_hour.si},
    UnitRow{A::kilometre_per_hour, "kph", D::speed, kilometres_per_hour.si},
    UnitRow{A::knot, "kn", D::speed, 1852.0 / 3600.0},
    UnitRow{A::foot_per_second, "fps", D::speed, 0.3048},
    UnitRow{A::foot_per_minute, "fpm", D::speed, 0.3048 / 60.0},
    UnitRow{A::gallon_per_minute, "gpm", D::flow, us_gallons_per_minute.si},
    UnitRow{A::gallon_per_hour, "gph", D::flow, us_gallons.si / 3600.0},
    UnitRow{A::litre_per_minute, "lpm", D::flow, litres_per_minute.si},
    UnitRow{A::psi, "psi", D::pressure, pounds_per_square_inch.si},
    UnitRow{A::bar, "bar", D::pressure, bars.si},
    UnitRow{A::millibar, "mbar", D::pressure, 100.0},
    UnitRow{A::pascal, "Pa", D::pressure, pascals.si},
    UnitRow{A::hectopascal, "hPa", D::pressure, 100.0},
    UnitRow{A::kilopascal, "kPa", D::pressure, kilopascals.si},
    UnitRow{A::megapascal, "MPa", D::pressure, 1e6},
    UnitRow{A::degree, "deg", D::angle, degrees.si},
    UnitRow{A::radian, "rad", D::angle, radians.si},
    UnitRow{A::kelvin, "K", D::temperature, kelvins.si},
    UnitRow{A::celsius, "degC", D::temperature, degrees_celsius.si, degrees_celsius.zero},
    UnitRow{A::fahrenheit, "degF", D::temperature, degrees_fahrenheit.si, degrees_fahrenheit.zero},
    UnitRow{A::percent, "%", D::ratio, percents.si},
    UnitRow{A::gallon_per_acre, "gpa", D::volume_per_area, us_gallons_per_acre.si},
    UnitRow{A::ppm, "ppm", D::mass_fraction, parts_per_million.si},
    UnitRow{A::grain_per_gallon, "gpg", D::mass_fraction,
            grain_kg / us_gallons.si / kilograms_per_litre_of_water_si},
    UnitRow{A::each, "each", D::count, 1.0},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < units.size(); ++i) {
        if (static_cast<std::size_t>(units[i].atom) != i) {
            return false;
        }
    }
    return true;
}
static_assert(in_order(), "row_of looks units up by their number");
static_assert(units.size() == static_cast<std::size_t>(A::each) + 1, "every unit has a row");

}  // namespace

std::span<const UnitRow> all_units() {
    return units;
}

const UnitRow& row_of(Atom atom) {
    const auto index = static_cast<std::size_t>(atom);
    SWATHBOOK_ASSERT(index < units.size(), "every unit has a row");
    return units[index];
}

}  // namespace swathbook
