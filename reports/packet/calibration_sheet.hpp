#pragma once

#include "core/calibration/calibrate.hpp"
#include "reports/packet/common.hpp"
#include "reports/packet/computed.hpp"

namespace swathbook::reports {

using ComputedCalibration = Computed<calibration::CalibrateRequest, calibration::CalibrateAnswer>;

/// What a sprayer puts out: the figure with its interval, what was measured, where the uncertainty
/// comes from, remarks, and the working to check with a pencil.
[[nodiscard]] Sheet calibration_sheet(const ComputedCalibration& calibration, const Voice& voice);

}  // namespace swathbook::reports
