#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "store/notebook_store.hpp"
#include "store/outside.hpp"
#include "store/sqlite/connection.hpp"

namespace swathbook::store {

struct OpenOptions {
    OpenMode mode = OpenMode::read_write;
    int busy_timeout_ms = 5000;  ///< how long to wait for another program's lock
    bool checks_file = true;     ///< look for damage when opening (reads the whole file)
};

/// A notebook in one SQLite file that is also an OGC GeoPackage 1.3.
///
/// Rollback journal (TRUNCATE) with synchronous FULL: what was acknowledged survives the end of the
/// process at any instant. Several programs may have the file open; they wait for one another.
class SqliteNotebook final : public NotebookStore {
public:
    /// Opens or creates a notebook. Creating refuses to overwrite; opening brings an older file up
    /// to date.
    ///
    /// @errors not_found{path}, conflict{path} when it exists already, io{path},
    ///         corrupt_data{path}, invalid_input{path} when it is another kind of file,
    ///         unsupported{path} when a newer version made it
    [[nodiscard]] static Result<std::unique_ptr<SqliteNotebook>> open(const std::string& path,
                                                                      OpenOptions options,
                                                                      Outside outside);

    [[nodiscard]] Result<std::vector<notebook::Entry>> append(
        std::span<const notebook::Draft> drafts) override;
    [[nodiscard]] Result<MergeReport> merge(std::span<const notebook::Entry> entries) override;
    [[nodiscard]] Result<void> each_entry(std::int64_t after, const EntryVisitor& visit) override;
    [[nodiscard]] Result<Extent> extent() override;
    [[nodiscard]] Result<std::vector<notebook::Entry>> entries_of(notebook::EntryKind kind,
                                                                  const Uuid& subject) override;
    [[nodiscard]] Result<notebook::Fold> state() override;
    [[nodiscard]] Result<std::vector<notebook::ChainProblem>> chain_problems() override;
    [[nodiscard]] Result<Digest> put_blob(std::span<const std::uint8_t> bytes) override;
    [[nodiscard]] Result<std::vector<std::uint8_t>> blob(const Digest& digest) override;
    [[nodiscard]] Result<std::vector<Digest>> blobs() override;
    [[nodiscard]] Result<std::uint64_t> blob_size(const Digest& digest) override;
    [[nodiscard]] Result<std::optional<std::string>> setting(std::string_view name) override;
    [[nodiscard]] Result<void> set_setting(std::string_view name, std::string_view value) override;
    [[nodiscard]] Uuid device() const override { return device_; }

    /// Writes the feature tables anew from the entries, for instance after another program changed
    /// them.
    [[nodiscard]] Result<void> rebuild_features();

    [[nodiscard]] Connection& connection() { return connection_; }

private:
    SqliteNotebook(Connection connection, Outside outside)
        : connection_(std::move(connection)), outside_(std::move(outside)) {}

    [[nodiscard]] Result<Uuid> new_id();
    [[nodiscard]] Result<void> load_device(bool may_write);
    [[nodiscard]] Result<notebook::ChainHead> head();
    [[nodiscard]] Result<void> insert(const notebook::Entry& entry);
    /// The hash kept under an id; nothing when the id is new.
    [[nodiscard]] Result<std::optional<Digest>> hash_kept(const Uuid& id);
    [[nodiscard]] Result<void> check_draft(const notebook::Draft& draft);
    [[nodiscard]] Result<void> merge_one(const notebook::Entry& entry, std::int64_t now_ms,
                                         MergeReport& report);

    Connection connection_;
    Outside outside_;
    Uuid device_;
    std::optional<Statement> insert_;  ///< kept ready: a merge inserts many
    std::optional<Statement> find_;
};

}  // namespace swathbook::store
