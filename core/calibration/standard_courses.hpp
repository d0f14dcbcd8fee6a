#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/quantity/units.hpp"

namespace swathbook::calibration {

/// Ground on which a catch is a rate by a short rule.
struct StandardCourse {
    std::string_view name;  ///< "1/128 ac"
    double area_si;         ///< m2
    std::string_view rule;  ///< "fl oz caught = gal/ac"
    bool metric;
    /// The area that printed tables of course lengths divide, where the trade rounds it; 0 if none.
    double printed_area_ft2;
};

/// @source 1/128 acre: Ohio State University Extension FABE-520 (2016); ten of them for boomless
///         nozzles: LSU AgCenter; 1/10 acre: Mesa County CO; 1/8 acre: University of Kentucky
///         ENTFACT-805; 1/4 acre: volume method sheet (studylib 6816438); 25 m2: pesticidewise.com.
///         The other metric plots are arithmetic.
[[nodiscard]] std::span<const StandardCourse> standard_courses();

/// The standard course within `closeness` (relative) of an area, nearest first.
[[nodiscard]] const StandardCourse* standard_course_near(double area_si, double closeness);

inline constexpr double one_128th_acre_si = acres.si / 128.0;

/// How many fluid ounces caught on an area make one gallon per acre: 1 on 1/128 acre, 10 on ten.
[[nodiscard]] constexpr double ounces_per_gallon_per_acre(double area_si) {
    return area_si / one_128th_acre_si;
}
static_assert(ounces_per_gallon_per_acre(one_128th_acre_si) == 1.0);

}  // namespace swathbook::calibration
