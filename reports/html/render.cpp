#include "reports/html/render.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "reports/html/figure.hpp"
#include "reports/html/markup.hpp"

namespace swathbook::reports::html {
namespace {

std::string_view word_of(Style style) {
    switch (style) {
        case Style::small: return "small";
        case Style::body: return "body";
        case Style::strong: return "strong";
        case Style::large: return "large";
        case Style::amount: return "amount";
    }
    return "body";
}

std::string_view word_of(Align align) {
    return align == Align::left ? "" : align == Align::middle ? "middle" : "right";
}

constexpr std::string_view box_to_tick = "<span class=\"tick\"></span>";

/// Writes the blocks of one document.
class Writer {
public:
    explicit Writer(Markup& out) : out_(out) {}

    void sheet(const Sheet& sheet);

private:
    void write(const Heading& heading) {
        out_.element(heading.level == 1 ? "h2" : "h3", {}, heading.text);
    }
    void write(const Text& text) { out_.element("p", word_of(text.style), text.text); }
    void write(const Facts& facts);
    void write(const Table& table);
    void write(const Working& working);
    void write(const Remark& remark);
    void write(const CheckList& list);
    void write(const Notice& notice);
    void write(const Blanks& blanks);
    void write(const Formula& formula);
    void write(const Figure& figure);
    void write(const Bilingual& pair);
    void write(const Gap&) {}
    void side(const std::vector<Side>& lines);
    void optional(std::string_view tag, std::string_view of_class, const std::string& words) {
        if (!words.empty()) {
            out_.element(tag, of_class, words);
        }
    }

    Markup& out_;
    int figures_ = 0;
};

void Writer::write(const Facts& facts) {
    out_.open("dl", fmt::format("facts columns-{} {}", std::clamp(facts.columns, 1, 4),
                                word_of(facts.style)));
    for (const Fact& fact : facts.facts) {
        out_.open("div");
        out_.element("dt", {}, fact.name);
        out_.element("dd", fact.value.empty() ? "to-write" : "", fact.value);
        optional("dd", "note", fact.note);
        out_.close("div");
    }
    out_.close("dl");
}

void Writer::write(const Table& table) {
    out_.open("table", fmt::format("{}{}{}", word_of(table.style),
                                   table.least_row_height > 0.0 ? " to-write" : "",
                                   table.upright_rules ? " ruled" : ""));
    out_.open("thead");
    out_.open("tr");
    for (const Column& column : table.columns) {
        out_.element("th", word_of(column.align), column.title);
    }
    out_.close("tr");
    out_.close("thead");
    out_.open("tbody");
    for (const std::vector<Cell>& cells : table.rows) {
        out_.open("tr");
        for (std::size_t i = 0; i < std::min(cells.size(), table.columns.size()); ++i) {
            const std::string_view align = word_of(table.columns[i].align);
            const std::string_view between = align.empty() || !cells[i].strong ? "" : " ";
            out_.element("td",
                         fmt::format("{}{}{}", align, between, cells[i].strong ? "strong" : ""),
                         cells[i].text);
        }
        out_.close("tr");
    }
    out_.close("tbody");
    out_.close("table");
}

void Writer::write(const Working& working) {
    out_.open("table", "working");
    out_.open("tbody");
    int number = working.first_number;
    for (const Step& step : working.steps) {
        out_.open("tr");
        out_.raw("<td>");
        out_.raw(box_to_tick);
        out_.raw("</td>");
        out_.element("td", "number", fmt::format("{}", number++));
        out_.element("td", {}, step.text);
        out_.open("td");
        out_.text(step.expression);
        if (!step.source.empty()) {
            out_.element("p", "source", working.source_word + ": " + step.source);
        }
        out_.close("td");
        out_.element("td", "right strong", step.result);
        out_.close("tr");
    }
    out_.close("tbody");
    out_.close("table");
}

void Writer::write(const Remark& remark) {
    out_.open("div", fmt::format("remark {}", word_of(remark.severity)));
    out_.element("p", "strong", remark.word);
    out_.element("p", {}, remark.text);
    optional("p", "source", remark.source);
    out_.close("div");
}

void Writer::write(const CheckList& list) {
    out_.open("ul", fmt::format("checks {}", word_of(list.style)));
    for (const std::string& item : list.items) {
        out_.open("li");
        out_.raw(box_to_tick);
        out_.element("span", {}, item);
        out_.close("li");
    }
    out_.close("ul");
}

void Writer::write(const Notice& notice) {
    out_.open("div", "notice");
    out_.element("p", "strong", notice.title);
    if (!notice.points.empty()) {
        out_.open("ul");
        for (const std::string& point : notice.points) {
            out_.element("li", {}, point);
        }
        out_.close("ul");
    }
    out_.close("div");
}

void Writer::write(const Blanks& blanks) {
    out_.open("div", "blanks");
    for (const Blank& blank : blanks.blanks) {
        const int twelfths =
            static_cast<int>(std::floor(std::clamp(blank.share, 0.1, 1.0) * 12.0 + 0.5));
        out_.open("div", fmt::format("blank twelfths-{}", twelfths));
        out_.element("span", "name", blank.name);
        out_.open("span", "line");
        out_.element("span", "value", blank.value);
        optional("span", "unit", blank.unit);
        out_.close("span");
        optional("span", "remark-under", blank.remark);
        out_.close("div");
    }
    out_.close("div");
}

void Writer::write(const Formula& formula) {
    out_.open("div", "formula");
    for (const FormulaPart& part : formula.parts) {
        if (!part.is_box) {
            out_.element("span", "sign", part.text);
            continue;
        }
        out_.open("span", "part");
        out_.element("span", "to-fill", part.text);
        out_.element("span", "caption", part.caption);
        out_.close("span");
    }
    out_.close("div");
}

void Writer::write(const Figure& figure) {
    out_.open("figure");
    out_.raw(svg_of(figure.drawing, ++figures_, figure.caption));
    optional("figcaption", {}, figure.caption);
    out_.close("figure");
}

void Writer::side(const std::vector<Side>& lines) {
    for (const Side& line : lines) {
        out_.open("p", fmt::format("{}{}{}", word_of(line.style), line.tick_box ? " with-tick" : "",
                                   line.inset ? " inset" : ""));
        if (line.tick_box) {
            out_.raw(box_to_tick);
        }
        out_.element("span", {}, line.text);
        out_.close("p");
    }
}

void Writer::write(const Bilingual& pair) {
    out_.open("table", "bilingual");
    out_.open("thead");
    out_.open("tr");
    out_.element("th", {}, pair.left_title);
    out_.element("th", {}, pair.right_title);
    out_.close("tr");
    out_.close("thead");
    out_.open("tbody");
    for (const BilingualRow& row : pair.rows) {
        out_.open("tr", row.rule_above ? "rule-above" : "");
        out_.raw("<td lang=\"en\">");
        side(row.left);
        out_.raw("</td><td lang=\"es\">");
        side(row.right);
        out_.raw("</td>");
        out_.close("tr");
    }
    out_.close("tbody");
    out_.close("table");
}

void Writer::sheet(const Sheet& sheet) {
    out_.open("section", "sheet");
    out_.element("h1", {}, sheet.title);
    optional("p", "second-title", sheet.second_title);
    for (const Block& block : sheet.blocks) {
        std::visit([this](const auto& content) { write(content); }, block.content);
    }
    out_.close("section");
}

}  // namespace

std::string fragment(const Document& document) {
    Markup out;
    out.raw(fmt::format("<article class=\"paper {}\" lang=\"{}\">",
                        document.paper == PaperSize::a4 ? "a4" : "letter",
                        escaped(document.language)));
    Writer writer(out);
    for (const Sheet& sheet : document.sheets) {
        writer.sheet(sheet);
    }
    out.open("footer");
    for (const std::string* part :
         {&document.footer.notebook, &document.footer.printed, &document.footer.model_version}) {
        if (!part->empty()) {
            out.element("p", {}, *part);
        }
    }
    out.close("footer");
    out.close("article");
    return out.take();
}

std::string page(const Document& document) {
    return fmt::format(
        "<!DOCTYPE html>\n<html lang=\"{}\"><head><meta charset=\"utf-8\"/>"
        "<meta name=\"viewport\" content=\"width=device-width\"/><title>{}</title><style>\n{}"
        "</style></head><body>{}</body></html>\n",
        escaped(document.language), escaped(document.title), paper_css(), fragment(document));
}

}  // namespace swathbook::reports::html
