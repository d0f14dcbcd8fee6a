#pragma once

#include <vector>

#include "core/mix/limits.hpp"
#include "reports/packet/common.hpp"

namespace swathbook::reports {

/// The strictest limits as table rows: limit, value, whose label, where on it, and which other
/// labels were not read for it.
[[nodiscard]] Table strictest_table(const mix::StrictestLimits& limits, const Voice& voice);

/// The limits that nobody typed from any label, in one sentence that does not let them pass for "no
/// limit"; empty when all were.
[[nodiscard]] std::string not_entered_by_anyone(const mix::StrictestLimits& limits,
                                                const Voice& voice);

/// Waits before people, animals, hay crews and seed may go back, as lines of text.
[[nodiscard]] std::vector<std::string> waiting_times(const mix::StrictestLimits& limits,
                                                     const Voice& voice);

/// The name of a limit as core/mix words it ("max_single_rate"), for people.
[[nodiscard]] std::string limit_name(std::string_view limit, const Voice& voice);

}  // namespace swathbook::reports
