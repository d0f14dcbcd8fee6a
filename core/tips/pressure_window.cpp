#include "core/tips/pressure_window.hpp"

#include <fmt/format.h>

#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"

namespace swathbook::tips {
namespace {

/// A pressure worked out through a square and a root may miss a typed end by its last bits.
constexpr double arithmetic_blur = 1e-9;
constexpr int most_tips = 500;

}  // namespace

Result<PressureWindow> window_of(const std::optional<Reading<Kind::pressure>>& low,
                                 const std::optional<Reading<Kind::pressure>>& high,
                                 const std::string& where) {
    SWATHBOOK_CHECK(require_usable(low, where + "pressure_low", "The lowest pressure"));
    SWATHBOOK_CHECK(require_usable(high, where + "pressure_high", "The highest pressure"));
    if (low && high && low->value > high->value) {
        return fail(ErrorCode::inconsistent, where + "pressure_low",
                    fmt::format("The lowest pressure {} is above the highest {}. Exchange them.",
                                show(*low, UnitSystem::us), show(*high, UnitSystem::us)));
    }
    PressureWindow window;
    if (low) {
        window.low = low->value;
    }
    if (high) {
        window.high = high->value;
    }
    return window;
}

PressureWindow narrower(const PressureWindow& one, const PressureWindow& other) {
    PressureWindow both = one;
    if (other.low && (!both.low || *other.low > *both.low)) {
        both.low = other.low;
    }
    if (other.high && (!both.high || *other.high < *both.high)) {
        both.high = other.high;
    }
    return both;
}

InWindow stand_in(const PressureWindow& window, Pressure pressure) {
    if (window.low && pressure < *window.low * (1.0 - arithmetic_blur)) {
        return InWindow::below;
    }
    if (window.high && pressure > *window.high * (1.0 + arithmetic_blur)) {
        return InWindow::above;
    }
    return window.is_entered() ? InWindow::within : InWindow::not_entered;
}

std::string describe(const PressureWindow& window, UnitSystem units) {
    if (window.is_entered()) {
        return fmt::format("{} to {}", show(*window.low, units), show(*window.high, units));
    }
    if (window.high) {
        return fmt::format("up to {}", show(*window.high, units));
    }
    return window.low ? fmt::format("from {}", show(*window.low, units))
                      : std::string("not entered");
}

Result<std::optional<Length>> width_per_tip(const std::optional<Reading<Kind::length>>& spacing,
                                            const std::optional<Reading<Kind::length>>& width,
                                            std::optional<int> tips) {
    SWATHBOOK_CHECK(require_usable(spacing, "spacing", "Tip spacing"));
    SWATHBOOK_CHECK(require_usable(width, "width", "The width served"));
    if (spacing && width) {
        return fail(ErrorCode::inconsistent, "width",
                    "Both a tip spacing and a width are given. Give the spacing, or the width with "
                    "the number of tips that serve it.");
    }
    if (tips && (*tips < 1 || *tips > most_tips)) {
        return fail(ErrorCode::out_of_range, "tips",
                    fmt::format("The number of tips is {}. It must be 1 to {}.", *tips, most_tips));
    }
    if (spacing) {
        return spacing->value;
    }
    if (width) {
        return width->value / static_cast<double>(tips.value_or(1));
    }
    return std::nullopt;
}

}  // namespace swathbook::tips
