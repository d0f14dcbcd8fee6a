#pragma once

#include <vector>

#include "core/base/result.hpp"
#include "core/calibration/tip_check.hpp"
#include "core/job/tip_check.hpp"

namespace swathbook::job::detail {

/// What each tip was caught at, from whichever of the three ways the request gives it in.
/// @errors invalid_input for none, more than one way, or a volume without a time; out_of_range
[[nodiscard]] Result<std::vector<calibration::TipFlow>> read_tip_flows(
    const TipCheckRequest& request);

}  // namespace swathbook::job::detail
