#include "core/geometry/grid_ring.hpp"

#include <algorithm>
#include <cmath>

namespace swathbook::geometry {
namespace {

bool goes_back(GridPoint a, GridPoint b, GridPoint c) {
    if (turn(a, b, c) != 0) {
        return false;
    }
    const Wide along = static_cast<Wide>(b.east - a.east) * (c.east - b.east) +
                       static_cast<Wide>(b.north - a.north) * (c.north - b.north);
    return along < 0;
}

void drop_last(GridRing& ring) {
    ring.points.pop_back();
    ring.given.pop_back();
}

/// Adds a point, undoing spikes and repeats that it completes.
void append(GridRing& ring, GridPoint point, std::size_t given) {
    while (ring.size() >= 2 && goes_back(ring.points[ring.size() - 2], ring.points.back(), point)) {
        ring.spikes.push_back({ring.given.back(), ring.points.back()});
        drop_last(ring);
    }
    if (!ring.points.empty() && ring.points.back() == point) {
        return;
    }
    ring.points.push_back(point);
    ring.given.push_back(given);
}

/// The same across the place where the ring closes.
void tidy_closing(GridRing& ring) {
    std::size_t first = 0;
    bool changed = true;
    while (changed && ring.size() - first >= 2) {
        changed = false;
        const GridPoint last = ring.points.back();
        const GridPoint start = ring.points[first];
        if (last == start) {
            drop_last(ring);
            changed = true;
        } else if (goes_back(ring.points[ring.size() - 2], last, start)) {
            ring.spikes.push_back({ring.given.back(), last});
            drop_last(ring);
            changed = true;
        } else if (goes_back(last, start, ring.points[first + 1])) {
            ring.spikes.push_back({ring.given[first], start});
            ++first;
            changed = true;
        }
    }
    const auto cut = static_cast<std::ptrdiff_t>(first);
    ring.points.erase(ring.points.begin(), ring.points.begin() + cut);
    ring.given.erase(ring.given.begin(), ring.given.begin() + cut);
    if (ring.size() < 3) {
        ring.points.clear();
        ring.given.clear();
    }
}

}  // namespace

GridPoint grid_point(Position position) {
    return {std::llround(position.longitude_deg * grid_steps_per_degree),
            std::llround(position.latitude_deg * grid_steps_per_degree)};
}

Position position_of(GridPoint point) {
    return {static_cast<double>(point.east) / grid_steps_per_degree,
            static_cast<double>(point.north) / grid_steps_per_degree};
}

GridRing grid_ring(std::span<const Position> ring) {
    GridRing made;
    std::size_t count = ring.size();
    if (count > 1 && ring.front() == ring.back()) {
        --count;
    }
    made.points.reserve(count);
    made.given.reserve(count);
    for (std::size_t i = 0; i < count; ++i) {
        const GridPoint point = grid_point(ring[i]);
        if (i > 0 && point == grid_point(ring[i - 1])) {
            ++made.repeated;
            continue;
        }
        append(made, point, i);
    }
    tidy_closing(made);
    return made;
}

Wide doubled_area(const GridRing& ring) {
    Wide doubled = 0;
    for (std::size_t edge = 0; edge < ring.size(); ++edge) {
        const GridPoint a = ring.start(edge);
        const GridPoint b = ring.end(edge);
        doubled += static_cast<Wide>(a.east) * b.north - static_cast<Wide>(b.east) * a.north;
    }
    return doubled;
}

void make_counter_clockwise(GridRing& ring) {
    if (doubled_area(ring) < 0) {
        std::reverse(ring.points.begin(), ring.points.end());
        std::reverse(ring.given.begin(), ring.given.end());
    }
}

Side side_of(const GridRing& ring, GridPoint doubled) {
    bool inside = false;
    for (std::size_t edge = 0; edge < ring.size(); ++edge) {
        const GridPoint a{2 * ring.start(edge).east, 2 * ring.start(edge).north};
        const GridPoint b{2 * ring.end(edge).east, 2 * ring.end(edge).north};
        const bool spans = (a.north > doubled.north) != (b.north > doubled.north);
        const bool level = a.north == doubled.north || b.north == doubled.north;
        if (!spans && !level) {
            continue;
        }
        const int side = turn(a, b, doubled);
        if (side == 0 && within_box(a, b, doubled)) {
            return Side::on;
        }
        if (spans && (side > 0) == (b.north > a.north)) {
            inside = !inside;
        }
    }
    return inside ? Side::inside : Side::outside;
}

}  // namespace swathbook::geometry
