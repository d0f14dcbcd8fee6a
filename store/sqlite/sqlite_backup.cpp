#include "store/sqlite/sqlite_backup.hpp"

#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>

#include "store/sqlite/sql_text.hpp"

namespace swathbook::store {

namespace {

/// Removes a file that did not come to its end.
class PartFile {
public:
    explicit PartFile(std::string path) : path_(std::move(path)) {}
    ~PartFile() {
        if (!path_.empty()) {
            std::remove(path_.c_str());
            std::remove((path_ + "-journal").c_str());
        }
    }
    PartFile(const PartFile&) = delete;
    PartFile& operator=(const PartFile&) = delete;
    [[nodiscard]] const std::string& path() const { return path_; }

    /// Gives the file its name and makes the name durable.
    [[nodiscard]] Result<void> rename_to(const std::string& name) {
        // link refuses to overwrite, rename would not
        if (::link(path_.c_str(), name.c_str()) != 0) {
            return fail(ErrorCode::io, "path",
                        fmt::format("{} cannot be given its name. Choose another name.", name));
        }
        const auto slash = name.rfind('/');
        const std::string folder =
            slash == std::string::npos ? "." : name.substr(0, std::max<std::size_t>(slash, 1));
        const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
        if (descriptor >= 0) {
            ::fsync(descriptor);
            ::close(descriptor);
        }
        return {};
    }

private:
    std::string path_;
};

Result<void> copy_pages(Connection& from, Connection& to) {
    sqlite3_backup* backup = sqlite3_backup_init(to.handle(), "main", from.handle(), "main");
    if (backup == nullptr) {
        return tl::unexpected(error_of(to.handle(), sqlite3_errcode(to.handle())));
    }
    const int code = sqlite3_backup_step(backup, -1);
    const int end = sqlite3_backup_finish(backup);
    if (code != SQLITE_DONE || end != SQLITE_OK) {
        return tl::unexpected(error_of(to.handle(), code != SQLITE_DONE ? code : end));
    }
    return {};
}

Result<void> collect_rows(Connection& connection, std::string_view query, std::string_view fine,
                          std::vector<std::string>& problems) {
    SWATHBOOK_TRY(statement, connection.prepare(query));
    for (;;) {
        SWATHBOOK_TRY(has_row, statement.step());
        if (!has_row) {
            return {};
        }
        if (fine.empty() || statement.text(0) != fine) {
            problems.push_back(fmt::format("{}: {}", query, statement.text(0)));
        }
    }
}

Result<void> check_blobs(Connection& connection, VerifyReport& report) {
    SWATHBOOK_TRY(statement, connection.prepare(sql("all_blobs")));
    for (;;) {
        SWATHBOOK_TRY(has_row, statement.step());
        if (!has_row) {
            return {};
        }
        ++report.blobs;
        const auto key = statement.bytes(0);
        const Digest digest = blake2b_256(statement.bytes(1));
        if (!std::equal(key.begin(), key.end(), digest.begin(), digest.end())) {
            report.problems.push_back(
                fmt::format("Blob {} does not give its digest.", hex_of(key)));
        }
    }
}

Result<void> check_copy(const VerifyReport& report) {
    if (report.is_sound()) {
        return {};
    }
    return fail(ErrorCode::corrupt_data, "path",
                fmt::format("The copy did not pass its check: {} ({} problems in all). No file "
                            "was left; verify the notebook itself.",
                            report.problems.front(), report.problems.size()));
}

Result<void> refuse_existing(const std::string& path) {
    if (::access(path.c_str(), F_OK) == 0) {
        return fail(ErrorCode::conflict, "path",
                    fmt::format("{} exists already. Choose another name; nothing is ever "
                                "overwritten.",
                                path));
    }
    return {};
}

}  // namespace

Result<VerifyReport> verify_notebook(const std::string& path) {
    SWATHBOOK_TRY(notebook, SqliteNotebook::open(path, {OpenMode::read_only, 5000, false}, {}));
    Connection& connection = notebook->connection();
    VerifyReport report;
    SWATHBOOK_CHECK(collect_rows(connection, "PRAGMA integrity_check", "ok", report.problems));
    SWATHBOOK_CHECK(collect_rows(connection, "PRAGMA foreign_key_check", "", report.problems));
    SWATHBOOK_TRY(count, connection.number("SELECT count(*) FROM entries"));
    report.entries = count;
    SWATHBOOK_TRY(chains, notebook->chain_problems());
    for (const notebook::ChainProblem& problem : chains) {
        report.problems.push_back(text_of(problem));
    }
    SWATHBOOK_CHECK(check_blobs(connection, report));
    return report;
}

Result<VerifyReport> back_up(SqliteNotebook& notebook, const std::string& path) {
    SWATHBOOK_CHECK(refuse_existing(path));
    PartFile part(path + ".part");
    {
        SWATHBOOK_TRY(copy, Connection::open(part.path(), OpenMode::create, 0));
        SWATHBOOK_CHECK(copy_pages(notebook.connection(), copy));
    }
    SWATHBOOK_TRY(report, verify_notebook(part.path()));
    SWATHBOOK_CHECK(check_copy(report));
    SWATHBOOK_CHECK(part.rename_to(path));
    return report;
}

Result<VerifyReport> restore(const std::string& backup, const std::string& path,
                             const Outside& outside) {
    SWATHBOOK_CHECK(refuse_existing(path));
    SWATHBOOK_TRY(checked, verify_notebook(backup));
    SWATHBOOK_CHECK(check_copy(checked));
    PartFile part(path + ".part");
    {
        SWATHBOOK_TRY(from, Connection::open(backup, OpenMode::read_only, 5000));
        SWATHBOOK_TRY(to, Connection::open(part.path(), OpenMode::create, 0));
        SWATHBOOK_CHECK(copy_pages(from, to));
        std::array<std::uint8_t, 10> random{};
        SWATHBOOK_CHECK(outside.random(random));
        const std::string device = text_of(make_uuid(outside.now_ms(), random));
        SWATHBOOK_TRY(statement, to.prepare(sql("set_setting")));
        SWATHBOOK_CHECK(statement.bind(1, "device").bind(2, device).run());
    }
    SWATHBOOK_TRY(report, verify_notebook(part.path()));
    SWATHBOOK_CHECK(check_copy(report));
    SWATHBOOK_CHECK(part.rename_to(path));
    return report;
}

}  // namespace swathbook::store
