#include "core/tips/choose_tip.hpp"

#include "api/operation.hpp"
#include "api/operations/tip_words.hpp"

namespace swathbook::api {

template <>
struct Description<tips::TipFit> {
    static constexpr std::string_view name = "TipFit";
    static Choices<tips::TipFit> choices() {
        using enum tips::TipFit;
        return {{fits, "fits", "Meets everything entered."},
                {partly, "partly", "At the usual speed, but not over all speeds entered."},
                {unproven, "unproven", "The table does not say enough to tell."},
                {refused, "refused", "Outside its pressures, or the wrong class."}};
    }
};

template <>
struct Description<tips::TableTip> {
    static constexpr std::string_view name = "TableTip";
    static constexpr auto fields() {
        using T = tips::TableTip;
        return std::array{
            field<&T::name>("name", "What you call it."),
            field<&T::size>("size", "Size: 04, or 110-04 with the spray angle."),
            field<&T::convention>("convention", "What the size number stands for."),
            field<&T::rated_flow>("rated_flow", "Maker's flow, in place of a size."),
            field<&T::rated_pressure>("rated_pressure", "Pressure of the maker's flow."),
            field<&T::exponent>("exponent", "How flow follows pressure; 0.5 for plain tips."),
            field<&T::pressure_low>("pressure_low", "Lowest pressure its maker allows."),
            field<&T::pressure_high>("pressure_high", "Highest pressure its maker allows."),
            field<&T::classes>("classes", "Its droplet class by pressure, as printed."),
            field<&T::strainer_mesh>("strainer_mesh", "Strainer its maker asks for.")};
    }
};

template <>
struct Description<tips::ChooseTipRequest> {
    static constexpr std::string_view name = "ChooseTipRequest";
    static constexpr auto fields() {
        using T = tips::ChooseTipRequest;
        return std::array{
            field<&T::rate>("rate", "Mix wanted on the ground.").required(),
            field<&T::speed>("speed", "Usual ground speed.").required(),
            field<&T::speed_low>("speed_low", "Slowest speed on the job.").like("3 mph"),
            field<&T::speed_high>("speed_high", "Fastest speed on the job.").like("6 mph"),
            field<&T::rate_controller>("rate_controller",
                                       "The sprayer changes pressure with speed to hold the rate."),
            field<&T::spacing>("spacing", "Distance between tips.").like("20 in"),
            field<&T::width>("width", "Ground width served, in place of spacing."),
            field<&T::tips>("tips", "How many tips serve that width; left out: one."),
            field<&T::pressure_low>("pressure_low", "Lowest pressure the sprayer holds.")
                .like("20 psi"),
            field<&T::pressure_high>("pressure_high", "Highest pressure the sprayer holds.")
                .like("60 psi"),
            field<&T::droplets>("droplets",
                                "Droplet class wanted, in the label's words: coarse or coarser."),
            field<&T::carrier_min>("carrier_min", "Least carrier the label allows.")
                .like("10 gal/ac"),
            field<&T::carrier_density>("carrier_density",
                                       "Density of the mix, where it is not like water."),
            field<&T::table>("table", "Tips to choose from; left out: sizes of the colour code."),
            field<&T::convention>("convention", "What size numbers stand for.")};
    }
};

template <>
struct Description<tips::TipChoice> {
    static constexpr std::string_view name = "TipChoice";
    static constexpr auto fields() {
        using T = tips::TipChoice;
        return std::array{
            field<&T::name>("name", "Which tip."),
            field<&T::size>("size", "Its size, where it has one."),
            field<&T::colour>("colour", "Colour of the size: flow, not droplets."),
            field<&T::colour_spanish>("colour_spanish", "The same in Spanish.")
                .labelled("Colour in Spanish"),
            field<&T::fit>("fit", "How it fits."),
            field<&T::pressure>("pressure", "Pressure that gives the rate at the usual speed."),
            field<&T::slowest>("slowest", "Slowest speed a rate controller can hold."),
            field<&T::fastest>("fastest", "Fastest speed a rate controller can hold."),
            field<&T::droplet_class>("droplet_class", "Its class at that pressure."),
            field<&T::strainer_mesh>("strainer_mesh", "Tip strainer, mesh."),
            field<&T::reasons_for>("reasons_for", "What speaks for it.").spoken(),
            field<&T::reasons_against>("reasons_against", "What speaks against it.").spoken()};
    }
};

template <>
struct Description<tips::ChooseTipAnswer> {
    static constexpr std::string_view name = "ChooseTipAnswer";
    static constexpr auto fields() {
        using T = tips::ChooseTipAnswer;
        return std::array{
            field<&T::flow_needed>("flow_needed", "Flow of mix through one tip."),
            field<&T::water_flow>("water_flow", "The same as water, which tables are made with."),
            field<&T::droplets_wanted>("droplets_wanted", "The class asked for, as understood."),
            field<&T::rate_at_slowest>("rate_at_slowest",
                                       "Rate at the slowest speed without a rate controller."),
            field<&T::rate_at_fastest>("rate_at_fastest",
                                       "Rate at the fastest speed without a rate controller."),
            field<&T::choices>("choices", "Tips, best first; refused ones last.")};
    }
};

Operation choose_tip_operation() {
    return operation<&tips::choose_tip>(
        "choose-tip",
        "Ranks the tips of a table for a wanted rate, speed and droplet class, with reasons.",
        {15});
}

}  // namespace swathbook::api
