#include "core/quantity/print.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/quantity/parse.hpp"
#include "core/quantity/units.hpp"

namespace swathbook {
namespace {

TEST(Print, four_digits_are_shown_but_none_before_the_point_is_dropped) {
    EXPECT_EQ(show_number(43560.0), "43560");
    EXPECT_EQ(show_number(43560.4), "43560");
    EXPECT_EQ(show_number(12.9874), "12.99");
    EXPECT_EQ(show_number(0.1), "0.1");
    EXPECT_EQ(show_number(137.64), "137.6");
    EXPECT_EQ(show_number(2.0), "2");
    EXPECT_EQ(show_number(100.0), "100");
    EXPECT_EQ(show_number(0.00123456), "0.001235");
    EXPECT_EQ(show_number(1.0 / 3.0), "0.3333");
    EXPECT_EQ(show_number(2.0 / 3.0, 2), "0.67");
    EXPECT_EQ(show_number(340.3125, 7), "340.3125");
    EXPECT_EQ(show_number(-12.9874), "-12.99");
}

/// The rule works on the decimal digits a person sees, not on the binary value behind them: 2.675
/// is stored a little below, and still rounds up.
TEST(Print, halves_round_away_from_zero_as_seen) {
    EXPECT_EQ(show_fixed(2.675, 2), "2.68");
    EXPECT_EQ(show_fixed(1.005, 2), "1.01");
    EXPECT_EQ(show_fixed(0.5, 0), "1");
    EXPECT_EQ(show_fixed(1.5, 0), "2");
    EXPECT_EQ(show_fixed(2.5, 0), "3");
    EXPECT_EQ(show_fixed(-2.5, 0), "-3");
    EXPECT_EQ(show_fixed(0.49999, 0), "0");
    EXPECT_EQ(show_number(12.345), "12.35");
    EXPECT_EQ(show_number(99995.0, 4), "99995");
    EXPECT_EQ(show_number(9.9996, 4), "10");
    EXPECT_EQ(show_number(0.99996, 4), "1");
    EXPECT_EQ(show_number(0.099996, 4), "0.1");
}

TEST(Print, fixed_decimals_keep_their_zeros) {
    EXPECT_EQ(show_fixed(45.88, 2), "45.88");
    EXPECT_EQ(show_fixed(45.0, 2), "45.00");
    EXPECT_EQ(show_fixed(0.0, 2), "0.00");
    EXPECT_EQ(show_fixed(0.004, 2), "0.00");
    EXPECT_EQ(show_fixed(-0.004, 2), "0.00");
    EXPECT_EQ(show_fixed(0.05, 1), "0.1");
    EXPECT_EQ(show_fixed(9.99, 1), "10.0");
    EXPECT_EQ(show_fixed(1e20, 1), "100000000000000000000.0");
    EXPECT_EQ(show_fixed(1234.5, 0), "1235");
}

TEST(Print, edges) {
    EXPECT_EQ(show_number(0.0), "0");
    EXPECT_EQ(show_number(-0.0), "0");
    EXPECT_EQ(show_number(1e15), "1e15");
    EXPECT_EQ(show_number(123456789012345.0), "123456789012345");
    EXPECT_EQ(show_number(1.23456e18), "1.235e18");
    EXPECT_EQ(show_number(9.9999e17), "1e18");
    EXPECT_EQ(show_number(1.5e-12), "1.5e-12");
    EXPECT_EQ(show_number(1e-6), "0.000001");
    EXPECT_EQ(show_number(std::numeric_limits<double>::quiet_NaN()), "not a number");
    EXPECT_EQ(show_number(-std::numeric_limits<double>::infinity()), "-infinity");
    EXPECT_EQ(show_fixed(std::numeric_limits<double>::infinity(), 2), "infinity");
    EXPECT_EQ(show_number(std::numeric_limits<double>::denorm_min()), "5e-324");
    EXPECT_EQ(show_number(std::numeric_limits<double>::max()), "1.798e308");
}

TEST(Print, a_value_is_shown_in_the_units_asked_for) {
    EXPECT_EQ(show(MixPerArea::of(12.9874, us_gallons_per_acre), UnitSystem::us), "12.99 gal/ac");
    EXPECT_EQ(show(MixPerArea::of(20, us_gallons_per_acre), UnitSystem::metric), "187.1 L/ha");
    EXPECT_EQ(show(MixPerArea::of(20, us_gallons_per_acre), "fl oz/1000 ft2"),
              "58.77 fl oz/1000 ft2");
    EXPECT_EQ(show(Temperature::of(72, degrees_fahrenheit), UnitSystem::us), "72 degF");
    EXPECT_EQ(show(Temperature::of(72, degrees_fahrenheit), UnitSystem::metric), "22.22 degC");
    EXPECT_EQ(show(PercentByVolume::of(2, percents), UnitSystem::us), "2 % v/v");
    EXPECT_EQ(show(CountPerArea::of(412, per_acre), UnitSystem::us), "412 each/ac");
}

TEST(Print, a_reading_is_shown_as_it_was_typed) {
    auto reading = *parse<Kind::length>("6 ft 2 in");
    EXPECT_EQ(show(reading, UnitSystem::metric), "6 ft 2 in");
    reading.text.clear();
    EXPECT_EQ(show(reading, UnitSystem::metric), "1.88 m");
}

}  // namespace
}  // namespace swathbook
