#include "core/geometry/ring_area.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "core/geometry/ellipsoid.hpp"
#include "core/geometry/geodesic.hpp"

namespace swathbook::geometry {
namespace {

/// Neumaier's sum: the areas under the edges are ten thousand times the area of a field and must
/// cancel without loss.
struct CompensatedSum {
    double sum = 0.0;
    double lost = 0.0;

    void add(double term) {
        const double next = sum + term;
        lost += std::abs(sum) >= std::abs(term) ? (sum - next) + term : (term - next) + sum;
        sum = next;
    }
    [[nodiscard]] double total() const { return sum + lost; }
};

}  // namespace

Result<RingMeasure> measure_ring(std::span<const Position> ring) {
    RingMeasure measure;
    std::size_t count = ring.size();
    if (count > 1 && ring.front() == ring.back()) {
        --count;
    }
    if (count < 2) {
        return measure;
    }
    CompensatedSum area;
    CompensatedSum perimeter;
    double turned_deg = 0.0;
    const GeodesicEnd first = geodesic_end(ring[0]);
    GeodesicEnd from = first;
    for (std::size_t i = 1; i <= count; ++i) {
        const GeodesicEnd to = i < count ? geodesic_end(ring[i]) : first;
        SWATHBOOK_TRY(edge, geodesic_edge(from, to));
        area.add(-edge.area_to_equator.si());
        perimeter.add(edge.length.si());
        turned_deg += edge.longitude_step_deg;
        measure.longest_edge = std::max(measure.longest_edge, edge.length);
        from = to;
    }
    // A ring that goes round a pole leaves the belt between itself and the equator; half the Earth
    // less the belt is the cap.
    const double half_earth = 2.0 * pi * authalic_radius_squared_m2();
    area.add(std::round(turned_deg / 360.0) * half_earth);
    measure.signed_area = Area::from_si(std::remainder(area.total(), 2.0 * half_earth));
    measure.perimeter = Length::from_si(perimeter.total());
    return measure;
}

}  // namespace swathbook::geometry
