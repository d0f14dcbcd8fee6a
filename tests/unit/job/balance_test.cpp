#include "core/job/balance.hpp"

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

BalanceAnswer answered(const BalanceRequest& request, Notes& notes) {
    const auto answer = balance(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(BalanceAnswer{});
}
BalanceAnswer answered(const BalanceRequest& request) {
    Notes notes;
    return answered(request, notes);
}

bool has(const Notes& notes, std::string_view code) {
    return std::any_of(notes.findings().begin(), notes.findings().end(),
                       [&](const Finding& finding) { return finding.code == code; });
}

BalancePass pass(const std::string& length, const std::string& time) {
    BalancePass made;
    made.length = read<Kind::length>(length);
    made.spray_time = read<Kind::duration>(time);
    return made;
}

BalanceRequest ten_acres() {
    BalanceRequest request;
    request.covered_area = read<Kind::net_area>("10 ac");
    BalanceProduct product;
    product.name = "A";
    product.rate = *parse_label_rate("1 qt/ac");
    request.products = {product};
    return request;
}

BalanceLoad load(const std::string& carrier, const std::string& product) {
    BalanceLoad made;
    made.carrier = read<Kind::volume>(carrier);
    BalanceLoadProduct part;
    part.name = "A";
    part.amount = read<Kind::volume>(product);
    made.products = {part};
    return made;
}

TEST(Balance, takes_the_product_left_in_the_tank_off_by_its_share) {
    // 2 x (49.375 + 0.625) = 100 gal with 1.25 gal of product; 20 gal left hold a fifth: 0.25 gal.
    BalanceRequest request = ten_acres();
    request.loads = {load("49.375 gal", "0.625 gal"), load("49.375 gal", "0.625 gal")};
    request.leftover = read<Kind::volume>("20 gal");
    request.mix_per_area = read<Kind::mix_per_area>("8 gal/ac");
    const BalanceAnswer answer = answered(request);
    EXPECT_NEAR(answer.mix->used.in(us_gallons), 80.0, 1e-9);
    EXPECT_NEAR(answer.mix->difference->value.si(), 0.0, 1e-12);
    EXPECT_NEAR(answer.products[0].used->in(us_gallons), 1.0, 1e-12);
    EXPECT_NEAR(answer.products[0].in_leftover->in(us_gallons), 0.25, 1e-12);
    EXPECT_NEAR(answer.products[0].expected->in(us_gallons), 2.5, 1e-12);
    EXPECT_NEAR(answer.products[0].difference->value.si(), -0.6, 1e-12);
}

TEST(Balance, warns_when_stock_and_loads_disagree) {
    BalanceRequest request = ten_acres();
    request.loads = {load("97.5 gal", "2.5 gal")};
    request.products[0].stock_before = read<Kind::volume>("10 gal");
    request.products[0].stock_after = read<Kind::volume>("7 gal");
    Notes notes;
    const BalanceAnswer answer = answered(request, notes);
    EXPECT_NEAR(answer.products[0].stock_difference->si(), 0.2, 1e-12);
    EXPECT_TRUE(has(notes, "stock_disagrees"));
    EXPECT_FALSE(has(notes, "explain_before_filing"));
    request.products[0].stock_after = read<Kind::volume>("7.5 gal");
    Notes quiet;
    static_cast<void>(answered(request, quiet));
    EXPECT_FALSE(has(quiet, "stock_disagrees"));
}

TEST(Balance, takes_stock_where_nothing_else_says_what_was_used) {
    BalanceRequest request = ten_acres();
    request.products[0].stock_before = read<Kind::volume>("10 gal");
    request.products[0].stock_after = read<Kind::volume>("7.5 gal");
    EXPECT_NEAR(answered(request).products[0].difference->value.si(), 0.0, 1e-12);
}

TEST(Balance, weighs_dry_products) {
    BalanceRequest request = ten_acres();
    request.products[0].rate = *parse_label_rate("4 oz wt/ac");
    request.products[0].used_weight = read<Kind::mass>("3 lb");
    const BalanceAnswer answer = answered(request);
    EXPECT_NEAR(answer.products[0].difference->value.si(), 0.2, 1e-12);  // 4.8 oz against 4
    EXPECT_NEAR(answer.products[0].expected_weight->in(pounds), 2.5, 1e-12);
    request.products[0].rate = *parse_label_rate("1 qt/ac");
    Notes notes;
    EXPECT_EQ(balance(request, notes).error().field, "products[0].rate");
}

TEST(Balance, judges_a_percent_rate_in_the_mix) {
    BalanceRequest request = ten_acres();
    request.products[0].rate = *parse_label_rate("2 % v/v");
    request.loads = {load("97.5 gal", "2.5 gal")};
    EXPECT_NEAR(answered(request).products[0].difference->value.si(), 0.25, 1e-12);
}

TEST(Balance, knows_the_difference_only_as_well_as_ground_and_amount) {
    BalanceRequest request = ten_acres();
    request.covered_area = Reading<Kind::net_area>(NetArea::of(10, acres));
    request.products[0].used = Reading<Kind::volume>(Volume::of(2.75, us_gallons));
    EXPECT_FALSE(answered(request).products[0].difference->low);
    request.area_plus_minus = read<Kind::fraction>("3 %");
    request.amount_plus_minus = read<Kind::fraction>("4 %");
    const BalanceAnswer answer = answered(request);  // 3 and 4 % make 5 %
    EXPECT_NEAR(answer.products[0].difference->value.si(), 0.1, 1e-12);
    EXPECT_NEAR(answer.products[0].difference->low->si(), 1.1 * 0.95 - 1.0, 1e-12);
    EXPECT_NEAR(answer.products[0].difference->high->si(), 1.1 * 1.05 - 1.0, 1e-12);
}

RC_GTEST_PROP(Balance, does_not_change_when_a_pass_is_split, ()) {
    BalanceRequest whole;
    whole.width = read<Kind::length>("26 ft");
    whole.flow = read<Kind::flow>("2.6 gal/min");
    const int feet_long = *rc::gen::inRange(100, 5000);
    const int time = *rc::gen::inRange(20, 900);
    whole.passes = {pass(fmt::format("{} ft", 2 * feet_long), fmt::format("{} s", 2 * time))};
    BalanceRequest split = whole;
    split.passes = {pass(fmt::format("{} ft", feet_long), fmt::format("{} s", time)),
                    pass(fmt::format("{} ft", feet_long), fmt::format("{} s", time))};
    const BalanceAnswer a = answered(whole);
    const BalanceAnswer b = answered(split);
    RC_ASSERT(std::fabs(a.swept_area->si() / b.swept_area->si() - 1.0) < 1e-12);
    RC_ASSERT(std::fabs(a.mix->applied->si() / b.mix->applied->si() - 1.0) < 1e-12);
    RC_ASSERT(std::fabs(*a.mean_speed / *b.mean_speed - 1.0) < 1e-12);
}

TEST(Balance, counts_a_track_live) {
    BalanceRequest request;
    request.width = read<Kind::length>("10 m");
    request.flow = read<Kind::flow>("6 L/min");
    BalancePass recorded;
    for (int i = 0; i <= 100; ++i) {
        recorded.track.push_back({i * 1.0, 40.0 + i * 2.0 / 111034.6, -98.0, true, 3.0});
    }
    request.passes = {recorded};
    const BalanceAnswer answer = answered(request);
    EXPECT_NEAR(answer.sprayed_length->si(), 200.0, 0.01);
    EXPECT_NEAR(answer.swept_area->si(), 2000.0, 0.1);
    EXPECT_NEAR(answer.mean_speed->si(), 2.0, 1e-4);
    EXPECT_NEAR(answer.mix->by_passes->in(litres), 10.0, 1e-9);
    EXPECT_EQ(answer.passes[0].track->fixes, 101);
    EXPECT_EQ(answer.ground, BalanceGround::swept);
}

TEST(Balance, refuses_what_does_not_add_up) {
    Notes notes;
    EXPECT_EQ(balance({}, notes).error().field, "passes");
    BalanceRequest request = ten_acres();
    request.planned_area = read<Kind::planned_area>("10 ac");
    request.exclusions = {{"pond", read<Kind::area>("10 ac")}};
    EXPECT_EQ(balance(request, notes).error().field, "exclusions");
    request = ten_acres();
    request.loads = {load("50 gal", "1 gal")};
    request.leftover = read<Kind::volume>("60 gal");
    EXPECT_EQ(balance(request, notes).error().field, "leftover");
    request = ten_acres();
    request.products[0].stock_before = read<Kind::volume>("5 gal");
    request.products[0].stock_after = read<Kind::volume>("7 gal");
    EXPECT_EQ(balance(request, notes).error().field, "products[0].stock_after");
    request = ten_acres();
    request.products[0].rate = *parse_label_rate("1.5 lb a.e./ac");
    request.products[0].used = read<Kind::volume>("1 gal");
    EXPECT_FALSE(balance(request, notes).has_value());
    request = ten_acres();
    request.passes = {pass("100 ft", "10 s")};
    request.passes[0].area = read<Kind::area>("1 ac");
    EXPECT_EQ(balance(request, notes).error().field, "passes[0].area");
    request.passes[0].area.reset();
    request.passes[0].track = {{0, 40, -98, true, {}}};
    EXPECT_EQ(balance(request, notes).error().field, "passes[0].track");
    request = ten_acres();
    request.loads = {{}};
    EXPECT_EQ(balance(request, notes).error().field, "loads[0].carrier");
    request = ten_acres();
    request.covered_area = read<Kind::net_area>("0 ac");
    EXPECT_EQ(balance(request, notes).error().field, "covered_area");
}

}  // namespace
}  // namespace swathbook::job
