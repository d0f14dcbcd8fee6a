#include "reports/pdf/render.hpp"

#include <cairo-pdf.h>
#include <fmt/format.h>

#include "reports/pdf/blocks.hpp"
#include "reports/pdf/paginate.hpp"

namespace swathbook::reports::pdf {
namespace {

struct SurfaceRelease {
    void operator()(cairo_surface_t* surface) const { cairo_surface_destroy(surface); }
};
struct CairoRelease {
    void operator()(cairo_t* cairo) const { cairo_destroy(cairo); }
};

cairo_status_t collect(void* target, const unsigned char* bytes, unsigned int count) {
    static_cast<std::string*>(target)->append(reinterpret_cast<const char*>(bytes), count);
    return CAIRO_STATUS_SUCCESS;
}

/// A sheet's slabs and the pages they fall on.
struct LaidOutSheet {
    const Sheet* sheet = nullptr;
    std::vector<Slab> slabs;
    std::vector<PlacedPage> pages;
};

constexpr double continued_head_height = 24.0;

LaidOutSheet lay_out(const Sheet& sheet, const Page& page, const Typesetter& typesetter) {
    const double later_height = page.text_height() - continued_head_height;
    Room room{typesetter, page.text_width(), later_height};
    LaidOutSheet laid;
    laid.sheet = &sheet;
    laid.slabs = title_slabs(sheet, room);
    for (const Block& block : sheet.blocks) {
        for (Slab& slab : slabs_of(block, room)) {
            laid.slabs.push_back(std::move(slab));
        }
    }
    laid.pages = paginate(laid.slabs, page.text_height(), later_height);
    return laid;
}

void draw_footer(Painter& painter, const Footer& footer, const Page& page,
                 const Typesetter& typesetter, std::size_t number, std::size_t count) {
    const double y = page.height - Page::footer_up;
    const std::string place =
        fmt::format("{} {} {} {}", footer.page_word, number, footer.of_word, count);
    std::string left;
    for (const std::string* part : {&footer.notebook, &footer.printed, &footer.model_version}) {
        if (!part->empty()) {
            left += left.empty() ? *part : "   \u00B7   " + *part;
        }
    }
    painter.line(Page::side, y - 4, page.width - Page::side, y - 4, Stroke::thin);
    const double place_width = typesetter.width_of(place, footer_type);
    painter.words(place, footer_type, page.width - Page::side - place_width, y, -1);
    painter.words(left, footer_type, Page::side, y, page.text_width() - place_width - gutter);
}

void draw_page(Painter& painter, const PlacedPage& placed, const Sheet& sheet, const Page& page) {
    double top = Page::top;
    if (placed.continues) {
        painter.words(sheet.continued_title.empty() ? sheet.title : sheet.continued_title,
                      continued_type, Page::side, top, -1);
        painter.line(Page::side, top + 17, page.width - Page::side, top + 17, Stroke::thin);
        top += continued_head_height;
    }
    int open_group = 0;
    const char* open_tag = nullptr;
    for (const PlacedSlab& each : placed.slabs) {
        const Slab& slab = *each.slab;
        if (open_tag != nullptr && slab.group != open_group) {
            painter.end(open_tag);
            open_tag = nullptr;
        }
        if (slab.group_tag != nullptr && open_tag == nullptr) {
            painter.begin(slab.group_tag);
            open_tag = slab.group_tag;
            open_group = slab.group;
        }
        if (slab.tag != nullptr) {
            painter.begin(slab.tag);
        }
        slab.draw(painter, Page::side, top + each.y);
        if (slab.tag != nullptr) {
            painter.end(slab.tag);
        }
    }
    if (open_tag != nullptr) {
        painter.end(open_tag);
    }
}

void write_metadata(cairo_surface_t* surface, const Document& document) {
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_TITLE, document.title.c_str());
    cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATOR,
                                   document.footer.model_version.c_str());
    if (!document.printed_at.empty()) {
        cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_CREATE_DATE,
                                       document.printed_at.c_str());
        cairo_pdf_surface_set_metadata(surface, CAIRO_PDF_METADATA_MOD_DATE,
                                       document.printed_at.c_str());
    }
}

}  // namespace

Result<std::string> render(const Document& document) {
    if (document.sheets.empty()) {
        return fail(
            ErrorCode::invalid_input, "sheets",
            "There is nothing to print: the document has no sheets. Choose at least one sheet.");
    }
    SWATHBOOK_TRY(typesetter, Typesetter::make());
    const Page page = page_of(document.paper);
    std::vector<LaidOutSheet> sheets;
    std::size_t count = 0;
    sheets.reserve(document.sheets.size());
    for (const Sheet& sheet : document.sheets) {
        sheets.push_back(lay_out(sheet, page, typesetter));
        count += sheets.back().pages.size();
    }

    std::string bytes;
    const std::unique_ptr<cairo_surface_t, SurfaceRelease> surface(
        cairo_pdf_surface_create_for_stream(collect, &bytes, page.width, page.height));
    write_metadata(surface.get(), document);
    const std::unique_ptr<cairo_t, CairoRelease> cairo(cairo_create(surface.get()));
    Painter painter(cairo.get(), typesetter);
    std::size_t number = 0;
    painter.begin("Document");
    for (const LaidOutSheet& laid : sheets) {
        for (const PlacedPage& placed : laid.pages) {
            draw_page(painter, placed, *laid.sheet, page);
            draw_footer(painter, document.footer, page, typesetter, ++number, count);
            cairo_show_page(cairo.get());
        }
    }
    painter.end("Document");
    cairo_surface_finish(surface.get());
    if (const cairo_status_t status = cairo_status(cairo.get()); status != CAIRO_STATUS_SUCCESS) {
        return fail(
            ErrorCode::internal, "",
            fmt::format("The page could not be drawn: {}.", cairo_status_to_string(status)));
    }
    if (const cairo_status_t status = cairo_surface_status(surface.get());
        status != CAIRO_STATUS_SUCCESS) {
        return fail(
            ErrorCode::internal, "",
            fmt::format("The PDF could not be written: {}.", cairo_status_to_string(status)));
    }
    return bytes;
}

}  // namespace swathbook::reports::pdf
