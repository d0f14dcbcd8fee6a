#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "core/quantity/quantity.hpp"

namespace swathbook::calibration {

/// Which published limit condemns a tip. They disagree, so the choice is the user's and is named
/// beside every verdict.
enum class TipLimitRule : std::uint8_t {
    worn_10_low_5,         ///< over the maker's rating by 10 %, or under it by 5 %
    rating_10,             ///< 10 % either side of the maker's rating
    rating_5,              ///< 5 % either side of the maker's rating
    rating_10_and_mean_5,  ///< 10 % of the rating and 5 % of the mean, both
    mean_5,                ///< 5 % either side of the mean
    mean_5_clean_low,   ///< 5 % of the mean; high ones replaced, low ones cleaned and caught again
    mean_10,            ///< 10 % either side of the mean
    french_inspection,  ///< 15 % of the rating, 10 % under 1 L/min; over a third bad: all
    european_in_use,    ///< from memory, not read
    own,                ///< the user's own figures
};

/// How far a tip may be off, as fractions (0.10 = 10 %). An absent side is not tested.
struct TipLimits {
    std::optional<double> above_rating{};
    std::optional<double> below_rating{};
    std::optional<double> above_mean{};
    std::optional<double> below_mean{};
    std::optional<double> replace_all_over{};  ///< share of bad tips above which all are replaced
};

struct PublishedTipLimit {
    TipLimitRule rule;
    std::string_view text;    ///< the limit in words
    std::string_view source;  ///< where it is printed
    bool seen;                ///< read there; otherwise from memory and never a hard verdict
};

/// Every rule but the user's own, in the order of the enumeration.
[[nodiscard]] std::span<const PublishedTipLimit> published_tip_limits();
[[nodiscard]] const PublishedTipLimit& published_tip_limit(TipLimitRule rule);

/// The figures of a rule for tips of a nominal flow. Where the rating is not known, a rule that
/// may then use the mean of the set does (French inspection); others leave that side out.
///
/// @param nominal rated flow at the measured pressure, when known
[[nodiscard]] TipLimits limits_of(TipLimitRule rule, std::optional<Flow> nominal);

}  // namespace swathbook::calibration
