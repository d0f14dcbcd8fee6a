#include "core/quantity/require.hpp"

#include <cmath>
#include <limits>
#include <string>

#include <fmt/format.h>

#include "core/quantity/print.hpp"

namespace swathbook {
namespace {

struct Bounds {
    double low = 0.0;
    double high = std::numeric_limits<double>::infinity();
};

/// What could be meant on the ground, in SI; other kinds need only be above 0.
Bounds bounds_of(Kind kind) {
    switch (dimension_of(kind)) {
        case Dimension::length: return {1e-4, 1e6};
        case Dimension::volume: return {1e-9, 1e3};
        case Dimension::time: return {1e-2, 1e9};
        case Dimension::speed: return {1e-2, 50.0};
        case Dimension::flow: return {1e-9, 1.0};
        case Dimension::pressure: return {1e3, 5e7};
        case Dimension::volume_per_area: return {1e-9, 1.0};
        default: return {};
    }
}

}  // namespace

Result<void> require_usable(double si, Kind kind, std::string_view typed, std::string_view field,
                            std::string_view what) {
    const Bounds bounds = bounds_of(kind);
    if (std::isfinite(si) && si > 0.0 && si >= bounds.low && si <= bounds.high) {
        return {};
    }
    const std::string seen = typed.empty() && std::isfinite(si) ? show(si, kind, UnitSystem::us)
                             : typed.empty()                    ? std::string("not a number")
                                                                : std::string(typed);
    if (!std::isfinite(si) || si <= 0.0) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("{} is {}. It must be above 0: measure it again, or leave it out "
                                "where it is not needed.",
                                what, seen));
    }
    const bool small = si < bounds.low;
    return fail(ErrorCode::out_of_range, field,
                fmt::format("{} is {}, {} than {} ({}). Check the number and its unit.", what, seen,
                            small ? "smaller" : "larger",
                            show(small ? bounds.low : bounds.high, kind, UnitSystem::us),
                            show(small ? bounds.low : bounds.high, kind, UnitSystem::metric)));
}

}  // namespace swathbook
