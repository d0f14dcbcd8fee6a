#include "core/base/civil_time.hpp"

#include <ctime>

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

namespace swathbook {
namespace {

CivilTime read(std::string_view text) {
    const auto time = parse_civil_time(text, "ended");
    EXPECT_TRUE(time.has_value()) << text << ": " << (time ? "" : time.error().detail);
    return time.value_or(CivilTime{});
}

TEST(CivilTime, ReadsTheExtendedFormWithAnOffset) {
    EXPECT_EQ(read("2031-05-04T14:20-05:00"), (CivilTime{{2031, 5, 4}, 14, 20, 0, -300}));
    EXPECT_EQ(read("2031-05-04 14:20:31+05:30"), (CivilTime{{2031, 5, 4}, 14, 20, 31, 330}));
    EXPECT_EQ(read("2031-05-04T14:20Z"), (CivilTime{{2031, 5, 4}, 14, 20, 0, 0}));
}

TEST(CivilTime, RefusesWhatCannotBeOneMoment) {
    for (const char* text :
         {"", "2031-05-04", "2031-05-04T", "2031-05-04T14", "2031-05-04T14:2-05:00",
          "2031-05-04T14:20:-05:00", "2031-05-04T14:20", "2031-05-04T14:20-5",
          "2031-05-04T14:20-05:00x", "2031-05-04T14:20 CDT", "tomorrow at noon"}) {
        const auto time = parse_civil_time(text, "ended");
        ASSERT_FALSE(time.has_value()) << text;
        EXPECT_EQ(time.error().code, ErrorCode::invalid_input) << text;
        EXPECT_EQ(time.error().field, "ended");
    }
    for (const char* text :
         {"2031-05-04T24:00-05:00", "2031-05-04T14:60-05:00", "2031-05-04T14:20-15:00"}) {
        EXPECT_EQ(parse_civil_time(text, "ended").error().code, ErrorCode::out_of_range) << text;
    }
    EXPECT_NE(parse_civil_time("2031-05-04T14:20", "ended").error().detail.find("zone"),
              std::string::npos);
    EXPECT_FALSE(parse_civil_time("2031-02-29T14:20Z", "ended").has_value());
}

TEST(CivilTime, RunsAcrossDaysMonthsAndLeapDays) {
    EXPECT_EQ(text_of(plus_seconds(read("2031-12-31T23:30-06:00"), 3600)),
              "2032-01-01T00:30-06:00");
    EXPECT_EQ(text_of(plus_seconds(read("2032-02-28T12:00-06:00"), 86400)),
              "2032-02-29T12:00-06:00");
    EXPECT_EQ(text_of(plus_seconds(read("2032-03-01T00:00:05+02:00"), -10)),
              "2032-02-29T23:59:55+02:00");
    EXPECT_EQ(words_of(read("2031-05-04T14:20-05:00")), "Sun 2031-05-04 14:20 (UTC-05:00)");
}

// Judge: timegm and gmtime_r of the C library.
RC_GTEST_PROP(CivilTime, AgreesWithTheCLibrary, ()) {
    const auto seconds = *rc::gen::inRange<std::int64_t>(-62135596800, 253402300800);
    const auto offset = *rc::gen::inRange(-14 * 60, 14 * 60 + 1);
    const CivilTime time = civil_time(seconds, offset);
    RC_ASSERT(seconds_of(time) == seconds);
    const std::time_t local = static_cast<std::time_t>(seconds + offset * 60);
    std::tm judged{};
    gmtime_r(&local, &judged);
    RC_ASSERT(time.date.year == judged.tm_year + 1900);
    RC_ASSERT(time.date.month == judged.tm_mon + 1);
    RC_ASSERT(time.date.day == judged.tm_mday);
    RC_ASSERT(time.hour == judged.tm_hour);
    RC_ASSERT(time.minute == judged.tm_min);
    RC_ASSERT(time.second == judged.tm_sec);
    if (time.date.year >= 1 && time.date.year <= 9999) {
        RC_ASSERT(parse_civil_time(text_of(time), "t").value() == time);
    }
}

}  // namespace
}  // namespace swathbook
