#include "core/calibration/error_budget.hpp"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>

#include "core/calibration/repeats.hpp"
#include "core/calibration/student_t.hpp"

namespace swathbook::calibration {
namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

// Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008), example H.1.6: components
// 25, 9.7, 2.9 and 16.6 nm with 18, 25.6, 50 and 2 degrees combine to 32 nm (to the whole nm). The
// degrees are checked against the formula written out.
TEST(ErrorBudget, CombinesTheEndGaugeExampleOfTheGuide) {
    ErrorBudget budget;
    budget.add({ErrorSource::width, 25.0, 18.0, 0});
    budget.add({ErrorSource::vessel, 9.7, 25.6, 0});
    budget.add({ErrorSource::course_length, 2.9, 50.0, 0});
    budget.add({ErrorSource::course_time, 16.6, 2.0, 3});
    const Combined combined = combine(budget);
    EXPECT_NEAR(combined.relative, 32.0, 0.5);
    const double squares = 25.0 * 25.0 + 9.7 * 9.7 + 2.9 * 2.9 + 16.6 * 16.6;
    const double spread = std::pow(25.0, 4) / 18.0 + std::pow(9.7, 4) / 25.6 +
                          std::pow(2.9, 4) / 50.0 + std::pow(16.6, 4) / 2.0;
    EXPECT_NEAR(combined.degrees_of_freedom, squares * squares / spread, 1e-9);
    EXPECT_DOUBLE_EQ(combined.plus_minus,
                     combined.relative * student_t_95(combined.degrees_of_freedom));
}

TEST(ErrorBudget, ALimitIsUniformAndRepeatsAverageIt) {
    ErrorBudget budget;
    budget.add_limit(ErrorSource::width, 0.03);
    EXPECT_DOUBLE_EQ(combine(budget).relative, 0.03 / std::sqrt(3.0));
    EXPECT_EQ(combine(budget).degrees_of_freedom, endless);
    ErrorBudget repeated;
    repeated.add_limit(ErrorSource::course_time, 0.03, 4);
    EXPECT_DOUBLE_EQ(combine(repeated).relative, 0.015 / std::sqrt(3.0));
}

TEST(ErrorBudget, AnEmptyBudgetSaysNothing) {
    const Combined combined = combine(ErrorBudget{});
    EXPECT_EQ(combined.plus_minus, 0.0);
    EXPECT_TRUE(shares_of(ErrorBudget{}).empty());
    const auto exact = estimate_of(MixPerArea::from_si(1e-6), combined);
    EXPECT_FALSE(exact.low.has_value());
}

TEST(ErrorBudget, SharesAddUpToOneAndTheLargestStandsFirst) {
    ErrorBudget budget;
    budget.add_limit(ErrorSource::width, 0.04);
    budget.add_limit(ErrorSource::vessel, 0.01);
    budget.add_limit(ErrorSource::course_time, 0.02, 2);
    budget.add_scatter(ErrorSource::course_time, 0.06, 2);
    const auto shares = shares_of(budget);
    ASSERT_EQ(shares.size(), 3U);
    double sum = 0.0;
    for (const SourceShare& share : shares) {
        sum += share.share;
    }
    EXPECT_NEAR(sum, 1.0, 1e-12);
    EXPECT_EQ(shares[0].source, ErrorSource::course_time);
    EXPECT_TRUE(shares[0].repeats_help);
    // One source alone: a limit is normal enough, a scatter of two has Student's 12.706.
    EXPECT_NEAR(shares[1].plus_minus, 1.959964 * 0.04 / std::sqrt(3.0), 1e-8);
    EXPECT_GT(shares[0].plus_minus, 10.0 * shares[0].relative);
    EXPECT_FALSE(shares[1].repeats_help);
}

TEST(ErrorBudget, ThePlannedRepeatsReachTheWantedInterval) {
    ErrorBudget budget;
    budget.add_limit(ErrorSource::width, 0.02);
    budget.add_scatter(ErrorSource::course_time, 0.05, 3);
    budget.add_scatter(ErrorSource::catch_amount, 0.04, 3);
    ASSERT_GT(combine(budget).plus_minus, 0.05);
    const RepeatPlan plan = plan_repeats(budget, 0.05);
    ASSERT_TRUE(plan.reachable);
    EXPECT_GT(plan.more_course_times, 0);
    EXPECT_LE(plan.plus_minus, 0.05);
    // The same budget written out with the planned repeats.
    ErrorBudget planned;
    planned.add_limit(ErrorSource::width, 0.02);
    planned.add_scatter(ErrorSource::course_time, 0.05, 3 + plan.more_course_times);
    planned.add_scatter(ErrorSource::catch_amount, 0.04, 3 + plan.more_catches);
    EXPECT_NEAR(combine(planned).plus_minus, plan.plus_minus, 1e-12);
}

TEST(ErrorBudget, RepeatsCannotShrinkWhatTheyShare) {
    ErrorBudget budget;
    budget.add_limit(ErrorSource::width, 0.10);
    budget.add_scatter(ErrorSource::course_time, 0.02, 3);
    const RepeatPlan plan = plan_repeats(budget, 0.05);
    EXPECT_FALSE(plan.reachable);
    EXPECT_NEAR(plan.plus_minus, 1.959964 * 0.10 / std::sqrt(3.0), 1e-6);
}

TEST(ErrorBudget, TooWildRunsAreNotPlannedAway) {
    ErrorBudget budget;
    budget.add_scatter(ErrorSource::course_time, 0.9, 3);
    const RepeatPlan plan = plan_repeats(budget, 0.05);
    EXPECT_FALSE(plan.reachable);
    EXPECT_EQ(plan.more_course_times, 20);
}

TEST(Repeats, OneMeasurementHasNoScatter) {
    const double one[] = {31.5};
    EXPECT_EQ(repeats_of(one).count, 1);
    EXPECT_EQ(repeats_of(one).deviation, 0.0);
}

// Five one-minute catches of one knapsack: mean printed 1.01 L/min (rayshorticulture.blogspot.com,
// 2009); deviation with n - 1 by arithmetic.
TEST(Repeats, FiveCatchesOfOneKnapsack) {
    const double catches[] = {1.2, 1.0, 1.0, 0.92, 0.92};
    const Repeats repeats = repeats_of(catches);
    EXPECT_NEAR(repeats.mean, 1.01, 0.005);
    EXPECT_NEAR(repeats.deviation, 0.114542, 1e-6);
}

}  // namespace
}  // namespace swathbook::calibration
