#pragma once

#include <cstdint>

namespace swathbook {

/// What a unit can measure. Units belong to a dimension; quantities belong to a kind (kind.hpp),
/// because two kinds can share a dimension and still must not be mixed (carrier and product are
/// both volume per area).
enum class Dimension : std::uint8_t {
    length,
    area,
    volume,
    mass,
    time,
    speed,
    flow,  ///< volume per time
    pressure,
    angle,
    temperature,         ///< a point on a scale with an offset
    temperature_change,  ///< a difference: no offset
    ratio,               ///< a pure number, printed as percent
    volume_per_area,
    mass_per_area,
    mass_per_volume,
    volume_per_volume,  ///< qt/100 gal: a ratio that the label writes with two volumes
    area_per_time,
    volume_each,  ///< volume per cut, stem or plant
    mass_each,
    count_per_area,  ///< cuts or stems per area
    mass_fraction,   ///< ppm of dissolved minerals in water (1 mg/L of water)
    count,           ///< cuts, stems, plants: only as part of a unit, no kind is measured in it
};

}  // namespace swathbook
