#include "core/mix/reentry.hpp"

#include "api/operation.hpp"
#include "api/operations/product_card.hpp"

namespace swathbook::api {

template <>
struct Description<mix::Act> {
    static constexpr std::string_view name = "Act";
    static Choices<mix::Act> choices() {
        using A = mix::Act;
        return {{A::enter, "enter", "People without the label's protective equipment."},
                {A::graze, "graze", "Livestock other than dairy."},
                {A::graze_dairy, "graze_dairy", "Lactating dairy animals."},
                {A::cut_hay, "cut_hay", "Cutting hay or forage."},
                {A::harvest, "harvest", "Harvest of the crop."},
                {A::replant, "replant", "Seed or plants going in."},
                {A::be_rained_on, "be_rained_on", "Rain without washing the spray off."},
                {A::slaughter, "slaughter", "Animals off treated forage before slaughter."}};
    }
};

template <>
struct Description<mix::ReentryStatus> {
    static constexpr std::string_view name = "ReentryStatus";
    static Choices<mix::ReentryStatus> choices() {
        return {{mix::ReentryStatus::known, "known", "Every label was read for it."},
                {mix::ReentryStatus::not_known, "not_known",
                 "At least one label was not read for it; not zero."}};
    }
};

template <>
struct Description<mix::ReentryPlace> {
    static constexpr std::string_view name = "ReentryPlace";
    static constexpr auto fields() {
        using T = mix::ReentryPlace;
        return std::array{
            field<&T::name>("name", "Paddock, stand or other ground.").required(),
            field<&T::ended>("ended",
                             "End of the last load there, with the zone: 2031-05-04T14:20-05:00.")
                .required(),
            field<&T::products>("products", "Products used there, by name; all unless said.")};
    }
};

template <>
struct Description<mix::ReentryRequest> {
    static constexpr std::string_view name = "ReentryRequest";
    static constexpr auto fields() {
        using T = mix::ReentryRequest;
        return std::array{
            field<&T::products>("products", "Product cards with the waits of their labels.")
                .required(),
            field<&T::places>("places", "Where and until when was sprayed.").required(),
            field<&T::slaughter_planned>("slaughter_planned",
                                         "When animals are to be slaughtered, with the zone.")};
    }
};

template <>
struct Description<mix::ReentryAct> {
    static constexpr std::string_view name = "ReentryAct";
    static constexpr auto fields() {
        using T = mix::ReentryAct;
        return std::array{
            field<&T::act>("act", "What waits."),
            field<&T::status>("status", "Whether it is known."),
            field<&T::from>("from", "When it may begin; empty when not known."),
            field<&T::animals_off_by>("animals_off_by",
                                      "Last moment to take animals off before the slaughter "
                                      "planned.")
                .labelled("Animals off by"),
            field<&T::not_before>("not_before",
                                  "When not known: the least that the labels read ask for."),
            field<&T::wait>("wait", "Longest wait entered.").shown_in("h", "h"),
            field<&T::until_dry>("until_dry", "And not before the spray has dried.")
                .labelled("And dry"),
            field<&T::product>("product", "Whose label binds."),
            field<&T::where>("where", "Place on that label."),
            field<&T::not_entered_by>("not_entered_by", "Products for which it was not entered.")
                .labelled("Not entered for"),
            field<&T::text>("text", "The same in words.").spoken().labelled("In words")};
    }
};

template <>
struct Description<mix::ReentryPlaceAnswer> {
    static constexpr std::string_view name = "ReentryPlaceAnswer";
    static constexpr auto fields() {
        using T = mix::ReentryPlaceAnswer;
        return std::array{
            field<&T::name>("name", "The place."),
            field<&T::ended>("ended", "End of the last load."),
            field<&T::acts>("acts", "Act by act."),
            field<&T::until_dry>("until_dry", "Some label asks for dry spray besides.")
                .labelled("And dry"),
            field<&T::everything_from>("everything_from",
                                       "The last of all, when all are known; else empty.")
                .labelled("Everything from")};
    }
};

template <>
struct Description<mix::ReentryAnswer> {
    static constexpr std::string_view name = "ReentryAnswer";
    static constexpr auto fields() {
        return std::array{field<&mix::ReentryAnswer::places>("places", "Place by place.")};
    }
};

Operation reentry_operation() {
    return operation<&mix::reentry>(
        "reentry", "When people, stock, hay crews and seed may go back, place by place.", {22});
}

}  // namespace swathbook::api
