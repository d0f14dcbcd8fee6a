#pragma once

#include "core/job/tip_check.hpp"
#include "reports/packet/common.hpp"
#include "reports/packet/computed.hpp"

namespace swathbook::reports {

using ComputedTipCheck = Computed<job::TipCheckRequest, job::TipCheckAnswer>;

/// Tips as bars against the reference with the limits chosen, a table of verdicts, and how the
/// published limits differ.
[[nodiscard]] Sheet tip_sheet(const ComputedTipCheck& check, const Voice& voice);

}  // namespace swathbook::reports
