#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook::tips {

/// Pressures a tip or a sprayer may be run at. An absent end was not entered, which is not "any".
struct PressureWindow {
    std::optional<Pressure> low{};
    std::optional<Pressure> high{};

    [[nodiscard]] bool is_entered() const { return low.has_value() && high.has_value(); }
};

/// A window as typed.
/// @param where path before the member names
/// @errors out_of_range, inconsistent when low is above high
[[nodiscard]] Result<PressureWindow> window_of(const std::optional<Reading<Kind::pressure>>& low,
                                               const std::optional<Reading<Kind::pressure>>& high,
                                               const std::string& where);

/// What both allow.
[[nodiscard]] PressureWindow narrower(const PressureWindow& one, const PressureWindow& other);

enum class InWindow : std::uint8_t { not_entered, within, below, above };

/// Where a pressure stands. Within needs both ends entered; an end that is entered can still
/// refuse.
[[nodiscard]] InWindow stand_in(const PressureWindow& window, Pressure pressure);

/// "15 psi to 60 psi", "up to 60 psi", "not entered".
[[nodiscard]] std::string describe(const PressureWindow& window, UnitSystem units);

/// Ground width that one tip serves: the spacing, or a width shared by a number of tips.
///
/// @param tips left out with a width: one nozzle or one cluster serves all of it
/// @return nothing when neither is given
/// @errors out_of_range, inconsistent
[[nodiscard]] Result<std::optional<Length>> width_per_tip(
    const std::optional<Reading<Kind::length>>& spacing,
    const std::optional<Reading<Kind::length>>& width, std::optional<int> tips);

}  // namespace swathbook::tips
