#include "core/calibration/calibrate.hpp"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include "core/quantity/units.hpp"
#include "tests/unit/calibration/entered.hpp"

namespace swathbook::calibration {
namespace {

double gallons_per_acre(MixPerArea output) {
    return output.in(us_gallons_per_acre);
}

CalibrateRequest loaned_rig() {
    CalibrateRequest request;
    request.sprayer = SprayerKind::boomless;
    request.flow = typed<Kind::flow>("2.60 gal/min");
    request.course_length = length("176 ft");
    request.course_times = {lasting("31.5 s")};
    request.width = length("26 ft");
    return request;
}

// Story 1 (docs/stories.md): 495 x 2.60 / (3.81 x 26) = 12.99.
TEST(Calibrate, TheLoanedRigHasAnOutputABandAndANamedLargestError) {
    CalibrateRequest request = loaned_rig();
    request.assumed = AssumedSettings{length("30 ft"), at_speed("4 mph")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_EQ(answer->method, CalibrationMethod::flow_and_speed);
    EXPECT_NEAR(answer->speed->value.in(miles_per_hour), 3.81, 0.005);
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 12.99, 0.005);
    ASSERT_TRUE(answer->output.low && answer->output.high);
    EXPECT_LT(gallons_per_acre(*answer->output.low), 12.6);
    EXPECT_GT(gallons_per_acre(*answer->output.high), 13.4);
    EXPECT_EQ(answer->largest_term, ErrorSource::width);
    EXPECT_NEAR(gallons_per_acre(answer->assumed->output), 10.73, 0.0051);
    EXPECT_NEAR(answer->assumed->delivered.in(percents), 21.0, 0.5);
    EXPECT_TRUE(has_finding(notes, "assumed_settings_differ"));
}

// Story 9: fixed flow, 15 gal/ac at 4 mph.
TEST(Calibrate, SpeedSwingsAreAveragedOverTheDistanceNotOverTheSpeeds) {
    CalibrateRequest request;
    request.flow = typed<Kind::flow>("2 gal/min");
    request.speed = at_speed("4 mph");
    request.width = length("16.5 ft");
    request.speed_swings = {{at_speed("2.5 mph"), 1.0}, {at_speed("5 mph"), 1.0}};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 15.0, 1e-9);
    const SpeedSwings& swings = *answer->speed_swings;
    EXPECT_NEAR(gallons_per_acre(swings.stretches[0].output), 24.0, 1e-9);
    EXPECT_NEAR(gallons_per_acre(swings.stretches[1].output), 12.0, 1e-9);
    EXPECT_NEAR(gallons_per_acre(swings.mean_output), 18.0, 1e-9);
    EXPECT_NEAR(swings.harmonic_speed.in(miles_per_hour), 3.33, 0.005);
    EXPECT_NEAR(gallons_per_acre(swings.at_mean_speed), 16.0, 1e-9);
}

TEST(Calibrate, TheTrapAtTheHeartOnATenTimesCourseOuncesAreNotGallonsPerAcre) {
    CalibrateRequest request = boomless_request();
    request.believed_output = output_of("140 gal/ac");
    request.catches = {caught("140 fl oz")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 14.0, 0.02);
    EXPECT_EQ(answer->believed->shortcut, "shortcut_tenfold");
    EXPECT_NEAR(answer->believed->ratio, 10.0, 0.01);
    EXPECT_EQ(answer->shortcut->course, "10/128 ac");
    EXPECT_TRUE(has_finding(notes, "shortcut_tenfold"));
    EXPECT_NE(text_of(notes, "shortcut_tenfold").find("NOT gal/ac"), std::string::npos);
}

struct Belief {
    const char* believed;
    const char* code;
};

TEST(Calibrate, NamesTheShortcutThatABelievedFigureCameFrom) {
    // 1/8 acre: 181.5 ft x 30 ft, 14 gal/ac is 224 fl oz or 14 pints.
    CalibrateRequest request;
    request.sprayer = SprayerKind::boomless;
    request.width = length("30 ft");
    request.wetted_width = length("37.5 ft");
    request.tips = 3;
    request.catch_covers = CatchCovers::all_tips;
    request.course_length = length("181.5 ft");
    request.course_times = {lasting("31.0 s")};
    request.catches = {caught("224 fl oz")};
    for (const Belief& belief : {Belief{"224 gal/ac", "shortcut_sixteenfold"},
                                 Belief{"22.4 gal/ac", "shortcut_ounces_over_ten"},
                                 Belief{"11.2 gal/ac", "shortcut_wetted_width"},
                                 Belief{"4.667 gal/ac", "shortcut_one_tip"},
                                 Belief{"42.0 gal/ac", "shortcut_all_tips_one_spacing"},
                                 Belief{"27.1 gal/ac", "shortcut_minute_catch"},
                                 Belief{"11.66 gal/ac", "shortcut_imperial"},
                                 Belief{"14.6 gal/ac", "shortcut_weight_ounces"},
                                 Belief{"1232 gal/ac", "shortcut_mph_as_feet_per_minute"},
                                 Belief{"130.95 gal/ac", "shortcut_litres_per_hectare"}}) {
        request.believed_output = output_of(belief.believed);
        Notes notes;
        const auto answer = calibrate(request, notes);
        ASSERT_TRUE(answer) << answer.error().detail;
        EXPECT_EQ(answer->believed->shortcut, belief.code) << belief.believed;
    }
    request.believed_output = output_of("14.0 gal/ac");
    Notes notes;
    const auto answer = calibrate(request, notes);
    EXPECT_EQ(answer->believed->shortcut, "");
    EXPECT_EQ(answer->shortcut->rule, "pt caught = gal/ac");
}

TEST(Calibrate, AMinuteCatchIsComputedForTheCourseTimeAndTold) {
    CalibrateRequest request = boomless_request();
    request.course_times = {lasting("31.0 s")};
    request.catches = {caught("140 fl oz", "60 s")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 140.0 * 31.0 / 60.0 * 340.3125 / 3402.0,
                1e-9);
    EXPECT_TRUE(has_finding(notes, "catch_minute"));
}

TEST(Calibrate, AllTipsOverOneSpacingIsTold) {
    CalibrateRequest request;
    request.tips = 9;
    request.spacing = length("20 in");
    request.width = length("20 in");
    request.catch_covers = CatchCovers::all_tips;
    request.course_length = length("204 ft");
    request.course_times = {lasting("35 s")};
    request.catches = {caught("135 fl oz")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_TRUE(has_finding(notes, "all_tips_one_spacing"));
    EXPECT_NE(text_of(notes, "all_tips_one_spacing").find("15.01 gal/ac"), std::string::npos)
        << text_of(notes, "all_tips_one_spacing");
}

TEST(Calibrate, OneTipOfABoomlessClusterStopsTheJob) {
    CalibrateRequest request = boomless_request();
    request.tips = 3;
    request.catches = {caught("46 fl oz", {}, "left")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 13.8, 0.02);
    ASSERT_TRUE(has_finding(notes, "one_tip_of_several"));
    EXPECT_EQ(answer->largest_term, ErrorSource::tips_not_caught);
}

TEST(Calibrate, TipsOfAClusterAddUp) {
    CalibrateRequest request = boomless_request();
    request.catches = {caught("40 fl oz", {}, "left"), caught("60 fl oz", {}, "centre"),
                       caught("41 fl oz", {}, "right"), caught("60 fl oz", {}, "centre")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    // Repeats of one tip are averaged before the tips are added: 40 + 60 + 41 = 141.
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 141.0 * 340.3125 / 3402.0, 1e-9);
    EXPECT_FALSE(has_finding(notes, "one_tip_of_several"));
}

TEST(Calibrate, MixedUnitsAmongCatchesAreOneSum) {
    CalibrateRequest request = boomless_request();
    request.catches = {caught("140 fl oz"), caught("1 gal + 12 fl oz"), caught("4140.295 mL")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 140.0 * 340.3125 / 3402.0, 1e-5);
}

TEST(Calibrate, AWeighedCatchIsTurnedIntoVolumeAndTold) {
    CalibrateRequest request = boomless_request();
    Catch weighed;
    weighed.weight = typed<Kind::mass>("8.34 lb");
    request.catches = {weighed};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 128.0 * 340.3125 / 3402.0, 1e-9);
    EXPECT_TRUE(has_finding(notes, "weighed_catch"));
}

TEST(Calibrate, TheWettedWidthIsTakenByTheEightyPercentRuleOnlyWhenNothingElseIsKnown) {
    CalibrateRequest request = boomless_request();
    request.width.reset();
    request.wetted_width = length("30 ft");
    Notes notes;
    const auto by_rule = calibrate(request, notes);
    ASSERT_TRUE(by_rule) << by_rule.error().detail;
    EXPECT_NEAR(by_rule->width->in(feet), 24.0, 1e-9);
    EXPECT_TRUE(has_finding(notes, "width_by_80_percent_rule"));

    request.width = length("30 ft");
    Notes told;
    const auto wetted = calibrate(request, told);
    ASSERT_TRUE(wetted);
    EXPECT_TRUE(has_finding(told, "wetted_width_used"));
    EXPECT_NEAR(by_rule->output.value / wetted->output.value, 1.25, 1e-12);
}

TEST(Calibrate, ABandSprayerHasTwoOutputsAndNeitherIsChosen) {
    CalibrateRequest request;
    request.sprayer = SprayerKind::band;
    request.band_width = length("10 in");
    request.row_spacing = length("30 in");
    request.course_length = length("300 ft");
    request.catches = {caught("26 fl oz")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(answer->band_output->value / answer->field_output->value, 3.0, 1e-12);
    EXPECT_DOUBLE_EQ(answer->output.value.si(), answer->band_output->value.si());
    EXPECT_TRUE(has_finding(notes, "two_acres"));

    request.band_width = length("40 in");
    Notes refused;
    const auto wide = calibrate(request, refused);
    ASSERT_FALSE(wide);
    EXPECT_EQ(wide.error().code, ErrorCode::inconsistent);
    EXPECT_EQ(wide.error().field, "band_width");
}

// University of Nebraska CropWatch 2016: 28 % UAN, 10.65 lb/gal, factor 1.13; 20 gal/ac of it needs
// a water setting of 22.6.
TEST(Calibrate, ADenseLiquidComesOutSlowerAndTheDirectionIsSaid) {
    CalibrateRequest request;
    request.flow = typed<Kind::flow>("2 gal/min");
    request.speed = at_speed("4 mph");
    request.width = length("12.375 ft");
    request.carrier_density = typed<Kind::density>("10.65 lb/gal");
    request.tank_volume = typed<Kind::volume>("100 gal");
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 20.0, 1e-9);
    EXPECT_NEAR(answer->density->factor, 1.13, 0.005);
    EXPECT_NEAR(gallons_per_acre(answer->density->water_setting), 22.6, 0.05);
    EXPECT_NEAR(gallons_per_acre(answer->density->solution_output), 20.0 / 1.13, 0.01);
    EXPECT_NEAR(answer->tank_area->value.in(acres), 100.0 / (20.0 / 1.13), 0.01);
    EXPECT_TRUE(has_finding(notes, "density_correction"));

    request.caught = CarrierCaught::solution;
    Notes solution_notes;
    const auto solution = calibrate(request, solution_notes);
    EXPECT_NEAR(gallons_per_acre(solution->density->solution_output), 20.0, 1e-9);
    EXPECT_FALSE(has_finding(solution_notes, "density_correction"));
}

// Oklahoma State University turf fact sheet: 200 ft in 45 s called 3 mph, 101 oz/min called 0.79
// gal/min, 18 in: prints 88, its own figures give 86.9.
TEST(Calibrate, AHandAnswerIsTakenApartIntoItsRoundings) {
    CalibrateRequest request;
    request.width = length("18 in");
    request.course_length = length("200 ft");
    request.course_times = {lasting("45 s")};
    request.catches = {caught("101 fl oz", "1 min")};
    request.method = CalibrationMethod::flow_and_speed;
    HandWork hand;
    hand.output = output_of("88 gal/ac");
    hand.speed = at_speed("3 mph");
    hand.flow = typed<Kind::flow>("0.79 gal/min");
    request.hand = hand;
    Notes notes;
    auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_EQ(answer->hand->verdict, HandVerdict::slip);
    EXPECT_NEAR(answer->hand->difference.in(percents), 2.41, 0.01);
    EXPECT_NEAR(answer->hand->unexplained.in(percents), 88.0 / 86.9 * 100.0 - 100.0, 0.01);

    request.hand->output = output_of("86.9 gal/ac");
    answer = calibrate(request, notes);
    EXPECT_EQ(answer->hand->verdict, HandVerdict::rounding);
    EXPECT_NE(answer->hand->text.find("speed 3 mph moved it most"), std::string::npos)
        << answer->hand->text;

    request.hand->output = output_of("85.9 gal/ac");
    answer = calibrate(request, notes);
    EXPECT_EQ(answer->hand->verdict, HandVerdict::agrees);
}

TEST(Calibrate, TheWorkingCanBeCheckedWithAPencil) {
    CalibrateRequest request = loaned_rig();
    Notes notes(UnitSystem::us, true);
    ASSERT_TRUE(calibrate(request, notes));
    ASSERT_GE(notes.steps().size(), 3U);
    EXPECT_EQ(notes.steps()[0].expression, "176 ft / 31.5 s x 0.68182");
    EXPECT_EQ(notes.steps()[0].result, "3.81 mph");
    EXPECT_EQ(notes.steps()[1].expression, "495 x 2.6 gal/min / (3.81 mph x 26 ft)");
    EXPECT_EQ(notes.steps()[1].result, "12.99 gal/ac");
}

TEST(Calibrate, ATimedPlotSaysNothingAboutSpeed) {
    CalibrateRequest request;
    request.sprayer = SprayerKind::handgun;
    request.method = CalibrationMethod::timed_plot;
    request.width = length("66 ft");
    request.course_length = length("66 ft");
    request.course_times = {lasting("20 min")};
    request.catches = {caught("40 gal")};
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_FALSE(answer->speed.has_value());
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 400.0, 1e-9);
}

TEST(Calibrate, TipsAndSpacingThatDoNotMakeTheWidthAreTold) {
    CalibrateRequest request = boomless_request();
    request.sprayer = SprayerKind::boom;
    request.tips = 18;
    request.spacing = length("15 in");
    request.catch_covers = CatchCovers::all_tips;
    Notes notes;
    ASSERT_TRUE(calibrate(request, notes));
    EXPECT_TRUE(has_finding(notes, "width_against_spacing"));
}

TEST(Calibrate, ASpeedMeterFarFromTheCourseIsTold) {
    CalibrateRequest request = boomless_request();
    request.speed = at_speed("4.5 mph");
    Notes notes;
    ASSERT_TRUE(calibrate(request, notes));
    EXPECT_TRUE(has_finding(notes, "speed_meter_disagrees"));
}

TEST(Calibrate, TheRefillMarkIsTheWeakPointOfASmallRefill) {
    CalibrateRequest request;
    request.refill = typed<Kind::volume>("4.0 gal");
    request.width = length("20 ft");
    request.course_length = length("217.8 ft");
    request.tank_volume = typed<Kind::volume>("100 gal");
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(gallons_per_acre(answer->output.value), 40.0, 1e-9);
    EXPECT_EQ(answer->largest_term, ErrorSource::refill_mark);
    EXPECT_FALSE(answer->repeats.reachable);
    EXPECT_NE(answer->repeats.text.find("the refill mark"), std::string::npos);
    EXPECT_FALSE(answer->flow.has_value());
}

// ---- refusals ----

struct Refused {
    const char* what;
    ErrorCode code;
    const char* field;
    void (*spoil)(CalibrateRequest&);
};

constexpr double nan_value = std::numeric_limits<double>::quiet_NaN();

const Refused refusals[] = {
    {"zero speed", ErrorCode::out_of_range, "speed",
     [](CalibrateRequest& r) { r.speed = Reading<Kind::speed>(Speed::from_si(0.0)); }},
    {"NaN width", ErrorCode::invalid_input, "width",
     [](CalibrateRequest& r) { r.width = Reading<Kind::length>(Length::from_si(nan_value)); }},
    {"negative width", ErrorCode::out_of_range, "width",
     [](CalibrateRequest& r) { r.width = Reading<Kind::length>(Length::of(-30, feet)); }},
    {"width over 200 ft", ErrorCode::out_of_range, "width",
     [](CalibrateRequest& r) { r.width = length("201 ft"); }},
    {"zero time", ErrorCode::out_of_range, "course_times[1]",
     [](CalibrateRequest& r) { r.course_times[1] = Reading<Kind::duration>(Duration()); }},
    {"zero catch", ErrorCode::out_of_range, "catches[2].amount",
     [](CalibrateRequest& r) { r.catches[2].amount = Reading<Kind::volume>(Volume()); }},
    {"catch time over an hour", ErrorCode::out_of_range, "catches[0].time",
     [](CalibrateRequest& r) { r.catches[0].time = lasting("2 h"); }},
    {"no amount", ErrorCode::invalid_input, "catches[0].amount",
     [](CalibrateRequest& r) { r.catches[0].amount.reset(); }},
    {"amount and weight", ErrorCode::inconsistent, "catches[0]",
     [](CalibrateRequest& r) { r.catches[0].weight = typed<Kind::mass>("2 lb"); }},
    {"no width", ErrorCode::invalid_input, "width", [](CalibrateRequest& r) { r.width.reset(); }},
    {"no catches", ErrorCode::invalid_input, "catches",
     [](CalibrateRequest& r) { r.catches.clear(); }},
    {"no ground", ErrorCode::invalid_input, "course_length",
     [](CalibrateRequest& r) { r.course_length.reset(); }},
    {"tips not told", ErrorCode::invalid_input, "catch_covers",
     [](CalibrateRequest& r) { r.tips = 3; }},
    {"no tips", ErrorCode::out_of_range, "tips", [](CalibrateRequest& r) { r.tips = 0; }},
    {"half labelled", ErrorCode::invalid_input, "catches",
     [](CalibrateRequest& r) { r.catches[0].tip = "1"; }},
    {"labelled totals", ErrorCode::inconsistent, "catch_covers",
     [](CalibrateRequest& r) {
         for (Catch& one : r.catches) {
             one.tip = "1";
         }
         r.catch_covers = CatchCovers::all_tips;
     }},
    {"effective over wetted", ErrorCode::inconsistent, "width",
     [](CalibrateRequest& r) { r.wetted_width = length("26 ft"); }},
    {"impossible speed", ErrorCode::out_of_range, "course_times",
     [](CalibrateRequest& r) { r.course_times = {lasting("2 s")}; }},
    {"catch time without course time", ErrorCode::invalid_input, "course_times",
     [](CalibrateRequest& r) {
         r.course_times.clear();
         r.catches = {caught("140 fl oz", "20 s")};
     }},
    {"flow without catch time", ErrorCode::invalid_input, "catches[0].time",
     [](CalibrateRequest& r) { r.method = CalibrationMethod::flow_and_speed; }},
    {"refill missing", ErrorCode::invalid_input, "refill",
     [](CalibrateRequest& r) { r.method = CalibrationMethod::refill; }},
    {"plot time missing", ErrorCode::invalid_input, "course_times",
     [](CalibrateRequest& r) {
         r.method = CalibrationMethod::timed_plot;
         r.course_times.clear();
     }},
    {"plot area missing", ErrorCode::invalid_input, "area",
     [](CalibrateRequest& r) {
         r.method = CalibrationMethod::timed_plot;
         r.course_length.reset();
     }},
    {"speed missing", ErrorCode::invalid_input, "speed",
     [](CalibrateRequest& r) {
         r.flow = typed<Kind::flow>("2 gal/min");
         r.catches.clear();
         r.course_times.clear();
     }},
    {"absurd density", ErrorCode::out_of_range, "carrier_density",
     [](CalibrateRequest& r) { r.carrier_density = typed<Kind::density>("80 lb/gal"); }},
    {"assumed nothing", ErrorCode::invalid_input, "assumed",
     [](CalibrateRequest& r) { r.assumed = AssumedSettings{}; }},
    {"assumed speed zero", ErrorCode::out_of_range, "assumed.speed",
     [](CalibrateRequest& r) {
         r.assumed = AssumedSettings{};
         r.assumed->speed = Reading<Kind::speed>(Speed());
     }},
    {"swing of no parts", ErrorCode::out_of_range, "speed_swings[0].parts",
     [](CalibrateRequest& r) { r.speed_swings = {{at_speed("3 mph"), 0.0}}; }},
    {"swing at no speed", ErrorCode::out_of_range, "speed_swings[0].speed",
     [](CalibrateRequest& r) { r.speed_swings = {{Reading<Kind::speed>(Speed()), 1.0}}; }},
    {"swings without speed", ErrorCode::inconsistent, "speed_swings",
     [](CalibrateRequest& r) {
         r.course_times.clear();
         r.speed_swings = {{at_speed("3 mph"), 1.0}};
     }},
    {"slip of a minute", ErrorCode::out_of_range, "timing_slip",
     [](CalibrateRequest& r) { r.timing_slip = lasting("60 s"); }},
    {"tolerance of all", ErrorCode::out_of_range, "width_tolerance",
     [](CalibrateRequest& r) { r.width_tolerance = typed<Kind::fraction>("100 %"); }},
    {"hand answer of nothing", ErrorCode::out_of_range, "hand.output",
     [](CalibrateRequest& r) { r.hand = HandWork{}; }},
    {"flow and catches", ErrorCode::inconsistent, "flow",
     [](CalibrateRequest& r) { r.flow = typed<Kind::flow>("2 gal/min"); }},
    {"refill and catches", ErrorCode::inconsistent, "refill",
     [](CalibrateRequest& r) { r.refill = typed<Kind::volume>("2 gal"); }},
    {"another area", ErrorCode::inconsistent, "area",
     [](CalibrateRequest& r) { r.area = typed<Kind::area>("5445 ft2"); }},
    {"solution weighed", ErrorCode::invalid_input, "carrier_density",
     [](CalibrateRequest& r) {
         r.caught = CarrierCaught::solution;
         r.catches[0].amount.reset();
         r.catches[0].weight = typed<Kind::mass>("9 lb");
     }},
    {"too many stretches", ErrorCode::out_of_range, "speed_swings",
     [](CalibrateRequest& r) { r.speed_swings.resize(1001, {at_speed("3 mph"), 1.0}); }},
    {"too many repeats", ErrorCode::out_of_range, "course_times",
     [](CalibrateRequest& r) { r.course_times.resize(1001, lasting("19 s")); }},
};

TEST(Calibrate, RefusesEverydayBadInputByName) {
    for (const Refused& refused : refusals) {
        CalibrateRequest request = boomless_request();
        refused.spoil(request);
        Notes notes;
        const auto answer = calibrate(request, notes);
        ASSERT_FALSE(answer) << refused.what;
        EXPECT_EQ(answer.error().code, refused.code)
            << refused.what << ": " << answer.error().detail;
        EXPECT_EQ(answer.error().field, refused.field)
            << refused.what << ": " << answer.error().detail;
        EXPECT_FALSE(answer.error().detail.empty()) << refused.what;
    }
}

TEST(Calibrate, AnErrorSaysTheValueTheLimitAndWhatToDo) {
    CalibrateRequest request = boomless_request();
    request.width = length("350 ft");
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_FALSE(answer);
    EXPECT_EQ(
        answer.error().detail,
        "Width is 350 ft. It must be from 0.04167 ft to 200 ft: no ground sprayer serves less "
        "than half an inch or more than 200 ft; check the unit.");
}

}  // namespace
}  // namespace swathbook::calibration
