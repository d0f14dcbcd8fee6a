#include "core/notebook/hybrid_time.hpp"

#include <fmt/format.h>

#include <limits>

#include "core/base/civil_date.hpp"

namespace swathbook::notebook {

namespace {

constexpr std::int64_t day_ms = 24LL * 3600 * 1000;
constexpr std::string_view shape = "0000-00-00T00:00:00.000Z#00000";

/// Every digit of `shape` stands for a digit, every other character for itself.
bool has_shape(std::string_view text) {
    if (text.size() != shape.size()) {
        return false;
    }
    for (std::size_t i = 0; i < shape.size(); ++i) {
        const bool is_digit = text[i] >= '0' && text[i] <= '9';
        if (shape[i] == '0' ? !is_digit : text[i] != shape[i]) {
            return false;
        }
    }
    return true;
}

std::int32_t number_at(std::string_view text, std::size_t begin, std::size_t count) {
    std::int32_t value = 0;
    for (const char digit : text.substr(begin, count)) {
        value = value * 10 + (digit - '0');
    }
    return value;
}

tl::unexpected<Error> not_a_stamp(std::string_view text, std::string_view field) {
    return fail(ErrorCode::invalid_input, field,
                fmt::format("\"{}\" is not a stamp. A stamp looks like "
                            "2026-04-09T14:03:05.123Z#00000, in UTC.",
                            text.substr(0, 40)));
}

}  // namespace

Result<HybridTime> next_stamp(const HybridTime& last, std::int64_t now_ms) {
    if (now_ms < 0 || now_ms > last_millisecond) {
        return fail(ErrorCode::out_of_range, "made",
                    fmt::format("The clock reads {} ms from 1970, outside the years 1970 to 9999. "
                                "Set the clock of this device.",
                                now_ms));
    }
    if (now_ms > last.milliseconds) {
        return HybridTime{now_ms, 0};
    }
    if (last.counter < std::numeric_limits<std::uint16_t>::max()) {
        return HybridTime{last.milliseconds, static_cast<std::uint16_t>(last.counter + 1)};
    }
    if (last.milliseconds >= last_millisecond) {
        return fail(ErrorCode::out_of_range, "made",
                    "The last stamp of this notebook is at the end of the year 9999. No later "
                    "stamp exists.");
    }
    return HybridTime{last.milliseconds + 1, 0};
}

Result<void> check_not_ahead(const HybridTime& made, std::int64_t now_ms) {
    if (made.milliseconds > last_millisecond || made.milliseconds - largest_lead_ms > now_ms) {
        return fail(
            ErrorCode::out_of_range, "made",
            fmt::format("The entry is stamped {}, more than 24 hours ahead of this clock ({}). "
                        "Set the clock that is wrong; such a stamp would win over every later "
                        "edit.",
                        utc_text(made.milliseconds), utc_text(now_ms)));
    }
    return {};
}

std::string utc_text(std::int64_t milliseconds) {
    std::int64_t days = milliseconds / day_ms;
    std::int64_t rest = milliseconds % day_ms;
    if (rest < 0) {
        rest += day_ms;
        --days;
    }
    if (days < -719162 || days > 2932896) {  // outside the years 1 to 9999
        return fmt::format("{} ms from 1970", milliseconds);
    }
    return fmt::format("{}T{:02}:{:02}:{:02}.{:03}Z", swathbook::text_of(civil_from_days(days)),
                       rest / 3600000, rest / 60000 % 60, rest / 1000 % 60, rest % 1000);
}

std::string text_of(const HybridTime& time) {
    return fmt::format("{}#{:05}", utc_text(time.milliseconds), time.counter);
}

Result<HybridTime> parse_hybrid_time(std::string_view text, std::string_view field) {
    if (!has_shape(text)) {
        return not_a_stamp(text, field);
    }
    const CivilDate date{number_at(text, 0, 4), number_at(text, 5, 2), number_at(text, 8, 2)};
    const std::int32_t hour = number_at(text, 11, 2);
    const std::int32_t minute = number_at(text, 14, 2);
    const std::int32_t second = number_at(text, 17, 2);
    const std::int32_t counter = number_at(text, 25, 5);
    if (!exists(date) || date.year < 1970 || hour > 23 || minute > 59 || second > 59 ||
        counter > std::numeric_limits<std::uint16_t>::max()) {
        return not_a_stamp(text, field);
    }
    const std::int64_t seconds = hour * 3600LL + minute * 60LL + second;
    return HybridTime{days_from_civil(date) * day_ms + seconds * 1000 + number_at(text, 20, 3),
                      static_cast<std::uint16_t>(counter)};
}

}  // namespace swathbook::notebook
