#include "core/mix/rinse.hpp"

#include <cmath>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using testing::has_finding;
using testing::read;
using testing::volume;

RinseRequest plan(std::string_view trapped, std::string_view water, int rinses) {
    RinseRequest request;
    request.trapped = volume(trapped);
    request.rinse_volume = volume(water);
    request.rinses = rinses;
    return request;
}

Error refused(const RinseRequest& request) {
    Notes notes;
    const auto answer = rinse(request, notes);
    EXPECT_FALSE(answer.has_value());
    return answer ? Error{} : answer.error();
}

TEST(Rinse, LeavesLessInThreeSmallRinsesThanInOneBig) {
    Notes notes(UnitSystem::us, true);
    const auto answer = rinse(plan("2 gal", "5 gal", 3), notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->residue->si(), 8.0 / 343.0, 1e-15);
    EXPECT_NEAR(answer->one_big_rinse->si(), 2.0 / 17.0, 1e-15);
    ASSERT_EQ(notes.steps().size(), 2U);
    EXPECT_EQ(notes.steps()[0].expression, "(2 gal / (2 gal + 5 gal))^3");
    EXPECT_EQ(notes.steps()[0].result, "2.332 %");
    EXPECT_TRUE(has_finding(notes, "never_ammonia_with_bleach"));
    EXPECT_TRUE(has_finding(notes, "label_rules_rinsing"));
}

RC_GTEST_PROP(Rinse, FallsWithEveryRinseAndEveryDrop, ()) {
    const auto trapped = Volume::from_si(*rc::gen::inRange(1, 1000) * 1e-5);
    const auto water = Volume::from_si(*rc::gen::inRange(1, 1000) * 1e-4);
    const int rinses = *rc::gen::inRange(1, 12);
    const double residue = residue_after(trapped, water, rinses);
    RC_ASSERT(residue_after(trapped, water, rinses + 1) < residue);
    RC_ASSERT(residue_after(trapped, water * 1.001, rinses) < residue);
    RC_ASSERT(residue_after(trapped * 1.001, water, rinses) > residue);
    // The same water in more rinses leaves less, down to exp(-water/trapped).
    const double split = residue_after(trapped, water / 2.0, 2 * rinses);
    RC_ASSERT(split < residue);
    RC_ASSERT(split >= std::exp(-(water / trapped) * rinses) * (1.0 - 1e-12));
}

RC_GTEST_PROP(Rinse, WaterForIsTheInverse, ()) {
    const auto trapped = Volume::from_si(*rc::gen::inRange(1, 1000) * 1e-5);
    const double residue = *rc::gen::inRange(1, 9999) / 10000.0;
    const int rinses = *rc::gen::inRange(1, 12);
    const Volume water = water_for(trapped, residue, rinses);
    RC_ASSERT(std::abs(residue_after(trapped, water, rinses) / residue - 1.0) < 1e-12);
}

RC_GTEST_PROP(Rinse, NeededRinsesAreTheLeastThatReachTheTarget, ()) {
    RinseRequest request;
    request.trapped = Reading<Kind::volume>(Volume::from_si(*rc::gen::inRange(1, 100) * 1e-4));
    request.rinse_volume =
        Reading<Kind::volume>(Volume::from_si(*rc::gen::inRange(10, 300) * 1e-4));
    request.target = Reading<Kind::fraction>(Fraction::from_si(*rc::gen::inRange(1, 999) / 1000.0));
    Notes notes;
    const auto answer = rinse(request, notes);
    RC_ASSERT(answer.has_value());
    RC_PRE(answer->rinses_needed.has_value());
    const auto left = [&](int rinses) {
        return residue_after(request.trapped->value, request.rinse_volume->value, rinses);
    };
    const double target = request.target->value.si();
    RC_ASSERT(left(*answer->rinses_needed) <= target * (1.0 + 1e-11));
    RC_ASSERT(*answer->rinses_needed == 1 || left(*answer->rinses_needed - 1) > target);
    for (std::size_t i = 1; i < answer->least_water.size(); ++i) {
        RC_ASSERT(answer->least_water[i].total < answer->least_water[i - 1].total);
    }
}

TEST(Rinse, SaysWhenNoNumberOfRinsesReachesTheTarget) {
    RinseRequest request = plan("20 gal", "0.01 gal", 1);
    request.target = read<Kind::fraction>("0.1 %");
    Notes notes;
    const auto answer = rinse(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_FALSE(answer->rinses_needed);
    EXPECT_TRUE(has_finding(notes, "target_out_of_reach"));
}

TEST(Rinse, StaysFiniteWhenNothingIsLeft) {
    Notes notes(UnitSystem::metric, true);
    const auto answer = rinse(plan("1 mL", "900 L", 1000), notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->residue->si(), 0.0);
    EXPECT_FALSE(answer->times_better);
}

TEST(Rinse, RefusesWhatCannotBe) {
    EXPECT_EQ(refused({}).field, "trapped");
    RinseRequest alone;
    alone.trapped = volume("2 gal");
    EXPECT_EQ(refused(alone).field, "rinse_volume");
    EXPECT_EQ(refused(plan("0 gal", "5 gal", 3)).field, "trapped");
    EXPECT_EQ(refused(plan("2 gal", "5 gal", 0)).field, "rinses");
    EXPECT_EQ(refused(plan("2 gal", "5 gal", 1001)).code, ErrorCode::out_of_range);
    RinseRequest nan = plan("2 gal", "5 gal", 3);
    nan.trapped->value = Volume::from_si(std::nan(""));
    EXPECT_EQ(refused(nan).code, ErrorCode::out_of_range);
    RinseRequest all = plan("2 gal", "5 gal", 3);
    all.target = read<Kind::fraction>("100 %");
    EXPECT_EQ(refused(all).field, "target");
    RinseRequest jug;
    jug.jug = JugRinse{volume("2.5 gal"), 0, std::nullopt, 3, std::nullopt};
    EXPECT_EQ(refused(jug).field, "jug.jugs");
}

}  // namespace
}  // namespace swathbook::mix
