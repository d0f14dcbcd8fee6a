#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

#include "core/geometry/position.hpp"

/// Positions on a grid of whole numbers, where "left of", "on" and "crosses" have exact answers.
namespace swathbook::geometry {

/// Longitude and latitude in steps of 1e-9 degree (0.1 mm of ground). 180 degrees are 38 bits, so a
/// cross product fits in 128 bits with room to spare.
struct GridPoint {
    std::int64_t east = 0;
    std::int64_t north = 0;

    auto operator<=>(const GridPoint&) const = default;
};

__extension__ using Wide = __int128;

inline constexpr double grid_steps_per_degree = 1e9;

/// @valid degrees within +-1000
[[nodiscard]] GridPoint grid_point(Position position);
[[nodiscard]] Position position_of(GridPoint point);

/// Sign of the turn a-b-c: +1 left, -1 right, 0 straight on or back. Exact.
[[nodiscard]] inline int turn(GridPoint a, GridPoint b, GridPoint c) {
    const Wide cross = static_cast<Wide>(b.east - a.east) * (c.north - a.north) -
                       static_cast<Wide>(b.north - a.north) * (c.east - a.east);
    return cross > 0 ? 1 : (cross < 0 ? -1 : 0);
}

/// True when p, known to lie on the line a-b, lies between them or on an end.
[[nodiscard]] inline bool within_box(GridPoint a, GridPoint b, GridPoint p) {
    const auto between = [](std::int64_t u, std::int64_t v, std::int64_t w) {
        return u < v ? (u <= w && w <= v) : (v <= w && w <= u);
    };
    return between(a.east, b.east, p.east) && between(a.north, b.north, p.north);
}

/// An out-and-back of no width, taken off a ring.
struct Spike {
    std::size_t tip = 0;  ///< index in the ring as given
    GridPoint point;
};

/// A ring ready for exact questions: no closing point, no repeated points, no spikes.
struct GridRing {
    std::vector<GridPoint> points{};
    std::vector<std::size_t> given{};  ///< index of each point in the ring it was made from
    std::size_t repeated = 0;          ///< points that only repeated the one before
    std::vector<Spike> spikes{};

    [[nodiscard]] std::size_t size() const { return points.size(); }
    [[nodiscard]] GridPoint start(std::size_t edge) const { return points[edge]; }
    [[nodiscard]] GridPoint end(std::size_t edge) const {
        return points[edge + 1 == points.size() ? 0 : edge + 1];
    }
};

/// Puts a ring on the grid and takes off what adds no ground: the closing point, repeated points
/// and spikes. What is left may have no points at all.
[[nodiscard]] GridRing grid_ring(std::span<const Position> ring);

/// Twice the area on the grid, positive counter-clockwise. Exact.
[[nodiscard]] Wide doubled_area(const GridRing& ring);

/// Turns the ring counter-clockwise; `given` follows.
void make_counter_clockwise(GridRing& ring);

enum class Side : std::uint8_t { outside, on, inside };

/// Where a point lies. The point is given in half grid steps, so that the middle of any edge can be
/// asked for. Exact, by counting crossings of a ray to the east.
/// @param doubled the point's coordinates times two
[[nodiscard]] Side side_of(const GridRing& ring, GridPoint doubled);

}  // namespace swathbook::geometry
