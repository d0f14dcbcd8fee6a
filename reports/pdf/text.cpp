#include "reports/pdf/text.hpp"

#include <algorithm>
#include <array>

namespace swathbook::reports::pdf {
namespace {

// Debian packages fonts-inter, fonts-noto-core, fonts-dejavu-core, in order of preference.
constexpr std::array<const char*, 3> wanted_families = {"Inter", "Noto Sans", "DejaVu Sans"};

bool has_family(PangoFontMap* map, const char* wanted) {
    PangoFontFamily** families = nullptr;
    int count = 0;
    pango_font_map_list_families(map, &families, &count);
    const bool found = std::any_of(families, families + count, [wanted](PangoFontFamily* family) {
        return g_ascii_strcasecmp(pango_font_family_get_name(family), wanted) == 0;
    });
    g_free(static_cast<gpointer>(families));
    return found;
}

/// The families that are there, as Pango takes them: the first sets the words, the rest lend
/// letters it lacks.
std::string families_present(PangoFontMap* map) {
    std::string present;
    for (const char* wanted : wanted_families) {
        if (has_family(map, wanted)) {
            present += present.empty() ? wanted : std::string(",") + wanted;
        }
    }
    return present;
}

/// Pango wants valid UTF-8; control characters have no shape and would print as boxes.
std::string printable(std::string_view text) {
    gchar* valid = g_utf8_make_valid(text.data(), static_cast<gssize>(text.size()));
    std::string cleaned(valid);
    g_free(valid);
    for (char& letter : cleaned) {
        const auto byte = static_cast<unsigned char>(letter);
        if ((byte < 0x20 && letter != '\n') || byte == 0x7F) {
            letter = ' ';
        }
    }
    return cleaned;
}

PangoAlignment pango_alignment(Align align) {
    switch (align) {
        case Align::left: return PANGO_ALIGN_LEFT;
        case Align::middle: return PANGO_ALIGN_CENTER;
        case Align::right: return PANGO_ALIGN_RIGHT;
    }
    return PANGO_ALIGN_LEFT;
}

}  // namespace

Result<Typesetter> Typesetter::make() {
    FontMap map(pango_cairo_font_map_new());
    pango_cairo_font_map_set_resolution(PANGO_CAIRO_FONT_MAP(map.get()), 72.0);
    std::string family = families_present(map.get());
    if (family.empty()) {
        return fail(
            ErrorCode::unavailable, "",
            "None of the fonts Inter, Noto Sans or DejaVu Sans is installed, so nothing can be "
            "printed. Install the package fonts-inter.");
    }
    TextContext context(pango_font_map_create_context(map.get()));
    cairo_font_options_t* options = cairo_font_options_create();
    cairo_font_options_set_hint_style(options, CAIRO_HINT_STYLE_NONE);
    cairo_font_options_set_hint_metrics(options, CAIRO_HINT_METRICS_OFF);
    pango_cairo_context_set_font_options(context.get(), options);
    cairo_font_options_destroy(options);
    pango_context_set_round_glyph_positions(context.get(), FALSE);
    return Typesetter(std::move(map), std::move(context), std::move(family));
}

TextLayout Typesetter::lay_out(std::string_view text, const Type& type, double width) const {
    TextLayout layout(pango_layout_new(context_.get()));
    PangoFontDescription* description = pango_font_description_new();
    pango_font_description_set_family(description, family_.c_str());
    pango_font_description_set_absolute_size(description, type.size * PANGO_SCALE);
    pango_font_description_set_weight(description,
                                      type.strong ? PANGO_WEIGHT_SEMIBOLD : PANGO_WEIGHT_NORMAL);
    pango_layout_set_font_description(layout.get(), description);
    pango_font_description_free(description);

    PangoAttrList* attributes = pango_attr_list_new();
    pango_attr_list_insert(attributes, pango_attr_font_features_new("tnum=1, calt=0"));
    pango_layout_set_attributes(layout.get(), attributes);
    pango_attr_list_unref(attributes);

    const std::string words = printable(text);
    pango_layout_set_text(layout.get(), words.data(), static_cast<int>(words.size()));
    pango_layout_set_alignment(layout.get(), pango_alignment(type.align));
    pango_layout_set_wrap(layout.get(), PANGO_WRAP_WORD_CHAR);
    pango_layout_set_width(layout.get(), width < 0 ? -1 : static_cast<int>(width * PANGO_SCALE));
    return layout;
}

double Typesetter::height_of(std::string_view text, const Type& type, double width) const {
    const TextLayout layout = lay_out(text, type, width);
    int height = 0;
    pango_layout_get_size(layout.get(), nullptr, &height);
    return static_cast<double>(height) / PANGO_SCALE;
}

double Typesetter::width_of(std::string_view text, const Type& type) const {
    const TextLayout layout = lay_out(text, type, -1);
    int width = 0;
    pango_layout_get_size(layout.get(), &width, nullptr);
    return static_cast<double>(width) / PANGO_SCALE;
}

std::vector<std::string> Typesetter::pieces(const std::string& text, const Type& type, double width,
                                            double tallest) const {
    const TextLayout layout = lay_out(text, type, width);
    const std::string words = pango_layout_get_text(layout.get());
    std::vector<std::string> cut;
    std::size_t piece_start = 0;
    double piece_top = 0.0;
    PangoLayoutIter* line = pango_layout_get_iter(layout.get());
    do {
        PangoRectangle extents;
        pango_layout_iter_get_line_extents(line, nullptr, &extents);
        const double line_top = static_cast<double>(extents.y) / PANGO_SCALE;
        const double line_bottom = static_cast<double>(extents.y + extents.height) / PANGO_SCALE;
        const auto line_start = static_cast<std::size_t>(pango_layout_iter_get_index(line));
        if (line_bottom - piece_top > tallest && line_start > piece_start) {
            cut.push_back(words.substr(piece_start, line_start - piece_start));
            piece_start = line_start;
            piece_top = line_top;
        }
    } while (pango_layout_iter_next_line(line));
    pango_layout_iter_free(line);
    cut.push_back(words.substr(piece_start));
    for (std::string& piece : cut) {  // a break that was the wrap must not print as an empty line
        while (!piece.empty() && (piece.back() == '\n' || piece.back() == ' ')) {
            piece.pop_back();
        }
    }
    return cut;
}

}  // namespace swathbook::reports::pdf
