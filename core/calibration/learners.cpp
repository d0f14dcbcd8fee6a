#include "core/calibration/learners.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/base/elementary.hpp"
#include "core/calibration/repeats.hpp"
#include "core/calibration/student_t.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

constexpr std::size_t most_learners = 500;

template <class T>
const std::optional<T>& or_of_class(const std::optional<T>& own, const std::optional<T>& of_class) {
    return own ? own : of_class;
}

CalibrateRequest request_of(const LearnersRequest& all, const Learner& learner) {
    CalibrateRequest request;
    request.sprayer = all.sprayer;
    request.width = or_of_class(learner.width, all.width);
    request.tips = all.tips;
    request.catch_covers = all.catch_covers;
    request.course_times = learner.times;
    request.speed = learner.speed;
    request.flow = learner.flow;
    request.refill = learner.refill;
    const auto& catch_time = or_of_class(learner.catch_time, all.catch_time);
    for (const Reading<Kind::volume>& caught : learner.catches) {
        Catch one;
        one.amount = caught;
        one.time = catch_time;
        request.catches.push_back(std::move(one));
    }
    // A plot of the class is no plot of somebody who drove its course.
    if (learner.refill || learner.area) {
        request.area = or_of_class(learner.area, all.area);
    }
    if (!learner.refill && !learner.speed) {
        request.course_length = or_of_class(learner.course_length, all.course_length);
    }
    if (learner.hand_answer) {
        request.believed_output = learner.hand_answer;
    }
    return request;
}

/// calibrate's name of a member, in the words of this request.
std::string path_of(std::size_t index, std::string field) {
    const auto rename = [&](std::string_view from, std::string_view to) {
        if (field.starts_with(from)) {
            field = std::string(to) + field.substr(from.size());
        }
    };
    rename("course_times", "times");
    rename("believed_output", "hand_answer");
    const std::size_t amount = field.find(".amount");
    if (amount != std::string::npos) {
        field.resize(amount);
    }
    return field.empty() ? fmt::format("learners[{}]", index)
                         : fmt::format("learners[{}].{}", index, field);
}

/// A figure people round on the way to the answer.
struct OnTheWay {
    std::string_view name;
    double value;  ///< in the unit it is written in
    std::string_view unit;
    bool divides;
};

double to_digits(double number, int digits) {
    double scale = 1.0;
    const double least = digits == 1 ? 1.0 : digits == 2 ? 10.0 : 100.0;
    for (int i = 0; i < 30 && number * scale < least; ++i) {
        scale *= 10.0;
    }
    for (int i = 0; i < 30 && number * scale >= least * 10.0; ++i) {
        scale /= 10.0;
    }
    return std::floor(number * scale + 0.5) / scale;
}

std::vector<OnTheWay> figures_of(const CalibrateAnswer& answer, UnitSystem units) {
    const bool us = units == UnitSystem::us;
    std::vector<OnTheWay> figures;
    if (answer.speed) {
        figures.push_back({"the speed",
                           answer.speed->value.in(us ? miles_per_hour : kilometres_per_hour),
                           us ? "mph" : "km/h", true});
    }
    if (answer.flow) {
        figures.push_back({"the flow",
                           answer.flow->value.in(us ? us_gallons_per_minute : litres_per_minute),
                           us ? "gal/min" : "L/min", false});
    }
    if (answer.course_area) {
        figures.push_back(
            {"the area", answer.course_area->in(us ? acres : hectares), us ? "ac" : "ha", true});
    }
    if (answer.width) {
        figures.push_back(
            {"the width", answer.width->in(us ? feet : metres), us ? "ft" : "m", true});
    }
    return figures;
}

std::string signed_percent(double fraction) {
    return fmt::format("{}{} %", fraction < 0.0 ? "-" : "+",
                       show_number(100.0 * std::fabs(fraction), 3));
}

/// The single early rounding that gives the hand answer, in words; empty when none does.
std::string early_rounding(const CalibrateAnswer& answer, const Reading<Kind::mix_per_area>& hand,
                           UnitSystem units) {
    constexpr double own_slack = 0.002;
    const double ratio = hand.value / answer.output.value;
    const double allowed = std::max(own_slack, std::min(0.01, hand.half_step_si / hand.value.si()));
    std::string words;
    double nearest = allowed;
    for (const OnTheWay& figure : figures_of(answer, units)) {
        for (int digits = 1; digits <= 3; ++digits) {
            const double kept = to_digits(figure.value, digits);
            const double moved = figure.divides ? figure.value / kept : kept / figure.value;
            const double off = std::fabs(ratio / moved - 1.0);
            if (std::fabs(moved - 1.0) > own_slack && off < nearest) {
                nearest = off;
                words = fmt::format("{} was rounded from {} to {} {}, which moves it {}",
                                    figure.name, show_number(figure.value, 4), show_number(kept, 3),
                                    figure.unit, signed_percent(moved - 1.0));
            }
        }
    }
    return words;
}

bool point_slipped(double ratio) {
    constexpr double close = 0.02;
    for (const double tens : {0.001, 0.01, 0.1, 10.0, 100.0, 1000.0}) {
        if (std::fabs(ratio / tens - 1.0) < close) {
            return true;
        }
    }
    return false;
}

LearnerHand hand_of(const CalibrateAnswer& answer, const Reading<Kind::mix_per_area>& hand,
                    UnitSystem units) {
    LearnerHand check;
    check.answer = hand.value;
    const double off = hand.value / answer.output.value - 1.0;
    check.difference = Fraction::from_si(off);
    const std::string own = show(answer.output.value, units);
    if (std::fabs(off) <= hand.half_step_si / answer.output.value.si() + 1e-9) {
        check.text = fmt::format("{} agrees with {} to its last digit.", show(hand, units), own);
        return check;
    }
    const std::string words = early_rounding(answer, hand, units);
    if (!words.empty()) {
        check.verdict = LearnerHandVerdict::rounding;
        check.text = fmt::format("{} is {} from {}: {}.", show(hand, units), signed_percent(off),
                                 own, words);
        return check;
    }
    if (answer.believed && !answer.believed->shortcut.empty()) {
        check.verdict = LearnerHandVerdict::shortcut;
        check.shortcut = answer.believed->shortcut;
        const std::size_t why = answer.believed->text.find(" That figure");
        check.text = fmt::format(
            "{} is {} from {}.{}", show(hand, units), signed_percent(off), own,
            why == std::string::npos ? std::string() : answer.believed->text.substr(why));
        return check;
    }
    check.verdict = LearnerHandVerdict::slip;
    check.text = fmt::format(
        "{} is {} from {}, and {}.", show(hand, units), signed_percent(off), own,
        point_slipped(1.0 + off) ? "the decimal point is in another place"
                                 : "no known shortcut or rounding gives it: look for a slip in the "
                                   "arithmetic");
    return check;
}

LearnerResult result_of(const Learner& learner, const CalibrateAnswer& answer, const Notes& inner) {
    LearnerResult result;
    result.name = learner.name;
    result.output = answer.output;
    if (answer.speed) {
        result.speed = answer.speed->value;
    }
    if (answer.flow) {
        result.flow = answer.flow->value;
    }
    result.width = answer.width;
    if (learner.hand_answer) {
        result.hand = hand_of(answer, *learner.hand_answer, inner.units());
    }
    for (const Finding& finding : inner.findings()) {
        const bool of_hand =
            finding.code.starts_with("shortcut_") || finding.code == "believed_output_differs";
        if (finding.severity >= Severity::warning && !of_hand) {
            result.remarks.push_back(finding.text);
        }
    }
    return result;
}

Result<void> check_names(const LearnersRequest& request) {
    if (request.learners.empty() || request.learners.size() > most_learners) {
        return fail(ErrorCode::invalid_input, "learners",
                    fmt::format("There are {} learners; enter 1 to {}.", request.learners.size(),
                                most_learners));
    }
    for (std::size_t i = 0; i < request.learners.size(); ++i) {
        const std::string& name = request.learners[i].name;
        if (name.empty()) {
            return fail(ErrorCode::invalid_input, fmt::format("learners[{}].name", i),
                        "Every learner needs a name or a number.");
        }
        for (std::size_t j = 0; j < i; ++j) {
            if (request.learners[j].name == name) {
                return fail(ErrorCode::inconsistent, fmt::format("learners[{}].name", i),
                            fmt::format("Two learners are called \"{}\". Give each a name of "
                                        "their own.",
                                        name));
            }
        }
    }
    return {};
}

void fill_class(LearnersAnswer& answer, const std::vector<double>& outputs, Notes& notes) {
    const Repeats all = repeats_of(outputs);
    answer.count = all.count;
    answer.mean = MixPerArea::from_si(all.mean);
    const auto least = std::min_element(outputs.begin(), outputs.end()) - outputs.begin();
    const auto most = std::max_element(outputs.begin(), outputs.end()) - outputs.begin();
    const auto& lowest = answer.learners[static_cast<std::size_t>(least)];
    const auto& highest = answer.learners[static_cast<std::size_t>(most)];
    answer.lowest = lowest.output.value;
    answer.lowest_by = lowest.name;
    answer.highest = highest.output.value;
    answer.highest_by = highest.name;
    answer.spread = Fraction::from_si(answer.highest / answer.lowest - 1.0);
    for (LearnerResult& learner : answer.learners) {
        learner.from_mean = Fraction::from_si(learner.output.value.si() / all.mean - 1.0);
    }
    notes.show([&] {
        return Step{
            "Mean of the class",
            fmt::format("{} / {}", show(MixPerArea::from_si(all.mean * all.count), notes.units()),
                        all.count),
            show(answer.mean.value, notes.units())};
    });
    if (all.count < 2) {
        return;
    }
    const double half = student_t_95(all.count - 1) * all.deviation / std::sqrt(all.count);
    answer.mean = {MixPerArea::from_si(all.mean),
                   MixPerArea::from_si(std::max(all.mean - half, 0.0)),
                   MixPerArea::from_si(all.mean + half)};
    answer.standard_deviation = MixPerArea::from_si(all.deviation);
    answer.variation = Fraction::from_si(all.deviation / all.mean);
    notes.show([&] {
        return Step{"Coefficient of variation",
                    fmt::format("{} / {}", show(*answer.standard_deviation, notes.units()),
                                show(answer.mean.value, notes.units())),
                    show(*answer.variation, notes.units()),
                    "NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.6"};
    });
}

void fill_outside(LearnersAnswer& answer, const std::vector<double>& outputs) {
    constexpr std::size_t fewest = 4;
    if (outputs.size() < fewest) {
        return;
    }
    std::vector<double> others;
    for (std::size_t i = 0; i < outputs.size(); ++i) {
        others = outputs;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        const Repeats rest = repeats_of(others);
        const double half =
            student_t_95(rest.count - 1) * rest.deviation * std::sqrt(1.0 + 1.0 / rest.count);
        LearnerResult& learner = answer.learners[i];
        learner.others_low = MixPerArea::from_si(std::max(rest.mean - half, 0.0));
        learner.others_high = MixPerArea::from_si(rest.mean + half);
        const double rounding_room = 1e-9 * rest.mean;
        learner.outside = outputs[i] < rest.mean - half - rounding_room ||
                          outputs[i] > rest.mean + half + rounding_room;
    }
}

/// One term of ln output over the class: its logarithms, and whether it divides.
struct Term {
    SpreadSource source;
    std::vector<double> logarithms{};
    bool divides = false;
};

void add_shares(LearnersAnswer& answer, std::vector<Term> terms) {
    const std::size_t count = answer.learners.size();
    std::vector<double> totals(count, 0.0);
    for (Term& term : terms) {
        for (std::size_t i = 0; i < count; ++i) {
            term.logarithms[i] = term.divides ? -term.logarithms[i] : term.logarithms[i];
            totals[i] += term.logarithms[i];
        }
    }
    const Repeats total = repeats_of(totals);
    const double variance = total.deviation * total.deviation * (total.count - 1);
    constexpr double nothing = 1e-18;
    if (variance < nothing) {
        return;
    }
    for (const Term& term : terms) {
        const Repeats own = repeats_of(term.logarithms);
        double together = 0.0;
        for (std::size_t i = 0; i < count; ++i) {
            together += (term.logarithms[i] - own.mean) * (totals[i] - total.mean);
        }
        answer.spread_shares.push_back({term.source, Fraction::from_si(own.deviation),
                                        Fraction::from_si(together / variance)});
    }
    std::stable_sort(answer.spread_shares.begin(), answer.spread_shares.end(),
                     [](const SpreadShare& a, const SpreadShare& b) { return a.share > b.share; });
}

/// @return whether everybody has every term
bool collect(std::vector<Term>& terms, const LearnersAnswer& answer) {
    for (const LearnerResult& learner : answer.learners) {
        if (!learner.speed || !learner.flow || !learner.width) {
            return false;
        }
        terms[0].logarithms.push_back(elementary::logarithm(learner.speed->si()));
        terms[1].logarithms.push_back(elementary::logarithm(learner.flow->si()));
        terms[2].logarithms.push_back(elementary::logarithm(learner.width->si()));
    }
    return true;
}

void fill_shares(LearnersAnswer& answer, const LearnersRequest& request, Notes& notes) {
    if (answer.count < 2) {
        return;
    }
    std::vector<Term> terms{{SpreadSource::speed, {}, true},
                            {SpreadSource::flow, {}, false},
                            {SpreadSource::width, {}, true}};
    if (collect(terms, answer)) {
        add_shares(answer, std::move(terms));
        return;
    }
    const bool all_refilled = std::all_of(
        request.learners.begin(), request.learners.end(),
        [&](const Learner& learner) { return learner.refill && (learner.area || request.area); });
    if (!all_refilled) {
        notes.find(Severity::advice, "methods_differ",
                   "Not everybody measured speed, flow and width, so the spread cannot be told "
                   "apart. Let the whole class calibrate by the same way.");
        return;
    }
    terms = {{SpreadSource::refill, {}, false}, {SpreadSource::area, {}, true}};
    for (const Learner& learner : request.learners) {
        const auto& area = or_of_class(learner.area, request.area);
        terms[0].logarithms.push_back(elementary::logarithm(learner.refill->value.si()));
        terms[1].logarithms.push_back(elementary::logarithm(area->value.si()));
    }
    add_shares(answer, std::move(terms));
}

std::string_view words_of(SpreadSource source) {
    constexpr std::array<std::string_view, 5> words{"speed", "flow (what was caught)", "width",
                                                    "refill", "area"};
    return words[static_cast<std::size_t>(source)];
}

void remark(const LearnersAnswer& answer, Notes& notes) {
    std::string outside;
    std::string hands;
    for (const LearnerResult& learner : answer.learners) {
        if (learner.outside == true) {
            outside += (outside.empty() ? "" : ", ") + learner.name;
        }
        if (learner.hand && learner.hand->verdict != LearnerHandVerdict::agrees) {
            hands += (hands.empty() ? "" : ", ") + learner.name;
        }
    }
    if (!outside.empty()) {
        notes.find(Severity::warning, "outside_the_others",
                   fmt::format("Outside what 95 of 100 like the others would find: {}. Look at "
                               "those measurements together before anybody is told to repeat them.",
                               outside));
    }
    if (!hands.empty()) {
        notes.find(Severity::warning, "hand_answers_differ",
                   fmt::format("Hand answers that their own figures do not give: {}.", hands));
    }
    if (!answer.spread_shares.empty()) {
        const SpreadShare& first = answer.spread_shares.front();
        notes.find(Severity::advice, "spread_comes_from",
                   fmt::format("{} of the variance between learners comes from the {}: teach that "
                               "first.",
                               show(first.share, notes.units(), 2), words_of(first.source)));
    }
}

}  // namespace

Result<LearnersAnswer> learners(const LearnersRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check_names(request));
    LearnersAnswer answer;
    std::vector<double> outputs;
    for (std::size_t i = 0; i < request.learners.size(); ++i) {
        const Learner& learner = request.learners[i];
        Notes inner(notes.units());
        auto calibrated = calibrate(request_of(request, learner), inner);
        if (!calibrated) {
            const Error& error = calibrated.error();
            return fail(error.code, path_of(i, error.field),
                        fmt::format("{}: {}", learner.name, error.detail));
        }
        answer.learners.push_back(result_of(learner, *calibrated, inner));
        outputs.push_back(calibrated->output.value.si());
        notes.show([&] {
            const LearnerResult& own = answer.learners.back();
            std::string relation = "refill over area";
            if (own.flow && own.speed && own.width) {
                relation =
                    fmt::format("{} / ({} x {})", show(*own.flow, notes.units()),
                                show(*own.speed, notes.units()), show(*own.width, notes.units()));
            }
            return Step{fmt::format("Output of {}", own.name), std::move(relation),
                        show(own.output.value, notes.units())};
        });
    }
    fill_class(answer, outputs, notes);
    fill_outside(answer, outputs);
    fill_shares(answer, request, notes);
    remark(answer, notes);
    return answer;
}

}  // namespace swathbook::calibration
