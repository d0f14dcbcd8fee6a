#include "store/sqlite/schema.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "store/sqlite/sql_text.hpp"

namespace swathbook::store {

namespace {

constexpr std::int64_t geopackage_id = 0x47504B47;  // "GPKG"
constexpr std::int64_t geopackage_version = 10300;

Result<std::vector<std::string>> applied(Connection& connection) {
    SWATHBOOK_TRY(statement, connection.prepare(sql("applied_migrations")));
    std::vector<std::string> names;
    for (;;) {
        SWATHBOOK_TRY(has_row, statement.step());
        if (!has_row) {
            return names;
        }
        names.emplace_back(statement.text(0));
    }
}

Result<void> apply(Connection& connection, const NamedSql& migration) {
    SWATHBOOK_TRY(transaction, Transaction::begin(connection));
    SWATHBOOK_TRY(done, applied(connection));  // another program may have been faster
    if (std::find(done.begin(), done.end(), migration.name) != done.end()) {
        return {};
    }
    SWATHBOOK_CHECK(connection.execute(migration.text));
    SWATHBOOK_TRY(note, connection.prepare(sql("note_migration")));
    SWATHBOOK_CHECK(note.bind(1, migration.name).run());
    return transaction.commit();
}

}  // namespace

Result<void> check_identity(Connection& connection) {
    SWATHBOOK_TRY(id, connection.number("PRAGMA application_id"));
    SWATHBOOK_TRY(tables, connection.number("SELECT count(*) FROM sqlite_master WHERE name IN "
                                            "('schema_migrations', 'entries')"));
    if (tables != 2 || (id != geopackage_id && id != 0)) {
        return fail(ErrorCode::invalid_input, "path",
                    "The file is a database, but not a notebook of this program. Check the name.");
    }
    SWATHBOOK_TRY(version, connection.number("PRAGMA user_version"));
    SWATHBOOK_TRY(names, applied(connection));
    const auto known = migrations();
    const auto stranger = std::find_if(names.begin(), names.end(), [&](const std::string& name) {
        return std::none_of(known.begin(), known.end(),
                            [&](const NamedSql& migration) { return migration.name == name; });
    });
    if (stranger != names.end() || version > geopackage_version) {
        return fail(ErrorCode::unsupported, "path",
                    fmt::format("A newer version of this program made the notebook ({}). Use that "
                                "version; an older one could damage it.",
                                stranger != names.end() ? *stranger : std::to_string(version)));
    }
    return {};
}

Result<void> migrate(Connection& connection, std::size_t most) {
    SWATHBOOK_CHECK(connection.execute(sql("create_migrations")));
    const auto known = migrations();
    for (std::size_t i = 0; i < std::min(most, known.size()); ++i) {
        SWATHBOOK_CHECK(apply(connection, known[i]));
    }
    return {};
}

Result<bool> is_current(Connection& connection) {
    SWATHBOOK_TRY(names, applied(connection));
    return names.size() == migrations().size();
}

Result<std::string> schema_text(Connection& connection) {
    SWATHBOOK_TRY(statement,
                  connection.prepare("SELECT type, name, sql FROM sqlite_master WHERE sql NOT NULL "
                                     "ORDER BY type, name"));
    std::string text;
    for (;;) {
        SWATHBOOK_TRY(has_row, statement.step());
        if (!has_row) {
            return text;
        }
        text += fmt::format("-- {} {}\n{};\n\n", statement.text(0), statement.text(1),
                            statement.text(2));
    }
}

}  // namespace swathbook::store
