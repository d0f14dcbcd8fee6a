// Judge: Monte Carlo of the shoelace formula, and the ratios of the Rayleigh distribution.
#include "core/geometry/area_error.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include <gtest/gtest.h>

#include "core/geometry/area.hpp"
#include "core/geometry/ellipsoid.hpp"
#include "core/geometry/local_plane.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::geometry {
namespace {

/// An L of 200 m with a square hole, corners in metres.
const std::vector<std::vector<PlanePoint>> ell{
    {{0, 0}, {200, 0}, {200, 80}, {80, 80}, {80, 200}, {0, 200}},
    {{20, 20}, {20, 60}, {60, 60}, {60, 20}}};

PolygonSet on_the_ground() {
    const LocalPlane plane({-92.0, 44.0});
    std::vector<Ring> rings;
    for (const auto& points : ell) {
        Ring ring;
        for (const PlanePoint& point : points) {
            ring.push_back(plane.to_position(point));
        }
        ring.push_back(ring.front());
        rings.push_back(ring);
    }
    return {{{rings[0], {rings[1]}}}};
}

double shoelace(const std::vector<PlanePoint>& points) {
    double twice = 0.0;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const PlanePoint& a = points[i];
        const PlanePoint& b = points[(i + 1) % points.size()];
        twice += a.east_m * b.north_m - b.east_m * a.north_m;
    }
    return twice / 2.0;
}

TEST(AreaError, AgreesWithAMonteCarloOfMovedCorners) {
    std::mt19937_64 random(41);
    for (const double sigma : {1.0, 3.0, 12.0}) {
        std::normal_distribution<double> shift(0.0, sigma);
        constexpr int draws = 200000;
        double sum = 0.0;
        double squares = 0.0;
        for (int i = 0; i < draws; ++i) {
            double area = 0.0;
            for (const auto& points : ell) {
                std::vector<PlanePoint> moved = points;
                for (PlanePoint& point : moved) {
                    point.east_m += shift(random);
                    point.north_m += shift(random);
                }
                area += shoelace(moved);  // the hole runs clockwise
            }
            sum += area;
            squares += area * area;
        }
        const double deviation = std::sqrt(squares / draws - (sum / draws) * (sum / draws));
        // A deviation from 200,000 draws is itself known to 0.16 %; four times that.
        EXPECT_NEAR(area_deviation(on_the_ground(), Length::of(sigma, metres)).si() / deviation,
                    1.0, 0.0065);
    }
}

TEST(AreaError, ReadsTheFiveWaysToStateAReceiversError) {
    std::mt19937_64 random(43);
    std::normal_distribution<double> shift(0.0, 2.0);
    std::vector<double> distances;
    double squares = 0.0;
    double sum = 0.0;
    constexpr int draws = 400000;
    for (int i = 0; i < draws; ++i) {
        const double distance = std::hypot(shift(random), shift(random));
        distances.push_back(distance);
        squares += distance * distance;
        sum += distance;
    }
    std::sort(distances.begin(), distances.end());
    using E = PositionErrorMeaning;
    const auto sigma_of = [](double stated, E meaning) {
        return per_axis_error(Length::of(stated, metres), meaning).in(metres);
    };
    EXPECT_NEAR(sigma_of(std::sqrt(squares / draws), E::radial_rms), 2.0, 0.01);
    EXPECT_NEAR(sigma_of(sum / draws, E::radial_mean), 2.0, 0.01);
    EXPECT_NEAR(sigma_of(distances[draws / 2], E::radial_50), 2.0, 0.01);
    EXPECT_NEAR(sigma_of(distances[draws / 20 * 19], E::radial_95), 2.0, 0.01);
    EXPECT_EQ(sigma_of(2.0, E::per_axis), 2.0);
}

TEST(Area, CombinesItsTermsAndNeverGoesBelowNothing) {
    AreaRequest request;
    request.geometry = on_the_ground();
    request.position_error = Reading<Kind::length>(Length::of(3, metres));
    request.edge_offset = Reading<Kind::length>(Length::of(2, metres));
    Notes notes(UnitSystem::metric, true);
    const auto answer = area(request, notes);
    ASSERT_TRUE(answer.has_value());
    ASSERT_EQ(answer->error_terms.size(), 2U);
    EXPECT_NEAR(
        answer->deviation->si(),
        std::hypot(answer->error_terms[0].deviation.si(), answer->error_terms[1].deviation.si()),
        1e-9);
    EXPECT_NEAR(answer->perimeter.si(), 960.0, 0.05);
    EXPECT_NEAR(answer->error_terms[1].deviation.si(), 960.0 * 2.0 / std::sqrt(3.0), 0.1);
    EXPECT_NEAR(answer->area.value.si(), 25600.0 - 1600.0, 2.0);
    EXPECT_EQ(answer->holes, 1);
    EXPECT_EQ(answer->corners, 10);
    EXPECT_GE(notes.steps().size(), 5U);

    request.edge_offset = Reading<Kind::length>(Length::of(100, metres));
    Notes vague;
    const auto wide = area(request, vague);
    ASSERT_TRUE(wide.has_value());
    EXPECT_EQ(wide->area.low->si(), 0.0);
    bool says_so = false;
    for (const Finding& finding : vague.findings()) {
        says_so = says_so || finding.code == "area_vague";
    }
    EXPECT_TRUE(says_so);
}

TEST(Area, WarnsWhenCornersStandCloserThanTheirError) {
    AreaRequest request;
    Ring ring;
    const LocalPlane plane({-92.0, 44.0});
    for (int i = 0; i < 400; ++i) {
        const double angle = 2.0 * pi * i / 400;
        ring.push_back(plane.to_position({50.0 * std::cos(angle), 50.0 * std::sin(angle)}));
    }
    ring.push_back(ring.front());
    request.geometry.polygons.push_back({ring});
    request.position_error = Reading<Kind::length>(Length::of(3, metres));
    Notes notes;
    ASSERT_TRUE(area(request, notes).has_value());
    bool says_so = false;
    for (const Finding& finding : notes.findings()) {
        says_so = says_so || finding.code == "corners_not_independent";
    }
    EXPECT_TRUE(says_so);
}

TEST(Area, RefusesNegativeAndUnheardOfErrors) {
    for (const double bad : {-1.0, 1001.0, std::nan(""), std::numeric_limits<double>::infinity()}) {
        AreaRequest request;
        request.geometry = on_the_ground();
        request.edge_offset = Reading<Kind::length>(Length::of(bad, metres));
        Notes notes;
        const auto answer = area(request, notes);
        ASSERT_FALSE(answer.has_value());
        EXPECT_EQ(answer.error().field, "edge_offset");
        EXPECT_EQ(answer.error().code, ErrorCode::out_of_range);
    }
}

}  // namespace
}  // namespace swathbook::geometry
