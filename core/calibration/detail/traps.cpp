#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/calibration/detail/closeness.hpp"
#include "core/calibration/detail/consequences.hpp"
#include "core/calibration/standard_courses.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration::detail {
namespace {

constexpr double same_width = 0.02;

std::string shown_output(double si, const Notes& notes) {
    return show(MixPerArea::from_si(si), notes.units());
}

void find_course_shortcut(const Outcome& outcome, Notes& notes) {
    if (outcome.method != CalibrationMethod::course_and_catch &&
        outcome.method != CalibrationMethod::timed_plot) {
        return;
    }
    const CourseShortcut shortcut = shortcut_of_course(area_of_one_catch(outcome));
    const double size = shortcut.fluid_ounces_divisor;
    const bool ounces_hold =
        standard_course_near(area_of_one_catch(outcome), 0.01) == &standard_courses().front();
    if (ounces_hold) {
        notes.find(Severity::note, "shortcut_belongs", shortcut.text);
    } else if (size > 8.0 && size < 12.5) {
        notes.find(Severity::warning, "shortcut_tenfold",
                   shortcut.text + " Taking ounces for gal/ac would be a tenfold error.");
    } else if (size >= 12.5 && size < 20.0) {
        notes.find(Severity::warning, "shortcut_sixteenfold",
                   shortcut.text + " Taking ounces for gal/ac would be a sixteenfold error.");
    } else {
        notes.find(Severity::advice, "shortcut_does_not_belong", shortcut.text);
    }
}

void find_minute_catch(const Outcome& outcome, Notes& notes) {
    constexpr double minute = 60.0;
    const double course = outcome.ground.course_time;
    if (outcome.method == CalibrationMethod::flow_and_speed || course <= 0.0 ||
        std::fabs(outcome.caught.catch_time - minute) > 1.0 ||
        std::fabs(course - minute) < 0.05 * minute) {
        return;
    }
    notes.find(
        Severity::warning, "catch_minute",
        fmt::format("The catch lasted a minute, the course took {}. No ounce shortcut holds "
                    "for it; the output is computed for the course time. If the jug was "
                    "under the spray for {}, enter that as the catch time: the output would "
                    "be {}.",
                    show(Duration::from_si(course), notes.units()),
                    show(Duration::from_si(course), notes.units()),
                    shown_output(outcome.output * outcome.caught.catch_time / course, notes)));
}

void find_tip_traps(const Outcome& outcome, Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    if (request.catches.empty() || outcome.caught.catches == 0) {
        return;
    }
    const double spacing = request.spacing ? request.spacing->value.si() : 0.0;
    if (!outcome.plan.one_tip && outcome.plan.tips > 1.0 && spacing > 0.0 &&
        std::fabs(outcome.ground.width / spacing - 1.0) < same_width) {
        notes.find(Severity::warning, "all_tips_one_spacing",
                   fmt::format("The spray of all {} tips is set against the width of one ({}). If "
                               "they serve {} together, the output is {}, not {}.",
                               outcome.plan.tips, show(*request.spacing, notes.units()),
                               show(Length::from_si(spacing * outcome.plan.tips), notes.units()),
                               shown_output(outcome.output / outcome.plan.tips, notes),
                               shown_output(outcome.output, notes)));
    }
    if (!outcome.plan.one_tip || outcome.plan.tips <= 1.0) {
        return;
    }
    std::vector<std::string_view> tips;
    for (const Catch& one : request.catches) {
        if (one.tip.empty() || std::ranges::find(tips, one.tip) == tips.end()) {
            tips.emplace_back(one.tip);
        }
    }
    if (static_cast<double>(tips.size()) < outcome.plan.tips - 0.5) {
        const bool cluster = request.sprayer == SprayerKind::boomless;
        notes.find(cluster ? Severity::stop : Severity::warning, "one_tip_of_several",
                   fmt::format("{} of {} tips were caught; the others are taken to flow alike{}. "
                               "Catch every tip before mixing.",
                               tips.size(), show_number(outcome.plan.tips, 4),
                               cluster ? ", which the tips of a boomless cluster do not" : ""));
    }
}

void find_width_against_spacing(const Outcome& outcome, Notes& notes) {
    constexpr double same_boom = 0.05;
    const CalibrateRequest& request = outcome.request;
    if (!request.width || !request.tips || !request.spacing) {
        return;
    }
    const double boom = request.spacing->value.si() * *request.tips;
    if (std::fabs(outcome.ground.width / boom - 1.0) <= same_boom ||
        std::fabs(request.width->value / request.spacing->value - 1.0) < same_width) {
        return;
    }
    notes.find(
        Severity::warning, "width_against_spacing",
        fmt::format("{} tips at {} serve {}, not {}. The width entered is used; on the other "
                    "the output is {}. Count the tips and measure again.",
                    *request.tips, show(*request.spacing, notes.units()),
                    show(Length::from_si(boom), notes.units()), show(*request.width, notes.units()),
                    shown_output(outcome.output * outcome.ground.width / boom, notes)));
}

/// A flow entered for several tips that is about what one gives.
void find_flow_of_one_tip(const Outcome& outcome, Notes& notes) {
    // The smallest tip of the colour code gives 0.1 gal/min at 40 psi.
    constexpr double smallest = 0.1 * us_gallons_per_minute.si;
    constexpr double largest = 1.5 * us_gallons_per_minute.si;
    const CalibrateRequest& request = outcome.request;
    if (!request.flow || !request.tips || *request.tips < 2 || request.catch_covers) {
        return;
    }
    const double flow = request.flow->value.si();
    if (flow / *request.tips >= smallest || flow < smallest || flow > largest) {
        return;
    }
    notes.find(
        Severity::warning, "flow_of_one_tip",
        fmt::format("{} through {} tips is {} each, less than the smallest usual tip gives. If "
                    "it is the flow of one tip, the output is {}, not {}: enter catch_covers "
                    "as one_tip or all_tips.",
                    show(*request.flow, notes.units()), *request.tips,
                    show(Flow::from_si(flow / *request.tips), notes.units()),
                    shown_output(outcome.output * *request.tips, notes),
                    shown_output(outcome.output, notes)),
        "sizes: ISO 10625");
}

/// Several tips on one band are counted on that band together.
void find_tips_on_one_band(const Outcome& outcome, Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    if (request.sprayer != SprayerKind::band || !request.tips || *request.tips < 2) {
        return;
    }
    notes.find(*request.tips > 3 ? Severity::warning : Severity::note, "tips_on_one_band",
               fmt::format("{} tips are counted on one band. If they serve a band each, the output "
                           "under the bands is {}, not {}: leave tips out.",
                           *request.tips, shown_output(outcome.output / *request.tips, notes),
                           shown_output(outcome.output, notes)));
}

constexpr double far_apart = 1.2;  // the largest repeat over the smallest

void find_repeats_apart(const Outcome& outcome, Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    if (request.course_times.size() > 1) {
        const auto [least, most] = std::ranges::minmax(
            request.course_times, {}, [](const auto& time) { return time.value.si(); });
        if (most.value > least.value * far_apart) {
            notes.find(Severity::warning, "times_far_apart",
                       fmt::format("The course times run from {} to {}. Passes in one gear agree "
                                   "within a few percent: look for a slip of the pen or a missed "
                                   "stake, and time the odd one again.",
                                   show(least, notes.units()), show(most, notes.units())));
        }
    }
    if (outcome.caught.repeats_ratio > far_apart) {
        notes.find(Severity::warning, "catches_far_apart",
                   fmt::format("The largest catch is {} times the smallest of the same tips. "
                               "Repeats agree within a few percent: look for a slip of the pen, "
                               "another unit or a clogged tip, and catch the odd one again.",
                               show_number(outcome.caught.repeats_ratio)));
    }
}

/// A reading typed more roughly than anybody reads.
void find_rough_entries(const Outcome& outcome, Notes& notes) {
    constexpr double worth_a_word = 0.10;
    const CalibrateRequest& request = outcome.request;
    const auto remark = [&](const auto& reading) {
        const double half_step = reading.half_step_si / reading.value.si();
        if (half_step <= worth_a_word || reading.text.find('/') != std::string::npos) {
            return false;
        }
        notes.find(Severity::advice, "typed_roughly",
                   fmt::format("\"{}\" has too few digits to tell how closely it was read; 2.5 % "
                               "is taken. Type the digits that were read, as 2.0 for 2.",
                               reading.text));
        return true;
    };
    for (const Catch& one : request.catches) {
        if ((one.amount && remark(*one.amount)) || (one.weight && remark(*one.weight))) {
            return;
        }
    }
    if ((request.refill && remark(*request.refill)) || (request.flow && remark(*request.flow))) {
        return;
    }
}

void find_width_traps(const Outcome& outcome, Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    if (!request.wetted_width || !request.width) {
        return;
    }
    const double wetted = request.wetted_width->value.si();
    if (outcome.ground.width > 0.99 * wetted) {
        notes.find(Severity::warning, "wetted_width_used",
                   fmt::format("The width entered is the wetted one, {}. If passes overlap so that "
                               "80 % counts ({}), the output is {}, 25 % more. Decide by the "
                               "overlap that is driven.",
                               show(*request.wetted_width, notes.units()),
                               show(Length::from_si(0.8 * wetted), notes.units()),
                               shown_output(outcome.output / 0.8, notes)),
                   "LSU AgCenter; University of Kentucky ENTFACT-805");
    }
}

bool says_imperial(std::string_view text) {
    return std::ranges::any_of(std::array{"imp", "Imp", "IMP", "UK", "uk"},
                               [text](const char* word) { return text.contains(word); });
}

void find_unit_traps(const Outcome& outcome, Notes& notes) {
    const CalibrateRequest& request = outcome.request;
    const bool imperial =
        std::ranges::any_of(
            request.catches,
            [](const Catch& one) { return one.amount && says_imperial(one.amount->text); }) ||
        (request.refill && says_imperial(request.refill->text)) ||
        (request.flow && says_imperial(request.flow->text));
    if (imperial) {
        notes.find(Severity::note, "imperial_units",
                   "Imperial amounts were entered: the imperial gallon is 1.201 US gallons and has "
                   "160 fluid ounces, so ounces are imperial gal/ac on 1/160 acre (272.25 ft2), "
                   "and 1 imperial gal/ac is 11.23 L/ha against 9.354 for the US one.");
    }
    if (!outcome.caught.weighed) {
        return;
    }
    const bool mixed = std::ranges::any_of(request.catches,
                                           [](const Catch& one) { return one.amount.has_value(); });
    notes.find(
        mixed ? Severity::warning : Severity::note, "weighed_catch",
        fmt::format("Catches on a scale were turned into volume with {} lb/gal{}. An ounce "
                    "of weight is not a fluid ounce: a fluid ounce of water weighs 1.04 oz.{}",
                    request.caught == CarrierCaught::solution && request.carrier_density
                        ? show_number(request.carrier_density->value.in(pounds_per_us_gallon))
                        : show_number(water_lb_per_gal),
                    request.caught == CarrierCaught::solution ? "" : ", as for water",
                    mixed ? " Other catches were read as volume; make sure that none of "
                            "those is a weight."
                          : ""));
}

void find_missing_repeats(const Outcome& outcome, Notes& notes) {
    if (outcome.method == CalibrationMethod::refill) {
        return;
    }
    if (outcome.method != CalibrationMethod::flow_and_speed && outcome.ground.course_time <= 0.0) {
        notes.find(Severity::advice, "course_time_not_entered",
                   "No course time was entered: the catch is taken to have lasted exactly as long "
                   "as the course, and the interval leaves timing out. Enter the times.");
        return;
    }
    const bool one_time = outcome.request.course_times.size() == 1;
    const bool one_catch = outcome.caught.catches == 1;
    if (one_time || one_catch) {
        notes.find(Severity::advice, "no_repeats",
                   fmt::format("{} measured once: the interval holds what clock, tape and jug can "
                               "do, not how much runs differ. Repeat at least twice more.",
                               one_time && one_catch ? "Course and catch were each"
                               : one_time            ? "The course was"
                                                     : "The catch was"));
    }
}

void find_unusual_output(const Outcome& outcome, Notes& notes) {
    const double gallons = outcome.output / us_gallons_per_acre.si;
    if (gallons > 500.0 || gallons < 0.5) {
        notes.find(Severity::warning, "output_unusual",
                   fmt::format("{} is far from what ground sprayers put out (a few to some hundred "
                               "gal/ac). Check seconds against minutes, inches against feet, and "
                               "which tips were caught.",
                               shown_output(outcome.output, notes)));
    }
}

}  // namespace

void find_traps(const Outcome& outcome, Notes& notes) {
    find_course_shortcut(outcome, notes);
    find_minute_catch(outcome, notes);
    find_tip_traps(outcome, notes);
    find_width_against_spacing(outcome, notes);
    find_flow_of_one_tip(outcome, notes);
    find_tips_on_one_band(outcome, notes);
    find_repeats_apart(outcome, notes);
    find_rough_entries(outcome, notes);
    find_width_traps(outcome, notes);
    find_unit_traps(outcome, notes);
    find_missing_repeats(outcome, notes);
    find_unusual_output(outcome, notes);
    if (outcome.request.sprayer == SprayerKind::handgun) {
        notes.find(Severity::advice, "handgun_area",
                   "A handgun has an output per acre only for the person and the plants it was "
                   "measured on. When spraying to wet, log the area: the label's limit per acre "
                   "still counts.");
    }
}

}  // namespace swathbook::calibration::detail
