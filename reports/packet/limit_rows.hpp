#pragma once

#include <span>
#include <vector>

#include "core/mix/limits.hpp"
#include "core/mix/recipe.hpp"
#include "reports/packet/common.hpp"

namespace swathbook::reports {

/// The strictest limits with the labels they were typed from, so that figures print as typed.
struct Labels {
    const mix::StrictestLimits& limits;
    std::span<const mix::TankProduct> products;
};

/// The strictest limits as table rows: limit, value, whose label, where on it, and which other
/// labels were not read for it.
[[nodiscard]] Table strictest_table(const Labels& labels, const Voice& voice);

/// The limits that nobody typed from any label, in one sentence that does not let them pass for "no
/// limit"; empty when all were.
[[nodiscard]] std::string not_entered_by_anyone(const Labels& labels, const Voice& voice);

/// Waits before people, animals, hay crews and seed may go back, as lines of text.
[[nodiscard]] std::vector<std::string> waiting_times(const Labels& labels, const Voice& voice);

/// The name of a limit as core/mix words it ("max_single_rate"), for people.
[[nodiscard]] std::string limit_name(std::string_view limit, const Voice& voice);

}  // namespace swathbook::reports
