#include "core/mix/spot.hpp"

#include "api/operation.hpp"
#include "api/operations/mix_parts.hpp"

namespace swathbook::api {

template <>
struct Description<mix::SpotRequest> {
    static constexpr std::string_view name = "SpotRequest";
    static constexpr auto fields() {
        using T = mix::SpotRequest;
        return std::array{
            field<&T::products>("products", "Products with their rates, on any basis.").required(),
            field<&T::sprayed>("sprayed", "Mix put on the area, measured.").like("21 gal"),
            field<&T::area>("area", "Ground really wetted.").like("0.35 ac"),
            field<&T::mix_per_area>("mix_per_area",
                                    "Mix per area measured on a test plot; never assumed."),
            field<&T::fills>("fills", "Tanks, backpacks or jugs to work amounts out for.")
                .like("4 gal"),
            field<&T::mix_density>("mix_density", "Of the finished mix, for percent by weight."),
            field<&T::plants>("plants", "How many plants are sprayed to wet."),
            field<&T::per_plant>("per_plant", "Mix that wets one plant.").like("100 mL per plant"),
            field<&T::flow>("flow", "Of the gun, where that was caught instead.")
                .like("0.5 gal/min"),
            field<&T::time_per_plant>("time_per_plant", "To wet one plant.").like("6 s")};
    }
};

template <>
struct Description<mix::SpotProduct> {
    static constexpr std::string_view name = "SpotProduct";
    static constexpr auto fields() {
        using T = mix::SpotProduct;
        return std::array{
            field<&T::name>("name", "Name on the label."),
            field<&T::of_mix>("of_mix", "Share of the finished mix."),
            field<&T::of_carrier>("of_carrier", "The same mix, counted of the water."),
            field<&T::volume_per_mix>("volume_per_mix", "Liquid product in a volume of mix."),
            field<&T::mass_per_mix>("mass_per_mix", "Dry product in a volume of mix."),
            field<&T::volume_per_area>("volume_per_area", "The hidden rate."),
            field<&T::mass_per_area>("mass_per_area", "The hidden rate of a dry product."),
            field<&T::acid_per_area>("acid_per_area", "Acid equivalent on the ground.")
                .labelled("Acid equivalent per area"),
            field<&T::ingredient_per_area>("ingredient_per_area",
                                           "Active ingredient on the ground.")
                .labelled("Active ingredient per area"),
            field<&T::per_area_text>("per_area_text", "The hidden rate in handy units.")
                .labelled("Per area, in handy units"),
            field<&T::used_text>("used_text", "Product in what was sprayed.").labelled("Used"),
            field<&T::strongest>("strongest",
                                 "Strongest mix that no entered limit forbids at this mix per "
                                 "area."),
            field<&T::strongest_text>("strongest_text", "The same in handy units.")
                .labelled("Strongest, in handy units"),
            field<&T::strongest_by>("strongest_by", "The limit that binds it."),
            field<&T::most_mix_per_area>("most_mix_per_area",
                                         "Most mix per area at the strength asked for."),
            field<&T::mix_left>("mix_left", "Mix of that strength that may still go on."),
            field<&T::checks>("checks", "Every limit of the card.")};
    }
};

template <>
struct Description<mix::SpotMeasure> {
    static constexpr std::string_view name = "SpotMeasure";
    static constexpr auto fields() {
        using T = mix::SpotMeasure;
        return std::array{field<&T::name>("name", "Name on the label."),
                          field<&T::amount>("amount", "To measure out.")};
    }
};

template <>
struct Description<mix::SpotFill> {
    static constexpr std::string_view name = "SpotFill";
    static constexpr auto fields() {
        using T = mix::SpotFill;
        return std::array{
            field<&T::fill>("fill", "Finished mix."),
            field<&T::carrier>("carrier", "Water or oil in it."),
            field<&T::products>("products", "Product by product."),
            field<&T::covers>("covers", "Ground it covers at the measured mix per area.")};
    }
};

template <>
struct Description<mix::SpotAnswer> {
    static constexpr std::string_view name = "SpotAnswer";
    static constexpr auto fields() {
        using T = mix::SpotAnswer;
        return std::array{
            field<&T::mix_per_area>("mix_per_area", "Measured on the job or the test plot."),
            field<&T::products>("products", "Product by product."),
            field<&T::fills>("fills", "Fill by fill."),
            field<&T::per_plant>("per_plant", "Mix that wets one plant."),
            field<&T::mix_for_plants>("mix_for_plants", "Mix for all plants.")};
    }
};

Operation spot_operation() {
    return operation<&mix::spot>(
        "spot", "What a percent solution puts on an area, and the strongest a cap allows.", {3});
}

}  // namespace swathbook::api
