#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "core/geometry/edge_tree.hpp"
#include "core/geometry/grid_ring.hpp"

namespace swathbook::geometry {

/// How two edges meet where they should not.
enum class Meeting : std::uint8_t {
    none,
    touch,    ///< an end of one lies on the other
    cross,    ///< they pass through each other
    overlap,  ///< they lie on top of each other over some length
};

/// Exact: no rounding decides.
[[nodiscard]] Meeting meeting_of(GridPoint a, GridPoint b, GridPoint c, GridPoint d);

/// The point two edges share: their crossing rounded to the grid, or a common point when they
/// touch.
[[nodiscard]] GridPoint meeting_point(GridPoint a, GridPoint b, GridPoint c, GridPoint d);

/// A place where a ring meets itself.
struct SelfMeeting {
    Meeting meeting = Meeting::none;
    std::size_t first_edge =
        0;  ///< index in the GridRing; the edge runs from this point to the next
    std::size_t second_edge = 0;  ///< the later one
    GridPoint place;
};

/// One place where a ring that should be simple meets itself; nothing when it is simple.
///
/// @accuracy exact on the 1e-9 degree grid; time grows as n log n whatever the shape
/// @source   M. I. Shamos and D. Hoey, Geometric intersection problems, 17th IEEE Symposium on
///           Foundations of Computer Science (1976) 208-215
/// @cases    tests/unit/geometry/validity_test.cpp judges it against GEOS and against all pairs
[[nodiscard]] std::optional<SelfMeeting> first_self_meeting(const GridRing& ring);

/// The places where a ring meets itself, in the order of its edges.
struct SelfMeetings {
    std::vector<SelfMeeting> places;
    bool all = true;  ///< false when there may be more: the search stopped early
};

/// Looks for all meetings of a ring known to have one, to tell the user; gives up after `most` of
/// them or some millions of looks.
[[nodiscard]] SelfMeetings self_meetings(const GridRing& ring, SelfMeeting known, std::size_t most);

/// The two loops a ring falls into at one place where it crosses or touches itself.
struct Lobes {
    std::vector<GridPoint> first;
    std::vector<GridPoint> second;
};
[[nodiscard]] Lobes lobes_at(const GridRing& ring, const SelfMeeting& meeting);

}  // namespace swathbook::geometry
