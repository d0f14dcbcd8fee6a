#include "core/quantity/measure_text.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <numeric>
#include <span>
#include <string_view>
#include <utility>

#include "core/base/assert.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {
namespace {

/// Past this an amount is no longer measured out by hand; it keeps counts within exact integers.
constexpr double largest_si = 1e9;
constexpr double largest_rounding = 0.02;

struct Piece {
    std::string_view name;
    std::int64_t ounces;
};

/// How a kind is divided: whole pieces of ounces, and the two metric units.
struct Scale {
    std::span<const Piece> pieces;
    std::string_view ounce_name;
    double ounce_si;
    std::string_view large_name;
    double large_si;
    std::string_view small_name;
    double small_si;
};

constexpr std::array volume_pieces{Piece{"gal", 128}, Piece{"qt", 32}};
constexpr std::array mass_pieces{Piece{"lb", 16}};
constexpr Scale volume_scale{volume_pieces, "fl oz", us_fluid_ounces.si, "L",
                             litres.si,     "mL",    millilitres.si};
constexpr Scale mass_scale{mass_pieces,  "oz wt", ounces_weight.si, "kg",
                           kilograms.si, "g",     grams.si};

struct Amount {
    std::string text;
    double si;
};

void append(std::string& text, std::string_view number, std::string_view unit) {
    fmt::format_to(std::back_inserter(text), "{}{} {}", text.empty() ? "" : " + ", number, unit);
}

/// "8-1/4", "3/4" or "8": a count of parts of a whole.
std::string mixed_number(std::int64_t count, std::int64_t parts) {
    const std::int64_t whole = count / parts;
    const std::int64_t rest = count % parts;
    if (rest == 0) {
        return fmt::format("{}", whole);
    }
    const std::int64_t common = std::gcd(rest, parts);
    const std::string fraction = fmt::format("{}/{}", rest / common, parts / common);
    return whole == 0 ? fraction : fmt::format("{}-{}", whole, fraction);
}

Amount customary(std::int64_t count, std::int64_t parts, const Scale& scale) {
    Amount amount{{}, static_cast<double>(count) / static_cast<double>(parts) * scale.ounce_si};
    std::int64_t left = count;
    for (const Piece& piece : scale.pieces) {
        const std::int64_t pieces = left / (piece.ounces * parts);
        left %= piece.ounces * parts;
        if (pieces > 0) {
            append(amount.text, fmt::format("{}", pieces), piece.name);
        }
    }
    if (left > 0 || amount.text.empty()) {
        append(amount.text, mixed_number(left, parts), scale.ounce_name);
    }
    return amount;
}

Amount metric(double si, const Scale& scale) {
    const double small = si / scale.small_si;
    constexpr double small_per_large = 1000.0;
    // Marks are whole numbers of hundredths, so that the text and the value are the same number.
    constexpr double hundredths = 100.0;
    const double mark = small >= 100.0 ? 100.0 : small >= 20.0 ? 50.0 : small >= 2.0 ? 10.0 : 1.0;
    const double rounded = std::round(small * hundredths / mark) * mark / hundredths;
    if (rounded >= small_per_large) {
        std::string number = show_fixed(rounded / small_per_large, 3);
        while (number.back() == '0') {
            number.pop_back();
        }
        if (number.back() == '.') {
            number.pop_back();
        }
        return {fmt::format("{} {}", number, scale.large_name),
                rounded / small_per_large * scale.large_si};
    }
    return {fmt::format("{} {}", show_number(rounded), scale.small_name), rounded * scale.small_si};
}

Amount measure(double si, const Scale& scale, UnitSystem units, int parts) {
    const bool can_be_poured = si >= 0.0 && si < largest_si;
    SWATHBOOK_ASSERT(can_be_poured, "an amount to measure out is finite");
    const bool has_such_marks = parts == 1 || parts == 2 || parts == 4 || parts == 8 || parts == 16;
    SWATHBOOK_ASSERT(has_such_marks, "ounces are read in halves, quarters, eighths or sixteenths");
    if (units == UnitSystem::metric) {
        return metric(si, scale);
    }
    const double exact = si / scale.ounce_si * parts;
    const double rounded = std::round(exact);
    if (std::abs(rounded - exact) > largest_rounding * exact) {
        return metric(si, scale);
    }
    return customary(static_cast<std::int64_t>(rounded), parts, scale);
}

}  // namespace

Measured<Kind::volume> measured(Volume volume, UnitSystem units, int parts_of_an_ounce) {
    Amount amount = measure(volume.si(), volume_scale, units, parts_of_an_ounce);
    return {std::move(amount.text), Volume::from_si(amount.si)};
}

Measured<Kind::mass> measured(Mass mass, UnitSystem units, int parts_of_an_ounce) {
    Amount amount = measure(mass.si(), mass_scale, units, parts_of_an_ounce);
    return {std::move(amount.text), Mass::from_si(amount.si)};
}

std::string show_measured(Volume volume, UnitSystem units, int parts_of_an_ounce) {
    return measured(volume, units, parts_of_an_ounce).text;
}

std::string show_measured(Mass mass, UnitSystem units, int parts_of_an_ounce) {
    return measured(mass, units, parts_of_an_ounce).text;
}

}  // namespace swathbook
