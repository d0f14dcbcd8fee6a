#include <fcntl.h>
#include <spawn.h>
#include <sys/wait.h>
#include <csignal>

#include <map>
#include <random>

#include "store/sqlite/sqlite_backup.hpp"
#include "tests/store/temp_notebook.hpp"

extern char** environ;

namespace swathbook::store {
namespace {

/// A writer that runs until it is killed, and what it has said.
class Writer {
public:
    explicit Writer(std::string path) {
        int ends[2] = {-1, -1};
        EXPECT_EQ(pipe2(ends, O_CLOEXEC), 0);
        said_ = ends[0];
        posix_spawn_file_actions_t actions;
        posix_spawn_file_actions_init(&actions);
        posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
        std::string program = SWATHBOOK_STORE_WRITER;
        std::string most = "1000000";
        char* arguments[] = {program.data(), path.data(), most.data(), nullptr};
        EXPECT_EQ(posix_spawn(&child_, program.c_str(), &actions, nullptr, arguments, environ), 0);
        posix_spawn_file_actions_destroy(&actions);
        close(ends[1]);
    }
    ~Writer() { close(said_); }
    Writer(const Writer&) = delete;
    Writer& operator=(const Writer&) = delete;

    /// Waits until so many entries were acknowledged, so that a slow disk cannot empty the test.
    void await(std::size_t count) {
        while (text_.size() < count * line_size && listen()) {
        }
    }
    void end_by_kill() {
        kill(child_, SIGKILL);
        int status = 0;
        waitpid(child_, &status, 0);
        EXPECT_TRUE(WIFSIGNALED(status)) << "ended by itself with " << WEXITSTATUS(status);
        while (listen()) {
        }
    }
    [[nodiscard]] std::vector<std::string> ids() const {
        std::vector<std::string> ids;
        for (std::size_t begin = 0; text_.size() - begin >= line_size; begin += line_size) {
            ids.push_back(text_.substr(begin, line_size - 1));
        }
        return ids;
    }

private:
    static constexpr std::size_t line_size = 37;  // an id and a line feed

    bool listen() {
        char buffer[4096];
        const ssize_t got = read(said_, buffer, sizeof buffer);
        text_.append(buffer, got > 0 ? static_cast<std::size_t>(got) : 0);
        return got > 0;
    }

    pid_t child_ = -1;
    int said_ = -1;
    std::string text_;
};

/// Kills writers of one notebook at random instants and then looks for every acknowledged entry.
void kill_and_check(const std::string& path, int rounds) {
    ASSERT_TRUE(SqliteNotebook::open(path, {OpenMode::create}, system_outside()));
    const unsigned seed = std::random_device()();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    std::vector<std::string> acknowledged;
    for (int round = 0; round < rounds; ++round) {
        Writer writer(path);
        writer.await(random() % 4);
        usleep(static_cast<useconds_t>(random() % 12000));
        writer.end_by_kill();
        const auto ids = writer.ids();
        acknowledged.insert(acknowledged.end(), ids.begin(), ids.end());
    }
    std::map<std::string, int> kept;
    auto store = SqliteNotebook::open(path, {}, system_outside());  // rolls back what was cut off
    ASSERT_TRUE(store.has_value()) << store.error().detail;
    ASSERT_TRUE((*store)->each_entry(
        0, [&](std::int64_t, const notebook::EntryView& entry) -> Result<void> {
            ++kept[text_of(entry.id)];
            return {};
        }));
    EXPECT_GE(acknowledged.size(), static_cast<std::size_t>(rounds)) << "the test says little";
    for (const std::string& id : acknowledged) {
        EXPECT_EQ(kept[id], 1) << id << " was acknowledged";
    }
    // A kill between commit and print leaves at most one entry more than was acknowledged.
    EXPECT_LE(kept.size(), acknowledged.size() + static_cast<std::size_t>(rounds));
    Connection& connection = (*store)->connection();
    EXPECT_EQ(connection.word("PRAGMA integrity_check").value(), "ok");
    EXPECT_EQ(connection.number("SELECT count(*) FROM stands").value(),
              connection.number("SELECT count(DISTINCT subject) FROM entries WHERE kind = 'stand'")
                  .value());
    const auto report = verify_notebook(path).value();
    EXPECT_TRUE(report.is_sound()) << report.problems.front();
    const auto verdict = validate_geopackage(path);
    EXPECT_EQ(verdict.status, 0) << verdict.output;
    std::printf("%s: %d kills, %zu acknowledged, %zu kept\n", path.c_str(), rounds,
                acknowledged.size(), kept.size());
}

// An acknowledged write survives SIGKILL at any instant. (Loss of power needs a disk that tells the
// truth about sync; that is not tested here.) Most rounds run in memory, where the writer gets far
// between kills; the rest on the disk, where it is mostly caught waiting for it.
TEST(Kill, every_acknowledged_entry_survives_a_hundred_and_sixty_kills_in_memory) {
    const TempFolder folder("/dev/shm/");
    kill_and_check(folder.file("a.gpkg"), 160);
}

TEST(Kill, every_acknowledged_entry_survives_forty_kills_on_disk) {
    const TempFolder folder;
    kill_and_check(folder.file("a.gpkg"), 40);
}

}  // namespace
}  // namespace swathbook::store
