#pragma once

#include <span>
#include <string_view>

namespace swathbook::store {

struct NamedSql {
    std::string_view name;
    std::string_view text;
};

/// The text of store/sqlite/sql/NAME.sql.
[[nodiscard]] std::string_view sql(std::string_view name);

/// All migrations in the order in which they apply (their names begin with date and time).
[[nodiscard]] std::span<const NamedSql> migrations();

}  // namespace swathbook::store
