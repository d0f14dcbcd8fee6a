// Judge: GEOS (Debian libgeos-dev, C API), GEOSisValid and its reason.
#include <cmath>
#include <cstdarg>
#include <random>
#include <string>

#include <geos_c.h>
#include <gtest/gtest.h>

#include "core/geometry/area.hpp"
#include "core/geometry/ellipsoid.hpp"
#include "core/geometry/position_check.hpp"
#include "core/geometry/ring_check.hpp"
#include "core/geometry/shape_check.hpp"

namespace swathbook::geometry {
namespace {

/// GEOS asked about polygons; one handle, freed at the end.
class Geos {
public:
    Geos() : handle_(GEOS_init_r()) {}
    ~Geos() { GEOS_finish_r(handle_); }
    Geos(const Geos&) = delete;
    Geos& operator=(const Geos&) = delete;

    /// "Valid Geometry", or what is wrong.
    std::string reason(const PolygonSet& set) {
        std::vector<GEOSGeometry*> parts;
        for (const Polygon& polygon : set.polygons) {
            std::vector<GEOSGeometry*> holes;
            for (const Ring& hole : polygon.holes) {
                holes.push_back(ring(hole));
            }
            parts.push_back(GEOSGeom_createPolygon_r(handle_, ring(polygon.outer), holes.data(),
                                                     static_cast<unsigned>(holes.size())));
        }
        GEOSGeometry* all = GEOSGeom_createCollection_r(handle_, GEOS_MULTIPOLYGON, parts.data(),
                                                        static_cast<unsigned>(parts.size()));
        char* text = GEOSisValidReason_r(handle_, all);
        std::string reason = text;
        GEOSFree_r(handle_, text);
        GEOSGeom_destroy_r(handle_, all);
        return reason;
    }

private:
    GEOSGeometry* ring(const Ring& positions) {
        GEOSCoordSequence* sequence =
            GEOSCoordSeq_create_r(handle_, static_cast<unsigned>(positions.size()), 2);
        for (unsigned i = 0; i < positions.size(); ++i) {
            GEOSCoordSeq_setXY_r(handle_, sequence, i, positions[i].longitude_deg,
                                 positions[i].latitude_deg);
        }
        return GEOSGeom_createLinearRing_r(handle_, sequence);
    }
    GEOSContextHandle_t handle_;
};

Ring closed(Ring ring) {
    ring.push_back(ring.front());
    return ring;
}

Result<void> check(const PolygonSet& set, Notes& notes) {
    if (auto positions = check_positions(set, std::nullopt, notes); !positions) {
        return positions;
    }
    SWATHBOOK_CHECK(check_shapes(set, notes));
    return {};
}

Result<void> check(const PolygonSet& set) {
    Notes notes;
    return check(set, notes);
}

Error refused(const PolygonSet& set) {
    const auto checked = check(set);
    EXPECT_FALSE(checked.has_value());
    return checked ? Error{} : checked.error();
}

bool has_finding(const Notes& notes, std::string_view code) {
    for (const Finding& finding : notes.findings()) {
        if (finding.code == code) {
            return true;
        }
    }
    return false;
}

Ring box(double west, double south, double east, double north) {
    return {{west, south}, {east, south}, {east, north}, {west, north}, {west, south}};
}

TEST(Validity, SaysWhereABowTieCrossesAndMeasuresBothLobes) {
    const Error error = refused({{{closed({{0, 0}, {0.01, 0.01}, {0.01, 0}, {0, 0.01}})}}});
    EXPECT_EQ(error.code, ErrorCode::inconsistent);
    EXPECT_EQ(error.field, "geometry.coordinates[0]");
    EXPECT_NE(error.detail.find("edge 1-2 crosses edge 3-4 at 0.005, 0.005"), std::string::npos)
        << error.detail;
    // A quarter each of a 1113.2 m x 1105.7 m square: 30.77 ha.
    EXPECT_NE(error.detail.find("two lobes of 76.04 ac and 76.04 ac"), std::string::npos)
        << error.detail;
}

TEST(Validity, TakesRingsWoundEitherWay) {
    Ring outer = box(0, 0, 0.01, 0.01);
    Ring hole = box(0.002, 0.002, 0.004, 0.004);
    EXPECT_TRUE(check({{{outer, {hole}}}}).has_value());
    std::reverse(outer.begin(), outer.end());
    EXPECT_TRUE(check({{{outer, {hole}}}}).has_value());
    std::reverse(hole.begin(), hole.end());
    EXPECT_TRUE(check({{{outer, {hole}}}}).has_value());
}

TEST(Validity, NamesRepeatedPositionsAndSpikesAndGoesOn) {
    // reference: a repeated corner and a spike of no width leave a square's area as it is
    const PolygonSet set{
        {{closed({{0, 0}, {10, 0}, {10, 0}, {10, 10}, {10, 15}, {10, 10}, {0, 10}})}}};
    Notes notes;
    EXPECT_TRUE(check(set, notes).has_value());
    EXPECT_TRUE(has_finding(notes, "repeated_position"));
    EXPECT_TRUE(has_finding(notes, "spike"));
}

TEST(Validity, TakesOffSpikesAtTheClosingPositionToo) {
    const GridRing ring =
        grid_ring(closed({{5, 20}, {5, 10}, {0, 10}, {0, 0}, {10, 0}, {10, 10}, {5, 10}}));
    EXPECT_EQ(ring.size(), 5U);
    EXPECT_EQ(ring.spikes.size(), 1U);
    EXPECT_EQ(doubled_area(ring), static_cast<Wide>(200) * 1000000000 * 1000000000);
}

TEST(Validity, RefusesARingWithoutArea) {
    EXPECT_EQ(refused({{{closed({{0, 0}, {1, 1}, {2, 2}})}}}).code, ErrorCode::invalid_input);
    EXPECT_EQ(refused({{{closed({{1, 1}, {1, 1}, {1, 1}})}}}).code, ErrorCode::invalid_input);
}

TEST(Validity, RefusesUnclosedAndShortRings) {
    const Error open = refused({{{{{0, 0}, {1, 0}, {1, 1}, {0, 1}}}}});
    EXPECT_EQ(open.code, ErrorCode::invalid_input);
    EXPECT_NE(open.detail.find("not closed"), std::string::npos);
    const Error brief = refused({{{{{0, 0}, {1, 0}, {0, 0}}}}});
    EXPECT_NE(brief.detail.find("at least four positions"), std::string::npos);
    EXPECT_EQ(refused({}).code, ErrorCode::invalid_input);
}

TEST(Validity, TellsSwappedAxesFromProjectedNumbersAndStrayOnes) {
    const Error swapped = refused({{{box(40.0, -98.0, 40.01, -97.99)}}});
    EXPECT_EQ(swapped.code, ErrorCode::out_of_range);
    EXPECT_NE(swapped.detail.find("swapped"), std::string::npos);
    EXPECT_EQ(swapped.field, "geometry.coordinates[0][0]");
    const Error projected = refused({{{box(500000, 4427757, 500400, 4428157)}}});
    EXPECT_NE(projected.detail.find("flat map"), std::string::npos);
    const Error round = refused({{{box(262, 40, 262.01, 40.01)}}});
    EXPECT_NE(round.detail.find("262 would be -98"), std::string::npos);
    EXPECT_EQ(refused({{{box(150, 120, 151, 121)}}}).code, ErrorCode::out_of_range);
    EXPECT_EQ(refused({{{{{0, 0}, {NAN, 0}, {1, 1}, {0, 0}}}}}).code, ErrorCode::out_of_range);
    EXPECT_EQ(refused({{{{{0, 0}, {0, INFINITY}, {1, 1}, {0, 0}}}}}).code, ErrorCode::out_of_range);
}

TEST(Validity, UsesAnExpectedPlaceToTellSwappedAxes) {
    Notes notes;
    const PolygonSet east_of_90{{{box(40.0, -80.0, 40.01, -79.99)}}};
    EXPECT_TRUE(check_positions(east_of_90, std::nullopt, notes).has_value());
    EXPECT_TRUE(has_finding(notes, "maybe_swapped"));
    const auto refused_now = check_positions(east_of_90, Position{-80.1, 40.1}, notes);
    ASSERT_FALSE(refused_now.has_value());
    EXPECT_EQ(refused_now.error().code, ErrorCode::inconsistent);
    Notes far;
    EXPECT_TRUE(check_positions({{{box(-98, 40, -97.99, 40.01)}}}, Position{-90, 30}, far));
    EXPECT_TRUE(has_finding(far, "far_from_expected"));
}

TEST(Validity, RefusesTheAntimeridianAndAbsurdEdges) {
    const Error cut = refused({{{box(179.99, 10, -179.99, 10.01)}}});
    EXPECT_EQ(cut.code, ErrorCode::unsupported);
    EXPECT_NE(cut.detail.find("180 degree meridian"), std::string::npos);
    EXPECT_EQ(refused({{{box(-60, 10, 60, 11)}}}).code, ErrorCode::unsupported);
}

TEST(Validity, RefusesHolesOutsideAcrossAndAlongTheBoundary) {
    const Ring outer = box(0, 0, 10, 10);
    EXPECT_NE(refused({{{outer, {box(20, 0, 21, 1)}}}}).detail.find("outside"), std::string::npos);
    EXPECT_NE(refused({{{outer, {box(9, 1, 11, 2)}}}}).detail.find("crosses"), std::string::npos);
    EXPECT_NE(refused({{{outer, {box(5, 0, 6, 1)}}}}).detail.find("runs along"), std::string::npos);
    EXPECT_NE(refused({{{outer, {outer}}}}).detail.find("runs along"), std::string::npos);
    EXPECT_NE(refused({{{outer, {box(1, 1, 4, 4), box(3, 3, 5, 5)}}}}).detail.find("Holes 1 and 2"),
              std::string::npos);
    EXPECT_NE(refused({{{outer, {box(1, 1, 4, 4), box(2, 2, 3, 3)}}}}).detail.find("same ground"),
              std::string::npos);
    // a hole that contains the boundary
    EXPECT_NE(refused({{{outer, {box(-1, -1, 11, 11)}}}}).detail.find("outside"),
              std::string::npos);
    // a hole that crosses the boundary at corners only
    EXPECT_FALSE(check({{{outer, {closed({{5, 5}, {10, 0}, {12, 5}, {10, 10}})}}}}));
    // one corner on the boundary is allowed
    EXPECT_TRUE(check({{{outer, {closed({{5, 0}, {6, 1}, {5, 2}})}}}}));
}

TEST(Validity, RefusesPartsOnTheSameGroundButNotNeighbours) {
    const Polygon west{box(0, 0, 1, 1)};
    EXPECT_TRUE(check({{west, {box(1, 0, 2, 1)}}}));      // share an edge
    EXPECT_TRUE(check({{west, {box(1, 0.3, 2, 0.6)}}}));  // share part of an edge
    EXPECT_TRUE(check({{west, {box(1, 1, 2, 2)}}}));      // share a corner
    EXPECT_TRUE(check({{west, {box(5, 5, 6, 6)}}}));
    EXPECT_NE(refused({{west, {box(0.5, 0.5, 2, 2)}}}).detail.find("overlaps"), std::string::npos);
    EXPECT_NE(refused({{west, west}}).detail.find("counted twice"), std::string::npos);
    EXPECT_NE(refused({{west, {box(0.2, 0.2, 0.4, 0.4)}}}).detail.find("inside"),
              std::string::npos);
    EXPECT_NE(refused({{west, {box(0, 0, 0.5, 1)}}}).detail.find("counted twice"),
              std::string::npos);  // shares three edges from the inside
    const Polygon ring{box(0, 0, 9, 9), {box(3, 3, 6, 6)}};
    EXPECT_TRUE(check({{ring, {box(4, 4, 5, 5)}}}));  // an island in the hole
    EXPECT_TRUE(check({{ring, {box(3, 3, 6, 6)}}}));  // filling the hole
    EXPECT_FALSE(check({{ring, {box(2, 4, 5, 5)}}}));
    EXPECT_FALSE(check({{{box(4, 4, 5, 5)}, {box(0, 0, 9, 9)}}}));
}

TEST(Validity, SweepAgreesWithAllPairsOnSmallGrids) {
    std::mt19937_64 random(5);
    std::uniform_int_distribution<int> coordinate(0, 6);
    std::uniform_int_distribution<int> corners(3, 9);
    int simple = 0;
    for (int i = 0; i < 60000; ++i) {
        Ring ring;
        const int count = corners(random);
        for (int k = 0; k < count; ++k) {
            ring.push_back({coordinate(random) * 1.0, coordinate(random) * 1.0});
        }
        const GridRing grid = grid_ring(ring);
        bool meets = false;
        for (std::size_t a = 0; a < grid.size(); ++a) {
            for (std::size_t b = a + 2; b < grid.size(); ++b) {
                const bool neighbours = a == 0 && b + 1 == grid.size();
                meets =
                    meets || (!neighbours && meeting_of(grid.start(a), grid.end(a), grid.start(b),
                                                        grid.end(b)) != Meeting::none);
            }
        }
        ASSERT_EQ(first_self_meeting(grid).has_value(), meets);
        simple += meets || grid.size() < 3 ? 0 : 1;
    }
    EXPECT_GT(simple, 1000);
}

/// Valid by our rules. GEOS also refuses what we only name in a finding (spikes), edges shared by
/// two parts, and holes that together cut the inside in two; the areas of all of those are right.
bool geos_agrees(const std::string& reason, const Notes& notes, bool ours, bool parts_share_edge) {
    const bool valid = reason == "Valid Geometry";
    if (valid == ours) {
        return true;
    }
    return ours && !valid &&
           (has_finding(notes, "spike") || reason.starts_with("Interior is disconnected") ||
            (parts_share_edge && reason.starts_with("Self-intersection")));
}

TEST(Validity, AgreesWithGeosOnRandomPolygonsWithAHole) {
    Geos geos;
    std::mt19937_64 random(17);
    std::uniform_int_distribution<int> coordinate(0, 12);
    std::uniform_int_distribution<int> corners(3, 6);
    int valid = 0;
    for (int i = 0; i < 20000; ++i) {
        const auto random_ring = [&](int low, int scale) {
            Ring ring;
            const int count = corners(random);
            for (int k = 0; k < count; ++k) {
                ring.push_back({low + scale * coordinate(random) / 12.0,
                                low + scale * coordinate(random) / 12.0});
            }
            return closed(ring);
        };
        const PolygonSet set{{{random_ring(0, 12), {random_ring(3, 6)}}}};
        Notes notes;
        const bool ours = check(set, notes).has_value();
        const std::string reason = geos.reason(set);
        ASSERT_TRUE(geos_agrees(reason, notes, ours, false)) << reason << " ours " << ours;
        valid += ours ? 1 : 0;
    }
    EXPECT_GT(valid, 200);
}

TEST(Validity, AgreesWithGeosOnRandomPairsOfParts) {
    Geos geos;
    std::mt19937_64 random(23);
    std::uniform_int_distribution<int> coordinate(0, 8);
    int valid = 0;
    for (int i = 0; i < 20000; ++i) {
        const auto random_ring = [&](int shift) {
            Ring ring;
            for (int k = 0; k < 4; ++k) {
                ring.push_back({shift + coordinate(random) * 1.0, coordinate(random) * 1.0});
            }
            return closed(ring);
        };
        const PolygonSet set{{{random_ring(0)}, {random_ring(5)}}};
        Notes notes;
        const bool ours = check(set, notes).has_value();
        const std::string reason = geos.reason(set);
        ASSERT_TRUE(geos_agrees(reason, notes, ours, true)) << reason << " ours " << ours;
        valid += ours ? 1 : 0;
    }
    EXPECT_GT(valid, 1000);
}

TEST(Validity, AgreesWithGeosOnLargeStars) {
    Geos geos;
    std::mt19937_64 random(29);
    std::uniform_real_distribution<double> part(0.0, 1.0);
    int valid = 0;
    for (int i = 0; i < 300; ++i) {
        Ring ring;
        const int count = 200;
        for (int k = 0; k < count; ++k) {
            const double angle = 2.0 * pi * (k + (i % 2 == 0 ? 1.0 : 1.3) * part(random)) / count;
            const double radius = 0.01 * (0.9 + 0.1 * part(random));
            ring.push_back({-98 + radius * std::cos(angle), 40 + radius * std::sin(angle)});
        }
        const PolygonSet set{{{closed(ring)}}};
        const bool ours = check(set).has_value();
        ASSERT_EQ(geos.reason(set) == "Valid Geometry", ours);
        valid += ours ? 1 : 0;
    }
    EXPECT_GT(valid, 100);
    EXPECT_LT(valid, 300);
}

// A spike east along a parallel is straight on the grid, and the shortest lines out and back
// enclose thousands of acres: what is taken off must be off before the area is measured.
TEST(Validity, ASpikeAlongAParallelAddsNoGround) {
    const Ring plain{{-98, 40}, {-97.9, 40}, {-97.9, 40.1}, {-98, 40.1}, {-98, 40}};
    const Ring spiked{{-98, 40}, {-37, 40}, {-97.9, 40}, {-97.9, 40.1}, {-98, 40.1}, {-98, 40}};
    const auto measured = [](const Ring& ring) {
        AreaRequest request;
        request.geometry.polygons.push_back({ring});
        Notes notes(UnitSystem::us, false);
        return area(request, notes);
    };
    const auto with = measured(spiked);
    const auto without = measured(plain);
    ASSERT_TRUE(with && without);
    EXPECT_EQ(with->area.value, without->area.value);
    EXPECT_EQ(with->perimeter, without->perimeter);
    EXPECT_EQ(with->corners, 4);
}

}  // namespace
}  // namespace swathbook::geometry
