#pragma once

#include <string>
#include <vector>

/// Looks at a PDF through poppler's own programs (Debian package poppler-utils): an independent
/// reader judges what is on the page.
namespace swathbook::reports::probe {

struct Word {
    int page = 0;
    double left = 0, top = 0, right = 0, bottom = 0;
    std::string text;
};

struct PageSize {
    double width = 0, height = 0;
};

struct Font {
    std::string name;
    bool embedded = false;
    bool subset = false;
    bool has_unicode_map = false;
};

struct Pdf {
    std::vector<PageSize> pages;
    std::vector<Word> words;
    std::vector<Font> fonts;
    std::string text;       ///< pdftotext -layout
    std::string structure;  ///< pdfinfo -struct
    std::string info;       ///< pdfinfo
};

/// Also keeps the file in $SWATHBOOK_KEEP_PDF/name.pdf when that is set, to look at.
[[nodiscard]] Pdf look_at(const std::string& bytes, const std::string& name);

/// How many of the words lie outside the page less a margin.
[[nodiscard]] std::vector<std::string> words_outside(const Pdf& pdf, double margin);
/// Pairs of words that print over each other by more than a hair.
[[nodiscard]] std::vector<std::string> words_overlapping(const Pdf& pdf);
/// The text with runs of white space as one blank, for phrases that wrap.
[[nodiscard]] std::string flowed(const Pdf& pdf);
/// All words of one page, joined.
[[nodiscard]] std::string words_of_page(const Pdf& pdf, int page);

}  // namespace swathbook::reports::probe
