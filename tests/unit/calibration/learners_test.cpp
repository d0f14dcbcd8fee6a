#include "core/calibration/learners.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/quantity/parse.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

template <Kind K>
Reading<K> read(const std::string& text) {
    return *parse<K>(text);
}

LearnersAnswer answered(const LearnersRequest& request) {
    Notes notes;
    const auto answer = learners(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(LearnersAnswer{});
}

// NIST Statistical Reference Datasets, univariate, Mavro: 50 observations, certified mean
// 2.00185600000000 and standard deviation 0.000429123454003053; here as gallons on one acre.
TEST(Learners, have_the_certified_mean_and_deviation_of_a_reference_data_set) {
    constexpr std::array<int, 50> last_digits{
        180, 170, 180, 190, 180, 170, 150, 140, 150, 150, 170, 180, 180, 190, 190, 210, 200,
        160, 140, 130, 130, 150, 150, 160, 150, 140, 130, 140, 150, 140, 150, 160, 150, 160,
        190, 200, 200, 210, 220, 230, 240, 250, 270, 260, 260, 260, 270, 260, 250, 240};
    LearnersRequest request;
    request.area = read<Kind::area>("1 ac");
    for (const int digits : last_digits) {
        Learner learner;
        learner.name = fmt::format("{}", request.learners.size() + 1);
        learner.refill = read<Kind::volume>(fmt::format("2.00{} gal", digits));
        request.learners.push_back(learner);
    }
    const LearnersAnswer answer = answered(request);
    EXPECT_NEAR(answer.mean.value.in(us_gallons_per_acre), 2.00185600000000, 1e-13);
    EXPECT_NEAR(answer.standard_deviation->in(us_gallons_per_acre), 0.000429123454003053, 1e-13);
    EXPECT_EQ(answer.spread_shares.front().source, SpreadSource::refill);
    EXPECT_NEAR(answer.spread_shares.front().share.si(), 1.0, 1e-9);
}

LearnersRequest class_of(const std::vector<std::pair<std::string, std::string>>& time_and_catch) {
    LearnersRequest request;
    request.width = read<Kind::length>("5 ft");
    request.course_length = read<Kind::length>("68 ft");
    for (const auto& [time, caught] : time_and_catch) {
        Learner learner;
        learner.name = fmt::format("learner {}", request.learners.size() + 1);
        learner.times = {read<Kind::duration>(time)};
        learner.catches = {read<Kind::volume>(caught)};
        request.learners.push_back(learner);
    }
    return request;
}

RC_GTEST_PROP(Learners, split_the_spread_into_shares_that_add_up, ()) {
    std::vector<std::pair<std::string, std::string>> measured;
    const int count = *rc::gen::inRange(2, 12);
    for (int i = 0; i < count; ++i) {
        measured.emplace_back(fmt::format("{} s", *rc::gen::inRange(150, 400) / 10.0),
                              fmt::format("{} fl oz", *rc::gen::inRange(15, 60)));
    }
    LearnersRequest request = class_of(measured);
    request.learners.front().width = read<Kind::length>("4.5 ft");
    const LearnersAnswer answer = answered(request);
    if (answer.spread.si() < 1e-6) {
        return;
    }
    double sum = 0.0;
    for (const SpreadShare& share : answer.spread_shares) {
        sum += share.share.si();
    }
    RC_ASSERT(std::fabs(sum - 1.0) < 1e-9);
    std::reverse(request.learners.begin(), request.learners.end());
    const LearnersAnswer turned = answered(request);
    RC_ASSERT(std::fabs(turned.variation->si() - answer.variation->si()) < 1e-12);
    RC_ASSERT(turned.lowest == answer.lowest);
}

TEST(Learners, differ_by_walking_speed_alone_when_the_flow_is_the_same) {
    // 0.5 gal/min each: 64 fl oz a minute for the time walked.
    const LearnersAnswer answer =
        answered(class_of({{"15 s", "16 fl oz"}, {"30 s", "32 fl oz"}, {"45 s", "48 fl oz"}}));
    EXPECT_EQ(answer.spread_shares.front().source, SpreadSource::speed);
    EXPECT_NEAR(answer.spread_shares.front().share.si(), 1.0, 1e-9);
    EXPECT_NEAR(answer.spread.si(), 2.0, 1e-9);
    EXPECT_EQ(answer.lowest_by, "learner 1");
    EXPECT_EQ(answer.highest_by, "learner 3");
}

TEST(Learners, mark_who_lies_outside_the_others) {
    const LearnersAnswer answer = answered(class_of({{"22 s", "22 fl oz"},
                                                     {"22 s", "23 fl oz"},
                                                     {"22 s", "24 fl oz"},
                                                     {"22 s", "23 fl oz"},
                                                     {"22 s", "31 fl oz"}}));
    // The others of the last: mean 23, deviation 0.8165 fl oz; t(3) = 3.1824;
    // 23 + 3.1824 x 0.8165 x sqrt(1.25) = 25.905 fl oz.
    const double per_ounce = answer.learners[0].output.value.si() / 22.0;
    EXPECT_NEAR(answer.learners[4].others_high->si() / per_ounce, 25.905, 0.001);
    EXPECT_EQ(answer.learners[4].outside, true);
    EXPECT_EQ(answer.learners[0].outside, false);
    const LearnersAnswer few = answered(class_of({{"22 s", "22 fl oz"}, {"22 s", "31 fl oz"}}));
    EXPECT_FALSE(few.learners[0].outside);
}

LearnerHand hand_in(const std::string& width, const std::string& length, const std::string& time,
                    const std::string& caught, const std::string& hand) {
    LearnersRequest request = class_of({{time, caught}});
    request.width = read<Kind::length>(width);
    request.course_length = read<Kind::length>(length);
    request.sprayer = SprayerKind::boomless;
    request.learners[0].hand_answer = read<Kind::mix_per_area>(hand);
    return *answered(request).learners[0].hand;
}

TEST(Learners, are_told_which_shortcut_or_rounding_gave_their_answer) {
    // 26 ft x 176 ft is 13.45 times 1/128 acre: 175 fl oz are 13.0 gal/ac.
    EXPECT_EQ(hand_in("26 ft", "176 ft", "31.5 s", "175 fl oz", "13 gal/ac").verdict,
              LearnerHandVerdict::agrees);
    const LearnerHand trap = hand_in("26 ft", "176 ft", "31.5 s", "175 fl oz", "175 gal/ac");
    EXPECT_EQ(trap.verdict, LearnerHandVerdict::shortcut);
    EXPECT_EQ(trap.shortcut, "shortcut_sixteenfold");
    // 26 ft x 113 ft: 8.63 times; the tenfold trap.
    EXPECT_EQ(hand_in("26 ft", "113 ft", "20 s", "112 fl oz", "112 gal/ac").shortcut,
              "shortcut_tenfold");
    // 0.1051 ac taken as 0.11 ac: 1.367 gal / 0.11 ac = 12.43.
    const LearnerHand rounded = hand_in("26 ft", "176 ft", "31.5 s", "175 fl oz", "12.43 gal/ac");
    EXPECT_EQ(rounded.verdict, LearnerHandVerdict::rounding);
    EXPECT_NE(rounded.text.find("0.11 ac"), std::string::npos) << rounded.text;
    EXPECT_EQ(hand_in("26 ft", "176 ft", "31.5 s", "175 fl oz", "19 gal/ac").verdict,
              LearnerHandVerdict::slip);
}

TEST(Learners, refuse_what_cannot_be_a_class) {
    Notes notes;
    EXPECT_EQ(learners({}, notes).error().field, "learners");
    LearnersRequest request = class_of({{"22 s", "22 fl oz"}, {"22 s", "23 fl oz"}});
    request.learners[1].name = request.learners[0].name;
    EXPECT_EQ(learners(request, notes).error().field, "learners[1].name");
    request.learners[1].name.clear();
    EXPECT_EQ(learners(request, notes).error().field, "learners[1].name");
    request.learners[1].name = "B";
    request.learners[1].times = {read<Kind::duration>("0.1 s")};
    EXPECT_EQ(learners(request, notes).error().field, "learners[1].times[0]");
    request.learners[1].times = {read<Kind::duration>("22 s")};
    request.learners[1].catches = {read<Kind::volume>("5000 gal")};
    EXPECT_EQ(learners(request, notes).error().field, "learners[1].catches[0]");
}

}  // namespace
}  // namespace swathbook::calibration
