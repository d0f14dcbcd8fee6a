#pragma once

#include "core/geometry/position.hpp"

namespace swathbook::geometry {

/// A point on a flat map in metres.
struct PlanePoint {
    double east_m = 0.0;
    double north_m = 0.0;
};

/// A flat map of the ground about one place: degrees times the two radii of curvature of the
/// ellipsoid there. For fields; not for counties.
///
///   east = N(latitude0) cos(latitude0) (longitude - longitude0)
///   north = M(latitude0) (latitude - latitude0)
///
/// @accuracy areas of 40 acres within 1e-6 relative from 30 to 64 degrees north
/// @valid    latitudes up to 89 degrees; error of lengths about distance x tan(latitude) / 6,400 km
/// @source   radii of curvature of an ellipsoid: any geodesy text, e.g. J. P. Snyder, Map
///           Projections, USGS Professional Paper 1395 (1987), eqs. 4-18 to 4-21
/// @cases    tests/cases/geometry/planar_vs_geodesic.case
class LocalPlane {
public:
    explicit LocalPlane(Position origin);

    [[nodiscard]] PlanePoint to_plane(Position position) const;
    [[nodiscard]] Position to_position(PlanePoint point) const;

private:
    Position origin_;
    double metres_per_degree_east_;
    double metres_per_degree_north_;
};

/// Straight-line distance on the local plane at the middle of the two positions: for steps of a few
/// kilometres at most.
[[nodiscard]] double near_distance_m(Position from, Position to);

}  // namespace swathbook::geometry
