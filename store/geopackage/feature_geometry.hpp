#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"

namespace swathbook::store {

/// What a feature table holds.
enum class FeatureShape : std::uint8_t { multi_polygon, multi_line, any };

/// Turns a GeoJSON geometry (RFC 7946: longitude, latitude in degrees, WGS 84) into a GeoPackage
/// geometry: header with a box, then little-endian well-known binary. A polygon becomes a
/// multipolygon, a line a multiline, where the table asks for that. Heights are left out.
///
/// @errors invalid_input{field} when the text is no such geometry: another type, a ring that is
///         not closed or has fewer than 4 positions, a line of fewer than 2;
///         out_of_range{field} when a position lies outside 180 degrees east and west or 90 north
///         and south
/// @source RFC 7946; OGC 12-128r18 clause 2.1.3
[[nodiscard]] Result<std::vector<std::uint8_t>> feature_geometry(std::string_view geojson,
                                                                 FeatureShape shape,
                                                                 std::string_view field);

}  // namespace swathbook::store
