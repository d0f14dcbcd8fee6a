#include "core/weather/direction.hpp"

#include <array>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/quantity/units.hpp"

namespace swathbook::weather {
namespace {

std::vector<Angle> at(std::initializer_list<double> from_north) {
    std::vector<Angle> angles;
    for (const double degree : from_north) {
        angles.push_back(Angle::of(degree, degrees));
    }
    return angles;
}

// Jammalamadaka and SenGupta, Topics in Circular Statistics (2001), page 23: mean 48.63 degrees,
// circular variance 0.1635635; seen in the tests of astropy
// (astropy/stats/tests/test_circstats.py), which took them from the R package CircStats.
TEST(MeanDirection, agrees_with_the_published_mean_and_variance) {
    const MeanDirection mean = mean_of(at({51, 67, 40, 109, 31, 358}));
    ASSERT_TRUE(mean.mean);
    EXPECT_NEAR(mean.mean->in(degrees), 48.63, 0.005);
    EXPECT_NEAR(mean.mean->si(), 0.8487044, 5e-8);
    EXPECT_NEAR(1.0 - mean.resultant_length, 0.1635635, 5e-8);
    EXPECT_NEAR(mean.deviation->si(), std::sqrt(-2.0 * std::log(1.0 - 0.1635635)), 1e-7);
}

// The same book, pages 6 and 125: 24 directions, resultant length 0.766282.
TEST(MeanDirection, agrees_with_the_published_length_of_grouped_directions) {
    std::vector<Angle> all;
    constexpr std::array<std::pair<double, int>, 7> groups{
        {{0, 12}, {3.6, 1}, {36, 6}, {72, 1}, {108, 2}, {169.2, 1}, {324, 1}}};
    for (const auto& [degree, count] : groups) {
        all.insert(all.end(), static_cast<std::size_t>(count), Angle::of(degree, degrees));
    }
    EXPECT_NEAR(mean_of(all).resultant_length, 0.766282, 5e-7);
}

TEST(MeanDirection, of_350_and_10_degrees_is_north_and_not_south) {
    const MeanDirection mean = mean_of(at({350, 10}));
    EXPECT_NEAR(angle_between(*mean.mean, Angle{}).in(degrees), 0.0, 1e-9);
}

TEST(MeanDirection, of_opposite_directions_is_none) {
    const MeanDirection mean = mean_of(at({0, 180}));
    EXPECT_FALSE(mean.mean);
    EXPECT_FALSE(mean.deviation);
    EXPECT_LT(mean.resultant_length, 1e-9);
}

RC_GTEST_PROP(MeanDirection, turns_with_its_directions, ()) {
    const auto raw = *rc::gen::container<std::vector<int>>(3, rc::gen::inRange(0, 3600));
    const double turn = *rc::gen::inRange(0, 3600) / 10.0;
    std::vector<Angle> plain;
    std::vector<Angle> turned;
    for (const int tenth : raw) {
        plain.push_back(Angle::of(tenth / 10.0, degrees));
        turned.push_back(Angle::of(std::fmod(tenth / 10.0 + turn, 360.0), degrees));
    }
    const MeanDirection a = mean_of(plain);
    const MeanDirection b = mean_of(turned);
    RC_ASSERT(std::abs(a.resultant_length - b.resultant_length) < 1e-12);
    if (a.mean && a.resultant_length > 0.01) {
        const Angle meant = Angle::of(std::fmod(a.mean->in(degrees) + turn, 360.0), degrees);
        RC_ASSERT(angle_between(*b.mean, meant).in(degrees) < 1e-9);
    }
}

TEST(Direction, reads_words_and_degrees) {
    constexpr std::array<std::pair<std::string_view, double>, 9> texts{{{"N", 0},
                                                                        {"sw", 225},
                                                                        {"WSW", 247.5},
                                                                        {"south-west", 225},
                                                                        {"North", 0},
                                                                        {"225", 225},
                                                                        {"225 deg", 225},
                                                                        {"360", 0},
                                                                        {"12.5", 12.5}}};
    for (const auto& [text, degree] : texts) {
        const auto read = parse_direction(text, "f");
        ASSERT_TRUE(read) << text;
        EXPECT_NEAR(read->angle.in(degrees), degree, 1e-9) << text;
    }
    EXPECT_DOUBLE_EQ(parse_direction("SW", "f")->half_step.in(degrees), 11.25);
}

TEST(Direction, refuses_what_is_no_direction) {
    for (const char* text : {"", "up", "NN", "NNNE", "sws", "3 mph", "nan"}) {
        const auto read = parse_direction(text, "readings[0].wind_from");
        ASSERT_FALSE(read) << text;
        EXPECT_EQ(read.error().code, ErrorCode::invalid_input) << text;
        EXPECT_EQ(read.error().field, "readings[0].wind_from");
    }
    for (const char* text : {"361", "-20", "1000 deg"}) {
        EXPECT_EQ(parse_direction(text, "f").error().code, ErrorCode::out_of_range) << text;
    }
}

TEST(Direction, names_the_nearest_of_sixteen_points) {
    EXPECT_EQ(compass_word(Angle::of(0, degrees)), "N");
    EXPECT_EQ(compass_word(Angle::of(11.2, degrees)), "N");
    EXPECT_EQ(compass_word(Angle::of(11.3, degrees)), "NNE");
    EXPECT_EQ(compass_word(Angle::of(348.8, degrees)), "N");
    EXPECT_EQ(compass_word(Angle::of(348.7, degrees)), "NNW");
    EXPECT_NEAR(opposite(Angle::of(225, degrees)).in(degrees), 45.0, 1e-9);
    EXPECT_NEAR(angle_between(Angle::of(350, degrees), Angle::of(10, degrees)).in(degrees), 20.0,
                1e-9);
}

}  // namespace
}  // namespace swathbook::weather
