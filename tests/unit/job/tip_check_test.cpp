#include "core/job/tip_check.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>

#include "core/quantity/units.hpp"

namespace swathbook::job {
namespace {

using calibration::TipLimitRule;
using calibration::TipVerdict;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::Field;
using ::testing::IsEmpty;
using ::testing::Not;

Flow gallons(double number) {
    return Flow::of(number, us_gallons_per_minute);
}
Pressure psi(double number) {
    return Pressure::of(number, pounds_per_square_inch);
}

TipCheckRequest caught(const std::vector<double>& flows) {
    TipCheckRequest request;
    for (const double flow : flows) {
        request.flows.push_back(gallons(flow));
    }
    return request;
}

TipCheckRequest rated(const std::vector<double>& flows) {
    TipCheckRequest request = caught(flows);
    request.rated_flow = gallons(0.400);
    return request;
}

const std::vector<double> story{.405, .410, .398, .440, .452, .410, .402, .365, .415};

TipCheckAnswer answered(const TipCheckRequest& request) {
    Notes notes;
    return tip_check(request, notes).value();
}

std::vector<Finding> findings_of(const TipCheckRequest& request) {
    Notes notes;
    EXPECT_TRUE(tip_check(request, notes).has_value());
    return notes.findings();
}

TEST(JobTipCheck, rate_before_and_after_replacing) {
    TipCheckRequest request = rated(story);
    request.speed = Speed::of(4, miles_per_hour);
    request.spacing = Length::of(20, inches);
    const TipCheckAnswer answer = answered(request);
    EXPECT_NEAR(answer.rate_now->in(us_gallons_per_acre), 5940 * (3.697 / 9) / 80, 1e-9);
    EXPECT_NEAR(answer.rate_after->in(us_gallons_per_acre), 5940 * (3.680 / 9) / 80, 1e-9);
    EXPECT_NEAR(answer.rate_as_rated->in(us_gallons_per_acre), 29.7, 1e-9);
}

TEST(JobTipCheck, a_width_served_together_is_the_same_as_its_spacing) {
    TipCheckRequest by_spacing = rated(story);
    by_spacing.speed = Speed::of(4, miles_per_hour);
    by_spacing.spacing = Length::of(20, inches);
    TipCheckRequest by_width = by_spacing;
    by_width.spacing.reset();
    by_width.width = Length::of(180, inches);
    EXPECT_NEAR(*answered(by_spacing).rate_now / *answered(by_width).rate_now, 1.0, 1e-14);
}

TEST(JobTipCheck, the_rating_is_brought_to_the_measured_pressure) {
    TipCheckRequest request = caught({.346, .348});
    request.size = "110-04";
    request.convention = tips::SizeConvention::us_gallons_at_40_psi;
    request.pressure = psi(30);
    EXPECT_NEAR(answered(request).rated->in(us_gallons_per_minute), 0.4 * std::sqrt(0.75), 1e-12);
    request.exponent = 0.45;
    EXPECT_NEAR(answered(request).rated->in(us_gallons_per_minute), 0.4 * std::pow(0.75, 0.45),
                1e-12);
}

TEST(JobTipCheck, what_is_assumed_about_pressure_is_said) {
    TipCheckRequest no_pressure = caught({.400, .402});
    no_pressure.size = "04";
    EXPECT_THAT(findings_of(no_pressure), Contains(Field(&Finding::code, "pressure_not_given")));
    TipCheckRequest no_rated_pressure = rated({.400, .402});
    no_rated_pressure.pressure = psi(30);
    EXPECT_THAT(findings_of(no_rated_pressure),
                Contains(Field(&Finding::code, "rated_pressure_not_given")));
    EXPECT_NEAR(answered(no_rated_pressure).rated->in(us_gallons_per_minute), 0.4, 1e-12);
}

TEST(JobTipCheck, without_a_rating_the_mean_judges_and_that_is_said) {
    const TipCheckRequest request = caught({.400, .402, .398, .450});
    EXPECT_THAT(findings_of(request), Contains(Field(&Finding::code, "mean_hides_uniform_wear")));
    const TipCheckAnswer answer = answered(request);
    EXPECT_THAT(answer.replace, ElementsAre(4));
    EXPECT_NEAR(answer.mean_after.in(us_gallons_per_minute), 0.400, 1e-12);
    EXPECT_FALSE(answer.rated.has_value());
    for (const OtherRuleOutcome& other : answer.other_limits) {
        EXPECT_NE(other.limit, TipLimitRule::rating_10);
    }
}

TEST(JobTipCheck, own_limits_are_used_and_checked) {
    TipCheckRequest request = rated({.400, .419, .421, .400});
    request.own_limits = TipLimitFigures{};
    request.own_limits->above_rating = Fraction::of(5, percents);
    EXPECT_THAT(answered(request).replace, ElementsAre(3));
    request.own_limits->above_rating = Fraction::of(0, percents);
    Notes notes;
    EXPECT_EQ(tip_check(request, notes).error().field, "own_limits");
    request.own_limits->above_rating = Fraction::of(5, percents);
    request.limit = TipLimitRule::mean_5;
    EXPECT_EQ(tip_check(request, notes).error().code, ErrorCode::inconsistent);
}

TEST(JobTipCheck, other_limits_show_how_they_disagree) {
    const TipCheckAnswer answer = answered(rated(story));
    bool seen = false;
    for (const OtherRuleOutcome& other : answer.other_limits) {
        EXPECT_NE(other.limit, TipLimitRule::european_in_use);
        if (other.limit == TipLimitRule::mean_5) {
            EXPECT_THAT(other.out, ElementsAre(4, 5, 8));
            seen = true;
        }
        if (other.limit == TipLimitRule::rating_10) {
            EXPECT_THAT(other.out, ElementsAre(5));
            EXPECT_THAT(other.at_limit, ElementsAre(4));
        }
    }
    EXPECT_TRUE(seen);
}

TEST(JobTipCheck, the_earlier_check_is_read_at_its_own_pressure) {
    TipCheckRequest request = caught({.420, .420});
    request.size = "04";
    request.convention = tips::SizeConvention::us_gallons_at_40_psi;
    request.pressure = psi(40);
    EarlierTipCheck earlier;
    earlier.flows = {gallons(.200), gallons(.200)};
    earlier.pressure = psi(10);
    earlier.time_since = Duration::of(10, hours);
    request.earlier = earlier;
    const TipCheckAnswer answer = answered(request);
    EXPECT_NEAR(answer.wear->gained.value.si(), 0.05, 1e-12);
    EXPECT_NEAR(answer.wear->time_left->value.in(hours), 10, 1e-6);
    EXPECT_FALSE(answer.wear->area_left.has_value());
}

TEST(JobTipCheck, tips_that_read_lower_than_before_give_no_forecast) {
    TipCheckRequest request = rated({.400, .400});
    EarlierTipCheck earlier;
    earlier.flows = {gallons(.410), gallons(.410)};
    earlier.area_since = Area::of(100, acres);
    request.earlier = earlier;
    EXPECT_FALSE(answered(request).wear->area_left.has_value());
    EXPECT_THAT(findings_of(request), Contains(Field(&Finding::code, "no_wear_seen")));
}

TEST(JobTipCheck, a_clean_set_gets_no_warning) {
    const auto findings = findings_of(rated({.401, .399, .400, .402, .398, .400, .401}));
    EXPECT_THAT(findings, Not(Contains(Field(&Finding::severity, Severity::warning))));
    EXPECT_THAT(answered(rated({.401, .399})).replace, IsEmpty());
}

TEST(JobTipCheck, one_tip_alone_can_be_checked) {
    const TipCheckAnswer answer = answered(rated({.452}));
    EXPECT_EQ(answer.tips.at(0).verdict, TipVerdict::high_worn);
    EXPECT_EQ(answer.variation.si(), 0.0);
}

TEST(JobTipCheck, bad_requests_are_refused_with_the_field) {
    Notes notes;
    EXPECT_EQ(tip_check(caught({.4, NAN}), notes).error().field, "flows[1]");
    EXPECT_EQ(tip_check(caught({-.4}), notes).error().code, ErrorCode::out_of_range);
    EXPECT_EQ(tip_check(caught(std::vector<double>(501, .4)), notes).error().code,
              ErrorCode::out_of_range);
    TipCheckRequest both = rated(story);
    both.spacing = Length::of(20, inches);
    both.width = Length::of(15, feet);
    EXPECT_EQ(tip_check(both, notes).error().field, "width");
    TipCheckRequest half;
    half.catches = {TipCatch{}};
    EXPECT_EQ(tip_check(half, notes).error().field, "catches[0]");
    half.catches[0].volume = Volume::of(12, us_fluid_ounces);
    EXPECT_EQ(tip_check(half, notes).error().field, "catches[0].time");
    TipCheckRequest unmeasured = rated({.4});
    unmeasured.earlier = EarlierTipCheck{};
    unmeasured.earlier->flows = {gallons(.4)};
    EXPECT_EQ(tip_check(unmeasured, notes).error().field, "earlier.area_since");
}

TEST(JobTipCheck, a_good_tip_among_worn_ones_is_not_called_clogged) {
    const TipCheckRequest worn = rated({.436, .438, .437, .400, .436});
    EXPECT_EQ(answered(worn).tips[3].verdict, TipVerdict::ok);
    TipCheckRequest by_mean = worn;
    by_mean.limit = TipLimitRule::mean_5;
    const TipCheckAnswer answer = answered(by_mean);
    EXPECT_EQ(answer.tips[3].verdict, TipVerdict::low_clogged);
    EXPECT_THAT(answer.tips[3].what_to_do, ::testing::HasSubstr("the others that are off"));
}

RC_GTEST_PROP(JobTipCheck, replacing_worn_tips_brings_the_mean_nearer_the_rating, ()) {
    std::vector<double> flows;
    const int count = *rc::gen::inRange(1, 15);
    for (int i = 0; i < count; ++i) {
        flows.push_back(*rc::gen::inRange(400, 520) / 1000.0);
    }
    const TipCheckAnswer answer = answered(rated(flows));
    RC_ASSERT(answer.clean.empty());
    RC_ASSERT(answer.mean_after <= answer.mean * (1.0 + 1e-12));
    RC_ASSERT(answer.after_from_rating->si() >= -1e-12);
}

}  // namespace
}  // namespace swathbook::job
