#include "core/geometry/area.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/geometry/position_check.hpp"
#include "core/geometry/ring_area.hpp"
#include "core/geometry/shape_check.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::geometry {
namespace {

constexpr double normal_95 = 1.959963984540054;  // standard normal quantile 0.975
constexpr double largest_error_m = 1000.0;
constexpr double long_edge_m = 10000.0;
constexpr double vague_share = 0.25;

Result<void> check_error(const std::optional<Reading<Kind::length>>& reading, const char* field,
                         UnitSystem units) {
    if (!reading) {
        return {};
    }
    const double metres_off = reading->value.si();
    if (!std::isfinite(metres_off) || metres_off < 0.0 || metres_off > largest_error_m) {
        return fail(
            ErrorCode::out_of_range, field,
            fmt::format("A boundary error is between 0 and {}; got {}. Give the error of "
                        "the receiver or map, not the size of the ground.",
                        show(Length::from_si(largest_error_m), units), show(*reading, units)));
    }
    return {};
}

Result<AreaPart> measure_part(const Polygon& polygon, AreaAnswer& answer) {
    AreaPart part;
    part.name = polygon.name;
    part.holes = static_cast<int>(polygon.holes.size());
    SWATHBOOK_TRY(outer, measure_ring(polygon.outer));
    part.area = Area::from_si(std::abs(outer.signed_area.si()));
    part.perimeter = outer.perimeter;
    part.corners = static_cast<int>(polygon.outer.size()) - 1;
    answer.longest_edge = std::max(answer.longest_edge, outer.longest_edge);
    if (!polygon.holes.empty()) {
        Area out;
        for (const Ring& ring : polygon.holes) {
            SWATHBOOK_TRY(hole, measure_ring(ring));
            out += Area::from_si(std::abs(hole.signed_area.si()));
            part.perimeter += hole.perimeter;
            part.corners += static_cast<int>(ring.size()) - 1;
            answer.longest_edge = std::max(answer.longest_edge, hole.longest_edge);
        }
        part.holes_area = out;
        part.area -= out;
    }
    if (part.area <= Area{}) {
        return fail(ErrorCode::inconsistent, path_of(polygon, 0),
                    fmt::format("Along shortest lines this ring and its holes enclose no ground; "
                                "an edge is {:.0f} km long. Put positions on the long edges.",
                                answer.longest_edge.in(kilometres)));
    }
    return part;
}

BoundingBox box_of(const PolygonSet& set) {
    const Position first = set.polygons.front().outer.front();
    BoundingBox box{first.longitude_deg, first.latitude_deg, first.longitude_deg,
                    first.latitude_deg};
    for (const Polygon& polygon : set.polygons) {
        for (const Position& position : polygon.outer) {
            box.west_deg = std::min(box.west_deg, position.longitude_deg);
            box.east_deg = std::max(box.east_deg, position.longitude_deg);
            box.south_deg = std::min(box.south_deg, position.latitude_deg);
            box.north_deg = std::max(box.north_deg, position.latitude_deg);
        }
    }
    return box;
}

void add_corner_term(const AreaRequest& request, const PolygonSet& ground, AreaAnswer& answer,
                     Notes& notes) {
    const Length sigma =
        per_axis_error(request.position_error->value, request.position_error_means);
    const Area deviation = area_deviation(ground, sigma);
    answer.error_terms.push_back(
        {"corners",
         fmt::format("{} corners, each off by {} ({}), independently", answer.corners,
                     show(*request.position_error, notes.units()),
                     words_of(request.position_error_means)),
         deviation, Fraction::of(deviation / answer.area.value, ones)});
    notes.show([&] {
        const double s2 = sigma.si() * sigma.si();
        const double squares =
            s2 > 0.0 ? 4.0 * (deviation.si() * deviation.si() / s2 - answer.corners * s2 / 2.0)
                     : 0.0;
        return Step{
            "Deviation of the area from corner errors",
            fmt::format("s = {} m along each axis; sqrt( s^2/4 x {} m2 + {} x s^4/2 ), the "
                        "m2 being the sum of |next - previous|^2 over the corners",
                        show_number(sigma.in(metres)), show_number(squares), answer.corners),
            fmt::format("{} m2 = {}", show_number(deviation.in(square_metres)),
                        show(deviation, notes.units())),
            "propagation through the shoelace formula"};
    });
    if (sigma.si() == 0.0) {
        notes.find(Severity::advice, "no_receiver_is_exact",
                   "A position error of 0 was entered, and no receiver or map is exact: the "
                   "interval says nothing of it. Enter the error its maker states.");
    }
    const Length spacing = answer.perimeter / static_cast<double>(answer.corners);
    if (sigma.si() > 0.0 && spacing < 3.0 * sigma) {
        notes.find(Severity::warning, "corners_not_independent",
                   fmt::format("Corners stand {} apart on average, closer than three times their "
                               "error of {}. A receiver wanders slowly, so such errors are not "
                               "independent and the interval is too narrow: give the slow part as "
                               "an edge offset.",
                               show(spacing, notes.units()), show(sigma, notes.units())));
    }
}

void add_offset_term(const AreaRequest& request, AreaAnswer& answer, Notes& notes) {
    const Length offset = request.edge_offset->value;
    const Area most = Area::from_si(answer.perimeter.si() * offset.si());
    const Area deviation = most / std::sqrt(3.0);
    answer.error_terms.push_back(
        {"edge_offset",
         fmt::format("the whole boundary up to {} too far out or in: at most {} either way",
                     show(*request.edge_offset, notes.units()), show(most, notes.units())),
         deviation, Fraction::of(deviation / answer.area.value, ones)});
    notes.show([&] {
        return Step{"Deviation of the area from an edge offset",
                    fmt::format("{} x {} / sqrt 3", show(answer.perimeter, notes.units()),
                                show(*request.edge_offset, notes.units())),
                    show(deviation, notes.units()), "strip along the boundary; rectangular error"};
    });
}

void add_interval(AreaAnswer& answer, Notes& notes) {
    double variance = 0.0;
    for (const AreaErrorTerm& term : answer.error_terms) {
        variance += term.deviation.si() * term.deviation.si();
    }
    const Area deviation = Area::from_si(std::sqrt(variance));
    const Area reach = deviation * normal_95;
    const Area middle = answer.area.value;
    answer.deviation = deviation;
    answer.area = {middle, std::max(Area{}, middle - reach), middle + reach};
    answer.carry_more = Fraction::of(reach / middle, ones);
    const double percent = std::ceil(answer.carry_more->in(percents)-1e-9);
    notes.show([&] {
        return Step{"95 % interval",
                    fmt::format("{} +- 1.96 x {}", show(middle, notes.units()),
                                show(deviation, notes.units())),
                    fmt::format("{} to {}", show(*answer.area.low, notes.units()),
                                show(*answer.area.high, notes.units()))};
    });
    if (reach / middle > vague_share) {
        notes.find(Severity::warning, "area_vague",
                   fmt::format("The area is known only to {:.0f} % either way. Map the boundary "
                               "again with a better receiver, or measure it with a tape, before a "
                               "rate per acre rests on it.",
                               percent));
    } else if (percent >= 1.0) {
        notes.find(
            Severity::advice, "carry_more",
            fmt::format("Carry {:.0f} % more mix than {} asks for, and expect up to {:.0f} % "
                        "to come back: the ground is between {} and {}.",
                        percent, show(middle, notes.units()), 2.0 * percent,
                        show(*answer.area.low, notes.units()),
                        show(*answer.area.high, notes.units())));
    }
}

void show_area(const AreaAnswer& answer, Notes& notes) {
    for (const AreaPart& part : answer.parts) {
        notes.show([&] {
            const Area outer = part.area + part.holes_area.value_or(Area{});
            return Step{part.name.empty() ? "Area of a part" : fmt::format("Area of {}", part.name),
                        part.holes_area ? fmt::format("{} inside the outer ring - {} in {} hole{}",
                                                      show(outer, notes.units(), 6),
                                                      show(*part.holes_area, notes.units(), 6),
                                                      part.holes, part.holes == 1 ? "" : "s")
                                        : fmt::format("areas between {} edges and the equator, "
                                                      "summed with their signs",
                                                      part.corners),
                        show(part.area, notes.units(), 6),
                        "shortest lines on WGS84: Karney, J. Geodesy 87 (2013) 43-55"};
        });
    }
    notes.show([&] {
        return Step{"Area",
                    fmt::format("{:.3f} m2 / 4046.8564224 m2 per acre",
                                answer.area.value.in(square_metres)),
                    fmt::format("{} = {}", show(answer.area.value, "ac", 6),
                                show(answer.area.value, "ha", 6))};
    });
}

}  // namespace

Result<AreaAnswer> area(const AreaRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check_error(request.position_error, "position_error", notes.units()));
    SWATHBOOK_CHECK(check_error(request.edge_offset, "edge_offset", notes.units()));
    SWATHBOOK_CHECK(check_positions(request.geometry, request.expected_near, notes));
    SWATHBOOK_TRY(ground, check_shapes(request.geometry, notes));
    AreaAnswer answer;
    for (const Polygon& polygon : ground.polygons) {
        SWATHBOOK_TRY(part, measure_part(polygon, answer));
        answer.area.value += part.area;
        answer.perimeter += part.perimeter;
        answer.holes += part.holes;
        answer.corners += part.corners;
        answer.parts.push_back(std::move(part));
    }
    answer.box = box_of(ground);
    show_area(answer, notes);
    if (answer.longest_edge.si() > long_edge_m) {
        notes.find(
            Severity::note, "long_edge",
            fmt::format("An edge is {} long. It is taken as the shortest line; a line straight "
                        "on the map runs beside it.",
                        show(answer.longest_edge, notes.units())));
    }
    if (request.position_error) {
        add_corner_term(request, ground, answer, notes);
    }
    if (request.edge_offset) {
        add_offset_term(request, answer, notes);
    }
    if (!answer.error_terms.empty()) {
        add_interval(answer, notes);
    } else {
        notes.find(Severity::note, "boundary_error_not_entered",
                   "How well the boundary is known was not entered, so the area has no interval; "
                   "that does not make it exact.");
    }
    answer.area_in_other_units = answer.area;
    return answer;
}

}  // namespace swathbook::geometry
