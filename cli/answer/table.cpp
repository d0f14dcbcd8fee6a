#include "cli/answer/table.hpp"

#include <algorithm>
#include <iterator>

#include <fmt/format.h>

#include "cli/answer/print_answer.hpp"
#include "cli/answer/words.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::cli {
namespace {

using api::Json;

constexpr std::size_t gap = 2;  // columns between columns

/// "Amount" and "To measure" make "Amount to measure".
std::string joined(const std::string& prefix, std::string label) {
    if (prefix.empty()) {
        return label;
    }
    const bool is_abbreviation = label.size() > 1 && label[1] >= 'A' && label[1] <= 'Z';
    if (!is_abbreviation && label[0] >= 'A' && label[0] <= 'Z') {
        label[0] = static_cast<char>(label[0] - 'A' + 'a');
    }
    return prefix + " " + label;
}

const Json* member_of(const Json& row, std::string_view name) {
    const auto found = row.find(name);
    return found == row.end() ? nullptr : &*found;
}

/// The values of one member, row by row; null where a row lacks it.
std::vector<const Json*> values_in(const std::vector<const Json*>& rows, std::string_view name) {
    std::vector<const Json*> values;
    for (const Json* row : rows) {
        values.push_back(row == nullptr ? nullptr : member_of(*row, name));
    }
    return values;
}

/// The unit that all the amounts share, or nothing.
std::string shared_unit(const std::vector<const Json*>& values) {
    std::string unit;
    for (const Json* value : values) {
        if (value == nullptr) {
            continue;
        }
        if (!value->is_object() || !value->contains("unit")) {
            return {};
        }
        const auto own = (*value)["unit"].get<std::string>();
        if (!unit.empty() && own != unit) {
            return {};
        }
        unit = own;
    }
    return unit;
}

std::string cell_of(const api::Field& field, const Json* value, bool without_unit) {
    if (value == nullptr) {
        return "";
    }
    if (!without_unit) {
        return value_text(field, *value);
    }
    std::string text = show_number((*value)["value"].get<double>());
    if (value->contains("low") && value->contains("high")) {
        text += fmt::format(" ({} {} {})", show_number((*value)["low"].get<double>()),
                            words().text("to"), show_number((*value)["high"].get<double>()));
    }
    return text;
}

Column column_of(std::string heading, const api::Field& field,
                 const std::vector<const Json*>& values) {
    Column column;
    column.heading = std::move(heading);
    column.unit = shared_unit(values);
    column.is_number = true;
    for (const Json* value : values) {
        const bool is_number = value == nullptr || value->is_number() || value->contains("unit");
        column.is_number = column.is_number && is_number;
        column.cells.push_back(cell_of(field, value, !column.unit.empty()));
    }
    return column;
}

bool holds_objects(const Json& list) {
    return list.is_array() && !list.empty() && list[0].is_object() && !list[0].contains("unit");
}

void add_columns(Table& table, const api::ObjectType& type, const std::vector<const Json*>& rows,
                 const std::string& prefix) {
    for (const api::Field& field : type.fields()) {
        const auto values = values_in(rows, field.name);
        const auto present = std::find_if(values.begin(), values.end(),
                                          [](const Json* value) { return value != nullptr; });
        if (present == values.end()) {
            continue;
        }
        const api::ObjectType* inner = field.type().as_object();
        const std::string label = joined(prefix, words().label_of(type.name(), field));
        if (inner != nullptr) {
            add_columns(table, *inner, values, label);
            continue;
        }
        const bool has_parts = std::any_of(values.begin(), values.end(), [](const Json* value) {
            return value != nullptr && holds_objects(*value);
        });
        table.is_complete = table.is_complete && !has_parts;
        table.columns.push_back(column_of(label, field, values));
    }
}

std::size_t widest_cell(const Column& column) {
    std::size_t width = std::max(columns_of(column.heading), columns_of(column.unit));
    for (const std::string& cell : column.cells) {
        width = std::max(width, columns_of(cell));
    }
    return width;
}

std::size_t width_of(const Table& table) {
    std::size_t width = 0;
    for (const Column& column : table.columns) {
        width += column.width + gap;
    }
    return width;
}

std::size_t longest_word(std::string_view text) {
    std::size_t width = 0;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        width = std::max(width, columns_of(text.substr(0, end)));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return width;
}

/// The narrowest a column may be: a number is never broken, text only between words.
std::size_t narrowest(const Column& column) {
    constexpr std::size_t narrowest_text = 14;
    std::size_t width = std::max(longest_word(column.heading), columns_of(column.unit));
    for (const std::string& cell : column.cells) {
        const std::size_t taken = columns_of(cell);
        const std::size_t text = std::max(longest_word(cell), std::min(taken, narrowest_text));
        width = std::max(width, column.is_number ? taken : text);
    }
    return width;
}

void take_natural_widths(Table& table) {
    std::erase_if(table.columns, [](const Column& column) {
        return std::all_of(column.cells.begin(), column.cells.end(),
                           [](const std::string& cell) { return cell.empty(); });
    });
    for (Column& column : table.columns) {
        column.width = widest_cell(column);
    }
}

/// The lines of one cell.
std::vector<std::string> lines_in(std::string_view text, std::size_t width) {
    std::vector<std::string> lines;
    const std::string broken = wrapped(text, width, 0);
    std::string_view rest = broken;
    while (!rest.empty()) {
        const std::size_t end = std::min(rest.find('\n'), rest.size());
        lines.emplace_back(rest.substr(0, end));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    return lines;
}

/// One row, as many lines high as its highest cell; `text` says what each column shows in it.
template <class Text>
std::string lines_of(const Table& table, std::size_t indent, Text&& text) {
    std::vector<std::vector<std::string>> cells;
    std::size_t height = 0;
    for (const Column& column : table.columns) {
        cells.push_back(lines_in(text(column), column.width));
        height = std::max(height, cells.back().size());
    }
    std::string out;
    for (std::size_t number = 0; number < height; ++number) {
        std::string line(indent, ' ');
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const std::string_view part =
                number < cells[i].size() ? std::string_view(cells[i][number]) : std::string_view();
            line += padded(part, table.columns[i].width, table.columns[i].is_number) +
                    std::string(gap, ' ');
        }
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + "\n";
    }
    return out;
}

/// Puts the cells of one more row type under the columns of their names.
void add_row(Table& table, const Row& row) {
    Table own;
    add_columns(own, *row.type, {row.object}, "");
    table.is_complete = table.is_complete && own.is_complete;
    for (Column& column : own.columns) {
        auto place =
            std::find_if(table.columns.begin(), table.columns.end(),
                         [&column](const Column& c) { return c.heading == column.heading; });
        if (place == table.columns.end()) {
            table.columns.push_back(Column{column.heading, "", column.is_number, {}, 0});
            place = table.columns.end() - 1;
        }
        place->cells.resize(table.rows);
        const std::string& cell = column.cells.front();
        place->cells.push_back(column.unit.empty() || cell.empty() ? cell
                                                                   : cell + " " + column.unit);
    }
    ++table.rows;
}

/// What names a row in a table on its side: the first column, when it is short.
Column names_of(const Table& table) {
    Column names;
    for (std::size_t i = 1; i < table.columns.size(); ++i) {
        const Column& column = table.columns[i];
        names.cells.push_back(column.unit.empty() ? column.heading
                                                  : column.heading + ", " + column.unit);
    }
    names.width = widest_cell(names);
    return names;
}

Column row_as_column(const Table& table, std::size_t row) {
    Column column;
    column.heading = table.columns.front().cells[row];
    for (std::size_t i = 1; i < table.columns.size(); ++i) {
        column.cells.push_back(table.columns[i].cells[row]);
    }
    column.width = std::max(narrowest(column), columns_of(column.heading));
    return column;
}

bool can_be_turned(const Table& table) {
    constexpr std::size_t longest_text = 40;
    const bool is_worth_it = table.is_complete && table.rows >= 3 && table.columns.size() >= 3;
    return is_worth_it &&
           std::all_of(table.columns.begin(), table.columns.end(),
                       [](const Column& column) { return widest_cell(column) <= longest_text; });
}

}  // namespace

std::vector<Table> turned(const Table& table, std::size_t width) {
    if (!can_be_turned(table)) {
        return {};
    }
    const Column names = names_of(table);
    std::vector<Table> tables;
    for (std::size_t row = 0; row < table.rows; ++row) {
        Column column = row_as_column(table, row);
        if (names.width + gap + column.width > width) {
            return {};
        }
        if (tables.empty() || width_of(tables.back()) + column.width > width) {
            tables.push_back(Table{{names}, names.cells.size(), true});
        }
        tables.back().columns.push_back(std::move(column));
    }
    return tables;
}

Table table_of(const api::ObjectType& type, const Json& list) {
    Table table;
    std::vector<const Json*> rows;
    for (const Json& row : list) {
        rows.push_back(&row);
    }
    table.rows = rows.size();
    add_columns(table, type, rows, "");
    take_natural_widths(table);
    return table;
}

Table table_of(const std::vector<Row>& rows) {
    Table table;
    Column labels;
    for (const Row& row : rows) {
        labels.cells.push_back(row.label);
        add_row(table, row);
    }
    for (Column& column : table.columns) {
        column.cells.resize(rows.size());
        column.is_number = false;  // units stand in the cells
    }
    table.columns.insert(table.columns.begin(), std::move(labels));
    take_natural_widths(table);
    return table;
}

std::vector<Column> take_common(Table& table) {
    constexpr std::size_t worth_lifting = 20;
    const auto says_the_same = [](const Column& column) {
        return !column.is_number && column.cells.front().size() >= worth_lifting &&
               std::ranges::all_of(column.cells, [&](const std::string& cell) {
                   return cell == column.cells.front();
               });
    };
    std::vector<Column> common;
    if (table.rows < 2) {
        return common;
    }
    std::ranges::copy_if(table.columns, std::back_inserter(common), says_the_same);
    std::erase_if(table.columns, says_the_same);
    return common;
}

bool fit(Table& table, std::size_t width) {
    while (width_of(table) > width + gap) {
        Column* widest = nullptr;
        for (Column& column : table.columns) {
            const bool can_shrink = column.width > narrowest(column);
            if (can_shrink && (widest == nullptr || column.width > widest->width)) {
                widest = &column;
            }
        }
        if (widest == nullptr) {
            return false;
        }
        --widest->width;
    }
    return true;
}

std::string print_table(const Table& table, std::size_t indent, const Paper& paper) {
    std::string out =
        paper.in(Ink::faint, lines_of(table, indent, [](const Column& c) { return c.heading; }));
    const bool has_units = std::any_of(table.columns.begin(), table.columns.end(),
                                       [](const Column& column) { return !column.unit.empty(); });
    if (has_units) {
        out +=
            paper.in(Ink::faint, lines_of(table, indent, [](const Column& c) { return c.unit; }));
    }
    for (std::size_t row = 0; row < table.rows; ++row) {
        out += lines_of(table, indent, [row](const Column& c) { return c.cells[row]; });
    }
    return out;
}

}  // namespace swathbook::cli
