#include "core/mix/stems.hpp"

#include "api/operation.hpp"
#include "api/operations/product_card.hpp"

namespace swathbook::api {

template <>
struct Description<mix::StemProduct> {
    static constexpr std::string_view name = "StemProduct";
    static constexpr auto fields() {
        using T = mix::StemProduct;
        return std::array{
            field<&T::card>("card", "The product card.").required(),
            field<&T::share>("share", "Of the liquid in the bottle; undiluted unless said."),
            field<&T::ceiling>("ceiling", "Most on an area, as the label writes it."),
            field<&T::measures>("measures",
                                "What a weight in the ceiling counts; product unless "
                                "said."),
            field<&T::ingredient>("ingredient", "Which ingredient, when it holds several."),
            field<&T::applied_this_year>("applied_this_year",
                                         "Put on this ground earlier this year; \"0 lb a.e./ac\" "
                                         "when nothing was.")};
    }
};

template <>
struct Description<mix::StemClass> {
    static constexpr std::string_view name = "StemClass";
    static constexpr auto fields() {
        using T = mix::StemClass;
        return std::array{field<&T::diameter>("diameter", "At breast height (dbh).")
                              .required()
                              .shown_in("in", "cm"),
                          field<&T::stems>("stems", "How many of that size.").required()};
    }
};

template <>
struct Description<mix::StemsRequest> {
    static constexpr std::string_view name = "StemsRequest";
    static constexpr auto fields() {
        using T = mix::StemsRequest;
        return std::array{
            field<&T::products>("products", "What is in the bottle.").required(),
            field<&T::dose>("dose", "Liquid for each cut, or for each stem.").required(),
            field<&T::cuts_per_inch>("cuts_per_inch", "Cuts for an inch of diameter (dbh)."),
            field<&T::cuts_per_stem>("cuts_per_stem", "Cuts for a stem; 1 unless said."),
            field<&T::stems_by_size>("stems_by_size", "Stems counted by diameter."),
            field<&T::stems>("stems", "Stems, where they were not sorted by size."),
            field<&T::area>("area", "Ground of the whole job."),
            field<&T::area_done>("area_done", "Ground walked so far."),
            field<&T::cuts_made>("cuts_made", "Cuts so far: the live count.")};
    }
};

template <>
struct Description<mix::StemCeiling> {
    static constexpr std::string_view name = "StemCeiling";
    static constexpr auto fields() {
        using T = mix::StemCeiling;
        return std::array{field<&T::product>("product", "Whose ceiling."),
                          field<&T::limit>("limit", "ceiling, max_single_rate or max_yearly_rate."),
                          field<&T::allowed>("allowed", "As typed from the label."),
                          field<&T::where>("where", "Place on the label."),
                          field<&T::left>("left", "Left of a yearly one after earlier use."),
                          field<&T::cuts>("cuts", "Exact; may not be reached in part of a cut."),
                          field<&T::per_acre>("per_acre", "Whole cuts, rounded down."),
                          field<&T::per_hectare>("per_hectare", "Whole cuts, rounded down."),
                          field<&T::governs>("governs", "The strictest of all.")};
    }
};

template <>
struct Description<mix::StemDose> {
    static constexpr std::string_view name = "StemDose";
    static constexpr auto fields() {
        using T = mix::StemDose;
        return std::array{
            field<&T::product>("product", "Name on the label."),
            field<&T::volume>("volume", "Product as sold in one cut."),
            field<&T::acid>("acid", "Acid equivalent in one cut."),
            field<&T::ingredient>("ingredient", "Active ingredient in one cut."),
            field<&T::stock>("stock", "Product for all cuts planned.").shown_in("fl oz", "mL"),
            field<&T::stock_text>("stock_text", "The same in handy units.")
                .labelled("Stock, to measure")};
    }
};

template <>
struct Description<mix::StemsAnswer> {
    static constexpr std::string_view name = "StemsAnswer";
    static constexpr auto fields() {
        using T = mix::StemsAnswer;
        return std::array{
            field<&T::doses>("doses", "One cut, product by product."),
            field<&T::ceilings>("ceilings", "Every ceiling as a number of cuts."),
            field<&T::cuts_per_acre>("cuts_per_acre", "The strictest ceiling, whole cuts."),
            field<&T::cuts_per_hectare>("cuts_per_hectare", "The strictest ceiling, whole cuts."),
            field<&T::cuts_on_area>("cuts_on_area", "Allowed on the whole ground."),
            field<&T::cuts_planned>("cuts_planned", "For the stems counted."),
            field<&T::cuts_remaining>("cuts_remaining",
                                      "Left on the whole ground; below 0 when over the ceiling."),
            field<&T::share_used>("share_used", "Of the strictest ceiling, on the whole ground."),
            field<&T::cuts_remaining_here>("cuts_remaining_here",
                                           "Left on the ground walked so far."),
            field<&T::density>("density", "Cuts made on the ground walked so far."),
            field<&T::area_left_to_cover>("area_left_to_cover",
                                          "Ground the cuts left cover at that density."),
            field<&T::liquid>("liquid", "In the bottle, for all cuts planned.")
                .shown_in("fl oz", "mL"),
            field<&T::carrier>("carrier", "Oil or water in it.").shown_in("fl oz", "mL")};
    }
};

Operation stems_operation() {
    return operation<&mix::stems>(
        "stems", "Cuts and stems against a ceiling per area, dose of each and stock for all.",
        {18});
}

}  // namespace swathbook::api
