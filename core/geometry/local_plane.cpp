#include "core/geometry/local_plane.hpp"

#include <cmath>

#include "core/base/elementary.hpp"
#include "core/geometry/ellipsoid.hpp"

namespace swathbook::geometry {

LocalPlane::LocalPlane(Position origin) : origin_(origin) {
    const double latitude = origin.latitude_deg * radians_per_degree;
    const double sine = elementary::sine(latitude);
    const double shrink = 1.0 - eccentricity_squared * sine * sine;
    const double across = equatorial_radius_m / std::sqrt(shrink);        // N
    const double along = across * (1.0 - eccentricity_squared) / shrink;  // M
    metres_per_degree_east_ = across * elementary::cosine(latitude) * radians_per_degree;
    metres_per_degree_north_ = along * radians_per_degree;
}

PlanePoint LocalPlane::to_plane(Position position) const {
    return {metres_per_degree_east_ * (position.longitude_deg - origin_.longitude_deg),
            metres_per_degree_north_ * (position.latitude_deg - origin_.latitude_deg)};
}

Position LocalPlane::to_position(PlanePoint point) const {
    return {origin_.longitude_deg + point.east_m / metres_per_degree_east_,
            origin_.latitude_deg + point.north_m / metres_per_degree_north_};
}

double near_distance_m(Position from, Position to) {
    const LocalPlane plane({from.longitude_deg, (from.latitude_deg + to.latitude_deg) / 2.0});
    const PlanePoint start = plane.to_plane(from);
    const PlanePoint end = plane.to_plane(to);
    return elementary::hypotenuse(end.east_m - start.east_m, end.north_m - start.north_m);
}

}  // namespace swathbook::geometry
