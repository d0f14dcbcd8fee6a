#pragma once

#include <span>

#include "core/base/result.hpp"
#include "core/geometry/position.hpp"
#include "core/quantity/quantity.hpp"

namespace swathbook::geometry {

/// What a ring measures on the ellipsoid.
struct RingMeasure {
    Area signed_area;  ///< positive when the ring runs counter-clockwise
    Length perimeter;
    Length longest_edge;
};

/// Area and perimeter of the ground inside a ring whose edges are shortest lines on the WGS84
/// ellipsoid.
///
/// Identities: turning the ring round changes the sign and nothing else; starting at another
/// position or moving all of it in longitude changes nothing; cutting the ring in two along a
/// shortest line between two of its positions gives two areas that add up to it.
///
/// @param ring positions in order; a closing position equal to the first may be there or not
/// @return signed area (of the side with less than half the Earth), perimeter, longest edge
/// @accuracy as geodesic_edge; the sum over edges is compensated
/// @valid    any ring, also across the 180 degree meridian or round a pole; self-crossings are not
///           looked for here (see validity.hpp)
/// @errors   unsupported when an edge joins nearly opposite positions
/// @cases    tests/cases/geometry/geodesic_area.case
[[nodiscard]] Result<RingMeasure> measure_ring(std::span<const Position> ring);

}  // namespace swathbook::geometry
