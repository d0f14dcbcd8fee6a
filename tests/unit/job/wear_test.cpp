#include "core/job/wear.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/quantity/parse.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::job {
namespace {

template <Kind K>
Reading<K> read(const std::string& text) {
    return *parse<K>(text);
}

WearPoint at_acres(double ground, double flow, std::string date = {}) {
    WearPoint point;
    point.date = std::move(date);
    point.acres_since_new = read<Kind::area>(fmt::format("{} ac", ground));
    point.flow = read<Kind::flow>(fmt::format("{} gal/min", flow));
    return point;
}

WearRequest of(std::vector<WearPoint> points) {
    WearRequest request;
    request.points = std::move(points);
    request.new_flow = read<Kind::flow>("0.4 gal/min");
    return request;
}

WearAnswer answered(const WearRequest& request) {
    Notes notes;
    const auto answer = wear(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(WearAnswer{});
}

TEST(Wear, tells_when_a_straight_trend_crosses_the_limit) {
    // 1 % for each 100 ac, with a little scatter that cancels: 10 % at 1000 ac.
    const WearAnswer answer = answered(
        of({at_acres(0, 0.4), at_acres(200, 0.4081), at_acres(400, 0.4159), at_acres(600, 0.424)}));
    EXPECT_EQ(answer.verdict, WearVerdict::wearing);
    EXPECT_NEAR(answer.slope->value.si(), 0.01, 1e-4);
    EXPECT_EQ(answer.slope_per, "100 ac");
    ASSERT_TRUE(answer.limit_at_area);
    EXPECT_NEAR(answer.limit_at_area->value.in(acres), 1000.0, 10.0);
    EXPECT_LT(answer.limit_at_area->low->in(acres), 1000.0);
    EXPECT_GT(answer.limit_at_area->high->in(acres), 1000.0);
    EXPECT_TRUE(answer.limit_on.empty());
    EXPECT_FALSE(answer.over_limit_now);
    EXPECT_NEAR(answer.over_new_now.si(), 0.06, 1e-12);
}

TEST(Wear, turns_ground_into_days_by_the_mean_pace) {
    // 600 ac in 60 days: 1000 ac are reached 40 days after the last.
    const WearAnswer answer =
        answered(of({at_acres(0, 0.4, "2031-04-01"), at_acres(300, 0.412, "2031-05-01"),
                     at_acres(600, 0.424, "2031-05-31")}));
    ASSERT_TRUE(answer.limit_at_area);
    EXPECT_NEAR(answer.limit_at_area->value.in(acres), 1000.0, 1e-6);
    EXPECT_TRUE(answer.limit_on == "2031-07-10" || answer.limit_on == "2031-07-09")
        << answer.limit_on;
}

TEST(Wear, counts_months_where_only_days_are_known) {
    WearRequest request = of({at_acres(0, 0.4, "2030-01-01"), at_acres(0, 0.41, "2030-12-31"),
                              at_acres(0, 0.421, "2032-01-01"), at_acres(0, 0.43, "2032-12-31")});
    for (WearPoint& point : request.points) {
        point.acres_since_new.reset();
    }
    const WearAnswer answer = answered(request);
    EXPECT_EQ(answer.axis, WearAxis::time);
    EXPECT_EQ(answer.slope_per, "month");
    EXPECT_NEAR(answer.slope->value.si(), 0.025 / 12.0, 0.0001);
    EXPECT_TRUE(answer.limit_on.starts_with("2033-12") || answer.limit_on.starts_with("2034-0"))
        << answer.limit_on;
}

TEST(Wear, says_plainly_when_there_is_no_trend_to_tell) {
    EXPECT_EQ(answered(of({at_acres(0, 0.4)})).verdict, WearVerdict::not_enough_points);
    const WearAnswer two = answered(of({at_acres(0, 0.4), at_acres(100, 0.42)}));
    EXPECT_EQ(two.verdict, WearVerdict::not_enough_points);
    EXPECT_FALSE(two.slope);
    EXPECT_NE(two.text.find("Not enough points"), std::string::npos);
    const WearAnswer flat = answered(
        of({at_acres(0, 0.400), at_acres(100, 0.412), at_acres(200, 0.398), at_acres(300, 0.411)}));
    EXPECT_EQ(flat.verdict, WearVerdict::no_trend);
    EXPECT_FALSE(flat.limit_at_area);
    EXPECT_NE(flat.text.find("cannot be told from none"), std::string::npos);
    const WearAnswer falling = answered(
        of({at_acres(0, 0.4), at_acres(100, 0.39), at_acres(200, 0.379), at_acres(300, 0.37)}));
    EXPECT_EQ(falling.verdict, WearVerdict::falling);
    EXPECT_FALSE(falling.limit_at_area);
}

TEST(Wear, brings_flows_to_one_pressure_by_the_square_root) {
    WearRequest request = of({at_acres(0, 0.4), at_acres(100, 0.4)});
    request.reference_pressure = read<Kind::pressure>("40 psi");
    request.points[1].pressure = read<Kind::pressure>("10 psi");
    const WearAnswer answer = answered(request);
    EXPECT_NEAR(answer.over_new_now.si(), 1.0, 1e-12);  // a quarter of the pressure: half the flow
    EXPECT_TRUE(answer.over_limit_now);
}

RC_GTEST_PROP(Wear, does_not_depend_on_the_order_of_its_points, ()) {
    std::vector<WearPoint> points;
    const int count = *rc::gen::inRange(3, 10);
    for (int i = 0; i < count; ++i) {
        points.push_back(at_acres(i * 50.0, 0.4 + i * 0.002 + *rc::gen::inRange(-9, 9) / 1000.0));
    }
    const WearAnswer one = answered(of(points));
    std::reverse(points.begin(), points.end());
    const WearAnswer two = answered(of(points));
    RC_ASSERT(one.verdict == two.verdict);
    RC_ASSERT(one.slope->value == two.slope->value);
    RC_ASSERT(one.over_new_now == two.over_new_now);
}

TEST(Wear, refuses_what_gives_no_wear) {
    Notes notes;
    EXPECT_EQ(wear({}, notes).error().field, "points");
    WearRequest request = of({at_acres(0, 0.4)});
    request.new_flow.reset();
    EXPECT_EQ(wear(request, notes).error().field, "new_flow");
    request = of({at_acres(0, 0.4), at_acres(10, 0.4)});
    request.points[1].acres_since_new.reset();
    EXPECT_EQ(wear(request, notes).error().field, "points[0].date");
    request.points[0].date = "2031-02-30";
    EXPECT_EQ(wear(request, notes).error().field, "points[0].date");
    request = of({at_acres(0, 0.4)});
    request.points[0].pressure = read<Kind::pressure>("40 psi");
    EXPECT_EQ(wear(request, notes).error().field, "reference_pressure");
    request = of({at_acres(0, 0)});
    EXPECT_EQ(wear(request, notes).error().field, "points[0].flow");
    request = of({at_acres(0, 0.4)});
    request.limit = read<Kind::fraction>("0 %");
    EXPECT_EQ(wear(request, notes).error().field, "limit");
}

}  // namespace
}  // namespace swathbook::job
