#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/job/detail/balance_parts.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::job::detail {
namespace {

constexpr std::size_t most_passes = 5000;
constexpr std::size_t most_loads = 1000;
constexpr std::size_t most_fixes = 200000;
constexpr double default_gap_s = 10.0;

Result<void> check_pass(const BalancePass& pass, const std::string& at) {
    SWATHBOOK_CHECK(require_usable(pass.length, at + ".length", "The length of the pass"));
    SWATHBOOK_CHECK(require_usable(pass.width, at + ".width", "The width"));
    SWATHBOOK_CHECK(require_usable(pass.area, at + ".area", "The area of the pass"));
    SWATHBOOK_CHECK(require_usable(pass.spray_time, at + ".spray_time", "The spraying time"));
    SWATHBOOK_CHECK(require_usable(pass.flow, at + ".flow", "The flow"));
    if (pass.track.size() > most_fixes) {
        return fail(ErrorCode::out_of_range, at + ".track",
                    fmt::format("There are {} fixes in one pass; split it after {}.",
                                pass.track.size(), most_fixes));
    }
    const bool typed = pass.length || pass.area || pass.spray_time;
    if (!pass.track.empty() && typed) {
        return fail(ErrorCode::inconsistent, at + ".track",
                    "A pass is either typed (length or area, time) or recorded (track), not both. "
                    "Make two passes of it.");
    }
    if (pass.length && pass.area) {
        return fail(ErrorCode::inconsistent, at + ".area",
                    "Length and area are both entered; leave one out, the width joins them.");
    }
    return {};
}

template <class Items, class Check>
Result<void> check_each(const Items& items, std::string_view name, Check check) {
    for (std::size_t i = 0; i < items.size(); ++i) {
        SWATHBOOK_CHECK(check(items[i], fmt::format("{}[{}]", name, i)));
    }
    return {};
}

Result<void> require_share(const std::optional<Reading<Kind::fraction>>& share,
                           std::string_view field, std::string_view what) {
    if (!share || (share->value.si() >= 0.0 && share->value.si() <= 0.5)) {
        return {};
    }
    return fail(ErrorCode::out_of_range, std::string(field),
                fmt::format("{} is {}; enter 0 to 50 %.", what, show(*share, UnitSystem::us)));
}

/// Spray time that a gap may hide is not counted, so the pass is told to be short by it.
void remark_gaps(const BalanceAnswer& answer, Notes& notes) {
    int gaps = 0;
    double time_on = 0.0;
    for (const PassBalance& pass : answer.passes) {
        gaps += pass.track ? pass.track->gaps : 0;
        time_on += pass.track ? pass.track->gap_time_on.si() : 0.0;
    }
    if (gaps > 0) {
        notes.find(
            time_on > 0.0 ? Severity::warning : Severity::note, "gaps_in_track",
            fmt::format("{} gap{} in the fixes, {} of it with the spray on before: not "
                        "counted as sprayed, since nobody knows where the sprayer went.",
                        gaps, gaps == 1 ? "" : "s", show(Duration::from_si(time_on), "s", 3)));
    }
}

Result<PassBalance> typed_pass(const BalancePass& pass) {
    PassBalance made;
    if (pass.length) {
        made.length = pass.length->value;
    }
    if (pass.area) {
        made.swept_area = pass.area->value;
    }
    if (pass.spray_time) {
        made.spray_time = pass.spray_time->value;
    }
    return made;
}

Result<PassBalance> tracked_pass(const BalancePass& pass, Duration gap_after,
                                 const std::string& at) {
    SWATHBOOK_TRY(sums, geometry::sum_of_track(pass.track, gap_after, at + ".track"));
    PassBalance made;
    made.length = sums.sprayed_length;
    made.spray_time = sums.sprayed_time;
    made.track = PassTrack{
        sums.fixes,         sums.sprayed_length, sums.sprayed_time, sums.other_length,
        sums.gaps,          sums.gap_time,       sums.gap_time_on,  std::move(sums.longest_gaps),
        sums.worst_accuracy};
    return made;
}

void complete(PassBalance& made, const BalanceRequest& request, const BalancePass& pass) {
    const auto& width = pass.width ? pass.width : request.width;
    const auto& flow = pass.flow ? pass.flow : request.flow;
    if (made.length && width) {
        made.swept_area = Area::from_si(made.length->si() * width->value.si());
    }
    if (!made.length && made.swept_area && width) {
        made.length = Length::from_si(made.swept_area->si() / width->value.si());
    }
    const bool timed = made.spray_time && made.spray_time->si() > 0.0;
    if (made.length && timed) {
        made.speed = Speed::from_si(made.length->si() / made.spray_time->si());
    }
    if (made.spray_time && flow) {
        made.mix = Volume::from_si(flow->value.si() * made.spray_time->si());
    }
    if (made.mix && made.swept_area && made.swept_area->si() > 0.0) {
        made.output = MixPerArea::from_si(made.mix->si() / made.swept_area->si());
    }
}

template <Kind K>
void add_to(std::optional<Quantity<K>>& sum, const std::optional<Quantity<K>>& part) {
    if (part) {
        sum = sum.value_or(Quantity<K>{}) + *part;
    }
}

void show_sums(const BalanceAnswer& answer, Notes& notes) {
    if (answer.swept_area) {
        notes.show([&] {
            return Step{"Swept, overlap not taken off",
                        fmt::format("length x width over {} passes", answer.passes.size()),
                        show(*answer.swept_area, notes.units())};
        });
    }
    if (answer.mean_speed) {
        notes.show([&] {
            return Step{"Mean speed, distance over time",
                        fmt::format("{} / {}", show(*answer.sprayed_length, notes.units()),
                                    show(*answer.spray_time, notes.units())),
                        show(*answer.mean_speed, notes.units())};
        });
    }
}

}  // namespace

Result<void> check_balance(const BalanceRequest& request) {
    if (request.passes.size() > most_passes || request.loads.size() > most_loads ||
        request.exclusions.size() > most_loads || request.products.size() > 100) {
        return fail(ErrorCode::out_of_range, "passes",
                    fmt::format("At most {} passes, {} loads and exclusions, 100 products. Close "
                                "the job in parts.",
                                most_passes, most_loads));
    }
    SWATHBOOK_CHECK(require_usable(request.planned_area, "planned_area", "The planned area"));
    SWATHBOOK_CHECK(require_usable(request.covered_area, "covered_area", "The covered area"));
    SWATHBOOK_CHECK(require_usable(request.payable_area, "payable_area", "The payable area"));
    SWATHBOOK_CHECK(require_usable(request.mix_per_area, "mix_per_area", "The wanted mix"));
    SWATHBOOK_CHECK(require_usable(request.width, "width", "The width"));
    SWATHBOOK_CHECK(require_usable(request.flow, "flow", "The flow"));
    SWATHBOOK_CHECK(require_usable(request.gap_after, "gap_after", "The time of a gap"));
    SWATHBOOK_CHECK(
        require_share(request.area_plus_minus, "area_plus_minus", "The interval of the area"));
    SWATHBOOK_CHECK(require_share(request.amount_plus_minus, "amount_plus_minus",
                                  "The interval of the amounts"));
    SWATHBOOK_CHECK(
        require_share(request.explain_over, "explain_over", "The size that needs explaining"));
    SWATHBOOK_CHECK(check_each(request.exclusions, "exclusions",
                               [](const BalanceExclusion& part, const std::string& at) {
                                   return require_usable(part.area, at + ".area", "The exclusion");
                               }));
    return check_each(request.passes, "passes", check_pass);
}

Result<void> fill_passes(BalanceAnswer& answer, const BalanceRequest& request, Notes& notes) {
    const Duration gap_after =
        request.gap_after ? request.gap_after->value : Duration::from_si(default_gap_s);
    bool all_timed = true;
    for (std::size_t i = 0; i < request.passes.size(); ++i) {
        const BalancePass& pass = request.passes[i];
        const std::string at = fmt::format("passes[{}]", i);
        SWATHBOOK_TRY(made,
                      pass.track.empty() ? typed_pass(pass) : tracked_pass(pass, gap_after, at));
        made.name = pass.name.empty() ? fmt::format("{}", i + 1) : pass.name;
        complete(made, request, pass);
        add_to(answer.swept_area, made.swept_area);
        add_to(answer.sprayed_length, made.length);
        add_to(answer.spray_time, made.spray_time);
        all_timed = all_timed && made.length && made.spray_time;
        answer.passes.push_back(std::move(made));
    }
    if (all_timed && answer.spray_time && answer.spray_time->si() > 0.0) {
        answer.mean_speed = Speed::from_si(answer.sprayed_length->si() / answer.spray_time->si());
    }
    show_sums(answer, notes);
    remark_gaps(answer, notes);
    return {};
}

Result<void> fill_ground(BalanceAnswer& answer, const BalanceRequest& request, Notes& notes) {
    double excluded = 0.0;
    for (const BalanceExclusion& part : request.exclusions) {
        excluded += part.area.value.si();
    }
    if (!request.exclusions.empty()) {
        answer.excluded_area = Area::from_si(excluded);
    }
    std::optional<double> to_treat;
    if (request.planned_area) {
        answer.planned_area = request.planned_area->value;
        to_treat = answer.planned_area->si() - excluded;
        if (*to_treat <= 0.0) {
            return fail(ErrorCode::inconsistent, "exclusions",
                        fmt::format("Exclusions of {} leave nothing of the planned {}.",
                                    show(*answer.excluded_area, notes.units()),
                                    show(*answer.planned_area, notes.units())));
        }
    }
    if (request.covered_area) {
        answer.covered_area = request.covered_area->value;
        answer.ground = BalanceGround::covered;
        answer.ground_area = Area::from_si(answer.covered_area->si());
    } else if (answer.swept_area && answer.swept_area->si() > 0.0) {
        answer.ground = BalanceGround::swept;
        answer.ground_area = answer.swept_area;
    } else if (to_treat) {
        answer.ground = BalanceGround::planned;
        answer.ground_area = Area::from_si(*to_treat);
    }
    if (request.payable_area) {
        answer.payable_area = request.payable_area->value;
    } else if (to_treat && answer.covered_area) {
        answer.payable_area = PayableArea::from_si(std::min(*to_treat, answer.covered_area->si()));
        notes.find(Severity::note, "payable_by_sums",
                   "Payable is taken as the lesser of covered and planned less exclusions. Where "
                   "spray went outside the plan it is less: measure it on the map.");
    }
    if (answer.swept_area && answer.covered_area) {
        notes.show([&] {
            return Step{"Swept over covered (overlap)",
                        fmt::format("{} / {}", show(*answer.swept_area, notes.units()),
                                    show(*answer.covered_area, notes.units())),
                        signed_percent(answer.swept_area->si() / answer.covered_area->si() - 1.0)};
        });
    }
    if (answer.ground == BalanceGround::swept) {
        notes.find(Severity::note, "overlap_not_taken_off",
                   "Swept is length times width; ground gone over twice counts twice. Enter the "
                   "covered area to count it once.");
    }
    return {};
}

}  // namespace swathbook::job::detail
