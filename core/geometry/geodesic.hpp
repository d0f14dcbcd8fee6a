#pragma once

#include "core/base/result.hpp"
#include "core/geometry/position.hpp"
#include "core/quantity/quantity.hpp"

namespace swathbook::geometry {

/// The shortest line between two positions on the ellipsoid.
struct GeodesicEdge {
    Length length;
    /// Area between the line and the equator, positive for a line that goes east north of it (or
    /// west south of it). The signed area of a ring is minus the sum over its edges.
    Area area_to_equator;
    /// East positive, in (-180, 180]: tells how often a ring winds round a pole.
    double longitude_step_deg = 0.0;
};

/// What a position needs to know of itself before it can be an end of edges: worked out once, used
/// by two edges.
struct GeodesicEnd {
    Position position;
    double sine_latitude = 0.0;
    double cosine_latitude = 1.0;
    double reduced_latitude = 0.0;  ///< radians: tan(beta) = (1 - f) tan(latitude)
    double sine_reduced = 0.0;
    double cosine_reduced = 1.0;
};

[[nodiscard]] GeodesicEnd geodesic_end(Position position);

/// Length of the shortest line between two positions and the area under it.
///
/// Finds the great circle on the auxiliary sphere whose longitude difference omega satisfies
/// lambda = omega - f sin(alpha0) I3, by repeated substitution (every pass gains two and a half
/// digits; short lines need two passes), and takes the three integrals I1, I3, I4 between the two
/// ends by Gauss-Legendre quadrature. Integrating between the ends, instead of subtracting two
/// series, keeps every digit of lines a few metres long.
///
/// @return length, area to the equator, step in longitude
/// @accuracy length 2e-8 m; area of a ring 1e-9 relative from 700 m2 upwards, 3e-9 at 45 m2 (the
///           rounding of degrees itself), both measured against GeographicLib in
///           tests/unit/geometry/geodesic_test.cpp
/// @valid    any two positions not nearly opposite each other on the Earth (within about a degree)
/// @errors   unsupported for nearly opposite positions: the substitution does not settle there
/// @source   C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013) 43-55,
///           eqs. 7, 8, 59-63; the substitution is that of T. Vincenty, Survey Review 23 (1975)
/// 88-93
[[nodiscard]] Result<GeodesicEdge> geodesic_edge(const GeodesicEnd& from, const GeodesicEnd& to);

}  // namespace swathbook::geometry
