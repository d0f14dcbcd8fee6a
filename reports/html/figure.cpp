#include "reports/html/figure.hpp"

#include <cmath>

#include <fmt/format.h>

#include "reports/html/markup.hpp"

namespace swathbook::reports::html {
namespace {

std::string_view fill_word(Fill fill) {
    switch (fill) {
        case Fill::none: return "none";
        case Fill::light: return "#ebebeb";
        case Fill::solid: return "#000";
        case Fill::hatch_right: return "rising";
        case Fill::hatch_left: return "falling";
        case Fill::crossed: return "crossed";
    }
    return "none";
}

std::string fill_attribute(Fill fill, int number) {
    const std::string_view word = fill_word(fill);
    const bool is_pattern =
        fill == Fill::hatch_right || fill == Fill::hatch_left || fill == Fill::crossed;
    return is_pattern ? fmt::format("fill=\"url(#figure-{}-{})\"", number, word)
                      : fmt::format("fill=\"{}\"", word);
}

std::string_view stroke_attributes(Stroke stroke) {
    switch (stroke) {
        case Stroke::none: return "stroke=\"none\"";
        case Stroke::thin: return "stroke=\"#000\" stroke-width=\"0.5\"";
        case Stroke::normal: return "stroke=\"#000\" stroke-width=\"0.9\"";
        case Stroke::heavy: return "stroke=\"#000\" stroke-width=\"1.8\"";
        case Stroke::dashed: return "stroke=\"#000\" stroke-width=\"0.9\" stroke-dasharray=\"3 3\"";
    }
    return "";
}

/// The three hatches that boxes are told apart by, as tiles of 5 points.
std::string patterns(int number) {
    constexpr std::string_view rising = "<path d=\"M-1 1 1 -1M0 5 5 0M4 6 6 4\"";
    constexpr std::string_view falling = "<path d=\"M-1 4 1 6M0 0 5 5M4 -1 6 1\"";
    constexpr std::string_view look = " stroke=\"#000\" stroke-width=\"0.5\" fill=\"none\"/>";
    const auto tile = [number](std::string_view name, const std::string& paths) {
        return fmt::format(
            "<pattern id=\"figure-{}-{}\" width=\"5\" height=\"5\" "
            "patternUnits=\"userSpaceOnUse\">{}</pattern>",
            number, name, paths);
    };
    const std::string up = fmt::format("{}{}", rising, look);
    const std::string down = fmt::format("{}{}", falling, look);
    return "<defs>" + tile("rising", up) + tile("falling", down) + tile("crossed", up + down) +
           "</defs>";
}

/// An arrow head whose point is at the end of the line from (from_x, from_y).
std::string arrow_head(double x, double y, double from_x, double from_y) {
    constexpr double length = 4.565;  // 5 points along either side,
    constexpr double half = 2.039;    // 0.42 rad off the line: 5 cos 0.42 and 5 sin 0.42
    const double dx = x - from_x;
    const double dy = y - from_y;
    const double reach = std::sqrt(dx * dx + dy * dy);
    if (!(reach > 0.0)) {
        return {};
    }
    const double ux = dx / reach;
    const double uy = dy / reach;
    return fmt::format("<polygon points=\"{:.2f},{:.2f} {:.2f},{:.2f} {:.2f},{:.2f}\"/>", x, y,
                       x - length * ux + half * uy, y - length * uy - half * ux,
                       x - length * ux - half * uy, y - length * uy + half * ux);
}

std::string shape(const Line& line, int) {
    std::string out =
        fmt::format("<line x1=\"{:.2f}\" y1=\"{:.2f}\" x2=\"{:.2f}\" y2=\"{:.2f}\" {}/>", line.x1,
                    line.y1, line.x2, line.y2, stroke_attributes(line.stroke));
    if (line.arrow_at_start) {
        out += arrow_head(line.x1, line.y1, line.x2, line.y2);
    }
    if (line.arrow_at_end) {
        out += arrow_head(line.x2, line.y2, line.x1, line.y1);
    }
    return out;
}

std::string shape(const Box& box, int number) {
    return fmt::format("<rect x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\" {} {}/>",
                       box.x, box.y, box.width, box.height, fill_attribute(box.fill, number),
                       stroke_attributes(box.stroke));
}

std::string shape(const Circle& circle, int number) {
    return fmt::format("<circle cx=\"{:.2f}\" cy=\"{:.2f}\" r=\"{:.2f}\" {} {}/>", circle.x,
                       circle.y, circle.radius, fill_attribute(circle.fill, number),
                       stroke_attributes(circle.stroke));
}

std::string shape(const Label& label, int) {
    const std::string_view anchor = label.anchor == Anchor::left     ? "start"
                                    : label.anchor == Anchor::middle ? "middle"
                                                                     : "end";
    return fmt::format(
        "<text x=\"{:.2f}\" y=\"{:.2f}\" font-size=\"{:.2f}\" text-anchor=\"{}\" "
        "dominant-baseline=\"central\"{}{}>{}</text>",
        label.x, label.y, label.size, anchor, label.strong ? " font-weight=\"bold\"" : "",
        label.clear_behind
            ? " stroke=\"#fff\" stroke-width=\"4\" stroke-linejoin=\"round\" paint-order=\"stroke\""
            : "",
        escaped(label.text));
}

}  // namespace

std::string svg_of(const Drawing& drawing, int number, const std::string& name) {
    std::string out = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"{}\" "
        "viewBox=\"0 0 {:.2f} {:.2f}\" width=\"{:.2f}pt\" height=\"{:.2f}pt\">",
        escaped(name), drawing.width, drawing.height, drawing.width, drawing.height);
    out += patterns(number);
    for (const Shape& each : drawing.shapes) {
        out += std::visit([number](const auto& one) { return shape(one, number); }, each);
    }
    return out + "</svg>";
}

}  // namespace swathbook::reports::html
