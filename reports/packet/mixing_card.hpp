#pragma once

#include <vector>

#include "core/mix/loads.hpp"
#include "reports/packet/common.hpp"
#include "reports/packet/computed.hpp"

namespace swathbook::reports {

using ComputedLoads = Computed<mix::LoadsRequest, mix::LoadsAnswer>;

/// One card for each load, or for a run of loads that are alike: English and Spanish side by side,
/// amounts large, with the marks of the user's own jugs. Product names and label text stand as they
/// were typed in both languages.
[[nodiscard]] std::vector<Sheet> mixing_cards(const ComputedLoads& loads, UnitSystem units);

}  // namespace swathbook::reports
