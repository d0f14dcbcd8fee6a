#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "core/base/finding.hpp"
#include "core/base/notes.hpp"
#include "reports/drawing.hpp"

/// What stands on the printed pages, without saying how it is drawn. Builders in reports/packet
/// make a Document from answers; reports/pdf lays it out. Text is UTF-8 and already translated.
namespace swathbook::reports {

enum class PaperSize : std::uint8_t { letter, a4 };
enum class Language : std::uint8_t { english, spanish };

/// How a line of words looks. `amount` is what a gloved person reads at arm's length.
enum class Style : std::uint8_t { small, body, strong, large, amount };

enum class Align : std::uint8_t { left, middle, right };

/// Level 1 opens a part of a sheet, level 2 a group inside it. The sheet's own title is not a
/// Heading.
struct Heading {
    std::string text;
    int level = 1;
};

struct Text {
    std::string text;
    Style style = Style::body;
};

/// A name and its value. An empty value prints as a line to write on.
struct Fact {
    std::string name;
    std::string value;
    std::string note{};  ///< small, under the value
};

/// Facts set in one or more columns, read down each row from left to right.
struct Facts {
    std::vector<Fact> facts;
    int columns = 2;
    Style style = Style::body;
};

struct Column {
    std::string title;
    double share = 1.0;  ///< of the width, relative to the other columns
    Align align = Align::left;
};

struct Cell {
    std::string text;
    bool strong = false;
};

/// Rows may be of any number; a table that does not fit goes on over the page with its head
/// repeated. A row is never split.
struct Table {
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows;
    Style style = Style::body;
    double least_row_height = 0.0;  ///< points; for tables that are filled in by hand
    bool upright_rules = false;     ///< between columns, where hands write in cells
};

/// Working printed so that each line can be ticked off with a pencil.
struct Working {
    std::vector<Step> steps;
    int first_number = 1;
    std::string source_word;  ///< "Source" in the language of the sheet
};

/// A remark with its sign and severity word; the sign differs in shape, not in colour.
struct Remark {
    Severity severity = Severity::note;
    std::string word;  ///< "Warning" in the language of the sheet
    std::string text;
    std::string source{};
};

/// Things to do or to confirm, each with a box to tick.
struct CheckList {
    std::vector<std::string> items;
    Style style = Style::body;
};

/// A frame with a title and points in it, for cautions at the place of the act.
struct Notice {
    std::string title;
    std::vector<std::string> points;
};

/// A blank with its name above it, or the value already known printed on the line.
struct Blank {
    std::string name;
    std::string value{};
    std::string unit{};    ///< printed at the end of the line
    std::string remark{};  ///< small, under the line
    double share = 1.0;    ///< of a full row; 0.5 puts two side by side
};

struct Blanks {
    std::vector<Blank> blanks;
};

/// A formula to fill in by hand: boxes with a caption under each, and signs between them.
struct FormulaPart {
    bool is_box = false;
    std::string text;       ///< the sign, or what already stands in the box
    std::string caption{};  ///< under the box
    double width = 60.0;    ///< of the box, points
};

struct Formula {
    std::vector<FormulaPart> parts;
};

struct Figure {
    Drawing drawing;
    std::string caption;
};

struct Side {
    std::string text;
    Style style = Style::body;
    bool tick_box = false;
    bool inset = false;  ///< indented under the line before
};

/// One row of two columns whose tops stay level.
struct BilingualRow {
    std::vector<Side> left;
    std::vector<Side> right;
    bool rule_above = false;
};

struct Bilingual {
    std::string left_title;   ///< "English"
    std::string right_title;  ///< "Español"
    std::vector<BilingualRow> rows;
};

struct Gap {
    double points = 8.0;
};

using Content = std::variant<Heading, Text, Facts, Table, Working, Remark, CheckList, Notice,
                             Blanks, Formula, Figure, Bilingual, Gap>;

struct Block {
    Content content;
    bool keep_with_next = false;
};

/// A sheet starts on a new page and can be handed out by itself.
struct Sheet {
    std::string title;
    std::string second_title{};     ///< the same in the other language, or a subtitle
    std::string continued_title{};  ///< "Job sheet, continued": head of its further pages
    std::vector<Block> blocks;

    template <class T>
    Sheet& add(T content, bool keep_with_next = false) {
        blocks.push_back(Block{Content(std::move(content)), keep_with_next});
        return *this;
    }
};

/// What every page carries at its foot.
struct Footer {
    std::string page_word = "Page";
    std::string of_word = "of";
    std::string notebook;       ///< "Notebook 7F3A"; empty for blank forms
    std::string printed;        ///< "Printed 2026-05-14"
    std::string model_version;  ///< "Swathbook 0.1.0"
};

struct Document {
    std::string title;
    std::string language = "en";
    std::string printed_at;  ///< RFC 3339, for the file's own date; never taken from a clock here
    PaperSize paper = PaperSize::letter;
    Footer footer;
    std::vector<Sheet> sheets;
};

}  // namespace swathbook::reports
