#include "core/geometry/shape_check.hpp"

#include <algorithm>
#include <optional>
#include <span>
#include <string>

#include <fmt/format.h>

#include "core/base/sort.hpp"
#include "core/geometry/position_check.hpp"
#include "core/geometry/ring_area.hpp"
#include "core/geometry/ring_check.hpp"
#include "core/geometry/ring_relation.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::geometry {
namespace {

constexpr std::size_t most_places = 50;  // enough to say "many"

/// One polygon with everything the questions need.
struct Shape {
    const Polygon* polygon;
    IndexedRing outer;
    std::vector<IndexedRing> holes;
};

std::string ring_words(std::size_t ring) {
    return ring == 0 ? "the outer ring" : fmt::format("hole {}", ring);
}

std::string edge_words(const GridRing& ring, std::size_t edge) {
    const std::size_t next = edge + 1 == ring.size() ? 0 : edge + 1;
    return fmt::format("edge {}-{}", ring.given[edge] + 1, ring.given[next] + 1);
}

std::string area_of_loop(const std::vector<GridPoint>& loop, UnitSystem units) {
    Ring ring;
    ring.reserve(loop.size());
    for (const GridPoint point : loop) {
        ring.push_back(position_of(point));
    }
    const auto measure = measure_ring(ring);
    const double area = measure ? std::abs(measure->signed_area.si()) : 0.0;
    return show(Area::from_si(area), units);
}

std::string meeting_words(Meeting meeting) {
    switch (meeting) {
        case Meeting::cross: return "crosses";
        case Meeting::touch: return "touches";
        case Meeting::overlap: return "lies on top of";
        case Meeting::none: break;
    }
    return "meets";
}

tl::unexpected<Error> refuse_self_meeting(const GridRing& ring, const SelfMeetings& meetings,
                                          const std::string& field, std::size_t index,
                                          UnitSystem units) {
    const SelfMeeting& first = meetings.places.front();
    std::string detail = fmt::format(
        "In {}, {} {} {} at {} (longitude, latitude; positions counted from 1).", ring_words(index),
        edge_words(ring, first.first_edge), meeting_words(first.meeting),
        edge_words(ring, first.second_edge), show(position_of(first.place)));
    if (meetings.all && meetings.places.size() == 1) {
        const Lobes lobes = lobes_at(ring, first);
        detail += fmt::format(
            " It falls into two lobes of {} and {} there; a plain area formula "
            "would take one from the other.",
            area_of_loop(lobes.first, units), area_of_loop(lobes.second, units));
    } else {
        detail += fmt::format(" The ring meets itself in {}{} place(s).",
                              meetings.all ? "" : "at least ", meetings.places.size());
    }
    detail += " Put the positions in the order of the walk, or draw the lobes as separate parts.";
    return fail(ErrorCode::inconsistent, field, std::move(detail));
}

Result<IndexedRing> simple_ring(const Ring& given, const std::string& field, std::size_t index,
                                Notes& notes) {
    GridRing ring = grid_ring(given);
    if (ring.size() < 3) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("In {} all positions lie on one line or one spot, so it has no "
                                "area.",
                                ring_words(index)));
    }
    if (ring.repeated > 0) {
        notes.find(Severity::note, "repeated_position",
                   fmt::format("{}: {} position{} repeat{} the one before; taken once.", field,
                               ring.repeated, ring.repeated == 1 ? "" : "s",
                               ring.repeated == 1 ? "s" : ""));
    }
    if (!ring.spikes.empty()) {
        notes.find(Severity::warning, "spike",
                   fmt::format("{}: the line runs out to position {} ({}) and back over itself{}. "
                               "Taken off; the area is the same without it.",
                               field, ring.spikes.front().tip + 1,
                               show(position_of(ring.spikes.front().point)),
                               ring.spikes.size() > 1
                                   ? fmt::format(", {} such spikes in all", ring.spikes.size())
                                   : ""));
    }
    if (const auto meeting = first_self_meeting(ring)) {
        return refuse_self_meeting(ring, self_meetings(ring, *meeting, most_places), field, index,
                                   notes.units());
    }
    make_counter_clockwise(ring);
    return IndexedRing(std::move(ring));
}

Result<Shape> shape_of(const Polygon& polygon, Notes& notes) {
    SWATHBOOK_TRY(outer, simple_ring(polygon.outer, path_of(polygon, 0), 0, notes));
    Shape shape{&polygon, std::move(outer), {}};
    for (std::size_t i = 0; i < polygon.holes.size(); ++i) {
        SWATHBOOK_TRY(hole, simple_ring(polygon.holes[i], path_of(polygon, i + 1), i + 1, notes));
        shape.holes.push_back(std::move(hole));
    }
    return shape;
}

Result<void> check_hole(const Shape& shape, std::size_t index) {
    const RingRelation relation = relate(shape.holes[index], shape.outer);
    const std::string place = show(position_of(relation.place));
    if (relation.crosses) {
        return fail(ErrorCode::inconsistent, path_of(*shape.polygon, index + 1),
                    fmt::format("Hole {} crosses the outer ring near {}. Draw the boundary round "
                                "the hole, or pull the hole inside.",
                                index + 1, place));
    }
    if (!relation.first_within) {
        return fail(ErrorCode::inconsistent, path_of(*shape.polygon, index + 1),
                    fmt::format("Hole {} lies outside its outer ring, so it takes nothing out. "
                                "Draw it as a part of its own, or move it inside.",
                                index + 1));
    }
    if (relation.share_edge) {
        return fail(ErrorCode::inconsistent, path_of(*shape.polygon, index + 1),
                    fmt::format("Hole {} runs along the outer ring at {}. Draw the outer ring "
                                "without that ground instead.",
                                index + 1, place));
    }
    return {};
}

/// Pairs of rings whose boxes can meet, without asking every pair: sorted by the western end.
struct Span {
    std::int64_t west, east, south, north;
    std::size_t index;
};

Span span_of(const GridRing& ring, std::size_t index) {
    Span span{ring.points[0].east, ring.points[0].east, ring.points[0].north, ring.points[0].north,
              index};
    for (const GridPoint point : ring.points) {
        span.west = std::min(span.west, point.east);
        span.east = std::max(span.east, point.east);
        span.south = std::min(span.south, point.north);
        span.north = std::max(span.north, point.north);
    }
    return span;
}

/// Spans are sorted by their western edge: those that reach the first one follow it without a gap.
template <class Check>
Result<void> check_first_with_near(std::span<const Span> spans, Check check) {
    const Span& first = spans.front();
    for (const Span& other : spans.subspan(1)) {
        if (other.west > first.east) {
            break;
        }
        if (first.south > other.north || other.south > first.north) {
            continue;
        }
        const auto [low, high] = std::minmax(first.index, other.index);
        SWATHBOOK_CHECK(check(low, high));
    }
    return {};
}

template <class Check>
Result<void> for_near_pairs(std::vector<Span> spans, Check check) {
    sort_list(spans, [](const Span& a, const Span& b) {
        return a.west != b.west ? a.west < b.west : a.index < b.index;
    });
    for (std::size_t i = 0; i < spans.size(); ++i) {
        SWATHBOOK_CHECK(check_first_with_near(std::span<const Span>(spans).subspan(i), check));
    }
    return {};
}

Result<void> check_holes(const Shape& shape) {
    std::vector<Span> spans;
    spans.reserve(shape.holes.size());
    for (std::size_t i = 0; i < shape.holes.size(); ++i) {
        SWATHBOOK_CHECK(check_hole(shape, i));
        spans.push_back(span_of(shape.holes[i].ring, i));
    }
    return for_near_pairs(std::move(spans), [&](std::size_t i, std::size_t j) -> Result<void> {
        const RingRelation relation = relate(shape.holes[i], shape.holes[j]);
        if (relation.interiors_meet || relation.crosses || relation.share_edge) {
            return fail(
                ErrorCode::inconsistent, path_of(*shape.polygon, j + 1),
                fmt::format("Holes {} and {} {}, so some ground would be taken out twice "
                            "or left as a sliver. Draw them as one hole.",
                            i + 1, j + 1,
                            relation.interiors_meet ? "lie on the same ground" : "share an edge"));
        }
        return {};
    });
}

bool lies_in_a_hole(const IndexedRing& part, const Shape& shape) {
    return std::any_of(shape.holes.begin(), shape.holes.end(),
                       [&](const IndexedRing& hole) { return relate(part, hole).first_within; });
}

std::string part_words(const Shape& shape, std::size_t index) {
    return shape.polygon->name.empty()
               ? fmt::format("part {}", index + 1)
               : fmt::format("part {} ({})", index + 1, shape.polygon->name);
}

Result<void> check_parts(const std::vector<Shape>& shapes) {
    std::vector<Span> spans;
    spans.reserve(shapes.size());
    for (std::size_t i = 0; i < shapes.size(); ++i) {
        spans.push_back(span_of(shapes[i].outer.ring, i));
    }
    return for_near_pairs(std::move(spans), [&](std::size_t i, std::size_t j) -> Result<void> {
        const RingRelation relation = relate(shapes[i].outer, shapes[j].outer);
        const bool apart = !relation.crosses && !relation.interiors_meet;
        if (apart || (!relation.crosses && (lies_in_a_hole(shapes[i].outer, shapes[j]) ||
                                            lies_in_a_hole(shapes[j].outer, shapes[i])))) {
            return {};
        }
        const std::string where = relation.crosses
                                      ? fmt::format("near {}", show(position_of(relation.place)))
                                      : "one inside the other";
        return fail(ErrorCode::inconsistent, path_of(*shapes[j].polygon, 0),
                    fmt::format("Ground of {} and {} overlaps, {}; it would be counted twice. Cut "
                                "one back to the other's edge, or measure them one at a time.",
                                part_words(shapes[i], i), part_words(shapes[j], j), where));
    });
}

/// The positions of a ring as they were given, without those that were taken off it.
Ring kept_of(const Ring& given, const GridRing& ring) {
    Ring kept;
    kept.reserve(ring.size() + 1);
    for (const std::size_t index : ring.given) {
        kept.push_back(given[index]);
    }
    kept.push_back(kept.front());
    return kept;
}

Polygon tidied(const Shape& shape) {
    Polygon polygon = *shape.polygon;
    polygon.outer = kept_of(polygon.outer, shape.outer.ring);
    for (std::size_t i = 0; i < polygon.holes.size(); ++i) {
        polygon.holes[i] = kept_of(polygon.holes[i], shape.holes[i].ring);
    }
    return polygon;
}

}  // namespace

Result<PolygonSet> check_shapes(const PolygonSet& set, Notes& notes) {
    std::vector<Shape> shapes;
    shapes.reserve(set.polygons.size());
    for (const Polygon& polygon : set.polygons) {
        SWATHBOOK_TRY(shape, shape_of(polygon, notes));
        SWATHBOOK_CHECK(check_holes(shape));
        shapes.push_back(std::move(shape));
    }
    SWATHBOOK_CHECK(check_parts(shapes));
    PolygonSet tidy;
    tidy.polygons.reserve(shapes.size());
    for (const Shape& shape : shapes) {
        tidy.polygons.push_back(tidied(shape));
    }
    return tidy;
}

}  // namespace swathbook::geometry
