#pragma once

#include <string>
#include <vector>

#include "api/describe/type.hpp"
#include "api/json/json.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {

struct Column {
    std::string heading;
    std::string unit;        ///< said once under the heading when every row has it
    bool is_number = false;  ///< set to the right, and never broken over lines
    std::vector<std::string> cells;
    std::size_t width = 0;  ///< longer text is broken over lines
};

struct Table {
    std::vector<Column> columns;
    std::size_t rows = 0;
    bool is_complete = true;  ///< false when rows hold lists that no cell can show
};

/// One object that is to become a row, under a label of its own.
struct Row {
    std::string label;
    const api::ObjectType* type = nullptr;
    const api::Json* object = nullptr;
};

/// A list of objects as a table: a column for each member that some row has something to say on;
/// members of members get columns of their own.
[[nodiscard]] Table table_of(const api::ObjectType& type, const api::Json& list);
/// Objects of several types as one table; members of one name share a column.
[[nodiscard]] Table table_of(const std::vector<Row>& rows);

/// Takes out the columns of text that say the same in every row, to be said once below the table.
[[nodiscard]] std::vector<Column> take_common(Table& table);
/// Narrows the text columns until the table is no wider than `width`.
/// @return false when it cannot be made so narrow and stay readable
[[nodiscard]] bool fit(Table& table, std::size_t width);
/// The same table on its side, a column for each row, in as many tables as the width needs.
/// @return nothing when the rows are too few or their texts too long to read that way
[[nodiscard]] std::vector<Table> turned(const Table& table, std::size_t width);
[[nodiscard]] std::string print_table(const Table& table, std::size_t indent, const Paper& paper);

}  // namespace swathbook::cli
