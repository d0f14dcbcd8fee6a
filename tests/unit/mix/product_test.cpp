#include "core/mix/product.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

ProductCard card() {
    ProductCard made;
    made.name = "Example brush killer";
    made.registration = "000-00";
    made.ingredients = {Ingredient{"example acid"}};
    return made;
}

TEST(RegistrationNumber, TakesTwoAndThreeGroupsOfDigits) {
    EXPECT_EQ(*registration_number("000-61", ""), "000-61");
    EXPECT_EQ(*registration_number("000-61-000123", ""), "000-61-000123");
}

TEST(RegistrationNumber, TakesTheWordsThatStandBeforeItOnALabel) {
    EXPECT_EQ(*registration_number("EPA Reg. No. 000-61", ""), "000-61");
    EXPECT_EQ(*registration_number("  EPA Registration No.: 000-61-9 ", ""), "000-61-9");
}

TEST(RegistrationNumber, RefusesOtherFormsAndSaysWhatToDo) {
    for (const char* text : {"12345", "12-", "-12", "1-2-3-4", "12-ab", "1234567-1", "12--3",
                             "EPA Est. No. 000-XX-1", "lot 000-61", "12 - 3"}) {
        const auto number = registration_number(text, "", "products[0].registration");
        ASSERT_FALSE(number) << text;
        EXPECT_EQ(number.error().code, ErrorCode::invalid_input);
        EXPECT_EQ(number.error().field, "products[0].registration");
        EXPECT_NE(number.error().detail.find("registered_with"), std::string::npos);
    }
}

TEST(RegistrationNumber, TakesOtherTextOnlyWhenAnotherAuthorityIsNamed) {
    EXPECT_FALSE(registration_number("ABC/2020/7", ""));
    EXPECT_EQ(*registration_number("ABC/2020/7", "an example ministry"), "ABC/2020/7");
    EXPECT_FALSE(registration_number(std::string(61, 'x'), "an example ministry"));
    EXPECT_FALSE(registration_number("a\nb", "an example ministry"));
}

TEST(RegistrationNumber, LeavesAnAbsentNumberAbsent) {
    EXPECT_EQ(*registration_number("", ""), "");
    EXPECT_EQ(*registration_number("   ", ""), "");
}

TEST(CheckCard, AcceptsACardWithNothingButAName) {
    ProductCard bare;
    bare.name = "Dye";
    EXPECT_TRUE(check_card(bare));
}

TEST(CheckCard, RefusesACardWithoutAName) {
    ProductCard bare;
    bare.name = "  ";
    const auto checked = check_card(bare, "products[2]");
    ASSERT_FALSE(checked);
    EXPECT_EQ(checked.error().field, "products[2].name");
}

TEST(CheckCard, RefusesImpossibleNumbersNamingTheMember) {
    for (const double bad : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity(), 1e9}) {
        ProductCard wrong = card();
        wrong.ingredients[0].acid_strength = AcidStrength::from_si(bad);
        const auto checked = check_card(wrong);
        ASSERT_FALSE(checked) << bad;
        EXPECT_EQ(checked.error().code, ErrorCode::out_of_range);
        EXPECT_EQ(checked.error().field, "product.ingredients[0].acid_strength");
    }
    ProductCard wrong = card();
    wrong.ingredients[0].part = PercentByWeight::of(120, percents);
    EXPECT_EQ(check_card(wrong).error().field, "product.ingredients[0].part");
    wrong = card();
    wrong.limits.haying = DurationLimit{Duration::of(-7, days), "page 2"};
    EXPECT_EQ(check_card(wrong).error().field, "product.limits.haying");
}

TEST(CheckCard, RefusesMoreAcidThanSalt) {
    ProductCard wrong = card();
    wrong.ingredients[0].strength = IngredientStrength::of(3, pounds_per_us_gallon);
    wrong.ingredients[0].acid_strength = AcidStrength::of(4, pounds_per_us_gallon);
    EXPECT_EQ(check_card(wrong).error().code, ErrorCode::inconsistent);
}

TEST(CheckCard, RefusesALeastAboveItsMost) {
    ProductCard wrong = card();
    wrong.limits.min_wind = SpeedLimit{Speed::of(12, miles_per_hour), ""};
    wrong.limits.max_wind = SpeedLimit{Speed::of(10, miles_per_hour), ""};
    const auto checked = check_card(wrong);
    ASSERT_FALSE(checked);
    EXPECT_EQ(checked.error().code, ErrorCode::inconsistent);
    EXPECT_EQ(checked.error().field, "product.limits.min_wind");
}

TEST(CheckCard, TakesNoWaitWhenItIsEnteredAsZero) {
    ProductCard right = card();
    right.limits.grazing = DurationLimit{Duration::of(0, days), "page 2"};
    EXPECT_TRUE(check_card(right));
    right.limits.reentry = ReentryLimit{std::nullopt, true, "page 1"};
    EXPECT_TRUE(check_card(right));
    right.limits.reentry = ReentryLimit{};
    EXPECT_FALSE(check_card(right));
}

TEST(NotEntered, ListsEveryLimitOfAnEmptyCardAndDropsWhatWasTyped) {
    LabelLimits limits;
    const auto all = not_entered(limits);
    EXPECT_EQ(all.size(), 24U);
    limits.grazing = DurationLimit{Duration::of(0, days), ""};
    const auto rest = not_entered(limits);
    EXPECT_EQ(rest.size(), 23U);
    EXPECT_EQ(std::count(rest.begin(), rest.end(), "grazing"), 0);
    EXPECT_EQ(std::count(rest.begin(), rest.end(), "haying"), 1);
}

}  // namespace
}  // namespace swathbook::mix
