#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/calibration/tip_check_limits.hpp"
#include "core/calibration/tip_check_statistics.hpp"
#include "core/quantity/quantity.hpp"

/// Which tips of a set are worn, clogged or of another size, judged against the maker's rating and
/// against the mean of the set.
namespace swathbook::calibration {

/// What a tip was caught at.
struct TipFlow {
    Flow flow{};
    double resolution = 0.0;  ///< relative: half the last digit read over the reading; 0 unknown
};

/// A size the tip might be instead, and its flow at the measured pressure.
struct OtherSize {
    std::string size;
    Flow flow{};
};

/// What the set is judged by.
struct TipSetReference {
    std::optional<Flow> rated{};  ///< maker's flow at the measured pressure
    TipLimits limits{};
    std::vector<OtherSize> other_sizes{};
};

enum class TipVerdict : std::uint8_t {
    ok,
    at_limit,     ///< exactly at a limit, so not over it
    high_worn,    ///< over the high limit
    low_clogged,  ///< under the low limit
    other_size,   ///< out of limits and reads like another size
};

enum class TipAction : std::uint8_t { keep, watch, replace, clean };

struct TipResult {
    int tip = 0;  ///< from 1, in the order caught
    Flow flow{};
    std::optional<Fraction> from_rating{};
    Fraction from_mean{};
    TipVerdict verdict = TipVerdict::ok;
    TipAction action = TipAction::keep;
    /// The last digit read decides whether this tip is in or out: catch it again for longer.
    bool reading_decides = false;
    std::string what_to_do{};
    std::optional<std::string> reads_like{};  ///< the other size, for verdict other_size
};

struct TipSetResult {
    Spread spread{};  ///< of the flows, in SI
    std::vector<TipResult> tips{};
    std::optional<OutlierTest> outlier{};
    bool replace_all = false;
};

/// Judges every tip.
///
///   deviation from rating = flow / rated - 1,  from mean = flow / mean - 1
///
/// A tip is "at the limit" when its deviation equals the limit to within 1e-9, which is what binary
/// arithmetic can blur: 0.440 / 0.400 - 1 must not become "over 10 %" by its last bit. A tip within
/// the last digit read of a limit keeps its verdict and is marked `reading_decides`.
/// A tip out of limits reads like another size when it is between 5 % under and 10 % over that
/// size's flow, and nearer to it than to its own rating.
/// Identities: scaling all flows and ratings by one factor changes no verdict; permuting the tips
/// permutes the verdicts.
///
/// @param flows one or more, above 0
/// @source limits as named in tip_check_limits.hpp; the 5 % and 10 % by which another size is
///         recognised: common practice (a new tip within 5 % of nominal, a worn one up to 10 %
///         over)
/// @cases  tests/cases/tips/tip_check.case
[[nodiscard]] TipSetResult judge_tips(std::span<const TipFlow> flows,
                                      const TipSetReference& reference);

/// Only the verdicts of judge_tips, in order: for comparing one set under several limits.
[[nodiscard]] std::vector<TipVerdict> verdicts_under(std::span<const TipFlow> flows,
                                                     std::optional<Flow> rated,
                                                     const TipLimits& limits);

/// What the set as a whole says: mixed sizes, all high or all low together, an outlier.
///
void find_in_set(const TipSetResult& result, const TipSetReference& reference, Notes& notes);

}  // namespace swathbook::calibration
