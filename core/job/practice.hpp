#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/quantity.hpp"

/// Word problems for a class, each with a key that the operations themselves worked out.
namespace swathbook::job {

enum class PracticeTopic : std::uint8_t {
    course,            ///< length of a course
    calibration,       ///< by course and catch
    refill,            ///< by a sprayed plot and what refills the tank
    crew,              ///< one tank, several paces
    loads,             ///< product in each of equal loads
    percent_solution,  ///< what it comes to per area
    stems,             ///< cuts under a ceiling
    rinse,             ///< what rinsing leaves
    substitute,        ///< another concentrate
};

enum class PracticeLanguage : std::uint8_t { en, es };

enum class PracticeDifficulty : std::uint8_t {
    plain,  ///< round figures
    field,  ///< figures as a stopwatch and a jug give them
};

/// What a learner answered to one problem.
struct GivenAnswer {
    int number = 0;
    std::string text{};  ///< as typed: "13", "12.9 gal/ac"
};

struct PracticeRequest {
    int seed = 1;
    std::vector<PracticeTopic> topics{};  ///< empty: all
    int count = 8;
    PracticeDifficulty difficulty = PracticeDifficulty::plain;
    PracticeLanguage language = PracticeLanguage::en;
    std::vector<GivenAnswer> given_answers{};
};

struct PracticeGiven {
    std::string name{};
    std::string value{};
};

struct PracticeKey {
    double value = 0.0;
    std::string unit{};
};

struct PracticeStep {
    std::string text{};
    std::string expression{};
    std::string result{};
    std::string source{};
};

struct CommonMistake {
    std::string text{};
    double wrong_answer = 0.0;  ///< in the unit of the key
};

struct PracticeProblem {
    int number = 1;
    PracticeTopic topic = PracticeTopic::course;
    std::string text{};
    std::string asks{};
    std::vector<PracticeGiven> givens{};
    PracticeKey answer{};
    double accept_within = 0.0;  ///< to each side, in the unit of the key
    std::vector<PracticeStep> working{};
    CommonMistake common_mistake{};
};

enum class PracticeVerdict : std::uint8_t {
    right,
    rounding,  ///< a figure rounded too early, or the answer itself
    mistake,   ///< what comes out of a known mistake
    wrong,
    not_read,  ///< the text holds no number in a fitting unit
};

struct PracticeCheck {
    int number = 1;
    std::string given{};
    PracticeVerdict verdict = PracticeVerdict::not_read;
    std::optional<Fraction> difference{};  ///< of the key
    std::string text{};
};

struct PracticeAnswer {
    std::vector<PracticeProblem> problems{};
    std::vector<PracticeCheck> checks{};
    int right = 0;
};

/// Makes problems, and judges answers to them.
///
/// The same seed, number, topics, units and difficulty give the same problem in both languages on
/// every machine; a longer sheet begins with the shorter one. Problem n draws from a stream of its
/// own, seeded by the seed and n.
///
/// @errors out_of_range (count outside 1 to 40), not_found (an answer to a problem that the sheet
///         does not hold)
/// @source figures invented; every key is what course, calibrate, crew, loads, spot, stems, rinse
///         or substitute answers to the figures of the text
/// @cases  tests/cases/practice/practice.case, tests/unit/job/practice_test.cpp
/// Identities: the key is judged right, and the wrong answer of each common mistake is judged to be
/// that mistake.
[[nodiscard]] Result<PracticeAnswer> practice(const PracticeRequest& request, Notes& notes);

}  // namespace swathbook::job
