#include "core/quantity/kind.hpp"

#include <array>
#include <cstddef>

#include "core/base/assert.hpp"

namespace swathbook {
namespace {

using enum Substance;
using D = Dimension;
using K = Kind;

constexpr std::array kinds{
    KindInfo{K::length, "length", D::length, any, "ft", "m", "26 ft"},
    KindInfo{K::area, "area", D::area, any, "ac", "ha", "7.4 ac"},
    KindInfo{K::planned_area, "planned_area", D::area, any, "ac", "ha", "7.4 ac"},
    KindInfo{K::gross_area, "gross_area", D::area, any, "ac", "ha", "7.4 ac"},
    KindInfo{K::net_area, "net_area", D::area, any, "ac", "ha", "7.4 ac"},
    KindInfo{K::payable_area, "payable_area", D::area, any, "ac", "ha", "7.4 ac"},
    KindInfo{K::band_area, "band_area", D::area, any, "ac", "ha", "7.4 ac"},
    KindInfo{K::volume, "volume", D::volume, any, "gal", "L", "47 gal"},
    KindInfo{K::mass, "mass", D::mass, any, "lb", "kg", "4.25 lb"},
    KindInfo{K::ingredient_mass, "ingredient_mass", D::mass, ingredient, "lb a.i.", "kg a.i.",
             "1.5 lb a.i."},
    KindInfo{K::acid_mass, "acid_mass", D::mass, acid, "lb a.e.", "kg a.e.", "1.5 lb a.e."},
    KindInfo{K::duration, "duration", D::time, any, "s", "s", "31.5 s"},
    KindInfo{K::speed, "speed", D::speed, any, "mph", "km/h", "4 mph"},
    KindInfo{K::flow, "flow", D::flow, any, "gal/min", "L/min", "2.60 gal/min"},
    KindInfo{K::pressure, "pressure", D::pressure, any, "psi", "bar", "40 psi"},
    KindInfo{K::angle, "angle", D::angle, any, "deg", "deg", "110 deg"},
    KindInfo{K::temperature, "temperature", D::temperature, any, "degF", "degC", "72 degF"},
    KindInfo{K::temperature_change, "temperature_change", D::temperature_change, any, "delta degF",
             "delta degC", "8 delta degF"},
    KindInfo{K::fraction, "fraction", D::ratio, any, "%", "%", "80 %"},
    KindInfo{K::mix_per_area, "mix_per_area", D::volume_per_area, any, "gal/ac", "L/ha",
             "20 gal/ac"},
    KindInfo{K::product_volume_per_area, "product_volume_per_area", D::volume_per_area, any,
             "fl oz/ac", "L/ha", "1 qt/ac"},
    KindInfo{K::product_mass_per_area, "product_mass_per_area", D::mass_per_area, any, "oz wt/ac",
             "kg/ha", "4 oz wt/ac"},
    KindInfo{K::ingredient_per_area, "ingredient_per_area", D::mass_per_area, ingredient,
             "lb a.i./ac", "kg a.i./ha", "1.5 lb a.i./ac"},
    KindInfo{K::acid_per_area, "acid_per_area", D::mass_per_area, acid, "lb a.e./ac", "kg a.e./ha",
             "1.5 lb a.e./ac"},
    KindInfo{K::ingredient_strength, "ingredient_strength", D::mass_per_volume, ingredient,
             "lb a.i./gal", "g a.i./L", "4 lb a.i./gal"},
    KindInfo{K::acid_strength, "acid_strength", D::mass_per_volume, acid, "lb a.e./gal", "g a.e./L",
             "3 lb a.e./gal"},
    KindInfo{K::density, "density", D::mass_per_volume, any, "lb/gal", "kg/L", "10.65 lb/gal"},
    KindInfo{K::product_volume_per_mix, "product_volume_per_mix", D::volume_per_volume, any,
             "fl oz/gal", "mL/L", "1 qt/100 gal"},
    KindInfo{K::product_mass_per_mix, "product_mass_per_mix", D::mass_per_volume, any, "lb/100 gal",
             "g/L", "17 lb/100 gal"},
    KindInfo{K::percent_by_volume, "percent_by_volume", D::ratio, any, "% v/v", "% v/v", "2 % v/v"},
    KindInfo{K::percent_by_weight, "percent_by_weight", D::ratio, any, "% w/w", "% w/w", "2 % w/w"},
    KindInfo{K::area_per_time, "area_per_time", D::area_per_time, any, "ac/h", "ha/h", "5 ac/h"},
    KindInfo{K::volume_each, "volume_each", D::volume_each, any, "mL each", "mL each",
             "0.5 mL per cut"},
    KindInfo{K::ingredient_each, "ingredient_each", D::mass_each, ingredient, "g a.i. each",
             "g a.i. each", "0.12 g a.i. each"},
    KindInfo{K::acid_each, "acid_each", D::mass_each, acid, "g a.e. each", "g a.e. each",
             "0.12 g a.e. each"},
    KindInfo{K::count_per_area, "count_per_area", D::count_per_area, any, "each/ac", "each/ha",
             "412 per ac"},
    KindInfo{K::dissolved, "dissolved", D::mass_fraction, any, "ppm", "mg/L", "100 ppm"},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < kinds.size(); ++i) {
        if (static_cast<std::size_t>(kinds[i].kind) != i) {
            return false;
        }
    }
    return true;
}
static_assert(in_order(), "info_of looks kinds up by their number");

}  // namespace

const KindInfo& info_of(Kind kind) {
    const auto index = static_cast<std::size_t>(kind);
    SWATHBOOK_ASSERT(index < kinds.size(), "every kind has a row");
    return kinds[index];
}

std::span<const KindInfo> all_kinds() {
    return kinds;
}

}  // namespace swathbook
