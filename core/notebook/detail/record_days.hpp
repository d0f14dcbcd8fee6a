#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "core/base/civil_date.hpp"
#include "core/notebook/record_check.hpp"
#include "core/notebook/rule_tables.hpp"

namespace swathbook::notebook::detail {

/// The days of a request, read and found to be in a possible order.
struct RecordDays {
    CivilDate date;
    CivilDate end;
    std::optional<std::int32_t> end_minute;  ///< minutes after midnight
    std::optional<CivilDate> completed;
    std::optional<std::int32_t> completed_minute;
    CivilDate as_of;
};
[[nodiscard]] Result<RecordDays> read_days(const RecordCheckRequest& request);

/// Reads "16:30" as minutes after midnight.
/// @errors invalid_input{field}
[[nodiscard]] Result<std::int32_t> parse_clock(std::string_view text, std::string_view field);

struct Deadline {
    CivilDate day;
    std::optional<std::int32_t> minute;  ///< of that day, when the rule counts in hours
    std::string text;
    std::string expression;  ///< "2026-04-09 + 5 days"
};
/// Nothing when the authority has no known deadline.
[[nodiscard]] std::optional<Deadline> deadline_of(const AuthorityRow& authority,
                                                  const RecordDays& days);
[[nodiscard]] Timeliness timeliness_of(const std::optional<Deadline>& deadline,
                                       const RecordDays& days);
[[nodiscard]] std::optional<CivilDate> keep_until(const AuthorityRow& authority,
                                                  const RecordDays& days);

/// A whole number at the front of a table cell; the tables are checked when they are generated.
[[nodiscard]] std::int32_t leading_number(std::string_view cell);

}  // namespace swathbook::notebook::detail
