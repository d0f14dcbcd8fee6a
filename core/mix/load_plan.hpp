#pragma once

#include <optional>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/loads.hpp"

/// The first half of `loads`: how much mix, on what ground, in how many fills.
namespace swathbook::mix {

/// The job's ground and mix, before it is split.
struct GroundPlan {
    std::optional<NetArea> treated{};
    std::optional<PlannedArea> field{};  ///< only with bands
    double band_share = 1.0;             ///< treated of field
    std::optional<MixPerArea> mix_per_treated{};
    Volume sprayed{};  ///< mix that reaches the ground
    Volume dead{};     ///< mix that stays in the sprayer
};

/// @errors invalid_input, inconsistent, out_of_range with the request member's name
/// @cases  tests/unit/mix/load_plan_test.cpp
[[nodiscard]] Result<GroundPlan> plan_ground(const LoadsRequest& request, Notes& notes);

/// Splits a volume into fills that a tank can spray out.
///
/// Identities: no part is above `usable` (by more than 1e-9 of it); equal parts are all the same;
/// the parts add up to the total within 1e-12 of it; with full_then_rest only the last part is
/// smaller.
///
/// @errors out_of_range when there would be more than 500
/// @cases  tests/unit/mix/load_plan_test.cpp
[[nodiscard]] Result<std::vector<Volume>> split_volume(Volume total, Volume usable, Split split);

}  // namespace swathbook::mix
