#include "core/job/practice.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/job/detail/practice_topics.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::job {
namespace {

using detail::MiddleFigure;
using detail::PracticeDraft;
using detail::PracticeStyle;
using detail::say_in;

constexpr int most_problems = 40;
constexpr std::array all_topics{
    PracticeTopic::course, PracticeTopic::calibration, PracticeTopic::refill,
    PracticeTopic::crew,   PracticeTopic::loads,       PracticeTopic::percent_solution,
    PracticeTopic::stems,  PracticeTopic::rinse,       PracticeTopic::substitute};

/// What was typed, in the unit of the key.
struct Typed {
    double number = 0.0;
    double half_step = 0.0;
};

/// Without a unit, or with one that cannot be read, the number is taken in the unit of the key.
std::optional<Typed> typed_of(const std::string& text, const PracticeDraft& draft) {
    const Kind kind = draft.kind.value_or(Kind::fraction);
    const std::string unit = draft.kind ? draft.problem.answer.unit : "%";
    for (const std::string& tried : {text, fmt::format("{} {}", text, unit)}) {
        const auto parsed = parse_amount(tried, kind);
        if (parsed) {
            const double step = number_in(parsed->si, kind, unit) -
                                number_in(parsed->si - parsed->half_step_si, kind, unit);
            return Typed{number_in(parsed->si, kind, unit), step};
        }
    }
    return std::nullopt;
}

double rounded(double number, int digits) {
    double scale = 1.0;
    double least = 1.0;
    for (int i = 1; i < digits; ++i) {
        least *= 10.0;
    }
    for (int i = 0; i < 30 && number * scale < least; ++i) {
        scale *= 10.0;
    }
    for (int i = 0; i < 30 && number * scale >= least * 10.0; ++i) {
        scale /= 10.0;
    }
    return std::floor(number * scale + 0.5) / scale;
}

/// The answer that comes out when one figure on the way is rounded to so many digits.
double with_rounded(double exact, const MiddleFigure& middle, int digits) {
    const double ratio = rounded(middle.value, digits) / middle.value;
    double answer = exact;
    for (int i = 0; i < std::abs(middle.power); ++i) {
        answer = middle.power > 0 ? answer * ratio : answer / ratio;
    }
    return answer;
}

struct RoundingFound {
    double off = 0.0;
    const MiddleFigure* middle = nullptr;
    int digits = 0;
};

/// The figure whose rounding explains an answer best, if one does.
std::optional<RoundingFound> rounding_of(const PracticeDraft& draft, const Typed& typed) {
    constexpr double own_slack = 0.003;
    const double exact = draft.problem.answer.value;
    std::optional<RoundingFound> best;
    for (const MiddleFigure& middle : draft.middles) {
        for (int digits = 1; digits <= 3; ++digits) {
            const double off = std::fabs(with_rounded(exact, middle, digits) - typed.number);
            if (off <= std::max(std::min(typed.half_step, 0.02 * exact), own_slack * exact) &&
                (!best || off < best->off)) {
                best = {off, &middle, digits};
            }
        }
    }
    return best;
}

const CommonMistake* mistake_of(const PracticeDraft& draft, const Typed& typed) {
    const CommonMistake* best = nullptr;
    double best_off = 0.0;
    for (const CommonMistake& mistake : draft.mistakes) {
        const double off = std::fabs(mistake.wrong_answer - typed.number);
        const double close = draft.kind ? 0.01 * std::fabs(mistake.wrong_answer) : 0.01;
        if (off <= std::max(close, std::min(typed.half_step, 2.0 * close)) &&
            (best == nullptr || off < best_off)) {
            best = &mistake;
            best_off = off;
        }
    }
    return best;
}

/// How many tens an answer is off by, when it is nothing else.
int tens_off(double given, double exact) {
    for (int tens = 1; tens <= 4; ++tens) {
        double scale = 1.0;
        for (int i = 0; i < tens; ++i) {
            scale *= 10.0;
        }
        if (std::fabs(given / (exact * scale) - 1.0) < 0.01) {
            return tens;
        }
        if (std::fabs(given * scale / exact - 1.0) < 0.01) {
            return -tens;
        }
    }
    return 0;
}

std::string signed_percent(double fraction) {
    return fmt::format("{}{} %", fraction < 0.0 ? "-" : "+",
                       show_number(100.0 * std::fabs(fraction), 3));
}

/// The first that explains what was typed: a known mistake, an early rounding, the rounding of the
/// answer, a slipped point.
void judge(PracticeCheck& check, const PracticeDraft& draft, const Typed& typed,
           PracticeLanguage language) {
    const double exact = draft.problem.answer.value;
    const double apart = std::fabs(typed.number - exact);
    const std::string key = fmt::format("{} {}", show_number(exact, 4), draft.problem.answer.unit);
    const std::string off = signed_percent(typed.number / exact - 1.0);
    check.difference = Fraction::from_si(typed.number / exact - 1.0);
    if (apart <= draft.problem.accept_within + 1e-9 * exact) {
        check.verdict = PracticeVerdict::right;
        check.text = say_in(language, {"Right: {0}.", "Correcto: {0}."}, key);
        return;
    }
    if (const CommonMistake* mistake = mistake_of(draft, typed); mistake != nullptr) {
        check.verdict = PracticeVerdict::mistake;
        check.text = say_in(language, {"{0} The answer is {1}.", "{0} La respuesta es {1}."},
                            mistake->text, key);
        return;
    }
    if (const auto found = rounding_of(draft, typed)) {
        check.verdict = PracticeVerdict::rounding;
        check.text = say_in(
            language,
            {"Rounding: {0} was rounded from {1} to {2} {3}, which moved the answer {4} from {5}.",
             "Redondeo: {0}, de {1} a {2} {3}; eso movió la respuesta {4} desde {5}."},
            found->middle->name, show_number(found->middle->value, 4),
            show_number(rounded(found->middle->value, found->digits), 3), found->middle->unit, off,
            key);
        return;
    }
    if (draft.kind && apart <= typed.half_step && apart <= 0.05 * exact) {
        check.verdict = PracticeVerdict::rounding;
        check.text = say_in(language,
                            {"Rounding: the answer itself was rounded ({0} from {1}).",
                             "Redondeo: la respuesta misma se redondeó ({0} desde {1})."},
                            off, key);
        return;
    }
    const int tens = tens_off(typed.number, exact);
    check.verdict = tens != 0 ? PracticeVerdict::mistake : PracticeVerdict::wrong;
    check.text = tens != 0 ? say_in(language,
                                    {"The decimal point is off by {0}. The answer is {1}.",
                                     "El punto decimal está corrido en {0}. La respuesta es {1}."},
                                    std::abs(tens), key)
                           : say_in(language,
                                    {"It does not follow from the figures given: {0} from {1}.",
                                     "No sale de las cifras dadas: {0} desde {1}."},
                                    off, key);
}

Result<void> add_check(PracticeAnswer& answer, const std::vector<PracticeDraft>& drafts,
                       const GivenAnswer& given, std::size_t index, PracticeLanguage language) {
    if (given.number < 1 || given.number > static_cast<int>(drafts.size())) {
        return fail(ErrorCode::not_found, fmt::format("given_answers[{}].number", index),
                    fmt::format("There is no problem {} on this sheet of {}.", given.number,
                                drafts.size()));
    }
    const PracticeDraft& draft = drafts[static_cast<std::size_t>(given.number - 1)];
    PracticeCheck check;
    check.number = given.number;
    check.given = given.text;
    const auto typed = typed_of(given.text, draft);
    if (typed) {
        judge(check, draft, *typed, language);
    } else {
        check.text = say_in(language,
                            {"\"{0}\" is no amount. Write a number in {1}.",
                             "\"{0}\" no es una cantidad. Escriba un número en {1}."},
                            given.text, draft.problem.answer.unit);
    }
    answer.right += check.verdict == PracticeVerdict::right ? 1 : 0;
    answer.checks.push_back(std::move(check));
    return {};
}

}  // namespace

Result<PracticeAnswer> practice(const PracticeRequest& request, Notes& notes) {
    if (request.count < 1 || request.count > most_problems) {
        return fail(
            ErrorCode::out_of_range, "count",
            fmt::format("A sheet holds 1 to {} problems, not {}.", most_problems, request.count));
    }
    if (request.given_answers.size() > most_problems) {
        return fail(ErrorCode::out_of_range, "given_answers",
                    fmt::format("There are {} answers; a sheet has at most {} problems.",
                                request.given_answers.size(), most_problems));
    }
    const std::vector<PracticeTopic> topics =
        request.topics.empty() ? std::vector<PracticeTopic>(all_topics.begin(), all_topics.end())
                               : request.topics;
    const PracticeStyle style{notes.units(), request.language, request.difficulty};
    std::vector<PracticeDraft> drafts;
    drafts.reserve(static_cast<std::size_t>(request.count));
    for (int number = 1; number <= request.count; ++number) {
        // A stream for each problem: a longer sheet begins like the shorter one.
        Draws draws((static_cast<std::uint64_t>(static_cast<std::uint32_t>(request.seed)) << 32U) +
                    static_cast<std::uint64_t>(number));
        const std::size_t turn = static_cast<std::size_t>(number - 1) % topics.size();
        SWATHBOOK_TRY(draft, detail::make_problem(topics[turn], draws, style));
        draft.problem.number = number;
        drafts.push_back(std::move(draft));
    }
    PracticeAnswer answer;
    for (std::size_t i = 0; i < request.given_answers.size(); ++i) {
        SWATHBOOK_CHECK(add_check(answer, drafts, request.given_answers[i], i, request.language));
    }
    for (PracticeDraft& draft : drafts) {
        answer.problems.push_back(std::move(draft.problem));
    }
    notes.find(Severity::note, "figures_invented",
               say_in(request.language,
                      {"The figures are invented for practice. Calibrate with clean water; the "
                       "label in hand rules.",
                       "Las cifras son inventadas para practicar. Calibre con agua limpia; la "
                       "etiqueta en mano manda."}));
    return answer;
}

}  // namespace swathbook::job
