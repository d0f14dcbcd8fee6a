#include "core/mix/substitute.hpp"

#include <rapidcheck.h>

#include <cmath>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

SubstituteRequest request(std::string_view planned = "3 lb a.e./gal",
                          std::string_view in_hand = "4 lb a.e./gal") {
    SubstituteRequest made;
    made.planned = liquid_card("Planned", planned);
    made.in_hand = liquid_card("In hand", in_hand);
    made.rate = rate("2 qt/ac");
    return made;
}

TEST(Substitute, KeepsTheAcidEquivalent) {
    Notes notes;
    const auto answer = substitute(request(), notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_EQ(answer->matched, DoseSubstance::acid);
    EXPECT_NEAR(answer->acid_per_area->in(pounds_per_acre), 1.5, 1e-12);
    EXPECT_NEAR(answer->rate.si / us_fluid_ounces_per_acre.si, 48.0, 1e-9);
    EXPECT_EQ(answer->text, "48 fl oz/ac");
    EXPECT_EQ(answer->rate.basis, RateBasis::volume_per_area);
}

TEST(Substitute, ChecksTheLimitsOfTheNewLabel) {
    SubstituteRequest wanted = request();
    wanted.in_hand.limits.max_single_rate = RateLimit{rate("44 fl oz/ac"), "page 6"};
    Notes notes;
    const auto answer = substitute(wanted, notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->limits[1].status, LimitStatus::above);
    EXPECT_TRUE(has_finding(notes, "above_label_limit"));
    EXPECT_TRUE(has_finding(notes, "limits_not_entered"));
}

TEST(Substitute, NeverCrossesSaltAndAcid) {
    SubstituteRequest wanted = request();
    wanted.in_hand.ingredients[0].acid_strength.reset();
    wanted.in_hand.ingredients[0].strength = read<Kind::ingredient_strength>("4 lb a.i./gal");
    Notes notes;
    const auto answer = substitute(wanted, notes);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().code, ErrorCode::invalid_input);
    EXPECT_EQ(answer.error().field, "in_hand.ingredients");
    EXPECT_NE(answer.error().detail.find("a.e."), std::string::npos);
}

TEST(Substitute, MatchesActiveIngredientOnlyWithAWarning) {
    SubstituteRequest wanted = request();
    for (ProductCard* card : {&wanted.planned, &wanted.in_hand}) {
        card->ingredients[0].acid_strength.reset();
    }
    wanted.planned.ingredients[0].strength = read<Kind::ingredient_strength>("2 lb a.i./gal");
    wanted.in_hand.ingredients[0].strength = read<Kind::ingredient_strength>("4 lb a.i./gal");
    Notes notes;
    const auto answer = substitute(wanted, notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->text, "32 fl oz/ac");
    EXPECT_FALSE(answer->acid_per_area);
    EXPECT_NEAR(answer->ingredient_per_area->in(pounds_per_acre), 1.0, 1e-12);
    EXPECT_TRUE(has_finding(notes, "same_form_assumed"));
}

TEST(Substitute, RefusesAnotherIngredient) {
    SubstituteRequest wanted = request();
    wanted.in_hand.ingredients[0].name = "other acid";
    Notes notes;
    EXPECT_EQ(substitute(wanted, notes).error().code, ErrorCode::inconsistent);
}

TEST(Substitute, TurnsALiquidRateIntoADryOne) {
    SubstituteRequest wanted = request("2 lb a.e./gal");
    wanted.rate = rate("1 qt/ac");  // 0.5 lb a.e./ac
    wanted.in_hand = dry_card("Dry");
    wanted.in_hand.ingredients[0].name = "EXAMPLE ACID";
    wanted.in_hand.ingredients[0].acid_part = read<Kind::percent_by_weight>("50 % w/w");
    Notes notes;
    const auto answer = substitute(wanted, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_EQ(answer->rate.basis, RateBasis::mass_per_area);
    EXPECT_NEAR(answer->rate.si / pounds_per_acre.si, 1.0, 1e-12);
    EXPECT_TRUE(has_finding(notes, "formulation_changes"));
}

TEST(Substitute, KeepsAPercentSolutionAPercentSolution) {
    SubstituteRequest wanted = request();
    wanted.rate = rate("2 % v/v");
    wanted.mix_per_area = mix_rate("60 gal/ac");
    Notes notes;
    const auto answer = substitute(wanted, notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->rate.basis, RateBasis::percent_by_volume);
    EXPECT_NEAR(answer->rate.si, 0.015, 1e-15);
    EXPECT_NEAR(answer->acid_per_area->in(pounds_per_acre), 60 * 0.02 * 3, 1e-9);
}

TEST(Substitute, SaysWhichOtherIngredientsAreLostOrAdded) {
    SubstituteRequest wanted = request();
    wanted.ingredient = "example acid";
    wanted.in_hand.ingredients.push_back(Ingredient{"second acid", {}, {}, {}, {}});
    Notes notes;
    ASSERT_TRUE(substitute(wanted, notes));
    EXPECT_TRUE(has_finding(notes, "ingredient_added"));
    std::swap(wanted.planned, wanted.in_hand);
    Notes other;
    ASSERT_TRUE(substitute(wanted, other));
    EXPECT_TRUE(has_finding(other, "ingredient_lost"));
}

TEST(Substitute, NeedsTheIngredientNamedWhenThereAreSeveral) {
    SubstituteRequest wanted = request();
    wanted.planned.ingredients.push_back(Ingredient{"second acid", {}, {}, {}, {}});
    Notes notes;
    const auto answer = substitute(wanted, notes);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().field, "planned.ingredients");
}

TEST(Substitute, RefusesAnImpossibleMixPerArea) {
    SubstituteRequest wanted = request();
    wanted.mix_per_area = MixPerArea::from_si(0.0);
    Notes notes;
    EXPECT_EQ(substitute(wanted, notes).error().field, "mix_per_area");
}

TEST(Substitute, ThereAndBackGivesTheFirstRate) {
    EXPECT_TRUE(rc::check([](unsigned a, unsigned b, unsigned c) {
        SubstituteRequest there = request();
        there.planned.ingredients[0].acid_strength = AcidStrength::from_si(1.0 + a % 700);
        there.in_hand.ingredients[0].acid_strength = AcidStrength::from_si(1.0 + b % 700);
        there.rate = LabelRate{(1.0 + c % 1000) * 1e-8, RateBasis::volume_per_area, 0.0, ""};
        Notes notes;
        const auto first = substitute(there, notes);
        RC_ASSERT(first.has_value());
        SubstituteRequest back = there;
        std::swap(back.planned, back.in_hand);
        back.rate = first->rate;
        const auto second = substitute(back, notes);
        RC_ASSERT(second.has_value());
        RC_ASSERT(std::abs(second->rate.si / there.rate.si - 1.0) < 1e-14);
        there.in_hand = there.planned;
        RC_ASSERT(substitute(there, notes)->rate.si == there.rate.si);
    }));
}

}  // namespace
}  // namespace swathbook::mix
