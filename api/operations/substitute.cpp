#include "core/mix/substitute.hpp"

#include "api/operation.hpp"
#include "api/operations/product_card.hpp"

namespace swathbook::api {

template <>
struct Description<mix::DoseSubstance> {
    static constexpr std::string_view name = "DoseSubstance";
    static Choices<mix::DoseSubstance> choices() {
        return {{mix::DoseSubstance::acid, "acid", "Acid equivalent (a.e.)."},
                {mix::DoseSubstance::ingredient, "ingredient", "Active ingredient (a.i.)."}};
    }
};

template <>
struct Description<mix::SubstituteRequest> {
    static constexpr std::string_view name = "SubstituteRequest";
    static constexpr auto fields() {
        using T = mix::SubstituteRequest;
        return std::array{
            field<&T::planned>("planned", "The product the plan was made with.").required(),
            field<&T::rate>("rate", "Its rate in the plan.").required(),
            field<&T::measures>("measures",
                                "What a weight or share in the rate counts; product "
                                "unless said."),
            field<&T::in_hand>("in_hand", "The product to be used.").required(),
            field<&T::ingredient>("ingredient", "The one to match, when a product holds several."),
            field<&T::mix_per_area>("mix_per_area", "Mix on an area, to compare every limit."),
            field<&T::mix_density>("mix_density",
                                   "Weight of the mix, for percent by weight; water "
                                   "unless said."),
            field<&T::applied_this_year>("applied_this_year",
                                         "Of the product in hand on this ground; \"0 fl oz/ac\" "
                                         "when none.")
                .like("1 qt/ac"),
            field<&T::applications_this_year>("applications_this_year",
                                              "Of the product in hand on this ground; 0 when "
                                              "none.")};
    }
};

template <>
struct Description<mix::SubstituteAnswer> {
    static constexpr std::string_view name = "SubstituteAnswer";
    static constexpr auto fields() {
        using T = mix::SubstituteAnswer;
        return std::array{
            field<&T::ingredient>("ingredient", "The ingredient that was matched."),
            field<&T::matched>("matched", "What both were compared in."),
            field<&T::acid_per_area>("acid_per_area", "The dose as acid equivalent.")
                .labelled("Acid equivalent per area"),
            field<&T::ingredient_per_area>("ingredient_per_area", "The dose as active ingredient.")
                .labelled("Active ingredient per area"),
            field<&T::rate>("rate", "Rate of the product in hand."),
            field<&T::text>("text", "The same in handy units.").labelled("In handy units"),
            field<&T::amount_ratio>("amount_ratio", "Product in hand for one of the planned."),
            field<&T::limits>("limits", "Limits of the new label beside what is delivered."),
            field<&T::not_entered>("not_entered",
                                   "Limits nobody typed from the new label; "
                                   "not the same as no limit.")};
    }
};

Operation substitute_operation() {
    return operation<&mix::substitute>(
        "substitute", "The rate of another concentrate that gives the same dose.", {11});
}

}  // namespace swathbook::api
