#include "core/job/tip_check.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "core/job/detail/tip_catches.hpp"
#include "core/job/detail/tip_wear.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"
#include "core/tips/known_rating.hpp"
#include "core/tips/rate_working.hpp"

namespace swathbook::job {
namespace {

using calibration::OtherSize;
using calibration::TipFlow;
using calibration::TipLimitRule;
using calibration::TipLimits;
using calibration::TipResult;
using calibration::TipSetReference;
using calibration::TipSetResult;
using calibration::TipVerdict;
using detail::Rated;

std::string percent(double fraction) {
    return fmt::format("{}{} %", fraction > 0.0 ? "+" : "", show_fixed(fraction * 100.0, 1));
}

void find_about_pressure(const TipCheckRequest& request, const tips::KnownRating& known,
                         Notes& notes) {
    if (request.pressure && !known.has_pressure) {
        notes.find(Severity::warning, "rated_pressure_not_given",
                   fmt::format("The rated flow {} has no pressure, so it is taken as the flow at "
                               "the measured {}. Give the rated pressure to have it converted.",
                               show(known.rating.flow, notes.units()),
                               show(*request.pressure, notes.units())));
    }
    if (!request.pressure && known.has_pressure) {
        notes.find(Severity::warning, "pressure_not_given",
                   fmt::format("The pressure at the tips is not given; the catches are compared as "
                               "if caught at {}. A pressure 10 % off moves every flow by 5 %: "
                               "measure it at a tip.",
                               show(known.rating.pressure, notes.units())));
    }
}

Result<Rated> read_rating(const TipCheckRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(require_usable(request.pressure, "pressure", "The pressure at the tips"));
    const tips::RatingInput input{request.size, request.convention, request.rated_flow,
                                  request.rated_pressure, request.exponent};
    SWATHBOOK_TRY(known, tips::understand_rating(input, "", notes));
    Rated rated;
    if (request.pressure) {
        rated.pressure = request.pressure->value;
    }
    if (!known) {
        return rated;
    }
    find_about_pressure(request, *known, notes);
    rated.flow = tips::rated_flow_at(*known, rated.pressure);
    if (!rated.pressure && known->has_pressure) {
        rated.pressure = known->rating.pressure;
    }
    notes.show([&] {
        return Step{
            "Rated flow at the measured pressure",
            request.pressure && known->has_pressure
                ? fmt::format("{} x ({} / {}) ^ {}", show(known->rating.flow, notes.units()),
                              show(*request.pressure, notes.units()),
                              show(known->rating.pressure, notes.units()), known->rating.exponent)
                : tips::describe(*known, notes.units()),
            show(*rated.flow, notes.units()),
            "flow goes with the square root of pressure (Oklahoma State Extension)"};
    });
    rated.known = known;
    return rated;
}

std::vector<OtherSize> other_sizes(const Rated& rated, double mean, Notes& notes) {
    std::vector<OtherSize> others;
    if (!rated.pressure) {
        return others;
    }
    constexpr double same_size = 0.05;
    const tips::SizeConvention convention =
        rated.known ? rated.known->convention
                    : (notes.units() == UnitSystem::us ? tips::SizeConvention::us_gallons_at_40_psi
                                                       : tips::SizeConvention::litres_at_3_bar);
    const Flow own = rated.flow.value_or(
        tips::nearest_size(Flow::from_si(mean), *rated.pressure, convention).flow);
    for (const tips::IsoSize& size : tips::iso_sizes()) {
        const Flow flow = tips::flow_at(tips::rating_of(size, convention), *rated.pressure);
        if (std::fabs(flow / own - 1.0) > same_size) {
            others.push_back({std::string(size.size), flow});
        }
    }
    return others;
}

bool needs_rating(const TipLimits& limits) {
    return limits.above_rating.has_value() || limits.below_rating.has_value();
}

std::optional<double> fraction_of(const std::optional<Fraction>& fraction) {
    return fraction ? std::optional<double>(fraction->si()) : std::nullopt;
}

Result<TipLimits> own_limits(const TipCheckRequest& request) {
    TipLimits limits;
    if (request.own_limits) {
        limits.above_rating = fraction_of(request.own_limits->above_rating);
        limits.below_rating = fraction_of(request.own_limits->below_rating);
        limits.above_mean = fraction_of(request.own_limits->above_mean);
        limits.below_mean = fraction_of(request.own_limits->below_mean);
    }
    bool any = false;
    for (const auto& limit :
         {limits.above_rating, limits.below_rating, limits.above_mean, limits.below_mean}) {
        any = any || limit.has_value();
        if (limit && (std::isnan(*limit) || *limit <= 0.0 || *limit >= 1.0)) {
            return fail(ErrorCode::out_of_range, "own_limits",
                        fmt::format("A limit of {} % is given. Limits must be above 0 % and under "
                                    "100 %; write 10 % as \"10 %\".",
                                    show_number(*limit * 100.0)));
        }
    }
    if (!any) {
        return fail(ErrorCode::invalid_input, "own_limits",
                    "The limit chosen is your own, but none is given. Give above_rating, "
                    "below_rating, above_mean or below_mean, as \"10 %\".");
    }
    return limits;
}

struct ChosenLimit {
    TipLimitRule rule = TipLimitRule::own;
    TipLimits limits{};
};

Result<ChosenLimit> choose_limit(const TipCheckRequest& request, const Rated& rated, Notes& notes) {
    ChosenLimit chosen;
    const TipLimitRule usual =
        rated.flow ? TipLimitRule::worn_10_low_5 : TipLimitRule::mean_5_clean_low;
    chosen.rule = request.limit.value_or(request.own_limits ? TipLimitRule::own : usual);
    if (request.own_limits && chosen.rule != TipLimitRule::own) {
        return fail(ErrorCode::inconsistent, "own_limits",
                    "Limits of your own are given, but another limit is chosen. Choose \"own\", or "
                    "leave them out.");
    }
    if (chosen.rule == TipLimitRule::own) {
        SWATHBOOK_TRY(limits, own_limits(request));
        chosen.limits = limits;
    } else {
        chosen.limits = calibration::limits_of(chosen.rule, rated.flow);
        if (!calibration::published_tip_limit(chosen.rule).seen) {
            notes.find(Severity::warning, "limit_from_memory",
                       "This limit is given from memory: its publication was not read. Do not rest "
                       "a decision on it.");
        }
    }
    if (!rated.flow && needs_rating(chosen.limits)) {
        return fail(ErrorCode::inconsistent, "rated_flow",
                    "The limit chosen judges by the maker's rating, and none is given. Give the "
                    "size, or the rated flow and pressure, or choose a limit by the mean "
                    "(mean_5, mean_5_clean_low, mean_10).");
    }
    if (!rated.flow) {
        notes.find(Severity::warning, "mean_hides_uniform_wear",
                   "Without the maker's rating the tips are judged against each other only: a set "
                   "worn evenly passes. Give the size or the rated flow.");
    }
    return chosen;
}

bool is_condemned(const TipResult& tip, bool replace_at_limit) {
    return tip.verdict == TipVerdict::high_worn || tip.verdict == TipVerdict::low_clogged ||
           tip.verdict == TipVerdict::other_size ||
           (replace_at_limit && tip.verdict == TipVerdict::at_limit);
}

/// Low tips are cleaned and caught again; what is high stays high.
bool is_low(const TipResult& tip) {
    const Fraction off = tip.from_rating.value_or(tip.from_mean);
    return tip.verdict == TipVerdict::low_clogged ||
           (tip.verdict == TipVerdict::at_limit && off < Fraction{});
}

void fill_after(const TipSetResult& judged, const Rated& rated, bool replace_at_limit,
                TipCheckAnswer& answer) {
    double kept = 0.0;
    std::size_t kept_count = 0;
    for (const TipResult& tip : judged.tips) {
        const bool condemned = judged.replace_all || is_condemned(tip, replace_at_limit);
        if (!condemned) {
            kept += tip.flow.si();
            ++kept_count;
        } else if (!judged.replace_all && is_low(tip)) {
            answer.clean.push_back(tip.tip);
        } else {
            answer.replace.push_back(tip.tip);
        }
    }
    const double kept_mean =
        kept_count > 0 ? kept / static_cast<double>(kept_count) : judged.spread.mean;
    const double new_flow = rated.flow ? rated.flow->si() : kept_mean;
    const auto count = static_cast<double>(judged.tips.size());
    const double replaced = count - static_cast<double>(kept_count);
    answer.mean_after = Flow::from_si((kept + replaced * new_flow) / count);
    if (rated.flow) {
        answer.after_from_rating = Fraction::from_si(answer.mean_after / *rated.flow - 1.0);
    }
}

Result<std::optional<double>> ground_per_second(const TipCheckRequest& request, std::size_t count) {
    SWATHBOOK_CHECK(require_usable(request.speed, "speed", "Ground speed"));
    SWATHBOOK_CHECK(require_usable(request.spacing, "spacing", "Tip spacing"));
    SWATHBOOK_CHECK(require_usable(request.width, "width", "The width served"));
    if (request.spacing && request.width) {
        return fail(ErrorCode::inconsistent, "width",
                    "Both a tip spacing and a width are given. Give the spacing, or the width that "
                    "the tips caught serve together.");
    }
    if (!request.speed || (!request.spacing && !request.width)) {
        return std::nullopt;
    }
    const double width = request.spacing ? request.spacing->value.si()
                                         : request.width->value.si() / static_cast<double>(count);
    return request.speed->value.si() * width;
}

void show_rate(const TipCheckRequest& request, const TipCheckAnswer& answer, Notes& notes) {
    const Length width = request.spacing
                             ? request.spacing->value
                             : request.width->value / static_cast<double>(answer.tips.size());
    const auto expression = [&](Flow flow) {
        return tips::rate_expression(flow, request.speed->value, width, notes.units());
    };
    notes.show([&] {
        return Step{"Rate now", expression(answer.mean), show(*answer.rate_now, notes.units())};
    });
    notes.show([&] {
        return Step{"Rate after cleaning and replacing", expression(answer.mean_after),
                    show(*answer.rate_after, notes.units())};
    });
}

void fill_rates(const TipCheckRequest& request, const Rated& rated, double ground,
                TipCheckAnswer& answer, Notes& notes) {
    answer.rate_now = MixPerArea::from_si(answer.mean.si() / ground);
    answer.rate_after = MixPerArea::from_si(answer.mean_after.si() / ground);
    if (rated.flow) {
        answer.rate_as_rated = MixPerArea::from_si(rated.flow->si() / ground);
    }
    show_rate(request, answer, notes);
}

void find_cost(const Rated& rated, TipCheckAnswer& answer, Notes& notes) {
    if (!rated.flow) {
        return;
    }
    const double over = answer.mean / *rated.flow - 1.0;
    const double exponent = rated.known->rating.exponent;
    answer.mean_from_rating = Fraction::from_si(over);
    answer.controller_pressure =
        Fraction::from_si(tips::pressure_factor(*rated.flow / answer.mean, exponent));
    constexpr double worth_saying = 0.005;
    if (std::fabs(over) < worth_saying) {
        return;
    }
    notes.find(over > 0.0 ? Severity::advice : Severity::note, "product_over",
               fmt::format("At a set speed and pressure these tips put out {} against the rating: "
                           "mixed for the rated output, that much {} product goes on the ground. A "
                           "rate controller hides it by running at {} % of the pressure, which can "
                           "change the droplet class.",
                           percent(over), over > 0.0 ? "more" : "less",
                           show_fixed(answer.controller_pressure->si() * 100.0, 0)));
}

void show_spread(const TipSetResult& judged, const TipCheckAnswer& answer, Notes& notes) {
    notes.show([&] {
        std::string sum;
        for (const TipResult& tip : judged.tips) {
            sum += sum.empty() ? "" : " + ";
            sum += show(tip.flow, notes.units());
        }
        return Step{"Mean of the set", fmt::format("({}) / {}", sum, judged.tips.size()),
                    show(answer.mean, notes.units())};
    });
    for (const TipResult& tip : judged.tips) {
        notes.show([&] {
            const bool rated = tip.from_rating.has_value();
            return Step{fmt::format("Tip {}", tip.tip),
                        fmt::format("{} / {} - 1", show(tip.flow, notes.units()),
                                    show(rated ? *answer.rated : answer.mean, notes.units())),
                        fmt::format("{} from the {}",
                                    percent(rated ? tip.from_rating->si() : tip.from_mean.si()),
                                    rated ? "rating" : "mean")};
        });
    }
    if (judged.tips.size() < 2) {
        return;
    }
    notes.show([&] {
        return Step{"Coefficient of variation, with n - 1",
                    fmt::format("sqrt(sum of (flow - mean)^2 / {}) / mean = {} / {}",
                                judged.tips.size() - 1,
                                show(Flow::from_si(judged.spread.deviation), notes.units()),
                                show(answer.mean, notes.units())),
                    show_fixed(answer.variation.si() * 100.0, 1) + " %"};
    });
    if (judged.outlier) {
        notes.show([&] {
            const TipResult& tip = judged.tips[judged.outlier->index];
            return Step{fmt::format("Grubbs' test on tip {}, farthest from the mean", tip.tip),
                        fmt::format("|{} - {}| / {} = {} against {}", show(tip.flow, notes.units()),
                                    show(answer.mean, notes.units()),
                                    show(Flow::from_si(judged.spread.deviation), notes.units()),
                                    show_fixed(judged.outlier->statistic, 2),
                                    show_fixed(judged.outlier->critical, 2)),
                        judged.outlier->is_outlier ? "not chance" : "may be chance",
                        "NIST/SEMATECH e-Handbook 1.3.5.17.1"};
        });
    }
}

void find_actions(const TipCheckAnswer& answer, Notes& notes) {
    for (const TipResult& tip : answer.tips) {
        if (tip.verdict == TipVerdict::ok && !tip.reading_decides) {
            continue;
        }
        const bool mild = tip.verdict == TipVerdict::ok || tip.verdict == TipVerdict::at_limit;
        const double off = tip.from_rating ? tip.from_rating->si() : tip.from_mean.si();
        notes.find(mild ? Severity::note : Severity::warning,
                   tip.verdict == TipVerdict::at_limit      ? "tip_at_limit"
                   : tip.verdict == TipVerdict::high_worn   ? "tip_high"
                   : tip.verdict == TipVerdict::low_clogged ? "tip_low"
                   : tip.verdict == TipVerdict::other_size  ? "tip_other_size"
                                                            : "tip_near_limit",
                   fmt::format("Tip {}: {}, {} from the {}, {} from the mean. {}", tip.tip,
                               show(tip.flow, notes.units()), percent(off),
                               tip.from_rating ? "rating" : "mean", percent(tip.from_mean.si()),
                               tip.what_to_do),
                   answer.limit_source);
    }
    if (answer.replace_all) {
        notes.find(Severity::warning, "replace_all",
                   "So many tips are out of limits that this rule replaces the whole set.",
                   answer.limit_source);
    }
}

std::vector<OtherRuleOutcome> outcomes_of_others(const std::vector<TipFlow>& flows,
                                                 const Rated& rated, TipLimitRule chosen) {
    std::vector<OtherRuleOutcome> outcomes;
    for (const calibration::PublishedTipLimit& published : calibration::published_tip_limits()) {
        const TipLimits limits = calibration::limits_of(published.rule, rated.flow);
        if (published.rule == chosen || !published.seen || (!rated.flow && needs_rating(limits))) {
            continue;
        }
        OtherRuleOutcome outcome{published.rule, std::string(published.text),
                                 std::string(published.source)};
        const auto verdicts = calibration::verdicts_under(flows, rated.flow, limits);
        for (std::size_t i = 0; i < verdicts.size(); ++i) {
            if (verdicts[i] == TipVerdict::at_limit) {
                outcome.at_limit.push_back(static_cast<int>(i) + 1);
            } else if (verdicts[i] != TipVerdict::ok) {
                outcome.out.push_back(static_cast<int>(i) + 1);
            }
        }
        outcomes.push_back(std::move(outcome));
    }
    return outcomes;
}

TipLimitFigures figures_of(const TipLimits& limits) {
    const auto figure = [](const std::optional<double>& limit) {
        return limit ? std::optional(Fraction::from_si(*limit)) : std::nullopt;
    };
    return {figure(limits.above_rating), figure(limits.below_rating), figure(limits.above_mean),
            figure(limits.below_mean)};
}

void fill_judgement(TipSetResult judged, const ChosenLimit& chosen, const Rated& rated,
                    TipCheckAnswer& answer) {
    answer.mean = Flow::from_si(judged.spread.mean);
    answer.variation = Fraction::from_si(judged.spread.variation);
    answer.variation_population = Fraction::from_si(judged.spread.variation_population);
    answer.rated = rated.flow;
    answer.replace_all = judged.replace_all;
    answer.limits = figures_of(chosen.limits);
    const bool own = chosen.rule == TipLimitRule::own;
    answer.limit_text = own ? std::string("limits of your own")
                            : std::string(calibration::published_tip_limit(chosen.rule).text);
    answer.limit_source =
        own ? std::string() : std::string(calibration::published_tip_limit(chosen.rule).source);
    answer.tips = std::move(judged.tips);
}

}  // namespace

Result<TipCheckAnswer> tip_check(const TipCheckRequest& request, Notes& notes) {
    SWATHBOOK_TRY(flows, detail::read_tip_flows(request));
    SWATHBOOK_TRY(rated, read_rating(request, notes));
    SWATHBOOK_TRY(chosen, choose_limit(request, rated, notes));
    SWATHBOOK_TRY(ground, ground_per_second(request, flows.size()));

    double sum = 0.0;
    for (const TipFlow& flow : flows) {
        sum += flow.flow.si();
    }
    const double mean = sum / static_cast<double>(flows.size());
    const TipSetReference reference{rated.flow, chosen.limits, other_sizes(rated, mean, notes)};
    const TipSetResult judged = calibration::judge_tips(flows, reference);

    TipCheckAnswer answer;
    fill_judgement(judged, chosen, rated, answer);
    fill_after(judged, rated, request.replace_at_limit, answer);
    show_spread(judged, answer, notes);
    find_actions(answer, notes);
    calibration::find_in_set(judged, reference, notes);
    find_cost(rated, answer, notes);
    if (ground) {
        fill_rates(request, rated, *ground, answer, notes);
    }
    if (request.earlier) {
        SWATHBOOK_TRY(wear,
                      detail::forecast_wear(*request.earlier, judged, rated, chosen.limits, notes));
        answer.wear = wear;
    }
    answer.other_limits = outcomes_of_others(flows, rated, chosen.rule);
    notes.find(Severity::note, "catch_clean_water",
               "Catch with clean water only, and wear what the label of the last load asks for "
               "until the sprayer has been rinsed.");
    return answer;
}

}  // namespace swathbook::job
