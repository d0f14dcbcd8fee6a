#pragma once

#include <string>

#include "reports/drawing.hpp"

namespace swathbook::reports {

/// Words on the drawing, in the language of the sheet.
struct CourseWords {
    std::string rolling_start;
    std::string start;
    std::string end;
    std::string width;
    std::string length;
};

/// A calibration course from above: the rolling start, the two flags, the ground that the caught
/// tips serve, and the two distances to measure. Not to scale.
[[nodiscard]] Drawing course_drawing(const CourseWords& words);

}  // namespace swathbook::reports
