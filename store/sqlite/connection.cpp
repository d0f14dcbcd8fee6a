#include "store/sqlite/connection.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <utility>

namespace swathbook::store {

Statement::Statement(sqlite3_stmt* statement, sqlite3* connection)
    : statement_(statement), connection_(connection) {}

Statement::~Statement() {
    sqlite3_finalize(statement_);
}

Statement::Statement(Statement&& other) noexcept
    : statement_(std::exchange(other.statement_, nullptr)),
      connection_(other.connection_),
      bind_fault_(other.bind_fault_) {}

Statement& Statement::operator=(Statement&& other) noexcept {
    std::swap(statement_, other.statement_);
    std::swap(connection_, other.connection_);
    std::swap(bind_fault_, other.bind_fault_);
    return *this;
}

Statement& Statement::bind(int place, std::int64_t value) {
    bind_fault_ |= sqlite3_bind_int64(statement_, place, value);
    return *this;
}

Statement& Statement::bind(int place, std::string_view text) {
    const char* data = text.empty() ? "" : text.data();
    bind_fault_ |=
        sqlite3_bind_text64(statement_, place, data, text.size(), SQLITE_STATIC, SQLITE_UTF8);
    return *this;
}

Statement& Statement::bind_bytes(int place, std::span<const std::uint8_t> bytes) {
    bind_fault_ |= bytes.empty() ? sqlite3_bind_zeroblob(statement_, place, 0)
                                 : sqlite3_bind_blob64(statement_, place, bytes.data(),
                                                       bytes.size(), SQLITE_STATIC);
    return *this;
}

Statement& Statement::bind_null(int place) {
    bind_fault_ |= sqlite3_bind_null(statement_, place);
    return *this;
}

Result<bool> Statement::step() {
    if (bind_fault_ != SQLITE_OK) {
        return tl::unexpected(error_of(connection_, bind_fault_));
    }
    const int code = sqlite3_step(statement_);
    if (code == SQLITE_ROW || code == SQLITE_DONE) {
        return code == SQLITE_ROW;
    }
    Error error = error_of(connection_, code);
    sqlite3_reset(statement_);
    return tl::unexpected(std::move(error));
}

Result<void> Statement::run() {
    for (;;) {
        SWATHBOOK_TRY(has_row, step());
        if (!has_row) {
            reset();
            return {};
        }
    }
}

void Statement::reset() {
    sqlite3_reset(statement_);
    bind_fault_ = SQLITE_OK;
}

bool Statement::is_null(int column) const {
    return sqlite3_column_type(statement_, column) == SQLITE_NULL;
}

std::int64_t Statement::integer(int column) const {
    return sqlite3_column_int64(statement_, column);
}

std::string_view Statement::text(int column) const {
    const auto* text = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
    return text == nullptr ? std::string_view() : std::string_view(text, size);
}

std::span<const std::uint8_t> Statement::bytes(int column) const {
    const auto* bytes = static_cast<const std::uint8_t*>(sqlite3_column_blob(statement_, column));
    const auto size = static_cast<std::size_t>(sqlite3_column_bytes(statement_, column));
    return bytes == nullptr ? std::span<const std::uint8_t>() : std::span(bytes, size);
}

void Connection::Close::operator()(sqlite3* handle) const {
    sqlite3_close_v2(handle);
}

namespace {

/// Makes an empty file, so that two programs cannot both create one notebook.
Result<void> reserve(const std::string& path) {
    const int file = ::open(path.c_str(), O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, 0644);
    if (file < 0) {
        const bool is_there = errno == EEXIST;
        return fail(is_there ? ErrorCode::conflict : ErrorCode::io, "path",
                    fmt::format("{} cannot be created: {}. {}", path, std::strerror(errno),
                                is_there ? "Choose another name; nothing is ever overwritten."
                                         : "Choose a folder that exists and can be written."));
    }
    ::close(file);
    return {};
}

}  // namespace

Result<Connection> Connection::open(const std::string& path, OpenMode mode, int busy_timeout_ms) {
    if (mode == OpenMode::create) {
        SWATHBOOK_CHECK(reserve(path));
    } else if (::access(path.c_str(), F_OK) != 0) {
        return fail(
            ErrorCode::not_found, "path",
            fmt::format("There is no notebook at {}. Check the name, or create one.", path));
    }
    const int access = mode == OpenMode::read_only ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE;
    sqlite3* handle = nullptr;
    const int code = sqlite3_open_v2(path.c_str(), &handle, access | SQLITE_OPEN_NOMUTEX, nullptr);
    Connection connection(handle);
    if (code != SQLITE_OK) {
        return tl::unexpected(error_of(handle, code));
    }
    sqlite3_extended_result_codes(handle, 1);
    sqlite3_busy_timeout(handle, busy_timeout_ms);
    // A file may come from anybody: its inner tables are shut. The schema stays trusted, because
    // the spatial-index triggers of a GeoPackage write to r-trees, which SQLite 3.40 forbids
    // otherwise; no function with effects outside the file is registered, and none can be loaded.
    sqlite3_db_config(handle, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
    return connection;
}

Result<Statement> Connection::prepare(std::string_view sql) {
    sqlite3_stmt* statement = nullptr;
    const int code = sqlite3_prepare_v3(handle_.get(), sql.data(), static_cast<int>(sql.size()), 0,
                                        &statement, nullptr);
    if (code != SQLITE_OK) {
        return tl::unexpected(error_of(handle_.get(), code));
    }
    return Statement(statement, handle_.get());
}

Result<void> Connection::execute(std::string_view sql) {
    const int code =
        sqlite3_exec(handle_.get(), std::string(sql).c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) {
        return tl::unexpected(error_of(handle_.get(), code));
    }
    return {};
}

Result<std::int64_t> Connection::number(std::string_view sql) {
    SWATHBOOK_TRY(statement, prepare(sql));
    SWATHBOOK_TRY(has_row, statement.step());
    return has_row ? statement.integer(0) : 0;
}

Result<std::string> Connection::word(std::string_view sql) {
    SWATHBOOK_TRY(statement, prepare(sql));
    SWATHBOOK_TRY(has_row, statement.step());
    return has_row ? std::string(statement.text(0)) : std::string();
}

Result<Transaction> Transaction::begin(Connection& connection) {
    SWATHBOOK_CHECK(connection.execute("BEGIN IMMEDIATE"));
    return Transaction(connection);
}

Transaction::Transaction(Transaction&& other) noexcept
    : connection_(std::exchange(other.connection_, nullptr)) {}

Transaction::~Transaction() {
    if (connection_ != nullptr && sqlite3_get_autocommit(connection_->handle()) == 0) {
        static_cast<void>(connection_->execute("ROLLBACK"));
    }
}

Result<void> Transaction::commit() {
    return connection_->execute("COMMIT");
}

Error error_of(sqlite3* handle, int code) {
    const std::string reason = handle == nullptr ? "out of memory" : sqlite3_errmsg(handle);
    switch (code & 0xff) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return {ErrorCode::unavailable, "path",
                    "Another program is writing to the notebook. Try again in a moment; if it "
                    "stays so, close the other program."};
        case SQLITE_FULL:
            return {ErrorCode::io, "path",
                    "The disk is full: nothing was written and the notebook is as before. Make "
                    "room and try again."};
        case SQLITE_READONLY:
            return {ErrorCode::io, "path",
                    fmt::format("The notebook cannot be written ({}). Open it where you may "
                                "write, or make a copy with restore.",
                                reason)};
        case SQLITE_CANTOPEN:
        case SQLITE_PERM:
        case SQLITE_AUTH:
            return {ErrorCode::io, "path",
                    fmt::format("The notebook cannot be opened ({}). Check the name and the "
                                "rights of file and folder.",
                                reason)};
        case SQLITE_IOERR:
            return {ErrorCode::io, "path",
                    fmt::format("Reading or writing the notebook failed ({}, code {}). Nothing "
                                "was half done. Check disk space and the device.",
                                reason, code)};
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            return {ErrorCode::corrupt_data, "path",
                    fmt::format("The file is damaged or is not a notebook ({}). Restore it from a "
                                "backup; keep the damaged file.",
                                reason)};
        case SQLITE_CONSTRAINT:
            return {ErrorCode::conflict, "",
                    fmt::format("The notebook refused the change ({}).", reason)};
        case SQLITE_TOOBIG:
            return {ErrorCode::out_of_range, "",
                    "The amount of data is larger than a notebook can keep in one piece (1 GB)."};
        case SQLITE_NOMEM:
            return {ErrorCode::unavailable, "", "Memory ran out. Close other programs, try again."};
        default:
            return {ErrorCode::internal, "",
                    fmt::format("The notebook store failed ({}, code {}).", reason, code)};
    }
}

}  // namespace swathbook::store
