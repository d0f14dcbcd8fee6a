#pragma once

#include "api/describe/describe.hpp"
#include "core/mix/limits.hpp"
#include "core/mix/product.hpp"
#include "core/mix/rates.hpp"

/// Descriptions of the product card and of label limits, for every operation that takes a card.
namespace swathbook::api {

template <>
struct Description<mix::Form> {
    static constexpr std::string_view name = "Form";
    static Choices<mix::Form> choices() {
        return {{mix::Form::liquid, "liquid", "Poured: measured by volume."},
                {mix::Form::dry, "dry", "Weighed."}};
    }
};

template <>
struct Description<mix::Formulation> {
    static constexpr std::string_view name = "Formulation";
    static Choices<mix::Formulation> choices() {
        using F = mix::Formulation;
        return {{F::water_conditioner, "water_conditioner", "Ammonium sulphate and the like."},
                {F::compatibility_agent, "compatibility_agent", "Keeps partners from gelling."},
                {F::defoamer, "defoamer", "Keeps foam down."},
                {F::soluble_packet, "soluble_packet", "Water-soluble bag."},
                {F::soluble_granule, "soluble_granule", "Dry, dissolves (SP, SG)."},
                {F::dispersible_granule, "dispersible_granule", "Dry flowable (DF, WG, WDG)."},
                {F::wettable_powder, "wettable_powder", "Wettable powder (WP)."},
                {F::suspension, "suspension", "Liquid flowable, suspension concentrate (F, SC)."},
                {F::capsule_suspension, "capsule_suspension", "Microencapsulated (ME, CS)."},
                {F::emulsifiable_concentrate, "emulsifiable_concentrate", "EC: turns water milky."},
                {F::soluble_liquid, "soluble_liquid", "True solution (SL)."},
                {F::surfactant, "surfactant", "Non-ionic and other wetting agents."},
                {F::oil, "oil", "Crop oil, methylated seed oil."},
                {F::drift_agent, "drift_agent", "Drift reducer, deposition aid."},
                {F::dye, "dye", "Marker dye."},
                {F::other, "other", "Not said: placed by hand."}};
    }
};

template <>
struct Description<mix::DropletLimitClass> {
    static constexpr std::string_view name = "DropletLimitClass";
    static Choices<mix::DropletLimitClass> choices() {
        using D = mix::DropletLimitClass;
        return {{D::extremely_fine, "extremely_fine", "Finest class of ANSI/ASABE S572."},
                {D::very_fine, "very_fine", "Very fine."},
                {D::fine, "fine", "Fine."},
                {D::medium, "medium", "Medium."},
                {D::coarse, "coarse", "Coarse."},
                {D::very_coarse, "very_coarse", "Very coarse."},
                {D::extremely_coarse, "extremely_coarse", "Extremely coarse."},
                {D::ultra_coarse, "ultra_coarse", "Coarsest class of ANSI/ASABE S572."}};
    }
};

template <>
struct Description<mix::RateCounts> {
    static constexpr std::string_view name = "RateCounts";
    static Choices<mix::RateCounts> choices() {
        using R = mix::RateCounts;
        return {{R::product, "product", "Product as sold."},
                {R::ingredient, "ingredient", "Active ingredient (a.i.)."},
                {R::acid, "acid", "Acid equivalent (a.e.)."}};
    }
};

template <>
struct Description<mix::Ingredient> {
    static constexpr std::string_view name = "Ingredient";
    static constexpr auto fields() {
        using T = mix::Ingredient;
        return std::array{
            field<&T::name>("name", "The ingredient; for a salt or ester, the acid it comes from.")
                .required(),
            field<&T::strength>("strength",
                                "Liquid: active ingredient (a.i.) by volume, as on the "
                                "label."),
            field<&T::acid_strength>("acid_strength",
                                     "Liquid: acid equivalent (a.e.) by volume, as on the label."),
            field<&T::part>("part", "Active ingredient (a.i.) in the product by weight."),
            field<&T::acid_part>("acid_part", "Acid equivalent (a.e.) in the product by weight.")};
    }
};

namespace detail {

template <class T>
constexpr auto limit_fields(std::string_view value) {
    return std::array{field<&T::value>("value", value).required(),
                      field<&T::where>("where", "Place on the label: page, section.")};
}

template <class Value>
constexpr auto binding_fields(std::string_view us, std::string_view metric) {
    using T = mix::Binding<Value>;
    return std::array{
        field<&T::value>("value", "The strictest value; absent when nobody entered one.")
            .shown_in(us, metric),
        field<&T::text>("text", "The value as it was typed from the label.").labelled("As typed"),
        field<&T::product>("product", "Whose label binds."),
        field<&T::where>("where", "Place on that label."),
        field<&T::not_entered_by>("not_entered_by",
                                  "Products for which this was not entered; that is not the "
                                  "same as no limit.")
            .labelled("Not entered for")};
}

}  // namespace detail

template <>
struct Description<mix::RateLimit> {
    static constexpr std::string_view name = "RateLimit";
    static constexpr auto fields() {
        return detail::limit_fields<mix::RateLimit>("The rate, on the basis the label uses.");
    }
};
template <>
struct Description<mix::DurationLimit> {
    static constexpr std::string_view name = "DurationLimit";
    static constexpr auto fields() {
        return detail::limit_fields<mix::DurationLimit>(
            "The time; \"0 days\" when the label says "
            "there is no wait.");
    }
};
template <>
struct Description<mix::CarrierLimit> {
    static constexpr std::string_view name = "CarrierLimit";
    static constexpr auto fields() {
        return detail::limit_fields<mix::CarrierLimit>("Mix per area.");
    }
};
template <>
struct Description<mix::PercentLimit> {
    static constexpr std::string_view name = "PercentLimit";
    static constexpr auto fields() {
        return detail::limit_fields<mix::PercentLimit>("Product in the mix by volume.");
    }
};
template <>
struct Description<mix::SpeedLimit> {
    static constexpr std::string_view name = "SpeedLimit";
    static constexpr auto fields() {
        return detail::limit_fields<mix::SpeedLimit>("The wind speed.");
    }
};
template <>
struct Description<mix::TemperatureLimit> {
    static constexpr std::string_view name = "TemperatureLimit";
    static constexpr auto fields() {
        return detail::limit_fields<mix::TemperatureLimit>("The air temperature.");
    }
};
template <>
struct Description<mix::LengthLimit> {
    static constexpr std::string_view name = "LengthLimit";
    static constexpr auto fields() { return detail::limit_fields<mix::LengthLimit>("The length."); }
};
template <>
struct Description<mix::CountLimit> {
    static constexpr std::string_view name = "CountLimit";
    static constexpr auto fields() { return detail::limit_fields<mix::CountLimit>("How many."); }
};
template <>
struct Description<mix::DropletLimit> {
    static constexpr std::string_view name = "DropletLimit";
    static constexpr auto fields() { return detail::limit_fields<mix::DropletLimit>("The class."); }
};
template <>
struct Description<mix::TextLimit> {
    static constexpr std::string_view name = "TextLimit";
    static constexpr auto fields() {
        using T = mix::TextLimit;
        return std::array{
            field<&T::text>("text", "The label's words.").labelled("As typed").required(),
            field<&T::where>("where", "Place on the label: page, section.")};
    }
};
template <>
struct Description<mix::ReentryLimit> {
    static constexpr std::string_view name = "ReentryLimit";
    static constexpr auto fields() {
        using T = mix::ReentryLimit;
        return std::array{
            field<&T::after>("after", "Time after the end of spraying."),
            field<&T::until_dry>("until_dry", "The label says: until the spray has dried.")
                .labelled("And dry"),
            field<&T::where>("where", "Place on the label: page, section.")};
    }
};

template <>
struct Description<mix::LabelLimits> {
    static constexpr std::string_view name = "LabelLimits";
    static constexpr auto fields() {
        using T = mix::LabelLimits;
        return std::array{
            field<&T::min_single_rate>("min_single_rate", "Least in one application.")
                .labelled("Least rate"),
            field<&T::max_single_rate>("max_single_rate", "Most in one application.")
                .labelled("Most rate"),
            field<&T::max_yearly_rate>("max_yearly_rate", "Most on one piece of ground in a year.")
                .labelled("Most in a year"),
            field<&T::max_applications>("max_applications", "Most applications in a year.")
                .labelled("Most applications"),
            field<&T::min_interval>("min_interval", "Least time between applications.")
                .labelled("Least interval"),
            field<&T::min_carrier>("min_carrier", "Least mix per area.").labelled("Least carrier"),
            field<&T::max_carrier>("max_carrier", "Most mix per area.").labelled("Most carrier"),
            field<&T::min_percent>("min_percent", "Least share of product in the mix.")
                .labelled("Least percent"),
            field<&T::max_percent>("max_percent", "Largest share of product in the mix.")
                .labelled("Most percent"),
            field<&T::reentry>("reentry", "When people may enter without the label's protection.")
                .labelled("Re-entry"),
            field<&T::grazing>("grazing", "Until livestock other than dairy may graze."),
            field<&T::dairy_grazing>("dairy_grazing", "Until lactating dairy animals may graze."),
            field<&T::haying>("haying", "Until hay or forage may be cut."),
            field<&T::slaughter>("slaughter", "Off treated forage before slaughter."),
            field<&T::harvest>("harvest", "Last application to harvest."),
            field<&T::replanting>("replanting", "Until seed or plants may go in."),
            field<&T::rainfast>("rainfast", "Dry time after spraying."),
            field<&T::finest_droplets>("finest_droplets",
                                       "Finest droplets allowed: \"coarse or coarser\" is coarse."),
            field<&T::coarsest_droplets>("coarsest_droplets", "Coarsest droplets allowed."),
            field<&T::min_wind>("min_wind", "Least wind.").labelled("Least wind"),
            field<&T::max_wind>("max_wind", "Most wind.").labelled("Most wind"),
            field<&T::max_temperature>("max_temperature", "Highest air temperature.")
                .labelled("Highest temperature"),
            field<&T::max_boom_height>("max_boom_height", "Highest boom above the target.")
                .labelled("Highest boom"),
            field<&T::protective_equipment>("protective_equipment",
                                            "What the label asks people to wear."),
            field<&T::other>("other", "Anything else that binds, in the label's words.")};
    }
};

template <>
struct Description<mix::ProductCard> {
    static constexpr std::string_view name = "ProductCard";
    static constexpr auto fields() {
        using T = mix::ProductCard;
        return std::array{
            field<&T::name>("name", "Name on the label.").required(),
            field<&T::registration>("registration",
                                    "Registration number: company-product[-distributor]."),
            field<&T::registered_with>("registered_with",
                                       "Who else registered it, when the number is not of the EPA "
                                       "form."),
            field<&T::form>("form", "Poured or weighed; liquid unless said."),
            field<&T::formulation>("formulation",
                                   "What it is when it meets water; decides its "
                                   "place in the mixing order."),
            field<&T::ingredients>("ingredients", "Active ingredients with their strengths."),
            field<&T::density>("density", "Weight of a volume of the product as sold."),
            field<&T::limits>("limits", "What the label allows, as typed from it.")};
    }
};

template <>
struct Description<mix::LimitStatus> {
    static constexpr std::string_view name = "LimitStatus";
    static Choices<mix::LimitStatus> choices() {
        using S = mix::LimitStatus;
        return {{S::within, "within", "Respects the limit."},
                {S::above, "above", "More than the label allows."},
                {S::below, "below", "Less than the label asks for."},
                {S::not_entered, "not_entered", "Not typed from the label; not the same as none."},
                {S::cannot_tell, "cannot_tell", "A figure to compare with is missing."}};
    }
};

template <>
struct Description<mix::LimitCheck> {
    static constexpr std::string_view name = "LimitCheck";
    static constexpr auto fields() {
        using T = mix::LimitCheck;
        return std::array{
            field<&T::limit>("limit", "Which limit of the card."),
            field<&T::status>("status", "How the delivered figure stands to it."),
            field<&T::delivered>("delivered", "What would be delivered.").spoken(),
            field<&T::allowed>("allowed", "The limit as typed."),
            field<&T::share>("share", "Delivered divided by the limit; 1 is exactly at it."),
            field<&T::where>("where", "Place on the label."),
            field<&T::why>("why", "What is missing.").spoken()};
    }
};

template <>
struct Description<mix::Binding<MixPerArea>> {
    static constexpr std::string_view name = "StrictestCarrier";
    static constexpr auto fields() { return detail::binding_fields<MixPerArea>("gal/ac", "L/ha"); }
};
template <>
struct Description<mix::Binding<Duration>> {
    static constexpr std::string_view name = "StrictestWait";
    static constexpr auto fields() { return detail::binding_fields<Duration>("h", "h"); }
};
template <>
struct Description<mix::Binding<mix::DropletLimitClass>> {
    static constexpr std::string_view name = "StrictestDroplets";
    static constexpr auto fields() {
        return detail::binding_fields<mix::DropletLimitClass>("", "");
    }
};
template <>
struct Description<mix::Binding<Speed>> {
    static constexpr std::string_view name = "StrictestSpeed";
    static constexpr auto fields() { return detail::binding_fields<Speed>("mph", "km/h"); }
};
template <>
struct Description<mix::Binding<Temperature>> {
    static constexpr std::string_view name = "StrictestTemperature";
    static constexpr auto fields() { return detail::binding_fields<Temperature>("degF", "degC"); }
};
template <>
struct Description<mix::Binding<Length>> {
    static constexpr std::string_view name = "StrictestLength";
    static constexpr auto fields() { return detail::binding_fields<Length>("ft", "m"); }
};
template <>
struct Description<mix::ReentryBinding> {
    static constexpr std::string_view name = "StrictestReentry";
    static constexpr auto fields() {
        using T = mix::ReentryBinding;
        return std::array{
            field<&T::after>("after", "The longest time any label asks for.").shown_in("h", "h"),
            field<&T::text>("text", "That time as it was typed from the label.")
                .labelled("As typed"),
            field<&T::until_dry>("until_dry", "Some label asks for dry spray.").labelled("And dry"),
            field<&T::product>("product", "Whose label binds."),
            field<&T::where>("where", "Place on that label."),
            field<&T::not_entered_by>("not_entered_by", "Products for which this was not entered.")
                .labelled("Not entered for")};
    }
};

template <>
struct Description<mix::StrictestLimits> {
    static constexpr std::string_view name = "StrictestLimits";
    static constexpr auto fields() {
        using T = mix::StrictestLimits;
        return std::array{
            field<&T::min_carrier>("min_carrier", "Least mix per area.").labelled("Least carrier"),
            field<&T::max_carrier>("max_carrier", "Most mix per area.").labelled("Most carrier"),
            field<&T::reentry>("reentry", "When people may enter.").labelled("Re-entry"),
            field<&T::grazing>("grazing", "Until livestock other than dairy may graze."),
            field<&T::dairy_grazing>("dairy_grazing", "Until dairy animals may graze."),
            field<&T::haying>("haying", "Until hay or forage may be cut."),
            field<&T::slaughter>("slaughter", "Off treated forage before slaughter."),
            field<&T::harvest>("harvest", "Last application to harvest."),
            field<&T::replanting>("replanting", "Until seed or plants may go in."),
            field<&T::rainfast>("rainfast", "Dry time after spraying."),
            field<&T::finest_droplets>("finest_droplets", "Finest droplets allowed."),
            field<&T::coarsest_droplets>("coarsest_droplets", "Coarsest droplets allowed."),
            field<&T::min_wind>("min_wind", "Least wind.").labelled("Least wind"),
            field<&T::max_wind>("max_wind", "Most wind.").labelled("Most wind"),
            field<&T::max_temperature>("max_temperature", "Highest air temperature.")
                .labelled("Highest temperature"),
            field<&T::max_boom_height>("max_boom_height", "Highest boom.")
                .labelled("Highest boom")};
    }
};

}  // namespace swathbook::api
