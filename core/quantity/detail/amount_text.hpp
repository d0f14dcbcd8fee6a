#pragma once

#include <string_view>

#include "core/quantity/detail/fault.hpp"
#include "core/quantity/detail/unit_text.hpp"
#include "core/quantity/kind.hpp"

namespace swathbook::detail {

/// A whole piece of text read, not yet judged against a kind.
struct AmountText {
    double si = 0.0;         ///< without the zero point
    double half_step = 0.0;  ///< in SI
    bool negative = false;
    UnitMeaning unit;
};

inline constexpr std::size_t longest_text = 200;

/// Reads numbers, units and sums of them.
/// @param expected_time true when "1:30" is a duration
/// @return false with a fault
[[nodiscard]] bool read_amount(std::string_view text, bool expected_time, AmountText& amount,
                               Fault& fault);

/// Reads a unit alone.
[[nodiscard]] bool read_unit_alone(std::string_view text, UnitMeaning& unit, Fault& fault);

/// Whether a unit can give a value of a kind; `factor` turns its SI into the kind's SI.
[[nodiscard]] bool check_kind(const UnitMeaning& unit, const KindInfo& info, double& factor,
                              Fault& fault);

}  // namespace swathbook::detail
