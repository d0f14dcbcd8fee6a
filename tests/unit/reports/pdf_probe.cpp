#include "tests/unit/reports/pdf_probe.hpp"

#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <sstream>

#include <fmt/format.h>

namespace swathbook::reports::probe {
namespace {

std::string output_of(const std::string& command) {
    std::string output;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return output;
    }
    char buffer[4096];
    std::size_t count = 0;
    while ((count = fread(buffer, 1, sizeof buffer, pipe)) > 0) {
        output.append(buffer, count);
    }
    pclose(pipe);
    return output;
}

double attribute(const std::string& line, const std::string& name) {
    const std::size_t at = line.find(name + "=\"");
    return at == std::string::npos ? 0.0
                                   : std::strtod(line.c_str() + at + name.size() + 2, nullptr);
}

std::string unescaped(std::string text) {
    const std::pair<const char*, const char*> pairs[] = {
        {"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&apos;", "'"}, {"&amp;", "&"}};
    for (const auto& [from, to] : pairs) {
        for (std::size_t at = text.find(from); at != std::string::npos;
             at = text.find(from, at + 1)) {
            text.replace(at, std::string(from).size(), to);
        }
    }
    return text;
}

void read_boxes(const std::string& listing, Pdf& pdf) {
    std::istringstream lines(listing);
    for (std::string line; std::getline(lines, line);) {
        if (line.find("<page ") != std::string::npos) {
            pdf.pages.push_back({attribute(line, "width"), attribute(line, "height")});
        }
        const std::size_t end = line.find("</word>");
        if (line.find("<word ") != std::string::npos && end != std::string::npos) {
            const std::size_t start = line.find("\">") + 2;
            pdf.words.push_back({static_cast<int>(pdf.pages.size()), attribute(line, "xMin"),
                                 attribute(line, "yMin"), attribute(line, "xMax"),
                                 attribute(line, "yMax"),
                                 unescaped(line.substr(start, end - start))});
        }
    }
}

/// pdffonts prints fixed columns under a line of dashes.
void read_fonts(const std::string& listing, Pdf& pdf) {
    std::istringstream lines(listing);
    std::string header;
    std::string dashes;
    std::getline(lines, header);
    std::getline(lines, dashes);
    const std::size_t embedded = header.find("emb");
    const std::size_t subset = header.find("sub");
    const std::size_t unicode = header.find("uni");
    for (std::string line; embedded != std::string::npos && std::getline(lines, line);) {
        Font font;
        font.name = line.substr(0, line.find(' '));
        font.embedded = line.compare(embedded, 3, "yes") == 0;
        font.subset = line.compare(subset, 3, "yes") == 0;
        font.has_unicode_map = line.compare(unicode, 3, "yes") == 0;
        pdf.fonts.push_back(font);
    }
}

std::string kept_path(const std::string& name) {
    if (const char* folder = std::getenv("SWATHBOOK_KEEP_PDF")) {
        return std::string(folder) + "/" + name + ".pdf";
    }
    const char* temporary = std::getenv("TMPDIR");
    return fmt::format("{}/swathbook_{}_{}.pdf", temporary != nullptr ? temporary : "/tmp", name,
                       getpid());
}

}  // namespace

Pdf look_at(const std::string& bytes, const std::string& name) {
    const std::string path = kept_path(name);
    std::ofstream(path, std::ios::binary) << bytes;
    Pdf pdf;
    read_boxes(output_of("pdftotext -bbox '" + path + "' - 2>&1"), pdf);
    read_fonts(output_of("pdffonts '" + path + "' 2>&1"), pdf);
    pdf.text = output_of("pdftotext -layout '" + path + "' - 2>&1");
    pdf.structure = output_of("pdfinfo -struct '" + path + "' 2>&1");
    pdf.info = output_of("TZ=UTC pdfinfo '" + path + "' 2>&1");
    if (std::getenv("SWATHBOOK_KEEP_PDF") == nullptr) {
        std::remove(path.c_str());
    }
    return pdf;
}

std::vector<std::string> words_outside(const Pdf& pdf, double margin) {
    std::vector<std::string> outside;
    for (const Word& word : pdf.words) {
        const PageSize& page = pdf.pages[static_cast<std::size_t>(word.page - 1)];
        if (word.left < margin || word.right > page.width - margin || word.top < margin / 2 ||
            word.bottom > page.height - margin / 2) {
            outside.push_back(fmt::format("page {}: '{}' {:.1f},{:.1f} to {:.1f},{:.1f}", word.page,
                                          word.text, word.left, word.top, word.right, word.bottom));
        }
    }
    return outside;
}

std::vector<std::string> words_overlapping(const Pdf& pdf) {
    std::vector<std::string> found;
    for (std::size_t i = 0; i < pdf.words.size(); ++i) {
        for (std::size_t j = i + 1; j < pdf.words.size() && pdf.words[j].page == pdf.words[i].page;
             ++j) {
            const Word& a = pdf.words[i];
            const Word& b = pdf.words[j];
            const double across = std::min(a.right, b.right) - std::max(a.left, b.left);
            const double down = std::min(a.bottom, b.bottom) - std::max(a.top, b.top);
            // Boxes are as tall as the font's full height, which lines set solid may share a
            // little.
            const double shared = 0.35 * std::min(a.bottom - a.top, b.bottom - b.top);
            if (across > 0.5 && down > shared) {
                found.push_back(fmt::format("page {}: '{}' over '{}' at {:.0f},{:.0f}", a.page,
                                            a.text, b.text, a.left, a.top));
            }
        }
    }
    return found;
}

std::string flowed(const Pdf& pdf) {
    std::string joined;
    for (const Word& word : pdf.words) {
        joined += joined.empty() ? word.text : " " + word.text;
    }
    return joined;
}

std::string words_of_page(const Pdf& pdf, int page) {
    std::string joined;
    for (const Word& word : pdf.words) {
        if (word.page == page) {
            joined += joined.empty() ? word.text : " " + word.text;
        }
    }
    return joined;
}

}  // namespace swathbook::reports::probe
