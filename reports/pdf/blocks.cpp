#include "reports/pdf/blocks.hpp"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <utility>

namespace swathbook::reports::pdf {
namespace {

using Slabs = std::vector<Slab>;

void append(Slabs& to, Slabs more) {
    std::move(more.begin(), more.end(), std::back_inserter(to));
}

Slab gap_of(double points) {
    Slab gap;
    gap.height = points;
    gap.is_gap = true;
    gap.tag = nullptr;
    gap.draw = [](Painter&, double, double) {};
    return gap;
}

Row words_row(std::string text, const Type& type, const Room& room) {
    Row row;
    row.width = room.width;
    row.stacks = {Stack{0, room.width, {Run{std::move(text), type}}}};
    return row;
}

/// Marks neighbouring slabs as one list or table, so that a reader of the tagged file meets them
/// together; short ones also stay on one page.
void group(Slabs& slabs, std::size_t first, const char* tag, Room& room, double keep_whole_below) {
    const int number = room.next_group++;
    double height = 0.0;
    for (std::size_t i = first; i < slabs.size(); ++i) {
        slabs[i].group_tag = tag;
        slabs[i].group = number;
        height += slabs[i].height;
    }
    if (height <= keep_whole_below) {
        for (std::size_t i = first; i + 1 < slabs.size(); ++i) {
            slabs[i].keep_with_next = true;
        }
    }
}

double short_enough(const Room& room) {
    return room.tallest * 0.4;
}

// ---------------------------------------------------------------- words

Slabs set(const Heading& heading, Room& room) {
    const int level = heading.level == 1 ? 0 : 1;
    Row row = words_row(heading.text, heading_types[level], room);
    row.space_above = level == 0 ? 11.0 : 8.0;
    row.space_below = 3.0;
    row.tag = level == 0 ? "H2" : "H3";
    Slabs slabs = slabs_of(row, room.typesetter, room.tallest);
    for (Slab& slab : slabs) {
        slab.keep_with_next = true;
    }
    return slabs;
}

Slabs set(const Text& text, Room& room) {
    Row row = words_row(text.text, type_of(text.style), room);
    row.space_above = 2.0;
    row.space_below = 3.0;
    return slabs_of(row, room.typesetter, room.tallest);
}

Slabs set(const Gap& gap, Room&) {
    Slabs slabs;
    slabs.push_back(gap_of(gap.points));
    return slabs;
}

// ---------------------------------------------------------------- facts, blanks

Slabs set(const Facts& facts, Room& room) {
    const auto columns = static_cast<std::size_t>(std::max(1, facts.columns));
    const double width =
        (room.width - gutter * static_cast<double>(columns - 1)) / static_cast<double>(columns);
    Slabs slabs;
    for (std::size_t first = 0; first < facts.facts.size(); first += columns) {
        Row row;
        row.width = room.width;
        row.space_above = 3.0;
        row.space_below = 4.0;
        for (std::size_t i = first; i < std::min(first + columns, facts.facts.size()); ++i) {
            const Fact& fact = facts.facts[i];
            Stack stack;
            stack.x = static_cast<double>(i - first) * (width + gutter);
            stack.width = width;
            stack.runs = {Run{fact.name, name_type}, Run{fact.value, type_of(facts.style)}};
            stack.line_to_write_on = fact.value.empty();
            if (!fact.note.empty()) {
                stack.runs.push_back(Run{fact.note, type_of(Style::small)});
            }
            row.stacks.push_back(std::move(stack));
        }
        append(slabs, slabs_of(row, room.typesetter, room.tallest));
    }
    group(slabs, 0, nullptr, room, short_enough(room));
    return slabs;
}

constexpr double writing_height = 19.0;

/// One row of blanks whose lines stand level: names above, values and units on the line, remarks
/// under it.
Slab blank_row(const std::vector<std::pair<Blank, std::pair<double, double>>>& placed,
               const Room& room) {
    double names = 0.0;
    double values = writing_height;
    double remarks = 0.0;
    for (const auto& [blank, place] : placed) {
        const double unit = room.typesetter.width_of(blank.unit, type_of(Style::body));
        names = std::max(names, room.typesetter.height_of(blank.name, name_type, place.second));
        values = std::max(values, room.typesetter.height_of(blank.value, type_of(Style::body),
                                                            place.second - unit - 4));
        if (!blank.remark.empty()) {
            remarks = std::max(remarks, room.typesetter.height_of(
                                            blank.remark, type_of(Style::small), place.second));
        }
    }
    Slab slab;
    slab.height = names + values + remarks + 9.0;
    slab.draw = [placed, names, values, &typesetter = room.typesetter](Painter& painter, double x,
                                                                       double y) {
        for (const auto& [blank, place] : placed) {
            const double left = x + place.first;
            const double line_y = y + names + values;
            const double unit = typesetter.width_of(blank.unit, type_of(Style::body));
            const double value_height =
                typesetter.height_of(blank.value, type_of(Style::body), place.second - unit - 4);
            painter.words(blank.name, name_type, left, y, place.second);
            painter.words(blank.value, type_of(Style::body), left, line_y - value_height - 1,
                          place.second - unit - 4);
            painter.words(blank.unit, type_of(Style::body), left + place.second - unit, line_y - 14,
                          -1);
            painter.line(left, line_y, left + place.second, line_y, Stroke::thin);
            painter.words(blank.remark, type_of(Style::small), left, line_y + 2, place.second);
        }
    };
    return slab;
}

Slabs set(const Blanks& blanks, Room& room) {
    Slabs slabs;
    std::vector<std::pair<Blank, std::pair<double, double>>> placed;
    double used = 0.0;
    const auto finish_row = [&] {
        if (!placed.empty()) {
            slabs.push_back(blank_row(placed, room));
            placed.clear();
        }
        used = 0.0;
    };
    for (const Blank& blank : blanks.blanks) {
        const double share = std::clamp(blank.share, 0.1, 1.0);
        if (used + share > 1.001) {
            finish_row();
        }
        const double x = used * (room.width + gutter);
        const double width = share * (room.width + gutter) - gutter;
        const double value_room =
            width - room.typesetter.width_of(blank.unit, type_of(Style::body)) - 4;
        if (room.typesetter.height_of(blank.value, type_of(Style::body), value_room) >
            room.tallest / 2) {
            // Too long for a line of a form: it stands as a text of its own, which can go over the
            // page.
            finish_row();
            append(slabs, set(Facts{{Fact{blank.name, blank.value + " " + blank.unit}}, 1}, room));
            continue;
        }
        placed.emplace_back(blank, std::pair{x, width});
        used += share;
    }
    finish_row();
    return slabs;
}

// ---------------------------------------------------------------- tables

struct Placed {
    double x;
    double width;
};

std::vector<Placed> place_columns(const std::vector<Column>& columns, const Room& room) {
    const double total =
        std::accumulate(columns.begin(), columns.end(), 0.0,
                        [](double sum, const Column& column) { return sum + column.share; });
    const double between = 11.0;
    const double width = room.width - between * static_cast<double>(columns.size() - 1);
    std::vector<Placed> placed;
    double x = 0.0;
    for (const Column& column : columns) {
        const double own = width * column.share / std::max(total, 1e-9);
        placed.push_back({x, own});
        x += own + between;
    }
    return placed;
}

std::vector<double> rules_between(const std::vector<Placed>& placed) {
    std::vector<double> rules;
    for (std::size_t i = 1; i < placed.size(); ++i) {
        rules.push_back((placed[i].x + placed[i - 1].x + placed[i - 1].width) / 2);
    }
    return rules;
}

Row table_row(const Table& table, const std::vector<Cell>& cells, const std::vector<Placed>& placed,
              const Room& room) {
    Row row;
    row.width = room.width;
    row.tag = "TR";
    row.rule_below = Stroke::thin;
    row.least_height = table.least_row_height;
    if (table.upright_rules) {
        row.upright_rules = rules_between(placed);
    }
    for (std::size_t i = 0; i < std::min(cells.size(), placed.size()); ++i) {
        Type type = type_of(table.style);
        type.ink = Ink::black;
        type.align = table.columns[i].align;
        type.strong = type.strong || cells[i].strong;
        row.stacks.push_back(Stack{placed[i].x, placed[i].width, {Run{cells[i].text, type}}, "TD"});
    }
    return row;
}

Slabs set(const Table& table, Room& room) {
    const std::vector<Placed> placed = place_columns(table.columns, room);
    Row head;
    head.width = room.width;
    head.tag = "TR";
    head.rule_below = Stroke::normal;
    for (std::size_t i = 0; i < placed.size(); ++i) {
        Type type = column_title_type;
        type.align = table.columns[i].align;
        head.stacks.push_back(
            Stack{placed[i].x, placed[i].width, {Run{table.columns[i].title, type}}, "TH"});
    }
    Slabs slabs = slabs_of(head, room.typesetter, room.tallest);
    for (Slab& slab : slabs) {
        slab.keep_with_next = true;
    }
    const auto repeated = std::make_shared<const Slab>(slabs.front());
    for (const std::vector<Cell>& cells : table.rows) {
        Slabs row = slabs_of(table_row(table, cells, placed, room), room.typesetter,
                             room.tallest - repeated->height);
        for (Slab& slab : row) {
            slab.head = repeated;
        }
        append(slabs, std::move(row));
    }
    group(slabs, 0, "Table", room, short_enough(room));
    slabs.push_back(gap_of(6.0));
    return slabs;
}

// ---------------------------------------------------------------- working, remarks, lists

/// One line of working: what, how, how much.
Row working_row(const Working& working, const Step& step, int number, const Room& room) {
    const double what_x = tick_indent + 20.0;
    const double what_width = room.width * 0.30;
    const double how_x = what_x + what_width + gutter;
    const double result_width = room.width * 0.22;
    const double how_width = room.width - how_x - result_width - gutter;
    Row row;
    row.width = room.width;
    row.tag = "LI";
    row.rule_below = Stroke::thin;
    Stack tick;
    tick.width = tick_indent;
    tick.tick_box = true;
    std::vector<Run> how = {Run{step.expression, type_of(Style::body)}};
    if (!step.source.empty()) {
        how.push_back(Run{working.source_word + ": " + step.source, Type{7.5, false, Ink::quiet}});
    }
    Type result = type_of(Style::strong);
    result.align = Align::right;
    row.stacks = {std::move(tick),
                  Stack{tick_indent, 18.0, {Run{std::to_string(number), name_type}}},
                  Stack{what_x, what_width, {Run{step.text, type_of(Style::body)}}},
                  Stack{how_x, how_width, std::move(how)},
                  Stack{room.width - result_width, result_width, {Run{step.result, result}}}};
    return row;
}

Slabs set(const Working& working, Room& room) {
    Slabs slabs;
    int number = working.first_number;
    for (const Step& step : working.steps) {
        append(slabs,
               slabs_of(working_row(working, step, number++, room), room.typesetter, room.tallest));
    }
    group(slabs, 0, "L", room, 0.0);
    slabs.push_back(gap_of(6.0));
    return slabs;
}

Slabs set(const Remark& remark, Room& room) {
    Row row;
    row.width = room.width;
    row.space_above = 5.0;
    row.space_below = 5.0;
    Stack stack;
    stack.x = 8.0;
    stack.width = room.width - 16.0;
    stack.sign = true;
    stack.severity = remark.severity;
    stack.runs = {Run{remark.word, type_of(Style::strong)}, Run{remark.text, type_of(Style::body)}};
    if (!remark.source.empty()) {
        stack.runs.push_back(Run{remark.source, Type{7.5, false, Ink::quiet}});
    }
    row.stacks = {std::move(stack)};
    const bool loud = remark.severity == Severity::warning || remark.severity == Severity::stop;
    row.frame_left = true;
    row.frame_right = row.frame_top = row.frame_bottom = loud;
    row.shaded = remark.severity == Severity::stop;
    Slabs slabs = slabs_of(row, room.typesetter, room.tallest);
    slabs.push_back(gap_of(5.0));
    return slabs;
}

Slabs set(const CheckList& list, Room& room) {
    Slabs slabs;
    for (const std::string& item : list.items) {
        Row row = words_row(item, type_of(list.style), room);
        row.stacks.front().tick_box = true;
        row.space_above = 3.0;
        row.space_below = 3.0;
        row.tag = "LI";
        append(slabs, slabs_of(row, room.typesetter, room.tallest));
    }
    group(slabs, 0, "L", room, short_enough(room));
    slabs.push_back(gap_of(4.0));
    return slabs;
}

Slabs set(const Notice& notice, Room& room) {
    const double inset = 9.0;
    std::vector<Run> lines = {Run{notice.title, type_of(Style::strong)}};
    for (const std::string& point : notice.points) {
        lines.push_back(Run{"\u2022 " + point, type_of(Style::body)});
    }
    Slabs slabs;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        Row row;
        row.width = room.width;
        row.stacks = {Stack{inset, room.width - 2 * inset, {lines[i]}}};
        row.frame_left = row.frame_right = true;
        row.frame_top = i == 0;
        row.frame_bottom = i + 1 == lines.size();
        row.space_above = row.frame_top ? 7.0 : 1.5;
        row.space_below = row.frame_bottom ? 8.0 : 1.5;
        row.tag = i == 0 ? "P" : "LI";
        append(slabs, slabs_of(row, room.typesetter, room.tallest));
    }
    group(slabs, 0, "L", room, short_enough(room));
    slabs.push_back(gap_of(7.0));
    return slabs;
}

// ---------------------------------------------------------------- formula, figure

constexpr double formula_box_height = 26.0;
constexpr double sign_padding = 6.0;

double natural_width(const FormulaPart& part, const Room& room) {
    if (part.is_box) {
        return std::min(part.width, room.width);
    }
    return room.typesetter.width_of(part.text, type_of(Style::large)) + 2 * sign_padding;
}

double draw_formula_part(Painter& painter, const FormulaPart& part, double width,
                         const Typesetter& typesetter, double x, double y) {
    const Type words = type_of(part.is_box ? Style::strong : Style::large);
    if (part.is_box) {
        painter.box(Box{x, y, width, formula_box_height});
        Type small = type_of(Style::small);
        small.align = Align::middle;
        painter.words(part.caption, small, x, y + formula_box_height + 3, width);
    }
    const double height = typesetter.height_of("0", words, -1);
    const double words_width = typesetter.width_of(part.text, words);
    painter.words(part.text, words, x + (width - words_width) / 2,
                  y + (formula_box_height - height) / 2, -1);
    return width;
}

/// One line of a formula: as many parts as fit the paper.
Slab formula_line(const std::vector<FormulaPart>& parts, const std::vector<double>& widths,
                  const Room& room) {
    double captions = 0.0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (!parts[i].caption.empty()) {
            captions = std::max(captions, room.typesetter.height_of(
                                              parts[i].caption, type_of(Style::small), widths[i]));
        }
    }
    Slab slab;
    slab.height = formula_box_height + captions + 12.0;
    slab.draw = [parts, widths, &typesetter = room.typesetter](Painter& painter, double x,
                                                               double y) {
        for (std::size_t i = 0; i < parts.size(); ++i) {
            x += draw_formula_part(painter, parts[i], widths[i], typesetter, x, y + 4);
        }
    };
    return slab;
}

Slabs set(const Formula& formula, Room& room) {
    Slabs slabs;
    std::vector<FormulaPart> line;
    std::vector<double> widths;
    double used = 0.0;
    for (const FormulaPart& part : formula.parts) {
        const double width = natural_width(part, room);
        if (!line.empty() && used + width > room.width) {
            slabs.push_back(formula_line(line, widths, room));
            line.clear();
            widths.clear();
            used = 0.0;
        }
        line.push_back(part);
        widths.push_back(width);
        used += width;
    }
    if (!line.empty()) {
        slabs.push_back(formula_line(line, widths, room));
    }
    return slabs;
}

Slabs set(const Figure& figure, Room& room) {
    const double scale = std::min({1.0, room.width / std::max(figure.drawing.width, 1.0),
                                   room.tallest * 0.8 / std::max(figure.drawing.height, 1.0)});
    Slab slab;
    slab.height = figure.drawing.height * scale + 4.0;
    slab.tag = "Figure";
    slab.keep_with_next = !figure.caption.empty();
    slab.draw = [drawing = figure.drawing, scale](Painter& painter, double x, double y) {
        painter.drawing(drawing, x, y + 2, scale);
    };
    Slabs slabs;
    slabs.push_back(std::move(slab));
    if (!figure.caption.empty()) {
        append(slabs, set(Text{figure.caption, Style::small}, room));
    }
    slabs.push_back(gap_of(4.0));
    return slabs;
}

// ---------------------------------------------------------------- two languages

Stack side_stack(const std::vector<Side>& side, double x, double width) {
    Stack stack;
    stack.x = x;
    stack.width = width;
    for (const Side& line : side) {
        stack.tick_box = stack.tick_box || line.tick_box;
        stack.runs.push_back(Run{line.text, type_of(line.style)});
    }
    return stack;
}

Slabs set(const Bilingual& pair, Room& room) {
    const double between = 26.0;
    const double width = (room.width - between) / 2;
    const auto row_of = [&](const std::vector<Side>& left, const std::vector<Side>& right) {
        Row row;
        row.width = room.width;
        row.tag = "TR";
        row.upright_rules = {room.width / 2};
        row.stacks = {side_stack(left, 0, width), side_stack(right, width + between, width)};
        row.stacks[0].tag = row.stacks[1].tag = "TD";
        return row;
    };
    Row head =
        row_of({Side{pair.left_title, Style::strong}}, {Side{pair.right_title, Style::strong}});
    head.rule_below = Stroke::normal;
    Slabs slabs = slabs_of(head, room.typesetter, room.tallest);
    slabs.front().keep_with_next = true;
    const auto repeated = std::make_shared<const Slab>(slabs.front());
    for (const BilingualRow& pair_row : pair.rows) {
        Row row = row_of(pair_row.left, pair_row.right);
        row.rule_above = pair_row.rule_above ? Stroke::thin : Stroke::none;
        Slabs strips = slabs_of(row, room.typesetter, room.tallest - repeated->height);
        for (Slab& slab : strips) {
            slab.head = repeated;
        }
        append(slabs, std::move(strips));
    }
    group(slabs, 0, "Table", room, short_enough(room));
    slabs.push_back(gap_of(6.0));
    return slabs;
}

}  // namespace

std::vector<Slab> slabs_of(const Block& block, Room& room) {
    Slabs slabs =
        std::visit([&room](const auto& content) { return set(content, room); }, block.content);
    if (block.keep_with_next) {
        for (Slab& slab : slabs) {
            slab.keep_with_next = true;
        }
    }
    return slabs;
}

std::vector<Slab> title_slabs(const Sheet& sheet, Room& room) {
    Row title = words_row(sheet.title, title_type, room);
    title.space_above = 0.0;
    title.space_below = 1.0;
    title.tag = "H1";
    Slabs slabs = slabs_of(title, room.typesetter, room.tallest);
    if (!sheet.second_title.empty()) {
        Row second = words_row(sheet.second_title, second_title_type, room);
        second.space_above = 0.0;
        second.space_below = 2.0;
        append(slabs, slabs_of(second, room.typesetter, room.tallest));
    }
    Slab rule;
    rule.height = 10.0;
    rule.tag = nullptr;
    rule.draw = [width = room.width](Painter& painter, double x, double y) {
        painter.line(x, y + 3, x + width, y + 3, Stroke::heavy, Ink::accent);
    };
    slabs.push_back(std::move(rule));
    for (Slab& slab : slabs) {
        slab.keep_with_next = true;
    }
    return slabs;
}

}  // namespace swathbook::reports::pdf
