#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "core/quantity/dimension.hpp"

namespace swathbook {

/// The kinds of quantity the tool tells apart. Two kinds never mix silently, even at equal
/// dimension.
enum class Kind : std::uint8_t {
    length,
    area,  ///< ground measured or described, before it is said which of the four acres it is
    planned_area,  ///< acres in the plan or contract
    gross_area,    ///< inside the boundary, exclusions not yet taken out
    net_area,      ///< ground actually wetted
    payable_area,  ///< acres a programme pays for
    band_area,     ///< ground under the bands only, where a label counts the band
    volume,
    mass,             ///< of product or of anything on a scale
    ingredient_mass,  ///< active ingredient
    acid_mass,        ///< acid equivalent
    duration,
    speed,
    flow,
    pressure,
    angle,
    temperature,
    temperature_change,
    fraction,
    mix_per_area,             ///< spray mix (carrier and all) put on an area: "gallons per acre"
    product_volume_per_area,  ///< product as sold, liquid
    product_mass_per_area,    ///< product as sold, dry
    ingredient_per_area,
    acid_per_area,
    ingredient_strength,  ///< active ingredient in a volume of product
    acid_strength,        ///< acid equivalent in a volume of product
    density,
    product_volume_per_mix,  ///< "qt/100 gal"
    product_mass_per_mix,    ///< "lb/100 gal"
    percent_by_volume,
    percent_by_weight,
    area_per_time,
    volume_each,      ///< volume per cut, stem or plant
    ingredient_each,  ///< a.i. per cut, stem or plant
    acid_each,        ///< a.e. per cut, stem or plant
    count_per_area,   ///< cuts or stems per area
    dissolved,        ///< minerals in water, ppm
};

/// Which substance a mass in a unit text must name: "lb a.i./ac" and "lb a.e./ac" are not "lb/ac".
enum class Substance : std::uint8_t { any, ingredient, acid };

struct KindInfo {
    Kind kind;
    std::string_view word;  ///< snake_case, as in schemas: "mix_per_area"
    Dimension dimension;
    Substance substance;       ///< what the unit text must say of a mass
    std::string_view us_unit;  ///< unit an answer uses by default
    std::string_view metric_unit;
    std::string_view example;  ///< for schemas and error messages: "20 gal/ac"
};

[[nodiscard]] const KindInfo& info_of(Kind kind);
[[nodiscard]] std::span<const KindInfo> all_kinds();

}  // namespace swathbook
