#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/calibration/calibrate.hpp"

/// A class that calibrates the same sprayer, or sprayers of a kind: what each found, how far apart
/// they are, and why.
namespace swathbook::calibration {

/// What one learner measured. What is left out is taken from the class.
struct Learner {
    std::string name{};
    std::optional<Reading<Kind::length>> width{};
    std::optional<Reading<Kind::length>> course_length{};
    std::vector<Reading<Kind::duration>> times{};  ///< for the course
    std::vector<Reading<Kind::volume>> catches{};
    std::optional<Reading<Kind::duration>> catch_time{};  ///< the course time when not entered
    std::optional<Reading<Kind::flow>> flow{};
    std::optional<Reading<Kind::speed>> speed{};
    std::optional<Reading<Kind::volume>> refill{};
    std::optional<Reading<Kind::area>> area{};
    std::optional<Reading<Kind::mix_per_area>> hand_answer{};
};

struct LearnersRequest {
    std::vector<Learner> learners{};
    SprayerKind sprayer = SprayerKind::backpack;
    std::optional<Reading<Kind::length>> width{};  ///< of everybody who does not say another
    std::optional<Reading<Kind::length>> course_length{};
    std::optional<Reading<Kind::duration>> catch_time{};
    std::optional<Reading<Kind::area>> area{};
    std::optional<int> tips{};
    std::optional<CatchCovers> catch_covers{};
};

enum class LearnerHandVerdict : std::uint8_t {
    agrees,    ///< to the last digit given
    rounding,  ///< a figure on the way was rounded too early
    shortcut,  ///< what a shortcut gives that does not hold here
    slip,      ///< nothing known gives it
};

struct LearnerHand {
    MixPerArea answer{};
    Fraction difference{};  ///< of what the learner's own figures give
    LearnerHandVerdict verdict = LearnerHandVerdict::agrees;
    std::string shortcut{};  ///< code, as in calibrate
    std::string text{};
};

struct LearnerResult {
    std::string name{};
    Estimate<Kind::mix_per_area> output{};
    std::optional<Speed> speed{};
    std::optional<Flow> flow{};
    std::optional<Length> width{};
    Fraction from_mean{};
    /// What 95 of 100 like the others would lie in; absent with fewer than three others.
    std::optional<MixPerArea> others_low{};
    std::optional<MixPerArea> others_high{};
    std::optional<bool> outside{};
    std::optional<LearnerHand> hand{};
    std::vector<std::string> remarks{};  ///< what calibrate warns of in these figures
};

/// What the class measured differently.
enum class SpreadSource : std::uint8_t { speed, flow, width, refill, area };

struct SpreadShare {
    SpreadSource source = SpreadSource::speed;
    Fraction deviation{};  ///< of this figure over the class, of its mean
    /// Of the variance of the outputs; below zero where it evens out what another spreads.
    Fraction share{};
};

struct LearnersAnswer {
    int count = 0;
    Estimate<Kind::mix_per_area> mean{};
    std::optional<MixPerArea> standard_deviation{};
    std::optional<Fraction> variation{};  ///< coefficient: deviation over mean
    MixPerArea lowest{};
    std::string lowest_by{};
    MixPerArea highest{};
    std::string highest_by{};
    Fraction spread{};                         ///< highest over lowest, less one
    std::vector<SpreadShare> spread_shares{};  ///< largest first; empty when methods differ
    std::vector<LearnerResult> learners{};
};

/// Asks calibrate for each learner, and sets the class side by side.
///
///   others:  mean +- t(n - 2) s sqrt(1 + 1 / (n - 1))   of the n - 1 others
///   shares:  output = flow / (speed width), so ln output is a sum, and the share of a term is its
///            covariance with ln output over the variance of ln output; the shares add up to one
///
/// @errors as calibrate, with "learners[i]." before the member; invalid_input (nobody, no name),
///         inconsistent (a name twice)
/// @valid  1 to 500 learners; shares are first order, fit for spreads below about 30 %
/// @source deviation and interval for one further observation: NIST/SEMATECH e-Handbook of
///         Statistical Methods, 1.3.5.6 and (for the interval) from memory; shares: arithmetic
/// @cases  tests/cases/calibration/learners.case
/// Identities: shares add up to 1; the order of the learners changes no figure beyond rounding;
/// equal learners have no deviation.
[[nodiscard]] Result<LearnersAnswer> learners(const LearnersRequest& request, Notes& notes);

}  // namespace swathbook::calibration
