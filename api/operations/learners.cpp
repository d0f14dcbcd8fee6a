#include "core/calibration/learners.hpp"

#include "api/operation.hpp"
#include "api/operations/calibration_words.hpp"

namespace swathbook::api {

using namespace calibration;  // NOLINT: this file describes the structs of that one subject

template <>
struct Description<LearnerHandVerdict> {
    static constexpr std::string_view name = "LearnerHandVerdict";
    static Choices<LearnerHandVerdict> choices() {
        using V = LearnerHandVerdict;
        return {{V::agrees, "agrees", "To the last digit given."},
                {V::rounding, "rounding", "A figure on the way was rounded too early."},
                {V::shortcut, "shortcut", "A shortcut that does not hold here."},
                {V::slip, "slip", "Nothing known gives it."}};
    }
};

template <>
struct Description<SpreadSource> {
    static constexpr std::string_view name = "SpreadSource";
    static Choices<SpreadSource> choices() {
        using S = SpreadSource;
        return {{S::speed, "speed", "Walking or driving speed."},
                {S::flow, "flow", "What was caught, per time."},
                {S::width, "width", "The width served."},
                {S::refill, "refill", "Water to refill."},
                {S::area, "area", "The measured plot."}};
    }
};

template <>
struct Description<Learner> {
    static constexpr std::string_view name = "Learner";
    static constexpr auto fields() {
        using T = Learner;
        return std::array{
            field<&T::name>("name", "Name or number.").required(),
            field<&T::width>("width", "Width served; that of the class unless said."),
            field<&T::course_length>("course_length", "Course; that of the class unless said.")
                .like("176 ft"),
            field<&T::times>("times", "Times for the course."),
            field<&T::catches>("catches", "What was caught, each."),
            field<&T::catch_time>("catch_time", "How long; the course time unless said."),
            field<&T::flow>("flow", "Flow, when read from a meter."),
            field<&T::speed>("speed", "Speed, when read from a meter."),
            field<&T::refill>("refill", "Water back to the mark.").like("4 gal"),
            field<&T::area>("area", "Plot sprayed.").like("0.1 ac"),
            field<&T::hand_answer>("hand_answer", "The learner's own answer.")};
    }
};

template <>
struct Description<LearnersRequest> {
    static constexpr std::string_view name = "LearnersRequest";
    static constexpr auto fields() {
        using T = LearnersRequest;
        return std::array{
            field<&T::learners>("learners", "What each one measured.").required(),
            field<&T::sprayer>("sprayer", "Sort of sprayer; backpack unless said."),
            field<&T::width>("width", "Width of everybody who says no other."),
            field<&T::course_length>("course_length", "Course of everybody.").like("176 ft"),
            field<&T::catch_time>("catch_time", "Catch time of everybody."),
            field<&T::area>("area", "Plot of everybody.").like("0.1 ac"),
            field<&T::tips>("tips", "Number of tips that serve the width."),
            field<&T::catch_covers>("catch_covers", "Whether a catch is of one tip or of all.")};
    }
};

template <>
struct Description<LearnerHand> {
    static constexpr std::string_view name = "LearnerHand";
    static constexpr auto fields() {
        using T = LearnerHand;
        return std::array{
            field<&T::answer>("answer", "The learner's own answer."),
            field<&T::difference>("difference", "Against what the learner's figures give."),
            field<&T::verdict>("verdict", "Agreement, rounding, shortcut or slip."),
            field<&T::shortcut>("shortcut", "Code of the shortcut; empty when none."),
            field<&T::text>("text", "The same in words.").labelled("In words")};
    }
};

template <>
struct Description<LearnerResult> {
    static constexpr std::string_view name = "LearnerResult";
    static constexpr auto fields() {
        using T = LearnerResult;
        return std::array{
            field<&T::name>("name", "Who."),
            field<&T::output>("output", "What the figures give, with its 95 % interval."),
            field<&T::speed>("speed", "Speed."),
            field<&T::flow>("flow", "Flow."),
            field<&T::width>("width", "Width."),
            field<&T::from_mean>("from_mean", "Against the mean of the class."),
            field<&T::others_low>("others_low", "Where 95 of 100 like the others begin."),
            field<&T::others_high>("others_high", "Where they end."),
            field<&T::outside>("outside", "Whether this one lies outside the others."),
            field<&T::hand>("hand", "The hand answer judged."),
            field<&T::remarks>("remarks", "Warnings about these figures.")};
    }
};

template <>
struct Description<SpreadShare> {
    static constexpr std::string_view name = "SpreadShare";
    static constexpr auto fields() {
        using T = SpreadShare;
        return std::array{
            field<&T::source>("source", "What the class measured differently."),
            field<&T::deviation>("deviation", "Its deviation over the class, of its mean."),
            field<&T::share>("share", "Share of the variance of the outputs.")};
    }
};

template <>
struct Description<LearnersAnswer> {
    static constexpr std::string_view name = "LearnersAnswer";
    static constexpr auto fields() {
        using T = LearnersAnswer;
        return std::array{field<&T::count>("count", "Learners."),
                          field<&T::mean>("mean", "Mean of the class, with its 95 % interval."),
                          field<&T::standard_deviation>("standard_deviation", "Of one learner."),
                          field<&T::variation>("variation", "Deviation over mean.").labelled("CV"),
                          field<&T::lowest>("lowest", "Lowest output."),
                          field<&T::lowest_by>("lowest_by", "Whose."),
                          field<&T::highest>("highest", "Highest output."),
                          field<&T::highest_by>("highest_by", "Whose."),
                          field<&T::spread>("spread", "Highest over lowest, less one."),
                          field<&T::spread_shares>("spread_shares", "Where the spread comes from."),
                          field<&T::learners>("learners", "One by one.")};
    }
};

Operation learners_operation() {
    return operation<&calibration::learners>(
        "learners",
        "A class side by side: each output, the spread, where it comes from, and why "
        "hand answers differ.",
        {24, 2});
}

}  // namespace swathbook::api
