#include "core/mix/load_plan.hpp"

#include <rapidcheck.h>

#include <cmath>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

std::vector<double> parts(double total, double usable, Split split) {
    const auto made =
        split_volume(Volume::of(total, us_gallons), Volume::of(usable, us_gallons), split);
    EXPECT_TRUE(made);
    std::vector<double> gallons;
    for (const Volume& part : *made) {
        gallons.push_back(part.in(us_gallons));
    }
    return gallons;
}

TEST(SplitVolume, MakesOneLoadOfWhatFits) {
    EXPECT_EQ(parts(47, 47, Split::equal).size(), 1U);
    EXPECT_EQ(parts(1, 47, Split::full_then_rest).size(), 1U);
}

TEST(SplitVolume, DoesNotMakeALoadOfTheLastBits) {
    // 0.1 + 0.2 is not 0.3 in binary; three tankfuls of 0.1 are still three
    const auto made = split_volume(Volume::of(0.1, us_gallons) + Volume::of(0.2, us_gallons),
                                   Volume::of(0.1, us_gallons), Split::full_then_rest);
    EXPECT_EQ(made->size(), 3U);
}

TEST(SplitVolume, RefusesMoreThanFiveHundred) {
    EXPECT_TRUE(split_volume(Volume::from_si(500), Volume::from_si(1), Split::equal));
    const auto many = split_volume(Volume::from_si(501), Volume::from_si(1), Split::equal);
    ASSERT_FALSE(many);
    EXPECT_NE(many.error().detail.find("501"), std::string::npos);
}

TEST(SplitVolume, KeepsItsPromisesWhateverTheNumbers) {
    EXPECT_TRUE(rc::check([](unsigned a, unsigned b) {
        const double total = (1 + a % 100000) / 17.0;
        const double usable = (1 + b % 100000) / 13.0;
        RC_PRE(total / usable < 499);
        for (const Split split : {Split::equal, Split::full_then_rest}) {
            const auto made = parts(total, usable, split);
            double sum = 0.0;
            for (std::size_t i = 0; i < made.size(); ++i) {
                RC_ASSERT(made[i] > 0.0);
                RC_ASSERT(made[i] <= usable * (1 + 2e-9));
                RC_ASSERT(i + 1 == made.size() || split == Split::equal ||
                          std::abs(made[i] / usable - 1.0) < 1e-15);
                sum += made[i];
            }
            RC_ASSERT(std::abs(sum / total - 1.0) < 1e-12);
            RC_ASSERT(static_cast<double>(made.size() - 1) * usable < total);
        }
    }));
}

LoadsRequest banded() {
    LoadsRequest request;
    request.bands = Bands{read<Kind::length>("15 in"), read<Kind::length>("30 in")};
    request.mix_per_area = mix_rate("20 gal/ac");
    request.mix_counts = Counts::treated;
    request.tank_usable = volume("100 gal");
    return request;
}

TEST(PlanGround, FindsTheFieldFromTheBandsAndTheBandsFromTheField) {
    Notes notes;
    LoadsRequest from_net = banded();
    from_net.net_area = net("5 ac");
    const auto a = plan_ground(from_net, notes);
    ASSERT_TRUE(a);
    EXPECT_NEAR(a->field->in(acres), 10.0, 1e-12);
    LoadsRequest from_field = banded();
    from_field.planned_area = read<Kind::planned_area>("10 ac");
    const auto b = plan_ground(from_field, notes);
    ASSERT_TRUE(b);
    EXPECT_NEAR(b->treated->in(acres), 5.0, 1e-12);
    EXPECT_NEAR(b->sprayed.in(us_gallons), 100.0, 1e-9);
    EXPECT_TRUE(has_finding(notes, "planned_area_used"));
}

TEST(PlanGround, PrefersNetGroundToPlannedGround) {
    LoadsRequest request;
    request.net_area = net("7.4 ac");
    request.planned_area = read<Kind::planned_area>("9 ac");
    request.mix_per_area = mix_rate("10 gal/ac");
    request.tank_usable = volume("100 gal");
    Notes notes;
    const auto plan = plan_ground(request, notes);
    ASSERT_TRUE(plan);
    EXPECT_NEAR(plan->sprayed.in(us_gallons), 74.0, 1e-9);
    EXPECT_FALSE(has_finding(notes, "planned_area_used"));
    request.net_area = net("9.5 ac");
    EXPECT_EQ(plan_ground(request, notes).error().code, ErrorCode::inconsistent);
}

TEST(PlanGround, TakesTheDeadVolumeOutOfAGivenVolume) {
    LoadsRequest request;
    request.mix_volume = volume("25 gal");
    request.dead_volume = volume("5 gal");
    request.mix_per_area = mix_rate("20 gal/ac");
    Notes notes;
    const auto plan = plan_ground(request, notes);
    ASSERT_TRUE(plan);
    EXPECT_NEAR(plan->treated->in(acres), 1.0, 1e-12);
    request.dead_volume = volume("25 gal");
    EXPECT_EQ(plan_ground(request, notes).error().field, "mix_volume");
}

}  // namespace
}  // namespace swathbook::mix
