#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/quantity.hpp"

namespace swathbook::calibration {

/// Which short rule (if any) belongs to a course: "ounces caught = gal/ac" only on 1/128 acre.
struct CourseShortcut {
    std::string course{};  ///< "1/128 ac"; empty when no short rule belongs to the course
    std::string rule{};    ///< "fl oz caught = gal/ac"
    /// What the rule reads against the truth, from the course not being exact.
    Fraction error{};
    double fluid_ounces_divisor = 1.0;  ///< divide US fluid ounces caught by this for gal/ac
    std::string text{};
};

/// @param area_si  course area in m2, above 0
[[nodiscard]] CourseShortcut shortcut_of_course(double area_si);

/// What was measured, as far as a wrong shortcut could have used it. 0 where unknown.
struct ShortcutFacts {
    double output = 0.0;       ///< true output, SI
    double volume = 0.0;       ///< caught per course, all tips, m3
    double course_area = 0.0;  ///< m2
    double width = 0.0;
    double wetted_width = 0.0;
    double spacing = 0.0;
    double band_width = 0.0;
    double row_spacing = 0.0;
    int tips = 0;
    bool wide_swath = false;  ///< no boom: the edge of the swath is a matter of judgement
    double course_time = 0.0;
    double catch_time = 0.0;
};

/// A figure that a known wrong (or right) shortcut would give from the same data.
struct ShortcutGuess {
    std::string_view code;  ///< "shortcut_tenfold"
    std::string_view text;  ///< what was done, and why it does not hold here
    double output;          ///< SI
};

/// Every shortcut that could have been used, with the figure it gives here.
[[nodiscard]] std::vector<ShortcutGuess> shortcut_guesses(const ShortcutFacts& facts);

/// The shortcut whose figure is nearest to a believed output, when one is near enough to name.
///
/// @param believed  SI, above 0
/// @return nothing when the believed figure agrees with the measured one within `closeness`, or no
///         shortcut comes within `closeness` of it
[[nodiscard]] std::optional<ShortcutGuess> guess_shortcut(const ShortcutFacts& facts,
                                                          double believed, double closeness);

}  // namespace swathbook::calibration
