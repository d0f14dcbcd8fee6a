#pragma once

#include <cstddef>

#include "core/geometry/edge_tree.hpp"
#include "core/geometry/grid_ring.hpp"

namespace swathbook::geometry {

/// A simple ring, counter-clockwise, with its search tree.
struct IndexedRing {
    explicit IndexedRing(GridRing given_ring) : ring(std::move(given_ring)), tree(ring) {}
    GridRing ring;
    EdgeTree tree;
};

/// How the ground inside one simple ring lies to the ground inside another.
struct RingRelation {
    bool crosses = false;         ///< the boundaries pass through each other
    bool interiors_meet = false;  ///< some ground is inside both
    bool first_within = false;    ///< all ground of the first is inside the second
    bool second_within = false;   ///< all ground of the second is inside the first
    bool share_edge = false;      ///< the boundaries run on top of each other over some length
    std::size_t first_edge = 0;   ///< where they cross or lie together
    std::size_t second_edge = 0;
    GridPoint place;
};

/// Decides exactly, also when the rings share corners or edges: every edge of either ring is cut
/// where the other touches it, and each piece is inside, outside, or shared with the other ring's
/// ground on the same or on the far side.
[[nodiscard]] RingRelation relate(const IndexedRing& first, const IndexedRing& second);

}  // namespace swathbook::geometry
