#include "reports/pdf/painter.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swathbook::reports::pdf {
namespace {

constexpr double hatch_step = 4.0;

double stroke_width(Stroke stroke) {
    switch (stroke) {
        case Stroke::none: return 0.0;
        case Stroke::thin: return 0.5;
        case Stroke::dashed: return 0.8;
        case Stroke::normal: return 0.9;
        case Stroke::heavy: return 2.0;
    }
    return 0.9;
}

}  // namespace

void Painter::use(Ink ink) {
    switch (ink) {
        case Ink::black: cairo_set_source_rgb(cairo_, 0.043, 0.047, 0.047); break;
        case Ink::quiet: cairo_set_source_rgb(cairo_, 0.27, 0.28, 0.28); break;
        case Ink::accent: cairo_set_source_rgb(cairo_, 0.0, 0.353, 0.188); break;
        case Ink::white: cairo_set_source_rgb(cairo_, 1, 1, 1); break;
    }
}

double Painter::words(std::string_view text, const Type& type, double x, double y, double width) {
    if (text.empty()) {
        return 0.0;
    }
    const TextLayout layout = typesetter_.lay_out(text, type, width);
    int height = 0;
    pango_layout_get_size(layout.get(), nullptr, &height);
    use(type.ink);
    cairo_move_to(cairo_, x, y);
    pango_cairo_show_layout(cairo_, layout.get());
    return static_cast<double>(height) / PANGO_SCALE;
}

void Painter::word_line(const Label& label, double scale) {
    const Type type{label.size * scale, label.strong};
    const double width = typesetter_.width_of(label.text, type);
    const double height = typesetter_.height_of(label.text, type, -1);
    double left = label.x;
    if (label.anchor == Anchor::middle) {
        left -= width / 2;
    } else if (label.anchor == Anchor::right) {
        left -= width;
    }
    const double top = label.y - height / 2;
    if (label.clear_behind) {
        use(Ink::white);
        cairo_rectangle(cairo_, left - 2, top, width + 4, height);
        cairo_fill(cairo_);
    }
    words(label.text, type, left, top, -1);
}

void Painter::stroke_path(Stroke stroke, Ink ink) {
    if (stroke == Stroke::none) {
        cairo_new_path(cairo_);
        return;
    }
    use(ink);
    cairo_set_line_width(cairo_, stroke_width(stroke));
    const double dash = 3.0;
    cairo_set_dash(cairo_, &dash, stroke == Stroke::dashed ? 1 : 0, 0);
    cairo_stroke(cairo_);
    cairo_set_dash(cairo_, nullptr, 0, 0);
}

void Painter::line(double x1, double y1, double x2, double y2, Stroke stroke, Ink ink) {
    cairo_move_to(cairo_, x1, y1);
    cairo_line_to(cairo_, x2, y2);
    stroke_path(stroke, ink);
}

void Painter::hatch(const Box& bounds, bool rising) {
    // Lines start on a common grid, so that neighbouring boxes do not shimmer.
    const double reach = bounds.width + bounds.height;
    const int count = static_cast<int>(reach / hatch_step) + 1;
    for (int i = 0; i < count; ++i) {
        const double x = bounds.x + i * hatch_step;
        if (rising) {
            cairo_move_to(cairo_, x - bounds.height, bounds.y + bounds.height);
            cairo_line_to(cairo_, x, bounds.y);
        } else {
            cairo_move_to(cairo_, x - bounds.height, bounds.y);
            cairo_line_to(cairo_, x, bounds.y + bounds.height);
        }
    }
    stroke_path(Stroke::thin, Ink::black);
}

void Painter::fill_path(Fill fill, const Box& bounds) {
    if (fill == Fill::none) {
        return;
    }
    if (fill == Fill::light || fill == Fill::solid) {
        if (fill == Fill::light) {
            cairo_set_source_rgb(cairo_, 0.92, 0.92, 0.92);
        } else {
            use(Ink::black);
        }
        cairo_fill_preserve(cairo_);
        return;
    }
    cairo_path_t* path = cairo_copy_path(cairo_);
    cairo_save(cairo_);
    cairo_clip(cairo_);
    if (fill != Fill::hatch_left) {
        hatch(bounds, true);
    }
    if (fill != Fill::hatch_right) {
        hatch(bounds, false);
    }
    cairo_restore(cairo_);
    cairo_append_path(cairo_, path);
    cairo_path_destroy(path);
}

void Painter::box(const Box& box) {
    cairo_rectangle(cairo_, box.x, box.y, box.width, box.height);
    fill_path(box.fill, box);
    stroke_path(box.stroke, Ink::black);
}

void Painter::tick_box(double x, double y) {
    cairo_rectangle(cairo_, x, y, tick_size, tick_size);
    stroke_path(Stroke::normal, Ink::black);
}

void Painter::shape(const Circle& circle) {
    cairo_new_sub_path(cairo_);
    cairo_arc(cairo_, circle.x, circle.y, circle.radius, 0, 2 * std::numbers::pi);
    fill_path(circle.fill, Box{circle.x - circle.radius, circle.y - circle.radius,
                               2 * circle.radius, 2 * circle.radius});
    stroke_path(circle.stroke, Ink::black);
}

void Painter::arrow_head(double x, double y, double from_x, double from_y) {
    const double angle = std::atan2(y - from_y, x - from_x);
    constexpr double length = 5.0;
    constexpr double spread = 0.42;
    cairo_move_to(cairo_, x, y);
    cairo_line_to(cairo_, x - length * std::cos(angle - spread),
                  y - length * std::sin(angle - spread));
    cairo_line_to(cairo_, x - length * std::cos(angle + spread),
                  y - length * std::sin(angle + spread));
    cairo_close_path(cairo_);
    use(Ink::black);
    cairo_fill(cairo_);
}

void Painter::shape(const Line& drawn) {
    line(drawn.x1, drawn.y1, drawn.x2, drawn.y2, drawn.stroke, Ink::black);
    if (drawn.arrow_at_start) {
        arrow_head(drawn.x1, drawn.y1, drawn.x2, drawn.y2);
    }
    if (drawn.arrow_at_end) {
        arrow_head(drawn.x2, drawn.y2, drawn.x1, drawn.y1);
    }
}

void Painter::drawing(const Drawing& drawing, double x, double y, double scale) {
    cairo_save(cairo_);
    cairo_translate(cairo_, x, y);
    cairo_scale(cairo_, scale, scale);
    for (const Shape& each : drawing.shapes) {
        std::visit([this](const auto& one) { shape(one); }, each);
    }
    cairo_restore(cairo_);
}

void Painter::severity_sign(Severity severity, double x, double y, double size) {
    const double middle = x + size / 2;
    const double half = y + size / 2;
    const bool filled = severity == Severity::stop;
    if (severity == Severity::note) {
        cairo_new_sub_path(cairo_);
        cairo_arc(cairo_, middle, half, size / 2, 0, 2 * std::numbers::pi);
    } else if (severity == Severity::advice) {
        cairo_rectangle(cairo_, x, y, size, size);
    } else if (severity == Severity::warning) {
        cairo_move_to(cairo_, middle, y);
        cairo_line_to(cairo_, x + size, y + size);
        cairo_line_to(cairo_, x, y + size);
        cairo_close_path(cairo_);
    } else {
        const double cut = size * 0.29;
        cairo_move_to(cairo_, x + cut, y);
        cairo_line_to(cairo_, x + size - cut, y);
        cairo_line_to(cairo_, x + size, y + cut);
        cairo_line_to(cairo_, x + size, y + size - cut);
        cairo_line_to(cairo_, x + size - cut, y + size);
        cairo_line_to(cairo_, x + cut, y + size);
        cairo_line_to(cairo_, x, y + size - cut);
        cairo_line_to(cairo_, x, y + cut);
        cairo_close_path(cairo_);
    }
    if (filled) {
        use(Ink::black);
        cairo_fill(cairo_);
    } else {
        stroke_path(Stroke::normal, Ink::black);
    }
    const Type mark{size * 0.72, true, filled ? Ink::white : Ink::black, Align::left};
    const char* letter = severity == Severity::note     ? "i"
                         : severity == Severity::advice ? "+"
                                                        : "!";
    const double width = typesetter_.width_of(letter, mark);
    const double height = typesetter_.height_of(letter, mark, -1);
    const double drop = severity == Severity::warning ? size * 0.1 : 0.0;
    words(letter, mark, middle - width / 2, half - height / 2 + drop, -1);
}

}  // namespace swathbook::reports::pdf
