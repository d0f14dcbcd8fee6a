#pragma once

#include "api/describe/describe.hpp"
#include "core/geometry/position.hpp"

namespace swathbook::api {

/// Takes the polygons out of GeoJSON: a Polygon, MultiPolygon, GeometryCollection, Feature or
/// FeatureCollection. Altitudes are passed over. Names of parts come from a feature's "name"
/// property or its id. Whether the rings make sense is decided in core/geometry.
///
/// @errors invalid_input: not GeoJSON, or a shape without area (lines and points are refused, not
///         dropped); unsupported: an old "crs" member that names another reference system than
///         longitude and latitude on WGS84; out_of_range: more than a million positions
/// @source H. Butler et al., The GeoJSON Format, RFC 7946 (2016); the "crs" member is from the
/// GeoJSON
///         format specification of 2008, section 3, and was taken out in 2016
[[nodiscard]] Result<geometry::PolygonSet> polygons_in(const Json& json, const Path& path);

/// The type of a geometry::PolygonSet in requests and answers: GeoJSON both ways.
[[nodiscard]] const Type& geojson_type();

template <>
struct Description<geometry::PolygonSet> {
    static const Type& custom() { return geojson_type(); }
};

}  // namespace swathbook::api
