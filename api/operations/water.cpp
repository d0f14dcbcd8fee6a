#include "core/mix/water.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

template <>
struct Description<mix::HardnessScale> {
    static constexpr std::string_view name = "HardnessScale";
    static Choices<mix::HardnessScale> choices() {
        using H = mix::HardnessScale;
        return {{H::ppm_calcium_carbonate, "ppm_calcium_carbonate", "mg/L as CaCO3."},
                {H::grains_per_gallon, "grains_per_gallon", "Grains of CaCO3 in a US gallon."},
                {H::german_degrees, "german_degrees", "10 mg CaO in a litre."}};
    }
};

template <>
struct Description<mix::WaterRequest> {
    static constexpr std::string_view name = "WaterRequest";
    static constexpr auto fields() {
        using T = mix::WaterRequest;
        return std::array{
            field<&T::potassium>("potassium", "K in the water."),
            field<&T::sodium>("sodium", "Na in the water."),
            field<&T::calcium>("calcium", "Ca in the water."),
            field<&T::magnesium>("magnesium", "Mg in the water."),
            field<&T::iron>("iron", "Fe in the water."),
            field<&T::hardness>("hardness", "Lumped hardness, where the minerals are not known."),
            field<&T::hardness_scale>("hardness_scale",
                                      "How the hardness is counted; needed with it."),
            field<&T::label_least>("label_least",
                                   "Least ammonium sulphate (AMS) the label asks for.")
                .like("8.5 lb/100 gal"),
            field<&T::label_most>("label_most", "Most AMS the label allows."),
            field<&T::tanks>("tanks", "Fills to work amounts out for.").like("25 gal"),
            field<&T::liquid_strength>("liquid_strength", "AMS in a volume of liquid AMS.")
                .like("3.4 lb/gal")
                .shown_in("lb/gal", "kg/L")};
    }
};

template <>
struct Description<mix::IonShare> {
    static constexpr std::string_view name = "IonShare";
    static constexpr auto fields() {
        using T = mix::IonShare;
        return std::array{field<&T::ion>("ion", "The mineral."),
                          field<&T::amount>("amount", "As entered."),
                          field<&T::ams>("ams", "AMS it asks for.").labelled("AMS asked for")};
    }
};

template <>
struct Description<mix::TankAms> {
    static constexpr std::string_view name = "TankAms";
    static constexpr auto fields() {
        using T = mix::TankAms;
        return std::array{
            field<&T::tank>("tank", "The fill."),
            field<&T::by_minerals>("by_minerals", "AMS the minerals ask for.")
                .labelled("AMS by minerals"),
            field<&T::by_minerals_text>("by_minerals_text", "The same in handy units.")
                .labelled("By minerals, to weigh"),
            field<&T::label_least>("label_least", "The label's least."),
            field<&T::label_least_text>("label_least_text", "The same in handy units.")
                .labelled("Label least, to weigh"),
            field<&T::label_most>("label_most", "The label's most."),
            field<&T::label_most_text>("label_most_text", "The same in handy units.")
                .labelled("Label most, to weigh"),
            field<&T::liquid>("liquid", "Liquid AMS for the larger of minerals and label least.")
                .shown_in("fl oz", "mL")};
    }
};

template <>
struct Description<mix::WaterAnswer> {
    static constexpr std::string_view name = "WaterAnswer";
    static constexpr auto fields() {
        using T = mix::WaterAnswer;
        return std::array{
            field<&T::ams>("ams", "AMS the minerals entered ask for.").labelled("AMS asked for"),
            field<&T::complete>("complete", "All five minerals were entered."),
            field<&T::ions>("ions", "Mineral by mineral."),
            field<&T::not_entered>("not_entered", "Minerals not entered; not zero."),
            field<&T::hardness>("hardness", "Calcium and magnesium as CaCO3."),
            field<&T::hardness_grains>("hardness_grains", "The same in grains per US gallon.")
                .labelled("Hardness, grains/gal"),
            field<&T::hardness_asks_least>("hardness_asks_least",
                                           "AMS for that hardness, were it all magnesium."),
            field<&T::hardness_asks_most>("hardness_asks_most",
                                          "AMS for that hardness, were it all calcium."),
            field<&T::tanks>("tanks", "Fill by fill.")};
    }
};

Operation water_operation() {
    return operation<&mix::water>(
        "water", "Ammonium sulphate for hard water, by its minerals, beside the label's range.",
        {23});
}

}  // namespace swathbook::api
