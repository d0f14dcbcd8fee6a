#include "core/mix/rinse.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/elementary.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

constexpr int most_rinses = 1000;
constexpr int rows_of_least_water = 6;
constexpr double rounding_room = 1e-12;
constexpr double largest_volume_m3 = 1000.0;
constexpr const char* illinois = "University of Illinois Extension, 50 Ways no. 30";

Result<void> check_volume(const std::optional<Reading<Kind::volume>>& reading, const char* field,
                          UnitSystem units) {
    if (reading && !(reading->value.si() > 0.0 && reading->value.si() <= largest_volume_m3)) {
        return fail(
            ErrorCode::out_of_range, field,
            fmt::format("A volume here is above 0 and at most {}; got {}. Measure the "
                        "trapped volume by draining the sprayer after the pump draws air.",
                        show(Volume::from_si(largest_volume_m3), units), show(*reading, units)));
    }
    return {};
}

Result<void> check_rinses(std::optional<int> rinses, const char* field) {
    if (rinses && (*rinses < 1 || *rinses > most_rinses)) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("{} rinses: give between 1 and {}.", *rinses, most_rinses));
    }
    return {};
}

Result<void> check_share(const std::optional<Reading<Kind::fraction>>& reading, const char* field,
                         UnitSystem units) {
    if (reading && !(reading->value.si() > 0.0 && reading->value.si() < 1.0)) {
        return fail(
            ErrorCode::out_of_range, field,
            fmt::format("This share is above 0 % and below 100 %; got {}.", show(*reading, units)));
    }
    return {};
}

Result<void> check(const RinseRequest& request, UnitSystem units) {
    SWATHBOOK_CHECK(check_volume(request.trapped, "trapped", units));
    SWATHBOOK_CHECK(check_volume(request.rinse_volume, "rinse_volume", units));
    SWATHBOOK_CHECK(check_volume(request.tank, "tank", units));
    SWATHBOOK_CHECK(check_rinses(request.rinses, "rinses"));
    SWATHBOOK_CHECK(check_share(request.target, "target", units));
    if (!request.trapped && !request.jug) {
        return fail(ErrorCode::invalid_input, "trapped",
                    "Give the volume that stays trapped in the sprayer, or a jug to rinse.");
    }
    const bool has_plan = request.rinse_volume && request.rinses;
    if (request.trapped && !has_plan && !request.target) {
        return fail(ErrorCode::invalid_input, "rinse_volume",
                    "Give the water of one rinse and how many rinses, or the target to reach.");
    }
    return {};
}

std::string percent(double share) {
    return show_number(100.0 * share) + " %";
}

void put_plan(const RinseRequest& request, RinseAnswer& answer, Notes& notes) {
    const Volume trapped = request.trapped->value;
    const Volume each = request.rinse_volume->value;
    const int rinses = *request.rinses;
    const double residue = residue_after(trapped, each, rinses);
    const double at_once = residue_after(trapped, each * rinses, 1);
    answer.residue = Fraction::from_si(residue);
    answer.one_big_rinse = Fraction::from_si(at_once);
    if (residue > 1e-300) {
        answer.times_better = at_once / residue;
    }
    for (int n = 1; n <= std::min(rinses, 20); ++n) {
        answer.steps.push_back({n, each * n, Fraction::from_si(residue_after(trapped, each, n))});
    }
    const UnitSystem units = notes.units();
    notes.show([&] {
        return Step{fmt::format("What {} rinse{} leave{}", rinses, rinses == 1 ? "" : "s",
                                rinses == 1 ? "s" : ""),
                    fmt::format("({0} / ({0} + {1}))^{2}", show(*request.trapped, units),
                                show(*request.rinse_volume, units), rinses),
                    percent(residue)};
    });
    if (rinses > 1) {
        const double times = answer.times_better.value_or(1e300);
        notes.show([&] {
            return Step{
                "The same water at once",
                fmt::format("{0} / ({0} + {1})", show(trapped, units), show(each * rinses, units)),
                fmt::format("{}, {} times as much", percent(at_once), show_number(times, 2))};
        });
    } else {
        const double thrice = residue_after(trapped, each / 3.0, 3);
        notes.find(Severity::advice, "split_the_water",
                   fmt::format("One rinse with {} leaves {}; the same water in three rinses would "
                               "leave {}.",
                               show(each, units), percent(residue), percent(thrice)));
    }
}

void put_target(const RinseRequest& request, RinseAnswer& answer, Notes& notes) {
    const Volume trapped = request.trapped->value;
    const double target = request.target->value.si();
    const UnitSystem units = notes.units();
    if (request.rinse_volume) {
        int needed = 1;
        while (needed < most_rinses && residue_after(trapped, request.rinse_volume->value, needed) >
                                           target * (1.0 + rounding_room)) {
            ++needed;
        }
        const double reached = residue_after(trapped, request.rinse_volume->value, needed);
        if (reached <= target * (1.0 + rounding_room)) {
            answer.rinses_needed = needed;
            answer.water_needed = request.rinse_volume->value * needed;
            answer.residue_reached = Fraction::from_si(reached);
            notes.show([&] {
                return Step{
                    "Rinses that reach the target",
                    fmt::format("least n with ({0} / ({0} + {1}))^n <= {2}",
                                show(*request.trapped, units), show(*request.rinse_volume, units),
                                show(*request.target, units)),
                    fmt::format("{} rinses, {} of water, {}", needed,
                                show(*answer.water_needed, units), percent(reached))};
            });
        } else {
            notes.find(
                Severity::warning, "target_out_of_reach",
                fmt::format("Even {} rinses of {} leave {}. Take more water each time.",
                            most_rinses, show(*request.rinse_volume, units), percent(reached)));
        }
    }
    for (int n = 1; n <= rows_of_least_water; ++n) {
        const Volume each = water_for(trapped, target, n);
        answer.least_water.push_back({n, each, each * n});
    }
    notes.show([&] {
        const LeastWater& three = answer.least_water[2];
        return Step{"Least water for three rinses",
                    fmt::format("3 x {} x ({}^(-1/3) - 1)", show(*request.trapped, units),
                                show(*request.target, units)),
                    fmt::format("{} = 3 x {}", show(three.total, units), show(three.each, units))};
    });
}

Result<JugRinseAnswer> rinse_jug(const JugRinse& jug, Notes& notes) {
    const UnitSystem units = notes.units();
    SWATHBOOK_CHECK(check_volume(jug.size, "jug.size", units));
    SWATHBOOK_CHECK(check_volume(jug.left_in_jug, "jug.left_in_jug", units));
    SWATHBOOK_CHECK(check_share(jug.fill, "jug.fill", units));
    SWATHBOOK_CHECK(check_rinses(jug.rinses, "jug.rinses"));
    SWATHBOOK_CHECK(check_rinses(jug.jugs, "jug.jugs"));
    JugRinseAnswer answer;
    const bool is_small = jug.size.value < Volume::of(5.0, us_gallons);
    answer.fill = jug.fill ? jug.fill->value.si() : (is_small ? 0.25 : 0.2);
    answer.each_rinse = jug.size.value * answer.fill;
    answer.water = answer.each_rinse * (jug.rinses * jug.jugs);
    if (!jug.fill) {
        notes.find(
            Severity::note, "usual_jug_fill",
            fmt::format("How full the jug is for each rinse was not entered: {} taken, usual "
                        "for jugs {} 5 gallons. The label's own words come first.",
                        percent(answer.fill), is_small ? "under" : "from"),
            illinois);
    }
    notes.show([&] {
        return Step{
            "Rinse water that goes into the tank",
            fmt::format("{} x {} x {} rinses x {} jug{}", show(jug.size, units),
                        percent(answer.fill), jug.rinses, jug.jugs, jug.jugs == 1 ? "" : "s"),
            show(answer.water, units), jug.fill ? "" : illinois};
    });
    if (jug.left_in_jug) {
        answer.left =
            Fraction::from_si(residue_after(jug.left_in_jug->value, answer.each_rinse, jug.rinses));
    }
    notes.find(
        Severity::note, "rinse_water_is_carrier",
        fmt::format("Count {} of jug rinse water as carrier when the tank is filled: the jugs "
                    "are emptied while the tank is filling, not after.",
                    show(answer.water, units)));
    return answer;
}

/// Cautions that stand where the act happens; they defer to the label.
void caution(const RinseRequest& request, Notes& notes) {
    notes.find(Severity::warning, "never_ammonia_with_bleach",
               "Never mix ammonia and chlorine bleach, not even as leftovers of two cleaners: the "
               "gas is poisonous.",
               "Purdue Extension (Whitford)");
    notes.find(Severity::note, "rinsate_to_a_labelled_site",
               "Spray rinse water out on ground that the label of the last product allows, without "
               "going over its rate, or keep it as mix water for the same product. Not on the "
               "ground by the well, not in a ditch or drain.",
               "University of Illinois Extension, 50 Ways no. 30; Maryland golf course BMP");
    notes.find(
        Severity::note, "label_rules_rinsing",
        "The label of the last product may ask for a cleaner, a soaking time or more rinses, "
        "and for its protective equipment while you do it. Growth regulators cling to hoses: "
        "residue that the arithmetic calls small can still hurt a sensitive crop.");
    if (request.tank && request.rinse_volume &&
        request.rinse_volume->value < request.tank->value * 0.1) {
        notes.find(
            Severity::advice, "less_than_a_tenth_of_the_tank",
            fmt::format("A rinse of {} is less than a tenth of the tank ({}); it may not wet "
                        "all inside walls. Use spray-down nozzles or more water.",
                        show(*request.rinse_volume, notes.units()),
                        show(*request.tank, notes.units())),
            "Purdue Extension (Whitford): one-tenth of the tank for each rinse");
    }
}

}  // namespace

double residue_after(Volume trapped, Volume water, int rinses) {
    const double share = trapped.si() / (trapped.si() + water.si());
    double residue = 1.0;
    for (int i = 0; i < rinses; ++i) {
        residue *= share;
    }
    return residue;
}

Volume water_for(Volume trapped, double residue, int rinses) {
    // less one in one step keeps the digits of targets close to 100 %
    return trapped * elementary::exponential_less_one(-elementary::logarithm(residue) / rinses);
}

Result<RinseAnswer> rinse(const RinseRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check(request, notes.units()));
    RinseAnswer answer;
    if (request.trapped && request.rinse_volume && request.rinses) {
        put_plan(request, answer, notes);
    }
    if (request.trapped && request.target) {
        put_target(request, answer, notes);
    }
    if (request.jug) {
        SWATHBOOK_TRY(jug, rinse_jug(*request.jug, notes));
        answer.jug = jug;
    }
    caution(request, notes);
    return answer;
}

}  // namespace swathbook::mix
