#include "core/mix/order.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>

namespace swathbook::mix {
namespace {

/// Gathers steps and numbers them.
class Sequence {
public:
    explicit Sequence(std::string_view source) : source_(source) {}

    void add(std::string text, std::vector<std::string> products, double fill_low = 0.0,
             double fill_high = 0.0) {
        OrderStep step;
        step.number = static_cast<int>(steps_.size()) + 1;
        step.text = std::move(text);
        step.products = std::move(products);
        step.source = source_;
        if (fill_high > 0.0) {
            step.fill_low = Fraction::from_si(fill_low);
            step.fill_high = Fraction::from_si(fill_high);
        }
        steps_.push_back(std::move(step));
    }
    [[nodiscard]] std::vector<OrderStep> take() { return std::move(steps_); }

private:
    std::string source_;
    std::vector<OrderStep> steps_;
};

using Cards = std::span<const ProductCard* const>;

bool holds(std::uint32_t formulations, Formulation formulation) {
    return ((formulations >> static_cast<unsigned>(formulation)) & 1U) != 0;
}

std::vector<std::string> names_in(Cards cards, std::uint32_t formulations) {
    std::vector<std::string> names;
    for (const ProductCard* card : cards) {
        if (holds(formulations, card->formulation)) {
            names.push_back(card->name);
        }
    }
    return names;
}

std::string joined(const std::vector<std::string>& names) {
    std::string text;
    for (const std::string& name : names) {
        text += text.empty() ? "" : ", ";
        text += name;
    }
    return text;
}

std::vector<std::string> not_placed(Cards cards, OrderConvention convention) {
    std::uint32_t placed = 0;
    for (const ConventionStep& step : convention_steps()) {
        placed |= step.convention == convention ? step.formulations : 0U;
    }
    return names_in(cards, ~placed);
}

std::vector<OrderStep> by_convention(Cards cards, OrderConvention convention, Notes& notes) {
    Sequence sequence(source_of(convention));
    std::vector<std::string> rest = not_placed(cards, convention);
    bool is_first = true;
    bool has_just_added = false;
    for (const ConventionStep& step : convention_steps()) {
        if (step.convention != convention) {
            continue;
        }
        if (step.fill_low == 1.0 && !rest.empty()) {
            if (cards.size() > 1) {
                notes.find(Severity::warning, "order_not_placed",
                           fmt::format("This order does not say where {} belongs. Look in the "
                                       "label.",
                                       joined(rest)),
                           std::string(source_of(convention)));
            }
            sequence.add("Add what this order does not place, where the label says.",
                         std::move(rest));
            rest.clear();
        }
        std::vector<std::string> products = names_in(cards, step.formulations);
        const bool only_waits = step.formulations == 0 && step.fill_high == 0.0;
        const bool is_needed =
            only_waits ? is_first || has_just_added : step.formulations == 0 || !products.empty();
        has_just_added = !products.empty();
        is_first = false;
        if (is_needed) {
            sequence.add(std::string(step.text), std::move(products), step.fill_low,
                         step.fill_high);
        }
    }
    return sequence.take();
}

Result<std::vector<OrderStep>> by_label(Cards cards, std::span<const std::string> label_order) {
    Sequence sequence(source_of(OrderConvention::as_label));
    sequence.add("Fill the clean tank with part of the carrier, as the labels say, and agitate.",
                 {});
    for (std::size_t i = 0; i < label_order.size(); ++i) {
        const bool is_known = std::any_of(cards.begin(), cards.end(), [&](const ProductCard* card) {
            return card->name == label_order[i];
        });
        if (!is_known) {
            return fail(ErrorCode::not_found, fmt::format("label_order[{}]", i),
                        fmt::format("\"{}\" is not a product of this load.", label_order[i]));
        }
        if (std::find(label_order.begin(), label_order.begin() + static_cast<std::ptrdiff_t>(i),
                      label_order[i]) != label_order.begin() + static_cast<std::ptrdiff_t>(i)) {
            return fail(ErrorCode::inconsistent, fmt::format("label_order[{}]", i),
                        fmt::format("{} is named twice. Name every product once.", label_order[i]));
        }
        sequence.add("Add, and agitate until it is evenly mixed.", {label_order[i]});
    }
    for (const ProductCard* card : cards) {
        if (std::find(label_order.begin(), label_order.end(), card->name) == label_order.end()) {
            return fail(ErrorCode::invalid_input, "label_order",
                        fmt::format("The order from the labels does not say where {} goes in. Name "
                                    "every product once, first in first.",
                                    card->name));
        }
    }
    sequence.add("Fill up with carrier and keep agitating.", {}, 1.0, 1.0);
    return sequence.take();
}

}  // namespace

Result<std::vector<OrderStep>> mixing_order(Cards cards, OrderConvention convention,
                                            std::span<const std::string> label_order,
                                            Notes& notes) {
    if (convention == OrderConvention::as_label) {
        if (label_order.empty() && cards.size() > 1) {
            return fail(ErrorCode::invalid_input, "label_order",
                        "Name the products in the order their labels give, or choose a published "
                        "order.");
        }
        std::vector<std::string> only;
        if (label_order.empty() && cards.size() == 1) {
            only.push_back(cards.front()->name);
            label_order = only;
        }
        return by_label(cards, label_order);
    }
    return by_convention(cards, convention, notes);
}

}  // namespace swathbook::mix
