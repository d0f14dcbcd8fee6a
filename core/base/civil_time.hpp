#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/civil_date.hpp"
#include "core/base/result.hpp"

namespace swathbook {

/// A moment as a clock on the wall shows it, with the clock's distance from UTC written beside it:
/// "2031-05-04T14:20-05:00". The program holds no table of time zones; who writes the time says the
/// offset.
struct CivilTime {
    CivilDate date{};
    std::int32_t hour = 0;            ///< 0 to 23
    std::int32_t minute = 0;          ///< 0 to 59
    std::int32_t second = 0;          ///< 0 to 59
    std::int32_t offset_minutes = 0;  ///< east of UTC; -300 is "-05:00"

    bool operator==(const CivilTime&) const = default;
};

/// Seconds since 1970-01-01T00:00Z, leap seconds not counted.
[[nodiscard]] constexpr std::int64_t seconds_of(const CivilTime& time) {
    return days_from_civil(time.date) * 86400 + std::int64_t{time.hour} * 3600 +
           std::int64_t{time.minute} * 60 + time.second -
           static_cast<std::int64_t>(time.offset_minutes) * 60;
}

/// The same moment on a clock with another offset.
[[nodiscard]] constexpr CivilTime civil_time(std::int64_t seconds, std::int32_t offset_minutes) {
    const std::int64_t local = seconds + static_cast<std::int64_t>(offset_minutes) * 60;
    const std::int64_t in_day = local % 86400;
    const std::int64_t of_day = in_day < 0 ? in_day + 86400 : in_day;
    CivilTime time;
    time.date = civil_from_days((local - of_day) / 86400);
    time.hour = static_cast<std::int32_t>(of_day / 3600);
    time.minute = static_cast<std::int32_t>(of_day / 60 % 60);
    time.second = static_cast<std::int32_t>(of_day % 60);
    time.offset_minutes = offset_minutes;
    return time;
}

/// A later (or earlier) moment on the same clock. When clocks are put forward or back in between,
/// the moment is right and the hour shown is that of the old offset.
[[nodiscard]] constexpr CivilTime plus_seconds(const CivilTime& time, std::int64_t seconds) {
    return civil_time(seconds_of(time) + seconds, time.offset_minutes);
}

/// Reads "2031-05-04T14:20-05:00", with or without seconds, a space for the T, and "Z" for +00:00.
///
/// @errors invalid_input{field} when the shape is another or the offset is missing; out_of_range
///         when the day, hour or offset (beyond 14 hours) does not exist
/// @source ISO 8601-1:2019, extended format; the offset is required here
[[nodiscard]] Result<CivilTime> parse_civil_time(std::string_view text, std::string_view field);

/// Writes "2031-05-04T14:20-05:00"; seconds only when they are not 0.
/// @valid years 0 to 9999
[[nodiscard]] std::string text_of(const CivilTime& time);

/// For people: "Sun 2031-05-04 14:20 (UTC-05:00)".
[[nodiscard]] std::string words_of(const CivilTime& time);

}  // namespace swathbook
