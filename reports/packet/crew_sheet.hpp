#pragma once

#include "core/calibration/crew.hpp"
#include "reports/packet/common.hpp"
#include "reports/packet/computed.hpp"

namespace swathbook::reports {

using ComputedCrew = Computed<calibration::CrewRequest, calibration::CrewAnswer>;

/// What each person really puts on, the one recipe for all, and who leaves the label's range.
[[nodiscard]] Sheet crew_sheet(const ComputedCrew& crew, const Voice& voice);

}  // namespace swathbook::reports
