#include "core/job/practice.hpp"

#include <array>
#include <cmath>
#include <cstdlib>
#include <set>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

namespace swathbook::job {
namespace {

constexpr int topic_count = 9;

PracticeAnswer sheet(const PracticeRequest& request, UnitSystem units = UnitSystem::us) {
    Notes notes(units);
    const auto answer = practice(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(PracticeAnswer{});
}

PracticeRequest drawn_request() {
    PracticeRequest request;
    request.seed = *rc::gen::arbitrary<int>();
    request.count = topic_count;
    request.difficulty = *rc::gen::element(PracticeDifficulty::plain, PracticeDifficulty::field);
    request.language = *rc::gen::element(PracticeLanguage::en, PracticeLanguage::es);
    return request;
}
UnitSystem drawn_units() {
    return *rc::gen::element(UnitSystem::us, UnitSystem::metric);
}

RC_GTEST_PROP(Practice, judges_its_own_key_right_and_its_common_mistake_a_mistake, ()) {
    PracticeRequest request = drawn_request();
    const UnitSystem units = drawn_units();
    const PracticeAnswer first = sheet(request, units);
    RC_ASSERT(first.problems.size() == topic_count);
    for (const PracticeProblem& problem : first.problems) {
        RC_ASSERT(!problem.common_mistake.text.empty());
        request.given_answers.push_back(
            {problem.number,
             fmt::format("{:.12g} {}", problem.answer.value,
                         problem.topic == PracticeTopic::stems ? "" : problem.answer.unit)});
        request.given_answers.push_back(
            {problem.number, fmt::format("{:.12g}", problem.common_mistake.wrong_answer)});
    }
    const PracticeAnswer judged = sheet(request, units);
    RC_ASSERT(judged.right == topic_count);
    for (std::size_t i = 0; i < judged.checks.size(); i += 2) {
        RC_ASSERT(judged.checks[i].verdict == PracticeVerdict::right);
        RC_ASSERT(judged.checks[i + 1].verdict == PracticeVerdict::mistake);
    }
}

RC_GTEST_PROP(Practice, says_every_given_in_the_text_and_shows_working, ()) {
    const PracticeAnswer answer = sheet(drawn_request(), drawn_units());
    for (const PracticeProblem& problem : answer.problems) {
        RC_ASSERT(!problem.working.empty());
        RC_ASSERT(problem.answer.value > 0.0);
        for (const PracticeGiven& given : problem.givens) {
            RC_ASSERT(problem.text.find(given.value) != std::string::npos);
        }
        RC_ASSERT(problem.text.find('{') == std::string::npos);
    }
}

RC_GTEST_PROP(Practice, begins_a_longer_sheet_with_the_shorter_one_and_keeps_figures_in_spanish,
              ()) {
    PracticeRequest request = drawn_request();
    const UnitSystem units = drawn_units();
    const PracticeAnswer one = sheet(request, units);
    request.count = 2 * topic_count;
    request.language =
        request.language == PracticeLanguage::en ? PracticeLanguage::es : PracticeLanguage::en;
    const PracticeAnswer two = sheet(request, units);
    for (std::size_t i = 0; i < one.problems.size(); ++i) {
        RC_ASSERT(one.problems[i].answer.value == two.problems[i].answer.value);
        RC_ASSERT(one.problems[i].text != two.problems[i].text);
    }
}

double number_of(const PracticeProblem& problem, std::size_t given) {
    return std::strtod(problem.givens.at(given).value.c_str(), nullptr);
}

/// The key by the formula of a handout, from nothing but the figures of the text (US units).
double by_hand(const PracticeProblem& problem) {
    const auto n = [&](std::size_t given) { return number_of(problem, given); };
    switch (problem.topic) {
        case PracticeTopic::course: return 43560.0 / 128.0 / (n(0) / 12.0);
        case PracticeTopic::calibration: return n(3) / 128.0 * 43560.0 / (n(0) * n(1));
        case PracticeTopic::refill: return n(1) / n(0);
        case PracticeTopic::crew: return 3.0 / (1.0 / n(0) + 1.0 / n(1) + 1.0 / n(2));
        case PracticeTopic::loads: return n(3) * n(0) / std::ceil(n(0) * n(1) / n(2) - 1e-9);
        case PracticeTopic::percent_solution: return n(0) * n(1) / 100.0 * 4.0 / n(2);
        case PracticeTopic::stems: return std::floor(n(2) * 453.59237 / (n(0) / 1000.0 * n(1)));
        case PracticeTopic::rinse: return 100.0 * std::pow(n(0) / (n(0) + n(1)), n(2));
        case PracticeTopic::substitute: return n(0) * 32.0 * n(1) / n(2);
    }
    return 0.0;
}

RC_GTEST_PROP(Practice, gives_the_key_that_a_pencil_gives, ()) {
    const PracticeAnswer answer = sheet(drawn_request());
    for (const PracticeProblem& problem : answer.problems) {
        const double pencil = by_hand(problem);
        RC_ASSERT(std::fabs(problem.answer.value - pencil) <= 1e-9 * pencil);
    }
}

TEST(Practice, names_the_figure_whose_early_rounding_moved_the_answer) {
    // 26 ft x 120 ft is 0.07163 ac; taken as 0.07 ac, 275 fl oz (2.148 gal) make 30.69 gal/ac.
    PracticeRequest request;
    request.given_answers = {{2, "30.69 gal/ac"}, {2, "30"}, {2, "28.2"}, {2, "300"}, {2, "lots"}};
    const PracticeAnswer answer = sheet(request);
    EXPECT_EQ(answer.checks[0].verdict, PracticeVerdict::rounding);
    EXPECT_NE(answer.checks[0].text.find("0.07 ac"), std::string::npos) << answer.checks[0].text;
    EXPECT_EQ(answer.checks[1].verdict, PracticeVerdict::right);
    EXPECT_EQ(answer.checks[2].verdict, PracticeVerdict::wrong);
    EXPECT_EQ(answer.checks[3].verdict, PracticeVerdict::mistake);
    EXPECT_NE(answer.checks[3].text.find("decimal point"), std::string::npos);
    EXPECT_EQ(answer.checks[4].verdict, PracticeVerdict::not_read);
}

TEST(Practice, takes_an_answer_in_another_unit_of_the_same_kind) {
    PracticeRequest request;
    request.given_answers = {{2, "280.6 L/ha"}};  // 29.995 x 9.35396
    EXPECT_EQ(sheet(request).checks[0].verdict, PracticeVerdict::right);
}

TEST(Practice, draws_other_figures_for_another_seed) {
    std::set<std::string> texts;
    for (int seed = 1; seed <= 20; ++seed) {
        PracticeRequest request;
        request.seed = seed;
        request.topics = {PracticeTopic::calibration};
        request.count = 1;
        texts.insert(sheet(request).problems.front().text);
    }
    EXPECT_GE(texts.size(), 18U);
}

TEST(Practice, refuses_what_is_no_sheet) {
    Notes notes;
    PracticeRequest request;
    for (const int count : {0, -1, 41}) {
        request.count = count;
        EXPECT_EQ(practice(request, notes).error().field, "count");
    }
    request.count = 2;
    request.given_answers = {{3, "1"}};
    EXPECT_EQ(practice(request, notes).error().code, ErrorCode::not_found);
    EXPECT_EQ(practice(request, notes).error().field, "given_answers[0].number");
}

}  // namespace
}  // namespace swathbook::job
