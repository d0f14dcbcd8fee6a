#include "core/geometry/geodesic.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/base/elementary.hpp"
#include "core/geometry/ellipsoid.hpp"

namespace swathbook::geometry {
namespace {

constexpr double panel_radians = 0.3;  // five nodes on 0.3 rad err by less than 1e-17 here
constexpr int most_passes = 60;

struct Node {
    double place;
    double weight;
};

/// Gauss-Legendre, five nodes on (-1, 1).
/// @source Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4
constexpr std::array<Node, 5> nodes{{{0.0, 0.568888888888888888889},
                                     {0.538469310105683091036, 0.478628670499366468041},
                                     {-0.538469310105683091036, 0.478628670499366468041},
                                     {0.906179845938663992798, 0.236926885056189087514},
                                     {-0.906179845938663992798, 0.236926885056189087514}}};

template <class Integrand>
double integrate(double from, double width, Integrand integrand) {
    const int panels = 1 + static_cast<int>(width / panel_radians);
    const double half = width / (2.0 * panels);
    double sum = 0.0;
    for (int panel = 0; panel < panels; ++panel) {
        const double middle = from + (2 * panel + 1) * half;
        for (const Node& node : nodes) {
            sum += node.weight * integrand(elementary::sine(middle + half * node.place));
        }
    }
    return sum * half;
}

/// The great circle on the auxiliary sphere that joins the two reduced latitudes.
struct Arc {
    double sine_alpha0;    // azimuth where it crosses the equator
    double cosine_alpha0;  // never negative
    double start;          // sigma1: arc from the equator crossing to the first end, radians
    double width;          // sigma2 - sigma1
    double k_squared;
};

/// Differences of nearly equal angles enter as sines of the differences, so that lines a few metres
/// long keep all their digits.
Arc arc_between(const GeodesicEnd& from, const GeodesicEnd& to, double sine_step, double omega) {
    const double half_sine = elementary::sine(omega / 2.0);
    const double versine = 2.0 * half_sine * half_sine;
    const double east = to.cosine_reduced * elementary::sine(omega);
    const double north = sine_step + from.sine_reduced * to.cosine_reduced * versine;
    const double across = elementary::hypotenuse(east, north);
    const double along = from.sine_reduced * to.sine_reduced +
                         from.cosine_reduced * to.cosine_reduced * (1.0 - versine);
    const double sine_azimuth = across > 0.0 ? east / across : 0.0;
    const double cosine_azimuth = across > 0.0 ? north / across : 1.0;
    Arc arc{};
    arc.sine_alpha0 = sine_azimuth * from.cosine_reduced;
    arc.cosine_alpha0 = elementary::hypotenuse(cosine_azimuth, sine_azimuth * from.sine_reduced);
    arc.start = elementary::angle_of(from.sine_reduced, cosine_azimuth * from.cosine_reduced);
    arc.width = elementary::angle_of(across, along);
    arc.k_squared = second_eccentricity_squared * arc.cosine_alpha0 * arc.cosine_alpha0;
    return arc;
}

/// sin(beta2 - beta1) from the exact difference of the latitudes.
double sine_of_reduced_step(const GeodesicEnd& from, const GeodesicEnd& to) {
    const double step =
        (to.position.latitude_deg - from.position.latitude_deg) * radians_per_degree;
    const double ratio = 1.0 - flattening;
    const double rise = ratio * elementary::sine(step);
    const double run = from.cosine_latitude * to.cosine_latitude +
                       ratio * ratio * from.sine_latitude * to.sine_latitude;
    return rise / elementary::hypotenuse(rise, run);
}

/// I3 between the ends, Karney eq. 8.
double longitude_integral(const Arc& arc) {
    return integrate(arc.start, arc.width, [&](double sine) {
        return (2.0 - flattening) /
               (1.0 + (1.0 - flattening) * std::sqrt(1.0 + arc.k_squared * sine * sine));
    });
}

/// I1 between the ends, Karney eq. 7.
double length_integral(const Arc& arc) {
    return integrate(arc.start, arc.width,
                     [&](double sine) { return std::sqrt(1.0 + arc.k_squared * sine * sine); });
}

/// (t(x) - t(y)) / (x - y) with t(x) = x + sqrt(1/x + 1) asinh(sqrt x), Karney eqs. 61 and 62, for
/// 0 <= x, y <= e'2 = 0.0067. Summed as a power series because the quotient loses its digits where
/// x and y meet, at the pole end of a meridian. The series of t is 1 + x + sum over n >= 1 of
/// (c_n + c_(n-1)) x^n with c_n = (-1)^n (2n)!!/(2n+1)!!; ten terms leave 1e-20.
double divided_difference(double x, double y) {
    constexpr int terms = 10;
    double previous = 1.0;  // c_(n-1)
    double mixed = 1.0;     // x^(n-1) + x^(n-2) y + ... + y^(n-1)
    double power = 1.0;     // y^(n-1)
    double sum = 1.0;       // the term x of t
    for (int n = 1; n <= terms; ++n) {
        const double current = -previous * (2.0 * n) / (2.0 * n + 1.0);
        sum += (current + previous) * mixed;
        power *= y;
        mixed = x * mixed + power;
        previous = current;
    }
    return sum;
}

/// I4 between the ends, Karney eq. 61.
double area_integral(const Arc& arc) {
    return -integrate(arc.start, arc.width, [&](double sine) {
        return divided_difference(second_eccentricity_squared, arc.k_squared * sine * sine) * sine /
               2.0;
    });
}

/// alpha2 - alpha1 on the sphere, Karney eq. 63.
double spherical_excess(const GeodesicEnd& from, const GeodesicEnd& to, double omega) {
    const double middle = elementary::sine((from.reduced_latitude + to.reduced_latitude) / 2.0);
    const double apart = elementary::cosine((to.reduced_latitude - from.reduced_latitude) / 2.0);
    return 2.0 * elementary::angle_of(elementary::sine(omega / 2.0) * middle,
                                      elementary::cosine(omega / 2.0) * apart);
}

double longitude_step(double from_deg, double to_deg) {
    const double step = std::remainder(to_deg - from_deg, 360.0);
    return step == -180.0 ? 180.0 : step;
}

}  // namespace

GeodesicEnd geodesic_end(Position position) {
    const double latitude = position.latitude_deg * radians_per_degree;
    GeodesicEnd end{};
    end.position = position;
    end.sine_latitude = elementary::sine(latitude);
    end.cosine_latitude = elementary::cosine(latitude);
    end.reduced_latitude =
        elementary::angle_of((1.0 - flattening) * end.sine_latitude, end.cosine_latitude);
    const double reach =
        elementary::hypotenuse((1.0 - flattening) * end.sine_latitude, end.cosine_latitude);
    end.sine_reduced = (1.0 - flattening) * end.sine_latitude / reach;
    end.cosine_reduced = end.cosine_latitude / reach;
    return end;
}

Result<GeodesicEdge> geodesic_edge(const GeodesicEnd& from, const GeodesicEnd& to) {
    GeodesicEdge edge;
    edge.longitude_step_deg =
        longitude_step(from.position.longitude_deg, to.position.longitude_deg);
    const double lambda = edge.longitude_step_deg * radians_per_degree;
    const double sine_step = sine_of_reduced_step(from, to);
    double omega = lambda;
    Arc arc = arc_between(from, to, sine_step, omega);
    bool settled = lambda == 0.0;
    for (int pass = 0; pass < most_passes && !settled; ++pass) {
        const double share = flattening * arc.sine_alpha0 * longitude_integral(arc) / omega;
        const double next = lambda / (1.0 - share);
        settled = std::abs(next - omega) <= 4e-16 * std::abs(next);
        omega = next;
        arc = arc_between(from, to, sine_step, omega);
    }
    if (!settled || std::abs(omega) > pi) {
        return fail(ErrorCode::unsupported, "",
                    fmt::format("The points {}, {} and {}, {} (longitude, latitude) lie nearly "
                                "opposite each other on the Earth, so no one line between them is "
                                "the shortest. Put a point between the two.",
                                from.position.longitude_deg, from.position.latitude_deg,
                                to.position.longitude_deg, to.position.latitude_deg));
    }
    constexpr double sphere = authalic_radius_squared_m2();
    const double beyond_sphere = eccentricity_squared * equatorial_radius_m * equatorial_radius_m *
                                 arc.cosine_alpha0 * arc.sine_alpha0 * area_integral(arc);
    edge.length = Length::from_si(polar_radius_m * length_integral(arc));
    edge.area_to_equator =
        Area::from_si(sphere * spherical_excess(from, to, omega) + beyond_sphere);
    return edge;
}

}  // namespace swathbook::geometry
