#include "core/calibration/entry_limits.hpp"

#include <cmath>

#include <fmt/format.h>

#include "core/quantity/print.hpp"

namespace swathbook::calibration {
namespace {

std::string shown(double si, std::string_view text, const EntryLimits& limits, const Notes& notes) {
    return text.empty() ? show(si, limits.kind, notes.units()) : std::string(text);
}

}  // namespace

Result<void> within(double si, std::string_view text, const EntryLimits& limits,
                    std::string_view field, std::string_view what, const Notes& notes) {
    if (!std::isfinite(si)) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("{} is not a number that can be measured. Type what was read, such "
                                "as \"{}\".",
                                what, info_of(limits.kind).example));
    }
    if (si >= limits.least && si <= limits.most) {
        return {};
    }
    if (si <= 0.0 && limits.least > 0.0) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("{} is {}. It must be above zero: {}.", what,
                                shown(si, text, limits, notes), limits.reason));
    }
    return fail(
        ErrorCode::out_of_range, field,
        fmt::format("{} is {}. It must be from {} to {}: {}.", what, shown(si, text, limits, notes),
                    show(limits.least, limits.kind, notes.units()),
                    show(limits.most, limits.kind, notes.units()), limits.reason));
}

}  // namespace swathbook::calibration
