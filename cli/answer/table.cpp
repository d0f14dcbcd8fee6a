#include "cli/answer/table.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "cli/answer/print_answer.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::cli {
namespace {

using api::Json;

constexpr std::size_t gap = 2;  // columns between columns

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

std::string cell_of(const api::Type& type, const Json* value, bool without_unit) {
    if (value == nullptr) {
        return "";
    }
    if (!without_unit) {
        return value_text(type, *value);
    }
    std::string text = show_number((*value)["value"].get<double>());
    if (value->contains("low") && value->contains("high")) {
        text += fmt::format(" ({} to {})", show_number((*value)["low"].get<double>()),
                            show_number((*value)["high"].get<double>()));
    }
    return text;
}

Column column_of(std::string heading, const api::Type& type,
                 const std::vector<const Json*>& values) {
    Column column;
    column.heading = std::move(heading);
    column.unit = shared_unit(values);
    column.is_number = true;
    for (const Json* value : values) {
        const bool is_number = value == nullptr || value->is_number() || value->contains("unit");
        column.is_number = column.is_number && is_number;
        column.cells.push_back(cell_of(type, value, !column.unit.empty()));
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
        const std::string label =
            prefix.empty() ? label_of(field.name) : prefix + " " + std::string(field.name);
        if (inner != nullptr) {
            add_columns(table, *inner, values, label);
            continue;
        }
        const bool has_parts = std::any_of(values.begin(), values.end(), [](const Json* value) {
            return value != nullptr && holds_objects(*value);
        });
        table.is_complete = table.is_complete && !has_parts;
        table.columns.push_back(column_of(label, field.type(), values));
    }
}

std::size_t width_of(const Column& column) {
    std::size_t width = std::max(columns_of(column.heading), columns_of(column.unit));
    for (const std::string& cell : column.cells) {
        width = std::max(width, columns_of(cell));
    }
    return width;
}

/// One line of the table; `text` says what each column shows in it.
template <class Text>
std::string line_of(const Table& table, std::size_t indent, Text&& text) {
    std::string line(indent, ' ');
    for (const Column& column : table.columns) {
        line += padded(text(column), width_of(column), column.is_number) + std::string(gap, ' ');
    }
    line.erase(line.find_last_not_of(' ') + 1);
    return line;
}

}  // namespace

Table table_of(const api::ObjectType& type, const Json& list) {
    Table table;
    std::vector<const Json*> rows;
    for (const Json& row : list) {
        rows.push_back(&row);
    }
    table.rows = rows.size();
    add_columns(table, type, rows, "");
    return table;
}

std::size_t width_of(const Table& table) {
    std::size_t width = 0;
    for (const Column& column : table.columns) {
        width += width_of(column) + gap;
    }
    return width;
}

std::string print_table(const Table& table, std::size_t indent, const Paper& paper) {
    std::string out =
        paper.in(Ink::faint, line_of(table, indent, [](const Column& c) { return c.heading; })) +
        "\n";
    const bool has_units = std::any_of(table.columns.begin(), table.columns.end(),
                                       [](const Column& column) { return !column.unit.empty(); });
    if (has_units) {
        out +=
            paper.in(Ink::faint, line_of(table, indent, [](const Column& c) { return c.unit; })) +
            "\n";
    }
    for (std::size_t row = 0; row < table.rows; ++row) {
        out += line_of(table, indent, [row](const Column& c) { return c.cells[row]; }) + "\n";
    }
    return out;
}

}  // namespace swathbook::cli
