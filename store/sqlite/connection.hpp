#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

struct sqlite3;
struct sqlite3_stmt;

namespace swathbook::store {

enum class OpenMode : std::uint8_t {
    read_write,  ///< the file exists
    create,      ///< the file does not exist
    read_only,
};

/// One statement. Bind, step, read columns; reset before the next round.
class Statement {
public:
    Statement(sqlite3_stmt* statement, sqlite3* connection);
    ~Statement();
    Statement(Statement&& other) noexcept;
    Statement& operator=(Statement&& other) noexcept;

    /// Places count from 1. Texts and bytes must live until the next reset or bind.
    Statement& bind(int place, std::int64_t value);
    Statement& bind(int place, std::string_view text);
    Statement& bind_bytes(int place, std::span<const std::uint8_t> bytes);
    Statement& bind_null(int place);

    /// @return true when there is a row, false at the end
    [[nodiscard]] Result<bool> step();
    /// Steps to the end and resets.
    [[nodiscard]] Result<void> run();
    void reset();

    [[nodiscard]] bool is_null(int column) const;
    [[nodiscard]] std::int64_t integer(int column) const;
    /// Valid until the next step or reset.
    [[nodiscard]] std::string_view text(int column) const;
    [[nodiscard]] std::span<const std::uint8_t> bytes(int column) const;

private:
    sqlite3_stmt* statement_;
    sqlite3* connection_;
    int bind_fault_ = 0;
};

/// One open SQLite file.
class Connection {
public:
    /// @errors not_found{path}, io{path}, corrupt_data{path}
    [[nodiscard]] static Result<Connection> open(const std::string& path, OpenMode mode,
                                                 int busy_timeout_ms);

    [[nodiscard]] Result<Statement> prepare(std::string_view sql);
    /// Runs statements that give no rows.
    [[nodiscard]] Result<void> execute(std::string_view sql);
    /// The first column of the first row as a number or text.
    [[nodiscard]] Result<std::int64_t> number(std::string_view sql);
    [[nodiscard]] Result<std::string> word(std::string_view sql);
    [[nodiscard]] sqlite3* handle() const { return handle_.get(); }

private:
    struct Close {
        void operator()(sqlite3* handle) const;
    };
    explicit Connection(sqlite3* handle) : handle_(handle) {}
    std::unique_ptr<sqlite3, Close> handle_;
};

/// Begins writing at once, so that a lock held elsewhere is met before any work is done. Rolls back
/// unless committed.
class Transaction {
public:
    [[nodiscard]] static Result<Transaction> begin(Connection& connection);
    ~Transaction();
    Transaction(Transaction&& other) noexcept;
    Transaction& operator=(Transaction&&) = delete;

    [[nodiscard]] Result<void> commit();

private:
    explicit Transaction(Connection& connection) : connection_(&connection) {}
    Connection* connection_;
};

/// Turns the last failure of a connection into an Error for people.
[[nodiscard]] Error error_of(sqlite3* handle, int code);

}  // namespace swathbook::store
