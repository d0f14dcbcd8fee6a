#include "core/calibration/detail/consequences.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration::detail {
namespace {

std::string shown_output(double si, const Notes& notes) {
    return show(MixPerArea::from_si(si), notes.units());
}

/// "+21.1 %": a difference with its sign.
std::string signed_percent(double fraction) {
    return fmt::format("{}{} %", fraction < 0.0 ? "-" : "+",
                       show_fixed(100.0 * std::fabs(fraction), 1));
}

template <Kind K>
double relative_half_step(const Reading<K>& reading) {
    return reading.half_step_si / reading.value.si();
}

/// How near a figure must come to a shortcut's to be taken for it: its own last digit decides.
double closeness_of(const Reading<Kind::mix_per_area>& figure) {
    constexpr double nearest = 0.003;
    constexpr double farthest = 0.015;
    return std::clamp(relative_half_step(figure), nearest, farthest);
}

/// Product delivered when a recipe for `believed` goes through a sprayer that puts out `output`.
std::string delivered_text(double believed, const Outcome& outcome, const Notes& notes) {
    const double off = outcome.output / believed - 1.0;
    return fmt::format("A recipe mixed for {} delivers {} % {} product at the measured {}.",
                       shown_output(believed, notes), show_fixed(100.0 * std::fabs(off), 1),
                       off < 0.0 ? "less" : "more", shown_output(outcome.output, notes));
}

BelievedAnswer compare(double believed, const Outcome& outcome, const Notes& notes) {
    BelievedAnswer answer;
    answer.output = MixPerArea::from_si(believed);
    answer.ratio = believed / outcome.output;
    answer.delivered = Fraction::from_si(outcome.output / believed - 1.0);
    answer.text = delivered_text(believed, outcome, notes);
    return answer;
}

bool within_interval(double believed, const Outcome& outcome) {
    return std::fabs(believed / outcome.output - 1.0) <= outcome.plus_minus;
}

}  // namespace

ShortcutFacts facts_of(const Outcome& outcome) {
    const CalibrateRequest& request = outcome.request;
    const auto si_of = [](const std::optional<Reading<Kind::length>>& reading) {
        return reading ? reading->value.si() : 0.0;
    };
    ShortcutFacts facts;
    facts.output = outcome.output;
    facts.course_area = outcome.ground.area;
    facts.volume = outcome.output * outcome.ground.area;
    // A catch of another length of time than the course: what stood in the jug counts.
    if (outcome.caught.catch_time > 0.0 && outcome.caught.mean_catch > 0.0) {
        facts.volume = outcome.caught.mean_catch;
    }
    facts.width = outcome.ground.width;
    facts.wetted_width = si_of(request.wetted_width);
    facts.spacing = si_of(request.spacing);
    facts.band_width = si_of(request.band_width);
    facts.row_spacing = si_of(request.row_spacing);
    facts.tips = static_cast<int>(std::lround(outcome.plan.tips));
    facts.wide_swath = request.sprayer != SprayerKind::boom && request.sprayer != SprayerKind::band;
    facts.course_time = outcome.ground.course_time;
    facts.catch_time = outcome.caught.catch_time;
    return facts;
}

DensityAnswer density_of(const Outcome& outcome, Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    DensityAnswer answer;
    answer.specific_gravity =
        request.carrier_density->value.in(pounds_per_us_gallon) / water_lb_per_gal;
    answer.factor = std::sqrt(answer.specific_gravity);
    const bool with_water = request.caught == CarrierCaught::water;
    const double water = with_water ? outcome.output : outcome.output * answer.factor;
    answer.water_output = MixPerArea::from_si(water);
    answer.solution_output = MixPerArea::from_si(water / answer.factor);
    answer.water_setting = MixPerArea::from_si(outcome.output * answer.factor);
    notes.show([&] {
        return Step{"Density factor, square root of the specific gravity",
                    fmt::format("sqrt({} / {} lb/gal)",
                                show(request.carrier_density->value, "lb/gal"), water_lb_per_gal),
                    show_number(answer.factor, 4), "University of Nebraska CropWatch 2016"};
    });
    constexpr double worth_telling = 0.01;
    if (std::fabs(answer.factor - 1.0) > worth_telling && with_water) {
        notes.find(
            Severity::warning, "density_correction",
            fmt::format("The liquid of the job weighs {}, {} times water, and comes out {} than "
                        "water: {} measured with water is {} of it (divide by {}). To put on {} of "
                        "it, set the sprayer so that water shows {} (multiply the wanted rate). "
                        "Multiplying the water figure goes the wrong way.",
                        show(*request.carrier_density, notes.units()),
                        show_number(answer.specific_gravity, 3),
                        answer.factor > 1.0 ? "slower" : "faster", shown_output(water, notes),
                        show(answer.solution_output, notes.units()), show_number(answer.factor, 3),
                        shown_output(outcome.output, notes),
                        show(answer.water_setting, notes.units())),
            "University of Nebraska CropWatch 2016; Oklahoma State University Extension");
    }
    return answer;
}

BelievedAnswer believed_of(const Outcome& outcome, Notes& notes) {
    const auto& figure = *outcome.request.believed_output;
    const double believed = figure.value.si();
    BelievedAnswer answer = compare(believed, outcome, notes);
    const double closeness = closeness_of(figure);
    const auto guess = guess_shortcut(facts_of(outcome), believed, closeness);
    if (guess) {
        answer.shortcut = guess->code;
        answer.text += fmt::format(" That figure is what comes out when {}.", guess->text);
    } else if (within_interval(believed, outcome)) {
        answer.text += " The measurement cannot tell the two apart.";
    }
    notes.show([&] {
        return Step{"Product delivered against the recipe",
                    fmt::format("{} / {} - 1", shown_output(outcome.output, notes),
                                shown_output(believed, notes)),
                    signed_percent(answer.delivered.si())};
    });
    constexpr double far_off = 0.05;
    constexpr double far_beyond = 0.5;  // no wear or slip does this: a rule was misread
    const double off = std::fabs(outcome.output / believed - 1.0);
    if (off > far_off || (guess && off > closeness)) {
        const Severity mild = off > far_off ? Severity::warning : Severity::advice;
        notes.find(off > far_beyond ? Severity::stop : mild,
                   guess ? std::string(guess->code) : std::string("believed_output_differs"),
                   answer.text + " Mix for the measured output.");
    }
    return answer;
}

Result<BelievedAnswer> assumed_of(const Outcome& outcome, Notes& notes) {
    const AssumedSettings& assumed = *outcome.request.assumed;
    if (!assumed.width && !assumed.speed) {
        return fail(ErrorCode::invalid_input, "assumed",
                    "Nothing was assumed. Enter the width, the speed, or both, as on the sticker.");
    }
    const Ground& ground = outcome.ground;
    if ((assumed.width && ground.width <= 0.0) || (assumed.speed && ground.speed <= 0.0)) {
        return fail(ErrorCode::inconsistent, "assumed",
                    "The measurement gives no width and speed to set against the assumed ones. "
                    "Enter width, course length and times, or the speed.");
    }
    double believed = outcome.output;
    if (assumed.width) {
        believed *= ground.width / assumed.width->value.si();
    }
    if (assumed.speed) {
        believed *= ground.speed / assumed.speed->value.si();
    }
    BelievedAnswer answer = compare(believed, outcome, notes);
    notes.show([&] {
        return Step{
            "Output at the assumed width and speed",
            fmt::format(
                "{} x {}{}{}", shown_output(outcome.output, notes),
                assumed.width
                    ? fmt::format("{} / {}", show(Length::from_si(ground.width), notes.units()),
                                  show(*assumed.width, notes.units()))
                    : "",
                assumed.width && assumed.speed ? " x " : "",
                assumed.speed
                    ? fmt::format("{} / {}", show(Speed::from_si(ground.speed), notes.units()),
                                  show(*assumed.speed, notes.units()))
                    : ""),
            shown_output(believed, notes)};
    });
    constexpr double far_off = 0.05;
    if (std::fabs(answer.delivered.si()) > far_off) {
        notes.find(
            Severity::warning, "assumed_settings_differ",
            fmt::format("Assumed {}{}{}. {}",
                        assumed.width ? show(*assumed.width, notes.units()) : "",
                        assumed.width && assumed.speed ? " and " : "",
                        assumed.speed ? show(*assumed.speed, notes.units()) : "", answer.text));
    }
    return answer;
}

Result<SpeedSwings> swings_of(const Outcome& outcome, Notes& notes) {
    const double speed = outcome.ground.speed;
    if (speed <= 0.0) {
        return fail(ErrorCode::inconsistent, "speed_swings",
                    "The speed of the calibration is not known, so other speeds cannot be set "
                    "against it. Enter the speed, or the course length and times.");
    }
    double parts = 0.0;
    for (const SpeedShare& share : outcome.request.speed_swings) {
        parts += share.parts;
    }
    SpeedSwings swings;
    double mean = 0.0;
    double slowness = 0.0;
    double plain = 0.0;
    double highest = 0.0;
    double lowest = 1e300;
    for (const SpeedShare& share : outcome.request.speed_swings) {
        const double weight = share.parts / parts;
        const double here = outcome.output * speed / share.speed.value.si();
        swings.stretches.push_back(
            {share.speed.value, Fraction::from_si(weight), MixPerArea::from_si(here)});
        mean += weight * here;
        slowness += weight / share.speed.value.si();
        plain += weight * share.speed.value.si();
        highest = std::max(highest, here);
        lowest = std::min(lowest, here);
    }
    swings.mean_output = MixPerArea::from_si(mean);
    swings.harmonic_speed = Speed::from_si(1.0 / slowness);
    swings.at_mean_speed = MixPerArea::from_si(outcome.output * speed / plain);
    swings.highest_over_mean = Fraction::from_si(highest / mean - 1.0);
    swings.lowest_over_mean = Fraction::from_si(lowest / mean - 1.0);
    notes.show([&] {
        return Step{"Mean output over the distance, at the harmonic mean of the speeds",
                    fmt::format("{} x {} / {}", shown_output(outcome.output, notes),
                                show(Speed::from_si(speed), notes.units()),
                                show(swings.harmonic_speed, notes.units())),
                    show(swings.mean_output, notes.units())};
    });
    notes.find(
        Severity::advice, "speed_swings",
        fmt::format("With the flow fixed the ground gets {} on average, from {} to {}; not "
                    "the {} that the plain mean of the speeds suggests: more time is spent "
                    "going slowly.",
                    show(swings.mean_output, notes.units()), shown_output(lowest, notes),
                    shown_output(highest, notes), show(swings.at_mean_speed, notes.units())));
    return swings;
}

namespace {

/// Puts one rounded figure of a person into the exact relation and says what that did.
void put_in(HandCheck& check, const char* what, const std::string& typed, double moved) {
    check.roundings.push_back({fmt::format("{} {}", what, typed), Fraction::from_si(moved - 1.0)});
    check.unexplained = Fraction::from_si((1.0 + check.unexplained.si()) / moved - 1.0);
}

std::string hand_text(const HandCheck& check, const HandWork& hand, const Outcome& outcome,
                      const Notes& notes) {
    const std::string typed = show(hand.output, notes.units());
    const std::string exact = shown_output(outcome.output, notes);
    if (check.verdict == HandVerdict::agrees) {
        return fmt::format("{} agrees with {} to its last digit.", typed, exact);
    }
    if (check.verdict == HandVerdict::rounding) {
        const auto largest = std::ranges::max_element(
            check.roundings, {}, [](const HandStep& step) { return std::fabs(step.moved.si()); });
        return fmt::format("{} is {} from {}: rounding. {} moved it most ({}).", typed,
                           signed_percent(check.difference.si()), exact, largest->text,
                           signed_percent(largest->moved.si()));
    }
    return fmt::format(
        "{} is {} from {}, and {} of it does not follow from the figures given: "
        "look for a slip in the arithmetic.",
        typed, signed_percent(check.difference.si()), exact,
        signed_percent(check.unexplained.si()));
}

}  // namespace

HandCheck hand_check_of(const Outcome& outcome, Notes& notes) {
    const HandWork& hand = *outcome.request.hand;
    const Ground& ground = outcome.ground;
    HandCheck check;
    check.difference = Fraction::from_si(hand.output.value.si() / outcome.output - 1.0);
    check.unexplained = check.difference;
    if (hand.speed && ground.speed > 0.0) {
        put_in(check, "speed", show(*hand.speed, notes.units()),
               ground.speed / hand.speed->value.si());
    }
    if (hand.flow && outcome.caught.flow > 0.0) {
        put_in(check, "flow", show(*hand.flow, notes.units()),
               hand.flow->value.si() / outcome.caught.flow);
    }
    if (hand.width && ground.width > 0.0) {
        put_in(check, "width", show(*hand.width, notes.units()),
               ground.width / hand.width->value.si());
    }
    if (hand.area && ground.area > 0.0) {
        put_in(check, "area", show(*hand.area, notes.units()), ground.area / hand.area->value.si());
    }
    // A last digit rounded the usual way is off by half of itself at most.
    constexpr double arithmetic_dust = 1e-9;
    const double last_digit = relative_half_step(hand.output) + arithmetic_dust;
    if (std::fabs(check.difference.si()) <= last_digit) {
        check.verdict = HandVerdict::agrees;
    } else if (!check.roundings.empty() && std::fabs(check.unexplained.si()) <= last_digit) {
        check.verdict = HandVerdict::rounding;
    } else {
        check.verdict = HandVerdict::slip;
    }
    check.text = hand_text(check, hand, outcome, notes);
    if (check.verdict == HandVerdict::slip) {
        const auto guess =
            guess_shortcut(facts_of(outcome), hand.output.value.si(), closeness_of(hand.output));
        if (guess) {
            check.text += fmt::format(" It is what comes out when {}.", guess->text);
        }
    }
    return check;
}

}  // namespace swathbook::calibration::detail
