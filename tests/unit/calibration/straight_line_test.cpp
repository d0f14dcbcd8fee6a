#include "core/calibration/straight_line.hpp"

#include <array>
#include <cmath>
#include <vector>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/calibration/student_t.hpp"

namespace swathbook::calibration {
namespace {

// NIST Statistical Reference Datasets, linear regression, Norris (36 observations) with its
// certified values: https://www.itl.nist.gov/div898/strd/lls/data/Norris.shtml
TEST(StraightLine, has_the_certified_values_of_the_norris_data) {
    constexpr std::array across{0.2,   337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6,
                                777.0, 558.2, 0.4,   0.6,   775.5, 666.9, 338.0, 447.5, 11.6,
                                556.0, 228.1, 995.8, 887.6, 120.2, 0.3,   0.3,   556.8, 339.1,
                                887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
    constexpr std::array heights{0.1,   338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1,
                                 778.9, 559.2, 0.3,   0.1,   778.1, 668.8, 339.3, 448.9, 10.8,
                                 557.7, 228.3, 998.0, 888.8, 119.6, 0.3,   0.6,   557.6, 339.3,
                                 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};
    const auto line = straight_line(across, heights);
    ASSERT_TRUE(line);
    EXPECT_NEAR(line->slope, 1.00211681802045, 1e-13);
    EXPECT_NEAR(line->intercept, -0.262323073774029, 1e-11);
    EXPECT_NEAR(line->slope_error, 0.429796848199937e-03, 1e-14);
    EXPECT_NEAR(line->intercept_error, 0.232818234301152, 1e-11);
    EXPECT_NEAR(line->residual_deviation, 0.884796396144373, 1e-11);
    EXPECT_NEAR(line->explained, 0.999993745883712, 1e-13);
}

TEST(StraightLine, is_none_through_one_place) {
    EXPECT_FALSE(straight_line(std::array{1.0}, std::array{2.0}));
    EXPECT_FALSE(straight_line(std::array{1.0, 1.0}, std::array{2.0, 3.0}));
}

TEST(StraightLine, through_two_points_has_no_error_to_tell) {
    const auto line = straight_line(std::array{1.0, 3.0}, std::array{2.0, 8.0});
    ASSERT_TRUE(line);
    EXPECT_DOUBLE_EQ(line->slope, 3.0);
    EXPECT_DOUBLE_EQ(line->intercept, -1.0);
    EXPECT_EQ(line->slope_error, 0.0);
}

// The ends of the crossing's interval are where the 95 % band of the line meets the height.
RC_GTEST_PROP(Crossing, ends_where_the_band_of_the_line_meets_the_height, ()) {
    std::vector<double> across;
    std::vector<double> heights;
    const int count = *rc::gen::inRange(3, 12);
    for (int i = 0; i < count; ++i) {
        across.push_back(i * 10.0);
        heights.push_back(i + *rc::gen::inRange(-50, 50) / 100.0);
    }
    const auto line = straight_line(across, heights);
    const double factor = student_t_95(count - 2);
    const double wanted = *rc::gen::inRange(0, 300) / 10.0;
    const auto crossing = crossing_of(*line, wanted, factor);
    RC_ASSERT(crossing.has_value() == (line->slope > factor * line->slope_error));
    if (!crossing || line->residual_deviation == 0.0) {
        return;
    }
    RC_ASSERT(std::fabs(line->at(crossing->across) - wanted) < 1e-9 * (1.0 + wanted));
    RC_ASSERT(crossing->low <= crossing->across && crossing->across <= *crossing->high);
    for (const double end : {crossing->low, *crossing->high}) {
        const double off = std::fabs(line->at(end) - wanted);
        RC_ASSERT(std::fabs(off - factor * line->error_at(end)) < 1e-6 * (1.0 + off));
    }
}

}  // namespace
}  // namespace swathbook::calibration
