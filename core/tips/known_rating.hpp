#pragma once

#include <optional>
#include <string>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"
#include "core/tips/iso_size.hpp"

namespace swathbook::tips {

/// A rating as people give it: a size of the colour code, or a flow at a pressure from the maker's
/// table.
struct RatingInput {
    std::string size{};
    std::optional<SizeConvention> convention{};
    std::optional<Reading<Kind::flow>> flow{};
    std::optional<Reading<Kind::pressure>> pressure{};
    double exponent = 0.5;
};

/// A rating understood.
struct KnownRating {
    Rating rating{};
    bool has_pressure = true;  ///< false: the flow is meant at whatever pressure is used
    std::optional<IsoSize> size{};
    SizeConvention convention = SizeConvention::us_gallons_at_40_psi;
};

/// Understands a rating. A size without a convention is read in the one usual in the person's units
/// (US: gal/min at 40 psi; metric: L/min at 3 bar) and says so, because the two are 1.3 % apart.
///
/// @param where path before the member names, e.g. "tips[2]." or empty
/// @return nothing when neither a size nor a flow was given
/// @errors not_found (size), out_of_range, inconsistent (size and flow together)
[[nodiscard]] Result<std::optional<KnownRating>> understand_rating(const RatingInput& input,
                                                                   const std::string& where,
                                                                   Notes& notes);

/// The rated flow at a pressure; the rated flow itself when either pressure is not known.
[[nodiscard]] Flow rated_flow_at(const KnownRating& known, std::optional<Pressure> pressure);

/// "size 04, 0.4 gal/min at 40 psi".
[[nodiscard]] std::string describe(const KnownRating& known, UnitSystem units);

}  // namespace swathbook::tips
