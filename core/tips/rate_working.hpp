#pragma once

#include <string>

#include "core/base/notes.hpp"
#include "core/quantity/quantity.hpp"

/// The trade's own relations with the numbers put in, for working that can be checked with a
/// pencil.
namespace swathbook::tips {

/// "5940 x 0.4108 gal/min / (4 mph x 20 in)", or metric "600 x 1.6 L/min / (8 km/h x 0.5 m)".
///
/// @source 5940 = 43560 ft2/ac * 12 in/ft / 88 ft/min per mph, exact (SportsField Management 2010;
///         Mesa County, Colorado); 600 = 10000 m2/ha * 60 min/h / 1000 m/km
[[nodiscard]] std::string rate_expression(Flow flow, Speed speed, Length width, UnitSystem units);

/// "20 gal/ac x 4 mph x 20 in / 5940", or metric with 600: the same solved for flow.
[[nodiscard]] std::string flow_expression(MixPerArea rate, Speed speed, Length width,
                                          UnitSystem units);

}  // namespace swathbook::tips
