#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include <pango/pangocairo.h>

#include "core/base/result.hpp"
#include "reports/pdf/type.hpp"

namespace swathbook::reports::pdf {

struct ObjectRelease {
    void operator()(gpointer object) const { g_object_unref(object); }
};
using FontMap = std::unique_ptr<PangoFontMap, ObjectRelease>;
using TextContext = std::unique_ptr<PangoContext, ObjectRelease>;
using TextLayout = std::unique_ptr<PangoLayout, ObjectRelease>;

/// Sets words in the project's typeface and knows how much room they take. What is measured is what
/// is drawn: one Pango layout serves both, with hinting off, so nothing is ever wider on paper.
class Typesetter {
public:
    /// @errors unavailable when none of the wanted font families is installed
    [[nodiscard]] static Result<Typesetter> make();

    /// Words wrapped to a width; a word wider than that is broken rather than cut off.
    [[nodiscard]] TextLayout lay_out(std::string_view text, const Type& type, double width) const;
    [[nodiscard]] double height_of(std::string_view text, const Type& type, double width) const;
    [[nodiscard]] double width_of(std::string_view text, const Type& type) const;

    /// Cuts text at line ends into pieces no taller than a limit; one piece when it fits.
    [[nodiscard]] std::vector<std::string> pieces(const std::string& text, const Type& type,
                                                  double width, double tallest) const;

private:
    Typesetter(FontMap map, TextContext context, std::string family)
        : map_(std::move(map)), context_(std::move(context)), family_(std::move(family)) {}

    FontMap map_;
    TextContext context_;
    std::string family_;
};

}  // namespace swathbook::reports::pdf
