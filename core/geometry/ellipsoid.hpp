#pragma once

/// The figure of the Earth that satellite receivers and map files use.
///
/// @source WGS84: a = 6378137 m, 1/f = 298.257223563 exactly by definition (National Geospatial-
///         Intelligence Agency, NGA.STND.0036)
namespace swathbook::geometry {

inline constexpr double equatorial_radius_m = 6378137.0;
inline constexpr double flattening = 1.0 / 298.257223563;
inline constexpr double polar_radius_m = equatorial_radius_m * (1.0 - flattening);
/// e squared, first eccentricity
inline constexpr double eccentricity_squared = flattening * (2.0 - flattening);
/// e' squared, second eccentricity
inline constexpr double second_eccentricity_squared =
    eccentricity_squared / ((1.0 - flattening) * (1.0 - flattening));
inline constexpr double pi = 3.14159265358979323846;
inline constexpr double radians_per_degree = pi / 180.0;

/// Square of the radius of the sphere with the same surface as the ellipsoid.
/// @source C. F. F. Karney, Algorithms for geodesics, Journal of Geodesy 87 (2013) 43-55, eq. 60:
///         c2 = a2/2 + (b2/2) atanh(e)/e, with atanh(e)/e = 1 + e2/3 + e4/5 + ...
[[nodiscard]] constexpr double authalic_radius_squared_m2() {
    constexpr int terms = 9;  // the next one is below 1e-20
    double series = 0.0;
    for (int n = terms - 1; n >= 0; --n) {
        series = series * eccentricity_squared + 1.0 / (2.0 * n + 1.0);
    }
    return (equatorial_radius_m * equatorial_radius_m + polar_radius_m * polar_radius_m * series) /
           2.0;
}

}  // namespace swathbook::geometry
