#include "core/geometry/position_check.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/geometry/geodesic.hpp"

namespace swathbook::geometry {
namespace {

constexpr double surely_projected = 1000.0;  // no degree is that large, no map in metres that small
constexpr double far_metres = 300e3;
constexpr double polar_latitude_deg = 66.0;
constexpr double longest_edge_deg = 90.0;
constexpr std::size_t fewest_positions = 4;

Result<void> refuse_latitude(Position position, const std::string& field) {
    const bool fits_swapped =
        std::abs(position.longitude_deg) <= 90.0 && std::abs(position.latitude_deg) <= 180.0;
    if (fits_swapped) {
        return fail(
            ErrorCode::out_of_range, field,
            fmt::format("Latitude {} is beyond 90 degrees, and the two numbers fit the "
                        "other way round: they look swapped. GeoJSON writes longitude "
                        "first, then latitude: [{}, {}].",
                        position.latitude_deg, position.latitude_deg, position.longitude_deg));
    }
    return fail(
        ErrorCode::out_of_range, field,
        fmt::format("Latitude {} is beyond 90 degrees. Positions are longitude, latitude in "
                    "decimal degrees.",
                    position.latitude_deg));
}

Result<void> check_position(Position position, const Polygon& polygon, std::size_t ring,
                            std::size_t index) {
    const double largest =
        std::max(std::abs(position.longitude_deg), std::abs(position.latitude_deg));
    if (!std::isfinite(position.longitude_deg) || !std::isfinite(position.latitude_deg)) {
        return fail(ErrorCode::out_of_range, path_of(polygon, ring, index),
                    "A position holds two finite numbers, longitude and latitude in decimal "
                    "degrees.");
    }
    if (largest >= surely_projected) {
        return fail(ErrorCode::out_of_range, path_of(polygon, ring, index),
                    fmt::format("{}, {} are not degrees: they look like metres or feet of a flat "
                                "map (UTM, State Plane, web map). Export again as longitude and "
                                "latitude on WGS84 (EPSG:4326).",
                                position.longitude_deg, position.latitude_deg));
    }
    if (std::abs(position.latitude_deg) > 90.0) {
        return refuse_latitude(position, path_of(polygon, ring, index));
    }
    if (std::abs(position.longitude_deg) > 180.0) {
        return fail(
            ErrorCode::out_of_range, path_of(polygon, ring, index),
            fmt::format("Longitude {} is beyond 180 degrees. West of Greenwich is negative: "
                        "{} would be {}.",
                        position.longitude_deg, position.longitude_deg,
                        std::remainder(position.longitude_deg, 360.0)));
    }
    return {};
}

Result<void> check_edge(Position from, Position to, const Polygon& polygon, std::size_t ring,
                        std::size_t index) {
    const double step = std::abs(to.longitude_deg - from.longitude_deg);
    if (step > 180.0) {
        return fail(ErrorCode::unsupported, path_of(polygon, ring, index),
                    fmt::format("The edge from {} to {} crosses the 180 degree meridian. Cut the "
                                "polygon there into two parts, one on each side (RFC 7946, section "
                                "3.1.9).",
                                show(from), show(to)));
    }
    if (step > longest_edge_deg) {
        return fail(
            ErrorCode::unsupported, path_of(polygon, ring, index),
            fmt::format("The edge from {} to {} is {:.4g} degrees of longitude long, beyond "
                        "{} degrees; no stand is. Look for a mistyped or missing position.",
                        show(from), show(to), step, longest_edge_deg));
    }
    return {};
}

Result<void> check_ring(const Ring& ring, const Polygon& polygon, std::size_t index) {
    if (ring.size() < fewest_positions) {
        return fail(ErrorCode::invalid_input, path_of(polygon, index),
                    fmt::format("A ring needs at least four positions, three corners and the first "
                                "again; this one has {}.",
                                ring.size()));
    }
    for (std::size_t i = 0; i < ring.size(); ++i) {
        SWATHBOOK_CHECK(check_position(ring[i], polygon, index, i));
    }
    if (ring.front() != ring.back()) {
        return fail(
            ErrorCode::invalid_input, path_of(polygon, index),
            fmt::format("The ring is not closed: it starts at {} and ends at {}. Repeat the "
                        "first position at the end (RFC 7946, section 3.1.6), after looking "
                        "whether the walk round the boundary was finished.",
                        show(ring.front()), show(ring.back())));
    }
    for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
        SWATHBOOK_CHECK(check_edge(ring[i], ring[i + 1], polygon, index, i + 1));
    }
    return {};
}

Result<void> check_rings(const Polygon& polygon) {
    SWATHBOOK_CHECK(check_ring(polygon.outer, polygon, 0));
    for (std::size_t i = 0; i < polygon.holes.size(); ++i) {
        SWATHBOOK_CHECK(check_ring(polygon.holes[i], polygon, i + 1));
    }
    return {};
}

std::optional<double> distance_m(Position from, Position to) {
    const auto edge = geodesic_edge(geodesic_end(from), geodesic_end(to));
    return edge ? std::optional(edge->length.si()) : std::nullopt;
}

/// Inside a polar circle as written, and off it when the two numbers change places.
bool looks_swapped(Position position) {
    return std::abs(position.latitude_deg) > polar_latitude_deg &&
           std::abs(position.longitude_deg) < polar_latitude_deg;
}

Result<void> check_whereabouts(const Polygon& polygon, std::optional<Position> expected_near,
                               Notes& notes) {
    if (!expected_near) {
        return {};
    }
    const Position found = polygon.outer.front();
    const Position expected = *expected_near;
    const double off = distance_m(found, expected).value_or(2e7);
    if (off <= far_metres) {
        return {};
    }
    const bool can_swap = std::abs(found.longitude_deg) <= 90.0;
    const Position swapped{found.latitude_deg, found.longitude_deg};
    if (can_swap && distance_m(swapped, expected).value_or(2e7) <= far_metres) {
        return fail(
            ErrorCode::inconsistent, path_of(polygon, 0, 0),
            fmt::format("{} lies {:.0f} km from the expected place {}, but near it when the "
                        "two numbers change places: longitude and latitude look swapped. "
                        "GeoJSON writes longitude first.",
                        show(found), off / 1000.0, show(expected)));
    }
    notes.find(Severity::warning, "far_from_expected",
               fmt::format("The ground starts at {}, {:.0f} km from the expected place {}. Check "
                           "that this is the right map.",
                           show(found), off / 1000.0, show(expected)));
    return {};
}

}  // namespace

std::string path_of(const Polygon& polygon, std::size_t ring) {
    return fmt::format("{}[{}]", polygon.path, ring);
}

std::string path_of(const Polygon& polygon, std::size_t ring, std::size_t position) {
    return fmt::format("{}[{}][{}]", polygon.path, ring, position);
}

std::string show(Position position) {
    return fmt::format("{:.9g}, {:.9g}", position.longitude_deg, position.latitude_deg);
}

Result<void> check_positions(const PolygonSet& set, std::optional<Position> expected_near,
                             Notes& notes) {
    if (set.polygons.empty()) {
        return fail(ErrorCode::invalid_input, "geometry",
                    "There is no polygon here to measure. Lines and points have no area.");
    }
    bool all_polar = true;
    for (const Polygon& polygon : set.polygons) {
        SWATHBOOK_CHECK(check_rings(polygon));
        SWATHBOOK_CHECK(check_whereabouts(polygon, expected_near, notes));
        all_polar = all_polar && looks_swapped(polygon.outer.front());
    }
    if (all_polar && !expected_near) {
        notes.find(Severity::warning, "maybe_swapped",
                   fmt::format("The ground starts at {} (longitude, latitude), inside a polar "
                               "circle. If that is not so, longitude and latitude are swapped: "
                               "GeoJSON writes longitude first.",
                               show(set.polygons.front().outer.front())));
    }
    return {};
}

}  // namespace swathbook::geometry
