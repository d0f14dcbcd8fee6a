#include "core/tips/choose_tip.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include <fmt/format.h>

#include "core/base/sort.hpp"
#include "core/droplets/class_window.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"
#include "core/quantity/units.hpp"
#include "core/tips/known_rating.hpp"
#include "core/tips/pressure_window.hpp"
#include "core/tips/rate_working.hpp"

namespace swathbook::tips {
namespace {

using droplets::ClassWindow;
using droplets::DropletClass;

constexpr std::size_t most_table_rows = 1000;
constexpr int reason_digits = 3;  ///< a gauge or a speedometer shows no more

/// The request understood.
struct Wanted {
    Flow water_flow{};  ///< through one tip at the usual speed, as water
    Speed speed{};
    std::optional<Speed> slowest{};
    std::optional<Speed> fastest{};
    bool controller = false;
    PressureWindow sprayer{};
    std::optional<ClassWindow> classes{};
    std::optional<SizeConvention> convention{};  ///< for rows that give none of their own
    UnitSystem units = UnitSystem::us;

    [[nodiscard]] Flow flow_at_speed(Speed other) const { return water_flow * (other / speed); }
};

Result<void> check_speeds(const ChooseTipRequest& request) {
    SWATHBOOK_CHECK(require_usable(request.rate, "rate", "The rate wanted"));
    SWATHBOOK_CHECK(require_usable(request.speed, "speed", "Ground speed"));
    SWATHBOOK_CHECK(require_usable(request.speed_low, "speed_low", "The slowest speed"));
    SWATHBOOK_CHECK(require_usable(request.speed_high, "speed_high", "The fastest speed"));
    SWATHBOOK_CHECK(require_usable(request.carrier_min, "carrier_min", "The least carrier"));
    SWATHBOOK_CHECK(
        require_usable(request.carrier_density, "carrier_density", "The density of the mix"));
    if (request.speed_low && request.speed_low->value > request.speed.value) {
        return fail(ErrorCode::inconsistent, "speed_low",
                    fmt::format("The slowest speed {} is above the usual speed {}.",
                                show(*request.speed_low, UnitSystem::us),
                                show(request.speed, UnitSystem::us)));
    }
    if (request.speed_high && request.speed_high->value < request.speed.value) {
        return fail(ErrorCode::inconsistent, "speed_high",
                    fmt::format("The fastest speed {} is below the usual speed {}.",
                                show(*request.speed_high, UnitSystem::us),
                                show(request.speed, UnitSystem::us)));
    }
    return {};
}

Result<Wanted> understand(const ChooseTipRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check_speeds(request));
    SWATHBOOK_TRY(width, width_per_tip(request.spacing, request.width, request.tips));
    if (!width) {
        return fail(ErrorCode::invalid_input, "spacing",
                    "The width a tip serves is needed. Give the tip spacing, or the width and the "
                    "number of tips.");
    }
    SWATHBOOK_TRY(window, window_of(request.pressure_low, request.pressure_high, ""));
    Wanted wanted;
    wanted.sprayer = window;
    wanted.units = notes.units();
    wanted.speed = request.speed.value;
    wanted.controller = request.rate_controller;
    wanted.convention = request.convention;
    if (request.speed_low) {
        wanted.slowest = request.speed_low->value;
    }
    if (request.speed_high) {
        wanted.fastest = request.speed_high->value;
    }
    if (!request.droplets.empty()) {
        auto classes = droplets::class_window_from_text(request.droplets);
        if (!classes) {
            return fail(classes.error().code, "droplets", std::move(classes.error().detail));
        }
        wanted.classes = *classes;
    }
    const Flow flow =
        Flow::from_si(request.rate.value.si() * request.speed.value.si() * width->si());
    wanted.water_flow =
        request.carrier_density ? flow * water_factor(request.carrier_density->value) : flow;
    notes.show([&] {
        return Step{"Flow needed through one tip",
                    flow_expression(request.rate.value, wanted.speed, *width, notes.units()),
                    show(flow, notes.units())};
    });
    return wanted;
}

/// A tip of the table understood.
struct Candidate {
    KnownRating known{};
    PressureWindow own{};
    PressureWindow window{};  ///< own and the sprayer's together
    const std::vector<droplets::ClassBand>* classes = nullptr;
};

std::optional<DropletClass> class_of(const Candidate& candidate, Pressure pressure) {
    return droplets::class_at(*candidate.classes, pressure);
}

/// Where no window is entered, far outside what tips of low-pressure ground sprayers run at: not
/// worth looking up. Common practice; the maker's table goes before it.
bool is_far_out(const PressureWindow& window, Pressure needed) {
    constexpr Pressure lowest = Pressure::of(10.0, pounds_per_square_inch);
    constexpr Pressure highest = Pressure::of(120.0, pounds_per_square_inch);
    return !window.low && !window.high && (needed < lowest || needed > highest);
}

void judge_pressure(const Candidate& candidate, const Wanted& wanted, TipChoice& choice) {
    const std::string needed = show(choice.pressure, wanted.units, reason_digits);
    switch (stand_in(candidate.window, choice.pressure)) {
        case InWindow::within:
            choice.reasons_for.push_back(fmt::format("needs {}, inside {}", needed,
                                                     describe(candidate.window, wanted.units)));
            break;
        case InWindow::not_entered:
            if (is_far_out(candidate.window, choice.pressure)) {
                choice.fit = TipFit::refused;
                choice.reasons_against.push_back(fmt::format(
                    "needs {}; no window is entered, and tips of ground sprayers run at about 10 "
                    "to 120 psi (0.7 to 8 bar; common practice)",
                    needed));
                break;
            }
            choice.fit = std::max(choice.fit, TipFit::unproven);
            choice.reasons_against.push_back(
                fmt::format("needs {}; its pressure window is {}: look it up", needed,
                            candidate.window.low || candidate.window.high
                                ? "entered only " + describe(candidate.window, wanted.units)
                                : std::string("not entered")));
            break;
        case InWindow::below:
            choice.fit = TipFit::refused;
            choice.reasons_against.push_back(
                fmt::format("needs only {}, under {}: too large a tip", needed,
                            show(*candidate.window.low, wanted.units)));
            break;
        case InWindow::above:
            choice.fit = TipFit::refused;
            choice.reasons_against.push_back(
                fmt::format("needs {}, over {}: too small a tip", needed,
                            show(*candidate.window.high, wanted.units)));
            break;
    }
}

std::string named(DropletClass droplet_class) {
    return std::string(droplets::info_of(droplet_class).letters);
}

void judge_class(const Wanted& wanted, TipChoice& choice) {
    if (!wanted.classes) {
        if (choice.droplet_class) {
            choice.reasons_for.push_back(
                fmt::format("droplet class {} there", named(*choice.droplet_class)));
        }
        return;
    }
    const std::string asked = droplets::describe(*wanted.classes);
    if (!choice.droplet_class) {
        choice.fit = std::max(choice.fit, TipFit::unproven);
        choice.reasons_against.push_back(fmt::format(
            "its droplet class at that pressure is not entered; the label asks {}", asked));
    } else if (droplets::allows(*wanted.classes, *choice.droplet_class)) {
        choice.reasons_for.push_back(fmt::format("droplet class {} there, as asked ({})",
                                                 named(*choice.droplet_class), asked));
    } else {
        choice.fit = TipFit::refused;
        choice.reasons_against.push_back(fmt::format("droplet class {} there; the label asks {}",
                                                     named(*choice.droplet_class), asked));
    }
}

/// With a rate controller the pressure follows the speed: looks at one end of the speeds entered.
void judge_speed(const Candidate& candidate, const Wanted& wanted, Speed speed, TipChoice& choice) {
    const Pressure pressure = pressure_for(candidate.known.rating, wanted.flow_at_speed(speed));
    const std::string at = fmt::format("at {} the controller goes to {}", show(speed, wanted.units),
                                       show(pressure, wanted.units, reason_digits));
    const InWindow stands = stand_in(candidate.window, pressure);
    if (stands == InWindow::below || stands == InWindow::above) {
        choice.fit = std::max(choice.fit, TipFit::partly);
        choice.reasons_against.push_back(
            fmt::format("{}, outside {}", at, describe(candidate.window, wanted.units)));
    }
    if (!wanted.classes) {
        return;
    }
    const std::optional<DropletClass> there = class_of(candidate, pressure);
    if (!there) {
        choice.fit = std::max(choice.fit, TipFit::unproven);
        choice.reasons_against.push_back(at + ", where its droplet class is not entered");
    } else if (!droplets::allows(*wanted.classes, *there)) {
        choice.fit = std::max(choice.fit, TipFit::partly);
        choice.reasons_against.push_back(
            fmt::format("{}, where it is class {}", at, named(*there)));
    }
}

/// Speeds at which a rate controller holds the rate inside the window.
void fill_speeds(const Candidate& candidate, const Wanted& wanted, TipChoice& choice) {
    const auto speed_at = [&](Pressure pressure) {
        return wanted.speed * (flow_at(candidate.known.rating, pressure) / wanted.water_flow);
    };
    if (candidate.window.low) {
        choice.slowest = speed_at(*candidate.window.low);
    }
    if (candidate.window.high) {
        choice.fastest = speed_at(*candidate.window.high);
    }
    if (choice.slowest && choice.fastest && choice.fit != TipFit::refused) {
        choice.reasons_for.push_back(
            fmt::format("a rate controller can hold the rate from {} to {}",
                        show(*choice.slowest, wanted.units, reason_digits),
                        show(*choice.fastest, wanted.units, reason_digits)));
    }
}

TipChoice judge(const TableTip& tip, const Candidate& candidate, const Wanted& wanted) {
    TipChoice choice;
    choice.fit = TipFit::fits;
    if (candidate.known.size) {
        choice.size = candidate.known.size->size;
        choice.colour = candidate.known.size->colour_english;
        choice.colour_spanish = candidate.known.size->colour_spanish;
        if (candidate.known.size->strainer_mesh > 0) {
            choice.strainer_mesh = candidate.known.size->strainer_mesh;
        }
    }
    if (tip.strainer_mesh) {
        choice.strainer_mesh = tip.strainer_mesh;
    }
    choice.name = !tip.name.empty() ? tip.name : choice.size;
    choice.pressure = pressure_for(candidate.known.rating, wanted.water_flow);
    choice.droplet_class = class_of(candidate, choice.pressure);
    judge_pressure(candidate, wanted, choice);
    judge_class(wanted, choice);
    if (wanted.controller && choice.fit != TipFit::refused) {
        for (const std::optional<Speed>& speed : {wanted.slowest, wanted.fastest}) {
            if (speed) {
                judge_speed(candidate, wanted, *speed, choice);
            }
        }
    }
    fill_speeds(candidate, wanted, choice);
    if (choice.strainer_mesh && choice.fit != TipFit::refused) {
        choice.reasons_for.push_back(fmt::format(
            "tip strainer {} mesh{}", *choice.strainer_mesh,
            tip.strainer_mesh ? "" : " as printed for this size; the maker's word goes first"));
    }
    if (candidate.known.size && !candidate.known.size->seen) {
        choice.reasons_against.emplace_back(
            "the flow of this size is from memory: compare it with the maker's table");
    }
    return choice;
}

Result<Candidate> candidate_of(const TableTip& tip, const Wanted& wanted, const std::string& where,
                               Notes& notes) {
    const RatingInput input{tip.size, tip.convention ? tip.convention : wanted.convention,
                            tip.rated_flow, tip.rated_pressure, tip.exponent};
    SWATHBOOK_TRY(known, understand_rating(input, where, notes));
    if (!known) {
        return fail(ErrorCode::invalid_input, where + "rated_flow",
                    fmt::format("The tip \"{}\" has neither a size nor a rated flow. Copy the flow "
                                "and its pressure from the maker's table.",
                                tip.name));
    }
    if (!known->has_pressure) {
        return fail(
            ErrorCode::invalid_input, where + "rated_pressure",
            fmt::format("The rated flow of \"{}\" has no pressure. Copy the pressure beside "
                        "it in the maker's table.",
                        tip.name));
    }
    SWATHBOOK_TRY(own, window_of(tip.pressure_low, tip.pressure_high, where));
    SWATHBOOK_CHECK(droplets::check_bands(tip.classes, where + "classes"));
    if (tip.strainer_mesh && (*tip.strainer_mesh < 1 || *tip.strainer_mesh > 1000)) {
        return fail(
            ErrorCode::out_of_range, where + "strainer_mesh",
            fmt::format("A strainer of {} mesh is given; mesh is 1 to 1000.", *tip.strainer_mesh));
    }
    return Candidate{*known, own, narrower(own, wanted.sprayer), &tip.classes};
}

/// The colour code as a table.
std::vector<TableTip> colour_code(std::optional<SizeConvention> convention) {
    std::vector<TableTip> table;
    for (const IsoSize& size : iso_sizes()) {
        TableTip tip;
        tip.size = size.size;
        tip.convention = convention;
        table.push_back(std::move(tip));
    }
    return table;
}

/// How far a pressure is from the middle of its window, or from the rating where there is none;
/// as a ratio of 1 or more.
double distance_from_middle(const Candidate& candidate, Pressure pressure) {
    const double middle = candidate.window.is_entered()
                              ? std::sqrt(candidate.window.low->si() * candidate.window.high->si())
                              : candidate.known.rating.pressure.si();
    return std::max(pressure.si() / middle, middle / pressure.si());
}

struct Ranked {
    TipChoice choice;
    Rating rating;
    double distance = 0.0;
};

/// One remark for the whole table: the same said of every row would drown the rest.
void find_convention(const Notes& of_rows, Notes& notes) {
    for (const Finding& finding : of_rows.findings()) {
        if (finding.code == "size_convention_assumed") {
            notes.find(finding.severity, finding.code,
                       "Sizes without a convention are read in the usual one of these units (US: "
                       "gal/min at 40 psi; metric: L/min at 3 bar). The other differs by 1.3 %.",
                       finding.source);
            return;
        }
    }
}

Result<std::vector<Ranked>> judge_table(const std::vector<TableTip>& table, const Wanted& wanted,
                                        Notes& notes) {
    std::vector<Ranked> ranked;
    ranked.reserve(table.size());
    Notes of_rows(notes.units());
    for (std::size_t i = 0; i < table.size(); ++i) {
        SWATHBOOK_TRY(candidate,
                      candidate_of(table[i], wanted, fmt::format("table[{}].", i), of_rows));
        TipChoice choice = judge(table[i], candidate, wanted);
        const double distance = distance_from_middle(candidate, choice.pressure);
        ranked.push_back({std::move(choice), candidate.known.rating, distance});
    }
    find_convention(of_rows, notes);
    sort_list(ranked, [](const Ranked& a, const Ranked& b) {
        return a.choice.fit != b.choice.fit ? a.choice.fit < b.choice.fit : a.distance < b.distance;
    });
    return ranked;
}

void find_carrier(const ChooseTipRequest& request, const ChooseTipAnswer& answer, Notes& notes) {
    if (!request.carrier_min) {
        return;
    }
    const std::string least = show(*request.carrier_min, notes.units());
    if (request.rate.value < request.carrier_min->value) {
        notes.find(
            Severity::stop, "rate_under_carrier_min",
            fmt::format("The rate wanted, {}, is less than the label's least carrier, {}. No "
                        "tip mends that: raise the rate.",
                        show(request.rate, notes.units()), least),
            "the label, as entered");
    }
    if (answer.rate_at_fastest && *answer.rate_at_fastest < request.carrier_min->value) {
        notes.find(Severity::warning, "carrier_min_at_speed",
                   fmt::format("At the fastest speed the rate falls to {}, less than the label's "
                               "least carrier, {}. Keep the speed down, or choose for a higher "
                               "rate.",
                               show(*answer.rate_at_fastest, notes.units()), least),
                   "the label, as entered");
    }
}

void find_outcome(const ChooseTipRequest& request, const ChooseTipAnswer& answer, Notes& notes) {
    if (!answer.choices.empty() && answer.choices.front().fit == TipFit::refused) {
        notes.find(Severity::warning, "no_tip_fits",
                   "No tip of the table gives this rate at this speed inside its pressures with "
                   "the class asked. Change the speed or the rate, or enter other tips.");
    }
    if (request.droplets.empty()) {
        notes.find(Severity::advice, "droplet_class_not_entered",
                   "No droplet class is entered. If the label names one, enter its words: not "
                   "entered is not \"any\".");
    }
    if (request.table.empty()) {
        notes.find(Severity::advice, "colour_code_only",
                   "These are sizes, not tips: the colour code gives flow only. The droplet class "
                   "and the pressure window belong to a maker's tip; copy them from its table.",
                   "ISO 10625 as listed in data/tips/source.txt");
    }
}

void show_pressures(const std::vector<Ranked>& ranked, Flow water_flow, Notes& notes) {
    for (const Ranked& one : ranked) {
        notes.show([&] {
            return Step{
                fmt::format("Pressure for {}", one.choice.name),
                fmt::format("{} x ({} / {}) ^ (1 / {})", show(one.rating.pressure, notes.units()),
                            show(water_flow, notes.units()), show(one.rating.flow, notes.units()),
                            one.rating.exponent),
                show(one.choice.pressure, notes.units()),
                "flow goes with the square root of pressure (Oklahoma State Extension)"};
        });
    }
}

}  // namespace

Result<ChooseTipAnswer> choose_tip(const ChooseTipRequest& request, Notes& notes) {
    SWATHBOOK_TRY(wanted, understand(request, notes));
    if (request.table.size() > most_table_rows) {
        return fail(ErrorCode::out_of_range, "table",
                    fmt::format("The table has {} tips; the limit is {}.", request.table.size(),
                                most_table_rows));
    }
    const std::vector<TableTip> sizes =
        request.table.empty() ? colour_code(request.convention) : std::vector<TableTip>{};
    SWATHBOOK_TRY(ranked,
                  judge_table(request.table.empty() ? sizes : request.table, wanted, notes));

    show_pressures(ranked, wanted.water_flow, notes);

    ChooseTipAnswer answer;
    answer.flow_needed = wanted.water_flow;
    if (request.carrier_density) {
        answer.water_flow = wanted.water_flow;
        answer.flow_needed = wanted.water_flow / water_factor(request.carrier_density->value);
    }
    answer.droplets_wanted =
        wanted.classes ? droplets::describe(*wanted.classes) : std::string("not entered");
    if (!wanted.controller && wanted.slowest) {
        answer.rate_at_slowest = request.rate.value * (wanted.speed / *wanted.slowest);
    }
    if (!wanted.controller && wanted.fastest) {
        answer.rate_at_fastest = request.rate.value * (wanted.speed / *wanted.fastest);
    }
    for (Ranked& one : ranked) {
        answer.choices.push_back(std::move(one.choice));
    }
    find_carrier(request, answer, notes);
    find_outcome(request, answer, notes);
    return answer;
}

}  // namespace swathbook::tips
