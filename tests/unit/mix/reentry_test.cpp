#include "core/mix/reentry.hpp"

#include <algorithm>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/base/civil_time.hpp"
#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using testing::has_finding;
using testing::liquid_card;

DurationLimit wait(double number, Unit<Dimension::time> unit) {
    return {Reading<Kind::duration>(Duration::of(number, unit)), "page 1"};
}

ReentryRequest one_place(std::vector<ProductCard> cards) {
    ReentryRequest request;
    request.products = std::move(cards);
    request.places = {{"north", "2031-05-04T14:20-05:00", {}}};
    return request;
}

const ReentryAct& act(const ReentryAnswer& answer, Act what) {
    for (const ReentryAct& each : answer.places[0].acts) {
        if (each.act == what) {
            return each;
        }
    }
    ADD_FAILURE() << "every act is answered";
    return answer.places[0].acts[0];
}

ReentryAnswer answered(const ReentryRequest& request, Notes& notes) {
    const auto answer = reentry(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(ReentryAnswer{});
}

TEST(Reentry, KeepsEverythingNotKnownWhenNothingWasEntered) {
    Notes notes;
    const ReentryAnswer answer = answered(one_place({liquid_card("A")}), notes);
    EXPECT_EQ(answer.places[0].acts.size(), 8U);
    for (const ReentryAct& each : answer.places[0].acts) {
        EXPECT_EQ(each.status, ReentryStatus::not_known);
        EXPECT_TRUE(each.from.empty());
        EXPECT_TRUE(each.not_before.empty());
        EXPECT_EQ(each.not_entered_by, std::vector<std::string>{"A"});
        EXPECT_NE(each.text.find("not zero"), std::string::npos);
    }
    EXPECT_TRUE(answer.places[0].everything_from.empty());
    EXPECT_TRUE(has_finding(notes, "wait_not_known"));
}

TEST(Reentry, TakesAnEnteredZeroAsNoWait) {
    ProductCard card = liquid_card("A");
    card.limits.grazing = wait(0, days);
    Notes notes;
    const ReentryAnswer answer = answered(one_place({card}), notes);
    EXPECT_EQ(act(answer, Act::graze).from, "2031-05-04T14:20-05:00");
}

TEST(Reentry, OneLabelNotReadKeepsTheActNotKnown) {
    ProductCard read_card = liquid_card("A");
    read_card.limits.haying = wait(7, days);
    Notes notes;
    const ReentryAnswer answer = answered(one_place({read_card, liquid_card("B")}), notes);
    const ReentryAct& hay = act(answer, Act::cut_hay);
    EXPECT_EQ(hay.status, ReentryStatus::not_known);
    EXPECT_TRUE(hay.from.empty());
    EXPECT_EQ(hay.not_before, "2031-05-11T14:20-05:00");
    EXPECT_EQ(hay.not_entered_by, std::vector<std::string>{"B"});
}

RC_GTEST_PROP(Reentry, IsTheEndPlusTheLongestWaitNeverEarlier, ()) {
    const double first = *rc::gen::inRange(0, 100000) / 7.0;
    const double second = *rc::gen::inRange(0, 100000) / 7.0;
    ProductCard a = liquid_card("A");
    ProductCard b = liquid_card("B");
    a.limits.replanting = wait(first, seconds);
    b.limits.replanting = wait(second, seconds);
    Notes notes;
    const ReentryAnswer answer = answered(one_place({a, b}), notes);
    const ReentryAct& replant = act(answer, Act::replant);
    RC_ASSERT(replant.status == ReentryStatus::known);
    const auto from = parse_civil_time(replant.from, "from");
    const auto ended = parse_civil_time(answer.places[0].ended, "ended");
    const double waited = static_cast<double>(seconds_of(*from) - seconds_of(*ended));
    const double longest = std::max(first, second);
    RC_ASSERT(waited >= longest - 1e-6);
    RC_ASSERT(waited < longest + 60.0);
    RC_ASSERT(replant.product == (first >= second ? "A" : "B"));
}

TEST(Reentry, ShowsItsWorking) {
    ProductCard card = liquid_card("A");
    card.limits.haying = wait(7, days);
    Notes notes(UnitSystem::us, true);
    answered(one_place({card}), notes);
    ASSERT_EQ(notes.steps().size(), 1U);
    EXPECT_EQ(notes.steps()[0].expression, "2031-05-04T14:20-05:00 + 7 d (longest wait, A)");
    EXPECT_EQ(notes.steps()[0].result, "2031-05-11T14:20-05:00");
}

TEST(Reentry, RefusesWhatCannotBe) {
    Notes notes;
    EXPECT_EQ(reentry({}, notes).error().field, "products");
    ReentryRequest request = one_place({liquid_card("A")});
    request.places.clear();
    EXPECT_EQ(reentry(request, notes).error().field, "places");
    request = one_place({liquid_card("A"), liquid_card("A")});
    EXPECT_EQ(reentry(request, notes).error().field, "products[1].name");
    request = one_place({liquid_card("A")});
    request.places[0].name.clear();
    EXPECT_EQ(reentry(request, notes).error().field, "places[0].name");
    request = one_place({liquid_card("A")});
    request.places[0].ended = "yesterday";
    EXPECT_EQ(reentry(request, notes).error().field, "places[0].ended");
    request = one_place({liquid_card("A")});
    request.slaughter_planned = "soon";
    EXPECT_EQ(reentry(request, notes).error().field, "slaughter_planned");
    request = one_place({liquid_card("A")});
    request.places[0].products = {"B"};
    EXPECT_EQ(reentry(request, notes).error().code, ErrorCode::not_found);
    ProductCard forever = liquid_card("A");
    forever.limits.haying = wait(1e9, days);
    EXPECT_EQ(reentry(one_place({forever}), notes).error().code, ErrorCode::out_of_range);
    forever.limits.haying = wait(-1, days);
    EXPECT_FALSE(reentry(one_place({forever}), notes).has_value());
}

}  // namespace
}  // namespace swathbook::mix
