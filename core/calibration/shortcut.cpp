#include "core/calibration/shortcut.hpp"

#include <cmath>

#include <fmt/format.h>

#include "core/calibration/standard_courses.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

/// A course within 1 % of a standard one is that course, with its error named.
constexpr double same_course = 0.01;
constexpr double gallon_per_acre = us_gallons.si / acres.si;

/// Shortcuts that read the catch as if the course were another one.
void guess_by_course(const ShortcutFacts& facts, std::vector<ShortcutGuess>& guesses) {
    if (facts.volume <= 0.0 || facts.course_area <= 0.0) {
        return;
    }
    const double ounces = facts.volume / us_fluid_ounces.si;
    const double size = ounces_per_gallon_per_acre(facts.course_area);
    guesses.push_back({size > 8.0 && size < 12.5     ? "shortcut_tenfold"
                       : size >= 12.5 && size < 20.0 ? "shortcut_sixteenfold"
                                                     : "shortcut_ounces",
                       "fluid ounces caught were read as gal/ac, which holds on 1/128 acre only",
                       ounces * gallon_per_acre});
    guesses.push_back({"shortcut_ounces_over_ten",
                       "fluid ounces were divided by ten, which holds on 10/128 acre only",
                       ounces / 10.0 * gallon_per_acre});
    guesses.push_back({"shortcut_pints",
                       "pints caught were read as gal/ac, which holds on 1/8 acre only",
                       ounces / 16.0 * gallon_per_acre});
    guesses.push_back({"shortcut_tenth_acre",
                       "gallons were multiplied by ten, which holds on 1/10 acre only",
                       ounces / 12.8 * gallon_per_acre});
    guesses.push_back({"shortcut_quarter_acre",
                       "gallons were multiplied by four, which holds on 1/4 acre only",
                       ounces / 32.0 * gallon_per_acre});
    guesses.push_back({"shortcut_millilitres",
                       "millilitres caught were read as L/ha, which holds on 10 m2 only",
                       facts.volume / 10.0});
}

/// Shortcuts that use the wrong width or count the wrong tips.
void guess_by_width(const ShortcutFacts& facts, std::vector<ShortcutGuess>& guesses) {
    if (facts.tips > 1) {
        guesses.push_back({"shortcut_one_tip",
                           "one tip was counted where several feed the width; add all of them",
                           facts.output / facts.tips});
        guesses.push_back({"shortcut_all_tips_one_spacing",
                           "all tips were counted over the width of one of them",
                           facts.output * facts.tips});
    }
    if (facts.width <= 0.0) {
        return;
    }
    if (facts.wetted_width > 0.0) {
        guesses.push_back({"shortcut_wetted_width",
                           "the wetted width was used in place of the effective one",
                           facts.output * facts.width / facts.wetted_width});
    } else if (facts.wide_swath) {
        guesses.push_back({"shortcut_wetted_width",
                           "the wetted width was used in place of the effective one (80 % of it by "
                           "the usual rule)",
                           facts.output * 0.8});
        guesses.push_back({"shortcut_eighty_percent_twice",
                           "80 % was taken of a width that was the effective one already",
                           facts.output / 0.8});
    }
    if (facts.spacing > 0.0) {
        guesses.push_back({"shortcut_one_spacing", "the spacing of the tips was used as the width",
                           facts.output * facts.width / facts.spacing});
    }
    if (facts.band_width > 0.0 && facts.row_spacing > 0.0) {
        guesses.push_back({"shortcut_field_acre",
                           "the figure is per acre of field, not per acre under the bands",
                           facts.output * facts.width / facts.row_spacing});
        guesses.push_back({"shortcut_band_acre",
                           "the figure is per acre under the bands, not per acre of field",
                           facts.output * facts.width / facts.band_width});
    }
}

/// Shortcuts that take another time or another unit.
void guess_by_time_and_unit(const ShortcutFacts& facts, std::vector<ShortcutGuess>& guesses) {
    if (facts.course_time > 0.0) {
        guesses.push_back({"shortcut_minute_catch",
                           "a catch of one minute was read as if it were the time of the course",
                           facts.output * 60.0 / facts.course_time});
        guesses.push_back({"shortcut_course_as_minute",
                           "a catch for the time of the course was read as one of a minute",
                           facts.output * facts.course_time / 60.0});
    }
    if (facts.catch_time > 0.0 && facts.course_time > 0.0) {
        guesses.push_back({"shortcut_catch_time",
                           "the catch lasted another time than the course, and that was not put "
                           "right",
                           facts.output * facts.catch_time / facts.course_time});
    }
    constexpr double imperial = imperial_gallons.si / us_gallons.si;
    guesses.push_back({"shortcut_imperial",
                       "US amounts were read with imperial gallons, or the other way round (1 "
                       "imperial gallon is 1.201 US gallons)",
                       facts.output * imperial});
    guesses.push_back({"shortcut_imperial",
                       "US amounts were read with imperial gallons, or the other way round (1 "
                       "imperial gallon is 1.201 US gallons)",
                       facts.output / imperial});
    // 8.34 lb/gal of water is 133.44 oz over 128 fl oz.
    constexpr double weight_ounces = 8.34 * 16.0 / 128.0;
    guesses.push_back({"shortcut_weight_ounces",
                       "ounces on a scale were read as fluid ounces (a fluid ounce of water weighs "
                       "1.04 oz)",
                       facts.output * weight_ounces});
    guesses.push_back({"shortcut_mph_as_feet_per_minute",
                       "miles per hour were not turned into feet per minute (88 to one)",
                       facts.output * 88.0});
    guesses.push_back({"shortcut_litres_per_hectare",
                       "litres per hectare were read as gallons per acre (9.354 to one)",
                       facts.output / litres_per_hectare.si * gallon_per_acre});
    guesses.push_back({"shortcut_inches_as_feet", "inches were read as feet, or feet as inches",
                       facts.output * 12.0});
    guesses.push_back({"shortcut_inches_as_feet", "inches were read as feet, or feet as inches",
                       facts.output / 12.0});
}

std::string divisor_text(double area_si) {
    return fmt::format("divide fluid ounces by {} for gal/ac, or millilitres by {} for L/ha",
                       show_number(ounces_per_gallon_per_acre(area_si), 4),
                       show_number(area_si / 10.0, 4));
}

}  // namespace

CourseShortcut shortcut_of_course(double area_si) {
    CourseShortcut shortcut;
    shortcut.fluid_ounces_divisor = ounces_per_gallon_per_acre(area_si);
    const StandardCourse* standard = standard_course_near(area_si, same_course);
    if (standard != nullptr) {
        shortcut.course = standard->name;
        shortcut.rule = standard->rule;
        shortcut.error = Fraction::from_si(area_si / standard->area_si - 1.0);
    }
    if (standard != nullptr && standard == &standard_courses().front()) {
        shortcut.text = fmt::format("On this course ounces are gal/ac ({}): {}.", standard->name,
                                    standard->rule);
    } else if (standard != nullptr) {
        shortcut.text = fmt::format("On this course ounces are NOT gal/ac: {} ({}; {}).",
                                    standard->rule, standard->name, divisor_text(area_si));
    } else {
        shortcut.text =
            fmt::format("On this course ounces are NOT gal/ac: {}.", divisor_text(area_si));
    }
    return shortcut;
}

std::vector<ShortcutGuess> shortcut_guesses(const ShortcutFacts& facts) {
    std::vector<ShortcutGuess> guesses;
    guesses.reserve(24);
    guess_by_course(facts, guesses);
    guess_by_width(facts, guesses);
    guess_by_time_and_unit(facts, guesses);
    return guesses;
}

std::optional<ShortcutGuess> guess_shortcut(const ShortcutFacts& facts, double believed,
                                            double closeness) {
    if (std::fabs(believed / facts.output - 1.0) <= closeness) {
        return std::nullopt;
    }
    std::optional<ShortcutGuess> nearest;
    double nearest_off = closeness;
    for (const ShortcutGuess& guess : shortcut_guesses(facts)) {
        const double off = std::fabs(believed / guess.output - 1.0);
        // The shortcuts of the course stand first: at a tie the likelier one is named.
        if (off < nearest_off) {
            nearest = guess;
            nearest_off = off;
        }
    }
    return nearest;
}

}  // namespace swathbook::calibration
