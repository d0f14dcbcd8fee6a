#pragma once

#include <optional>
#include <span>

namespace swathbook::calibration {

/// How a set of tips wore between two checks, as a straight line.
struct WearTrend {
    double now = 0.0;         ///< mean deviation from the rating now, as a fraction
    double gained = 0.0;      ///< mean rise since the earlier check, as a fraction of the rating
    double gained_low = 0.0;  ///< 95 % interval of the rise
    double gained_high = 0.0;
    /// How much more use, in times the use between the checks, until the mean reaches the limit; 0
    /// when it is there already. Absent where the rise could as well be none.
    std::optional<double> left{};
    std::optional<double> left_low{};
    std::optional<double> left_high{};
};

/// Wear between two checks of the same tips in the same order, and what is left to a limit.
///
///   gained = mean(now - then);  left = (limit - mean now) / gained
///
/// The interval is Student's t on the differences tip by tip, joined with the resolution of the
/// readings. A straight line is a reading of two points, not a law: in an accelerated test flow
/// rose 10 % in about 30 to 35 h and 27.5 % in 100 h, so it held roughly.
///
/// @param now        deviation from the rating of each tip, as fractions
/// @param then       the same at the earlier check; as many
/// @param resolution relative half-step of one reading; 0 unknown
/// @param limit      deviation at which the set is to be replaced
/// @source rise in accelerated wear: Agricultural Engineering 2018, doi 10.1515/agriceng-2018-0037
[[nodiscard]] WearTrend wear_between(std::span<const double> now, std::span<const double> then,
                                     double resolution, double limit);

}  // namespace swathbook::calibration
