#include <algorithm>

#include "store/sqlite/sqlite_backup.hpp"
#include "tests/store/temp_notebook.hpp"

namespace swathbook::store {
namespace {

using notebook::EntryKind;

class BackupTest : public testing::Test {
protected:
    TempFolder folder;
    TestOutside world;
    std::unique_ptr<SqliteNotebook> store =
        SqliteNotebook::open(folder.file("a.gpkg"), {OpenMode::create}, world.outside()).value();

    void fill() {
        for (std::uint8_t i = 0; i < 20; ++i) {
            ASSERT_TRUE(store->append(std::vector{
                draft(EntryKind::job, i, R"({"note":")" + std::string(300, 'x') + R"("})")}));
        }
        ASSERT_TRUE(store->put_blob(std::vector<std::uint8_t>(5000, 1)));
    }
    std::int64_t files() {
        return std::stoll(run_command("ls -A '" + folder.file("") + "' | wc -l").output);
    }
};

TEST_F(BackupTest, a_backup_is_a_sound_notebook_with_the_same_state) {
    fill();
    const auto report = back_up(*store, folder.file("b.gpkg")).value();
    EXPECT_TRUE(report.is_sound());
    EXPECT_EQ(report.entries, 20);
    EXPECT_EQ(report.blobs, 1);
    auto copy =
        SqliteNotebook::open(folder.file("b.gpkg"), {OpenMode::read_only}, world.outside()).value();
    EXPECT_EQ(state_text(copy->state().value()), state_text(store->state().value()));
    EXPECT_EQ(validate_geopackage(folder.file("b.gpkg")).status, 0);
    EXPECT_EQ(files(), 2 + 1);  // both notebooks and the journal of the open one, nothing else
}

TEST_F(BackupTest, a_backup_never_overwrites) {
    fill();
    ASSERT_TRUE(back_up(*store, folder.file("b.gpkg")));
    EXPECT_EQ(back_up(*store, folder.file("b.gpkg")).error().code, ErrorCode::conflict);
    EXPECT_EQ(back_up(*store, folder.file("no/such/b.gpkg")).error().code, ErrorCode::io);
}

TEST_F(BackupTest, a_restored_notebook_goes_on_with_a_chain_of_its_own) {
    fill();
    ASSERT_TRUE(back_up(*store, folder.file("b.gpkg")));
    ASSERT_TRUE(restore(folder.file("b.gpkg"), folder.file("c.gpkg"), world.outside()));
    auto restored = SqliteNotebook::open(folder.file("c.gpkg"), {}, world.outside()).value();
    EXPECT_NE(restored->device(), store->device());
    const auto mine = store->append(std::vector{draft(EntryKind::job, 1, R"({"n":1})")}).value();
    ASSERT_TRUE(restored->append(std::vector{draft(EntryKind::job, 1, R"({"n":2})")}));
    EXPECT_EQ(restored->merge(mine).value().added, 1U);
    EXPECT_TRUE(restored->chain_problems().value().empty());
}

TEST_F(BackupTest, verifying_names_an_entry_that_was_altered_behind_our_back) {
    fill();
    // Somebody with a database tool drops the guard and edits.
    ASSERT_EQ(run_command("sqlite3 '" + folder.file("a.gpkg") +
                          "' \"DROP TRIGGER entries_are_never_altered; UPDATE entries SET author = "
                          "'B. Field' WHERE sequence = 7\"")
                  .status,
              0);
    const auto report = verify_notebook(folder.file("a.gpkg")).value();
    ASSERT_EQ(report.problems.size(), 1U);
    const auto altered =
        store->connection().word("SELECT lower(hex(id)) FROM entries WHERE sequence = 7").value();
    std::string named = report.problems[0];
    named.erase(std::remove(named.begin(), named.end(), '-'), named.end());
    EXPECT_NE(named.find(altered), std::string::npos) << report.problems[0];
    // Such a notebook is not passed on as a sound backup, and no half file is left.
    EXPECT_EQ(back_up(*store, folder.file("b.gpkg")).error().code, ErrorCode::corrupt_data);
    EXPECT_EQ(restore(folder.file("a.gpkg"), folder.file("c.gpkg"), world.outside()).error().code,
              ErrorCode::corrupt_data);
    EXPECT_EQ(run_command("ls '" + folder.file("b.gpkg") + "' '" + folder.file("b.gpkg.part") +
                          "' '" + folder.file("c.gpkg") + "' 2>/dev/null | wc -l")
                  .output,
              "0\n");
}

TEST_F(BackupTest, a_notebook_in_use_is_backed_up_as_of_one_instant) {
    fill();
    auto other = SqliteNotebook::open(folder.file("a.gpkg"), {}, world.outside()).value();
    ASSERT_TRUE(other->append(std::vector{draft(EntryKind::job, 1, "{}")}));
    EXPECT_EQ(back_up(*store, folder.file("b.gpkg")).value().entries, 21);
}

}  // namespace
}  // namespace swathbook::store
