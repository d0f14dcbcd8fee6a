#include "core/job/practice.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

template <>
struct Description<job::PracticeTopic> {
    static constexpr std::string_view name = "PracticeTopic";
    static Choices<job::PracticeTopic> choices() {
        using T = job::PracticeTopic;
        return {{T::course, "course", "Length of a course."},
                {T::calibration, "calibration", "Output by course and catch."},
                {T::refill, "refill", "Output by refilling."},
                {T::crew, "crew", "One tank, several paces."},
                {T::loads, "loads", "Product in each of equal loads."},
                {T::percent_solution, "percent_solution", "A percent mix per area."},
                {T::stems, "stems", "Cuts under a ceiling."},
                {T::rinse, "rinse", "What rinsing leaves."},
                {T::substitute, "substitute", "Another concentrate."}};
    }
};

template <>
struct Description<job::PracticeLanguage> {
    static constexpr std::string_view name = "PracticeLanguage";
    static Choices<job::PracticeLanguage> choices() {
        using L = job::PracticeLanguage;
        return {{L::en, "en", "English."}, {L::es, "es", "Spanish."}};
    }
};

template <>
struct Description<job::PracticeDifficulty> {
    static constexpr std::string_view name = "PracticeDifficulty";
    static Choices<job::PracticeDifficulty> choices() {
        using D = job::PracticeDifficulty;
        return {{D::plain, "plain", "Round figures."},
                {D::field, "field", "Figures as a stopwatch and a jug give them."}};
    }
};

template <>
struct Description<job::PracticeVerdict> {
    static constexpr std::string_view name = "PracticeVerdict";
    static Choices<job::PracticeVerdict> choices() {
        using V = job::PracticeVerdict;
        return {{V::right, "right", "Within what is accepted."},
                {V::rounding, "rounding", "A figure rounded too early, or the answer itself."},
                {V::mistake, "mistake", "What a known mistake gives."},
                {V::wrong, "wrong", "Does not follow from the figures."},
                {V::not_read, "not_read", "No number in a fitting unit."}};
    }
};

template <>
struct Description<job::GivenAnswer> {
    static constexpr std::string_view name = "GivenAnswer";
    static constexpr auto fields() {
        using T = job::GivenAnswer;
        return std::array{field<&T::number>("number", "Number of the problem.").required(),
                          field<&T::text>("text", "The answer as typed.").required()};
    }
};

template <>
struct Description<job::PracticeRequest> {
    static constexpr std::string_view name = "PracticeRequest";
    static constexpr auto fields() {
        using T = job::PracticeRequest;
        return std::array{
            field<&T::seed>("seed", "The same number gives the same sheet; 1 unless said."),
            field<&T::topics>("topics", "Topics in turn; all unless said."),
            field<&T::count>("count", "Problems on the sheet, 1 to 40; 8 unless said."),
            field<&T::difficulty>("difficulty", "Round figures, or as read in the field."),
            field<&T::language>("language", "Language of the texts."),
            field<&T::given_answers>("given_answers", "Answers to check.")};
    }
};

template <>
struct Description<job::PracticeGiven> {
    static constexpr std::string_view name = "PracticeGiven";
    static constexpr auto fields() {
        using T = job::PracticeGiven;
        return std::array{field<&T::name>("name", "What is given."),
                          field<&T::value>("value", "The figure with its unit.")};
    }
};

template <>
struct Description<job::PracticeKey> {
    static constexpr std::string_view name = "PracticeKey";
    static constexpr auto fields() {
        using T = job::PracticeKey;
        return std::array{field<&T::value>("value", "The answer."),
                          field<&T::unit>("unit", "Its unit.")};
    }
};

template <>
struct Description<job::PracticeStep> {
    static constexpr std::string_view name = "PracticeStep";
    static constexpr auto fields() {
        using T = job::PracticeStep;
        return std::array{field<&T::text>("text", "What is worked out."),
                          field<&T::expression>("expression", "The relation with its numbers."),
                          field<&T::result>("result", "What comes out."),
                          field<&T::source>("source", "Publication, when there is one.")};
    }
};

template <>
struct Description<job::CommonMistake> {
    static constexpr std::string_view name = "CommonMistake";
    static constexpr auto fields() {
        using T = job::CommonMistake;
        return std::array{
            field<&T::text>("text", "What was done wrongly."),
            field<&T::wrong_answer>("wrong_answer", "What that gives, in the unit of the answer.")};
    }
};

template <>
struct Description<job::PracticeProblem> {
    static constexpr std::string_view name = "PracticeProblem";
    static constexpr auto fields() {
        using T = job::PracticeProblem;
        return std::array{field<&T::number>("number", "Number on the sheet."),
                          field<&T::topic>("topic", "What it practises."),
                          field<&T::text>("text", "The problem."),
                          field<&T::asks>("asks", "What is asked."),
                          field<&T::givens>("givens", "The figures of the text."),
                          field<&T::answer>("answer", "The key."),
                          field<&T::accept_within>("accept_within",
                                                   "Difference to each side that is still right."),
                          field<&T::working>("working", "How the operation works it out."),
                          field<&T::common_mistake>("common_mistake", "The likeliest wrong way.")};
    }
};

template <>
struct Description<job::PracticeCheck> {
    static constexpr std::string_view name = "PracticeCheck";
    static constexpr auto fields() {
        using T = job::PracticeCheck;
        return std::array{field<&T::number>("number", "Number of the problem."),
                          field<&T::given>("given", "What was typed."),
                          field<&T::verdict>("verdict", "How it is judged."),
                          field<&T::difference>("difference", "Against the key."),
                          field<&T::text>("text", "Why.").labelled("In words")};
    }
};

template <>
struct Description<job::PracticeAnswer> {
    static constexpr std::string_view name = "PracticeAnswer";
    static constexpr auto fields() {
        using T = job::PracticeAnswer;
        return std::array{field<&T::problems>("problems", "The sheet, with its key."),
                          field<&T::checks>("checks", "The answers judged."),
                          field<&T::right>("right", "How many of them are right.")};
    }
};

Operation practice_operation() {
    return operation<&job::practice>(
        "practice", "Word problems with a worked key for a class, and a check of its answers.",
        {24});
}

}  // namespace swathbook::api
