#include "core/job/balance.hpp"

#include <cmath>

#include <fmt/format.h>

#include "core/job/detail/balance_parts.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"

namespace swathbook::job {

namespace detail {

std::string signed_percent(double share) {
    return fmt::format("{}{} %", share < 0.0 ? "-" : "+", show_number(100.0 * std::fabs(share), 3));
}

double plus_minus_of(const BalanceRequest& request, double amount_step) {
    // Half a step is a limit that anything inside is as likely as: 1.96 / sqrt 3 of it at 95 %.
    constexpr double of_limit = 1.959963984540054 / 1.7320508075688772;
    const double area = request.area_plus_minus ? request.area_plus_minus->value.si() : 0.0;
    const double amount = request.amount_plus_minus ? request.amount_plus_minus->value.si() : 0.0;
    const auto& ground = request.covered_area;
    const double area_step = ground ? ground->half_step_si / ground->value.si() * of_limit : 0.0;
    const double typed = amount_step * of_limit;
    return std::sqrt(area * area + amount * amount + area_step * area_step + typed * typed);
}

Estimate<Kind::fraction> difference_of(double applied, double wanted, double plus_minus) {
    const double ratio = applied / wanted;
    const auto at = [](double share) { return Fraction::from_si(share); };
    if (plus_minus <= 0.0) {
        return Estimate<Kind::fraction>(at(ratio - 1.0));
    }
    return {at(ratio - 1.0), at(ratio * (1.0 - plus_minus) - 1.0),
            at(ratio * (1.0 + plus_minus) - 1.0)};
}

namespace {

double mix_of(const BalanceLoad& load) {
    if (load.mix) {
        return load.mix->value.si();
    }
    double mix = load.carrier ? load.carrier->value.si() : 0.0;
    for (const BalanceLoadProduct& product : load.products) {
        mix += product.amount ? product.amount->value.si() : 0.0;  // dry products take no room
    }
    return mix;
}

}  // namespace

double made_by_loads(const BalanceRequest& request) {
    double made = 0.0;
    for (const BalanceLoad& load : request.loads) {
        made += mix_of(load);
    }
    return made;
}

}  // namespace detail

namespace {

Result<void> check_loads(const BalanceRequest& request, const Notes& notes) {
    for (std::size_t i = 0; i < request.loads.size(); ++i) {
        const BalanceLoad& load = request.loads[i];
        const std::string at = fmt::format("loads[{}]", i);
        SWATHBOOK_CHECK(require_usable(load.mix, at + ".mix", "The mix of the load"));
        SWATHBOOK_CHECK(require_usable(load.carrier, at + ".carrier", "The carrier"));
        if (!load.mix && !load.carrier) {
            return fail(ErrorCode::invalid_input, at + ".carrier",
                        "Enter the carrier run in, or the whole mix of the load.");
        }
    }
    if (!request.leftover) {
        return {};
    }
    const double left = request.leftover->value.si();
    const double made = detail::made_by_loads(request);
    if (!(left >= 0.0) || (made > 0.0 && left > made)) {
        return fail(ErrorCode::inconsistent, "leftover",
                    fmt::format("{} is left of {} made. Enter every load, or correct what is left.",
                                show(*request.leftover, notes.units()),
                                show(Volume::from_si(made), notes.units())));
    }
    return {};
}

/// How finely the mix made was read, as a share of it.
double mix_step(const BalanceRequest& request) {
    double step = request.leftover ? request.leftover->half_step_si : 0.0;
    for (const BalanceLoad& load : request.loads) {
        step += load.mix ? load.mix->half_step_si : load.carrier ? load.carrier->half_step_si : 0.0;
    }
    const double made = detail::made_by_loads(request);
    return made > 0.0 ? step / made : 0.0;
}

void remark_mix(const MixBalance& mix, const BalanceRequest& request, Notes& notes) {
    constexpr double agree_within = 0.05;
    constexpr double default_explain = 0.05;
    if (mix.by_loads && mix.by_passes && mix.by_loads->si() > 0.0) {
        const double apart = mix.by_passes->si() / mix.by_loads->si() - 1.0;
        if (std::fabs(apart) > agree_within) {
            notes.find(
                Severity::warning, "loads_and_passes_disagree",
                fmt::format("Flow and time give {}, the loads {} ({}): a load or a pass is "
                            "missing, or the flow was another.",
                            show(*mix.by_passes, notes.units()), show(*mix.by_loads, notes.units()),
                            detail::signed_percent(apart)));
        }
    }
    const double limit = request.explain_over ? request.explain_over->value.si() : default_explain;
    if (mix.difference && std::fabs(mix.difference->value.si()) > limit) {
        notes.find(Severity::warning, "mix_differs",
                   fmt::format("The ground got {} of mix, {} of the wanted {}: explain before "
                               "filing.",
                               show(*mix.applied, notes.units()),
                               detail::signed_percent(mix.difference->value.si()),
                               show(*request.mix_per_area, notes.units())),
                   request.explain_over ? "" : "common practice: more than 5 %");
    }
}

void fill_mix(BalanceAnswer& answer, const BalanceRequest& request, Notes& notes) {
    MixBalance mix;
    if (!request.loads.empty()) {
        mix.by_loads = Volume::from_si(detail::made_by_loads(request) -
                                       (request.leftover ? request.leftover->value.si() : 0.0));
    }
    for (const PassBalance& pass : answer.passes) {
        if (pass.mix) {
            mix.by_passes = mix.by_passes.value_or(Volume{}) + *pass.mix;
        }
    }
    const double excluded = answer.excluded_area ? answer.excluded_area->si() : 0.0;
    const double planned = answer.planned_area  ? answer.planned_area->si() - excluded
                           : answer.ground_area ? answer.ground_area->si()
                                                : 0.0;
    if (request.mix_per_area && planned > 0.0) {
        mix.expected = Volume::from_si(request.mix_per_area->value.si() * planned);
    }
    if (!mix.by_loads && !mix.by_passes && !mix.expected) {
        return;
    }
    mix.used = mix.by_loads ? *mix.by_loads : mix.by_passes.value_or(Volume{});
    if (mix.used.si() > 0.0 && answer.ground_area) {
        mix.applied = MixPerArea::from_si(mix.used.si() / answer.ground_area->si());
        notes.show([&] {
            return Step{"Mix on the ground",
                        fmt::format("{} / {}", show(mix.used, notes.units()),
                                    show(*answer.ground_area, notes.units())),
                        show(*mix.applied, notes.units())};
        });
        if (request.mix_per_area) {
            mix.difference = detail::difference_of(
                mix.applied->si(), request.mix_per_area->value.si(),
                detail::plus_minus_of(request, mix.by_loads ? mix_step(request) : 0.0));
        }
    }
    remark_mix(mix, request, notes);
    answer.mix = mix;
}

}  // namespace

Result<BalanceAnswer> balance(const BalanceRequest& request, Notes& notes) {
    if (request.passes.empty() && !request.planned_area && !request.covered_area) {
        return fail(ErrorCode::invalid_input, "passes",
                    "Enter the passes, or the planned or covered area: without ground there is "
                    "nothing to balance.");
    }
    SWATHBOOK_CHECK(detail::check_balance(request));
    SWATHBOOK_CHECK(check_loads(request, notes));
    BalanceAnswer answer;
    SWATHBOOK_CHECK(detail::fill_passes(answer, request, notes));
    SWATHBOOK_CHECK(detail::fill_ground(answer, request, notes));
    fill_mix(answer, request, notes);
    SWATHBOOK_CHECK(detail::fill_products(answer, request, notes));
    return answer;
}

}  // namespace swathbook::job
