#include "store/sqlite/spatial_functions.hpp"

#include <sqlite3.h>

#include "store/geopackage/bounds.hpp"

namespace swathbook::store {

namespace {

std::optional<GeometryHeader> argument(sqlite3_value* value) {
    const auto* bytes = static_cast<const std::uint8_t*>(sqlite3_value_blob(value));
    const auto size = static_cast<std::size_t>(sqlite3_value_bytes(value));
    return bytes == nullptr ? std::nullopt : read_header({bytes, size});
}

void is_empty(sqlite3_context* context, int, sqlite3_value** values) {
    const auto header = argument(values[0]);
    if (header) {
        sqlite3_result_int(context, header->is_empty ? 1 : 0);
    } else {
        sqlite3_result_null(context);
    }
}

template <double Bounds::* edge>
void edge_of(sqlite3_context* context, int, sqlite3_value** values) {
    const auto header = argument(values[0]);
    if (header && header->bounds) {
        sqlite3_result_double(context, (*header->bounds).*edge);
    } else {
        sqlite3_result_null(context);
    }
}

using Function = void (*)(sqlite3_context*, int, sqlite3_value**);

}  // namespace

Result<void> add_spatial_functions(Connection& connection) {
    const auto add = [&connection](const char* name, Function function) -> Result<void> {
        const int code = sqlite3_create_function_v2(
            connection.handle(), name, 1, SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS,
            nullptr, function, nullptr, nullptr, nullptr);
        if (code != SQLITE_OK) {
            return tl::unexpected(error_of(connection.handle(), code));
        }
        return {};
    };
    SWATHBOOK_CHECK(add("ST_IsEmpty", &is_empty));
    SWATHBOOK_CHECK(add("ST_MinX", &edge_of<&Bounds::min_x>));
    SWATHBOOK_CHECK(add("ST_MaxX", &edge_of<&Bounds::max_x>));
    SWATHBOOK_CHECK(add("ST_MinY", &edge_of<&Bounds::min_y>));
    return add("ST_MaxY", &edge_of<&Bounds::max_y>);
}

}  // namespace swathbook::store
