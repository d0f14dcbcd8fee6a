#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

/// Figures as plain shapes in points (1/72 inch), y downwards from the top left corner. They know
/// nothing of the medium: reports/pdf draws them. Meaning is carried by pattern, position and
/// words; there is no colour here, so a black-and-white copy loses nothing.
namespace swathbook::reports {

enum class Fill : std::uint8_t {
    none,
    light,        ///< a pale grey
    solid,        ///< ink
    hatch_right,  ///< lines rising to the right
    hatch_left,   ///< lines falling to the right
    crossed,      ///< both
};

enum class Stroke : std::uint8_t { none, thin, normal, heavy, dashed };

enum class Anchor : std::uint8_t { left, middle, right };

struct Line {
    double x1 = 0, y1 = 0, x2 = 0, y2 = 0;
    Stroke stroke = Stroke::normal;
    bool arrow_at_start = false;
    bool arrow_at_end = false;
};

struct Box {
    double x = 0, y = 0, width = 0, height = 0;
    Fill fill = Fill::none;
    Stroke stroke = Stroke::normal;
};

struct Circle {
    double x = 0, y = 0, radius = 0;
    Fill fill = Fill::none;
    Stroke stroke = Stroke::normal;
};

/// One line of words. `y` is the middle of its height.
struct Label {
    double x = 0, y = 0;
    std::string text;
    Anchor anchor = Anchor::left;
    double size = 9.0;
    bool strong = false;
    bool clear_behind = false;  ///< a white ground, where the words cross lines
};

using Shape = std::variant<Line, Box, Circle, Label>;

struct Drawing {
    double width = 0, height = 0;
    std::vector<Shape> shapes;
};

}  // namespace swathbook::reports
