#include "core/quantity/measure_text.hpp"

#include <gtest/gtest.h>

#include "core/quantity/units.hpp"

namespace swathbook {
namespace {

std::string us(double fluid_ounces, int parts = usual_parts_of_an_ounce) {
    return show_measured(Volume::of(fluid_ounces, us_fluid_ounces), UnitSystem::us, parts);
}
std::string metric(double ml) {
    return show_measured(Volume::of(ml, millilitres), UnitSystem::metric);
}

TEST(MeasureText, volumes_in_gallons_quarts_and_ounces) {
    EXPECT_EQ(us(40), "1 qt + 8 fl oz");
    EXPECT_EQ(us(32), "1 qt");
    EXPECT_EQ(us(128), "1 gal");
    EXPECT_EQ(us(200), "1 gal + 2 qt + 8 fl oz");
    EXPECT_EQ(us(12.5), "12-1/2 fl oz");
    EXPECT_EQ(us(14.53), "14-1/2 fl oz");
    EXPECT_EQ(us(46.5), "1 qt + 14-1/2 fl oz");
    EXPECT_EQ(us(31.9), "1 qt");  // 31.9 is nearer 32 than 31-3/4
    EXPECT_EQ(us(0), "0 fl oz");
    EXPECT_EQ(us(10.4, 1), "308 mL");
    EXPECT_EQ(us(12.3, 8), "12-1/4 fl oz");
    EXPECT_EQ(us(12.4, 8), "12-3/8 fl oz");
}

TEST(MeasureText, a_mark_more_than_two_percent_off_gives_way_to_millilitres) {
    EXPECT_EQ(us(0.375), "11.1 mL");
    EXPECT_EQ(us(3.1), "91.5 mL");
    EXPECT_EQ(us(0.01), "0.3 mL");
    EXPECT_EQ(us(1), "1 fl oz");
}

TEST(MeasureText, volumes_in_litres_and_millilitres) {
    EXPECT_EQ(metric(11.09), "11.1 mL");
    EXPECT_EQ(metric(1.234), "1.23 mL");
    EXPECT_EQ(metric(55.3), "55.5 mL");
    EXPECT_EQ(metric(253.4), "253 mL");
    EXPECT_EQ(metric(1250), "1.25 L");
    EXPECT_EQ(metric(999.6), "1 L");
    EXPECT_EQ(metric(47000), "47 L");
    EXPECT_EQ(metric(0), "0 mL");
}

TEST(MeasureText, masses_in_pounds_and_ounces_or_grams) {
    EXPECT_EQ(show_measured(Mass::of(4.25, pounds), UnitSystem::us), "4 lb + 4 oz wt");
    EXPECT_EQ(show_measured(Mass::of(2.5, ounces_weight), UnitSystem::us), "2-1/2 oz wt");
    EXPECT_EQ(show_measured(Mass::of(0.1, ounces_weight), UnitSystem::us), "2.8 g");
    EXPECT_EQ(show_measured(Mass::of(1.928, kilograms), UnitSystem::metric), "1.928 kg");
}

}  // namespace
}  // namespace swathbook
