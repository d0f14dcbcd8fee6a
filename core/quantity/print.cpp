#include "core/quantity/print.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/assert.hpp"
#include "core/quantity/detail/amount_text.hpp"

namespace swathbook {
namespace {

/// The shortest decimal digits that give a double back: 0.digits * 10^point.
struct Decimal {
    std::array<char, 24> digits{};
    int count = 0;
    int point = 0;  ///< digits before the decimal point; 0 or less for leading zeros behind it
};

/// @param magnitude finite, above 0
Decimal decimal_of(double magnitude) {
    std::array<char, 40> text{};
    const auto written = fmt::format_to_n(text.data(), text.size(), "{}", magnitude);
    Decimal decimal;
    bool behind_point = false;
    int exponent = 0;
    for (const char* at = text.data(); at != written.out; ++at) {
        if (*at == '.') {
            behind_point = true;
        } else if (*at == 'e') {
            const bool negative = at[1] == '-';
            for (const char* digit = at + 2; digit != written.out; ++digit) {
                exponent = exponent * 10 + (*digit - '0');
            }
            exponent = negative ? -exponent : exponent;
            break;
        } else {
            decimal.point += behind_point ? 0 : 1;
            if (decimal.count == 0 && *at == '0') {
                --decimal.point;
                continue;
            }
            decimal.digits[static_cast<std::size_t>(decimal.count++)] = *at;
        }
    }
    decimal.point += exponent;
    while (decimal.count > 0 &&
           decimal.digits[static_cast<std::size_t>(decimal.count - 1)] == '0') {
        --decimal.count;
    }
    return decimal;
}

/// Rounds to a count of decimals, half away from zero.
void round_to(Decimal& decimal, int decimals) {
    const int keep = decimal.point + decimals;
    if (keep >= decimal.count) {
        return;
    }
    const bool up = keep >= 0 && decimal.digits[static_cast<std::size_t>(keep)] >= '5';
    decimal.count = std::max(keep, 0);
    if (!up) {
        return;
    }
    int at = decimal.count - 1;
    while (at >= 0 && decimal.digits[static_cast<std::size_t>(at)] == '9') {
        --at;
    }
    decimal.count = at + 1;
    if (at >= 0) {
        ++decimal.digits[static_cast<std::size_t>(at)];
        return;
    }
    decimal.digits[0] = '1';
    decimal.count = 1;
    ++decimal.point;
}

/// Writes with exactly so many decimals; the value is already rounded to them.
std::string plain(const Decimal& decimal, int decimals, bool negative) {
    std::string text;
    bool any = false;
    for (int place = 0; place < std::max(decimal.point, 1) + decimals; ++place) {
        const int index = decimal.point >= 1 ? place : place - 1 + decimal.point;
        const char digit = index >= 0 && index < decimal.count
                               ? decimal.digits[static_cast<std::size_t>(index)]
                               : '0';
        if (place == std::max(decimal.point, 1)) {
            text += '.';
        }
        any = any || digit != '0';
        text += digit;
    }
    return negative && any ? "-" + text : text;
}

void drop_trailing_zeros(std::string& text) {
    if (text.find('.') == std::string::npos) {
        return;
    }
    while (text.back() == '0') {
        text.pop_back();
    }
    if (text.back() == '.') {
        text.pop_back();
    }
}

std::string not_finite(double number) {
    return std::isnan(number) ? "not a number" : (number < 0.0 ? "-infinity" : "infinity");
}

/// Outside these a plain number would be mostly zeros.
constexpr int most_digits_before_point = 15;
constexpr int most_zeros_behind_point = 8;

std::string with_exponent(Decimal decimal, int significant, bool negative) {
    const int exponent = decimal.point - 1;
    decimal.point = 1;
    round_to(decimal, significant - 1);
    const int carried = decimal.point - 1;
    decimal.point = 1;
    std::string text = plain(decimal, significant - 1, negative);
    drop_trailing_zeros(text);
    return fmt::format("{}e{}", text, exponent + carried);
}

struct UnitFactor {
    double si = 1.0;
    double zero = 0.0;
};

UnitFactor factor_of(Kind kind, std::string_view unit) {
    detail::UnitMeaning meaning;
    detail::Fault fault;
    double factor = 1.0;
    const bool known = detail::read_unit_alone(unit, meaning, fault) &&
                       detail::check_kind(meaning, info_of(kind), factor, fault);
    SWATHBOOK_ASSERT(known, "a unit to print in is one that parse_unit reads for the kind");
    return {meaning.si * factor, kind == Kind::temperature ? meaning.zero : 0.0};
}

}  // namespace

std::string show_number(double number, int significant) {
    if (!std::isfinite(number)) {
        return not_finite(number);
    }
    if (number == 0.0) {
        return "0";
    }
    SWATHBOOK_ASSERT(significant >= 1, "a number shows at least one digit");
    Decimal decimal = decimal_of(std::abs(number));
    if (decimal.point > most_digits_before_point || decimal.point < -most_zeros_behind_point) {
        return with_exponent(decimal, significant, number < 0.0);
    }
    const int decimals = std::max(0, significant - decimal.point);
    round_to(decimal, decimals);
    std::string text = plain(decimal, decimals, number < 0.0);
    drop_trailing_zeros(text);
    return text;
}

std::string show_fixed(double number, int decimals) {
    if (!std::isfinite(number)) {
        return not_finite(number);
    }
    SWATHBOOK_ASSERT(decimals >= 0, "a count of decimals is not negative");
    Decimal decimal;
    if (number != 0.0) {
        decimal = decimal_of(std::abs(number));
        round_to(decimal, decimals);
    }
    return plain(decimal, decimals, number < 0.0);
}

double number_in(double si, Kind kind, std::string_view unit) {
    const UnitFactor factor = factor_of(kind, unit);
    return (si - factor.zero) / factor.si;
}

std::string show(double si, Kind kind, std::string_view unit, int significant) {
    return fmt::format("{} {}", show_number(number_in(si, kind, unit), significant), unit);
}

std::string show(double si, Kind kind, UnitSystem units, int significant) {
    const KindInfo& info = info_of(kind);
    return show(si, kind, units == UnitSystem::us ? info.us_unit : info.metric_unit, significant);
}

std::string show(const LabelRate& rate, UnitSystem units) {
    return rate.text.empty() ? show(rate.si, kind_of(rate.basis), units) : rate.text;
}

}  // namespace swathbook
