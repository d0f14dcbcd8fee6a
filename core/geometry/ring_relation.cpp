#include "core/geometry/ring_relation.hpp"

#include <algorithm>
#include <tuple>
#include <vector>

#include "core/base/sort.hpp"
#include "core/geometry/ring_check.hpp"

namespace swathbook::geometry {
namespace {

/// A point of the other ring on an edge of this one.
struct Contact {
    std::size_t edge;
    GridPoint point;
};
/// A stretch of an edge that lies on the other ring.
struct Shared {
    std::size_t edge;
    GridPoint low;
    GridPoint high;
    bool same_direction;  // both counter-clockwise, so the ground of both is on the same side
};
struct Contacts {
    std::vector<Contact> points;
    std::vector<Shared> shared;
};

/// Where the pieces of one ring lie to the other.
struct Pieces {
    bool inside = false;
    bool outside = false;
    bool shared_same = false;
    bool shared_far = false;
};

bool same_direction(GridPoint a, GridPoint b, GridPoint c, GridPoint d) {
    return (a < b) == (c < d);
}

void note_overlap(Contacts& first, Contacts& second, std::size_t i, std::size_t j,
                  const GridRing& a, const GridRing& b) {
    const GridPoint p = a.start(i);
    const GridPoint q = a.end(i);
    const GridPoint r = b.start(j);
    const GridPoint s = b.end(j);
    const GridPoint low = std::max(std::min(p, q), std::min(r, s));
    const GridPoint high = std::min(std::max(p, q), std::max(r, s));
    const bool same = same_direction(p, q, r, s);
    for (const GridPoint point : {low, high}) {
        first.points.push_back({i, point});
        second.points.push_back({j, point});
    }
    first.shared.push_back({i, low, high, same});
    second.shared.push_back({j, low, high, same});
}

void sort_along(std::vector<Contact>& contacts, const GridRing& ring) {
    sort_list(contacts, [&](const Contact& u, const Contact& v) {
        if (u.edge != v.edge) {
            return u.edge < v.edge;
        }
        return ring.start(u.edge) < ring.end(u.edge) ? u.point < v.point : v.point < u.point;
    });
}

void place_piece(Pieces& pieces, std::size_t edge, GridPoint from, GridPoint to,
                 const std::vector<Shared>& shared, const GridRing& other) {
    if (from == to) {
        return;
    }
    const GridPoint low = std::min(from, to);
    const GridPoint high = std::max(from, to);
    auto at = std::lower_bound(shared.begin(), shared.end(), edge,
                               [](const Shared& s, std::size_t e) { return s.edge < e; });
    for (; at != shared.end() && at->edge == edge; ++at) {
        if (at->low <= low && high <= at->high) {
            (at->same_direction ? pieces.shared_same : pieces.shared_far) = true;
            return;
        }
    }
    const Side side = side_of(other, {from.east + to.east, from.north + to.north});
    (side == Side::inside ? pieces.inside : pieces.outside) = true;
}

/// Edges that nothing touches lie on the side of the piece they continue, so only touched edges
/// are cut and asked.
Pieces pieces_of(const GridRing& ring, Contacts& contacts, const GridRing& other) {
    Pieces pieces;
    if (contacts.points.empty()) {
        const GridPoint first = ring.points.front();
        const Side side = side_of(other, {2 * first.east, 2 * first.north});
        (side == Side::inside ? pieces.inside : pieces.outside) = true;
        return pieces;
    }
    sort_along(contacts.points, ring);
    sort_list(contacts.shared, [](const Shared& u, const Shared& v) {
        return std::tie(u.edge, u.low) < std::tie(v.edge, v.low);
    });
    const std::vector<Contact>& points = contacts.points;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const std::size_t edge = points[i].edge;
        const bool is_first = i == 0 || points[i - 1].edge != edge;
        const bool is_last = i + 1 == points.size() || points[i + 1].edge != edge;
        if (is_first) {
            place_piece(pieces, edge, ring.start(edge), points[i].point, contacts.shared, other);
        }
        place_piece(pieces, edge, points[i].point, is_last ? ring.end(edge) : points[i + 1].point,
                    contacts.shared, other);
    }
    return pieces;
}

}  // namespace

RingRelation relate(const IndexedRing& first, const IndexedRing& second) {
    RingRelation relation;
    Contacts mine;
    Contacts theirs;
    const GridRing& a = first.ring;
    const GridRing& b = second.ring;
    const auto remember = [&](std::size_t i, std::size_t j, GridPoint place) {
        relation.first_edge = i;
        relation.second_edge = j;
        relation.place = place;
    };
    first.tree.pairs_with(second.tree, [&](std::size_t i, std::size_t j) {
        const Meeting meeting = meeting_of(a.start(i), a.end(i), b.start(j), b.end(j));
        if (meeting == Meeting::none) {
            return true;
        }
        const GridPoint place = meeting_point(a.start(i), a.end(i), b.start(j), b.end(j));
        if (meeting == Meeting::overlap) {
            note_overlap(mine, theirs, i, j, a, b);
            relation.share_edge = true;
        } else {
            mine.points.push_back({i, place});
            theirs.points.push_back({j, place});
        }
        relation.crosses = meeting == Meeting::cross;
        remember(i, j, place);
        return !relation.crosses;
    });
    if (relation.crosses) {
        relation.interiors_meet = true;
        return relation;
    }
    const Pieces of_first = pieces_of(a, mine, b);
    const Pieces of_second = pieces_of(b, theirs, a);
    relation.crosses =
        (of_first.inside && of_first.outside) || (of_second.inside && of_second.outside);
    relation.interiors_meet = of_first.inside || of_second.inside || of_first.shared_same;
    relation.first_within = !of_first.outside && (of_first.inside || of_first.shared_same);
    relation.second_within = !of_second.outside && (of_second.inside || of_second.shared_same);
    return relation;
}

}  // namespace swathbook::geometry
