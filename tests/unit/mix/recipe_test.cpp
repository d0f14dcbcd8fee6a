#include "core/mix/recipe.hpp"

#include <cmath>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

MixBasis at(std::string_view per_area) {
    MixBasis basis;
    basis.mix_per_treated_area = mix_rate(per_area).value;
    return basis;
}

TEST(ContentsOf, PutsARatePerAreaIntoTheMixThatCarriesIt) {
    const auto contents = contents_of(std::vector{liquid("L", "1 qt/ac")}, at("20 gal/ac"));
    ASSERT_TRUE(contents);
    EXPECT_NEAR(contents->products[0].per_mix, 0.25 / 20, 1e-15);
    EXPECT_TRUE(contents->products[0].is_per_area);
    EXPECT_NEAR(contents->carrier_share, 1 - 0.25 / 20, 1e-15);
}

TEST(ContentsOf, SolvesSharesOfTheCarrierTogether) {
    // 10 % of the carrier each, beside 20 % of the mix: w = 0.8 / 1.2
    std::vector<TankProduct> products{liquid("A", "10 % v/v"), liquid("B", "10 % v/v"),
                                      liquid("C", "20 % v/v")};
    products[0].share_of = products[1].share_of = MixShare::carrier;
    const auto contents = contents_of(products, MixBasis{});
    ASSERT_TRUE(contents);
    const double carrier = 0.8 / 1.2;
    EXPECT_NEAR(contents->carrier_share, carrier, 1e-15);
    EXPECT_NEAR(contents->products[0].per_mix, 0.1 * carrier, 1e-15);
    EXPECT_NEAR(contents->products[2].per_mix, 0.2, 1e-15);
    double whole = contents->carrier_share;
    for (const Dissolved& dissolved : contents->products) {
        whole += dissolved.per_mix;
    }
    EXPECT_NEAR(whole, 1.0, 1e-15);
}

TEST(ContentsOf, GivesTheAreaRateOfAShareWhenTheMixPerAreaIsKnown) {
    const auto contents = contents_of(std::vector{liquid("L", "2 % v/v")}, at("60 gal/ac"));
    ASSERT_TRUE(contents);
    EXPECT_NEAR(*contents->products[0].per_treated / us_gallons_per_acre.si, 1.2, 1e-12);
    const auto unknown = contents_of(std::vector{liquid("L", "2 % v/v")}, MixBasis{});
    EXPECT_FALSE(unknown->products[0].per_treated);
}

TEST(ContentsOf, NeedsTheMixPerAreaForARatePerArea) {
    const auto contents = contents_of(std::vector{liquid("L", "1 qt/ac")}, MixBasis{});
    ASSERT_FALSE(contents);
    EXPECT_EQ(contents.error().field, "mix_per_area");
}

TEST(ContentsOf, PutsABroadcastRateOnTheBandsOnly) {
    // University of Minnesota Extension: 3 lb, 10-inch band on 30-inch rows: 1 lb per field acre
    std::vector<TankProduct> products{product(dry_card("D"), "3 lb/ac")};
    products[0].counts = Counts::treated;
    MixBasis basis = at("10 gal/ac");
    basis.band_share = 1.0 / 3.0;
    const auto contents = contents_of(products, basis);
    ASSERT_TRUE(contents);
    const double per_field = *contents->products[0].per_treated * basis.band_share;
    EXPECT_NEAR(per_field / pounds_per_acre.si, 1.0, 1e-12);
}

TEST(ContentsOf, RefusesProductsThatLeaveNoRoomForCarrier) {
    const auto contents =
        contents_of(std::vector{liquid("A", "60 % v/v"), liquid("B", "40 % v/v")}, MixBasis{});
    ASSERT_FALSE(contents);
    EXPECT_EQ(contents.error().code, ErrorCode::out_of_range);
}

TEST(ContentsOf, RefusesNoneTooManyAndTheSameTwice) {
    EXPECT_FALSE(contents_of({}, MixBasis{}));
    std::vector<TankProduct> many;
    for (int i = 0; i < 21; ++i) {
        many.push_back(liquid("P" + std::to_string(i), "0.1 % v/v"));
    }
    EXPECT_FALSE(contents_of(many, MixBasis{}));
    many.resize(20);
    EXPECT_TRUE(contents_of(many, MixBasis{}));
    many[1].card.name = many[0].card.name;
    EXPECT_EQ(contents_of(many, MixBasis{}, "p").error().field, "p[1]");
}

TEST(DeliveryOf, KeepsWhatWasNotEnteredAbsent) {
    const TankProduct asked = liquid("L", "1 qt/ac");
    const MixBasis basis = at("20 gal/ac");
    const auto contents = contents_of(std::vector{asked}, basis);
    const auto delivery = delivery_of(asked, contents->products[0], basis, "");
    ASSERT_TRUE(delivery);
    EXPECT_FALSE(delivery->earlier_area_si);
    EXPECT_FALSE(delivery->earlier_applications);
    TankProduct entered = asked;
    entered.applied_this_year = rate("0.75 lb a.e./ac");
    entered.applications_this_year = 1;
    const auto known = delivery_of(entered, contents->products[0], basis, "");
    ASSERT_TRUE(known);
    EXPECT_NEAR(*known->earlier_area_si / us_gallons_per_acre.si, 0.25, 1e-12);
    EXPECT_EQ(*known->earlier_applications, 1);
}

}  // namespace
}  // namespace swathbook::mix
