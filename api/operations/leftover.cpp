#include "core/mix/leftover.hpp"

#include "api/operation.hpp"
#include "api/operations/mix_parts.hpp"

namespace swathbook::api {

template <>
struct Description<mix::Answered> {
    static constexpr std::string_view name = "Answered";
    static Choices<mix::Answered> choices() {
        return {{mix::Answered::not_said, "not_said", "Not answered; not the same as no."},
                {mix::Answered::yes, "yes", "Yes, read on the label."},
                {mix::Answered::no, "no", "No."}};
    }
};

template <>
struct Description<mix::LeftoverWay> {
    static constexpr std::string_view name = "LeftoverWay";
    static Choices<mix::LeftoverWay> choices() {
        using W = mix::LeftoverWay;
        return {{W::spray_untreated, "spray_untreated", "At the job's rate on unsprayed ground."},
                {W::spray_again_thin, "spray_again_thin", "Thinned, over ground just sprayed."},
                {W::into_next_load, "into_next_load", "Part of the next load."},
                {W::keep, "keep", "Kept for the same use."},
                {W::hand_in, "hand_in", "As pesticide waste."}};
    }
};

template <>
struct Description<mix::Lawful> {
    static constexpr std::string_view name = "Lawful";
    static Choices<mix::Lawful> choices() {
        using L = mix::Lawful;
        return {{L::by_what_was_entered, "by_what_was_entered", "Nothing entered forbids it."},
                {L::cannot_tell, "cannot_tell", "A limit or an answer is missing."},
                {L::no, "no", "Something entered forbids it."}};
    }
};

template <>
struct Description<mix::AlreadyApplied> {
    static constexpr std::string_view name = "AlreadyApplied";
    static constexpr auto fields() {
        using T = mix::AlreadyApplied;
        return std::array{
            field<&T::product>("product", "Name of a product of this mix.").required(),
            field<&T::rate>("rate", "Per area, this year, this job included.").required(),
            field<&T::applications>("applications", "How often, this year, this job included.")};
    }
};

template <>
struct Description<mix::LeftoverGround> {
    static constexpr std::string_view name = "LeftoverGround";
    static constexpr auto fields() {
        using T = mix::LeftoverGround;
        return std::array{
            field<&T::name>("name", "What you call it.").required(),
            field<&T::net_area>("net_area", "Ground that could be wetted.").required(),
            field<&T::on_label>("on_label", "Is it a site on the label of every product?"),
            field<&T::sprayed_in_this_job>("sprayed_in_this_job",
                                           "It was just sprayed at the job's rate."),
            field<&T::applied_this_year>("applied_this_year",
                                         "Product by product; what is left out is not "
                                         "entered, not zero.")};
    }
};

template <>
struct Description<mix::NextJob> {
    static constexpr std::string_view name = "NextJob";
    static constexpr auto fields() {
        using T = mix::NextJob;
        return std::array{field<&T::name>("name", "What you call it.").required(),
                          field<&T::products>("products", "Its products and rates.").required(),
                          field<&T::mix_per_area>("mix_per_area", "Its mix on an area.").required(),
                          field<&T::next_load>("next_load", "How much mix its first load is.")
                              .like("40 gal")
                              .required()};
    }
};

template <>
struct Description<mix::LeftoverRequest> {
    static constexpr std::string_view name = "LeftoverRequest";
    static constexpr auto fields() {
        using T = mix::LeftoverRequest;
        return std::array{
            field<&T::left>("left", "Mix left in the tank.").like("6 gal").required(),
            field<&T::products>("products", "The mix as it was made.").required(),
            field<&T::mix_per_area>("mix_per_area", "Mix on an area, in this job.").required(),
            field<&T::mix_density>("mix_density",
                                   "Weight of the mix, for percent by weight; "
                                   "water unless said."),
            field<&T::ground>("ground", "Ground that could take it."),
            field<&T::next_job>("next_job", "The next job of the same products."),
            field<&T::labels_allow_keeping>("labels_allow_keeping",
                                            "Do the labels let the mix be kept?")};
    }
};

template <>
struct Description<mix::LeftoverProduct> {
    static constexpr std::string_view name = "LeftoverProduct";
    static constexpr auto fields() {
        using T = mix::LeftoverProduct;
        return std::array{
            field<&T::name>("name", "The product."),
            field<&T::amount>("amount", "Of it in the mix that goes this way."),
            field<&T::adds>("adds", "What it adds on the ground."),
            field<&T::still_to_add>("still_to_add", "Into the next load beside the leftover."),
            field<&T::limits>("limits", "Label limits, with what the ground had before.")};
    }
};

template <>
struct Description<mix::LeftoverOption> {
    static constexpr std::string_view name = "LeftoverOption";
    static constexpr auto fields() {
        using T = mix::LeftoverOption;
        return std::array{field<&T::rank>("rank", "1 is best."),
                          field<&T::way>("way", "What is done with it."),
                          field<&T::lawful>("lawful", "How it stands to what was entered."),
                          field<&T::ground>("ground", "Which ground or job."),
                          field<&T::mix>("mix", "Leftover mix that can go this way."),
                          field<&T::area>("area", "Ground it goes on."),
                          field<&T::water>("water", "Water to add first."),
                          field<&T::products>("products", "Product by product."),
                          field<&T::text>("text", "What to do, and what stands against it.")
                              .spoken()
                              .labelled("What to do")};
    }
};

template <>
struct Description<mix::LeftoverAnswer> {
    static constexpr std::string_view name = "LeftoverAnswer";
    static constexpr auto fields() {
        using T = mix::LeftoverAnswer;
        return std::array{field<&T::absorbing_area>(
                              "absorbing_area", "Ground that would take it all at the job's rate."),
                          field<&T::products>("products", "Product in the leftover mix."),
                          field<&T::options>("options", "The ways, best first.")};
    }
};

Operation leftover_operation() {
    return operation<&mix::leftover>("leftover",
                                     "Lawful ways to use mix left in the tank, best first.", {16});
}

}  // namespace swathbook::api
