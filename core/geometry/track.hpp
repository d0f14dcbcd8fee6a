#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/geometry/position.hpp"
#include "core/quantity/quantity.hpp"

namespace swathbook::geometry {

/// One fix of a receiver, and whether the spray was on from there to the next.
struct TrackFix {
    double t_seconds = 0.0;  ///< on any clock that only runs forward
    double lat = 0.0;
    double lon = 0.0;
    bool on = false;
    std::optional<double> accuracy_m{};  ///< as the receiver gives it
};

/// A stretch without fixes, or between two that nothing on the ground could have joined.
struct TrackGap {
    double from_s = 0.0;
    double to_s = 0.0;
    Length straight{};     ///< between its ends; not counted
    bool was_on = false;   ///< the spray was on before it
    bool is_jump = false;  ///< faster than any sprayer, not a lack of fixes
};

/// What a track adds up to.
struct TrackSums {
    int fixes = 0;
    Length sprayed_length{};
    Duration sprayed_time{};
    Length other_length{};  ///< driven with the spray off
    int gaps = 0;
    Duration gap_time{};
    Duration gap_time_on{};                ///< of gaps that the spray was on before
    std::vector<TrackGap> longest_gaps{};  ///< at most twenty, longest first
    std::optional<Length> worst_accuracy{};
};

/// Length of the sprayed part of a track on the ellipsoid.
///
/// Each step counts to the state of the fix it starts from. No straight line is drawn over a step
/// longer than `gap_after`, or one that would take more than 30 m/s: such steps are not counted and
/// are reported.
///
/// @param fixes      in order of time; two of one time are taken as one place
/// @param field      path of the track, for errors
/// @accuracy a step of 300 m within 1e-6 m of the geodesic up to 70 degrees of latitude; the noise
///           of the receiver is far larger, and makes a slow track longer, never shorter
/// @errors   out_of_range (a position or time that is none), inconsistent (time runs backward)
/// @source   near_distance_m; judged by GeographicLib in tests/unit/geometry/track_test.cpp
/// Identities: a track cut in two at a fix has the sum of both lengths; turned round in time
/// (states moved along) it has the same length.
[[nodiscard]] Result<TrackSums> sum_of_track(const std::vector<TrackFix>& fixes, Duration gap_after,
                                             std::string_view field);

}  // namespace swathbook::geometry
