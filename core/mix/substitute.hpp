#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/limits.hpp"
#include "core/mix/product.hpp"
#include "core/mix/rates.hpp"

/// Another concentrate of the same ingredient: the same dose, not the same volume.
namespace swathbook::mix {

struct SubstituteRequest {
    ProductCard planned{};                      ///< the product the plan was made with
    LabelRate rate{};                           ///< its rate in the plan
    RateCounts measures = RateCounts::product;  ///< what a weight or share in the rate counts
    ProductCard in_hand{};                      ///< the product to be used
    std::string ingredient{};                   ///< the one to match, when a product holds several
    std::optional<Reading<Kind::mix_per_area>> mix_per_area{};  ///< to compare with every limit
    std::optional<Reading<Kind::density>>
        mix_density{};                             ///< for percent by weight; water if absent
    std::optional<LabelRate> applied_this_year{};  ///< of the product in hand, on this ground
    std::optional<int> applications_this_year{};   ///< of the product in hand, on this ground
};

/// What both products are compared in.
enum class DoseSubstance : std::uint8_t { acid, ingredient };

struct SubstituteAnswer {
    std::string ingredient{};
    DoseSubstance matched = DoseSubstance::acid;
    std::optional<AcidPerArea> acid_per_area{};              ///< the dose, when matched as acid
    std::optional<IngredientPerArea> ingredient_per_area{};  ///< the dose, otherwise
    LabelRate rate{};         ///< of the product in hand, per area or in the mix as the plan had it
    std::string text{};       ///< in handy units: "48 fl oz/ac"
    Fraction amount_ratio{};  ///< measure of the product in hand for one of the planned
    std::vector<LimitCheck> limits{};
    std::vector<std::string> not_entered{};
};

/// The rate of the product in hand that gives the dose of the planned one.
///
///   dose = rate * strength of the planned product;  rate in hand = dose / strength in hand
///
/// Acid equivalent is matched when both cards have it. Active ingredient is matched only when
/// neither card has an acid equivalent. One of each is refused: what part of a salt is acid cannot
/// be guessed.
///
/// Identities: a product replaced by itself keeps its rate; there and back gives the first rate.
///
/// @accuracy at most 6 roundings
/// @valid    liquid to liquid, dry to dry and across, when the strengths are on the cards
/// @errors   those of product_rate; inconsistent{ingredient} when the products have different
///           ingredients; invalid_input naming the strength that is missing
/// @source   Iowa State University Extension, Glyphosate math: compare salts on acid equivalent;
///           fl oz for 1 lb a.e. = 128 / (lb a.e. per gal)
/// @cases    tests/cases/mix/substitute.case, tests/cases/stories/11-*.case,
///           tests/unit/mix/substitute_test.cpp
[[nodiscard]] Result<SubstituteAnswer> substitute(const SubstituteRequest& request, Notes& notes);

}  // namespace swathbook::mix
