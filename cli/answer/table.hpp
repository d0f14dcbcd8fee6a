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
    bool is_number = false;  ///< set to the right
    std::vector<std::string> cells;
};

struct Table {
    std::vector<Column> columns;
    std::size_t rows = 0;
    bool is_complete = true;  ///< false when rows hold lists that no cell can show
};

/// A list of objects as a table: a column for each member that some row has; members of members get
/// columns of their own.
[[nodiscard]] Table table_of(const api::ObjectType& type, const api::Json& list);
[[nodiscard]] std::size_t width_of(const Table& table);
[[nodiscard]] std::string print_table(const Table& table, std::size_t indent, const Paper& paper);

}  // namespace swathbook::cli
