// Identities of reading and printing that must hold for every value, kind and unit.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/detail/words.hpp"
#include "core/quantity/measure_text.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/unit_table.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {
namespace {

const KindInfo& any_kind() {
    return all_kinds()[*rc::gen::inRange<std::size_t>(0, all_kinds().size())];
}

const UnitRow& any_unit() {
    return all_units()[*rc::gen::inRange<std::size_t>(0, all_units().size())];
}

std::string_view unit_of(const KindInfo& info, UnitSystem units) {
    return units == UnitSystem::us ? info.us_unit : info.metric_unit;
}

UnitSystem any_system() {
    return *rc::gen::element(UnitSystem::us, UnitSystem::metric);
}

/// A positive number with a few digits, from millionths to millions.
double any_number() {
    const auto digits = *rc::gen::inRange<std::int64_t>(1, 1000000000);
    const auto decimals = *rc::gen::inRange(0, 13);
    return static_cast<double>(digits) / std::pow(10.0, decimals);
}

/// A rounding to `significant` digits is off by at most half a unit of the last one.
double allowed(double number, int significant) {
    if (number == 0.0) {
        return 0.0;
    }
    const double magnitude = std::floor(std::log10(std::abs(number)));
    const double last = std::pow(10.0, magnitude - significant + 1);
    return 0.5000001 * std::min(last, 1.0) + 4e-15 * std::abs(number);
}

void check(bool passed) {
    EXPECT_TRUE(passed);
}

TEST(QuantityProperty, what_is_shown_is_read_back_within_its_rounding) {
    check(rc::check([] {
        const KindInfo& info = any_kind();
        const std::string_view unit = unit_of(info, any_system());
        const double number = any_number();
        const int significant = *rc::gen::inRange(1, 13);
        const auto exact = parse_amount(number, unit, info.kind);
        RC_ASSERT(exact.has_value());
        const std::string text = show(exact->si, info.kind, unit, significant);
        const auto again = parse_amount(text, info.kind);
        RC_ASSERT(again.has_value());
        const double difference =
            number_in(again->si, info.kind, unit) - number_in(exact->si, info.kind, unit);
        // A temperature passes through the zero point of its scale.
        const double through_zero = info.kind == Kind::temperature ? 2e-13 : 0.0;
        RC_ASSERT(std::abs(difference) <= allowed(number, significant) + through_zero);
    }));
}

TEST(QuantityProperty, a_number_and_its_text_give_the_same_bits) {
    check(rc::check([] {
        const KindInfo& info = any_kind();
        const std::string_view unit = unit_of(info, any_system());
        const auto digits = *rc::gen::inRange<std::int64_t>(0, 999999999999999);
        const int decimals = *rc::gen::inRange(0, 16);
        std::string typed = fmt::format("{:0>17}", digits);
        typed.insert(typed.size() - static_cast<std::size_t>(decimals), ".");
        // The reference is the C library, in the C locale of this process.
        const double number = std::strtod(typed.c_str(), nullptr);
        const auto text = parse_amount(typed + " " + std::string(unit), info.kind);
        const auto pair = parse_amount(number, unit, info.kind);
        RC_ASSERT(text.has_value());
        RC_ASSERT(pair.has_value());
        RC_ASSERT(text->si == pair->si);
    }));
}

TEST(QuantityProperty, exponents_round_as_the_c_library_rounds) {
    check(rc::check([] {
        const auto digits = *rc::gen::inRange<std::int64_t>(1, 999999999999999);
        const int exponent = *rc::gen::inRange(-22, 23);
        const std::string typed = fmt::format("{}e{}", digits, exponent);
        const auto parsed = parse_amount(typed + " m", Kind::length);
        RC_ASSERT(parsed.has_value());
        RC_ASSERT(parsed->si == std::strtod(typed.c_str(), nullptr));
        RC_ASSERT(std::abs(parsed->half_step_si / (0.5 * std::pow(10.0, exponent)) - 1.0) < 1e-14);
    }));
}

TEST(QuantityProperty, nineteen_digits_are_read_within_two_units_in_the_last_place) {
    check(rc::check([] {
        const auto digits = *rc::gen::inRange<std::uint64_t>(1, 9999999999999999999U);
        const int exponent = *rc::gen::inRange(-44, 45);
        const std::string typed = fmt::format("{}e{}", digits, exponent);
        const double expected = std::strtod(typed.c_str(), nullptr);
        const auto parsed = parse_amount(typed + " m", Kind::length);
        RC_ASSERT(parsed.has_value());
        RC_ASSERT(std::abs(parsed->si - expected) <= 4.5e-16 * expected);
    }));
}

TEST(QuantityProperty, a_unit_does_not_change_the_thing_measured) {
    check(rc::check([] {
        const UnitRow& from = any_unit();
        const UnitRow& to = any_unit();
        RC_PRE(from.dimension == Dimension::volume || from.dimension == Dimension::length ||
               from.dimension == Dimension::mass);
        RC_PRE(from.dimension == to.dimension);
        const Kind kind = from.dimension == Dimension::volume   ? Kind::volume
                          : from.dimension == Dimension::length ? Kind::length
                                                                : Kind::mass;
        const double number = any_number();
        const auto first = parse_amount(number, from.name, kind);
        const auto second = parse_amount(number_in(first->si, kind, to.name), to.name, kind);
        RC_ASSERT(std::abs(second->si / first->si - 1.0) < 1e-15);
    }));
}

TEST(QuantityProperty, spaces_dots_and_capitals_do_not_matter) {
    check(rc::check([] {
        const KindInfo& info = any_kind();
        const double number = any_number();
        const std::string plain = fmt::format("{} {}", number, info.us_unit);
        std::string dressed;
        for (const char letter : plain) {
            const bool capital = *rc::gen::arbitrary<bool>();
            dressed += capital ? static_cast<char>(std::toupper(letter)) : letter;
            if (letter == ' ' && *rc::gen::arbitrary<bool>()) {
                dressed += *rc::gen::element(std::string(" "), std::string("\t"),
                                             std::string("\u00a0"), std::string("\u202f"));
            }
        }
        const auto a = parse_amount(plain, info.kind);
        const auto b = parse_amount("  " + dressed + " ", info.kind);
        RC_ASSERT(a.has_value());
        RC_ASSERT(b.has_value());
        RC_ASSERT(a->si == b->si);
        RC_ASSERT(a->half_step_si == b->half_step_si);
    }));
}

TEST(QuantityProperty, a_sum_is_the_sum_of_its_terms_and_as_fine_as_the_finest) {
    check(rc::check([] {
        const int quarts_typed = *rc::gen::inRange(0, 100);
        const int ounces_typed = *rc::gen::inRange(0, 1000);
        const std::string first = fmt::format("{} qt", quarts_typed);
        const std::string second = fmt::format("{:.1f} fl oz", 0.1 * ounces_typed);
        const auto a = parse_amount(first, Kind::volume);
        const auto b = parse_amount(second, Kind::volume);
        for (const std::string_view between : {" + ", " ", " and ", ", "}) {
            const auto sum = parse_amount(first + std::string(between) + second, Kind::volume);
            RC_ASSERT(sum.has_value());
            RC_ASSERT(std::abs(sum->si - (a->si + b->si)) <= 1e-15 * sum->si);
            RC_ASSERT(sum->half_step_si == std::min(a->half_step_si, b->half_step_si));
        }
        const auto rate =
            parse_amount(first + " + " + second + " per acre", Kind::product_volume_per_area);
        RC_ASSERT(rate.has_value());
        RC_ASSERT(std::abs(rate->si * acres.si - (a->si + b->si)) <= 2e-15 * (a->si + b->si));
    }));
}

TEST(QuantityProperty, a_fraction_is_its_quotient) {
    check(rc::check([] {
        const int whole = *rc::gen::inRange(0, 1000);
        const int bottom = *rc::gen::inRange(2, 100);
        const int top = *rc::gen::inRange(1, bottom);
        for (const std::string_view between : {" ", "-", " - "}) {
            const auto parsed =
                parse_amount(fmt::format("{}{}{}/{} m", whole, between, top, bottom), Kind::length);
            RC_ASSERT(parsed.has_value());
            const double expected = whole + static_cast<double>(top) / bottom;
            RC_ASSERT(parsed->si == expected);
            RC_ASSERT(parsed->half_step_si == 0.5 / bottom);
        }
    }));
}

TEST(QuantityProperty, the_half_step_is_half_a_unit_of_the_last_digit) {
    check(rc::check([] {
        const auto digits = *rc::gen::inRange<std::int64_t>(0, 1000000);
        const int decimals = *rc::gen::inRange(0, 7);
        const std::string typed = fmt::format(
            "{:.{}f}", static_cast<double>(digits) / std::pow(10.0, decimals), decimals);
        const auto parsed = parse_amount(typed + " m", Kind::length);
        RC_ASSERT(parsed.has_value());
        const double expected = 0.5 / std::pow(10.0, decimals);
        RC_ASSERT(std::abs(parsed->half_step_si - expected) <= 1e-15 * expected);
    }));
}

TEST(QuantityProperty, rounding_is_never_off_by_more_than_half_its_last_digit) {
    check(rc::check([] {
        const double number = any_number() * (*rc::gen::arbitrary<bool>() ? 1.0 : -1.0);
        const int decimals = *rc::gen::inRange(0, 8);
        const double fixed = std::strtod(show_fixed(number, decimals).c_str(), nullptr);
        const double half = 0.5 / std::pow(10.0, decimals);
        RC_ASSERT(std::abs(fixed - number) <= half * (1.0 + 1e-9) + 4e-16 * std::abs(number));
        const int significant = *rc::gen::inRange(1, 16);
        const double shown = std::strtod(show_number(number, significant).c_str(), nullptr);
        RC_ASSERT(std::abs(shown - number) <= allowed(number, significant));
        RC_ASSERT(show_number(-number) == "-" + show_number(number) ||
                  "-" + show_number(-number) == show_number(number));
    }));
}

TEST(QuantityProperty, seventeen_digits_give_every_double_back) {
    check(rc::check([] {
        const auto bits = *rc::gen::arbitrary<double>();
        RC_PRE(std::isfinite(bits));
        RC_ASSERT(std::strtod(show_number(bits, 17).c_str(), nullptr) == bits);
    }));
}

TEST(QuantityProperty, a_measured_text_says_exactly_what_is_poured) {
    check(rc::check([] {
        const UnitSystem units = any_system();
        const int parts = *rc::gen::element(1, 2, 4, 8, 16);
        const Volume volume = Volume::of(any_number(), us_fluid_ounces);
        const auto poured = measured(volume, units, parts);
        const auto read = parse_amount(poured.text, Kind::volume);
        RC_ASSERT(read.has_value());
        RC_ASSERT(std::abs(read->si - poured.poured.si()) <= 1e-15 * poured.poured.si());
        const Mass mass = Mass::of(any_number(), ounces_weight);
        const auto weighed = measured(mass, units, parts);
        const auto read_mass = parse_amount(weighed.text, Kind::mass);
        RC_ASSERT(read_mass.has_value());
        RC_ASSERT(std::abs(read_mass->si - weighed.poured.si()) <= 1e-15 * weighed.poured.si());
    }));
}

TEST(QuantityProperty, what_is_poured_is_near_what_was_wanted) {
    check(rc::check([] {
        const UnitSystem units = any_system();
        const double ml = 2.0 + static_cast<double>(*rc::gen::inRange(0, 1000000)) / 10.0;
        const Volume volume = Volume::of(ml, millilitres);
        const double ratio = measured(volume, units).poured / volume;
        // 2 % from an ounce mark, or half a tenth of a millilitre in two
        RC_ASSERT(std::abs(ratio - 1.0) <= 0.0250001);
    }));
}

/// Any bytes at all: an answer or a refusal with a sentence, never a fault, never a value that is
/// not a finite number.
TEST(QuantityProperty, any_text_is_answered_or_refused) {
    const std::vector<std::string> pieces = [] {
        std::vector<std::string> made{"1",      "2.5",  "1/2",  ",",  ".", "/",      "+",  "-",
                                      "%",      " ",    "'",    "\"", "(", ")",      "^2", "\u00bd",
                                      "\u00b0", "\xc3", "1:30", "e5", "#", "\u2212", "0"};
        for (const detail::Spelling& spelling : detail::all_spellings()) {
            made.emplace_back(spelling.text);
        }
        return made;
    }();
    check(rc::check([&pieces] {
        const KindInfo& info = any_kind();
        std::string text = *rc::gen::element(std::string("1 "), std::string());
        const int count = *rc::gen::inRange(0, 8);
        for (int i = 0; i < count; ++i) {
            text += *rc::gen::elementOf(pieces);
            text += *rc::gen::element(std::string(" "), std::string());
        }
        const auto parsed = parse_amount(text, info.kind);
        if (parsed) {
            RC_ASSERT(std::isfinite(parsed->si));
            RC_ASSERT(parsed->half_step_si > 0.0);
        } else {
            RC_ASSERT(parsed.error().detail.size() > 20);
            RC_ASSERT(parsed.error().detail.back() == '.');
        }
        const auto rate = parse_label_rate(text);
        RC_ASSERT(rate || !rate.error().detail.empty());
    }));
}

}  // namespace
}  // namespace swathbook
