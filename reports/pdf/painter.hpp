#pragma once

#include <string_view>

#include <cairo.h>

#include "core/base/finding.hpp"
#include "reports/drawing.hpp"
#include "reports/pdf/text.hpp"

namespace swathbook::reports::pdf {

/// Puts words and shapes on the current page. Every shape says something by its form: no colour has
/// to be told apart.
class Painter {
public:
    Painter(cairo_t* cairo, const Typesetter& typesetter)
        : cairo_(cairo), typesetter_(typesetter) {}

    /// @return height taken
    double words(std::string_view text, const Type& type, double x, double y, double width);
    /// One line whose middle height is at y.
    void word_line(const Label& label, double scale);
    void line(double x1, double y1, double x2, double y2, Stroke stroke, Ink ink = Ink::quiet);
    void box(const Box& box);
    void tick_box(double x, double y);
    void severity_sign(Severity severity, double x, double y, double size);
    void drawing(const Drawing& drawing, double x, double y, double scale);

    void begin(const char* tag) { cairo_tag_begin(cairo_, tag, nullptr); }
    void end(const char* tag) { cairo_tag_end(cairo_, tag); }

private:
    void use(Ink ink);
    void stroke_path(Stroke stroke, Ink ink);
    void fill_path(Fill fill, const Box& bounds);
    void hatch(const Box& bounds, bool rising);
    void arrow_head(double x, double y, double from_x, double from_y);
    void shape(const Line& drawn);
    void shape(const Box& box) { this->box(box); }
    void shape(const Circle& circle);
    void shape(const Label& label) { word_line(label, 1.0); }

    cairo_t* cairo_;
    const Typesetter& typesetter_;
};

}  // namespace swathbook::reports::pdf
