// How finely a text was read: half the last digit typed, in SI.
#include <gtest/gtest.h>

#include <array>
#include <string_view>

#include "core/quantity/parse.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {
namespace {

struct Resolution {
    std::string_view text;
    Kind kind;
    double half_step_si;
};

TEST(Resolution, is_half_the_last_digit_typed) {
    for (const Resolution& expected : {
             Resolution{"31.5 s", Kind::duration, 0.05},
             Resolution{"31.50 s", Kind::duration, 0.005},
             Resolution{"12 s", Kind::duration, 0.5},
             Resolution{"120 s", Kind::duration, 0.5},
             Resolution{"12. s", Kind::duration, 0.5},
             Resolution{"12,5 s", Kind::duration, 0.05},
             Resolution{"1,250.5 s", Kind::duration, 0.05},
             Resolution{"1,250,000 m", Kind::length, 0.5},
             Resolution{"1.5e3 m", Kind::length, 50.0},
             Resolution{"15e-1 m", Kind::length, 0.05},
             Resolution{"0 m", Kind::length, 0.5},
             Resolution{"26 ft", Kind::length, 0.5 * 0.3048},
             Resolution{"72 degF", Kind::temperature, 0.5 * 5.0 / 9.0},
             Resolution{"80 %", Kind::fraction, 0.005},
             Resolution{"40 psi", Kind::pressure, 0.5 * pounds_per_square_inch.si},
             // Of a divisor the digits do not count: it is a count, not a reading.
             Resolution{"17 lb/100 gal", Kind::product_mass_per_mix,
                        0.5 * pounds_per_100_us_gallons.si},
             // A fraction was read in parts of its bottom number.
             Resolution{"1/2 m", Kind::length, 0.25},
             Resolution{"2-2/3 m", Kind::length, 0.5 / 3.0},
             Resolution{"6 1/8 m", Kind::length, 0.5 / 8.0},
             Resolution{"2\u00bd m", Kind::length, 0.25},
             // A sum was read as finely as its finest term.
             Resolution{"6 ft 2 in", Kind::length, 0.5 * 0.0254},
             Resolution{"6 ft + 0.5 m", Kind::length, 0.05},
             Resolution{"1 min 30.5 s", Kind::duration, 0.05},
             Resolution{"1 qt + 10 fl oz per acre", Kind::product_volume_per_area,
                        0.5 * us_fluid_ounces_per_acre.si},
             Resolution{"1 qt/ac + 10 fl oz/ac", Kind::product_volume_per_area,
                        0.5 * us_fluid_ounces_per_acre.si},
             Resolution{"1:30", Kind::duration, 0.5},
             Resolution{"1:30.25", Kind::duration, 0.005},
             Resolution{"1:30 h", Kind::duration, 30.0},
         }) {
        SCOPED_TRACE(expected.text);
        const auto parsed = parse_amount(expected.text, expected.kind);
        ASSERT_TRUE(parsed) << parsed.error().detail;
        EXPECT_NEAR(parsed->half_step_si, expected.half_step_si, 1e-15 * expected.half_step_si);
    }
}

TEST(Resolution, stays_with_the_reading_and_its_text) {
    const auto reading = parse<Kind::duration>("31.5 s");
    ASSERT_TRUE(reading);
    EXPECT_EQ(reading->value.in(seconds), 31.5);
    EXPECT_EQ(reading->half_step_si, 0.05);
    EXPECT_EQ(reading->text, "31.5 s");
}

}  // namespace
}  // namespace swathbook
