// The interval of an output against the two judges that do not use our formulas: published tables
// and random trials.

#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "core/calibration/calibrate.hpp"
#include "core/quantity/units.hpp"
#include "tests/unit/calibration/entered.hpp"

namespace swathbook::calibration {
namespace {

Reading<Kind::fraction> share(double fraction) {
    return Reading<Kind::fraction>(Fraction::from_si(fraction));
}

/// Nothing is uncertain but the catches.
CalibrateRequest catches_only(std::initializer_list<double> litres_caught) {
    CalibrateRequest request;
    request.sprayer = SprayerKind::backpack;
    request.width = Reading<Kind::length>(Length::of(0.51, metres));
    request.speed = Reading<Kind::speed>(Speed::of(2.76, kilometres_per_hour));
    request.timing_slip = Reading<Kind::duration>(Duration());
    request.width_tolerance = share(0.0);
    request.volume_tolerance = share(0.0);
    request.speed_tolerance = share(0.0);
    for (const double caught_litres : litres_caught) {
        Catch one;
        one.amount = Reading<Kind::volume>(Volume::of(caught_litres, litres));
        one.time = Reading<Kind::duration>(Duration::of(60, seconds));
        request.catches.push_back(one);
    }
    return request;
}

// Mean +- t s / sqrt n with t = 2.776 at 4 degrees (NIST/SEMATECH e-Handbook of Statistical
// Methods, table of upper critical values): 2.776 x 0.114542 / sqrt 5 / 1.008 = 14.11 %.
TEST(Interval, FiveCatchesGiveTheTextbookInterval) {
    Notes notes;
    const auto answer = calibrate(catches_only({1.2, 1.0, 1.0, 0.92, 0.92}), notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(answer->plus_minus.in(percents), 14.11, 0.005);
    EXPECT_EQ(answer->error_budget.size(), 1U);
    EXPECT_TRUE(answer->error_budget[0].repeats_help);
}

// Every term below 10 %: the propagated standard deviation must be that of 400,000 random outputs.
TEST(Interval, FirstOrderPropagationAgreesWithMonteCarlo) {
    CalibrateRequest request;
    request.sprayer = SprayerKind::boomless;
    request.width = Reading<Kind::length>(Length::of(26, feet));
    request.width_tolerance = share(0.09);
    request.course_length = Reading<Kind::length>(Length::of(40, feet));
    request.length_tolerance = share(0.02);
    request.course_times = {Reading<Kind::duration>(Duration::of(7.0, seconds)),
                            Reading<Kind::duration>(Duration::of(7.0, seconds))};
    request.timing_slip = Reading<Kind::duration>(Duration::of(0.5, seconds));
    Catch one;
    one.amount = Reading<Kind::volume>(Volume::of(40, us_fluid_ounces));
    one.amount->half_step_si = Volume::of(2, us_fluid_ounces).si();
    request.catches = {one, one, one};
    request.volume_tolerance = share(0.04);
    Notes notes;
    const auto answer = calibrate(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;

    std::mt19937_64 random(20240607);
    std::uniform_real_distribution<double> within(-1.0, 1.0);
    constexpr int trials = 400000;
    double sum = 0.0;
    double squares = 0.0;
    for (int i = 0; i < trials; ++i) {
        const double width = 26.0 * (1.0 + 0.09 * within(random));
        const double length = 40.0 * (1.0 + 0.02 * within(random));
        const double time = (7.0 + 0.5 * within(random) + 7.0 + 0.5 * within(random)) / 2.0;
        double flow = 0.0;
        for (int j = 0; j < 3; ++j) {
            flow += (40.0 + 2.0 * within(random)) / (7.0 + 0.5 * within(random)) / 3.0;
        }
        const double output = flow * time * (1.0 + 0.04 * within(random)) / (width * length);
        sum += output;
        squares += output * output;
    }
    const double mean = sum / trials;
    const double deviation = std::sqrt(squares / trials - mean * mean) / mean;
    const double propagated = answer->plus_minus.si() / 1.959964;
    EXPECT_NEAR(propagated / deviation, 1.0, 0.03);
}

// What "95 %" promises: of many calibrations with real scatter, so many hold the true output.
TEST(Interval, HoldsTheTruthNineteenTimesInTwenty) {
    std::mt19937_64 random(7);
    std::normal_distribution<double> scatter(0.0, 1.0);
    constexpr int trials = 20000;
    const double truth = 1.0 / 60.0 * litres.si / (0.51 * 2.76 / 3.6);
    int held = 0;
    for (int i = 0; i < trials; ++i) {
        const auto one = [&] { return 1.0 + 0.05 * scatter(random); };
        Notes notes;
        const auto answer = calibrate(catches_only({one(), one(), one()}), notes);
        ASSERT_TRUE(answer) << answer.error().detail;
        held += truth >= answer->output.low->si() && truth <= answer->output.high->si() ? 1 : 0;
    }
    // Three standard errors of a share of 0.95 in 20,000 trials are 0.0046.
    EXPECT_NEAR(static_cast<double>(held) / trials, 0.95, 0.0046);
}

// Two kinds of scatter with few repeats each: the effective degrees of freedom keep the promise.
TEST(Interval, KeepsItsPromiseWithFewRepeatsOfTwoThings) {
    std::mt19937_64 random(11);
    std::normal_distribution<double> scatter(0.0, 1.0);
    constexpr int trials = 20000;
    const double truth = 140.0 * us_fluid_ounces.si / (30.0 * 113.4375 * feet.si * feet.si);
    int held = 0;
    for (int i = 0; i < trials; ++i) {
        CalibrateRequest request;
        request.sprayer = SprayerKind::boomless;
        request.width = Reading<Kind::length>(Length::of(30, feet));
        request.course_length = Reading<Kind::length>(Length::of(113.4375, feet));
        request.timing_slip = Reading<Kind::duration>(Duration());
        request.width_tolerance = share(0.0);
        request.length_tolerance = share(0.0);
        request.volume_tolerance = share(0.0);
        for (int j = 0; j < 3; ++j) {
            request.course_times.emplace_back(
                Duration::of(20.0 * (1.0 + 0.03 * scatter(random)), seconds));
            Catch one;
            one.amount = Reading<Kind::volume>(
                Volume::of(140.0 * (1.0 + 0.04 * scatter(random)), us_fluid_ounces));
            one.time = Reading<Kind::duration>(Duration::of(20.0, seconds));
            request.catches.push_back(one);
        }
        Notes notes;
        const auto answer = calibrate(request, notes);
        ASSERT_TRUE(answer) << answer.error().detail;
        held += truth >= answer->output.low->si() && truth <= answer->output.high->si() ? 1 : 0;
    }
    // With two degrees of freedom each the formula is known to err on the wide side, never the
    // other.
    const double share_held = static_cast<double>(held) / trials;
    EXPECT_GE(share_held, 0.95 - 0.0046);
    EXPECT_LE(share_held, 0.975);
}

TEST(Interval, TheTipsNotCaughtWidenIt) {
    CalibrateRequest request;
    request.tips = 18;
    request.spacing = length("20 in");
    request.speed = at_speed("5 mph");
    for (const char* flow : {"52.0 fl oz", "51.0 fl oz", "53.0 fl oz"}) {
        request.catches.push_back(caught(flow, "60 s"));
    }
    request.catch_covers = CatchCovers::one_tip;
    Notes notes;
    const auto sample = calibrate(request, notes);
    ASSERT_TRUE(sample) << sample.error().detail;
    // s = 1 fl oz of 52; sampled without replacement: 1/52 x sqrt((1 - 3/18) / 3) = 1.0136 %;
    // two degrees of freedom, factor 4.303.
    bool found = false;
    for (const BudgetLine& line : sample->error_budget) {
        if (line.source == ErrorSource::tips_not_caught) {
            found = true;
            EXPECT_NEAR(line.plus_minus.in(percents), 4.303 * 1.0136, 0.001);
        }
    }
    EXPECT_TRUE(found);
    EXPECT_NEAR(sample->flow->value.in(us_fluid_ounces_per_minute), 18 * 52.0, 1e-9);
    EXPECT_NEAR(sample->flow_per_tip->value.in(us_fluid_ounces_per_minute), 52.0, 1e-9);
}

}  // namespace
}  // namespace swathbook::calibration
