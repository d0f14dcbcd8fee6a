#include "store/sqlite/sqlite_notebook.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

#include "core/notebook/body.hpp"
#include "core/notebook/permission.hpp"
#include "store/sqlite/features.hpp"
#include "store/sqlite/rows.hpp"
#include "store/sqlite/schema.hpp"
#include "store/sqlite/spatial_functions.hpp"
#include "store/sqlite/sql_text.hpp"

namespace swathbook::store {

using notebook::Draft;
using notebook::Entry;
using notebook::EntryKind;
using notebook::EntryView;
using notebook::Fold;

namespace {

constexpr std::string_view device_setting = "device";

using Thing = std::pair<EntryKind, Uuid>;

Result<void> set_durability(Connection& connection) {
    SWATHBOOK_TRY(mode, connection.word("PRAGMA journal_mode = TRUNCATE"));
    if (mode != "truncate") {
        return fail(ErrorCode::unavailable, "path",
                    fmt::format("The notebook is held in another journal mode ({}) by another "
                                "program. Close that program and try again.",
                                mode));
    }
    return connection.execute("PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
}

Result<void> check_file(Connection& connection) {
    SWATHBOOK_TRY(verdict, connection.word("PRAGMA quick_check(1)"));
    if (verdict != "ok") {
        return fail(ErrorCode::corrupt_data, "path",
                    fmt::format("The notebook file is damaged ({}). Restore it from a backup; "
                                "keep the damaged file.",
                                verdict));
    }
    return {};
}

Result<void> prepare_file(Connection& connection, const OpenOptions& options) {
    if (options.mode != OpenMode::create) {
        SWATHBOOK_CHECK(check_identity(connection));
        if (options.checks_file) {
            SWATHBOOK_CHECK(check_file(connection));
        }
    }
    if (options.mode != OpenMode::read_only) {
        SWATHBOOK_CHECK(set_durability(connection));
        return migrate(connection);
    }
    SWATHBOOK_TRY(current, is_current(connection));
    if (!current) {
        return fail(ErrorCode::unsupported, "path",
                    "An older version of this program made the notebook. Open it once for writing, "
                    "so that it is brought up to date.");
    }
    return {};
}

/// Walks the rows of a statement as entries.
template <class Visit>
Result<void> each_row(Statement& statement, Visit visit) {
    for (;;) {
        SWATHBOOK_TRY(has_row, statement.step());
        if (!has_row) {
            return {};
        }
        SWATHBOOK_CHECK(visit(statement));
    }
}

Result<std::vector<Entry>> read_entries(Statement& statement) {
    std::vector<Entry> entries;
    SWATHBOOK_CHECK(each_row(statement, [&](const Statement& row) -> Result<void> {
        SWATHBOOK_TRY(view, entry_of_row(row));
        entries.push_back(copy_of(view));
        return {};
    }));
    return entries;
}

}  // namespace

Result<std::unique_ptr<SqliteNotebook>> SqliteNotebook::open(const std::string& path,
                                                             OpenOptions options, Outside outside) {
    SWATHBOOK_TRY(connection, Connection::open(path, options.mode, options.busy_timeout_ms));
    SWATHBOOK_CHECK(add_spatial_functions(connection));
    SWATHBOOK_CHECK(prepare_file(connection, options));
    std::unique_ptr<SqliteNotebook> made(
        new SqliteNotebook(std::move(connection), std::move(outside)));
    SWATHBOOK_CHECK(made->load_device(options.mode != OpenMode::read_only));
    return made;
}

Result<Uuid> SqliteNotebook::new_id() {
    std::array<std::uint8_t, 10> random{};
    SWATHBOOK_CHECK(outside_.random(random));
    return make_uuid(outside_.now_ms(), random);
}

Result<void> SqliteNotebook::load_device(bool may_write) {
    SWATHBOOK_TRY(known, setting(device_setting));
    if (!known && may_write) {
        SWATHBOOK_TRY(transaction, Transaction::begin(connection_));
        SWATHBOOK_TRY(again, setting(device_setting));
        if (!again) {
            SWATHBOOK_TRY(id, new_id());
            SWATHBOOK_CHECK(set_setting(device_setting, text_of(id)));
            SWATHBOOK_CHECK(transaction.commit());
        }
        SWATHBOOK_TRY(kept, setting(device_setting));
        known = kept;
    }
    if (known) {
        const auto id = parse_uuid(*known, device_setting);
        if (!id) {
            return fail(ErrorCode::corrupt_data, "path",
                        "The notebook does not know its device: the file is damaged. Restore it "
                        "from a backup.");
        }
        device_ = *id;
    }
    return {};
}

Result<notebook::ChainHead> SqliteNotebook::head() {
    notebook::ChainHead head;
    SWATHBOOK_TRY(last, connection_.prepare(sql("last_of_device")));
    last.bind_bytes(1, device_.bytes);
    SWATHBOOK_TRY(has_entry, last.step());
    if (has_entry && last.bytes(0).size() == head.hash.size()) {
        std::copy_n(last.bytes(0).begin(), head.hash.size(), head.hash.begin());
    }
    SWATHBOOK_TRY(time, connection_.prepare(sql("last_time")));
    SWATHBOOK_TRY(has_time, time.step());
    if (has_time) {
        head.last = {time.integer(0), static_cast<std::uint16_t>(time.integer(1))};
    }
    return head;
}

Result<void> SqliteNotebook::insert(const Entry& entry) {
    if (!insert_) {
        SWATHBOOK_TRY(prepared, connection_.prepare(sql("append_entry")));
        insert_ = std::move(prepared);
    }
    insert_->bind_bytes(1, entry.id.bytes).bind(2, entry.author);
    insert_->bind_bytes(3, entry.device.bytes).bind(4, entry.made.milliseconds);
    insert_->bind(5, std::int64_t{entry.made.counter}).bind(6, word_of(entry.kind));
    insert_->bind_bytes(7, entry.subject.bytes).bind(8, entry.body);
    return insert_->bind_bytes(9, entry.previous).bind_bytes(10, entry.hash).run();
}

Result<std::optional<Digest>> SqliteNotebook::hash_kept(const Uuid& id) {
    if (!find_) {
        SWATHBOOK_TRY(prepared, connection_.prepare(sql("entry_hash")));
        find_ = std::move(prepared);
    }
    SWATHBOOK_TRY(is_known, find_->bind_bytes(1, id.bytes).step());
    std::optional<Digest> hash;
    if (is_known && find_->bytes(0).size() == sizeof(Digest)) {
        std::copy_n(find_->bytes(0).begin(), sizeof(Digest), hash.emplace().begin());
    }
    find_->reset();
    return hash;
}

Result<void> SqliteNotebook::check_draft(const Draft& draft) {
    SWATHBOOK_TRY(body, notebook::canonical_body(draft.body));
    SWATHBOOK_CHECK(check_shapes(connection_, draft.kind, body));
    if (draft.kind != EntryKind::record && draft.kind != EntryKind::amendment) {
        return {};
    }
    SWATHBOOK_TRY(entries, entries_of(EntryKind::record, draft.subject));
    SWATHBOOK_TRY(state, notebook::fold(entries));
    return notebook::check_permitted(draft.kind, draft.subject, state.is_closed(draft.subject));
}

namespace {

/// Writes the features of every thing named, once each.
Result<void> derive(SqliteNotebook& store, const std::set<Thing>& things) {
    for (const auto& [kind, subject] : things) {
        SWATHBOOK_TRY(entries, store.entries_of(kind, subject));
        SWATHBOOK_TRY(state, notebook::fold(entries));
        SWATHBOOK_CHECK(write_features(store.connection(), kind, subject, state));
    }
    return {};
}

}  // namespace

Result<std::vector<Entry>> SqliteNotebook::append(std::span<const Draft> drafts) {
    SWATHBOOK_TRY(transaction, Transaction::begin(connection_));
    SWATHBOOK_TRY(chain, head());
    std::vector<Entry> entries;
    std::set<Thing> changed;
    for (const Draft& draft : drafts) {
        SWATHBOOK_CHECK(check_draft(draft));
        std::array<std::uint8_t, 10> random{};
        SWATHBOOK_CHECK(outside_.random(random));
        SWATHBOOK_TRY(entry, notebook::seal(draft, device_, chain, outside_.now_ms(), random));
        SWATHBOOK_CHECK(insert(entry));
        chain = {entry.made, entry.hash};
        if (has_features(entry.kind)) {
            changed.emplace(entry.kind, entry.subject);
        }
        entries.push_back(std::move(entry));
    }
    SWATHBOOK_CHECK(derive(*this, changed));
    SWATHBOOK_CHECK(transaction.commit());
    return entries;
}

Result<void> SqliteNotebook::merge_one(const Entry& entry, std::int64_t now_ms,
                                       MergeReport& report) {
    if (const auto checked = check_entry(view_of(entry), now_ms); !checked) {
        report.refused.push_back(Refusal{entry.id, checked.error()});
        return {};
    }
    SWATHBOOK_TRY(kept, hash_kept(entry.id));
    if (!kept) {
        ++report.added;
        return insert(entry);
    }
    if (*kept == entry.hash) {
        ++report.already_here;
        return {};
    }
    report.refused.push_back(
        Refusal{entry.id, Error{ErrorCode::conflict, "id",
                                fmt::format("Another entry with the id {} is already here. One "
                                            "of the two was forged or damaged.",
                                            text_of(entry.id))}});
    return {};
}

Result<MergeReport> SqliteNotebook::merge(std::span<const Entry> entries) {
    SWATHBOOK_TRY(transaction, Transaction::begin(connection_));
    MergeReport report;
    std::set<Thing> changed;
    const std::int64_t now_ms = outside_.now_ms();
    for (const Entry& entry : entries) {
        const std::size_t before = report.added;
        SWATHBOOK_CHECK(merge_one(entry, now_ms, report));
        if (report.added > before && has_features(entry.kind)) {
            changed.emplace(entry.kind, entry.subject);
        }
    }
    SWATHBOOK_CHECK(derive(*this, changed));
    SWATHBOOK_CHECK(transaction.commit());
    return report;
}

Result<void> SqliteNotebook::each_entry(std::int64_t after, const EntryVisitor& visit) {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("entries_after")));
    statement.bind(1, after);
    return each_row(statement, [&](const Statement& row) -> Result<void> {
        SWATHBOOK_TRY(view, entry_of_row(row));
        return visit(row.integer(0), view);
    });
}

Result<Extent> SqliteNotebook::extent() {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("extent")));
    SWATHBOOK_CHECK(statement.step());
    return Extent{statement.integer(0), statement.integer(1)};
}

Result<std::vector<Entry>> SqliteNotebook::entries_of(EntryKind kind, const Uuid& subject) {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("entries_of_subject")));
    statement.bind_bytes(1, subject.bytes).bind(2, word_of(kind));
    return read_entries(statement);
}

Result<Fold> SqliteNotebook::state() {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("fold_columns")));
    Fold fold;
    SWATHBOOK_CHECK(each_row(statement, [&](const Statement& row) -> Result<void> {
        SWATHBOOK_TRY(view, foldable_of_row(row));
        return fold.add(view);
    }));
    fold.settle();
    return fold;
}

Result<std::vector<notebook::ChainProblem>> SqliteNotebook::chain_problems() {
    std::vector<notebook::Link> links;
    SWATHBOOK_CHECK(each_entry(0, [&](std::int64_t, const EntryView& entry) -> Result<void> {
        links.push_back(notebook::link_of(entry));
        return {};
    }));
    return notebook::verify_chains(links);
}

Result<Digest> SqliteNotebook::put_blob(std::span<const std::uint8_t> bytes) {
    if (bytes.size() > largest_blob) {
        return fail(ErrorCode::out_of_range, "blob",
                    fmt::format("The blob has {} bytes; the limit is {} (256 MiB). Make it "
                                "smaller or keep it outside the notebook.",
                                bytes.size(), largest_blob));
    }
    const Digest digest = blake2b_256(bytes);
    SWATHBOOK_TRY(statement, connection_.prepare(sql("put_blob")));
    SWATHBOOK_CHECK(statement.bind_bytes(1, digest).bind_bytes(2, bytes).run());
    return digest;
}

Result<std::vector<Digest>> SqliteNotebook::blobs() {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("blob_digests")));
    std::vector<Digest> digests;
    for (;;) {
        SWATHBOOK_TRY(has_row, statement.step());
        if (!has_row) {
            return digests;
        }
        const auto bytes = statement.bytes(0);
        std::copy_n(bytes.begin(), std::min(bytes.size(), sizeof(Digest)),
                    digests.emplace_back().begin());
    }
}

namespace {

tl::unexpected<Error> no_blob(const Digest& digest) {
    return fail(ErrorCode::not_found, "blob",
                fmt::format("The notebook holds no blob {}.", hex_of(digest)));
}

}  // namespace

Result<std::uint64_t> SqliteNotebook::blob_size(const Digest& digest) {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("blob_size")));
    SWATHBOOK_TRY(has_row, statement.bind_bytes(1, digest).step());
    if (!has_row) {
        return no_blob(digest);
    }
    return static_cast<std::uint64_t>(statement.integer(0));
}

Result<std::vector<std::uint8_t>> SqliteNotebook::blob(const Digest& digest) {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("blob")));
    statement.bind_bytes(1, digest);
    SWATHBOOK_TRY(has_row, statement.step());
    if (!has_row) {
        return no_blob(digest);
    }
    const auto bytes = statement.bytes(0);
    if (blake2b_256(bytes) != digest) {
        return fail(ErrorCode::corrupt_data, "blob",
                    fmt::format("The blob {} does not give its digest: it is damaged. Restore the "
                                "notebook from a backup.",
                                hex_of(digest)));
    }
    return std::vector<std::uint8_t>(bytes.begin(), bytes.end());
}

Result<std::optional<std::string>> SqliteNotebook::setting(std::string_view name) {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("setting")));
    statement.bind(1, name);
    SWATHBOOK_TRY(has_row, statement.step());
    return has_row ? std::optional(std::string(statement.text(0))) : std::nullopt;
}

Result<void> SqliteNotebook::set_setting(std::string_view name, std::string_view value) {
    SWATHBOOK_TRY(statement, connection_.prepare(sql("set_setting")));
    return statement.bind(1, name).bind(2, value).run();
}

Result<void> SqliteNotebook::rebuild_features() {
    SWATHBOOK_TRY(transaction, Transaction::begin(connection_));
    for (const std::string_view table : {"stands", "setbacks", "passes", "coverage"}) {
        SWATHBOOK_CHECK(connection_.execute(fmt::format("DELETE FROM {}", table)));
    }
    std::set<Thing> things;
    for (const EntryKind kind : {EntryKind::stand, EntryKind::setback, EntryKind::pass}) {
        SWATHBOOK_TRY(statement, connection_.prepare(sql("subjects_of_kind")));
        statement.bind(1, word_of(kind));
        SWATHBOOK_CHECK(each_row(statement, [&](const Statement& row) -> Result<void> {
            Uuid subject;
            const auto bytes = row.bytes(0);
            std::copy_n(bytes.begin(), std::min(bytes.size(), subject.bytes.size()),
                        subject.bytes.begin());
            things.emplace(kind, subject);
            return {};
        }));
    }
    SWATHBOOK_CHECK(derive(*this, things));
    return transaction.commit();
}

}  // namespace swathbook::store
