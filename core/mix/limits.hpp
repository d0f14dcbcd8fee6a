#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/product.hpp"
#include "core/mix/rates.hpp"

/// Label limits against what would be delivered, and the strictest of several labels.
namespace swathbook::mix {

enum class LimitStatus : std::uint8_t {
    within,       ///< the delivered figure respects the limit
    above,        ///< more than the label allows
    below,        ///< less than the label asks for
    not_entered,  ///< the limit was not typed: nothing can be said, and nothing is allowed by it
    cannot_tell,  ///< the limit was typed, but a figure to compare it with is missing
};
[[nodiscard]] std::string_view word_of(LimitStatus status);

/// One limit beside what would be delivered.
struct LimitCheck {
    std::string limit{};  ///< its word on the card: "max_single_rate"
    LimitStatus status = LimitStatus::not_entered;
    std::string delivered{};        ///< in the limit's own unit: "64 fl oz/ac"
    std::string allowed{};          ///< as typed from the label
    std::optional<double> share{};  ///< delivered divided by the limit; 1 is exactly at it
    std::string where{};            ///< place on the label
    std::string why{};              ///< what is missing, or what to do
};

/// What one application of one product does to the ground it wets. Rates are in the product's own
/// measure (rates.hpp). Absent figures are unknown, not zero.
struct Delivery {
    std::optional<double> per_area_si{};        ///< of this application
    std::optional<double> per_mix_si{};         ///< of the finished mix
    std::optional<double> mix_per_area_si{};    ///< carrier and all
    std::optional<double> earlier_area_si{};    ///< same product, same ground, earlier this year
    std::optional<int> earlier_applications{};  ///< same product, same ground, earlier this year
};

/// Compares one yearly cap with what was applied before plus this application. Every operation that
/// meets a yearly cap asks here.
///
/// Without `earlier_area_si` the answer is `cannot_tell` (unless this application alone is already
/// above): what was applied earlier is not zero because nobody typed it.
///
/// @param reading which ingredient the cap counts when the product holds several
/// @accuracy a figure equal to the cap but for rounding (1e-9 of it) is within
/// @cases tests/unit/mix/limits_test.cpp
[[nodiscard]] LimitCheck check_yearly_cap(const ProductCard& card, const Delivery& delivery,
                                          const RateReading& reading, UnitSystem units);

/// Rate, carrier, percent and number-of-applications limits of one card against one delivery, in
/// the order of LabelLimits, absent ones as `not_entered`.
/// @cases tests/unit/mix/limits_test.cpp
[[nodiscard]] std::vector<LimitCheck> check_limits(const ProductCard& card,
                                                   const Delivery& delivery,
                                                   const RateReading& reading, UnitSystem units);

/// A limit's word as a person says it: "max_single_rate" -> "most in one application".
[[nodiscard]] std::string_view spoken_limit(std::string_view limit);

/// Puts a finding for every check that is broken (`stop`), short of a minimum (`warning`), or that
/// cannot be told (`warning`).
void report_checks(const ProductCard& card, std::span<const LimitCheck> checks, Notes& notes);

/// The binding one of several labels' values for one limit.
template <class Value>
struct Binding {
    std::optional<Value> value{};               ///< absent when nobody entered it
    std::string text{};                         ///< as typed: "7 days"
    std::string product{};                      ///< whose label binds
    std::string where{};                        ///< place on that label
    std::vector<std::string> not_entered_by{};  ///< products whose label was not read for it
};
struct ReentryBinding {
    std::optional<Duration> after{};
    std::string text{};               ///< as typed: "48 h"
    std::optional<bool> until_dry{};  ///< some label asks for dry spray; absent: not all were read
    std::string product{};            ///< whose time binds
    std::string where{};
    std::vector<std::string> not_entered_by{};
};

/// The strictest of each limit that holds for everyone on the site at once. Rates and percentages
/// are not here: they bind each product alone.
struct StrictestLimits {
    Binding<MixPerArea> min_carrier{};
    Binding<MixPerArea> max_carrier{};
    ReentryBinding reentry{};
    Binding<Duration> grazing{};
    Binding<Duration> dairy_grazing{};
    Binding<Duration> haying{};
    Binding<Duration> slaughter{};
    Binding<Duration> harvest{};
    Binding<Duration> replanting{};
    Binding<Duration> rainfast{};
    Binding<DropletLimitClass> finest_droplets{};
    Binding<DropletLimitClass> coarsest_droplets{};
    Binding<Speed> min_wind{};
    Binding<Speed> max_wind{};
    Binding<Temperature> max_temperature{};
    Binding<Length> max_boom_height{};
};

/// Whether a card is of something that carries no pesticide label: a water conditioner, wetting
/// agent, oil, drift agent, defoamer, compatibility agent or dye without a registration number.
[[nodiscard]] bool is_unregistered_adjuvant(const ProductCard& card);

/// The strictest of several labels, limit by limit: the longest wait, the narrowest window. A
/// product that did not enter a limit never loosens it; its name is listed. Unregistered adjuvants
/// are listed only for limits they did enter.
///
/// Identities: never looser than any single card; the order of the cards changes no value; one card
/// gives its own limits back.
/// @cases tests/unit/mix/limits_test.cpp
[[nodiscard]] StrictestLimits strictest_of(std::span<const ProductCard* const> cards);

/// Findings where two labels cannot be obeyed together (a least wind above a most wind, a least
/// carrier above a most carrier, droplets finer than finest).
void report_conflicts(const StrictestLimits& limits, Notes& notes);

}  // namespace swathbook::mix
