#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook::calibration {

/// What a person at the edge of a field knows before laying out a calibration course.
struct CourseRequest {
    Reading<Kind::length> width;  ///< ground served by the tips whose spray will be caught
    std::optional<Reading<Kind::speed>> speed{};  ///< to tell how long the course takes
    std::optional<Reading<Kind::area>> part{};    ///< one course wanted: "1/8 ac", "25 m2"
    /// A length already laid out, perhaps snapped to trees or posts.
    std::optional<Reading<Kind::length>> laid_length{};
    std::optional<Reading<Kind::duration>> timing_slip{};   ///< 0.25 s when not entered
    std::optional<Reading<Kind::fraction>> timing_limit{};  ///< 2 % when not entered
};

/// One course: how long, how long it takes, and what a catch on it means.
struct CourseRow {
    std::string part{};  ///< "1/128 ac", or the area when it is no standard one
    std::string rule{};  ///< "fl oz caught = gal/ac"; empty when there is no short rule
    Area area;
    Length length;              ///< exact
    Length practical_length{};  ///< to the whole foot, or the tenth of a metre
    /// Output read by the rule on the practical length, against the true one.
    Fraction practical_error{};
    std::optional<Length> printed_length{};  ///< as tables in print give it (340 ft2 / width)
    std::optional<Duration> time{};          ///< at the speed
    std::optional<Fraction> timing_error{};  ///< slip of the stopwatch over the time
    MixPerArea one_fluid_ounce;              ///< output that one US fluid ounce caught means
    MixPerArea one_pint;                     ///< one US pint
    MixPerArea one_gallon;                   ///< one US gallon
    MixPerArea one_millilitre;
    MixPerArea one_litre;
    double fluid_ounces_divisor = 1.0;  ///< divide US fluid ounces caught by this for gal/ac
    std::optional<bool> recommended{};  ///< absent: no speed, no saying
};

struct CourseAnswer {
    std::vector<CourseRow> rows{};
    std::optional<std::string> recommended{};  ///< part of the course to lay out
    std::optional<CourseRow> chosen{};         ///< the course of the requested part
    std::optional<CourseRow> laid{};           ///< the course of the length already laid out
    /// Shortest course at this speed whose timing error is within the limit.
    std::optional<Length> shortest_length{};
};

/// Course lengths for a width, and which of them can be timed well enough.
///
///   length = part of an acre / width;   timing error = slip / (length / speed)
///
/// @valid    width 1/2 in to 200 ft, speed 0.1 to 30 mph, part 1 ft2 to 1000 ac
/// @errors   invalid_input, out_of_range with the member's name; answers only finite numbers
/// @source   1/128 acre rule: Ohio State University Extension FABE-520 (2016); wide swaths: LSU
///           AgCenter "boomless" page, University of Kentucky ENTFACT-805. The slip of 0.25 s and
///           the limit of 2 % are common practice.
/// @cases    tests/cases/calibration/course_*.case
/// Identities: length halves when width doubles; timing error is proportional to speed; what one
/// gallon means is 128 times what one fluid ounce means.
[[nodiscard]] Result<CourseAnswer> course(const CourseRequest& request, Notes& notes);

}  // namespace swathbook::calibration
