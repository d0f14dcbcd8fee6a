#include "core/calibration/crew.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

using calibration::CrewLimit;
using calibration::CrewSharing;

template <>
struct Description<CrewSharing> {
    static constexpr std::string_view name = "CrewSharing";
    static Choices<CrewSharing> choices() {
        using enum CrewSharing;
        return {{equal_flow, "equal_flow", "One shared tank, all with the same flow, same time."},
                {own_flow, "own_flow", "One shared tank, same time, each with a measured flow."},
                {equal_area, "equal_area", "Each treats the same area."},
                {own_tanks, "own_tanks", "Each mixes for themselves."}};
    }
};

template <>
struct Description<CrewLimit> {
    static constexpr std::string_view name = "CrewLimit";
    static Choices<CrewLimit> choices() {
        using enum CrewLimit;
        return {{not_entered, "not_entered", "The limit was not entered; nothing can be said."},
                {within, "within", "Within the limit."},
                {at_limit, "at_limit", "Exactly at the limit."},
                {under, "under", "Below the least."},
                {over, "over", "Above the most."}};
    }
};

template <>
struct Description<calibration::CrewPerson> {
    static constexpr std::string_view name = "CrewPerson";
    static constexpr auto fields() {
        using T = calibration::CrewPerson;
        return std::array{
            field<&T::name>("name", "Who."),
            field<&T::output>("output", "Their calibrated output at their own pace.").required(),
            field<&T::flow>("flow", "Their flow, where flows differ."),
            field<&T::tank>("tank", "Their tank; left out: the tank of all.")};
    }
};

template <>
struct Description<calibration::CrewRequest> {
    static constexpr std::string_view name = "CrewRequest";
    static constexpr auto fields() {
        using T = calibration::CrewRequest;
        return std::array{
            field<&T::people>("people", "Everyone who sprays, with their output.").required(),
            field<&T::sharing>("sharing", "How the work is shared."),
            field<&T::product_rate>("product_rate", "Product wanted on an area."),
            field<&T::product_min>("product_min", "Least the label allows, as typed from it.")
                .like("1 qt/ac"),
            field<&T::product_max>("product_max", "Most the label allows, as typed from it.")
                .like("3 qt/ac"),
            field<&T::carrier_min>("carrier_min", "Least carrier the label allows.")
                .like("10 gal/ac"),
            field<&T::carrier_max>("carrier_max", "Most carrier the label allows.")
                .like("40 gal/ac"),
            field<&T::mixed_for>("mixed_for",
                                 "Output the one recipe is mixed for; left out: the crew rate."),
            field<&T::tank>("tank", "Tank of each, to measure product into.").like("4 gal")};
    }
};

template <>
struct Description<calibration::ProductAmount> {
    static constexpr std::string_view name = "ProductAmount";
    static constexpr auto fields() {
        using T = calibration::ProductAmount;
        return std::array{field<&T::volume>("volume", "Liquid product.").shown_in("fl oz", "mL"),
                          field<&T::mass>("mass", "Dry product.").shown_in("oz wt", "g"),
                          field<&T::ingredient>("ingredient", "Active ingredient."),
                          field<&T::acid>("acid", "Acid equivalent.")};
    }
};

template <>
struct Description<calibration::CrewMember> {
    static constexpr std::string_view name = "CrewMember";
    static constexpr auto fields() {
        using T = calibration::CrewMember;
        return std::array{
            field<&T::name>("name", "Who."),
            field<&T::output>("output", "Their output."),
            field<&T::from_crew>("from_crew", "Above or below the crew rate.")
                .labelled("Against crew rate"),
            field<&T::delivered>("delivered", "Product they really put on an area."),
            field<&T::product_low>("product_low", "Against the label's least product."),
            field<&T::product_high>("product_high", "Against the label's most product."),
            field<&T::carrier_low>("carrier_low", "Against the label's least carrier."),
            field<&T::carrier_high>("carrier_high", "Against the label's most carrier."),
            field<&T::product_per_tank>("product_per_tank", "Product in one of their tanks."),
            field<&T::area_per_tank>("area_per_tank", "Ground one tank covers.")};
    }
};

template <>
struct Description<calibration::RecipeGroup> {
    static constexpr std::string_view name = "RecipeGroup";
    static constexpr auto fields() {
        using T = calibration::RecipeGroup;
        return std::array{field<&T::people>("people", "Who can share this recipe."),
                          field<&T::mixed_for>("mixed_for", "Output to mix it for."),
                          field<&T::mixed_for_low>("mixed_for_low",
                                                   "Mixed for less, someone goes over the label.")
                              .labelled("At least"),
                          field<&T::mixed_for_high>("mixed_for_high",
                                                    "Mixed for more, someone goes under the label.")
                              .labelled("At most")};
    }
};

template <>
struct Description<calibration::CrewAnswer> {
    static constexpr std::string_view name = "CrewAnswer";
    static constexpr auto fields() {
        using T = calibration::CrewAnswer;
        return std::array{
            field<&T::crew_rate>("crew_rate", "All the mix over all the ground."),
            field<&T::arithmetic_mean>("arithmetic_mean", "The plain average, to compare."),
            field<&T::spread>("spread", "Highest output above the lowest."),
            field<&T::ratio_needed>("ratio_needed",
                                    "Label maximum over minimum that one recipe needs.")
                .labelled("Label range needed, max/min"),
            field<&T::ratio_of_label>("ratio_of_label", "Label maximum over minimum.")
                .labelled("Label range, max/min"),
            field<&T::one_recipe_is_lawful>("one_recipe_is_lawful",
                                            "Whether one recipe can keep everyone within the "
                                            "label; left out while a limit is not entered.")
                .labelled("One recipe is lawful"),
            field<&T::recipe_tested>("recipe_tested", "Output the recipe was mixed for."),
            field<&T::people>("people", "Everyone, under the recipe tested."),
            field<&T::recipes>("recipes", "Fewest recipes that keep everyone within the label.")};
    }
};

Operation crew_operation() {
    return operation<&calibration::crew>(
        "crew",
        "Joins several people's outputs into one crew rate and says who breaks which limit with "
        "one recipe.",
        {2});
}

}  // namespace swathbook::api
