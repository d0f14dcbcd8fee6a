#include "core/calibration/tip_check.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

/// What binary arithmetic can blur in a quotient of two typed numbers, with room to spare.
constexpr double arithmetic_blur = 1e-9;
constexpr double new_tip_under = -0.05;
constexpr double worn_tip_over = 0.10;
constexpr double together = 0.05;  ///< every tip this far to one side: not the tips, or all of them

enum class Standing : std::uint8_t { inside, at, beyond };

/// Where a deviation stands against one limit on its own side.
Standing standing_of(double deviation, double limit) {
    if (std::fabs(deviation - limit) <= arithmetic_blur) {
        return Standing::at;
    }
    return deviation > limit ? Standing::beyond : Standing::inside;
}

struct Judgement {
    Standing high = Standing::inside;
    Standing low = Standing::inside;
    bool reading_decides = false;

    void weigh(Standing& side, double deviation, std::optional<double> limit, double blur) {
        if (!limit) {
            return;
        }
        side = std::max(side, standing_of(deviation, *limit));
        reading_decides = reading_decides || std::fabs(deviation - *limit) < blur;
    }
};

Judgement judge(double flow, double mean, std::optional<Flow> rated, const TipLimits& limits,
                double resolution) {
    Judgement judgement;
    const auto weigh_both = [&](double reference, std::optional<double> above,
                                std::optional<double> below) {
        const double deviation = flow / reference - 1.0;
        const double blur = resolution * flow / reference;
        judgement.weigh(judgement.high, deviation, above, blur);
        judgement.weigh(judgement.low, -deviation, below, blur);
    };
    weigh_both(mean, limits.above_mean, limits.below_mean);
    if (rated) {
        weigh_both(rated->si(), limits.above_rating, limits.below_rating);
    }
    return judgement;
}

double distance(double flow, double other) {
    return flow > other ? flow / other : other / flow;
}

const OtherSize* size_like(double flow, const TipSetReference& reference) {
    const OtherSize* best = nullptr;
    double nearest = reference.rated ? distance(flow, reference.rated->si()) : HUGE_VAL;
    for (const OtherSize& size : reference.other_sizes) {
        const double deviation = flow / size.flow.si() - 1.0;
        const bool fits = deviation >= new_tip_under && deviation <= worn_tip_over;
        if (fits && distance(flow, size.flow.si()) < nearest) {
            nearest = distance(flow, size.flow.si());
            best = &size;
        }
    }
    return best;
}

TipVerdict verdict_of(const Judgement& judgement) {
    if (judgement.high == Standing::beyond) {
        return TipVerdict::high_worn;
    }
    if (judgement.low == Standing::beyond) {
        return TipVerdict::low_clogged;
    }
    const bool at = judgement.high == Standing::at || judgement.low == Standing::at;
    return at ? TipVerdict::at_limit : TipVerdict::ok;
}

/// Out by the mean of the others, though a new tip may read as it does.
bool is_as_rated(const TipResult& tip) {
    return tip.from_rating && std::fabs(tip.from_rating->si()) <= -new_tip_under;
}

void say_what_to_do(TipResult& tip) {
    switch (tip.verdict) {
        case TipVerdict::ok: tip.action = TipAction::keep; break;
        case TipVerdict::at_limit:
            tip.action = TipAction::watch;
            tip.what_to_do =
                "Exactly at the limit, not over it. Watch it, or replace it with the next that "
                "goes "
                "over.";
            break;
        case TipVerdict::high_worn:
            tip.action = TipAction::replace;
            tip.what_to_do = "Over the limit: worn or damaged, or a larger size. Replace it.";
            break;
        case TipVerdict::low_clogged:
            tip.action = TipAction::clean;
            tip.what_to_do =
                "Under the limit: a tip does not wear smaller. Clean tip and strainer with water "
                "and a soft brush and catch it again; if still low, read the size on it: it may be "
                "a smaller one.";
            break;
        case TipVerdict::other_size:
            tip.action = TipAction::replace;
            tip.what_to_do = fmt::format(
                "Reads like size {}. Read the number on the tip; replace it with the "
                "size of the set.",
                tip.reads_like.value_or(""));
            break;
    }
    const bool out = tip.verdict == TipVerdict::high_worn || tip.verdict == TipVerdict::low_clogged;
    if (out && is_as_rated(tip)) {
        tip.what_to_do =
            "Out by the mean, yet within 5 % of its rating: it may be the others that are off. "
            "Look "
            "at those first.";
    }
    if (tip.reading_decides && tip.verdict != TipVerdict::at_limit) {
        tip.what_to_do += tip.what_to_do.empty() ? "" : " ";
        tip.what_to_do +=
            "The last digit read decides this verdict: catch it again for a longer time.";
    }
}

TipResult judge_tip(const TipFlow& caught, int number, double mean,
                    const TipSetReference& reference) {
    TipResult tip;
    tip.tip = number;
    tip.flow = caught.flow;
    const double flow = caught.flow.si();
    tip.from_mean = Fraction::from_si(flow / mean - 1.0);
    if (reference.rated) {
        tip.from_rating = Fraction::from_si(flow / reference.rated->si() - 1.0);
    }
    const Judgement judgement =
        judge(flow, mean, reference.rated, reference.limits, caught.resolution);
    tip.verdict = verdict_of(judgement);
    tip.reading_decides = judgement.reading_decides;
    const bool out = tip.verdict == TipVerdict::high_worn || tip.verdict == TipVerdict::low_clogged;
    if (const OtherSize* size = out ? size_like(flow, reference) : nullptr) {
        tip.verdict = TipVerdict::other_size;
        tip.reads_like = size->size;
    }
    say_what_to_do(tip);
    return tip;
}

bool is_bad(const TipResult& tip) {
    return tip.verdict != TipVerdict::ok && tip.verdict != TipVerdict::at_limit;
}

std::string percent(double fraction) {
    return fmt::format("{}{} %", fraction > 0.0 ? "+" : "", show_fixed(fraction * 100.0, 1));
}

void find_mixed(const TipSetResult& result, const TipSetReference& reference, Notes& notes) {
    for (const OtherSize& size : reference.other_sizes) {
        std::string members;
        std::size_t count = 0;
        for (const TipResult& tip : result.tips) {
            if (tip.reads_like == size.size) {
                members += fmt::format("{}{}", members.empty() ? "" : ", ", tip.tip);
                ++count;
            }
        }
        if (count == 0) {
            continue;
        }
        const bool whole_set = count == result.tips.size();
        notes.find(
            Severity::warning, whole_set ? "whole_set_other_size" : "mixed_tips",
            fmt::format("{} ({}) read{} like size {}, which gives {} at this pressure. "
                        "Read the number on {}: {}.",
                        count == 1 ? "Tip" : "Tips", members, count == 1 ? "s" : "", size.size,
                        show(size.flow, notes.units()), count == 1 ? "the tip" : "the tips",
                        whole_set ? "the rating entered may be the wrong one"
                                  : "sizes must not be mixed along a boom"));
    }
}

void find_together(const TipSetResult& result, const TipSetReference& reference, Notes& notes) {
    if (!reference.rated || result.tips.size() < 2) {
        return;
    }
    const auto [lowest, highest] =
        std::minmax_element(result.tips.begin(), result.tips.end(),
                            [](const TipResult& a, const TipResult& b) { return a.flow < b.flow; });
    const double mean = result.spread.mean / reference.rated->si() - 1.0;
    if (lowest->from_rating->si() >= together - arithmetic_blur) {
        notes.find(
            Severity::warning, "all_high_together",
            fmt::format("Every tip is above the rating, by {} on average. The mean hides "
                        "this: judged by the mean alone the set looks even. Either all are "
                        "worn, or the pressure at the tips is higher than entered. Check the "
                        "pressure at a tip with a second gauge, then compare with one new "
                        "tip.",
                        percent(mean)));
    }
    if (highest->from_rating->si() <= -together + arithmetic_blur) {
        notes.find(Severity::warning, "all_low_together",
                   fmt::format("Every tip is below the rating, by {} on average. Tips do not wear "
                               "smaller: look for pressure lost between gauge and tips, a clogged "
                               "line strainer, or a smaller size than entered.",
                               percent(mean)));
    }
}

void find_outlier(const TipSetResult& result, Notes& notes) {
    if (!result.outlier || !result.outlier->is_outlier) {
        return;
    }
    const TipResult& tip = result.tips[result.outlier->index];
    notes.find(Severity::advice, "odd_one_out",
               fmt::format("Tip {} stands {} standard deviations from the mean; chance allows {} "
                           "among {} tips. It is not just spread: look at that tip first. It also "
                           "pulls the mean, so judge the rest again without it.",
                           tip.tip, show_fixed(result.outlier->statistic, 2),
                           show_fixed(result.outlier->critical, 2), result.tips.size()),
               "Grubbs 1969, Technometrics 11(1):1-21; NIST/SEMATECH e-Handbook 1.3.5.17.1");
}

}  // namespace

TipSetResult judge_tips(std::span<const TipFlow> flows, const TipSetReference& reference) {
    std::vector<double> values;
    values.reserve(flows.size());
    for (const TipFlow& caught : flows) {
        values.push_back(caught.flow.si());
    }
    TipSetResult result;
    result.spread = spread_of(values);
    result.outlier = grubbs_test(values);
    result.tips.reserve(flows.size());
    for (std::size_t i = 0; i < flows.size(); ++i) {
        result.tips.push_back(
            judge_tip(flows[i], static_cast<int>(i) + 1, result.spread.mean, reference));
    }
    if (reference.limits.replace_all_over) {
        const auto bad = std::count_if(result.tips.begin(), result.tips.end(), is_bad);
        result.replace_all = static_cast<double>(bad) >
                             *reference.limits.replace_all_over * static_cast<double>(flows.size());
    }
    return result;
}

std::vector<TipVerdict> verdicts_under(std::span<const TipFlow> flows, std::optional<Flow> rated,
                                       const TipLimits& limits) {
    double sum = 0.0;
    for (const TipFlow& caught : flows) {
        sum += caught.flow.si();
    }
    const double mean = sum / static_cast<double>(flows.size());
    std::vector<TipVerdict> verdicts;
    verdicts.reserve(flows.size());
    for (const TipFlow& caught : flows) {
        verdicts.push_back(verdict_of(judge(caught.flow.si(), mean, rated, limits, 0.0)));
    }
    return verdicts;
}

void find_in_set(const TipSetResult& result, const TipSetReference& reference, Notes& notes) {
    find_mixed(result, reference, notes);
    find_together(result, reference, notes);
    find_outlier(result, notes);
}

}  // namespace swathbook::calibration
