#include "core/job/adjust.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/quantity/units.hpp"

namespace swathbook::job {
namespace {

using ::testing::Contains;
using ::testing::Field;
using ::testing::IsEmpty;
using ::testing::Not;
using tips::InWindow;

MixPerArea gallons(double number) {
    return MixPerArea::of(number, us_gallons_per_acre);
}
Speed mph(double number) {
    return Speed::of(number, miles_per_hour);
}
Pressure psi(double number) {
    return Pressure::of(number, pounds_per_square_inch);
}

AdjustRequest from(double rate, double speed, double pressure, double target) {
    AdjustRequest request;
    request.rate = gallons(rate);
    request.speed = mph(speed);
    request.pressure = psi(pressure);
    request.target = gallons(target);
    return request;
}

AdjustAnswer answered(const AdjustRequest& request) {
    Notes notes;
    return adjust(request, notes).value();
}

std::vector<Finding> findings_of(const AdjustRequest& request) {
    Notes notes;
    EXPECT_TRUE(adjust(request, notes).has_value());
    return notes.findings();
}

// Iowa State University, crop news 844: 12 to 15 mph at one rate, 40 to 63 psi (+56 %, 62.5).
TEST(Adjust, a_rate_controller_raises_pressure_with_the_square_of_speed) {
    AdjustRequest request = from(10, 12, 40, 10);
    request.speeds = {mph(15)};
    const AdjustAnswer answer = answered(request);
    EXPECT_NEAR(answer.at_speeds.at(0).controller_pressure->in(pounds_per_square_inch), 62.5, 1e-9);
}

// Story 9: 15 gal/ac at 4 mph is 24 at 2.5 and 12 at 5; half the distance each is 18, at a harmonic
// speed of 3.33 mph, not 16.
TEST(Adjust, speed_swings_at_fixed_flow_as_in_story_9) {
    AdjustRequest request = from(15, 4, 40, 15);
    request.speeds = {mph(2.5), mph(5)};
    const AdjustAnswer answer = answered(request);
    EXPECT_NEAR(answer.at_speeds[0].rate->in(us_gallons_per_acre), 24, 1e-9);
    EXPECT_NEAR(answer.at_speeds[1].rate->in(us_gallons_per_acre), 12, 1e-9);
    EXPECT_NEAR(answer.rate_equal_distance->in(us_gallons_per_acre), 18, 1e-9);
    EXPECT_NEAR(answer.rate_equal_time->in(us_gallons_per_acre), 16, 1e-9);
    EXPECT_NEAR(answer.speed_equal_distance->in(miles_per_hour), 3.333, 0.0005);
}

TEST(Adjust, twice_the_rate_is_half_the_speed_or_four_times_the_pressure) {
    const AdjustAnswer answer = answered(from(15, 4, 20, 30));
    EXPECT_NEAR(answer.by_speed->speed.in(miles_per_hour), 2, 1e-12);
    EXPECT_NEAR(answer.by_pressure->pressure.in(pounds_per_square_inch), 80, 1e-9);
    EXPECT_THAT(findings_of(from(15, 4, 20, 30)),
                Contains(Field(&Finding::code, "pressure_for_small_corrections")));
    EXPECT_THAT(findings_of(from(15, 4, 20, 16)),
                Not(Contains(Field(&Finding::code, "pressure_for_small_corrections"))));
}

TEST(Adjust, windows_and_classes_are_held_against_the_new_pressure) {
    AdjustRequest request = from(15, 4, 40, 20);  // 71.1 psi
    request.pressure_low = psi(20);
    request.pressure_high = psi(60);
    request.classes = {{psi(20), psi(60), droplets::DropletClass::coarse},
                       {psi(70), psi(90), droplets::DropletClass::medium}};
    request.droplets = "coarse or coarser";
    const AdjustAnswer answer = answered(request);
    EXPECT_EQ(answer.by_pressure->window, InWindow::above);
    EXPECT_EQ(answer.by_pressure->class_now, droplets::DropletClass::coarse);
    EXPECT_EQ(answer.by_pressure->class_then, droplets::DropletClass::medium);
    EXPECT_EQ(answer.by_pressure->class_allowed, false);
    const auto findings = findings_of(request);
    EXPECT_THAT(findings, Contains(Field(&Finding::code, "pressure_out_of_window")));
    EXPECT_THAT(findings, Contains(Field(&Finding::code, "droplet_class_not_allowed")));
    EXPECT_THAT(findings, Contains(Field(&Finding::code, "droplet_class_changes")));
}

TEST(Adjust, a_class_not_entered_is_said_and_never_taken_as_allowed) {
    AdjustRequest request = from(15, 4, 40, 16);
    request.droplets = "coarse or coarser";
    EXPECT_FALSE(answered(request).by_pressure->class_allowed.has_value());
    EXPECT_THAT(findings_of(request), Contains(Field(&Finding::code, "droplet_class_not_entered")));
}

// Irish Independent, Farming (Teagasc): 1.3 L/min, 7.8 km/h, 0.5 m is 200 L/ha.
TEST(Adjust, the_flow_for_a_target_is_the_published_one) {
    AdjustRequest request;
    request.target = MixPerArea::of(200, litres_per_hectare);
    request.rate = MixPerArea::of(150, litres_per_hectare);
    request.speed = Speed::of(7.8, kilometres_per_hour);
    request.spacing = Length::of(0.5, metres);
    request.pressure_low = Pressure::of(1.5, bars);
    request.pressure_high = Pressure::of(3.0, bars);
    const AdjustAnswer answer = answered(request);
    EXPECT_NEAR(answer.by_tip->flow.in(litres_per_minute), 1.3, 1e-9);
    ASSERT_EQ(answer.by_tip->iso_sizes.size(), 1U);
    EXPECT_EQ(answer.by_tip->iso_sizes[0].size, "04");
    EXPECT_NEAR(answer.by_tip->iso_sizes[0].pressure.in(bars), 3.0 * (1.3 / 1.6) * (1.3 / 1.6),
                1e-9);
}

// University of Nebraska CropWatch 2016 and Oklahoma State: 20 gal/ac of a 10.65 lb/gal solution is
// calibrated as 22.6 gal/ac of water.
TEST(Adjust, a_heavy_mix_is_set_as_more_water) {
    AdjustRequest request = from(20, 5, 40, 20);
    request.carrier_density = Density::of(10.65, pounds_per_us_gallon);
    EXPECT_NEAR(answered(request).target_as_water.in(us_gallons_per_acre), 22.6, 0.05);
}

TEST(Adjust, the_present_rate_follows_from_flow_speed_and_spacing) {
    AdjustRequest request;
    request.target = gallons(20);
    request.tip_flow = Flow::of(0.4, us_gallons_per_minute);
    request.speed = mph(4);
    request.spacing = Length::of(20, inches);
    EXPECT_NEAR(answered(request).rate_now.in(us_gallons_per_acre), 5940 * 0.4 / (4 * 20), 1e-9);
    request.rate = gallons(35);
    EXPECT_THAT(findings_of(request), Contains(Field(&Finding::code, "rate_disagrees_with_flow")));
}

TEST(Adjust, a_size_and_its_pressure_stand_for_a_measured_flow) {
    AdjustRequest request;
    request.target = gallons(20);
    request.size = "04";
    request.convention = tips::SizeConvention::us_gallons_at_40_psi;
    request.pressure = psi(10);
    request.speed = mph(4);
    request.spacing = Length::of(20, inches);
    EXPECT_NEAR(answered(request).rate_now.in(us_gallons_per_acre), 5940 * 0.2 / (4 * 20), 1e-9);
}

TEST(Adjust, a_controller_is_held_to_the_pressure_window) {
    AdjustRequest request = from(15, 4, 40, 15);
    request.pressure_low = psi(20);
    request.pressure_high = psi(60);
    request.speeds = {mph(2), mph(4), mph(6)};
    const AdjustAnswer answer = answered(request);
    EXPECT_NEAR(answer.controller_slowest->in(miles_per_hour), 4 * std::sqrt(0.5), 1e-9);
    EXPECT_NEAR(answer.controller_fastest->in(miles_per_hour), 4 * std::sqrt(1.5), 1e-9);
    EXPECT_EQ(answer.at_speeds[0].window, InWindow::below);
    EXPECT_EQ(answer.at_speeds[1].window, InWindow::within);
    EXPECT_EQ(answer.at_speeds[2].window, InWindow::above);
}

TEST(Adjust, label_carrier_is_held_against_target_and_speeds) {
    AdjustRequest request = from(15, 4, 40, 9);
    request.carrier_min = gallons(10);
    request.speeds = {mph(7)};
    const auto findings = findings_of(request);
    EXPECT_THAT(findings, Contains(Field(&Finding::code, "target_under_carrier_min")));
    EXPECT_THAT(findings, Contains(Field(&Finding::code, "carrier_min_at_speed")));
}

TEST(Adjust, bad_requests_are_refused_with_the_field) {
    Notes notes;
    EXPECT_EQ(adjust(from(0, 4, 40, 15), notes).error().field, "rate");
    EXPECT_EQ(adjust(from(15, 0, 40, 15), notes).error().field, "speed");
    EXPECT_EQ(adjust(from(15, 4, -1, 15), notes).error().field, "pressure");
    EXPECT_EQ(adjust(from(15, 4, 40, NAN), notes).error().field, "target");
    EXPECT_EQ(adjust(from(15, 400, 40, 15), notes).error().code, ErrorCode::out_of_range);
    AdjustRequest nothing;
    nothing.target = gallons(15);
    EXPECT_EQ(adjust(nothing, notes).error().field, "rate");
    AdjustRequest crossed = from(15, 4, 40, 15);
    crossed.pressure_low = psi(60);
    crossed.pressure_high = psi(20);
    EXPECT_EQ(adjust(crossed, notes).error().code, ErrorCode::inconsistent);
    AdjustRequest words = from(15, 4, 40, 15);
    words.droplets = "big drops";
    EXPECT_EQ(adjust(words, notes).error().field, "droplets");
    AdjustRequest exponent = from(15, 4, 40, 15);
    exponent.exponent = 0.0;
    EXPECT_EQ(adjust(exponent, notes).error().field, "exponent");
}

TEST(Adjust, without_speed_or_pressure_only_the_ways_that_can_be_told_are_told) {
    AdjustRequest request;
    request.rate = gallons(15);
    request.target = gallons(20);
    const AdjustAnswer answer = answered(request);
    EXPECT_FALSE(answer.by_speed.has_value());
    EXPECT_FALSE(answer.by_pressure.has_value());
    EXPECT_FALSE(answer.by_tip.has_value());
    EXPECT_THAT(answer.at_speeds, IsEmpty());
}

RC_GTEST_PROP(Adjust, at_the_speed_or_pressure_found_the_target_is_reached, ()) {
    const auto tenths = [](int low, int high) { return *rc::gen::inRange(low, high) / 10.0; };
    const double speed = tenths(10, 150);
    const double pressure = tenths(100, 900);
    const double rate = tenths(100, 600);
    const double target = tenths(100, 600);
    const AdjustAnswer first = answered(from(rate, speed, pressure, target));
    AdjustRequest there = from(rate, speed, pressure, target);
    there.speeds = {first.by_speed->speed};
    RC_ASSERT(std::fabs(*answered(there).at_speeds[0].rate / gallons(target) - 1.0) < 1e-12);
    const double flow = std::sqrt(first.by_pressure->pressure / psi(pressure));
    RC_ASSERT(std::fabs(flow * rate / target - 1.0) < 1e-12);
}

}  // namespace
}  // namespace swathbook::job
