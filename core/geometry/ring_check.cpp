#include "core/geometry/ring_check.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/base/sort.hpp"

namespace swathbook::geometry {
namespace {

constexpr std::size_t most_looks = 3'000'000;  // a tenth of a second

/// Ends of four points on one line, sorted: the middle two bound what two edges share.
Meeting meeting_on_one_line(GridPoint a, GridPoint b, GridPoint c, GridPoint d) {
    const GridPoint low = std::max(std::min(a, b), std::min(c, d));
    const GridPoint high = std::min(std::max(a, b), std::max(c, d));
    if (high < low) {
        return Meeting::none;
    }
    return low == high ? Meeting::touch : Meeting::overlap;
}

/// Edges that follow each other share a point by right; spikes are already gone.
bool are_neighbours(const GridRing& ring, std::size_t a, std::size_t b) {
    return b == a + 1 || (a == 0 && b + 1 == ring.size());
}

}  // namespace

Meeting meeting_of(GridPoint a, GridPoint b, GridPoint c, GridPoint d) {
    const int c_side = turn(a, b, c);
    const int d_side = turn(a, b, d);
    if (c_side == 0 && d_side == 0) {
        return meeting_on_one_line(a, b, c, d);
    }
    const int a_side = turn(c, d, a);
    const int b_side = turn(c, d, b);
    if (c_side * d_side < 0 && a_side * b_side < 0) {
        return Meeting::cross;
    }
    const bool touches =
        (c_side == 0 && within_box(a, b, c)) || (d_side == 0 && within_box(a, b, d)) ||
        (a_side == 0 && within_box(c, d, a)) || (b_side == 0 && within_box(c, d, b));
    return touches ? Meeting::touch : Meeting::none;
}

GridPoint meeting_point(GridPoint a, GridPoint b, GridPoint c, GridPoint d) {
    if (meeting_of(a, b, c, d) != Meeting::cross) {
        const bool c_on = turn(a, b, c) == 0 && within_box(a, b, c);
        const bool d_on = turn(a, b, d) == 0 && within_box(a, b, d);
        const bool a_on = turn(c, d, a) == 0 && within_box(c, d, a);
        return c_on ? c : (d_on ? d : (a_on ? a : b));
    }
    const auto cross = [](GridPoint u, GridPoint v) {
        return static_cast<double>(static_cast<Wide>(u.east) * v.north -
                                   static_cast<Wide>(u.north) * v.east);
    };
    const GridPoint along{b.east - a.east, b.north - a.north};
    const GridPoint other{d.east - c.east, d.north - c.north};
    const double share = cross({c.east - a.east, c.north - a.north}, other) / cross(along, other);
    return {a.east + std::llround(share * static_cast<double>(along.east)),
            a.north + std::llround(share * static_cast<double>(along.north))};
}

SelfMeetings self_meetings(const GridRing& ring, SelfMeeting known, std::size_t most) {
    SelfMeetings found;
    std::size_t looks = 0;
    found.all = EdgeTree(ring).pairs_within([&](std::size_t first, std::size_t second) {
        if (first > second) {
            std::swap(first, second);
        }
        if (are_neighbours(ring, first, second)) {
            return true;
        }
        const GridPoint a = ring.start(first);
        const GridPoint b = ring.end(first);
        const GridPoint c = ring.start(second);
        const GridPoint d = ring.end(second);
        const Meeting meeting = meeting_of(a, b, c, d);
        if (meeting != Meeting::none) {
            found.places.push_back({meeting, first, second, meeting_point(a, b, c, d)});
        }
        return found.places.size() < most && ++looks < most_looks;
    });
    if (found.places.empty()) {
        found.places.push_back(known);
    }
    sort_list(found.places, [](const SelfMeeting& u, const SelfMeeting& v) {
        return std::tie(u.first_edge, u.second_edge) < std::tie(v.first_edge, v.second_edge);
    });
    return found;
}

Lobes lobes_at(const GridRing& ring, const SelfMeeting& meeting) {
    Lobes lobes;
    lobes.first.push_back(meeting.place);
    for (std::size_t i = meeting.first_edge + 1; i <= meeting.second_edge; ++i) {
        lobes.first.push_back(ring.points[i]);
    }
    lobes.second.push_back(meeting.place);
    for (std::size_t i = meeting.second_edge + 1; i < ring.size(); ++i) {
        lobes.second.push_back(ring.points[i]);
    }
    for (std::size_t i = 0; i <= meeting.first_edge; ++i) {
        lobes.second.push_back(ring.points[i]);
    }
    return lobes;
}

}  // namespace swathbook::geometry
