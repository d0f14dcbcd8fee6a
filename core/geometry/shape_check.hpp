#pragma once

#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/geometry/grid_ring.hpp"
#include "core/geometry/position.hpp"

namespace swathbook::geometry {

/// Refuses rings whose inside is in doubt, and says where.
///
/// Taken off, and named in a finding: repeated positions, spikes without width. Taken as they are:
/// rings wound either way, holes that touch the boundary or each other in a point,
/// parts that share an edge or a corner, a part inside another's hole.
///
/// Edges are taken as straight in longitude and latitude here; the shortest lines that the area is
/// measured along differ from them by the square of the edge's length over about 50,000 km (2 cm on
/// one kilometre).
///
/// @param set   positions that check_positions let through
/// @return the same polygons without what was taken off: what is to be measured
/// @errors invalid_input: ring without area; inconsistent: a ring crosses or touches itself (with
///         both edges, the place, and the area of both lobes), a hole outside its boundary, along
///         it or into another hole, two parts on the same ground
/// @accuracy exact on a grid of 1e-9 degree (0.1 mm)
/// @source OGC 06-103r4, Simple feature access part 1 (2011), 6.1.11.1: assertions for polygons
/// @cases  tests/cases/geometry/refused.case; tests/unit/geometry/validity_test.cpp against GEOS
[[nodiscard]] Result<PolygonSet> check_shapes(const PolygonSet& set, Notes& notes);

}  // namespace swathbook::geometry
