#include "core/base/elementary.hpp"

#include <cmath>
#include <cstdint>
#include <limits>
#include <random>

#include <gtest/gtest.h>

// The judge of every function here is the C library's own in long double (64 bits of mantissa on
// this machine), which errs by less than a thousandth of what is allowed.
namespace swathbook::elementary {
namespace {

constexpr int arguments = 1'000'000;
constexpr double allowed = 1e-15;

static_assert(std::numeric_limits<long double>::digits >= 64,
              "the judge needs more digits than double");

/// Greatest error over arguments spread evenly from low to high; draw may bend them.
template <class Ours, class Judge, class Draw>
double greatest_error(double low, double high, Ours ours, Judge judge, Draw draw) {
    std::mt19937_64 random(20260118);
    std::uniform_real_distribution<double> spread(low, high);
    double greatest = 0.0;
    for (int i = 0; i < arguments; ++i) {
        const double argument = draw(spread(random));
        const long double right = judge(static_cast<long double>(argument));
        const long double error = std::fabs(static_cast<long double>(ours(argument)) - right);
        greatest =
            std::max(greatest, static_cast<double>(error / std::max(std::fabs(right), 1e-300L)));
    }
    return greatest;
}

double as_it_is(double argument) {
    return argument;
}
double as_power_of_ten(double argument) {
    return std::pow(10.0, argument);
}

TEST(Elementary, sines_agree_with_the_c_library) {
    // By the absolute error where the value itself goes through zero.
    const auto apart = [](auto ours, auto judge) {
        std::mt19937_64 random(7);
        std::uniform_real_distribution<double> spread(-1000.0, 1000.0);
        double greatest = 0.0;
        for (int i = 0; i < arguments; ++i) {
            const double x = spread(random);
            greatest = std::max(
                greatest,
                static_cast<double>(std::fabs(ours(x) - judge(static_cast<long double>(x)))));
        }
        return greatest;
    };
    EXPECT_LT(apart(sine, [](long double x) { return std::sin(x); }), 2.3e-16);
    EXPECT_LT(apart(cosine, [](long double x) { return std::cos(x); }), 2.3e-16);
    EXPECT_LT(greatest_error(
                  -12.0, -0.2, sine, [](long double x) { return std::sin(x); }, as_power_of_ten),
              allowed);
}

TEST(Elementary, angles_agree_with_the_c_library_all_round_and_close_to_the_axes) {
    std::mt19937_64 random(11);
    std::uniform_real_distribution<double> turn(-3.14159265358979, 3.14159265358979);
    std::uniform_real_distribution<double> size(-9.0, 3.0);
    double greatest = 0.0;
    for (int i = 0; i < arguments; ++i) {
        const double angle = turn(random);
        const double across = std::sin(angle) * std::pow(10.0, i % 2 == 0 ? 0.0 : size(random));
        const double along = std::cos(angle);
        const long double right =
            std::atan2(static_cast<long double>(across), static_cast<long double>(along));
        greatest = std::max(
            greatest, static_cast<double>(std::fabs((angle_of(across, along) - right) / right)));
    }
    EXPECT_LT(greatest, allowed);
    EXPECT_EQ(angle_of(0.0, 0.0), 0.0);
    EXPECT_EQ(angle_of(0.0, -2.0), std::atan2(0.0, -2.0));
    EXPECT_EQ(angle_of(1.0, 0.0), std::atan2(1.0, 0.0));
}

TEST(Elementary, logarithms_agree_with_the_c_library) {
    const auto judge = [](long double x) { return std::log(x); };
    EXPECT_LT(greatest_error(-300.0, 300.0, logarithm, judge, as_power_of_ten), allowed);
    EXPECT_LT(greatest_error(0.5, 2.0, logarithm, judge, as_it_is), allowed);
    EXPECT_EQ(logarithm(1.0), 0.0);
    EXPECT_EQ(logarithm(0.0), -std::numeric_limits<double>::infinity());
    EXPECT_TRUE(std::isnan(logarithm(-1.0)));
}

TEST(Elementary, exponentials_agree_with_the_c_library) {
    const auto judge = [](long double x) { return std::exp(x); };
    const auto judge_less_one = [](long double x) { return std::expm1(x); };
    EXPECT_LT(greatest_error(-700.0, 709.0, exponential, judge, as_it_is), allowed);
    EXPECT_LT(greatest_error(-3.0, 3.0, exponential_less_one, judge_less_one, as_it_is), allowed);
    EXPECT_LT(greatest_error(-15.0, -1.0, exponential_less_one, judge_less_one, as_power_of_ten),
              allowed);
    EXPECT_EQ(exponential(0.0), 1.0);
    EXPECT_EQ(exponential(710.0), std::numeric_limits<double>::infinity());
    EXPECT_EQ(exponential(-800.0), 0.0);
}

TEST(Elementary, powers_agree_with_the_c_library) {
    std::mt19937_64 random(13);
    std::uniform_real_distribution<double> tens(-6.0, 6.0);
    std::uniform_real_distribution<double> exponents(-50.0, 50.0);
    double greatest = 0.0;
    for (int i = 0; i < arguments; ++i) {
        const double base = std::pow(10.0, tens(random));
        const double exponent = exponents(random) / (i % 2 == 0 ? 1.0 : 50.0);
        const long double right =
            std::pow(static_cast<long double>(base), static_cast<long double>(exponent));
        const double size = 1.0 + std::fabs(exponent * std::log(base));
        greatest = std::max(
            greatest,
            static_cast<double>(std::fabs((power(base, exponent) - right) / right) / size));
    }
    EXPECT_LT(greatest, allowed);
    EXPECT_EQ(power(0.0, 0.43), 0.0);
    EXPECT_EQ(power(7.0, 0.0), 1.0);
    EXPECT_TRUE(std::isnan(power(-1.0, 0.5)));
}

TEST(Elementary, what_is_no_number_or_out_of_range_gives_no_number) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    for (const double argument : {nan, infinity, -infinity, 1e9}) {
        EXPECT_TRUE(std::isnan(sine(argument)));
        EXPECT_TRUE(std::isnan(cosine(argument)));
    }
    EXPECT_TRUE(std::isnan(angle_of(nan, 1.0)));
    EXPECT_TRUE(std::isnan(angle_of(1.0, infinity)));
    EXPECT_TRUE(std::isnan(logarithm(nan)));
    EXPECT_TRUE(std::isnan(exponential(nan)));
    EXPECT_TRUE(std::isnan(power(nan, 0.5)));
}

}  // namespace
}  // namespace swathbook::elementary
