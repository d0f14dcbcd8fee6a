#include "core/mix/leftover.hpp"

#include <rapidcheck.h>

#include <cmath>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

/// Six gallons of a mix of 2 qt/ac in 18.6 gal/ac; both caps entered.
LeftoverRequest six_gallons() {
    LeftoverRequest request;
    request.left = volume("6 gal");
    request.mix_per_area = mix_rate("18.6 gal/ac");
    request.products = {liquid("Example liquid", "2 qt/ac")};
    request.products[0].card.limits.max_single_rate = RateLimit{rate("80 fl oz/ac"), "page 3"};
    request.products[0].card.limits.max_yearly_rate = RateLimit{rate("4 qt/ac"), "page 3"};
    return request;
}

LeftoverGround ground(std::string name, std::string_view area, std::string_view applied,
                      bool sprayed) {
    LeftoverGround made;
    made.name = std::move(name);
    made.net_area = net(area);
    made.on_label = Answered::yes;
    made.sprayed_in_this_job = sprayed;
    made.applied_this_year = {AlreadyApplied{"Example liquid", rate(applied), std::nullopt}};
    return made;
}

const LeftoverOption& option(const LeftoverAnswer& answer, LeftoverWay way) {
    const auto found = std::find_if(answer.options.begin(), answer.options.end(),
                                    [&](const LeftoverOption& each) { return each.way == way; });
    EXPECT_NE(found, answer.options.end());
    return *found;
}

TEST(Leftover, SaysHowMuchGroundWouldTakeIt) {
    Notes notes;
    const auto answer = leftover(six_gallons(), notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(answer->absorbing_area.in(acres), 6 / 18.6, 1e-12);
    EXPECT_NEAR(answer->products[0].amount.volume->in(us_fluid_ounces), 64 * 6 / 18.6, 1e-9);
    EXPECT_EQ(answer->options.size(), 2U);
    EXPECT_TRUE(has_finding(notes, "no_way_is_clear"));
}

TEST(Leftover, PutsUntreatedGroundOfTheLabelFirst) {
    LeftoverRequest request = six_gallons();
    request.ground = {ground("done", "7.4 ac", "64 fl oz/ac", true),
                      ground("next door", "1 ac", "0 fl oz/ac", false)};
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_EQ(answer->options[0].way, LeftoverWay::spray_untreated);
    EXPECT_EQ(answer->options[0].lawful, Lawful::by_what_was_entered);
    EXPECT_NEAR(answer->options[0].area->in(acres), 6 / 18.6, 1e-12);
    EXPECT_EQ(answer->options[0].mix, request.left.value);
}

TEST(Leftover, ThinsOverTreatedGroundWhenTheSumStaysUnderBothCaps) {
    LeftoverRequest request =
        six_gallons();  // 20.6 fl oz more on 7.4 ac: 2.8 fl oz/ac on top of 64
    request.ground = {ground("done", "7.4 ac", "64 fl oz/ac", true)};
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer);
    const LeftoverOption& thin = option(*answer, LeftoverWay::spray_again_thin);
    EXPECT_EQ(thin.lawful, Lawful::by_what_was_entered) << thin.text;
    EXPECT_NEAR(thin.water->in(us_gallons), 7.4 * 18.6 - 6, 1e-9);
    EXPECT_NEAR(thin.products[0].adds->si / us_fluid_ounces_per_acre.si, 64 * 6 / 18.6 / 7.4, 1e-9);
}

TEST(Leftover, KeepsTheThinPassWithinTheSingleCap) {
    LeftoverRequest request = six_gallons();  // cap 80, so 16 fl oz/ac of room; 20.6 fl oz on 1 ac
    request.ground = {ground("done", "1 ac", "64 fl oz/ac", true)};
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer);
    const LeftoverOption& thin = option(*answer, LeftoverWay::spray_again_thin);
    EXPECT_EQ(thin.lawful, Lawful::by_what_was_entered) << thin.text;
    EXPECT_NEAR(thin.products[0].adds->si / us_fluid_ounces_per_acre.si, 16.0, 1e-9);
    EXPECT_NEAR(thin.mix.in(us_gallons), 16.0 / 64 * 18.6, 1e-9);
}

TEST(Leftover, KeepsTheThinPassWithinTheYearlyCap) {
    LeftoverRequest request = six_gallons();  // yearly cap 128, 120 already there: 8 of room
    request.ground = {ground("done", "1 ac", "120 fl oz/ac", true)};
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer);
    const LeftoverOption& thin = option(*answer, LeftoverWay::spray_again_thin);
    EXPECT_NEAR(thin.products[0].adds->si / us_fluid_ounces_per_acre.si, 8.0, 1e-9);
    request.ground = {ground("done", "1 ac", "128 fl oz/ac", true)};
    const auto full = leftover(request, notes);
    ASSERT_TRUE(full);
    EXPECT_EQ(option(*full, LeftoverWay::spray_again_thin).lawful, Lawful::no);
}

TEST(Leftover, CannotTellWhenACapOrTheHistoryWasNotEntered) {
    LeftoverRequest request = six_gallons();
    request.ground = {ground("done", "7.4 ac", "64 fl oz/ac", true)};
    request.ground[0].applied_this_year.clear();
    Notes notes;
    auto answer = leftover(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(option(*answer, LeftoverWay::spray_again_thin).lawful, Lawful::cannot_tell);
    request = six_gallons();
    request.products[0].card.limits.max_yearly_rate.reset();
    request.ground = {ground("done", "7.4 ac", "64 fl oz/ac", true)};
    answer = leftover(request, notes);
    EXPECT_EQ(option(*answer, LeftoverWay::spray_again_thin).lawful, Lawful::cannot_tell);
}

TEST(Leftover, ForbidsASiteThatIsNotOnTheLabel) {
    LeftoverRequest request = six_gallons();
    request.ground = {ground("garden", "1 ac", "0 fl oz/ac", false)};
    request.ground[0].on_label = Answered::no;
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(option(*answer, LeftoverWay::spray_untreated).lawful, Lawful::no);
    EXPECT_EQ(answer->options.back().way, LeftoverWay::spray_untreated);
}

TEST(Leftover, MakesItPartOfTheNextLoad) {
    LeftoverRequest request = six_gallons();
    request.next_job =
        NextJob{"tomorrow",
                {liquid("Example liquid", "2 qt/ac"), ammonium_sulphate("17 lb/100 gal")},
                mix_rate("18.6 gal/ac"),
                volume("47 gal")};
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    const LeftoverOption& next = option(*answer, LeftoverWay::into_next_load);
    EXPECT_EQ(next.mix, request.left.value);
    EXPECT_NEAR(next.products[0].still_to_add->volume->in(us_fluid_ounces), 64 * 41 / 18.6, 1e-9);
    EXPECT_NEAR(next.products[1].still_to_add->mass->in(pounds), 47 * 0.17, 1e-9);
}

TEST(Leftover, TakesOnlyWhatKeepsTheNextLoadAtItsRate) {
    LeftoverRequest request = six_gallons();
    request.next_job = NextJob{"tomorrow",
                               {liquid("Example liquid", "8 fl oz/ac")},
                               mix_rate("18.6 gal/ac"),
                               volume("40 gal")};
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer);
    const LeftoverOption& next = option(*answer, LeftoverWay::into_next_load);
    EXPECT_NEAR(next.mix.in(us_gallons), 40 * 8.0 / 64, 1e-9);
    EXPECT_NEAR(next.products[0].still_to_add->volume->si(), 0.0, 1e-12);
}

TEST(Leftover, RefusesANextLoadWithoutAProductThatIsInTheMix) {
    LeftoverRequest request = six_gallons();
    request.next_job = NextJob{"tomorrow",
                               {liquid("Another liquid", "8 fl oz/ac")},
                               mix_rate("18.6 gal/ac"),
                               volume("40 gal")};
    Notes notes;
    const auto answer = leftover(request, notes);
    ASSERT_TRUE(answer);
    const LeftoverOption& next = option(*answer, LeftoverWay::into_next_load);
    EXPECT_EQ(next.lawful, Lawful::no);
    EXPECT_EQ(next.mix.si(), 0.0);
}

TEST(Leftover, KeepsItOnlyWhenTheLabelsSaySo) {
    LeftoverRequest request = six_gallons();
    Notes notes;
    EXPECT_EQ(option(*leftover(request, notes), LeftoverWay::keep).lawful, Lawful::cannot_tell);
    request.labels_allow_keeping = Answered::yes;
    EXPECT_EQ(leftover(request, notes)->options[0].way, LeftoverWay::keep);
    request.labels_allow_keeping = Answered::no;
    EXPECT_EQ(leftover(request, notes)->options.back().way, LeftoverWay::keep);
}

TEST(Leftover, RefusesBadInputNamingTheMember) {
    Notes notes;
    LeftoverRequest request = six_gallons();
    request.left = Volume::from_si(0.0);
    EXPECT_EQ(leftover(request, notes).error().field, "left");
    request = six_gallons();
    request.ground = {ground("done", "7.4 ac", "32 fl oz/ac", true)};
    EXPECT_EQ(leftover(request, notes).error().code, ErrorCode::inconsistent);
    EXPECT_EQ(leftover(request, notes).error().field, "ground[0].applied_this_year");
    request.ground[0].applied_this_year[0].product = "No such product";
    EXPECT_EQ(leftover(request, notes).error().field, "ground[0].applied_this_year[0].product");
    request.ground[0].net_area = NetArea::from_si(-1.0);
    EXPECT_EQ(leftover(request, notes).error().field, "ground[0].net_area");
    request = six_gallons();
    request.ground.resize(51);
    EXPECT_EQ(leftover(request, notes).error().field, "ground");
}

TEST(Leftover, ALawfulThinPassNeverPassesACapWhateverTheNumbers) {
    EXPECT_TRUE(rc::check([](unsigned left, unsigned area, unsigned cap, unsigned before) {
        LeftoverRequest request = six_gallons();
        request.left = Volume::of(1.0 + left % 60, us_gallons);
        const double single = 64.0 + cap % 40;
        const double earlier = 64.0 + before % 80;
        auto& limits = request.products[0].card.limits;
        limits.max_single_rate = RateLimit{rate(std::to_string(single) + " fl oz/ac"), ""};
        request.ground = {ground("done", "1 ac", std::to_string(earlier) + " fl oz/ac", true)};
        request.ground[0].net_area = NetArea::of(0.1 + area % 20, acres);
        Notes notes;
        const auto answer = leftover(request, notes);
        RC_ASSERT(answer.has_value());
        const LeftoverOption& thin = option(*answer, LeftoverWay::spray_again_thin);
        const double adds = thin.products[0].adds->si / us_fluid_ounces_per_acre.si;
        RC_ASSERT(thin.mix <= request.left.value);
        RC_ASSERT(thin.lawful != Lawful::by_what_was_entered ||
                  (64.0 + adds <= single * (1 + 1e-6) && earlier + adds <= 128.0 * (1 + 1e-6)));
        RC_ASSERT(thin.lawful != Lawful::no || single <= 64.0 || earlier >= 128.0);
    }));
}

}  // namespace
}  // namespace swathbook::mix
