#pragma once

#include "api/describe/describe.hpp"
#include "api/operations/product_card.hpp"
#include "core/mix/recipe.hpp"

/// Descriptions of what several mixing operations share beside the product card.
namespace swathbook::api {

template <>
struct Description<mix::Counts> {
    static constexpr std::string_view name = "Counts";
    static Choices<mix::Counts> choices() {
        return {{mix::Counts::treated, "treated", "The ground under the bands."},
                {mix::Counts::field, "field", "The whole field."}};
    }
};

template <>
struct Description<mix::MixShare> {
    static constexpr std::string_view name = "MixShare";
    static Choices<mix::MixShare> choices() {
        return {{mix::MixShare::finished_mix, "finished_mix", "Everything in the tank."},
                {mix::MixShare::carrier, "carrier", "The water (or oil) alone."}};
    }
};

template <>
struct Description<mix::TankProduct> {
    static constexpr std::string_view name = "TankProduct";
    static constexpr auto fields() {
        using T = mix::TankProduct;
        return std::array{
            field<&T::card>("card", "The product card.").required(),
            field<&T::rate>("rate", "The rate on the label's own basis.").required(),
            field<&T::counts>("counts", "Which ground a rate per area counts; needed with bands."),
            field<&T::measures>("measures",
                                "What a weight or share in the rate counts; product "
                                "unless said."),
            field<&T::ingredient>("ingredient",
                                  "Which ingredient, when the product holds several."),
            field<&T::share_of>("share_of",
                                "What a percentage or \"/100 gal\" is counted in; the "
                                "finished mix unless said."),
            field<&T::jug>("jug", "Size of its container, to count rinse water as carrier."),
            field<&T::applied_this_year>("applied_this_year",
                                         "Put on this ground earlier this year; \"0 fl oz/ac\" "
                                         "when nothing was."),
            field<&T::applications_this_year>("applications_this_year",
                                              "How often, earlier this year; 0 when never.")};
    }
};

template <>
struct Description<mix::ProductAmount> {
    static constexpr std::string_view name = "ProductAmount";
    static constexpr auto fields() {
        using T = mix::ProductAmount;
        return std::array{
            field<&T::volume>("volume", "Volume, of a liquid.").shown_in("fl oz", "mL"),
            field<&T::mass>("mass", "Weight, of a dry product or where the density is known.")
                .shown_in("lb", "g"),
            field<&T::text>("text", "In handy units.").labelled("To measure")};
    }
};

}  // namespace swathbook::api
