#pragma once

#include <vector>

#include <fmt/format.h>

#include "core/base/draws.hpp"
#include "core/job/practice.hpp"
#include "core/quantity/kind.hpp"

/// One maker for each topic: draws the figures, asks the operation, writes the text.
namespace swathbook::job::detail {

struct PracticeStyle {
    UnitSystem units = UnitSystem::us;
    PracticeLanguage language = PracticeLanguage::en;
    PracticeDifficulty difficulty = PracticeDifficulty::plain;
};

/// A figure met on the way to the answer, which people round.
struct MiddleFigure {
    std::string name{};
    double value = 0.0;
    std::string unit{};
    int power = 1;  ///< the answer goes with this power of it
};

/// A problem with what is needed to judge an answer to it.
struct PracticeDraft {
    PracticeProblem problem{};
    std::optional<Kind> kind{};  ///< of the key; absent for a bare count
    std::vector<CommonMistake> mistakes{};
    std::vector<MiddleFigure> middles{};
};

/// The text of a person's language.
struct PracticeWords {
    const char* english;
    const char* spanish;
};

/// A sentence with its figures put in at {0}, {1} ...
template <class... Texts>
[[nodiscard]] std::string say_in(PracticeLanguage language, PracticeWords words,
                                 const Texts&... texts) {
    return fmt::vformat(language == PracticeLanguage::es ? words.spanish : words.english,
                        fmt::make_format_args(texts...));
}

[[nodiscard]] Result<PracticeDraft> make_problem(PracticeTopic topic, Draws& draws,
                                                 const PracticeStyle& style);

}  // namespace swathbook::job::detail
