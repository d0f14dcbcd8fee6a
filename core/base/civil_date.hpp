#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace swathbook {

/// A day of the proleptic Gregorian calendar, as written on a form. It has no time and no zone.
struct CivilDate {
    std::int32_t year = 1970;
    std::int32_t month = 1;  ///< 1 to 12
    std::int32_t day = 1;    ///< 1 to the length of the month

    auto operator<=>(const CivilDate&) const = default;
};

[[nodiscard]] constexpr bool is_leap_year(std::int32_t year) {
    return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
}

/// @return days in a month, 28 to 31; 0 when the month is not 1 to 12
[[nodiscard]] constexpr std::int32_t days_in_month(std::int32_t year, std::int32_t month) {
    if (month < 1 || month > 12) {
        return 0;
    }
    if (month == 2) {
        return is_leap_year(year) ? 29 : 28;
    }
    return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

/// Days from 1970-01-01 to a date; negative before it.
///
/// The year is counted from March, so that the leap day is its last, and whole 400-year eras of
/// 146,097 days are split off.
///
/// @valid  any existing date of the years -30,000 to 30,000
/// @source H. Hinnant, "chrono-Compatible Low-Level Date Algorithms" (2013)
[[nodiscard]] constexpr std::int64_t days_from_civil(CivilDate date) {
    const std::int64_t year = static_cast<std::int64_t>(date.year) - (date.month <= 2 ? 1 : 0);
    const std::int64_t era = (year >= 0 ? year : year - 399) / 400;
    const std::int64_t year_of_era = year - era * 400;
    const std::int64_t month_from_march = date.month > 2 ? date.month - 3 : date.month + 9;
    const std::int64_t day_of_year = (153 * month_from_march + 2) / 5 + date.day - 1;
    const std::int64_t day_of_era =
        year_of_era * 365 + year_of_era / 4 - year_of_era / 100 + day_of_year;
    return era * 146097 + day_of_era - 719468;
}

/// The inverse of days_from_civil.
///
/// @valid  days within the years -30,000 to 30,000
/// @source as days_from_civil
[[nodiscard]] constexpr CivilDate civil_from_days(std::int64_t days) {
    const std::int64_t shifted = days + 719468;
    const std::int64_t era = (shifted >= 0 ? shifted : shifted - 146096) / 146097;
    const std::int64_t day_of_era = shifted - era * 146097;
    const std::int64_t year_of_era =
        (day_of_era - day_of_era / 1460 + day_of_era / 36524 - day_of_era / 146096) / 365;
    const std::int64_t day_of_year =
        day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    const std::int64_t month_from_march = (5 * day_of_year + 2) / 153;
    const std::int64_t day = day_of_year - (153 * month_from_march + 2) / 5 + 1;
    const std::int64_t month = month_from_march < 10 ? month_from_march + 3 : month_from_march - 9;
    const std::int64_t year = year_of_era + era * 400 + (month <= 2 ? 1 : 0);
    return CivilDate{static_cast<std::int32_t>(year), static_cast<std::int32_t>(month),
                     static_cast<std::int32_t>(day)};
}

[[nodiscard]] constexpr bool exists(CivilDate date) {
    return date.year >= -30000 && date.year <= 30000 && date.day >= 1 &&
           date.day <= days_in_month(date.year, date.month);
}

[[nodiscard]] constexpr CivilDate plus_days(CivilDate date, std::int64_t days) {
    return civil_from_days(days_from_civil(date) + days);
}

/// The same month and day some years later; 29 February becomes 1 March in a common year, so that a
/// retention period is never one day short.
[[nodiscard]] constexpr CivilDate plus_years(CivilDate date, std::int32_t years) {
    CivilDate later{date.year + years, date.month, date.day};
    if (!exists(later)) {
        later.month = 3;
        later.day = 1;
    }
    return later;
}

/// 1 Monday ... 7 Sunday, as in ISO 8601.
[[nodiscard]] constexpr std::int32_t weekday(CivilDate date) {
    const std::int64_t since_monday = (days_from_civil(date) + 3) % 7;
    return static_cast<std::int32_t>(since_monday < 0 ? since_monday + 8 : since_monday + 1);
}

/// Reads "2026-04-09" (ISO 8601 extended form, years 0001 to 9999).
///
/// @errors invalid_input{field} when the text has another shape or the day does not exist
[[nodiscard]] Result<CivilDate> parse_civil_date(std::string_view text, std::string_view field);

/// Writes "2026-04-09".
/// @valid years 0 to 9999
[[nodiscard]] std::string text_of(CivilDate date);

}  // namespace swathbook
