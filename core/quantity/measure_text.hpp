#pragma once

#include <string>

#include "core/base/notes.hpp"
#include "core/quantity/quantity.hpp"

namespace swathbook {

/// An amount as it is measured out with jugs, cylinders and scales.
template <Kind K>
struct Measured {
    std::string text;    ///< parse reads it back: "1 gal + 2 qt + 8-1/4 fl oz"
    Quantity<K> poured;  ///< exactly what the text says
};

/// The finest mark read on a US measure: a quarter of an ounce, as common jugs have it.
inline constexpr int usual_parts_of_an_ounce = 4;

/// A volume in whole gallons, quarts and parts of a fluid ounce, or in litres and millilitres.
///
/// US: to the nearest 1/parts fl oz; where that would be more than 2 % off, millilitres instead.
/// Metric: litres to the nearest millilitre from 1 L, millilitres to the nearest whole from 100 mL,
/// half from 20 mL, tenth from 2 mL and hundredth below.
///
/// @param volume             finite, 0 or more
/// @param parts_of_an_ounce  1, 2, 4, 8 or 16
/// @accuracy `poured` differs from `volume` by at most half the mark named above
/// @source   the marks are common practice
[[nodiscard]] Measured<Kind::volume> measured(Volume volume, UnitSystem units,
                                              int parts_of_an_ounce = usual_parts_of_an_ounce);

/// A mass in pounds and parts of an ounce of weight, or in kilograms and grams; the same rules,
/// with grams for millilitres.
[[nodiscard]] Measured<Kind::mass> measured(Mass mass, UnitSystem units,
                                            int parts_of_an_ounce = usual_parts_of_an_ounce);

/// The text alone, for mixing cards: "1 qt + 8 fl oz".
[[nodiscard]] std::string show_measured(Volume volume, UnitSystem units,
                                        int parts_of_an_ounce = usual_parts_of_an_ounce);
[[nodiscard]] std::string show_measured(Mass mass, UnitSystem units,
                                        int parts_of_an_ounce = usual_parts_of_an_ounce);

}  // namespace swathbook
