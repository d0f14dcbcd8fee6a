#include "core/tips/choose_tip.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/quantity/units.hpp"

namespace swathbook::tips {
namespace {

using droplets::DropletClass;
using ::testing::Contains;
using ::testing::Each;
using ::testing::Field;
using ::testing::IsEmpty;
using ::testing::Not;

Pressure psi(double number) {
    return Pressure::of(number, pounds_per_square_inch);
}
Speed mph(double number) {
    return Speed::of(number, miles_per_hour);
}

ChooseTipRequest wanting(double gallons, double miles) {
    ChooseTipRequest request;
    request.rate = MixPerArea::of(gallons, us_gallons_per_acre);
    request.speed = mph(miles);
    request.spacing = Length::of(20, inches);
    return request;
}

TableTip tip_of(const char* name, const char* size, double low, double high) {
    TableTip tip;
    tip.name = name;
    tip.size = size;
    tip.convention = SizeConvention::us_gallons_at_40_psi;
    tip.pressure_low = psi(low);
    tip.pressure_high = psi(high);
    return tip;
}

ChooseTipAnswer answered(const ChooseTipRequest& request) {
    Notes notes;
    return choose_tip(request, notes).value();
}

const TipChoice& choice_of(const ChooseTipAnswer& answer, std::string_view name) {
    for (const TipChoice& choice : answer.choices) {
        if (choice.name == name) {
            return choice;
        }
    }
    ADD_FAILURE() << name;
    return answer.choices.front();
}

// gal/min = gal/ac * mph * inches / 5940, exact (Mesa County, Colorado; SportsField Management).
TEST(ChooseTip, the_flow_needed_is_by_the_trade_constant) {
    const ChooseTipAnswer answer = answered(wanting(29.7, 4));
    EXPECT_NEAR(answer.flow_needed.in(us_gallons_per_minute), 29.7 * 4 * 20 / 5940, 1e-12);
    EXPECT_NEAR(choice_of(answer, "04").pressure.in(pounds_per_square_inch), 40, 1e-9);
}

TEST(ChooseTip, a_bare_colour_code_proves_nothing) {
    Notes notes;
    ChooseTipRequest request = wanting(29.7, 4);
    request.droplets = "coarse or coarser";
    request.pressure_low = psi(20);
    request.pressure_high = psi(60);
    const ChooseTipAnswer answer = choose_tip(request, notes).value();
    EXPECT_THAT(answer.choices, Not(Contains(Field(&TipChoice::fit, TipFit::fits))));
    EXPECT_EQ(answer.choices.front().size, "04");
    EXPECT_EQ(answer.choices.front().fit, TipFit::unproven);
    EXPECT_THAT(notes.findings(), Contains(Field(&Finding::code, "colour_code_only")));
}

TEST(ChooseTip, tips_outside_the_window_are_refused_with_the_reason) {
    ChooseTipRequest request = wanting(29.7, 4);
    request.table = {tip_of("small", "02", 15, 60), tip_of("right", "04", 15, 60),
                     tip_of("large", "08", 15, 60)};
    const ChooseTipAnswer answer = answered(request);
    EXPECT_EQ(answer.choices.front().name, "right");
    EXPECT_EQ(answer.choices.front().fit, TipFit::fits);
    EXPECT_EQ(choice_of(answer, "small").fit, TipFit::refused);
    EXPECT_THAT(choice_of(answer, "small").reasons_against,
                Contains("needs 160 psi, over 60 psi: too small a tip"));
    EXPECT_EQ(choice_of(answer, "large").fit, TipFit::refused);
    EXPECT_THAT(choice_of(answer, "large").reasons_against,
                Contains("needs only 10 psi, under 15 psi: too large a tip"));
}

// The twin-fan 025 tip of Grainews: VC at 20 psi, C at 30-60, M at 70-90 psi.
TableTip twin_fan() {
    TableTip tip = tip_of("twin fan 025", "025", 20, 90);
    tip.classes = {{psi(20), psi(20), DropletClass::very_coarse},
                   {psi(30), psi(60), DropletClass::coarse},
                   {psi(70), psi(90), DropletClass::medium}};
    return tip;
}

TEST(ChooseTip, the_class_is_judged_at_the_pressure_needed) {
    ChooseTipRequest request = wanting(15, 5);  // 0.2525 gal/min: 40.8 psi in an 025
    request.table = {twin_fan()};
    request.droplets = "coarse or coarser";
    EXPECT_EQ(answered(request).choices[0].fit, TipFit::fits);
    EXPECT_EQ(answered(request).choices[0].droplet_class, DropletClass::coarse);
    request.droplets = "very coarse or coarser";
    EXPECT_EQ(answered(request).choices[0].fit, TipFit::refused);
    request.speed = mph(6.2);  // 62.7 psi: between the bands printed
    request.droplets = "coarse or coarser";
    EXPECT_EQ(answered(request).choices[0].fit, TipFit::unproven);
}

TEST(ChooseTip, a_controller_must_stay_inside_over_all_speeds) {
    ChooseTipRequest request = wanting(15, 5);
    request.table = {twin_fan()};
    request.droplets = "coarse or coarser";
    request.rate_controller = true;
    request.speed_low = mph(4.5);
    request.speed_high = mph(6);  // 58.8 psi
    EXPECT_EQ(answered(request).choices[0].fit, TipFit::fits);
    request.speed_high = mph(7);  // 80 psi: class M
    EXPECT_EQ(answered(request).choices[0].fit, TipFit::partly);
    request.speed_high = mph(8);  // 104 psi: out of the window
    EXPECT_NE(answered(request).choices[0].fit, TipFit::fits);
}

TEST(ChooseTip, without_a_controller_the_rate_follows_the_speed) {
    Notes notes;
    ChooseTipRequest request = wanting(15, 4);
    request.table = {twin_fan()};
    request.speed_low = mph(2.5);
    request.speed_high = mph(5);
    request.carrier_min = MixPerArea::of(13, us_gallons_per_acre);
    const ChooseTipAnswer answer = choose_tip(request, notes).value();
    EXPECT_NEAR(answer.rate_at_slowest->in(us_gallons_per_acre), 24, 1e-9);
    EXPECT_NEAR(answer.rate_at_fastest->in(us_gallons_per_acre), 12, 1e-9);
    EXPECT_THAT(notes.findings(), Contains(Field(&Finding::code, "carrier_min_at_speed")));
}

TEST(ChooseTip, not_entered_is_never_any) {
    ChooseTipRequest request = wanting(29.7, 4);
    TableTip bare;
    bare.name = "bare";
    bare.rated_flow = Flow::of(0.4, us_gallons_per_minute);
    bare.rated_pressure = psi(40);
    request.table = {bare};
    EXPECT_EQ(answered(request).choices[0].fit, TipFit::unproven);
    request.pressure_high = psi(30);  // the sprayer's one end can still refuse
    EXPECT_EQ(answered(request).choices[0].fit, TipFit::refused);
}

TEST(ChooseTip, heavier_mixes_need_more_water_flow) {
    ChooseTipRequest request = wanting(29.7, 4);
    request.carrier_density = Density::of(1.21, kilograms_per_litre);
    const ChooseTipAnswer answer = answered(request);
    EXPECT_NEAR(*answer.water_flow / answer.flow_needed, 1.1, 1e-12);
    EXPECT_NEAR(choice_of(answer, "04").pressure.in(pounds_per_square_inch), 48.4, 1e-9);
}

TEST(ChooseTip, both_conventions_are_kept_apart) {
    ChooseTipRequest request = wanting(29.7, 4);
    request.convention = SizeConvention::litres_at_3_bar;
    const double iso = choice_of(answered(request), "04").pressure.si();
    request.convention = SizeConvention::us_gallons_at_40_psi;
    const double us = choice_of(answered(request), "04").pressure.si();
    EXPECT_NEAR(us / iso, 1.01315 * 1.01315, 1e-4);
}

TEST(ChooseTip, a_label_minimum_above_the_rate_stops) {
    Notes notes;
    ChooseTipRequest request = wanting(8, 4);
    request.carrier_min = MixPerArea::of(10, us_gallons_per_acre);
    ASSERT_TRUE(choose_tip(request, notes).has_value());
    EXPECT_THAT(notes.findings(), Contains(Field(&Finding::code, "rate_under_carrier_min")));
}

TEST(ChooseTip, strainers_are_the_published_ones_unless_the_maker_says_otherwise) {
    EXPECT_EQ(choice_of(answered(wanting(20, 4)), "015").strainer_mesh, 100);
    EXPECT_EQ(choice_of(answered(wanting(20, 4)), "04").strainer_mesh, 50);
    EXPECT_FALSE(choice_of(answered(wanting(20, 4)), "10").strainer_mesh.has_value());
    ChooseTipRequest request = wanting(20, 4);
    request.table = {tip_of("own", "04", 15, 60)};
    request.table[0].strainer_mesh = 80;
    EXPECT_EQ(answered(request).choices[0].strainer_mesh, 80);
}

TEST(ChooseTip, bad_requests_are_refused_with_the_field) {
    Notes notes;
    ChooseTipRequest no_width = wanting(15, 4);
    no_width.spacing.reset();
    EXPECT_EQ(choose_tip(no_width, notes).error().field, "spacing");
    EXPECT_EQ(choose_tip(wanting(0, 4), notes).error().field, "rate");
    EXPECT_EQ(choose_tip(wanting(15, NAN), notes).error().field, "speed");
    ChooseTipRequest slow = wanting(15, 4);
    slow.speed_low = mph(5);
    EXPECT_EQ(choose_tip(slow, notes).error().field, "speed_low");
    ChooseTipRequest bare = wanting(15, 4);
    bare.table = {TableTip{}};
    EXPECT_EQ(choose_tip(bare, notes).error().field, "table[0].rated_flow");
    bare.table[0].rated_flow = Flow::of(0.4, us_gallons_per_minute);
    EXPECT_EQ(choose_tip(bare, notes).error().field, "table[0].rated_pressure");
    ChooseTipRequest bands = wanting(15, 4);
    bands.table = {twin_fan()};
    bands.table[0].classes[1].to = psi(10);
    EXPECT_EQ(choose_tip(bands, notes).error().field, "table[0].classes[1]");
    ChooseTipRequest none = wanting(15, 4);
    none.tips = 0;
    EXPECT_EQ(choose_tip(none, notes).error().field, "tips");
}

RC_GTEST_PROP(ChooseTip, every_tip_gives_the_flow_needed_at_its_pressure, ()) {
    const ChooseTipRequest request =
        wanting(*rc::gen::inRange(20, 1000) / 10.0, *rc::gen::inRange(10, 150) / 10.0);
    const ChooseTipAnswer answer = answered(request);
    RC_ASSERT(answer.choices.size() == iso_sizes().size());
    for (const TipChoice& choice : answer.choices) {
        const Rating rating = rating_of(iso_size_from_text(choice.size, "").value(),
                                        SizeConvention::us_gallons_at_40_psi);
        RC_ASSERT(std::fabs(flow_at(rating, choice.pressure) / answer.flow_needed - 1.0) < 1e-12);
    }
}

RC_GTEST_PROP(ChooseTip, the_order_of_the_table_does_not_change_what_is_said_of_a_tip, ()) {
    ChooseTipRequest request = wanting(*rc::gen::inRange(50, 400) / 10.0, 4);
    request.table = {tip_of("a", "02", 15, 60), tip_of("b", "03", 30, 90),
                     tip_of("c", "05", 15, 40)};
    ChooseTipRequest reversed = request;
    std::reverse(reversed.table.begin(), reversed.table.end());
    const ChooseTipAnswer one = answered(request);
    const ChooseTipAnswer other = answered(reversed);
    for (const TipChoice& choice : one.choices) {
        const TipChoice& same = choice_of(other, choice.name);
        RC_ASSERT(same.fit == choice.fit);
        RC_ASSERT(same.reasons_against == choice.reasons_against);
    }
}

}  // namespace
}  // namespace swathbook::tips
