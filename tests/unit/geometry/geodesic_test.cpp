// Judges: GeographicLib (C. F. F. Karney; Debian libgeographiclib-dev) for edges and rings of every
// size it resolves.
#include "core/geometry/geodesic.hpp"

#include <algorithm>
#include <cmath>
#include <random>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>
#include <GeographicLib/AzimuthalEquidistant.hpp>
#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/PolygonArea.hpp>

#include "core/geometry/ellipsoid.hpp"
#include "core/geometry/ring_area.hpp"

namespace swathbook::geometry {
namespace {

struct Judged {
    double area = 0.0;
    double perimeter = 0.0;
};

Judged judge(const Ring& ring) {
    GeographicLib::PolygonArea polygon(GeographicLib::Geodesic::WGS84());
    for (const Position& position : ring) {
        polygon.AddPoint(position.latitude_deg, position.longitude_deg);
    }
    Judged judged;
    polygon.Compute(false, true, judged.perimeter, judged.area);
    return judged;
}

RingMeasure measured(const Ring& ring) {
    const auto measure = measure_ring(ring);
    EXPECT_TRUE(measure.has_value());
    return measure.value_or(RingMeasure{});
}

/// A star-shaped ring: angles rise, radii vary, so it never crosses itself.
Ring random_ring(std::mt19937_64& random, Position middle, double size_deg) {
    std::uniform_real_distribution<double> part(0.0, 1.0);
    const int corners = 3 + static_cast<int>(12.0 * part(random));
    Ring ring;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2.0 * pi * (i + 0.4 * part(random)) / corners;
        const double radius = size_deg * (0.5 + 0.5 * part(random));
        ring.push_back(
            {middle.longitude_deg +
                 radius * std::cos(angle) / std::cos(middle.latitude_deg * radians_per_degree),
             middle.latitude_deg + radius * std::sin(angle)});
    }
    return ring;
}

// Transcribed from geographiclib/geographiclib-python, geographiclib/test/test_geodesic.py at
// commit 08745ea (MIT licence), tests Planimeter0, 5, 13 and 15.
struct PublishedRing {
    const char* name;
    Ring ring;
    double area_m2;
    double area_tolerance;
    double perimeter_m;  // 0: not printed
    double perimeter_tolerance;
};

TEST(GeodesicArea, AgreesWithTheSevenPublishedPlanimeterRings) {
    const std::vector<PublishedRing> rings{
        {"0 a", {{0, 89}, {90, 89}, {180, 89}, {270, 89}}, 24952305678.0, 1, 631819.8745, 1e-4},
        {"0 b",
         {{0, -89}, {90, -89}, {180, -89}, {270, -89}},
         -24952305678.0,
         1,
         631819.8745,
         1e-4},
        {"0 c", {{-1, 0}, {0, -1}, {1, 0}, {0, 1}}, 24619419146.0, 1, 627598.2731, 1e-4},
        {"0 d", {{0, 90}, {0, 0}, {90, 0}}, 63758202715511.0, 1, 30022685, 1},
        {"5", {{0.1, 89}, {90.1, 89}, {-179.9, 89}}, 12476152838.5, 1, 539297, 1},
        {"13",
         {{-360, 89}, {-240, 89}, {-120, 89}, {0, 89}, {120, 89}, {240, 89}},
         32415230256.0,
         1,
         1160741,
         1},
        {"15", {{1, 2}, {2, 1}, {3, 3}}, 18454562325.45119, 0.5, 0, 0},
    };
    for (const PublishedRing& published : rings) {
        const RingMeasure measure = measured(published.ring);
        EXPECT_NEAR(measure.signed_area.si(), published.area_m2, published.area_tolerance)
            << published.name;
        if (published.perimeter_m > 0.0) {
            EXPECT_NEAR(measure.perimeter.si(), published.perimeter_m,
                        published.perimeter_tolerance)
                << published.name;
        }
    }
}

TEST(GeodesicArea, AgreesWithGeographicLibOnThousandsOfRandomRings) {
    std::mt19937_64 random(20310504);
    std::uniform_real_distribution<double> part(0.0, 1.0);
    // GeographicLib's own edge areas carry about 1e-4 m2 of rounding, so below 100 m it is that
    // rounding which the absolute part of the tolerance lets through.
    for (const double size_deg : {1e-4, 1e-3, 1e-2, 0.1, 1.0, 5.0}) {
        for (int i = 0; i < 1000; ++i) {
            const Position middle{-180.0 + 360.0 * part(random), -84.0 + 168.0 * part(random)};
            const Ring ring = random_ring(random, middle, size_deg);
            const RingMeasure measure = measured(ring);
            const Judged judged = judge(ring);
            ASSERT_NEAR(measure.signed_area.si(), judged.area, 5e-4 + 1e-12 * std::abs(judged.area))
                << size_deg << " degrees at " << middle.longitude_deg << ", "
                << middle.latitude_deg;
            ASSERT_NEAR(measure.perimeter.si(), judged.perimeter, 1e-7 + 1e-13 * judged.perimeter);
        }
    }
}

TEST(GeodesicArea, AgreesWithGeographicLibOnContinents) {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> part(0.0, 1.0);
    for (int i = 0; i < 2000; ++i) {
        Ring ring;
        for (int corner = 0; corner < 4; ++corner) {
            ring.push_back({corner * 80.0 + 60.0 * part(random), -80.0 + 160.0 * part(random)});
        }
        const RingMeasure measure = measured(ring);
        const Judged judged = judge(ring);
        // Areas are told apart only up to a whole Earth.
        const double earth = 4.0 * pi * authalic_radius_squared_m2();
        ASSERT_NEAR(std::remainder(measure.signed_area.si() - judged.area, earth), 0.0, 1.0);
        ASSERT_NEAR(measure.perimeter.si(), judged.perimeter, 1e-6);
    }
}

// On a patch of a few metres an azimuthal equidistant map (GeographicLib) is flat to 1e-12, so the
// shoelace sum on it is the truth there, where the rounding of GeographicLib's own edge areas no
// longer lets them judge.
double area_on_map(const Ring& ring, Position middle) {
    const GeographicLib::AzimuthalEquidistant map;
    double twice = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Position& from = ring[i];
        const Position& to = ring[(i + 1) % ring.size()];
        double x0 = 0.0;
        double y0 = 0.0;
        double x1 = 0.0;
        double y1 = 0.0;
        map.Forward(middle.latitude_deg, middle.longitude_deg, from.latitude_deg,
                    from.longitude_deg, x0, y0);
        map.Forward(middle.latitude_deg, middle.longitude_deg, to.latitude_deg, to.longitude_deg,
                    x1, y1);
        twice += x0 * y1 - x1 * y0;
    }
    return twice / 2.0;
}

TEST(GeodesicArea, KeepsItsDigitsOnPatchesOfAFewSquareMetres) {
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> part(0.0, 1.0);
    for (const auto& [size_deg, tolerance] :
         {std::pair{5e-5, 5e-9}, std::pair{2e-4, 1.5e-9}, std::pair{5e-4, 1e-9}}) {
        for (int i = 0; i < 1000; ++i) {
            const Position middle{-170.0 + 340.0 * part(random), -70.0 + 140.0 * part(random)};
            const Ring ring = random_ring(random, middle, size_deg);
            const double area = measured(ring).signed_area.si();
            ASSERT_NEAR(area / area_on_map(ring, middle), 1.0, tolerance) << area << " m2";
        }
    }
}

RC_GTEST_PROP(GeodesicArea, IsTheSameAllRoundTheEarth, ()) {
    const double latitude = *rc::gen::inRange(-800, 800) / 10.0;
    const double shift = *rc::gen::inRange(-180, 180);
    const double size = *rc::gen::inRange(1, 100) / 1000.0;
    Ring ring{
        {0, latitude}, {size, latitude}, {size * 1.25, latitude + size}, {0.125, latitude + size}};
    const double before = measured(ring).signed_area.si();
    for (Position& position : ring) {
        position.longitude_deg += shift;
    }
    // Adding the shift rounds the longitudes to 2.8e-14 degrees, 3e-9 m.
    RC_ASSERT(std::abs(measured(ring).signed_area.si() - before) < 1e-9 * std::abs(before) + 1e-3);
}

RC_GTEST_PROP(GeodesicArea, ChangesSignAloneWhenTheRingIsTurnedRound, (std::uint64_t seed)) {
    std::mt19937_64 random(seed);
    Ring ring = random_ring(random, {-98.0, 40.0}, 0.01);
    const double before = measured(ring).signed_area.si();
    std::reverse(ring.begin(), ring.end());
    // Areas to the equator are 4.5e9 m2 here; a few units in their last place are 4e-6 m2.
    RC_ASSERT(std::abs(measured(ring).signed_area.si() + before) <= 4e-6);
}

RC_GTEST_PROP(GeodesicArea, IsTheSumOfThePartsWhenARingIsCut, (std::uint64_t seed)) {
    std::mt19937_64 random(seed);
    const Ring ring = random_ring(random, {-98.0, 40.0}, 0.01);
    const auto cut = static_cast<std::ptrdiff_t>(1 + seed % (ring.size() - 2));
    Ring first(ring.begin(), ring.begin() + cut + 1);
    Ring second(ring.begin() + cut, ring.end());
    second.push_back(ring.front());
    const double whole = measured(ring).signed_area.si();
    const double parts = measured(first).signed_area.si() + measured(second).signed_area.si();
    RC_ASSERT(std::abs(whole - parts) <= 1e-11 * std::abs(whole));
}

TEST(GeodesicArea, TakesARingWithOrWithoutItsClosingPosition) {
    const Ring open{{-98, 40}, {-97.9, 40}, {-97.9, 40.1}};
    Ring closed = open;
    closed.push_back(open.front());
    EXPECT_EQ(measured(open).signed_area.si(), measured(closed).signed_area.si());
    EXPECT_EQ(measured(open).perimeter.si(), measured(closed).perimeter.si());
}

TEST(GeodesicArea, OfNothingIsNothing) {
    EXPECT_EQ(measured({}).signed_area.si(), 0.0);
    EXPECT_EQ(measured({{1, 2}}).perimeter.si(), 0.0);
    EXPECT_NEAR(measured({{1, 2}, {3, 4}}).signed_area.si(), 0.0, 1e-3);
    EXPECT_EQ(measured({{1, 2}, {1, 2}, {1, 2}}).signed_area.si(), 0.0);
}

TEST(GeodesicEdge, RefusesNearlyOppositePoints) {
    const auto edge = geodesic_edge(geodesic_end({0, 0}), geodesic_end({179.7, 0.2}));
    ASSERT_FALSE(edge.has_value());
    EXPECT_EQ(edge.error().code, ErrorCode::unsupported);
    EXPECT_NE(edge.error().detail.find("opposite"), std::string::npos);
}

// geographiclib-python test_geodesic.py at commit 08745ea, GeodSolve12 and 33 among others: the
// distances are judged by the library itself here, over the whole Earth.
TEST(GeodesicEdge, AgreesWithGeographicLibInLength) {
    std::mt19937_64 random(3);
    std::uniform_real_distribution<double> part(0.0, 1.0);
    for (int i = 0; i < 5000; ++i) {
        const Position from{-180 + 360 * part(random), -90 + 180 * part(random)};
        const Position to{from.longitude_deg + 340 * (part(random) - 0.5),
                          -90 + 180 * part(random)};
        double expected = 0.0;
        const double arc = GeographicLib::Geodesic::WGS84().Inverse(
            from.latitude_deg, from.longitude_deg, to.latitude_deg, to.longitude_deg, expected);
        const auto edge = geodesic_edge(geodesic_end(from), geodesic_end(to));
        if (!edge) {
            ASSERT_GT(arc, 178.0);
            continue;
        }
        ASSERT_NEAR(edge->length.si(), expected, 2e-8);
    }
}

}  // namespace
}  // namespace swathbook::geometry
