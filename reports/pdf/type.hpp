#pragma once

#include "reports/document.hpp"

/// Sizes, greys and distances of the printed page in one place. All in points (1/72 inch).
namespace swathbook::reports::pdf {

struct Page {
    double width;
    double height;
    static constexpr double side = 54.0;  ///< left and right margin: room for a clip or two holes
    static constexpr double top = 46.0;
    static constexpr double bottom = 62.0;     ///< the footer stands inside it
    static constexpr double footer_up = 40.0;  ///< top of the footer line above the paper's edge

    [[nodiscard]] double text_width() const { return width - 2 * side; }
    [[nodiscard]] double text_height() const { return height - top - bottom; }
};

/// @source ISO 216 A4 is 210 mm x 297 mm; US letter is 8.5 in x 11 in (ANSI/ASME Y14.1)
[[nodiscard]] inline Page page_of(PaperSize size) {
    constexpr double points_per_millimetre = 72.0 / 25.4;
    if (size == PaperSize::a4) {
        return Page{210 * points_per_millimetre, 297 * points_per_millimetre};
    }
    return Page{8.5 * 72, 11 * 72};
}

enum class Ink : std::uint8_t { black, quiet, accent, white };

/// How one run of words is set. Figures are always of equal width, so that columns line up.
struct Type {
    double size = 10.0;
    bool strong = false;
    Ink ink = Ink::black;
    Align align = Align::left;
};

[[nodiscard]] inline Type type_of(Style style) {
    switch (style) {
        case Style::small: return {8.5, false, Ink::quiet};
        case Style::body: return {10.0};
        case Style::strong: return {10.0, true};
        case Style::large: return {14.0, true};
        case Style::amount: return {20.0, true};
    }
    return {};
}

inline constexpr Type title_type{20.0, true, Ink::accent};
inline constexpr Type second_title_type{12.0, false, Ink::quiet};
inline constexpr Type continued_type{11.0, true, Ink::accent};
inline constexpr Type heading_types[2] = {{13.0, true, Ink::accent}, {10.5, true, Ink::black}};
inline constexpr Type column_title_type{8.5, true, Ink::black};
inline constexpr Type name_type{8.5, false, Ink::quiet};
inline constexpr Type footer_type{8.0, false, Ink::quiet};

inline constexpr double gutter = 14.0;       ///< between columns
inline constexpr double cell_padding = 4.0;  ///< above and below words in a row
inline constexpr double tick_size = 9.5;

}  // namespace swathbook::reports::pdf
