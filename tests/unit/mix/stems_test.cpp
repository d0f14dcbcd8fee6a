#include "core/mix/stems.hpp"

#include <cmath>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using testing::has_finding;
using testing::liquid_card;
using testing::net;
using testing::rate;
using testing::read;

StemsRequest hack_and_squirt() {
    StemsRequest request;
    StemProduct product;
    product.card = liquid_card("Example injection", "240 g a.e./L");
    product.ceiling = rate("0.109 lb a.e./ac");
    product.applied_this_year = rate("0 lb a.e./ac");
    request.products.push_back(std::move(product));
    request.dose = read<Kind::volume_each>("0.5 mL per cut");
    return request;
}

StemsAnswer answered(const StemsRequest& request, Notes& notes) {
    const auto answer = stems(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(StemsAnswer{});
}

Error refused(const StemsRequest& request) {
    Notes notes;
    const auto answer = stems(request, notes);
    EXPECT_FALSE(answer.has_value());
    return answer ? Error{} : answer.error();
}

TEST(Stems, NeverRoundsTheCeilingUp) {
    Notes notes(UnitSystem::us, true);
    const StemsAnswer answer = answered(hack_and_squirt(), notes);
    EXPECT_EQ(answer.cuts_per_acre, 412);
    EXPECT_NEAR(answer.doses[0].acid->in(grams_each), 0.12, 1e-12);
    bool shown = false;
    for (const Step& step : notes.steps()) {
        shown = shown || step.result.find("412 (never up)") != std::string::npos;
    }
    EXPECT_TRUE(shown);
}

RC_GTEST_PROP(Stems, CutsTimesDoseNeverExceedTheCeiling, ()) {
    StemsRequest request = hack_and_squirt();
    const double ceiling_kg_per_m2 = *rc::gen::inRange(1, 100000) * 1e-9;
    request.products[0].ceiling = LabelRate{ceiling_kg_per_m2, RateBasis::acid_per_area};
    request.dose.value = VolumeEach::from_si(*rc::gen::inRange(1, 2000) * 1e-8);
    request.products[0].share = Reading<Kind::percent_by_volume>(
        PercentByVolume::from_si(*rc::gen::inRange(1, 101) / 100.0));
    const double hectares_walked = *rc::gen::inRange(1, 5000) / 100.0;
    request.area = Reading<Kind::net_area>(NetArea::of(hectares_walked, hectares));
    Notes notes;
    const StemsAnswer answer = answered(request, notes);
    const double dose_kg = answer.doses[0].acid->si();
    const double room = 1.0 + 1e-9;
    RC_ASSERT(*answer.cuts_per_acre * dose_kg <= ceiling_kg_per_m2 * acres.si * room);
    RC_ASSERT(*answer.cuts_per_hectare * dose_kg <= ceiling_kg_per_m2 * 10000.0 * room);
    RC_ASSERT(*answer.cuts_on_area * dose_kg <=
              ceiling_kg_per_m2 * request.area->value.si() * room);
    RC_PRE(*answer.cuts_on_area < 2'000'000'000);
    RC_ASSERT((*answer.cuts_on_area + 1) * dose_kg * room >
              ceiling_kg_per_m2 * request.area->value.si());
}

RC_GTEST_PROP(Stems, ADoseThatGrowsNeverAllowsMoreCuts, ()) {
    StemsRequest request = hack_and_squirt();
    request.dose.value = VolumeEach::from_si(*rc::gen::inRange(1, 2000) * 1e-8);
    Notes notes;
    const int before = *answered(request, notes).cuts_per_acre;
    request.dose.value = request.dose.value * 1.1;
    RC_ASSERT(*answered(request, notes).cuts_per_acre <= before);
    request.products[0].applied_this_year = rate("0.02 lb a.e./ac");
    RC_ASSERT(*answered(request, notes).cuts_per_acre <= before);
}

TEST(Stems, TakesTheStrictestOfSeveralProductsAndLimits) {
    StemsRequest request = hack_and_squirt();
    request.products[0].share = read<Kind::percent_by_volume>("50 % v/v");
    StemProduct second = request.products[0];
    second.card = liquid_card("Second", "480 g a.e./L");
    second.share = read<Kind::percent_by_volume>("10 % v/v");
    second.ceiling.reset();
    second.card.limits.max_single_rate = RateLimit{rate("0.02 lb a.e./ac"), "page 2"};
    second.card.limits.max_yearly_rate = RateLimit{rate("0.01 lb a.e./ac"), "page 3"};
    request.products.push_back(second);
    Notes notes;
    const StemsAnswer answer = answered(request, notes);
    ASSERT_EQ(answer.ceilings.size(), 3U);
    EXPECT_FALSE(answer.ceilings[0].governs);
    EXPECT_FALSE(answer.ceilings[1].governs);
    EXPECT_TRUE(answer.ceilings[2].governs);
    EXPECT_EQ(answer.ceilings[2].where, "page 3");
    EXPECT_EQ(*answer.cuts_per_acre, answer.ceilings[2].per_acre);
}

TEST(Stems, WarnsWhenEarlierUseOrTheCeilingWasNotEntered) {
    StemsRequest request = hack_and_squirt();
    request.products[0].applied_this_year.reset();
    Notes earlier;
    answered(request, earlier);
    EXPECT_TRUE(has_finding(earlier, "earlier_use_not_entered"));
    request.products[0].ceiling.reset();
    Notes none;
    const StemsAnswer answer = answered(request, none);
    EXPECT_TRUE(has_finding(none, "ceiling_not_entered"));
    EXPECT_FALSE(answer.cuts_per_acre);
}

TEST(Stems, StopsWhenThePlanGoesOverTheCeiling) {
    StemsRequest request = hack_and_squirt();
    request.area = net("1 ac");
    request.stems = 500;
    Notes notes;
    const StemsAnswer answer = answered(request, notes);
    EXPECT_EQ(answer.cuts_planned, 500);
    EXPECT_TRUE(has_finding(notes, "plan_over_ceiling"));
    EXPECT_NEAR(answer.liquid->in(millilitres), 250.0, 1e-9);
}

TEST(Stems, RefusesWhatCannotBe) {
    EXPECT_EQ(refused({}).field, "products");
    StemsRequest request = hack_and_squirt();
    request.dose.value = VolumeEach::of(0.0, millilitres_each);
    EXPECT_EQ(refused(request).field, "dose");
    request = hack_and_squirt();
    request.products.push_back(request.products[0]);
    EXPECT_EQ(refused(request).code, ErrorCode::inconsistent);  // twice undiluted
    request = hack_and_squirt();
    request.products[0].share = read<Kind::percent_by_volume>("0 % v/v");
    EXPECT_EQ(refused(request).field, "products[0].share");
    request = hack_and_squirt();
    request.products[0].card.form = Form::dry;
    EXPECT_EQ(refused(request).code, ErrorCode::inconsistent);
    request = hack_and_squirt();
    request.cuts_made = -1;
    EXPECT_EQ(refused(request).field, "cuts_made");
    request = hack_and_squirt();
    request.cuts_per_inch = 1.0;
    request.cuts_per_stem = 1.0;
    EXPECT_EQ(refused(request).field, "cuts_per_stem");
    request = hack_and_squirt();
    request.stems_by_size = {{read<Kind::length>("4 in"), 10}};
    EXPECT_EQ(refused(request).field, "cuts_per_inch");
    request.cuts_per_inch = 1.0;
    request.stems = 10;
    EXPECT_EQ(refused(request).field, "stems");
    request.stems.reset();
    request.stems_by_size[0].stems = -1;
    EXPECT_EQ(refused(request).field, "stems_by_size[0]");
    request = hack_and_squirt();
    request.area = net("1 ac");
    request.area_done = net("2 ac");
    EXPECT_EQ(refused(request).field, "area_done");
    request.area = net("0 ac");
    EXPECT_EQ(refused(request).field, "area");
}

}  // namespace
}  // namespace swathbook::mix
