#pragma once

#include <optional>
#include <string>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/geometry/position.hpp"

namespace swathbook::geometry {

/// The path of a ring or position for Error.field: "geometry.coordinates[1][4]".
[[nodiscard]] std::string path_of(const Polygon& polygon, std::size_t ring);
[[nodiscard]] std::string path_of(const Polygon& polygon, std::size_t ring, std::size_t position);

/// "-98.1234567, 40.1234567", longitude first, as GeoJSON writes it.
[[nodiscard]] std::string show(Position position);

/// Refuses numbers that cannot be longitude and latitude of a closed ring, and says what they look
/// like instead.
///
/// @param set           rings as they came, each with its closing position
/// @param expected_near a place known to be near the ground, or nothing
/// @errors invalid_input: no polygon, ring of fewer than four positions, ring not closed;
///         out_of_range: not a finite number, latitude beyond 90 (swapped axes named when the
///         numbers fit the other way round), longitude beyond 180, numbers that look like metres or
///         feet; inconsistent: far from the expected place but near it when swapped;
///         unsupported: an edge across the 180 degree meridian or longer than 90 degrees
/// @source H. Butler et al., The GeoJSON Format, RFC 7946 (2016): sections 3.1.1 (longitude first),
///         3.1.6 (closed rings of four or more positions), 3.1.9 (antimeridian cutting), 4 (WGS84)
/// @cases  tests/cases/geometry/refused.case
[[nodiscard]] Result<void> check_positions(const PolygonSet& set,
                                           std::optional<Position> expected_near, Notes& notes);

}  // namespace swathbook::geometry
