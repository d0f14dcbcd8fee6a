#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/calibration/tip_check.hpp"
#include "core/quantity/reading.hpp"
#include "core/tips/iso_size.hpp"

/// Tips worn, clogged or mixed: every tip against the maker's rating at the measured pressure and
/// against the mean of the set, and what that does to the rate.
namespace swathbook::job {

/// One tip's catch, where the tips were not all caught alike.
struct TipCatch {
    std::optional<Reading<Kind::flow>> flow{};
    std::optional<Reading<Kind::volume>> volume{};
    std::optional<Reading<Kind::duration>> time{};  ///< absent: the time of all
};

/// An earlier check of the same tips in the same order, to see how fast they wear.
struct EarlierTipCheck {
    std::vector<Reading<Kind::flow>> flows{};
    std::optional<Reading<Kind::pressure>> pressure{};  ///< absent: as now
    std::optional<Reading<Kind::area>> area_since{};
    std::optional<Reading<Kind::duration>> time_since{};
};

/// How far a tip may be off; an absent side is not tested.
struct TipLimitFigures {
    std::optional<Fraction> above_rating{};
    std::optional<Fraction> below_rating{};
    std::optional<Fraction> above_mean{};
    std::optional<Fraction> below_mean{};
};

struct TipCheckRequest {
    std::vector<Reading<Kind::flow>> flows{};
    std::vector<Reading<Kind::volume>> volumes{};
    std::optional<Reading<Kind::duration>> catch_time{};
    std::vector<TipCatch> catches{};

    std::string size{};
    std::optional<tips::SizeConvention> convention{};
    std::optional<Reading<Kind::flow>> rated_flow{};
    std::optional<Reading<Kind::pressure>> rated_pressure{};
    double exponent = 0.5;
    std::optional<Reading<Kind::pressure>> pressure{};  ///< at the tips while catching

    std::optional<calibration::TipLimitRule> limit{};
    std::optional<TipLimitFigures> own_limits{};
    bool replace_at_limit = false;

    std::optional<Reading<Kind::speed>> speed{};
    std::optional<Reading<Kind::length>> spacing{};
    std::optional<Reading<Kind::length>> width{};
    std::optional<EarlierTipCheck> earlier{};
};

/// How many tips another published limit would condemn: they disagree, and it shows.
struct OtherRuleOutcome {
    calibration::TipLimitRule limit{};
    std::string text{};
    std::string source{};
    std::vector<int> out{};
    std::vector<int> at_limit{};
};

struct WearForecast {
    Estimate<Kind::fraction> gained{};                ///< since the earlier check, of the rating
    std::optional<Estimate<Kind::area>> area_left{};  ///< until the mean reaches the limit
    std::optional<Estimate<Kind::duration>> time_left{};
};

struct TipCheckAnswer {
    std::vector<calibration::TipResult> tips{};
    Flow mean{};
    Fraction variation{};             ///< coefficient of variation, n - 1
    Fraction variation_population{};  ///< the same with n
    std::optional<Flow> rated{};      ///< at the measured pressure
    std::optional<Fraction> mean_from_rating{};
    TipLimitFigures limits{};  ///< that judged, as figures
    std::string limit_text{};  ///< and in words
    std::string limit_source{};
    std::vector<int> replace{};
    std::vector<int> clean{};
    bool replace_all = false;
    Flow mean_after{};  ///< when the condemned tips put out what they are rated for
    std::optional<Fraction> after_from_rating{};
    std::optional<MixPerArea> rate_now{};
    std::optional<MixPerArea> rate_after{};
    std::optional<MixPerArea> rate_as_rated{};
    /// Pressure a rate controller would settle at, as a part of the one it should need.
    std::optional<Fraction> controller_pressure{};
    std::optional<WearForecast> wear{};
    std::vector<OtherRuleOutcome> other_limits{};
};

/// Judges a set of tips.
///
///   rated flow at the measured pressure = rated flow * (pressure / rated pressure) ^ exponent
///   rate = mean flow / (speed * spacing)
///
/// Catches come as `flows`, or as `volumes` with one `catch_time`, or mixed in `catches`.
///
/// @valid  1 to 500 tips
/// @errors invalid_input when there is no catch or more than one way of giving it; inconsistent
///         when a limit needs a rating that is not given; out_of_range for zero or absurd readings
/// @source limits: core/calibration/tip_check_limits.hpp; square-root law: core/tips/capacity.hpp
/// @cases  tests/cases/tips/tip_check.case
[[nodiscard]] Result<TipCheckAnswer> tip_check(const TipCheckRequest& request, Notes& notes);

}  // namespace swathbook::job
