#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/geometry/area_error.hpp"
#include "core/geometry/position.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook::geometry {

/// What ground to measure, and how well its boundary is known.
struct AreaRequest {
    PolygonSet geometry{};
    std::optional<Position> expected_near{};
    std::optional<Reading<Kind::length>> position_error{};
    PositionErrorMeaning position_error_means = PositionErrorMeaning::per_axis;
    std::optional<Reading<Kind::length>> edge_offset{};
};

/// One part of the ground.
struct AreaPart {
    std::string name{};
    Area area;  ///< inside the outer ring and outside the holes
    std::optional<Area> holes_area{};
    int holes = 0;
    Length perimeter;  ///< outer ring and holes together
    int corners = 0;
};

/// Why the area is not known better.
struct AreaErrorTerm {
    std::string term{};  ///< "corners" or "edge_offset"
    std::string text{};  ///< what it comes from, in words
    Area deviation;      ///< standard deviation
    Fraction relative;   ///< of the area
};

struct AreaAnswer {
    Estimate<Kind::area> area{};
    Estimate<Kind::area> area_in_other_units{};  ///< the same: hectares beside acres
    Length perimeter;
    Length longest_edge;
    int holes = 0;
    int corners = 0;
    std::vector<AreaPart> parts{};
    BoundingBox box{};
    std::vector<AreaErrorTerm> error_terms{};
    std::optional<Area> deviation{};       ///< standard deviation, all terms together
    std::optional<Fraction> carry_more{};  ///< mix to carry beyond the middle, for the upper bound
};

/// Area of ground drawn on a map or walked with a receiver, on the WGS84 ellipsoid, with the
/// uncertainty that the boundary leaves in it.
///
/// Corner errors are independent (area_deviation); an edge offset is a distance by which the whole
/// boundary may lie too far out or in, anywhere up to the given figure (rectangular, so the
/// standard deviation is perimeter x offset / sqrt 3). The interval is 1.96 standard deviations
/// each way, never below nothing.
///
/// @param request polygons in longitude and latitude; errors of the boundary if known
/// @return area, perimeter, parts, box; interval when an error was given
/// @accuracy measure_ring; acres are international, 43,560 ft2 (4 ppm smaller than survey acres)
/// @valid    any valid polygons that keep clear of the 180 degree meridian
/// @errors   as check_positions and check_shapes; out_of_range for negative or absurd errors
/// @source   geodesic.hpp, area_error.hpp; acre: NIST Handbook 44 (2023), appendix C
/// @cases    tests/cases/geometry/
[[nodiscard]] Result<AreaAnswer> area(const AreaRequest& request, Notes& notes);

}  // namespace swathbook::geometry
