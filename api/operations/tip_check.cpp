#include "core/job/tip_check.hpp"

#include "api/operation.hpp"
#include "api/operations/tip_words.hpp"

namespace swathbook::api {

using calibration::TipAction;
using calibration::TipLimitRule;
using calibration::TipVerdict;

template <>
struct Description<TipLimitRule> {
    static constexpr std::string_view name = "TipLimitRule";
    static Choices<TipLimitRule> choices() {
        using enum TipLimitRule;
        return {{worn_10_low_5, "worn_10_low_5",
                 "Replace over the maker's rating by 10 %; clean under it by 5 %."},
                {rating_10, "rating_10", "Within 10 % of the maker's rating."},
                {rating_5, "rating_5", "Within 5 % of the maker's rating."},
                {rating_10_and_mean_5, "rating_10_and_mean_5",
                 "Within 10 % of the rating and within 5 % of the mean."},
                {mean_5, "mean_5", "Within 5 % of the mean."},
                {mean_5_clean_low, "mean_5_clean_low",
                 "Within 5 % of the mean; high ones replaced, low ones cleaned."},
                {mean_10, "mean_10", "Within 10 % of the mean."},
                {french_inspection, "french_inspection",
                 "15 % of the rating, 10 % under 1 L/min; over a third bad replaces all."},
                {european_in_use, "european_in_use", "From memory, not read: never a verdict."},
                {own, "own", "Limits of your own."}};
    }
};

template <>
struct Description<TipVerdict> {
    static constexpr std::string_view name = "TipVerdict";
    static Choices<TipVerdict> choices() {
        using enum TipVerdict;
        return {{ok, "ok", "Within the limits."},
                {at_limit, "at_limit", "Exactly at a limit, so not over it."},
                {high_worn, "high_worn", "Over the high limit: worn or damaged."},
                {low_clogged, "low_clogged", "Under the low limit: clogged, or a smaller size."},
                {other_size, "other_size", "Out of limits, and reads like another size."}};
    }
};

template <>
struct Description<TipAction> {
    static constexpr std::string_view name = "TipAction";
    static Choices<TipAction> choices() {
        using enum TipAction;
        return {{keep, "keep", "Keep it."},
                {watch, "watch", "Watch it at the next check."},
                {replace, "replace", "Replace it."},
                {clean, "clean", "Clean it and catch again."}};
    }
};

template <>
struct Description<job::TipCatch> {
    static constexpr std::string_view name = "TipCatch";
    static constexpr auto fields() {
        using T = job::TipCatch;
        return std::array{field<&T::flow>("flow", "Flow of the tip, if read as a flow."),
                          field<&T::volume>("volume", "What the tip put out."),
                          field<&T::time>("time", "How long it was caught; left out: catch_time.")};
    }
};

template <>
struct Description<job::EarlierTipCheck> {
    static constexpr std::string_view name = "EarlierTipCheck";
    static constexpr auto fields() {
        using T = job::EarlierTipCheck;
        return std::array{
            field<&T::flows>("flows", "Flows of the same tips, in the same order.")
                .like("0.40 gal/min")
                .required(),
            field<&T::pressure>("pressure", "Pressure then; left out: as now."),
            field<&T::area_since>("area_since", "Ground sprayed since.").like("120 ac"),
            field<&T::time_since>("time_since", "Hours sprayed since.").like("12 h")};
    }
};

template <>
struct Description<job::TipLimitFigures> {
    static constexpr std::string_view name = "TipLimitFigures";
    static constexpr auto fields() {
        using T = job::TipLimitFigures;
        return std::array{
            field<&T::above_rating>("above_rating", "Most a tip may be above the rating.")
                .like("10 %"),
            field<&T::below_rating>("below_rating", "Most a tip may be below the rating.")
                .like("5 %"),
            field<&T::above_mean>("above_mean", "Most a tip may be above the mean.").like("5 %"),
            field<&T::below_mean>("below_mean", "Most a tip may be below the mean.").like("5 %")};
    }
};

template <>
struct Description<job::TipCheckRequest> {
    static constexpr std::string_view name = "TipCheckRequest";
    static constexpr auto fields() {
        using T = job::TipCheckRequest;
        return std::array{
            field<&T::flows>("flows", "Flow of each tip along the boom.").like("0.40 gal/min"),
            field<&T::volumes>("volumes", "What each tip put out, all caught for catch_time.")
                .like("52 fl oz"),
            field<&T::catch_time>("catch_time", "How long each tip was caught.").like("60 s"),
            field<&T::catches>("catches", "The same one by one, where they were not caught alike."),
            field<&T::size>("size", "Size on the tips: 04, or 110-04 with the spray angle."),
            field<&T::convention>("convention", "What the size number stands for."),
            field<&T::rated_flow>("rated_flow", "Maker's flow, in place of a size.")
                .like("0.40 gal/min"),
            field<&T::rated_pressure>("rated_pressure", "Pressure of the maker's flow."),
            field<&T::exponent>("exponent", "How flow follows pressure; 0.5 for all plain tips."),
            field<&T::pressure>("pressure", "Pressure at the tips while catching."),
            field<&T::limit>("limit", "Which published limit judges the tips."),
            field<&T::own_limits>("own_limits", "Limits of your own, in place of a published one."),
            field<&T::replace_at_limit>("replace_at_limit",
                                        "Replace tips exactly at the limit as well."),
            field<&T::speed>("speed", "Ground speed, to tell the rate."),
            field<&T::spacing>("spacing", "Distance between tips, to tell the rate.").like("20 in"),
            field<&T::width>("width",
                             "Ground width the tips caught serve together, in place of "
                             "spacing."),
            field<&T::earlier>("earlier", "An earlier check of the same tips.")};
    }
};

template <>
struct Description<calibration::TipResult> {
    static constexpr std::string_view name = "TipResult";
    static constexpr auto fields() {
        using T = calibration::TipResult;
        return std::array{
            field<&T::tip>("tip", "Number along the boom, from 1."),
            field<&T::flow>("flow", "What it was caught at."),
            field<&T::from_rating>("from_rating", "Above or below the rating.")
                .labelled("Against rating"),
            field<&T::from_mean>("from_mean", "Above or below the mean.").labelled("Against mean"),
            field<&T::verdict>("verdict", "How it stands."),
            field<&T::action>("action", "What to do, in a word."),
            field<&T::reading_decides>("reading_decides",
                                       "The last digit read decides the verdict.")
                .labelled("Last digit decides"),
            field<&T::what_to_do>("what_to_do", "What to do.").spoken().labelled("What to do"),
            field<&T::reads_like>("reads_like", "The other size it reads like.")
                .labelled("Reads like size")};
    }
};

template <>
struct Description<job::OtherRuleOutcome> {
    static constexpr std::string_view name = "OtherRuleOutcome";
    static constexpr auto fields() {
        using T = job::OtherRuleOutcome;
        return std::array{
            field<&T::limit>("limit", "The other limit."),
            field<&T::text>("text", "The limit in words.").spoken().labelled("In words"),
            field<&T::source>("source", "Where it is printed.").spoken().labelled("Printed in"),
            field<&T::out>("out", "Tips it would condemn.").labelled("Tips out"),
            field<&T::at_limit>("at_limit", "Tips exactly at it.").labelled("Tips at the limit")};
    }
};

template <>
struct Description<job::WearForecast> {
    static constexpr std::string_view name = "WearForecast";
    static constexpr auto fields() {
        using T = job::WearForecast;
        return std::array{
            field<&T::gained>("gained", "Rise of the mean since, as a part of the rating."),
            field<&T::area_left>("area_left", "Ground until the mean reaches the limit."),
            field<&T::time_left>("time_left", "Hours until the mean reaches the limit.")
                .shown_in("h", "h")};
    }
};

template <>
struct Description<job::TipCheckAnswer> {
    static constexpr std::string_view name = "TipCheckAnswer";
    static constexpr auto fields() {
        using T = job::TipCheckAnswer;
        return std::array{
            field<&T::tips>("tips", "Every tip, in order."),
            field<&T::mean>("mean", "Mean flow of the set."),
            field<&T::variation>("variation", "Coefficient of variation, with n - 1.")
                .labelled("Variation (n - 1)"),
            field<&T::variation_population>("variation_population", "The same with n.")
                .labelled("Variation (n)"),
            field<&T::rated>("rated", "Maker's flow at the measured pressure."),
            field<&T::mean_from_rating>("mean_from_rating", "Mean above or below the rating.")
                .labelled("Mean against rating"),
            field<&T::limits>("limits", "The limits that judged, as figures."),
            field<&T::limit_text>("limit_text", "The limit that judged.")
                .spoken()
                .labelled("Limit used"),
            field<&T::limit_source>("limit_source", "Where it is printed.")
                .spoken()
                .labelled("Limit printed in"),
            field<&T::replace>("replace", "Tips to replace.").labelled("Tips to replace"),
            field<&T::clean>("clean", "Tips to clean and catch again.").labelled("Tips to clean"),
            field<&T::replace_all>("replace_all", "Replace the whole set.")
                .labelled("Replace the whole set"),
            field<&T::mean_after>("mean_after", "Mean flow once those are put right.")
                .labelled("Mean once put right"),
            field<&T::after_from_rating>("after_from_rating", "That mean against the rating.")
                .labelled("That against rating"),
            field<&T::rate_now>("rate_now", "Rate with the tips as they are."),
            field<&T::rate_after>("rate_after", "Rate once those are put right.")
                .labelled("Rate once put right"),
            field<&T::rate_as_rated>("rate_as_rated", "Rate if every tip gave its rating."),
            field<&T::controller_pressure>(
                "controller_pressure",
                "Where a rate controller would hold the pressure, as a part of the right one.")
                .labelled("A rate controller would run at"),
            field<&T::wear>("wear", "Wear since the earlier check, and what is left."),
            field<&T::other_limits>("other_limits", "What other published limits would say.")
                .labelled("What other published limits would say")};
    }
};

Operation tip_check_operation() {
    return operation<&job::tip_check>(
        "tip-check",
        "Finds worn, clogged and mixed tips from what each was caught at, and what they do to the "
        "rate.",
        {15});
}

}  // namespace swathbook::api
