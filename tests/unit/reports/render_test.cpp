#include "reports/pdf/render.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/unit/reports/pdf_probe.hpp"

/// Judge: poppler (pdftotext, pdffonts, pdfinfo), an independent PDF reader.
namespace swathbook::reports {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

Document document_of(Sheet sheet, PaperSize paper = PaperSize::letter) {
    Document document;
    document.title = "Renderer trial";
    document.printed_at = "2031-04-05T06:07:08Z";
    document.paper = paper;
    document.footer = {"Page", "of", "Notebook trial", "Printed 2031-04-05", "Swathbook 0.1.0"};
    document.sheets.push_back(std::move(sheet));
    return document;
}

probe::Pdf printed(const Document& document, const std::string& name) {
    const Result<std::string> bytes = pdf::render(document);
    EXPECT_TRUE(bytes.has_value()) << (bytes ? "" : bytes.error().detail);
    return bytes ? probe::look_at(*bytes, name) : probe::Pdf{};
}

std::string many_words(int count) {
    std::string text;
    for (int i = 0; i < count; ++i) {
        text += "word" + std::to_string(i) + (i + 1 < count ? " " : "");
    }
    return text;
}

Sheet sheet_of_everything() {
    Sheet sheet{"Every block", "Todos los bloques", "Every block, continued", {}};
    sheet.add(Heading{"Facts", 1})
        .add(Facts{{{"Ground speed", "3.81 mph"}, {"Swath", "26 ft"}, {"To be written", ""}}, 3})
        .add(Text{"Año, señal, cigüeña, ¿cuánto?, ≤ ½ µ √ → × ÷ ± Ω", Style::strong})
        .add(Table{{{"Tip", 1}, {"Catch", 2, Align::right}},
                   {{{"1"}, {"52 fl oz"}}, {{"2"}, {"51 fl oz", true}}}})
        .add(Working{{{"Ground speed", "176 ft / 31.5 s × 0.6818", "3.81 mph", "unit arithmetic"}},
                     1,
                     "Source"})
        .add(Remark{Severity::note, "Note", "A note."})
        .add(Remark{Severity::advice, "Advice", "A piece of advice."})
        .add(Remark{Severity::warning, "Warning", "A warning with its source.", "Handbook, page 3"})
        .add(Remark{Severity::stop, "Stop", "Do not act on this."})
        .add(CheckList{{"First thing", "Second thing"}})
        .add(Notice{"Where you mix", {"Away from water.", "Label gloves on."}})
        .add(Blanks{
            {{"Start", "", "h", "", 0.25}, {"Name", "A. N. Other", "", "as on the licence", 0.75}}})
        .add(Formula{{{true, "", "ounces", 70},
                      {false, "×"},
                      {true, "340.3", "", 70},
                      {false, "="},
                      {true, "", "gal/ac", 80}}})
        .add(Figure{
            {200,
             60,
             {Box{0, 0, 80, 40, Fill::crossed}, Box{90, 0, 40, 40, Fill::hatch_left},
              Circle{160, 20, 15, Fill::light}, Line{0, 50, 190, 50, Stroke::dashed, true, true},
              Label{100, 50, "26 ft", Anchor::middle, 9, false, true}}},
            "A figure."})
        .add(Bilingual{
            "English",
            "Español",
            {{{{"Fill half", Style::body, true}}, {{"Llene la mitad", Style::body, true}}}}});
    return sheet;
}

TEST(Render, every_kind_of_block_stands_inside_the_margins_with_its_words) {
    for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
        const probe::Pdf pdf =
            printed(document_of(sheet_of_everything(), paper),
                    paper == PaperSize::a4 ? "every_block_a4" : "every_block_letter");
        EXPECT_THAT(probe::words_outside(pdf, 50), IsEmpty());
        EXPECT_THAT(probe::words_overlapping(pdf), IsEmpty());
        const std::string words = probe::flowed(pdf);
        for (const char* expected : {"Every block",
                                     "Todos los bloques",
                                     "3.81 mph",
                                     "Año, señal, cigüeña, ¿cuánto?",
                                     "≤ ½ µ √ → × ÷ ± Ω",
                                     "52 fl oz",
                                     "176 ft / 31.5 s × 0.6818",
                                     "A warning with its source.",
                                     "Handbook, page 3",
                                     "Do not act on this.",
                                     "Second thing",
                                     "Away from water.",
                                     "as on the licence",
                                     "gal/ac",
                                     "26 ft",
                                     "A figure.",
                                     "Español",
                                     "Llene la mitad",
                                     "Page 1 of",
                                     "Notebook trial",
                                     "Printed 2031-04-05",
                                     "Swathbook 0.1.0"}) {
            EXPECT_THAT(words, HasSubstr(expected));
        }
    }
}

TEST(Render, pages_have_the_size_of_the_paper_asked_for) {
    // US letter 8.5 in x 11 in; A4 210 mm x 297 mm (ISO 216).
    const probe::Pdf letter = printed(document_of(sheet_of_everything()), "size_letter");
    ASSERT_FALSE(letter.pages.empty());
    EXPECT_NEAR(letter.pages[0].width, 612.0, 0.01);
    EXPECT_NEAR(letter.pages[0].height, 792.0, 0.01);
    const probe::Pdf a4 = printed(document_of(sheet_of_everything(), PaperSize::a4), "size_a4");
    ASSERT_FALSE(a4.pages.empty());
    EXPECT_NEAR(a4.pages[0].width, 210 / 25.4 * 72, 0.01);
    EXPECT_NEAR(a4.pages[0].height, 297 / 25.4 * 72, 0.01);
}

TEST(Render, every_font_is_embedded_as_a_subset_with_a_map_back_to_letters) {
    const probe::Pdf pdf = printed(document_of(sheet_of_everything()), "fonts");
    ASSERT_FALSE(pdf.fonts.empty());
    for (const probe::Font& font : pdf.fonts) {
        EXPECT_TRUE(font.embedded) << font.name;
        EXPECT_TRUE(font.subset) << font.name;
        EXPECT_TRUE(font.has_unicode_map) << font.name;
    }
    EXPECT_THAT(pdf.fonts[0].name, HasSubstr("Inter"));
}

TEST(Render, the_file_is_tagged_and_carries_its_title_and_the_date_it_was_given) {
    const probe::Pdf pdf = printed(document_of(sheet_of_everything()), "tagged");
    EXPECT_THAT(pdf.info, HasSubstr("Tagged:          yes"));
    EXPECT_THAT(pdf.info, HasSubstr("Renderer trial"));
    EXPECT_THAT(pdf.info, HasSubstr("Apr  5 06:07:08 2031"));
    for (const char* tag : {"H1", "H2", "Table", "TH", "TD", "LI", "Figure"}) {
        EXPECT_THAT(pdf.structure, HasSubstr(tag));
    }
}

TEST(Render, a_long_table_goes_over_pages_with_its_head_repeated_and_no_row_lost) {
    Table table{{{"Row number", 1}, {"What it says", 3}}, {}};
    for (int i = 0; i < 150; ++i) {
        table.rows.push_back({{"row" + std::to_string(i)}, {many_words(i % 30 + 1)}});
    }
    Sheet sheet{"Long table", "", "Long table, continued", {}};
    sheet.add(table);
    const probe::Pdf pdf = printed(document_of(sheet), "long_table");
    ASSERT_GE(pdf.pages.size(), 4U);
    for (std::size_t page = 1; page <= pdf.pages.size(); ++page) {
        const std::string words = probe::words_of_page(pdf, static_cast<int>(page));
        EXPECT_THAT(words, HasSubstr("Row number"));
        EXPECT_THAT(words, HasSubstr("Page " + std::to_string(page) + " of " +
                                     std::to_string(pdf.pages.size())));
        if (page > 1) {
            EXPECT_THAT(words, HasSubstr("Long table, continued"));
        }
    }
    const std::string all = " " + probe::flowed(pdf) + " ";
    for (int i = 0; i < 150; ++i) {
        EXPECT_THAT(all, HasSubstr(" row" + std::to_string(i) + " "));
    }
    EXPECT_THAT(probe::words_outside(pdf, 50), IsEmpty());
    EXPECT_THAT(probe::words_overlapping(pdf), IsEmpty());
}

TEST(Render, words_taller_than_a_page_go_on_over_the_page_in_every_block) {
    const std::string huge = many_words(1500);
    Sheet sheet{"Tall", "", "Tall, continued", {}};
    sheet.add(Text{huge})
        .add(Facts{{{"Name", huge}}, 1})
        .add(Table{{{"A", 1}, {"B", 1}}, {{{"short"}, {huge}}}})
        .add(Working{{{"Text", huge, "result"}}, 1, "Source"})
        .add(Remark{Severity::stop, "Stop", huge})
        .add(CheckList{{huge}})
        .add(Notice{"Notice", {huge}})
        .add(Blanks{{{"Long value", huge}}})
        .add(Bilingual{"English", "Español", {{{{huge}}, {{huge}}}}});
    const probe::Pdf pdf = printed(document_of(sheet), "tall");
    EXPECT_THAT(probe::words_outside(pdf, 50), IsEmpty());
    EXPECT_THAT(probe::words_overlapping(pdf), IsEmpty());
    int last_words = 0;
    for (const probe::Word& word : pdf.words) {
        last_words += word.text == "word1499" ? 1 : 0;
    }
    EXPECT_EQ(last_words, 10);
}

TEST(Render, a_word_wider_than_its_column_is_broken_not_cut) {
    const std::string wide(300, 'W');
    Sheet sheet{"Broad", "", "", {}};
    sheet.add(Text{wide})
        .add(Facts{{{wide, wide}, {"b", "c"}}, 2})
        .add(Table{{{"A", 1}, {"B", 5}}, {{{wide}, {"x"}}}});
    const probe::Pdf pdf = printed(document_of(sheet), "wide");
    EXPECT_THAT(probe::words_outside(pdf, 50), IsEmpty());
    std::size_t letters = 0;
    for (const probe::Word& word : pdf.words) {
        letters += static_cast<std::size_t>(std::count(word.text.begin(), word.text.end(), 'W'));
    }
    EXPECT_EQ(letters, 4 * 300U);
}

TEST(Render, a_formula_wider_than_the_paper_goes_on_in_the_next_line) {
    Formula formula;
    for (int i = 0; i < 12; ++i) {
        formula.parts.push_back({true, "", "box", 120});
        formula.parts.push_back({false, "+"});
    }
    Sheet sheet{"Formula", "", "", {}};
    sheet.add(formula);
    const probe::Pdf pdf = printed(document_of(sheet), "formula");
    EXPECT_THAT(probe::words_outside(pdf, 50), IsEmpty());
}

TEST(Render, a_heading_never_stands_alone_at_the_foot_of_a_page) {
    for (int lines = 30; lines < 48; ++lines) {
        Sheet sheet{"Headings", "", "", {}};
        for (int i = 0; i < lines; ++i) {
            sheet.add(Text{"line " + std::to_string(i)});
        }
        sheet.add(Heading{"Heading here", 1}).add(Text{"Body under it"});
        const probe::Pdf pdf = printed(document_of(sheet), "heading");
        for (std::size_t page = 1; page <= pdf.pages.size(); ++page) {
            const std::string words = probe::words_of_page(pdf, static_cast<int>(page));
            EXPECT_EQ(words.find("Heading here") == std::string::npos,
                      words.find("Body under it") == std::string::npos)
                << lines << " lines, page " << page;
        }
    }
}

TEST(Render, the_same_document_gives_the_same_bytes) {
    const Document document = document_of(sheet_of_everything());
    const Result<std::string> once = pdf::render(document);
    const Result<std::string> again = pdf::render(document);
    ASSERT_TRUE(once.has_value() && again.has_value());
    EXPECT_EQ(*once, *again);
}

TEST(Render, text_that_is_not_proper_utf8_or_has_control_characters_still_prints) {
    Sheet sheet{"Odd bytes", "", "", {}};
    sheet.add(
        Text{std::string("before\xFF"
                         "after\x01 bell\0 end",
                         23)});
    const probe::Pdf pdf = printed(document_of(sheet), "odd_bytes");
    EXPECT_THAT(probe::flowed(pdf), HasSubstr("before"));
    EXPECT_THAT(probe::flowed(pdf), HasSubstr("end"));
}

TEST(Render, a_document_without_sheets_is_refused) {
    const Result<std::string> bytes = pdf::render(Document{});
    ASSERT_FALSE(bytes.has_value());
    EXPECT_EQ(bytes.error().code, ErrorCode::invalid_input);
    EXPECT_EQ(bytes.error().field, "sheets");
}

}  // namespace
}  // namespace swathbook::reports
