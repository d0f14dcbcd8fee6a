#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace swathbook::geometry {

/// A point on the WGS84 ellipsoid as map files carry it, in decimal degrees. The order of the two
/// numbers is in the names, never in a comment. Degrees stay bare numbers here because turning them
/// into radians and back would not give the same digits again.
struct Position {
    double longitude_deg = 0.0;  ///< east positive, -180 to 180
    double latitude_deg = 0.0;   ///< north positive, -90 to 90

    bool operator==(const Position&) const = default;
};

/// Positions in the order they are joined. In a closed ring the last equals the first.
using Ring = std::vector<Position>;

/// Ground inside one outer ring and outside its holes.
struct Polygon {
    Ring outer;
    std::vector<Ring> holes{};
    std::string name{};  ///< for messages and tables, e.g. "north stand"; may be empty
    /// Where the rings came from, for Error.field: "geometry.coordinates"; ring k is "[k]" of it.
    std::string path = "geometry.coordinates";
};

/// All the polygons of one stand.
struct PolygonSet {
    std::vector<Polygon> polygons{};
};

/// The least box along the axes that holds every position.
struct BoundingBox {
    double west_deg = 0.0;
    double south_deg = 0.0;
    double east_deg = 0.0;
    double north_deg = 0.0;
};

}  // namespace swathbook::geometry
