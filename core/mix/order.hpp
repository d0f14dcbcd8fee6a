#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/product.hpp"

/// The order in which products go into the tank.
namespace swathbook::mix {

/// Published orders, named by what sets them apart. They disagree with each other; the label goes
/// before all of them.
enum class OrderConvention : std::uint8_t {
    as_label,                          ///< the order the labels give, typed by the user
    dry_suspension_solution_emulsion,  ///< A-W-A-M-L-E-S; start 1/2 to 3/4 full
    dry_liquid_emulsion_capsule,       ///< start 1/3 full; capsules after emulsions
    dry_suspension_emulsion_solution,  ///< A-P-P-L-E-S; true solutions last
    packet_dry_conditioner_liquid,     ///< packets and dry before water conditioner
};
[[nodiscard]] std::string_view word_of(OrderConvention convention);

/// One step of a published order. `formulations` is a set: bit n stands for Formulation n.
struct ConventionStep {
    OrderConvention convention = OrderConvention::as_label;
    double fill_low = 0.0;   ///< how full the tank should be, least; 0 when the step does not fill
    double fill_high = 0.0;  ///< most
    std::uint32_t formulations = 0;
    std::string_view text{};
};

/// Every step of every published order, convention by convention.
/// @source data/mix-orders/source.txt
/// @cases  tests/unit/mix/order_test.cpp compares it with data/mix-orders/orders.tsv
[[nodiscard]] std::span<const ConventionStep> convention_steps();

/// The publication a convention is taken from; for as_label the words "product labels".
[[nodiscard]] std::string_view source_of(OrderConvention convention);

/// One step at the tank.
struct OrderStep {
    int number = 1;
    std::string text{};
    std::vector<std::string> products{};  ///< what goes in now
    std::optional<Fraction> fill_low{};   ///< of this load, where the step fills
    std::optional<Fraction> fill_high{};
    std::string source{};
};

/// Puts products in order. Steps with nothing to add are left out, fill steps are kept. What a
/// convention does not place comes in one step before the last fill, with a finding.
///
/// @param cards       products of the load, in any order
/// @param label_order for as_label: product names, first in first
/// @errors invalid_input{label_order} when as_label lacks names or misses a product; not_found for
/// a
///         name that is no product of the load
/// @cases  tests/unit/mix/order_test.cpp
[[nodiscard]] Result<std::vector<OrderStep>> mixing_order(std::span<const ProductCard* const> cards,
                                                          OrderConvention convention,
                                                          std::span<const std::string> label_order,
                                                          Notes& notes);

}  // namespace swathbook::mix
