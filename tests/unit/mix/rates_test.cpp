#include "core/mix/rates.hpp"

#include <cmath>
#include <limits>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

double per_area(const LabelRate& label_rate, const ProductCard& card) {
    const auto made = product_rate(label_rate, card, {});
    EXPECT_TRUE(made) << (made ? "" : made.error().detail);
    EXPECT_EQ(made->per, Per::area);
    return made->si;
}

double per_mix(const LabelRate& label_rate, const ProductCard& card,
               const RateReading& reading = {}) {
    const auto made = product_rate(label_rate, card, reading);
    EXPECT_TRUE(made) << (made ? "" : made.error().detail);
    EXPECT_EQ(made->per, Per::mix);
    return made->si;
}

TEST(ProductRate, TurnsAcidEquivalentIntoLiquid) {
    // 128 / (lb a.e. per gal): Iowa State University Extension, Glyphosate math
    EXPECT_NEAR(per_area(rate("1 lb a.e./ac"), liquid_card("L", "4.5 lb a.e./gal")) /
                    us_fluid_ounces_per_acre.si,
                28.4, 0.05);
    EXPECT_NEAR(per_area(rate("1 lb a.e./ac"), liquid_card("L", "4 lb a.e./gal")) /
                    us_fluid_ounces_per_acre.si,
                32.0, 1e-9);
}

TEST(ProductRate, TurnsActiveIngredientIntoDryProduct) {
    // University of Minnesota Extension: 3 lb a.i. of an 80 % powder is 3.75 lb
    EXPECT_NEAR(per_area(rate("3 lb a.i./ac"), dry_card("D", "80 % w/w")) / pounds_per_acre.si,
                3.75, 1e-12);
}

TEST(ProductRate, UsesDensityWithAShareByWeight) {
    ProductCard card = liquid_card("L");
    card.ingredients[0] = Ingredient{"acid", {}, {}, read<Kind::percent_by_weight>("41 % w/w"), {}};
    const auto refused = product_rate(rate("4 lb a.i./ac"), card, {}, "rate");
    ASSERT_FALSE(refused);
    EXPECT_NE(refused.error().detail.find("density"), std::string::npos);
    card.density = read<Kind::density>("9.76 lb/gal");
    EXPECT_NEAR(per_area(rate("4 lb a.i./ac"), card) / us_gallons_per_acre.si, 4.0 / (0.41 * 9.76),
                1e-9);
}

TEST(ProductRate, TakesAShareByWeightOfTheMix) {
    ProductCard powder = dry_card("D");
    EXPECT_NEAR(per_mix(rate("2 % w/w"), powder), 0.02 * water_kg_per_m3, 1e-9);
    EXPECT_NEAR(per_mix(rate("2 % w/w"), powder,
                        {RateCounts::product, {}, Density::of(1.2, kilograms_per_litre)}),
                24.0, 1e-9);
    ProductCard liquid = liquid_card("L");
    EXPECT_FALSE(product_rate(rate("2 % w/w"), liquid, {}));  // its density is needed
    liquid.density = read<Kind::density>("1.1 kg/L");
    EXPECT_NEAR(per_mix(rate("2 % w/w"), liquid), 0.02 * water_kg_per_m3 / 1100, 1e-12);
}

TEST(ProductRate, CountsTheSubstanceThatWasSaid) {
    const ProductCard card = liquid_card("L", "4 lb a.e./gal");
    const double by_acid = per_mix(rate("1 lb/100 gal"), card, {RateCounts::acid, {}, {}});
    EXPECT_NEAR(by_acid, 0.0025, 1e-15);
    EXPECT_FALSE(product_rate(rate("1 lb/100 gal"), card, {RateCounts::ingredient, {}, {}}));
    EXPECT_EQ(product_rate(rate("1 lb a.i./ac"), card, {RateCounts::acid, {}, {}}).error().code,
              ErrorCode::inconsistent);
    EXPECT_EQ(product_rate(rate("1 qt/ac"), card, {RateCounts::acid, {}, {}}).error().code,
              ErrorCode::inconsistent);
}

TEST(ProductRate, RefusesAVolumeOfADryProductAndAWeightOfALiquid) {
    EXPECT_EQ(product_rate(rate("1 qt/ac"), dry_card("D"), {}).error().code,
              ErrorCode::inconsistent);
    EXPECT_EQ(product_rate(rate("1 lb/ac"), liquid_card("L"), {}).error().code,
              ErrorCode::invalid_input);
    ProductCard bulk = dry_card("D");
    bulk.density = read<Kind::density>("0.5 kg/L");
    EXPECT_NEAR(per_area(LabelRate{1e-7, RateBasis::volume_per_area, 0, ""}, bulk), 5e-5, 1e-18);
}

TEST(ProductRate, RefusesNumbersThatCannotBe) {
    const ProductCard card = liquid_card("L");
    for (const double bad : {-1.0, std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity()}) {
        const auto made =
            product_rate(LabelRate{bad, RateBasis::volume_per_area, 0, ""}, card, {}, "r");
        ASSERT_FALSE(made);
        EXPECT_EQ(made.error().field, "r");
        EXPECT_EQ(made.error().code, ErrorCode::out_of_range);
    }
    EXPECT_FALSE(product_rate(LabelRate{1.5, RateBasis::percent_by_volume, 0, ""}, card, {}));
}

TEST(IngredientOf, AsksWhichWhenThereAreSeveral) {
    ProductCard card = liquid_card("L");
    EXPECT_TRUE(ingredient_of(card, "", "f"));
    EXPECT_TRUE(ingredient_of(card, "EXAMPLE ACID", "f"));
    EXPECT_EQ(ingredient_of(card, "other", "f").error().code, ErrorCode::not_found);
    card.ingredients.push_back(Ingredient{"second", {}, {}, {}, {}});
    const auto asked = ingredient_of(card, "", "f");
    ASSERT_FALSE(asked);
    EXPECT_NE(asked.error().detail.find("example acid, second"), std::string::npos);
    card.ingredients.clear();
    EXPECT_EQ(ingredient_of(card, "", "f").error().code, ErrorCode::invalid_input);
}

TEST(HandyText, SpeaksAsPeoplePour) {
    const auto liquid_text = [](double ounces, UnitSystem units) {
        return handy_text(ounces * us_fluid_ounces.si, Form::liquid, units);
    };
    EXPECT_EQ(liquid_text(0.375, UnitSystem::us), "11.09 mL");
    EXPECT_EQ(liquid_text(40, UnitSystem::us), "40 fl oz");
    EXPECT_EQ(liquid_text(154, UnitSystem::us), "1 gal 26 fl oz");
    EXPECT_EQ(liquid_text(256, UnitSystem::us), "2 gal");
    EXPECT_EQ(liquid_text(255.99999, UnitSystem::us), "2 gal");
    EXPECT_EQ(liquid_text(40, UnitSystem::metric), "1.183 L");
    EXPECT_EQ(handy_text(4.25 * pounds.si, Form::dry, UnitSystem::us), "4.25 lb");
    EXPECT_EQ(handy_text(0.4 * pounds.si, Form::dry, UnitSystem::us), "6.4 oz wt");
    EXPECT_EQ(handy_text(0.0045, Form::dry, UnitSystem::us), "4.5 g");
    EXPECT_EQ(handy_text(1.5, Form::dry, UnitSystem::metric), "1.5 kg");
}

TEST(AmountOf, GivesTheOtherMeasureWhereTheDensityIsKnown) {
    ProductCard card = liquid_card("L");
    EXPECT_FALSE(amount_of(0.001, card, UnitSystem::us).mass);
    card.density = read<Kind::density>("1.2 kg/L");
    EXPECT_NEAR(amount_of(0.001, card, UnitSystem::us).mass->in(kilograms), 1.2, 1e-12);
    EXPECT_FALSE(amount_of(1.0, dry_card("D"), UnitSystem::us).volume);
}

}  // namespace
}  // namespace swathbook::mix
