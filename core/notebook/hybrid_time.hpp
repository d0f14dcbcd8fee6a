#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace swathbook::notebook {

/// When an entry was made: wall-clock milliseconds, and a counter that keeps the order of causes
/// when clocks stand still, run back, or disagree. Stamps of one device always grow, and a stamp
/// made after reading another is greater than it.
///
/// @source S. Kulkarni, M. Demirbas and others, "Logical Physical Clocks" (2014): l and c here are
///         milliseconds and counter
struct HybridTime {
    std::int64_t milliseconds = 0;  ///< Unix time, UTC, 0 to the end of the year 9999
    std::uint16_t counter = 0;

    auto operator<=>(const HybridTime&) const = default;
};

/// The last stamp there is: 9999-12-31T23:59:59.999Z.
inline constexpr std::int64_t last_millisecond = 253402300799999;

/// A stamp may lie this far ahead of the reader's clock. A day lets a clock set to the wrong zone
/// (at most 14 hours) through and stops a wrong date, which would win every later edit.
inline constexpr std::int64_t largest_lead_ms = 24LL * 3600 * 1000;

/// The stamp of a new entry.
///
/// @param last   the greatest stamp this device has made or read
/// @param now_ms the wall clock, Unix milliseconds
/// @return a stamp greater than `last`, and at the wall clock unless `last` is ahead of it
/// @errors out_of_range{made} when the clock is before 1970 or after 9999
[[nodiscard]] Result<HybridTime> next_stamp(const HybridTime& last, std::int64_t now_ms);

/// @errors out_of_range{made} when `made` is more than largest_lead_ms ahead of the wall clock
[[nodiscard]] Result<void> check_not_ahead(const HybridTime& made, std::int64_t now_ms);

/// "2026-04-09T14:03:05.123Z#00007": sorts as text in the order of the stamps.
[[nodiscard]] std::string text_of(const HybridTime& time);
/// Only the wall-clock part, "2026-04-09T14:03:05.123Z".
[[nodiscard]] std::string utc_text(std::int64_t milliseconds);

/// Reads exactly the text form above.
/// @errors invalid_input{field}
[[nodiscard]] Result<HybridTime> parse_hybrid_time(std::string_view text, std::string_view field);

}  // namespace swathbook::notebook
