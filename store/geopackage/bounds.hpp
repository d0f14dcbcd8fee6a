#pragma once

#include <cstdint>
#include <optional>
#include <span>

namespace swathbook::store {

/// A box of longitude and latitude in degrees; the numbers are stored as they stand in the file.
struct Bounds {
    double min_x = 0.0;
    double max_x = 0.0;
    double min_y = 0.0;
    double max_y = 0.0;
};

/// Extends `bounds` to hold a point.
void include(std::optional<Bounds>& bounds, double x, double y);

/// What the header of a GeoPackage geometry says, and where its box is.
struct GeometryHeader {
    bool is_empty = true;
    std::optional<Bounds> bounds;  ///< nothing when empty
};

/// Reads a GeoPackage geometry as any program may have written it: the box of its header, or, when
/// there is none, the box of its coordinates (all seven simple types, with or without z and m).
///
/// @return nothing when the bytes are not a GeoPackage geometry
/// @source OGC 12-128r18, GeoPackage 1.3, clause 2.1.3; OGC 06-103r4 (well-known binary)
[[nodiscard]] std::optional<GeometryHeader> read_header(std::span<const std::uint8_t> blob);

}  // namespace swathbook::store
