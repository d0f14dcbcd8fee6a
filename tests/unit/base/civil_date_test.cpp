#include "core/base/civil_date.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace swathbook {
namespace {

// Unix time: 1970-01-01 is day 0 (POSIX); 2000-03-01 is day 11017 and 1969-12-31 day -1
// (GNU date -u -d DATE +%s / 86400).
static_assert(days_from_civil({1970, 1, 1}) == 0);
static_assert(days_from_civil({1969, 12, 31}) == -1);
static_assert(days_from_civil({2000, 3, 1}) == 11017);
static_assert(days_from_civil({2025, 7, 11}) == 20280);
static_assert(civil_from_days(20280) == CivilDate{2025, 7, 11});

TEST(CivilDate, the_gregorian_rule_for_leap_years_holds) {
    EXPECT_TRUE(is_leap_year(2000));   // divisible by 400
    EXPECT_FALSE(is_leap_year(1900));  // divisible by 100
    EXPECT_TRUE(is_leap_year(2028));
    EXPECT_FALSE(is_leap_year(2026));
}

TEST(CivilDate, weekdays_agree_with_iso_8601) {
    EXPECT_EQ(weekday({1970, 1, 1}), 4);    // Thursday (POSIX epoch)
    EXPECT_EQ(weekday({2000, 1, 1}), 6);    // Saturday (ISO 8601)
    EXPECT_EQ(weekday({1969, 12, 29}), 1);  // Monday, before the epoch
}

TEST(CivilDate, a_year_after_the_leap_day_is_never_a_day_short) {
    EXPECT_EQ(plus_years({2024, 2, 29}, 2), (CivilDate{2026, 3, 1}));
    EXPECT_EQ(plus_years({2024, 2, 29}, 4), (CivilDate{2028, 2, 29}));
    EXPECT_EQ(plus_years({2026, 4, 9}, 7), (CivilDate{2033, 4, 9}));
}

TEST(CivilDate, text_that_is_no_date_is_refused_with_the_field_named) {
    for (const char* text : {"", "2026-4-9", "2026/04/09", "2026-13-01", "2026-02-29", "0000-01-01",
                             "2026-00-10", "2026-04-00", "2026-04-0x", "20260409", "-026-04-09"}) {
        const auto date = parse_civil_date(text, "date");
        ASSERT_FALSE(date.has_value()) << text;
        EXPECT_EQ(date.error().code, ErrorCode::invalid_input) << text;
        EXPECT_EQ(date.error().field, "date");
    }
}

RC_GTEST_PROP(CivilDate, days_and_dates_are_inverse_and_in_step, ()) {
    const auto day = *rc::gen::inRange<std::int64_t>(-700000, 2900000);
    const CivilDate date = civil_from_days(day);
    RC_ASSERT(exists(date));
    RC_ASSERT(days_from_civil(date) == day);
    RC_ASSERT(civil_from_days(day + 1) > date);
    RC_ASSERT(weekday(civil_from_days(day + 7)) == weekday(date));
}

RC_GTEST_PROP(CivilDate, text_and_date_are_inverse, ()) {
    const auto day = *rc::gen::inRange<std::int64_t>(-719162, 2932896);  // years 1 to 9999
    const CivilDate date = civil_from_days(day);
    RC_ASSERT(parse_civil_date(text_of(date), "date").value() == date);
}

}  // namespace
}  // namespace swathbook
