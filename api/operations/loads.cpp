#include "core/mix/loads.hpp"

#include "api/operation.hpp"
#include "api/operations/mix_parts.hpp"

namespace swathbook::api {

template <>
struct Description<mix::Bands> {
    static constexpr std::string_view name = "Bands";
    static constexpr auto fields() {
        using T = mix::Bands;
        return std::array{field<&T::band_width>("band_width", "Width of one band.")
                              .like("10 in")
                              .shown_in("in", "cm")
                              .required(),
                          field<&T::row_spacing>("row_spacing", "From row to row.")
                              .like("30 in")
                              .shown_in("in", "cm")
                              .required()};
    }
};

template <>
struct Description<mix::Split> {
    static constexpr std::string_view name = "Split";
    static Choices<mix::Split> choices() {
        return {{mix::Split::equal, "equal", "Every load the same."},
                {mix::Split::full_then_rest, "full_then_rest", "Full tanks, then the rest."}};
    }
};

template <>
struct Description<mix::OrderConvention> {
    static constexpr std::string_view name = "OrderConvention";
    static Choices<mix::OrderConvention> choices() {
        using C = mix::OrderConvention;
        return {{C::as_label, "as_label", "As the labels say (label_order)."},
                {C::dry_suspension_solution_emulsion, "dry_suspension_solution_emulsion",
                 "A-W-A-M-L-E-S; start half to three quarters full."},
                {C::dry_liquid_emulsion_capsule, "dry_liquid_emulsion_capsule",
                 "Start a third full; microcapsules after emulsifiable concentrates."},
                {C::dry_suspension_emulsion_solution, "dry_suspension_emulsion_solution",
                 "A-P-P-L-E-S; true solutions last."},
                {C::packet_dry_conditioner_liquid, "packet_dry_conditioner_liquid",
                 "Packets and dry products before the water conditioner."}};
    }
};

template <>
struct Description<mix::MeasuringTool> {
    static constexpr std::string_view name = "MeasuringTool";
    static constexpr auto fields() {
        using T = mix::MeasuringTool;
        return std::array{
            field<&T::name>("name", "What you call it.").required(),
            field<&T::only_for>("only_for", "The one product its marks are true for."),
            field<&T::marks>("marks", "Its marks, one by one."),
            field<&T::step>("step", "Distance between even marks."),
            field<&T::holds>("holds", "Its top mark, when the marks are even."),
            field<&T::weight_marks>("weight_marks", "Marks in weight, one by one."),
            field<&T::weight_step>("weight_step", "Finest division of a scale."),
            field<&T::weight_holds>("weight_holds", "The most the scale weighs at once.")};
    }
};

template <>
struct Description<mix::LoadsRequest> {
    static constexpr std::string_view name = "LoadsRequest";
    static constexpr auto fields() {
        using T = mix::LoadsRequest;
        return std::array{
            field<&T::net_area>("net_area", "Ground really wetted; with bands, under the bands."),
            field<&T::planned_area>("planned_area",
                                    "Ground in the plan; with bands, the whole "
                                    "field."),
            field<&T::bands>("bands", "When only bands are sprayed."),
            field<&T::mix_per_area>("mix_per_area", "Mix on an area, from the calibration."),
            field<&T::mix_counts>("mix_counts", "Which ground it counts; needed with bands."),
            field<&T::mix_volume>("mix_volume",
                                  "Make this much mix instead of starting from an "
                                  "area.")
                .like("8 gal"),
            field<&T::tank_usable>("tank_usable", "What can be sprayed out of one fill."),
            field<&T::dead_volume>("dead_volume", "Mix that stays in sump and hoses.")
                .like("2 gal"),
            field<&T::split>("split", "How to divide the job; equal loads unless said."),
            field<&T::products>("products", "What goes in, each on its label's basis.").required(),
            field<&T::mix_density>("mix_density",
                                   "Weight of the mix, for percent by weight; water "
                                   "unless said."),
            field<&T::rinse_times>("rinse_times",
                                   "How often each emptied jug is rinsed; 3 unless "
                                   "said."),
            field<&T::rinse_fill>("rinse_fill",
                                  "How full the jug is for rinsing; a quarter under "
                                  "5 gal, a fifth from 5 gal on, unless said.")
                .like("25 %"),
            field<&T::tools>("tools", "Your own measures and their marks."),
            field<&T::measure_within>("measure_within", "How closely to measure; 5 % unless said.")
                .like("3 %"),
            field<&T::order>("order", "Published mixing order; label_order goes before it."),
            field<&T::label_order>("label_order", "Product names in the order their labels give.")};
    }
};

template <>
struct Description<mix::LoadAmount> {
    static constexpr std::string_view name = "LoadAmount";
    static constexpr auto fields() {
        using T = mix::LoadAmount;
        return std::array{field<&T::name>("name", "The product."),
                          field<&T::amount>("amount", "How much."),
                          field<&T::jugs_emptied>("jugs_emptied", "Jugs emptied within this load.")
                              .labelled("Jugs emptied")};
    }
};

template <>
struct Description<mix::Load> {
    static constexpr std::string_view name = "Load";
    static constexpr auto fields() {
        using T = mix::Load;
        return std::array{
            field<&T::number>("number", "First load is 1."),
            field<&T::fill>("fill", "Mix to make up."),
            field<&T::sprayed>("sprayed", "Mix of this fill that reaches the ground."),
            field<&T::area>("area", "Treated ground it covers."),
            field<&T::products>("products", "Product by product."),
            field<&T::rinse_water>("rinse_water", "From emptied jugs; counts as carrier."),
            field<&T::carrier>("carrier", "To run in beside products and rinse water.")};
    }
};

template <>
struct Description<mix::IngredientTotal> {
    static constexpr std::string_view name = "IngredientTotal";
    static constexpr auto fields() {
        using T = mix::IngredientTotal;
        return std::array{
            field<&T::name>("name", "The ingredient."),
            field<&T::ingredient>("ingredient", "Active ingredient in the job."),
            field<&T::acid>("acid", "Acid equivalent in the job."),
            field<&T::ingredient_per_area>("ingredient_per_area",
                                           "Active ingredient on treated ground.")
                .labelled("Active ingredient per area"),
            field<&T::acid_per_area>("acid_per_area", "Acid equivalent on treated ground.")
                .labelled("Acid equivalent per area")};
    }
};

template <>
struct Description<mix::ProductTotal> {
    static constexpr std::string_view name = "ProductTotal";
    static constexpr auto fields() {
        using T = mix::ProductTotal;
        return std::array{field<&T::name>("name", "The product."),
                          field<&T::total>("total", "The loads added up."),
                          field<&T::per_area>("per_area", "Product on treated ground."),
                          field<&T::per_mix>("per_mix", "Product in the finished mix."),
                          field<&T::ingredients>("ingredients", "Ingredient by ingredient."),
                          field<&T::limits>("limits", "Label limits beside what is delivered."),
                          field<&T::not_entered>("not_entered",
                                                 "Limits nobody typed from this label; not "
                                                 "the same as no limit.")};
    }
};

template <>
struct Description<mix::MarkChoice> {
    static constexpr std::string_view name = "MarkChoice";
    static constexpr auto fields() {
        using T = mix::MarkChoice;
        return std::array{
            field<&T::tool>("tool", "Which of your measures."),
            field<&T::full_measures>("full_measures", "How often filled to its top mark."),
            field<&T::mark>("mark", "Then once to this mark.").shown_in("fl oz", "mL"),
            field<&T::weight_mark>("weight_mark", "Then once to this weight.")
                .shown_in("oz wt", "g"),
            field<&T::volume>("volume", "What that comes to.").shown_in("fl oz", "mL"),
            field<&T::mass>("mass", "What that comes to.").shown_in("oz wt", "g"),
            field<&T::error>("error", "Measured minus exact, of exact."),
            field<&T::batch>("batch", "The batch of mix this measure suits exactly."),
            field<&T::is_over_label>("is_over_label", "It would pass a label limit.")
                .labelled("Over the label"),
            field<&T::text>("text", "How to measure it.").spoken().labelled("How")};
    }
};

template <>
struct Description<mix::MeasureAdvice> {
    static constexpr std::string_view name = "MeasureAdvice";
    static constexpr auto fields() {
        using T = mix::MeasureAdvice;
        return std::array{
            field<&T::product>("product", "The product."),
            field<&T::first_load>("first_load", "Holds from this load ..."),
            field<&T::last_load>("last_load", "... to this one."),
            field<&T::exact>("exact", "The exact amount."),
            field<&T::best>("best", "The best way with your measures."),
            field<&T::choices>("choices", "Nearest marks below and above, tool by tool."),
            field<&T::fits>("fits", "The best way is close enough."),
            field<&T::finest_volume>("finest_volume", "Marks this fine would always fit.")
                .shown_in("fl oz", "mL"),
            field<&T::finest_mass>("finest_mass", "A scale this fine would always fit.")
                .shown_in("oz wt", "g")};
    }
};

template <>
struct Description<mix::OrderStep> {
    static constexpr std::string_view name = "OrderStep";
    static constexpr auto fields() {
        using T = mix::OrderStep;
        return std::array{field<&T::number>("number", "First step is 1."),
                          field<&T::text>("text", "What to do.").spoken().labelled("What to do"),
                          field<&T::products>("products", "What goes in now."),
                          field<&T::fill_low>("fill_low", "Fill of this load, least."),
                          field<&T::fill_high>("fill_high", "Fill of this load, most."),
                          field<&T::source>("source", "Publication of this order.").spoken()};
    }
};

template <>
struct Description<mix::LoadsAnswer> {
    static constexpr std::string_view name = "LoadsAnswer";
    static constexpr auto fields() {
        using T = mix::LoadsAnswer;
        return std::array{
            field<&T::treated_area>("treated_area", "Ground wetted."),
            field<&T::field_area>("field_area", "Whole field, when bands are sprayed."),
            field<&T::mix_per_treated_area>("mix_per_treated_area",
                                            "Mix on the ground really wetted."),
            field<&T::sprayed_mix>("sprayed_mix", "Mix that reaches the ground."),
            field<&T::total_mix>("total_mix", "Mix to make up in all."),
            field<&T::dead_volume>("dead_volume", "Mix left in the sprayer at the end."),
            field<&T::load_count>("load_count", "How many loads."),
            field<&T::loads>("loads", "Load by load."),
            field<&T::products>("products", "Product by product over the whole job."),
            field<&T::measuring>("measuring", "How to measure with your own marks."),
            field<&T::order>("order", "What goes in when."),
            field<&T::strictest>("strictest", "The strictest of the labels, limit by limit."),
            field<&T::cautions>("cautions", "What to mind at the mixing site.").spoken()};
    }
};

Operation loads_operation() {
    return operation<&mix::loads>(
        "loads", "Tankfuls for a job: mix, water and each product, measured to your own marks.",
        {5, 10, 20});
}

}  // namespace swathbook::api
