#include "core/calibration/course.hpp"

#include <limits>

#include <gtest/gtest.h>

#include "core/calibration/shortcut.hpp"
#include "core/calibration/standard_courses.hpp"
#include "core/quantity/units.hpp"
#include "tests/unit/calibration/entered.hpp"

namespace swathbook::calibration {
namespace {

CourseRequest thirty_feet() {
    CourseRequest request;
    request.width = length("30 ft");
    request.speed = at_speed("5 mph");
    return request;
}

TEST(Course, TheShortestCourseThatCanBeTimedIsRecommended) {
    Notes notes;
    const auto answer = course(thirty_feet(), notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_EQ(answer->recommended, "10/128 ac");
    for (const CourseRow& row : answer->rows) {
        EXPECT_EQ(row.recommended, row.part == "10/128 ac") << row.part;
    }
    // 0.25 s at 7.333 ft/s is 2 % of 91.7 ft.
    EXPECT_NEAR(answer->shortest_length->in(feet), 91.67, 0.005);
}

TEST(Course, MetricUsersAreOfferedMetricPlots) {
    CourseRequest request = thirty_feet();
    request.width = length("0.75 m");
    request.speed = at_speed("4 km/h");
    Notes notes(UnitSystem::metric);
    const auto answer = course(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->recommended, "25 m2");
    // Tenths of a metre: 33.333 m is staked out as 33.3 m.
    EXPECT_NEAR(answer->rows[6].practical_length.in(metres), 33.3, 1e-9);
    EXPECT_NEAR(answer->rows[6].practical_error.in(percents), -0.1, 1e-6);
}

TEST(Course, TheSlipAndTheLimitAreTheUsers) {
    CourseRequest request = thirty_feet();
    request.timing_slip = lasting("0.5 s");
    Notes notes;
    EXPECT_EQ(course(request, notes)->recommended, "1/4 ac");
    request.timing_limit = typed<Kind::fraction>("5 %");
    EXPECT_EQ(course(request, notes)->recommended, "10/128 ac");
}

TEST(Course, RoundingTheLengthIsSaidInPercent) {
    CourseRequest request;
    request.width = length("1 ft");
    Notes notes;
    const auto answer = course(request, notes);
    ASSERT_TRUE(answer);
    // 340 ft staked out for 340.3125 ft: -0.09 %.
    EXPECT_NEAR(answer->rows[0].practical_error.in(percents), -0.0918, 0.00005);
    EXPECT_NEAR(answer->rows[0].printed_length->in(feet), 340.0, 1e-9);
}

TEST(Course, ALaidOutLengthHasItsOwnMultiplier) {
    CourseRequest request = thirty_feet();
    request.laid_length = length("100 ft");
    Notes notes;
    const auto answer = course(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->laid->fluid_ounces_divisor, 3000.0 / 340.3125, 1e-9);
    EXPECT_TRUE(has_finding(notes, "shortcut_does_not_belong"));
    EXPECT_NE(text_of(notes, "shortcut_does_not_belong").find("8.815"), std::string::npos);

    request.laid_length = length("113 ft");
    Notes belongs;
    ASSERT_TRUE(course(request, belongs));
    EXPECT_TRUE(has_finding(belongs, "shortcut_belongs"));
}

TEST(Course, BadInputIsRefusedByName) {
    const auto refused = [](const CourseRequest& request) {
        Notes notes;
        const auto answer = course(request, notes);
        EXPECT_FALSE(answer);
        return answer ? Error{} : answer.error();
    };
    CourseRequest request = thirty_feet();
    request.width = Reading<Kind::length>(Length::from_si(std::numeric_limits<double>::infinity()));
    EXPECT_EQ(refused(request).code, ErrorCode::invalid_input);
    EXPECT_EQ(refused(request).field, "width");
    request = thirty_feet();
    request.speed = Reading<Kind::speed>(Speed());
    EXPECT_EQ(refused(request).code, ErrorCode::out_of_range);
    EXPECT_EQ(refused(request).field, "speed");
    request = thirty_feet();
    request.part = typed<Kind::area>("11 ac");
    EXPECT_EQ(refused(request).field, "part");
    request = thirty_feet();
    request.laid_length = length("6 mi");
    EXPECT_EQ(refused(request).field, "laid_length");
    request = thirty_feet();
    request.timing_slip = lasting("6 s");
    EXPECT_EQ(refused(request).field, "timing_slip");
    request = thirty_feet();
    request.timing_limit = typed<Kind::fraction>("90 %");
    EXPECT_EQ(refused(request).field, "timing_limit");
}

TEST(Course, TheWorkingShowsAreaOverWidth) {
    Notes notes(UnitSystem::us, true);
    ASSERT_TRUE(course(thirty_feet(), notes));
    EXPECT_EQ(notes.steps()[0].expression, "340.3125 ft2 / 30 ft");
    EXPECT_EQ(notes.steps()[0].result, "11.34 ft");
}

TEST(Shortcut, OnlyOneCourseMakesOuncesGallonsPerAcre) {
    EXPECT_EQ(shortcut_of_course(one_128th_acre_si).rule, "fl oz caught = gal/ac");
    EXPECT_NE(shortcut_of_course(10.0 * one_128th_acre_si).text.find("NOT"), std::string::npos);
    EXPECT_EQ(shortcut_of_course(acres.si / 8.0).rule, "pt caught = gal/ac");
    const CourseShortcut none = shortcut_of_course(2000.0 * square_feet.si);
    EXPECT_EQ(none.course, "");
    EXPECT_EQ(none.rule, "");
    EXPECT_NE(none.text.find("5.877"), std::string::npos) << none.text;
}

}  // namespace
}  // namespace swathbook::calibration
