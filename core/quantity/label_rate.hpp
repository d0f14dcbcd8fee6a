#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/quantity/kind.hpp"

namespace swathbook {

/// What a label rate counts: the basis is part of the rate and is never changed silently.
enum class RateBasis : std::uint8_t {
    volume_per_area,      ///< product, liquid, on an area: "1 qt/ac"
    mass_per_area,        ///< product, dry, on an area: "4 oz wt/ac"
    ingredient_per_area,  ///< active ingredient on an area: "1.5 lb a.i./ac"
    acid_per_area,        ///< acid equivalent on an area: "1.5 lb a.e./ac"
    volume_per_mix,       ///< product in a volume of spray mix: "1 qt/100 gal"
    mass_per_mix,         ///< dry product in a volume of spray mix: "17 lb/100 gal"
    percent_by_volume,    ///< "0.25 % v/v"
    percent_by_weight,    ///< "2 % w/w"
};

/// The kind whose units print this basis.
[[nodiscard]] Kind kind_of(RateBasis basis);
[[nodiscard]] std::string_view word_of(RateBasis basis);

/// A rate as a label states it: a number, a unit and a basis.
struct LabelRate {
    double si = 0.0;  ///< in the SI unit of kind_of(basis)
    RateBasis basis = RateBasis::volume_per_area;
    double half_step_si = 0.0;
    std::string text{};  ///< exactly what was typed
};

}  // namespace swathbook
