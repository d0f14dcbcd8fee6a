#include "core/base/civil_time.hpp"

#include <array>
#include <optional>

#include <fmt/format.h>

namespace swathbook {
namespace {

constexpr std::size_t date_length = 10;
constexpr std::int32_t farthest_offset = 14 * 60;

auto wrong_shape(std::string_view text, std::string_view field) {
    return fail(ErrorCode::invalid_input, field,
                fmt::format("\"{}\" is not a date and time with its zone. Write it as "
                            "2031-05-04T14:20-05:00: the clock's time, then how far that clock is "
                            "from UTC.",
                            text.substr(0, 60)));
}

/// Takes two digits off the front.
std::optional<std::int32_t> two_digits(std::string_view& rest) {
    if (rest.size() < 2 || rest[0] < '0' || rest[0] > '9' || rest[1] < '0' || rest[1] > '9') {
        return std::nullopt;
    }
    const std::int32_t number = (rest[0] - '0') * 10 + (rest[1] - '0');
    rest.remove_prefix(2);
    return number;
}

bool take(std::string_view& rest, char wanted) {
    if (rest.empty() || rest.front() != wanted) {
        return false;
    }
    rest.remove_prefix(1);
    return true;
}

/// "Z", "+hh:mm" or "-hh:mm" to the end of the text.
std::optional<std::int32_t> offset_in(std::string_view rest) {
    if (rest == "Z" || rest == "z") {
        return 0;
    }
    if (rest.empty() || (rest.front() != '+' && rest.front() != '-')) {
        return std::nullopt;
    }
    const std::int32_t sign = rest.front() == '-' ? -1 : 1;
    rest.remove_prefix(1);
    const auto hours = two_digits(rest);
    if (!hours || !take(rest, ':')) {
        return std::nullopt;
    }
    const auto minutes = two_digits(rest);
    if (!minutes || !rest.empty() || *minutes > 59) {
        return std::nullopt;
    }
    return sign * (*hours * 60 + *minutes);
}

std::string offset_text(std::int32_t minutes) {
    const std::int32_t size = minutes < 0 ? -minutes : minutes;
    return fmt::format("{}{:02}:{:02}", minutes < 0 ? '-' : '+', size / 60, size % 60);
}

}  // namespace

Result<CivilTime> parse_civil_time(std::string_view text, std::string_view field) {
    if (text.size() <= date_length || (text[date_length] != 'T' && text[date_length] != ' ')) {
        return wrong_shape(text, field);
    }
    SWATHBOOK_TRY(date, parse_civil_date(text.substr(0, date_length), field));
    std::string_view rest = text.substr(date_length + 1);
    const auto hour = two_digits(rest);
    const bool colon = take(rest, ':');
    const auto minute = two_digits(rest);
    std::optional<std::int32_t> second = 0;
    if (take(rest, ':')) {
        second = two_digits(rest);
    }
    if (!hour || !colon || !minute || !second) {
        return wrong_shape(text, field);
    }
    if (rest.empty()) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("\"{}\" does not say its zone, and the hour of re-entry depends on "
                                "it. Add the clock's distance from UTC, such as -05:00.",
                                text));
    }
    const auto offset = offset_in(rest);
    if (!offset) {
        return wrong_shape(text, field);
    }
    if (*hour > 23 || *minute > 59 || *second > 59) {
        return fail(
            ErrorCode::out_of_range, field,
            fmt::format("There is no clock time {:02}:{:02}:{:02}; hours run from 00 to 23, "
                        "minutes and seconds to 59.",
                        *hour, *minute, *second));
    }
    if (*offset > farthest_offset || *offset < -farthest_offset) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("No clock is {} from UTC; the farthest are 14 hours.",
                                offset_text(*offset)));
    }
    return CivilTime{date, *hour, *minute, *second, *offset};
}

std::string text_of(const CivilTime& time) {
    const std::string seconds = time.second == 0 ? "" : fmt::format(":{:02}", time.second);
    return fmt::format("{}T{:02}:{:02}{}{}", text_of(time.date), time.hour, time.minute, seconds,
                       offset_text(time.offset_minutes));
}

std::string words_of(const CivilTime& time) {
    constexpr std::array<std::string_view, 7> days{"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    return fmt::format("{} {} {:02}:{:02} (UTC{})",
                       days[static_cast<std::size_t>(weekday(time.date) - 1)], text_of(time.date),
                       time.hour, time.minute, offset_text(time.offset_minutes));
}

}  // namespace swathbook
