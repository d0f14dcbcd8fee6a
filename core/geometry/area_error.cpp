#include "core/geometry/area_error.hpp"

#include <cmath>

#include "core/base/elementary.hpp"
#include "core/geometry/ellipsoid.hpp"
#include "core/geometry/local_plane.hpp"

namespace swathbook::geometry {
namespace {

double ring_variance_m4(const Ring& ring, double sigma_m) {
    const std::size_t corners = ring.size() - (ring.front() == ring.back() ? 1 : 0);
    double squares = 0.0;
    for (std::size_t i = 0; i < corners; ++i) {
        const Position& before = ring[i == 0 ? corners - 1 : i - 1];
        const Position& after = ring[i + 1 == corners ? 0 : i + 1];
        const double across = near_distance_m(before, after);
        squares += across * across;
    }
    const double variance = sigma_m * sigma_m;
    return variance / 4.0 * squares + static_cast<double>(corners) * variance * variance / 2.0;
}

}  // namespace

std::string_view words_of(PositionErrorMeaning meaning) {
    switch (meaning) {
        case PositionErrorMeaning::per_axis: return "standard deviation along each axis";
        case PositionErrorMeaning::radial_rms: return "root mean square distance";
        case PositionErrorMeaning::radial_mean: return "mean distance";
        case PositionErrorMeaning::radial_50: return "distance that half the fixes keep within";
        case PositionErrorMeaning::radial_95: return "distance that 95 % of the fixes keep within";
    }
    return "";
}

Length per_axis_error(Length stated, PositionErrorMeaning meaning) {
    switch (meaning) {
        case PositionErrorMeaning::per_axis: return stated;
        case PositionErrorMeaning::radial_rms: return stated / std::sqrt(2.0);
        case PositionErrorMeaning::radial_mean: return stated / std::sqrt(pi / 2.0);
        case PositionErrorMeaning::radial_50:
            return stated / std::sqrt(2.0 * elementary::logarithm(2.0));
        case PositionErrorMeaning::radial_95:
            return stated / std::sqrt(2.0 * elementary::logarithm(20.0));
    }
    return stated;
}

Area area_deviation(const PolygonSet& set, Length sigma) {
    double variance = 0.0;
    for (const Polygon& polygon : set.polygons) {
        variance += ring_variance_m4(polygon.outer, sigma.si());
        for (const Ring& hole : polygon.holes) {
            variance += ring_variance_m4(hole, sigma.si());
        }
    }
    return Area::from_si(std::sqrt(variance));
}

}  // namespace swathbook::geometry
