#include "core/base/civil_date.hpp"

#include <fmt/format.h>

namespace swathbook {

namespace {

/// Value of a run of digits, or -1 when a character is not a digit.
std::int32_t digits(std::string_view text) {
    std::int32_t value = 0;
    for (const char character : text) {
        if (character < '0' || character > '9') {
            return -1;
        }
        value = value * 10 + (character - '0');
    }
    return value;
}

}  // namespace

Result<CivilDate> parse_civil_date(std::string_view text, std::string_view field) {
    const bool has_shape = text.size() == 10 && text[4] == '-' && text[7] == '-';
    CivilDate date{0, 0, 0};
    if (has_shape) {
        date = CivilDate{digits(text.substr(0, 4)), digits(text.substr(5, 2)),
                         digits(text.substr(8, 2))};
    }
    if (!has_shape || date.year < 1 || date.month < 0 || date.day < 0) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("\"{}\" is not a date. Write year-month-day, for example "
                                "2026-04-09.",
                                text.substr(0, 40)));
    }
    if (!exists(date)) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("{} is not in the calendar: month {} has {} days. Check the day "
                                "and the month.",
                                text, date.month, days_in_month(date.year, date.month)));
    }
    return date;
}

std::string text_of(CivilDate date) {
    return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

}  // namespace swathbook
