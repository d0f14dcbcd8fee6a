#include "reports/figures/course_drawing.hpp"

namespace swathbook::reports {
namespace {

constexpr double full_width = 504.0;
constexpr double course_left = 165.0;
constexpr double course_right = 460.0;
constexpr double ground_top = 18.0;
constexpr double ground_bottom = 56.0;
constexpr double middle = (ground_top + ground_bottom) / 2;

void add_flag(Drawing& drawing, double x, const std::string& word) {
    drawing.shapes.push_back(Line{x, ground_top - 6, x, ground_bottom + 6, Stroke::heavy});
    drawing.shapes.push_back(Label{x, 5, word, Anchor::middle, 9, true});
}

/// A rig from above: a body and a boom across the swath, with its tips.
void add_sprayer(Drawing& drawing, double x) {
    drawing.shapes.push_back(Box{x - 26, middle - 9, 26, 18, Fill::light, Stroke::normal});
    drawing.shapes.push_back(Line{x, ground_top, x, ground_bottom, Stroke::normal});
    for (int tip = 0; tip <= 4; ++tip) {
        const double y = ground_top + 4 + tip * (ground_bottom - ground_top - 8) / 4.0;
        drawing.shapes.push_back(Circle{x, y, 2.0, Fill::solid, Stroke::none});
    }
}

}  // namespace

Drawing course_drawing(const CourseWords& words) {
    Drawing drawing{full_width, 77.0, {}};
    drawing.shapes.push_back(Box{course_left, ground_top, course_right - course_left,
                                 ground_bottom - ground_top, Fill::hatch_right, Stroke::thin});
    add_sprayer(drawing, 40.0);
    drawing.shapes.push_back(
        Line{48, middle, course_left - 8, middle, Stroke::dashed, false, true});
    drawing.shapes.push_back(
        Label{(48 + course_left - 8) / 2, middle - 9, words.rolling_start, Anchor::middle, 8.5});
    add_flag(drawing, course_left, words.start);
    add_flag(drawing, course_right, words.end);
    drawing.shapes.push_back(Line{course_left, 70, course_right, 70, Stroke::thin, true, true});
    drawing.shapes.push_back(
        Label{(course_left + course_right) / 2, 70, words.length, Anchor::middle, 10, true, true});
    const double width_x = course_right - 45;
    drawing.shapes.push_back(
        Line{width_x, ground_top, width_x, ground_bottom, Stroke::normal, true, true});
    drawing.shapes.push_back(Label{width_x, middle, words.width, Anchor::middle, 10, true, true});
    return drawing;
}

}  // namespace swathbook::reports
