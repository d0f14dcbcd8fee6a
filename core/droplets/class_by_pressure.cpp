#include "core/droplets/class_by_pressure.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "core/quantity/units.hpp"

namespace swathbook::droplets {
namespace {

/// Two pressures typed in different units may differ in the last bits: 2 bar and 200 kPa are one
/// end point.
constexpr double same_pressure = 1e-9;

bool at_or_above(Pressure pressure, Pressure limit) {
    return pressure.si() >= limit.si() * (1.0 - same_pressure);
}

bool at_or_below(Pressure pressure, Pressure limit) {
    return pressure.si() <= limit.si() * (1.0 + same_pressure);
}

std::string in_psi(Pressure pressure) {
    return fmt::format("{:.4g} psi ({:.3g} bar)", pressure.in(pounds_per_square_inch),
                       pressure.in(bars));
}

Result<void> check_band(const ClassBand& band, const std::string& field) {
    const double from = band.from.value.si();
    const double to = band.to.value.si();
    if (!std::isfinite(from) || !std::isfinite(to) || from < 0.0 || to <= 0.0) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("A droplet class is given from {} to {}. Pressures must be above "
                                "0; copy them from the maker's table.",
                                in_psi(band.from.value), in_psi(band.to.value)));
    }
    if (from > to) {
        return fail(ErrorCode::inconsistent, field,
                    fmt::format("A droplet class is given from {} down to {}. Write the lower "
                                "pressure first.",
                                in_psi(band.from.value), in_psi(band.to.value)));
    }
    return {};
}

bool overlap(const ClassBand& first, const ClassBand& second) {
    const double low = std::max(first.from.value.si(), second.from.value.si());
    const double high = std::min(first.to.value.si(), second.to.value.si());
    return low < high * (1.0 - same_pressure);
}

}  // namespace

Result<void> check_bands(std::span<const ClassBand> bands, std::string_view field) {
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const std::string path = fmt::format("{}[{}]", field, i);
        SWATHBOOK_CHECK(check_band(bands[i], path));
        for (std::size_t j = 0; j < i; ++j) {
            if (bands[i].droplet_class != bands[j].droplet_class && overlap(bands[i], bands[j])) {
                return fail(ErrorCode::inconsistent, path,
                            fmt::format("The classes {} and {} overlap between {} and {}. One "
                                        "pressure has one class: correct the table.",
                                        info_of(bands[j].droplet_class).letters,
                                        info_of(bands[i].droplet_class).letters,
                                        in_psi(bands[i].from.value), in_psi(bands[i].to.value)));
            }
        }
    }
    return {};
}

std::optional<DropletClass> class_at(std::span<const ClassBand> bands, Pressure pressure) {
    std::optional<DropletClass> found;
    for (const ClassBand& band : bands) {
        if (at_or_above(pressure, band.from.value) && at_or_below(pressure, band.to.value) &&
            (!found || is_coarser(*found, band.droplet_class))) {
            found = band.droplet_class;
        }
    }
    return found;
}

}  // namespace swathbook::droplets
