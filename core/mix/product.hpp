#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/quantity/label_rate.hpp"
#include "core/quantity/reading.hpp"

/// The product card: what a person copies from the label in hand before anything is mixed.
///
/// Nothing here is ever filled in by the program. A limit that was not typed is absent, and absent
/// means "not entered", never "no limit".
namespace swathbook::mix {

/// Whether the product as sold is poured or weighed.
enum class Form : std::uint8_t { liquid, dry };

/// What the product is when it meets water: decides its place in the order of addition.
enum class Formulation : std::uint8_t {
    water_conditioner,         ///< ammonium sulphate and the like
    compatibility_agent,       ///< keeps partners from gelling or flaking
    defoamer,                  ///< keeps foam down
    soluble_packet,            ///< water-soluble bag
    soluble_granule,           ///< dry, dissolves (SP, SG)
    dispersible_granule,       ///< dry flowable, water-dispersible granule (DF, WG, WDG)
    wettable_powder,           ///< WP
    suspension,                ///< liquid flowable, suspension concentrate (F, SC)
    capsule_suspension,        ///< microencapsulated (ME, CS)
    emulsifiable_concentrate,  ///< EC
    soluble_liquid,            ///< true solution (SL)
    surfactant,                ///< non-ionic and other wetting agents
    oil,                       ///< crop oil, methylated seed oil
    drift_agent,               ///< drift reducer, deposition aid
    dye,                       ///< marker dye
    other,                     ///< not said: placed by hand
};

/// Droplet size classes by their names in ANSI/ASABE S572 and ISO 25358, finest first, as a label
/// words its limit.
enum class DropletLimitClass : std::uint8_t {
    extremely_fine,
    very_fine,
    fine,
    medium,
    coarse,
    very_coarse,
    extremely_coarse,
    ultra_coarse,
};

/// One active ingredient of a product. Salt and acid are different substances on a scale, so each
/// strength is kept apart and none is worked out from the other.
struct Ingredient {
    std::string name{};
    std::optional<Reading<Kind::ingredient_strength>> strength{};  ///< liquid: lb a.i./gal
    std::optional<Reading<Kind::acid_strength>> acid_strength{};   ///< liquid: lb a.e./gal
    std::optional<Reading<Kind::percent_by_weight>> part{};        ///< a.i. in the product, w/w
    std::optional<Reading<Kind::percent_by_weight>> acid_part{};   ///< a.e. in the product, w/w
};

/// A number the label gives, and where on the label it stands ("page 3, Use restrictions").
template <Kind K>
struct Limit {
    Reading<K> value{};
    std::string where{};
};
using DurationLimit = Limit<Kind::duration>;
using CarrierLimit = Limit<Kind::mix_per_area>;
using PercentLimit = Limit<Kind::percent_by_volume>;
using SpeedLimit = Limit<Kind::speed>;
using TemperatureLimit = Limit<Kind::temperature>;
using LengthLimit = Limit<Kind::length>;

struct RateLimit {
    LabelRate value{};  ///< on the basis the label uses; a yearly one counts a calendar year
    std::string where{};
};
struct CountLimit {
    int value = 0;
    std::string where{};
};
struct DropletLimit {
    DropletLimitClass value = DropletLimitClass::medium;
    std::string where{};
};
struct TextLimit {
    std::string text{};
    std::string where{};
};
/// When people may enter: after a time, after the spray has dried, or after both.
struct ReentryLimit {
    std::optional<Reading<Kind::duration>> after{};
    bool until_dry = false;
    std::string where{};
};

/// What the label allows, as typed from it. Absent is "not entered", never "no limit"; a label that
/// says there is no wait is entered as "0 d".
struct LabelLimits {
    std::optional<RateLimit> min_single_rate{};
    std::optional<RateLimit> max_single_rate{};
    std::optional<RateLimit> max_yearly_rate{};
    std::optional<CountLimit> max_applications{};  ///< in one year
    std::optional<DurationLimit> min_interval{};   ///< between two applications
    std::optional<CarrierLimit> min_carrier{};     ///< least mix per area
    std::optional<CarrierLimit> max_carrier{};     ///< most mix per area
    std::optional<PercentLimit> min_percent{};     ///< of product in the mix, by volume
    std::optional<PercentLimit> max_percent{};     ///< of product in the mix, by volume
    std::optional<ReentryLimit> reentry{};         ///< people without the label's protection
    std::optional<DurationLimit> grazing{};        ///< livestock other than dairy
    std::optional<DurationLimit> dairy_grazing{};  ///< lactating dairy animals
    std::optional<DurationLimit> haying{};         ///< cutting hay or forage
    std::optional<DurationLimit> slaughter{};      ///< removal from treated forage before slaughter
    std::optional<DurationLimit> harvest{};        ///< last application to harvest
    std::optional<DurationLimit> replanting{};     ///< until seed or plants may go in
    std::optional<DurationLimit> rainfast{};       ///< dry time the label asks for
    std::optional<DropletLimit> finest_droplets{};  ///< "coarse or coarser" -> coarse
    std::optional<DropletLimit> coarsest_droplets{};
    std::optional<SpeedLimit> min_wind{};
    std::optional<SpeedLimit> max_wind{};
    std::optional<TemperatureLimit> max_temperature{};  ///< of the air
    std::optional<LengthLimit> max_boom_height{};       ///< above target
    std::optional<TextLimit> protective_equipment{};    ///< PPE, in the label's words
    std::vector<TextLimit> other{};                     ///< anything else, in the label's words
};

/// A product as its label describes it.
struct ProductCard {
    std::string name{};
    /// "nnn-nnn" or "nnn-nnn-nnn" (company-product[-distributor]); empty for what needs none.
    std::string registration{};
    /// Who registered it when the number is not in the EPA form ("pest authority of ..."); a number
    /// in another form is only taken when this is said.
    std::string registered_with{};
    Form form = Form::liquid;
    Formulation formulation = Formulation::other;
    std::vector<Ingredient> ingredients{};
    std::optional<Reading<Kind::density>> density{};  ///< of the product as sold
    LabelLimits limits{};
};

[[nodiscard]] std::string_view word_of(Form form);
[[nodiscard]] std::string_view word_of(Formulation formulation);
[[nodiscard]] std::string_view word_of(DropletLimitClass droplets);

/// Checks a registration number's form; the number itself is not looked up anywhere.
///
/// Taken: "nnn-nnn" and "nnn-nnn-nnn" with one to six digits in a group, with or without
/// "EPA Reg. No." before it. With `registered_with` said, any printable text up to 60 bytes.
///
/// @param text             as typed
/// @param registered_with  another country's authority, or empty for the EPA form
/// @return the number alone, without the words before it and with single hyphens; empty for empty
/// @errors invalid_input{field} when it has another form
/// @source the number stands on every US label (40 CFR 156.10); its group form is from memory
/// @cases  tests/unit/mix/product_test.cpp
[[nodiscard]] Result<std::string> registration_number(std::string_view text,
                                                      std::string_view registered_with,
                                                      std::string_view field = "registration");

/// Refuses a card that contradicts itself or holds impossible numbers. Absent limits pass.
///
/// @errors invalid_input (no name, bad registration), out_of_range (strength, density, share or
///         limit not finite or not above 0; waits below 0), inconsistent (least above most)
/// @cases  tests/unit/mix/product_test.cpp
[[nodiscard]] Result<void> check_card(const ProductCard& card, std::string_view field = "product");

/// The words of the limits that were not typed, in the order of LabelLimits, e.g.
/// "max_yearly_rate". PPE and free text count; `other` does not.
[[nodiscard]] std::vector<std::string> not_entered(const LabelLimits& limits);

}  // namespace swathbook::mix
