#include "core/tips/iso_size.hpp"

#include <array>
#include <cmath>
#include <string>

#include <fmt/format.h>

#include "core/quantity/units.hpp"

namespace swathbook::tips {
namespace {

constexpr std::array sizes{
    IsoSize{"01", "orange", "naranja", 0.4, 0.1, 100, true},
    IsoSize{"015", "green", "verde", 0.6, 0.15, 100, true},
    IsoSize{"02", "yellow", "amarillo", 0.8, 0.2, 50, true},
    IsoSize{"025", "lilac", "lila", 1.0, 0.25, 50, true},
    IsoSize{"03", "blue", "azul", 1.2, 0.3, 50, true},
    IsoSize{"04", "red", "rojo", 1.6, 0.4, 50, true},
    IsoSize{"05", "brown", "marrón", 2.0, 0.5, 50, true},
    IsoSize{"06", "grey", "gris", 2.4, 0.6, 50, true},
    IsoSize{"08", "white", "blanco", 3.2, 0.8, 50, true},
    IsoSize{"10", "light blue", "azul claro", 4.0, 1.0, 0, false},
    IsoSize{"15", "light green", "verde claro", 6.0, 1.5, 0, false},
};

/// Spray angles that the trade writes before a size.
constexpr std::array<std::string_view, 14> angles{"15", "25", "30", "40",  "50",  "65",  "73",
                                                  "80", "90", "95", "100", "110", "120", "130"};

const IsoSize* find(std::string_view text) {
    for (const IsoSize& size : sizes) {
        if (size.size == text) {
            return &size;
        }
    }
    return nullptr;
}

const IsoSize* find_after_angle(std::string_view text) {
    for (const std::string_view angle : angles) {
        if (!text.starts_with(angle)) {
            continue;
        }
        std::string_view rest = text.substr(angle.size());
        if (rest.starts_with('-') || rest.starts_with(' ')) {
            rest.remove_prefix(1);
        }
        if (const IsoSize* size = find(rest)) {
            return size;
        }
    }
    return nullptr;
}

}  // namespace

std::span<const IsoSize> iso_sizes() {
    return sizes;
}

Rating rating_of(const IsoSize& size, SizeConvention convention) {
    if (convention == SizeConvention::litres_at_3_bar) {
        return {Flow::of(size.litres_per_minute_at_3_bar, litres_per_minute),
                Pressure::of(3.0, bars)};
    }
    return {Flow::of(size.us_gallons_per_minute_at_40_psi, us_gallons_per_minute),
            Pressure::of(40.0, pounds_per_square_inch)};
}

Result<IsoSize> iso_size_from_text(std::string_view text, std::string_view field) {
    if (const IsoSize* size = find(text)) {
        return *size;
    }
    if (const IsoSize* size = find_after_angle(text)) {
        return *size;
    }
    std::string known;
    for (const IsoSize& size : sizes) {
        known += known.empty() ? "" : ", ";
        known += size.size;
    }
    return fail(ErrorCode::not_found, field,
                fmt::format("\"{}\" is not a tip size in the table. Sizes are {}, alone or after "
                            "the spray angle (110-04). For any other tip give its rated flow and "
                            "pressure from the maker's table.",
                            text.substr(0, 40), known));
}

NearestSize nearest_size(Flow flow, Pressure pressure, SizeConvention convention) {
    NearestSize best{sizes[0], flow_at(rating_of(sizes[0], convention), pressure), 0.0};
    const auto distance = [flow](Flow other) {
        const double ratio = flow / other;
        return ratio < 1.0 ? 1.0 / ratio : ratio;
    };
    for (const IsoSize& size : sizes) {
        const Flow at_pressure = flow_at(rating_of(size, convention), pressure);
        if (distance(at_pressure) < distance(best.flow)) {
            best = {size, at_pressure, 0.0};
        }
    }
    best.deviation = flow / best.flow - 1.0;
    return best;
}

}  // namespace swathbook::tips
