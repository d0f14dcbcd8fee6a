#include "core/mix/water.hpp"

#include <cmath>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using testing::has_finding;
using testing::read;

Reading<Kind::dissolved> ppm(double number) {
    return swathbook::Dissolved::of(number, parts_per_million);
}

WaterRequest report(double k, double na, double ca, double mg, double fe) {
    WaterRequest request;
    request.potassium = ppm(k);
    request.sodium = ppm(na);
    request.calcium = ppm(ca);
    request.magnesium = ppm(mg);
    request.iron = ppm(fe);
    return request;
}

WaterAnswer answered(const WaterRequest& request) {
    Notes notes;
    const auto answer = water(request, notes);
    EXPECT_TRUE(answer.has_value());
    return answer.value_or(WaterAnswer{});
}

TEST(Water, AddsTheFiveMinerals) {
    Notes notes(UnitSystem::us, true);
    const auto answer = water(report(5, 30, 100, 40, 1), notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->ams->in(pounds_per_100_us_gallons), 1.662, 1e-12);
    EXPECT_TRUE(answer->complete);
    EXPECT_EQ(notes.steps()[0].expression,
              "0.002 x 5 K + 0.005 x 30 Na + 0.009 x 100 Ca + 0.014 x 40 Mg + 0.042 x 1 Fe");
    EXPECT_TRUE(has_finding(notes, "label_range_not_entered"));
}

RC_GTEST_PROP(Water, IsTheSumOfItsMineralsAndNeverFalls, ()) {
    const auto amount = [] { return *rc::gen::inRange(0, 4000) * 1.0; };
    const double k = amount();
    const double na = amount();
    const double ca = amount();
    const double mg = amount();
    const double fe = amount();
    const WaterAnswer all = answered(report(k, na, ca, mg, fe));
    double sum = 0.0;
    for (const IonShare& ion : all.ions) {
        sum += ion.ams.si();
    }
    RC_ASSERT(std::abs(sum - all.ams->si()) <= 1e-12 * sum);
    RC_ASSERT(answered(report(k + 1, na, ca, mg, fe)).ams->si() > all.ams->si());
    WaterRequest less = report(k, na, ca, mg, fe);
    less.iron.reset();
    const WaterAnswer at_least = answered(less);
    RC_ASSERT(at_least.ams->si() <= all.ams->si());
    RC_ASSERT(!at_least.complete);
    RC_ASSERT(at_least.not_entered == std::vector<std::string>{"iron"});
}

// Whatever the mixture of calcium and magnesium behind a hardness, the bounds hold it.
RC_GTEST_PROP(Water, HardnessBoundsHoldEveryMixtureOfCalciumAndMagnesium, ()) {
    const double ca = *rc::gen::inRange(0, 800);
    const double mg = *rc::gen::inRange(1, 500);
    WaterRequest ions;
    ions.calcium = ppm(ca);
    ions.magnesium = ppm(mg);
    const WaterAnswer known = answered(ions);
    WaterRequest lumped;
    lumped.hardness = known.hardness->in(parts_per_million);
    lumped.hardness_scale = HardnessScale::ppm_calcium_carbonate;
    const WaterAnswer bounds = answered(lumped);
    RC_ASSERT(bounds.hardness_asks_least->si() <= known.ams->si() * (1.0 + 1e-12));
    RC_ASSERT(known.ams->si() <= bounds.hardness_asks_most->si() * (1.0 + 1e-12));
    RC_ASSERT(!bounds.ams.has_value());
}

TEST(Water, RefusesWhatCannotBe) {
    Notes notes;
    EXPECT_EQ(water({}, notes).error().code, ErrorCode::invalid_input);
    EXPECT_EQ(water(report(-1, 0, 0, 0, 0), notes).error().field, "potassium");
    EXPECT_EQ(water(report(0, 0, 5001, 0, 0), notes).error().field, "calcium");
    EXPECT_EQ(water(report(0, 0, 0, std::nan(""), 0), notes).error().field, "magnesium");
    WaterRequest hard;
    hard.hardness = -3.0;
    hard.hardness_scale = HardnessScale::ppm_calcium_carbonate;
    EXPECT_EQ(water(hard, notes).error().field, "hardness");
    WaterRequest tank = report(0, 0, 0, 0, 0);
    tank.tanks.push_back(Volume{});
    EXPECT_EQ(water(tank, notes).error().field, "tanks[0]");
    WaterRequest label;
    label.label_most = read<Kind::product_mass_per_mix>("900 lb/100 gal");
    EXPECT_EQ(water(label, notes).error().field, "label_most");
    WaterRequest liquid = report(0, 0, 0, 0, 0);
    liquid.liquid_strength = read<Kind::density>("34 lb/gal");
    EXPECT_EQ(water(liquid, notes).error().field, "liquid_strength");
}

TEST(Water, WarnsWhenMineralsAskMoreThanTheLabelAllows) {
    WaterRequest request = report(0, 1000, 500, 300, 5);
    request.label_most = read<Kind::product_mass_per_mix>("8.5 lb/100 gal");
    Notes notes;
    ASSERT_TRUE(water(request, notes));
    EXPECT_TRUE(has_finding(notes, "minerals_ask_more_than_label"));
}

}  // namespace
}  // namespace swathbook::mix
