// The real program: how it starts, how it ends, what it has kept when it is killed.
#include <random>
#include <set>
#include <thread>

#include "core/notebook/entry_text.hpp"
#include "store/sqlite/sqlite_backup.hpp"
#include "tests/server/running.hpp"
#include "tests/server/serve_process.hpp"
#include "tests/unit/notebook/entry_maker.hpp"

namespace swathbook::tests {
namespace {

using testing::HasSubstr;
using testing::MatchesRegex;

void make_notebook(const std::string& path) {
    store::OpenOptions options;
    options.mode = store::OpenMode::create;
    ASSERT_TRUE(store::SqliteNotebook::open(path, options, store::system_outside()).has_value());
}

TEST(Process, prints_the_address_with_a_token_and_ends_well_on_either_signal) {
    for (const int signal : {SIGINT, SIGTERM}) {
        ServeProcess serve({"--port", "0"});
        EXPECT_THAT(serve.address(), MatchesRegex("http://localhost:[0-9]+/#token=[0-9a-f]{64}"));
        EXPECT_EQ(ask(serve.port(), {.path = "/api/health"}).value_or(Answer{}).status, 200);
        EXPECT_EQ(serve.end(signal), 0);
    }
}

TEST(Process, other_machines_cannot_reach_it) {
    const ServeProcess serve({"--port", "0"});
    const auto listening = store::run_command(
        fmt::format("grep -i ':{:04X} .* 0A ' /proc/net/tcp /proc/net/tcp6", serve.port()));
    EXPECT_THAT(listening.output, HasSubstr("0100007F:")) << "127.0.0.1 in the kernel's writing";
    EXPECT_EQ(std::count(listening.output.begin(), listening.output.end(), '\n'), 1);
}

TEST(Process, what_keeps_it_from_starting_is_said) {
    const ServeProcess first({"--port", "0"});
    const auto run = [](const std::string& options) {
        return store::run_command(SWATHBOOK_PROGRAM " serve " + options);
    };
    const auto taken = run("--port " + std::to_string(first.port()));
    EXPECT_EQ(taken.status, 6);
    EXPECT_THAT(taken.output, HasSubstr("--port 0"));
    const auto no_app = run("--port 0 --web /nowhere");
    EXPECT_EQ(no_app.status, 5);
    EXPECT_THAT(no_app.output, HasSubstr("index.html"));
    EXPECT_EQ(run("--port 0 --notebook /nowhere/book.gpkg").status, 5);
    EXPECT_EQ(run("--port 65536").status, 2);
    EXPECT_EQ(run("--port -1").status, 2);
    EXPECT_EQ(run("--port many").status, 2);
}

// Requests that run when the server is told to end are answered, and only then does it end.
TEST(Process, what_is_being_asked_is_finished_before_it_ends) {
    const store::TempFolder folder("/dev/shm/");
    make_notebook(folder.file("book.gpkg"));
    ServeProcess serve({"--port", "0", "--notebook", folder.file("book.gpkg")});
    notebook::Scribe scribe;
    std::vector<std::unique_ptr<Client>> clients;
    for (std::uint32_t i = 0; i < 6; ++i) {
        clients.push_back(std::make_unique<Client>(serve.port()));
        const bool is_paper = i % 2 == 0;
        const notebook::Entry entry =
            scribe.write(i, store::april_ninth, notebook::EntryKind::job, i, R"({"name":"a job"})");
        clients.back()->send(
            request_text({.method = "POST",
                          .path = is_paper ? "/api/worksheet" : "/api/sync/push",
                          .body = is_paper ? "{}" : notebook::write_entries({{entry}}),
                          .type = is_paper ? "application/json" : "text/plain",
                          .more = "X-Swathbook-Token: " + serve.token() + "\r\n"},
                         serve.port()));
    }
    Client idle(serve.port());
    idle.send(request_text({.path = "/api/health"}, serve.port()));
    ASSERT_TRUE(idle.read());  // now each of the others has arrived at its connection too
    usleep(30'000);            // and its bytes, a moment later, at the server
    serve.tell(SIGTERM);
    for (const auto& client : clients) {
        const auto answer = client->read();
        ASSERT_TRUE(answer);
        EXPECT_EQ(answer->status, 200) << answer->body;
    }
    EXPECT_TRUE(idle.is_closed());
    clients.clear();
    EXPECT_EQ(serve.wait(), 0);
}

/// Pushes entries in batches until the connection ends; the ids that were acknowledged.
std::vector<std::string> push_until_cut(const ServeProcess& serve, notebook::Scribe& scribe,
                                        std::uint32_t device) {
    std::vector<std::string> acknowledged;
    Client client(serve.port());
    for (std::uint32_t batch = 0; client.is_connected(); ++batch) {
        std::vector<notebook::Entry> entries;
        for (std::uint32_t i = 0; i <= batch % 4; ++i) {
            entries.push_back(scribe.write(device, store::april_ninth, notebook::EntryKind::reading,
                                           i, fmt::format(R"({{"wind_speed":"{} mph"}})", batch)));
        }
        const bool is_sent =
            client.send(request_text({.method = "POST",
                                      .path = "/api/sync/push",
                                      .body = notebook::write_entries(entries),
                                      .type = "text/plain",
                                      .more = "X-Swathbook-Token: " + serve.token() + "\r\n"},
                                     serve.port()));
        const auto answer = is_sent ? client.read() : std::nullopt;
        if (!answer) {
            break;
        }
        EXPECT_EQ(answer->status, 200) << answer->body;
        const Json said = Json::parse(answer->body);
        for (const Json& id : said["stored"]) {
            acknowledged.push_back(id.get<std::string>());
        }
    }
    return acknowledged;
}

// SIGKILL, not loss of power: that needs a disk that tells the truth about sync.
TEST(Process, killed_in_the_middle_of_pushes_it_has_kept_everything_it_acknowledged) {
    constexpr int rounds = 40;
    const store::TempFolder folder("/dev/shm/");
    const std::string path = folder.file("book.gpkg");
    make_notebook(path);
    const unsigned seed = std::random_device()();
    SCOPED_TRACE("seed " + std::to_string(seed));
    std::mt19937 random(seed);
    std::vector<std::string> acknowledged;
    notebook::Scribe scribe;
    for (std::uint32_t round = 0; round < rounds; ++round) {
        ServeProcess serve({"--port", "0", "--notebook", path});
        ASSERT_NE(serve.address(), "") << "round " << round;
        std::vector<std::string> mine;
        std::jthread pusher([&] { mine = push_until_cut(serve, scribe, round); });
        usleep(static_cast<useconds_t>(3'000 + random() % 25'000));
        EXPECT_EQ(serve.end(SIGKILL), 128 + SIGKILL);
        pusher.join();
        acknowledged.insert(acknowledged.end(), mine.begin(), mine.end());
    }
    auto kept = store::SqliteNotebook::open(path, {}, store::system_outside());
    ASSERT_TRUE(kept.has_value()) << kept.error().detail;
    std::set<std::string> ids;
    ASSERT_TRUE(
        (*kept)->each_entry(0, [&](std::int64_t, const notebook::EntryView& entry) -> Result<void> {
            ids.insert(text_of(entry.id));
            return {};
        }));
    EXPECT_GE(acknowledged.size(), static_cast<std::size_t>(rounds)) << "the test says little";
    for (const std::string& id : acknowledged) {
        EXPECT_TRUE(ids.contains(id)) << id << " was acknowledged and is lost";
    }
    // Of each batch that was cut off, all entries are here or none: at most 4 a round are not
    // known.
    EXPECT_LE(ids.size(), acknowledged.size() + 4U * rounds);
    const auto report = store::verify_notebook(path).value();
    EXPECT_TRUE(report.is_sound()) << report.problems.front();
    std::printf("%d kills, %zu acknowledged, %zu kept\n", rounds, acknowledged.size(), ids.size());
}

}  // namespace
}  // namespace swathbook::tests
