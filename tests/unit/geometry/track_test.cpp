#include "core/geometry/track.hpp"

#include <cmath>
#include <limits>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>
#include <GeographicLib/Geodesic.hpp>

namespace swathbook::geometry {
namespace {

const Duration ten_seconds = Duration::from_si(10.0);

TrackFix fix(double t, double lat, double lon, bool on = true) {
    return {t, lat, lon, on, std::nullopt};
}

TrackSums sums(const std::vector<TrackFix>& fixes) {
    const auto made = sum_of_track(fixes, ten_seconds, "track");
    EXPECT_TRUE(made.has_value()) << (made ? "" : made.error().detail);
    return made.value_or(TrackSums{});
}

/// Steps of up to 280 m in ten seconds, anywhere a sprayer could be.
std::vector<TrackFix> drawn_track(int count) {
    std::vector<TrackFix> fixes;
    double lat = *rc::gen::inRange(-6900, 6900) / 100.0;
    double lon = *rc::gen::inRange(-17900, 17900) / 100.0;
    for (int i = 0; i < count; ++i) {
        fixes.push_back(fix(10.0 * i, lat, lon, *rc::gen::arbitrary<bool>()));
        lat += *rc::gen::inRange(-1700, 1700) / 1e6;
        lon += *rc::gen::inRange(-1700, 1700) / 1e6;
    }
    return fixes;
}

RC_GTEST_PROP(Track, has_the_length_that_geographiclib_measures, ()) {
    const std::vector<TrackFix> fixes = drawn_track(*rc::gen::inRange(2, 30));
    double on = 0.0;
    double off = 0.0;
    for (std::size_t i = 1; i < fixes.size(); ++i) {
        double step = 0.0;
        GeographicLib::Geodesic::WGS84().Inverse(fixes[i - 1].lat, fixes[i - 1].lon, fixes[i].lat,
                                                 fixes[i].lon, step);
        (fixes[i - 1].on ? on : off) += step;
    }
    const TrackSums made = sums(fixes);
    RC_ASSERT(made.gaps == 0);
    RC_ASSERT(std::fabs(made.sprayed_length.si() - on) < 1e-5);
    RC_ASSERT(std::fabs(made.other_length.si() - off) < 1e-5);
}

RC_GTEST_PROP(Track, cut_in_two_at_a_fix_has_the_sum_of_both, ()) {
    const std::vector<TrackFix> fixes = drawn_track(20);
    const int cut = *rc::gen::inRange(1, 19);
    const TrackSums whole = sums(fixes);
    const TrackSums first = sums({fixes.begin(), fixes.begin() + cut + 1});
    const TrackSums second = sums({fixes.begin() + cut, fixes.end()});
    RC_ASSERT(std::fabs(whole.sprayed_length.si() - first.sprayed_length.si() -
                        second.sprayed_length.si()) < 1e-9);
    RC_ASSERT(whole.sprayed_time.si() == first.sprayed_time.si() + second.sprayed_time.si());
}

TEST(Track, draws_no_line_over_a_gap) {
    // Ten metres north each second, with 60 seconds of silence after the third fix.
    const double step = 10.0 / 111000.0;
    const TrackSums made =
        sums({fix(0, 40, -98), fix(1, 40 + step, -98), fix(2, 40 + 2 * step, -98),
              fix(62, 40 + 62 * step, -98), fix(63, 40 + 63 * step, -98)});
    EXPECT_EQ(made.gaps, 1);
    EXPECT_NEAR(made.sprayed_length.si(), 30.0, 0.1);
    EXPECT_EQ(made.sprayed_time.si(), 3.0);
    EXPECT_EQ(made.gap_time.si(), 60.0);
    EXPECT_EQ(made.gap_time_on.si(), 60.0);
    ASSERT_EQ(made.longest_gaps.size(), 1U);
    EXPECT_NEAR(made.longest_gaps[0].straight.si(), 600.0, 2.0);
    EXPECT_FALSE(made.longest_gaps[0].is_jump);
}

TEST(Track, counts_a_step_of_exactly_the_gap_time) {
    const double step = 10.0 / 111000.0;
    EXPECT_EQ(sums({fix(0, 40, -98), fix(10, 40 + step, -98)}).gaps, 0);
    EXPECT_EQ(sums({fix(0, 40, -98), fix(10.001, 40 + step, -98)}).gaps, 1);
}

TEST(Track, does_not_count_a_jump_that_no_sprayer_makes) {
    const TrackSums made = sums({fix(0, 40, -98), fix(1, 40.01, -98), fix(2, 40.01, -98)});
    EXPECT_EQ(made.gaps, 1);
    EXPECT_TRUE(made.longest_gaps[0].is_jump);
    EXPECT_EQ(made.sprayed_length.si(), 0.0);
}

TEST(Track, goes_over_the_180_degree_meridian) {
    EXPECT_NEAR(sums({fix(0, 0, 179.9999), fix(5, 0, -179.9999)}).sprayed_length.si(), 22.26, 0.01);
}

TEST(Track, names_the_twenty_longest_gaps_and_counts_all) {
    std::vector<TrackFix> fixes;
    double time = 0.0;
    for (int i = 0; i < 500; ++i) {
        fixes.push_back(fix(time, 40, -98));
        time += 11.0 + i;
    }
    const TrackSums made = sums(fixes);
    EXPECT_EQ(made.gaps, 499);
    ASSERT_EQ(made.longest_gaps.size(), 20U);
    EXPECT_EQ(made.longest_gaps[0].to_s - made.longest_gaps[0].from_s, 11.0 + 498.0);
    EXPECT_EQ(made.longest_gaps[19].to_s - made.longest_gaps[19].from_s, 11.0 + 479.0);
}

TEST(Track, refuses_what_no_receiver_gives) {
    const auto error = [](const std::vector<TrackFix>& fixes) {
        return sum_of_track(fixes, ten_seconds, "passes[0].track").error();
    };
    EXPECT_EQ(error({fix(0, 91, 0)}).code, ErrorCode::out_of_range);
    EXPECT_EQ(error({fix(0, 40, 0), fix(1, 40, 181)}).field, "passes[0].track[1]");
    EXPECT_EQ(error({fix(0, std::numeric_limits<double>::quiet_NaN(), 0)}).code,
              ErrorCode::out_of_range);
    EXPECT_EQ(error({fix(5, 40, 0), fix(4, 40, 0)}).field, "passes[0].track[1].t_seconds");
    EXPECT_EQ(sums({}).fixes, 0);
    EXPECT_EQ(sums({fix(0, 40, 0)}).sprayed_length.si(), 0.0);
}

}  // namespace
}  // namespace swathbook::geometry
