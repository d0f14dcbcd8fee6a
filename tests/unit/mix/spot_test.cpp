#include "core/mix/spot.hpp"

#include <cmath>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using testing::has_finding;
using testing::liquid;
using testing::mix_rate;
using testing::net;
using testing::rate;
using testing::read;
using testing::volume;

SpotRequest two_percent() {
    SpotRequest request;
    request.products = {liquid("Example", "2 % v/v")};
    request.products[0].card.limits.max_yearly_rate = RateLimit{rate("8 qt/ac"), "page 4"};
    request.products[0].applied_this_year = rate("0 qt/ac");
    request.sprayed = volume("21 gal");
    request.area = net("0.35 ac");
    return request;
}

SpotAnswer answered(const SpotRequest& request, Notes& notes) {
    const auto answer = spot(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(SpotAnswer{});
}

Error refused(const SpotRequest& request) {
    Notes notes;
    const auto answer = spot(request, notes);
    EXPECT_FALSE(answer.has_value());
    return answer ? Error{} : answer.error();
}

TEST(Spot, FindsTheRateHiddenInAPercentSolution) {
    Notes notes(UnitSystem::us, true);
    const SpotAnswer answer = answered(two_percent(), notes);
    EXPECT_NEAR(answer.mix_per_area->in(us_gallons_per_acre), 60.0, 1e-9);
    EXPECT_NEAR(answer.products[0].volume_per_area->in(us_gallons_per_acre), 1.2, 1e-9);
    EXPECT_NEAR(answer.products[0].acid_per_area->in(pounds_per_acre), 3.6, 1e-9);
    EXPECT_EQ(notes.steps()[0].expression, "21 gal / 0.35 ac");
    EXPECT_EQ(notes.steps()[0].result, "60 gal/ac");
}

// The strongest mix, sprayed at the same volume, lands exactly on the cap and is within it; a hair
// more is not.
RC_GTEST_PROP(Spot, TheStrongestMixLandsOnTheCap, ()) {
    SpotRequest request = two_percent();
    request.sprayed = Reading<Kind::volume>(Volume::from_si(*rc::gen::inRange(1, 5000) * 1e-4));
    request.area = Reading<Kind::net_area>(NetArea::from_si(*rc::gen::inRange(100, 20000)));
    const double earlier = *rc::gen::inRange(0, 8);
    request.products[0].applied_this_year = rate(fmt::format("{} qt/ac", earlier));
    Notes notes;
    const SpotAnswer first = answered(request, notes);
    RC_ASSERT(first.products[0].strongest.has_value());
    RC_PRE(first.products[0].strongest->si() < 0.9);
    request.products[0].rate =
        LabelRate{first.products[0].strongest->si(), RateBasis::percent_by_volume};
    Notes at;
    answered(request, at);
    RC_ASSERT(!has_finding(at, "above_label_limit"));
    request.products[0].rate.si *= 1.0001;
    Notes over;
    answered(request, over);
    RC_ASSERT(has_finding(over, "above_label_limit"));
}

RC_GTEST_PROP(Spot, PercentToRatePerAreaAndBackIsTheSame, ()) {
    const double share = *rc::gen::inRange(1, 2000) / 10000.0;
    SpotRequest request;
    request.products = {liquid("Example", "1 % v/v")};
    request.products[0].rate = LabelRate{share, RateBasis::percent_by_volume};
    request.mix_per_area = mix_rate("37.5 gal/ac");
    Notes notes;
    const SpotAnswer there = answered(request, notes);
    request.products[0].rate =
        LabelRate{there.products[0].volume_per_area->si(), RateBasis::volume_per_area};
    const SpotAnswer back = answered(request, notes);
    RC_ASSERT(std::abs(back.products[0].of_mix->si() / share - 1.0) < 1e-12);
}

TEST(Spot, SaysThatAPercentAloneHasNoRatePerArea) {
    SpotRequest request = two_percent();
    request.sprayed.reset();
    request.area.reset();
    Notes notes;
    const SpotAnswer answer = answered(request, notes);
    EXPECT_FALSE(answer.mix_per_area);
    EXPECT_FALSE(answer.products[0].volume_per_area);
    EXPECT_FALSE(answer.products[0].strongest);
    EXPECT_TRUE(has_finding(notes, "area_not_measured"));
}

TEST(Spot, UsesTheJobRatherThanThePlotAndSaysSo) {
    SpotRequest request = two_percent();
    request.mix_per_area = mix_rate("40 gal/ac");
    Notes notes;
    EXPECT_NEAR(answered(request, notes).mix_per_area->in(us_gallons_per_acre), 60.0, 1e-9);
    EXPECT_TRUE(has_finding(notes, "plot_and_job_differ"));
}

TEST(Spot, FillsAddUpToTheFill) {
    SpotRequest request = two_percent();
    request.products.push_back(liquid("Wetting agent", "0.5 % v/v"));
    request.fills = {volume("4 gal"), volume("15 L")};
    Notes notes;
    const SpotAnswer answer = answered(request, notes);
    for (const SpotFill& fill : answer.fills) {
        double sum = fill.carrier.si();
        for (const SpotMeasure& measure : fill.products) {
            sum += measure.amount.volume->si();
        }
        EXPECT_NEAR(sum, fill.fill.si(), 1e-15);
    }
    EXPECT_NEAR(answer.fills[0].covers->in(acres), 4.0 / 60.0, 1e-12);
}

TEST(Spot, RefusesWhatCannotBe) {
    EXPECT_EQ(refused({}).field, "products");
    SpotRequest request = two_percent();
    request.area = net("0 ac");
    EXPECT_EQ(refused(request).field, "area");
    request = two_percent();
    request.sprayed.reset();
    EXPECT_EQ(refused(request).field, "sprayed");
    request = two_percent();
    request.fills = {Reading<Kind::volume>(Volume::from_si(std::nan("")))};
    EXPECT_EQ(refused(request).field, "fills[0]");
    request = two_percent();
    request.plants = 0;
    EXPECT_EQ(refused(request).field, "plants");
    request = two_percent();
    request.flow = read<Kind::flow>("1 gal/min");
    EXPECT_EQ(refused(request).field, "time_per_plant");
    request.time_per_plant = read<Kind::duration>("5 s");
    request.per_plant = read<Kind::volume_each>("100 mL each");
    EXPECT_EQ(refused(request).field, "per_plant");
    request = two_percent();
    request.products[0].counts = Counts::field;
    EXPECT_EQ(refused(request).field, "products[0].counts");
    request = two_percent();
    request.products[0].rate = rate("5 fl oz/ac");
    request.sprayed.reset();
    request.area.reset();
    EXPECT_EQ(refused(request).code, ErrorCode::invalid_input);
}

}  // namespace
}  // namespace swathbook::mix
