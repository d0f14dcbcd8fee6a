#include "core/notebook/detail/record_days.hpp"

#include <fmt/format.h>

namespace swathbook::notebook::detail {

namespace {

Result<std::optional<CivilDate>> maybe_date(const std::optional<std::string>& text,
                                            std::string_view field) {
    if (!text) {
        return std::optional<CivilDate>();
    }
    SWATHBOOK_TRY(date, parse_civil_date(*text, field));
    return std::optional(date);
}

Result<std::optional<std::int32_t>> maybe_clock(const std::optional<std::string>& text,
                                                std::string_view field) {
    if (!text) {
        return std::optional<std::int32_t>();
    }
    SWATHBOOK_TRY(minute, parse_clock(*text, field));
    return std::optional(minute);
}

Result<void> check_order(const RecordDays& days) {
    if (days.end < days.date) {
        return fail(ErrorCode::inconsistent, "end_date",
                    fmt::format("The application ended on {}, before it began on {}. Check both.",
                                text_of(days.end), text_of(days.date)));
    }
    if (days.completed && *days.completed < days.date) {
        return fail(ErrorCode::inconsistent, "completed",
                    fmt::format("The record was completed on {}, before the application on {}. "
                                "Check both.",
                                text_of(*days.completed), text_of(days.date)));
    }
    if (days.completed && *days.completed > days.as_of) {
        return fail(ErrorCode::inconsistent, "completed",
                    fmt::format("The record is said to be completed on {}, after the day of asking "
                                "({}). Check both.",
                                text_of(*days.completed), text_of(days.as_of)));
    }
    return {};
}

std::string clock_text(std::int32_t minute) {
    return fmt::format("{:02}:{:02}", minute / 60, minute % 60);
}

}  // namespace

std::int32_t leading_number(std::string_view cell) {
    std::int32_t number = 0;
    for (const char character : cell) {
        if (character < '0' || character > '9') {
            break;
        }
        number = number * 10 + (character - '0');
    }
    return number;
}

Result<std::int32_t> parse_clock(std::string_view text, std::string_view field) {
    const auto is_digit = [&](std::size_t i) { return text[i] >= '0' && text[i] <= '9'; };
    const bool has_shape = text.size() == 5 && text[2] == ':' && is_digit(0) && is_digit(1) &&
                           is_digit(3) && is_digit(4);
    const std::int32_t hour = has_shape ? leading_number(text.substr(0, 2)) : 24;
    const std::int32_t minute = has_shape ? leading_number(text.substr(3, 2)) : 60;
    if (hour > 23 || minute > 59) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("\"{}\" is not a time of day. Write hours and minutes, for example "
                                "16:30.",
                                text.substr(0, 20)));
    }
    return hour * 60 + minute;
}

Result<RecordDays> read_days(const RecordCheckRequest& request) {
    SWATHBOOK_TRY(date, parse_civil_date(request.date, "date"));
    SWATHBOOK_TRY(as_of, parse_civil_date(request.as_of, "as_of"));
    SWATHBOOK_TRY(end, maybe_date(request.end_date, "end_date"));
    SWATHBOOK_TRY(end_minute, maybe_clock(request.end_time, "end_time"));
    SWATHBOOK_TRY(completed, maybe_date(request.completed, "completed"));
    SWATHBOOK_TRY(completed_minute, maybe_clock(request.completed_time, "completed_time"));
    const RecordDays days{date, end.value_or(date), end_minute, completed, completed_minute, as_of};
    SWATHBOOK_CHECK(check_order(days));
    return days;
}

std::optional<Deadline> deadline_of(const AuthorityRow& authority, const RecordDays& days) {
    if (authority.deadline.empty()) {
        return std::nullopt;
    }
    const std::int32_t count = leading_number(authority.deadline);
    Deadline deadline;
    if (authority.deadline.back() == 'd') {
        deadline.day = plus_days(days.end, count);
        deadline.text = text_of(deadline.day);
        deadline.expression = count == 0 ? fmt::format("{}, the same day", text_of(days.end))
                                         : fmt::format("{} + {} days", text_of(days.end), count);
        return deadline;
    }
    // Without the hour of the end, the earliest end counts: midnight at the start of the day.
    const std::int32_t end_minute = days.end_minute.value_or(0);
    const std::int32_t total = end_minute + count * 60;
    deadline.day = plus_days(days.end, total / 1440);
    deadline.minute = total % 1440;
    deadline.text = fmt::format("{} {}", text_of(deadline.day), clock_text(*deadline.minute));
    deadline.expression =
        fmt::format("{} {} + {} h", text_of(days.end), clock_text(end_minute), count);
    return deadline;
}

Timeliness timeliness_of(const std::optional<Deadline>& deadline, const RecordDays& days) {
    if (!deadline) {
        return Timeliness::no_deadline;
    }
    if (!days.completed) {
        return days.as_of > deadline->day ? Timeliness::overdue : Timeliness::open;
    }
    const bool is_later_that_day = *days.completed == deadline->day && deadline->minute &&
                                   days.completed_minute.value_or(0) > *deadline->minute;
    return *days.completed > deadline->day || is_later_that_day ? Timeliness::late
                                                                : Timeliness::on_time;
}

std::optional<CivilDate> keep_until(const AuthorityRow& authority, const RecordDays& days) {
    if (authority.keep_years.empty()) {
        return std::nullopt;
    }
    return plus_years(days.end, leading_number(authority.keep_years));
}

}  // namespace swathbook::notebook::detail
