#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "core/geometry/position.hpp"
#include "core/quantity/quantity.hpp"

namespace swathbook::geometry {

/// What a receiver's or map's stated position error means. Makers and studies say it in five ways.
enum class PositionErrorMeaning : std::uint8_t {
    per_axis,     ///< standard deviation east and north each
    radial_rms,   ///< root mean square of the distance ("RMSE", "DRMS"): sigma = r / sqrt 2
    radial_mean,  ///< mean distance: sigma = r / sqrt(pi/2)
    radial_50,    ///< half of the fixes are nearer ("CEP"): sigma = r / sqrt(2 ln 2)
    radial_95,    ///< 95 % of the fixes are nearer: sigma = r / sqrt(2 ln 20)
};

[[nodiscard]] std::string_view words_of(PositionErrorMeaning meaning);

/// Standard deviation along each axis of a circular normal error stated in one of these ways.
/// @source the Rayleigh distribution: mean sqrt(pi/2) sigma, median sqrt(2 ln 2) sigma, quantile q
///         sqrt(-2 ln(1-q)) sigma
[[nodiscard]] Length per_axis_error(Length stated, PositionErrorMeaning meaning);

/// Standard deviation of an area whose corners err independently, by the same sigma along each
/// axis:
///
///   variance = sigma^2/4 * sum over corners of |next - previous|^2  +  corners * sigma^4 / 2
///
/// over outer rings and holes alike. An error common to all corners moves the ground and changes no
/// area; an error that follows along the edge is worse than this and belongs into an edge offset.
///
/// @param set   checked polygons
/// @param sigma per axis, 0 or above
/// @accuracy first order in sigma plus the exact second-order term for normal errors
/// @valid    sigma well below the length of the edges
/// @source   propagation through the shoelace formula; the same approach as L. Bondesson, G. Stahl
///           and S. Holm, Forest Science 44(3) (1998) 405-413 (abstract seen)
/// @cases    tests/cases/geometry/area_uncertainty.case; Monte Carlo in
///           tests/unit/geometry/area_error_test.cpp
[[nodiscard]] Area area_deviation(const PolygonSet& set, Length sigma);

}  // namespace swathbook::geometry
