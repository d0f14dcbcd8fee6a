#include <sqlite3.h>

#include <algorithm>

#include "core/notebook/entry_text.hpp"
#include "store/sqlite/schema.hpp"
#include "tests/store/temp_notebook.hpp"

namespace swathbook::store {
namespace {

using notebook::Draft;
using notebook::Entry;
using notebook::EntryKind;

class StoreTest : public testing::Test {
protected:
    TempFolder folder;
    TestOutside world;

    std::unique_ptr<SqliteNotebook> make(const std::string& name) {
        return SqliteNotebook::open(folder.file(name), {OpenMode::create}, world.outside()).value();
    }
    Result<std::unique_ptr<SqliteNotebook>> open(const std::string& name,
                                                 OpenOptions options = {}) {
        return SqliteNotebook::open(folder.file(name), options, world.outside());
    }
    static std::vector<Entry> all(SqliteNotebook& store) {
        std::vector<Entry> entries;
        EXPECT_TRUE(
            store.each_entry(0, [&](std::int64_t, const notebook::EntryView& view) -> Result<void> {
                entries.push_back(copy_of(view));
                return {};
            }));
        return entries;
    }
    static Entry add(SqliteNotebook& store, const Draft& one) {
        return store.append(std::vector{one}).value().front();
    }
};

TEST_F(StoreTest, what_was_appended_is_read_back_after_reopening) {
    std::vector<Entry> written;
    {
        auto store = make("a.gpkg");
        written = store
                      ->append(std::vector{draft(EntryKind::job, 1, R"({"rate":"2 qt/ac"})"),
                                           draft(EntryKind::load, 2, R"({ "mix" : "45.88 gal" })")})
                      .value();
    }
    auto store = open("a.gpkg").value();
    EXPECT_EQ(all(*store), written);
    EXPECT_EQ(written[1].body, R"({"mix":"45.88 gal"})");
    EXPECT_EQ(written[1].previous, written[0].hash);
    EXPECT_EQ(store->state().value().body(EntryKind::job, subject_number(1)),
              R"({"rate":"2 qt/ac"})");
    EXPECT_TRUE(store->chain_problems().value().empty());
    EXPECT_EQ(store->device(), written[0].device);
}

TEST_F(StoreTest, a_batch_is_kept_whole_or_not_at_all) {
    auto store = make("a.gpkg");
    const auto appended =
        store->append(std::vector{draft(EntryKind::job, 1, "{}"), draft(EntryKind::job, 1, "{"),
                                  draft(EntryKind::job, 1, "{}")});
    ASSERT_FALSE(appended.has_value());
    EXPECT_EQ(appended.error().field, "body");
    EXPECT_TRUE(all(*store).empty());
    add(*store, draft(EntryKind::job, 1, "{}"));
    EXPECT_TRUE(store->chain_problems().value().empty());
}

TEST_F(StoreTest, a_clock_that_runs_back_still_gives_growing_stamps) {
    auto store = make("a.gpkg");
    const Entry first = add(*store, draft(EntryKind::job, 1, R"({"n":1})"));
    world.now_ms -= 7200000;
    const Entry second = add(*store, draft(EntryKind::job, 1, R"({"n":2})"));
    EXPECT_LT(first.made, second.made);
    EXPECT_EQ(store->state().value().field(EntryKind::job, subject_number(1), "n")->value, "2");
}

TEST_F(StoreTest, a_closed_record_can_only_be_amended) {
    auto store = make("a.gpkg");
    add(*store, draft(EntryKind::record, 1, R"({"date":"2026-04-09"})"));
    const std::string amendment =
        R"({"date":"2026-04-10","reason":"wrong jug count","total_product":"5.4 gal"})";
    EXPECT_EQ(store->append(std::vector{draft(EntryKind::amendment, 1, amendment)}).error().code,
              ErrorCode::not_permitted);
    add(*store, draft(EntryKind::record, 1,
                      R"({"closed":true,"date":"2026-04-09","total_product":"5.6 gal"})"));
    const auto edit =
        store->append(std::vector{draft(EntryKind::record, 1, R"({"total_product":"5.05 gal"})")});
    ASSERT_FALSE(edit.has_value());
    EXPECT_EQ(edit.error().code, ErrorCode::not_permitted);
    EXPECT_EQ(edit.error().field, "subject");
    add(*store, draft(EntryKind::amendment, 1, amendment));
    const auto state = store->state().value();
    EXPECT_EQ(state.field(EntryKind::record, subject_number(1), "total_product")->value,
              "\"5.6 gal\"");
    EXPECT_EQ(state.amendments(subject_number(1)).size(), 1U);
    EXPECT_TRUE(state.conflicts().empty());
}

TEST_F(StoreTest, two_notebooks_merged_either_way_are_in_one_state) {
    auto left = make("left.gpkg");
    auto right = make("right.gpkg");
    add(*left, draft(EntryKind::stand, 1, R"({"name":"North"})"));
    ASSERT_TRUE(right->merge(all(*left)).has_value());
    world.now_ms += 5;
    add(*right, draft(EntryKind::stand, 1, R"({"name":"North field","area":"12 ac"})"));
    add(*left, draft(EntryKind::stand, 1, R"({"area":"12.4 ac"})"));
    const auto to_left = left->merge(all(*right)).value();
    EXPECT_EQ(to_left.added, 1U);
    EXPECT_EQ(to_left.already_here, 1U);
    ASSERT_TRUE(right->merge(all(*left)).has_value());
    EXPECT_EQ(left->merge(all(*right)).value().added, 0U);  // again: nothing new
    EXPECT_EQ(state_text(left->state().value()), state_text(right->state().value()));
    EXPECT_EQ(all(*left).size(), 3U);
    EXPECT_TRUE(left->chain_problems().value().empty());
    EXPECT_NE(left->device(), right->device());
}

TEST_F(StoreTest, an_entry_made_after_a_merge_is_later_than_all_it_has_seen) {
    auto left = make("left.gpkg");
    auto right = make("right.gpkg");
    world.now_ms += 3600000;
    const Entry ahead = add(*left, draft(EntryKind::stand, 1, R"({"name":"fast clock"})"));
    world.now_ms -= 3600000;
    ASSERT_TRUE(right->merge(std::vector{ahead}).has_value());
    const Entry answer = add(*right, draft(EntryKind::stand, 1, R"({"name":"corrected"})"));
    EXPECT_LT(ahead.made, answer.made);
    EXPECT_EQ(right->state().value().field(EntryKind::stand, subject_number(1), "name")->value,
              "\"corrected\"");
}

TEST_F(StoreTest, altered_forged_and_far_future_entries_are_refused_by_name) {
    auto left = make("left.gpkg");
    auto right = make("right.gpkg");
    auto entries = left->append(std::vector{draft(EntryKind::job, 1, R"({"n":1})"),
                                            draft(EntryKind::job, 1, R"({"n":2})"),
                                            draft(EntryKind::job, 1, R"({"n":3})")})
                       .value();
    entries[1].body = R"({"n":9})";
    world.now_ms += 25 * 3600000LL;
    entries.push_back(add(*left, draft(EntryKind::job, 1, R"({"n":4})")));
    world.now_ms -= 25 * 3600000LL;
    const auto report = right->merge(entries).value();
    EXPECT_EQ(report.added, 2U);
    ASSERT_EQ(report.refused.size(), 2U);
    EXPECT_EQ(report.refused[0].entry, entries[1].id);
    EXPECT_EQ(report.refused[0].error.code, ErrorCode::corrupt_data);
    EXPECT_EQ(report.refused[1].error.code, ErrorCode::out_of_range);
    const auto problems = right->chain_problems().value();
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].fault, notebook::ChainFault::missing_link);
    Entry twin = entries[0];
    twin.author = "B. Field";
    twin.hash = hash_of(view_of(twin));
    EXPECT_EQ(right->merge(std::vector{twin}).value().refused.at(0).error.code,
              ErrorCode::conflict);
}

TEST_F(StoreTest, a_walk_from_a_cursor_sees_only_what_is_new) {
    auto store = make("a.gpkg");
    add(*store, draft(EntryKind::job, 1, "{}"));
    std::int64_t cursor = 0;
    const auto look = [&] {
        int seen = 0;
        EXPECT_TRUE(store->each_entry(
            cursor, [&](std::int64_t number, const notebook::EntryView&) -> Result<void> {
                cursor = number;
                ++seen;
                return {};
            }));
        return seen;
    };
    EXPECT_EQ(look(), 1);
    EXPECT_EQ(look(), 0);
    add(*store, draft(EntryKind::job, 1, "{}"));
    add(*store, draft(EntryKind::job, 1, "{}"));
    EXPECT_EQ(look(), 2);
}

TEST_F(StoreTest, a_failing_visitor_ends_the_walk_with_its_error) {
    auto store = make("a.gpkg");
    add(*store, draft(EntryKind::job, 1, "{}"));
    const auto walked =
        store->each_entry(0, [](std::int64_t, const notebook::EntryView&) -> Result<void> {
            return fail(ErrorCode::io, "printer", "out of paper");
        });
    EXPECT_EQ(walked.error().field, "printer");
}

TEST_F(StoreTest, blobs_are_found_by_their_content_and_kept_once) {
    auto store = make("a.gpkg");
    const std::vector<std::uint8_t> photo(100000, 0x5a);
    const Digest digest = store->put_blob(photo).value();
    EXPECT_EQ(store->put_blob(photo).value(), digest);
    EXPECT_EQ(store->blob(digest).value(), photo);
    EXPECT_EQ(store->connection().number("SELECT count(*) FROM blobs").value(), 1);
    EXPECT_TRUE(store->blob(store->put_blob({}).value()).value().empty());
    EXPECT_EQ(store->blob(Digest{}).error().code, ErrorCode::not_found);
    ASSERT_TRUE(
        store->connection().execute("UPDATE blobs SET content = x'00' WHERE length(content) > 0"));
    EXPECT_EQ(store->blob(digest).error().code, ErrorCode::corrupt_data);
}

TEST_F(StoreTest, settings_are_kept_and_changed) {
    {
        auto store = make("a.gpkg");
        EXPECT_FALSE(store->setting("language").value().has_value());
        ASSERT_TRUE(store->set_setting("language", "es"));
        ASSERT_TRUE(store->set_setting("language", "en"));
    }
    EXPECT_EQ(open("a.gpkg").value()->setting("language").value(), "en");
}

TEST_F(StoreTest, the_file_itself_refuses_to_alter_or_remove_an_entry) {
    auto store = make("a.gpkg");
    add(*store, draft(EntryKind::job, 1, "{}"));
    EXPECT_EQ(store->connection().execute("UPDATE entries SET author = 'x'").error().code,
              ErrorCode::conflict);
    EXPECT_EQ(store->connection().execute("DELETE FROM entries").error().code, ErrorCode::conflict);
    EXPECT_EQ(all(*store).size(), 1U);
}

// ---- What can go wrong outside ----

TEST_F(StoreTest, creating_never_overwrites_and_opening_never_creates) {
    make("a.gpkg");
    EXPECT_EQ(open("a.gpkg", {OpenMode::create}).error().code, ErrorCode::conflict);
    EXPECT_EQ(open("b.gpkg").error().code, ErrorCode::not_found);
    EXPECT_EQ(open("no/such/folder/b.gpkg", {OpenMode::create}).error().code, ErrorCode::io);
}

TEST_F(StoreTest, other_files_are_not_taken_for_notebooks) {
    ASSERT_EQ(run_command("printf 'tip,flow\\n' > '" + folder.file("text.gpkg") + "'").status, 0);
    EXPECT_EQ(open("text.gpkg").error().code, ErrorCode::corrupt_data);
    ASSERT_EQ(
        run_command("head -c 5000 /dev/zero | tr '\\0' 'x' > '" + folder.file("long.gpkg") + "'")
            .status,
        0);
    EXPECT_EQ(open("long.gpkg").error().code, ErrorCode::corrupt_data);
    ASSERT_EQ(run_command("sqlite3 '" + folder.file("other.db") + "' 'CREATE TABLE a (b)'").status,
              0);
    EXPECT_EQ(open("other.db").error().code, ErrorCode::invalid_input);
}

TEST_F(StoreTest, a_newer_notebook_is_left_alone) {
    {
        auto store = make("a.gpkg");
        ASSERT_TRUE(store->connection().execute(
            "INSERT INTO schema_migrations VALUES ('209901010000_later')"));
    }
    const auto opened = open("a.gpkg");
    ASSERT_FALSE(opened.has_value());
    EXPECT_EQ(opened.error().code, ErrorCode::unsupported);
    EXPECT_NE(opened.error().detail.find("209901010000_later"), std::string::npos);
}

TEST_F(StoreTest, a_damaged_file_is_named_as_damaged) {
    {
        auto store = make("a.gpkg");
        for (int i = 0; i < 300; ++i) {
            add(*store, draft(EntryKind::job, 1, R"({"note":")" + std::string(200, 'x') + R"("})"));
        }
    }
    // Pages in the middle are overwritten with noise, as a failing card does.
    ASSERT_EQ(run_command("dd if=/dev/zero of='" + folder.file("a.gpkg") +
                          "' bs=4096 seek=30 count=4 conv=notrunc")
                  .status,
              0);
    const auto opened = open("a.gpkg");
    ASSERT_FALSE(opened.has_value());
    EXPECT_EQ(opened.error().code, ErrorCode::corrupt_data);
    ASSERT_EQ(run_command("truncate -s 9000 '" + folder.file("a.gpkg") + "'").status, 0);
    EXPECT_EQ(open("a.gpkg").error().code, ErrorCode::corrupt_data);
}

TEST_F(StoreTest, a_full_disk_is_told_and_leaves_the_notebook_as_it_was) {
    auto store = make("a.gpkg");
    const Entry first = add(*store, draft(EntryKind::job, 1, "{}"));
    // SQLite answers SQLITE_FULL when the file may not grow, as it does when the disk is full.
    const std::int64_t pages = store->connection().number("PRAGMA page_count").value();
    ASSERT_TRUE(store->connection().number("PRAGMA max_page_count = " + std::to_string(pages)));
    const auto big = store->append(
        std::vector{draft(EntryKind::job, 1, R"({"note":")" + std::string(50000, 'x') + R"("})")});
    ASSERT_FALSE(big.has_value());
    EXPECT_EQ(big.error().code, ErrorCode::io);
    EXPECT_NE(big.error().detail.find("disk is full"), std::string::npos);
    ASSERT_TRUE(store->connection().number("PRAGMA max_page_count = 1000000"));
    EXPECT_EQ(all(*store), std::vector{first});
    add(*store, draft(EntryKind::job, 1, "{}"));
    EXPECT_TRUE(store->chain_problems().value().empty());
}

TEST_F(StoreTest, a_notebook_opened_for_reading_is_not_written) {
    make("a.gpkg");
    auto store = open("a.gpkg", {OpenMode::read_only}).value();
    const auto appended = store->append(std::vector{draft(EntryKind::job, 1, "{}")});
    ASSERT_FALSE(appended.has_value());
    EXPECT_EQ(appended.error().code, ErrorCode::io);
    EXPECT_TRUE(all(*store).empty());
}

TEST_F(StoreTest, a_lock_held_elsewhere_is_waited_for_and_then_told) {
    auto holder = make("a.gpkg");
    auto store = open("a.gpkg", {OpenMode::read_write, 50}).value();
    {
        auto transaction = Transaction::begin(holder->connection()).value();
        const auto appended = store->append(std::vector{draft(EntryKind::job, 1, "{}")});
        ASSERT_FALSE(appended.has_value());
        EXPECT_EQ(appended.error().code, ErrorCode::unavailable);
    }
    EXPECT_TRUE(store->append(std::vector{draft(EntryKind::job, 1, "{}")}));
}

TEST_F(StoreTest, two_programs_writing_at_once_both_keep_every_entry) {
    make("a.gpkg");
    const std::string writer =
        std::string(SWATHBOOK_STORE_WRITER) + " '" + folder.file("a.gpkg") + "' 100 > ";
    const auto result = run_command(writer + folder.file("one") + " & " + writer +
                                    folder.file("two") + "; first=$?; wait $! && exit $first");
    EXPECT_EQ(result.status, 0) << result.output;
    auto store = open("a.gpkg").value();
    EXPECT_EQ(all(*store).size(), 200U);
    EXPECT_TRUE(store->chain_problems().value().empty());
}

// ---- Schema ----

TEST_F(StoreTest, the_schema_is_the_one_on_record) {
    auto store = make("a.gpkg");
    const std::string now = schema_text(store->connection()).value();
    const auto kept = run_command("cat store/schema.snapshot").output;
    EXPECT_EQ(now, kept)
        << "A migration changed the schema: after review, replace store/schema.snapshot.";
}

TEST_F(StoreTest, every_old_schema_opens_and_is_brought_up_to_date) {
    std::string current;
    {
        auto store = make("current.gpkg");
        current = schema_text(store->connection()).value();
    }
    for (std::size_t age = 1; age <= 2; ++age) {
        const std::string name = "old" + std::to_string(age) + ".gpkg";
        {
            auto connection = Connection::open(folder.file(name), OpenMode::create, 0).value();
            ASSERT_TRUE(migrate(connection, age));
        }
        EXPECT_EQ(open(name, {OpenMode::read_only}).has_value(), age == 2) << age;
        auto store = open(name);
        ASSERT_TRUE(store.has_value()) << store.error().detail;
        EXPECT_EQ(schema_text((*store)->connection()).value(), current);
        add(**store, draft(EntryKind::job, 1, "{}"));
        EXPECT_EQ(all(**store).size(), 1U);
    }
}

TEST_F(StoreTest, durability_is_the_rollback_journal_with_full_sync) {
    auto store = make("a.gpkg");
    EXPECT_EQ(store->connection().word("PRAGMA journal_mode").value(), "truncate");
    EXPECT_EQ(store->connection().number("PRAGMA synchronous").value(), 2);
    EXPECT_EQ(store->connection().number("PRAGMA foreign_keys").value(), 1);
}

}  // namespace
}  // namespace swathbook::store
