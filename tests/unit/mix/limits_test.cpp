#include "core/mix/limits.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <array>

#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

constexpr double per_acre = us_fluid_ounces_per_acre.si;

ProductCard liquid(std::string name = "Example liquid") {
    ProductCard card;
    card.name = std::move(name);
    card.registration = "000-00";
    card.ingredients = {
        Ingredient{"example acid", std::nullopt,
                   Reading<Kind::acid_strength>(AcidStrength::of(3, pounds_per_us_gallon)),
                   std::nullopt, std::nullopt}};
    return card;
}

RateLimit rate_limit(double fluid_ounces_an_acre) {
    return {LabelRate{fluid_ounces_an_acre * per_acre, RateBasis::volume_per_area, 0.0, ""},
            "page 3"};
}

LimitStatus status_of(const std::vector<LimitCheck>& checks, std::string_view word) {
    const auto found = std::find_if(checks.begin(), checks.end(),
                                    [&](const LimitCheck& check) { return check.limit == word; });
    EXPECT_NE(found, checks.end()) << word;
    return found->status;
}

TEST(CheckLimits, SaysNotEnteredForEveryAbsentLimit) {
    const auto checks = check_limits(liquid(), Delivery{64 * per_acre}, {}, UnitSystem::us);
    ASSERT_EQ(checks.size(), 8U);
    for (const LimitCheck& check : checks) {
        EXPECT_EQ(check.status, LimitStatus::not_entered) << check.limit;
        EXPECT_FALSE(check.why.empty());
    }
}

TEST(CheckLimits, TakesARateExactlyAtTheLimitAsWithin) {
    ProductCard card = liquid();
    card.limits.max_single_rate = rate_limit(64);
    EXPECT_EQ(status_of(check_limits(card, Delivery{64 * per_acre}, {}, UnitSystem::us),
                        "max_single_rate"),
              LimitStatus::within);
    EXPECT_EQ(status_of(check_limits(card, Delivery{64.01 * per_acre}, {}, UnitSystem::us),
                        "max_single_rate"),
              LimitStatus::above);
}

TEST(CheckLimits, ComparesOnTheBasisTheLabelUses) {
    ProductCard card = liquid();  // 2 qt/ac of 3 lb a.e./gal is 1.5 lb a.e./ac
    card.limits.max_single_rate =
        RateLimit{LabelRate{1.4 * pounds_per_acre.si, RateBasis::acid_per_area, 0.0, ""}, ""};
    const auto checks = check_limits(card, Delivery{64 * per_acre}, {}, UnitSystem::us);
    EXPECT_EQ(status_of(checks, "max_single_rate"), LimitStatus::above);
    EXPECT_NEAR(*checks[1].share, 1.5 / 1.4, 1e-12);
    EXPECT_EQ(checks[1].delivered, "1.5 lb a.e./ac");
}

TEST(CheckLimits, CannotTellWhenTheCardLacksTheStrengthTheLimitCounts) {
    ProductCard card = liquid();
    card.limits.max_single_rate =
        RateLimit{LabelRate{1.4 * pounds_per_acre.si, RateBasis::ingredient_per_area, 0.0, ""}, ""};
    const auto checks = check_limits(card, Delivery{64 * per_acre}, {}, UnitSystem::us);
    EXPECT_EQ(status_of(checks, "max_single_rate"), LimitStatus::cannot_tell);
    EXPECT_NE(checks[1].why.find("a.i."), std::string::npos);
}

TEST(CheckLimits, CannotTellAnAreaLimitWithoutAnArea) {
    ProductCard card = liquid();
    card.limits.max_single_rate = rate_limit(64);
    card.limits.min_carrier = CarrierLimit{MixPerArea::of(5, us_gallons_per_acre), ""};
    Delivery spot;
    spot.per_mix_si = 0.02;
    const auto checks = check_limits(card, spot, {}, UnitSystem::us);
    EXPECT_EQ(status_of(checks, "max_single_rate"), LimitStatus::cannot_tell);
    EXPECT_EQ(status_of(checks, "min_carrier"), LimitStatus::cannot_tell);
}

TEST(CheckLimits, ComparesCarrierPercentAndCount) {
    ProductCard card = liquid();
    card.limits.min_carrier = CarrierLimit{MixPerArea::of(15, us_gallons_per_acre), ""};
    card.limits.max_carrier = CarrierLimit{MixPerArea::of(40, us_gallons_per_acre), ""};
    card.limits.min_percent = PercentLimit{PercentByVolume::of(0.5, percents), ""};
    card.limits.max_percent = PercentLimit{PercentByVolume::of(2, percents), ""};
    card.limits.max_applications = CountLimit{2, ""};
    Delivery delivery;
    delivery.mix_per_area_si = 10 * us_gallons_per_acre.si;
    delivery.per_mix_si = 0.03;
    delivery.earlier_applications = 2;
    auto checks = check_limits(card, delivery, {}, UnitSystem::us);
    EXPECT_EQ(status_of(checks, "min_carrier"), LimitStatus::below);
    EXPECT_EQ(status_of(checks, "max_carrier"), LimitStatus::within);
    EXPECT_EQ(status_of(checks, "min_percent"), LimitStatus::within);
    EXPECT_EQ(status_of(checks, "max_percent"), LimitStatus::above);
    EXPECT_EQ(status_of(checks, "max_applications"), LimitStatus::above);
    delivery.earlier_applications.reset();
    checks = check_limits(card, delivery, {}, UnitSystem::us);
    EXPECT_EQ(status_of(checks, "max_applications"), LimitStatus::cannot_tell);
}

TEST(CheckYearlyCap, AddsWhatWasAppliedEarlier) {
    ProductCard card = liquid();
    card.limits.max_yearly_rate = rate_limit(128);
    Delivery delivery{64 * per_acre};
    delivery.earlier_area_si = 64 * per_acre;
    EXPECT_EQ(check_yearly_cap(card, delivery, {}, UnitSystem::us).status, LimitStatus::within);
    delivery.earlier_area_si = 70 * per_acre;
    const LimitCheck over = check_yearly_cap(card, delivery, {}, UnitSystem::us);
    EXPECT_EQ(over.status, LimitStatus::above);
    EXPECT_EQ(over.delivered, "134 fl oz/ac");
}

TEST(CheckYearlyCap, DoesNotTakeAnUntypedHistoryForNone) {
    ProductCard card = liquid();
    card.limits.max_yearly_rate = rate_limit(128);
    EXPECT_EQ(check_yearly_cap(card, Delivery{64 * per_acre}, {}, UnitSystem::us).status,
              LimitStatus::cannot_tell);
    EXPECT_EQ(check_yearly_cap(card, Delivery{200 * per_acre}, {}, UnitSystem::us).status,
              LimitStatus::above);
}

TEST(ReportChecks, StopsOnlyForWhatIsAboveALimit) {
    ProductCard card = liquid();
    card.limits.max_single_rate = rate_limit(60);
    card.limits.min_single_rate = rate_limit(70);
    card.limits.max_yearly_rate = rate_limit(128);
    Notes notes;
    report_checks(card, check_limits(card, Delivery{64 * per_acre}, {}, UnitSystem::us), notes);
    ASSERT_EQ(notes.findings().size(), 3U);
    EXPECT_EQ(notes.findings()[0].code, "below_label_limit");
    EXPECT_EQ(notes.findings()[1].severity, Severity::stop);
    EXPECT_EQ(notes.findings()[1].source, "label, page 3");
    EXPECT_EQ(notes.findings()[2].code, "limit_not_checked");
}

TEST(StrictestOf, TakesTheLongestWaitAndTheNarrowestWindow) {
    ProductCard a = liquid("A");
    ProductCard b = liquid("B");
    a.limits.grazing = DurationLimit{Duration::of(7, days), "p. 2"};
    b.limits.grazing = DurationLimit{Duration::of(14, days), "p. 9"};
    a.limits.max_wind = SpeedLimit{Speed::of(10, miles_per_hour), ""};
    b.limits.max_wind = SpeedLimit{Speed::of(15, miles_per_hour), ""};
    b.limits.finest_droplets = DropletLimit{DropletLimitClass::coarse, ""};
    a.limits.finest_droplets = DropletLimit{DropletLimitClass::medium, ""};
    const std::array<const ProductCard*, 2> cards{&a, &b};
    const StrictestLimits limits = strictest_of(cards);
    EXPECT_EQ(*limits.grazing.value, Duration::of(14, days));
    EXPECT_EQ(limits.grazing.product, "B");
    EXPECT_EQ(limits.grazing.where, "p. 9");
    EXPECT_EQ(limits.max_wind.product, "A");
    EXPECT_EQ(*limits.finest_droplets.value, DropletLimitClass::coarse);
    EXPECT_FALSE(limits.haying.value);
    EXPECT_EQ(limits.haying.not_entered_by, (std::vector<std::string>{"A", "B"}));
}

TEST(StrictestOf, JoinsReentryTimesWithUntilDry) {
    ProductCard a = liquid("A");
    ProductCard b = liquid("B");
    a.limits.reentry = ReentryLimit{std::nullopt, true, "p. 1"};
    b.limits.reentry =
        ReentryLimit{Reading<Kind::duration>(Duration::of(48, hours)), false, "p. 5"};
    const std::array<const ProductCard*, 2> cards{&a, &b};
    const ReentryBinding reentry = strictest_of(cards).reentry;
    EXPECT_EQ(reentry.until_dry, true);
    EXPECT_EQ(*reentry.after, Duration::of(48, hours));
    EXPECT_EQ(reentry.product, "B");
}

TEST(StrictestOf, DoesNotAskAnAdjuvantWithoutALabelForItsLimits) {
    ProductCard salt;
    salt.name = "Ammonium sulphate";
    salt.formulation = Formulation::water_conditioner;
    const std::array<const ProductCard*, 1> cards{&salt};
    EXPECT_TRUE(strictest_of(cards).haying.not_entered_by.empty());
}

TEST(StrictestOf, IsNeverLooserThanAnyLabelWhateverTheOrder) {
    EXPECT_TRUE(rc::check([](std::vector<std::array<int, 3>> raw) {
        std::vector<ProductCard> cards;
        for (const auto& numbers : raw) {
            ProductCard card = liquid("P" + std::to_string(cards.size()));
            if (numbers[0] % 3 != 0) {
                card.limits.haying =
                    DurationLimit{Duration::of(std::abs(numbers[0] % 100), days), ""};
            }
            if (numbers[1] % 3 != 0) {
                card.limits.max_wind =
                    SpeedLimit{Speed::of(1 + std::abs(numbers[1] % 20), miles_per_hour), ""};
            }
            if (numbers[2] % 3 != 0) {
                card.limits.finest_droplets =
                    DropletLimit{static_cast<DropletLimitClass>(std::abs(numbers[2] % 8)), ""};
            }
            cards.push_back(card);
        }
        std::vector<const ProductCard*> forward;
        for (const ProductCard& card : cards) {
            forward.push_back(&card);
        }
        const std::vector<const ProductCard*> backward(forward.rbegin(), forward.rend());
        const StrictestLimits strictest = strictest_of(forward);
        const StrictestLimits other = strictest_of(backward);
        RC_ASSERT(strictest.haying.value == other.haying.value);
        RC_ASSERT(strictest.max_wind.value == other.max_wind.value);
        RC_ASSERT(strictest.finest_droplets.value == other.finest_droplets.value);
        std::size_t missing = 0;
        for (const ProductCard& card : cards) {
            missing += card.limits.haying ? 0 : 1;
            RC_ASSERT(!card.limits.haying ||
                      *strictest.haying.value >= card.limits.haying->value.value);
            RC_ASSERT(!card.limits.max_wind ||
                      *strictest.max_wind.value <= card.limits.max_wind->value.value);
            RC_ASSERT(!card.limits.finest_droplets ||
                      *strictest.finest_droplets.value >= card.limits.finest_droplets->value);
        }
        RC_ASSERT(strictest.haying.not_entered_by.size() == missing);
    }));
}

TEST(ReportConflicts, SaysWhenTwoLabelsCannotBeObeyedTogether) {
    ProductCard a = liquid("A");
    ProductCard b = liquid("B");
    a.limits.min_carrier = CarrierLimit{MixPerArea::of(20, us_gallons_per_acre), ""};
    b.limits.max_carrier = CarrierLimit{MixPerArea::of(15, us_gallons_per_acre), ""};
    const std::array<const ProductCard*, 2> cards{&a, &b};
    Notes notes;
    report_conflicts(strictest_of(cards), notes);
    ASSERT_EQ(notes.findings().size(), 1U);
    EXPECT_EQ(notes.findings()[0].code, "labels_conflict");
    EXPECT_EQ(notes.findings()[0].severity, Severity::stop);
}

}  // namespace
}  // namespace swathbook::mix
