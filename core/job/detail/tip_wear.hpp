#pragma once

#include <optional>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/calibration/tip_check.hpp"
#include "core/job/tip_check.hpp"
#include "core/tips/known_rating.hpp"

namespace swathbook::job::detail {

/// The rating, and what of it holds at the pressure measured.
struct Rated {
    std::optional<tips::KnownRating> known{};
    std::optional<Flow> flow{};
    std::optional<Pressure> pressure{};  ///< at which sizes can be compared
};

/// Wear since an earlier check and what is left to the limit of the rule, or to 10 % of the rating
/// where the rule has none.
/// @errors inconsistent without a rating or with another number of tips; invalid_input without the
///         use between the checks; out_of_range
[[nodiscard]] Result<WearForecast> forecast_wear(const EarlierTipCheck& earlier,
                                                 const calibration::TipSetResult& judged,
                                                 const Rated& rated,
                                                 const calibration::TipLimits& limits,
                                                 Notes& notes);

}  // namespace swathbook::job::detail
