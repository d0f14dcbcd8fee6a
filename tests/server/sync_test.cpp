// Entries and attachments in and out, over a real socket.
#include <thread>

#include "core/notebook/entry_text.hpp"
#include "store/sqlite/sqlite_backup.hpp"
#include "tests/server/running.hpp"
#include "tests/unit/notebook/entry_maker.hpp"

namespace swathbook::tests {
namespace {

using notebook::Entry;
using notebook::EntryKind;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

class Sync : public Running {
protected:
    void SetUp() override {
        Running::SetUp();
        start();
    }
    /// So many entries of one device, in its chain.
    std::vector<Entry> write(std::uint32_t device, int count) {
        std::vector<Entry> entries;
        for (int i = 0; i < count; ++i) {
            entries.push_back(scribe_.write(
                device, store::april_ninth, EntryKind::sprayer, static_cast<std::uint32_t>(i % 5),
                fmt::format(R"({{"name":"rig {} of {}"}})", i, device)));
        }
        return entries;
    }
    Json push(const std::vector<Entry>& entries) const {
        const Answer answer =
            post("/api/sync/push", notebook::write_entries(entries), "text/plain");
        EXPECT_EQ(answer.status, 200) << answer.body;
        return Json::parse(answer.body);
    }
    [[nodiscard]] Json pull(const std::string& query) const {
        const Answer answer = get("/api/sync/pull" + query, token_line());
        EXPECT_EQ(answer.status, 200) << answer.body;
        return Json::parse(answer.body);
    }
    static std::vector<std::string> ids_of(const std::vector<Entry>& entries) {
        std::vector<std::string> ids;
        for (const Entry& entry : entries) {
            ids.push_back(text_of(entry.id));
        }
        return ids;
    }

    notebook::Scribe scribe_;
};

TEST_F(Sync, the_notebook_tells_who_it_is_and_how_far_it_reaches) {
    ASSERT_THAT(push(write(1, 3))["stored"], testing::SizeIs(3));
    const Json told = Json::parse(get("/api/sync/notebook", token_line()).body);
    EXPECT_EQ(told["device"], text_of(open_notebook()->device()));
    EXPECT_EQ(told["notebook"], told["device"]);
    EXPECT_EQ(told["name"], "book.gpkg");
    EXPECT_EQ(told["cursor"], 3);
    EXPECT_EQ(told["entries"], 3);
}

TEST_F(Sync, pushing_twice_says_the_same_and_changes_nothing) {
    const std::vector<Entry> entries = write(1, 20);
    const Json once = push(entries);
    EXPECT_EQ(once["stored"], Json(ids_of(entries)));
    EXPECT_EQ(once["refused"], Json::array());
    const std::string state = notebook::state_text(open_notebook()->state().value());
    EXPECT_EQ(push(entries), once);
    EXPECT_EQ(notebook::state_text(open_notebook()->state().value()), state);
    EXPECT_EQ(open_notebook()->extent().value().entries, 20);
}

TEST_F(Sync, entries_pushed_are_entries_pulled_byte_for_byte) {
    const std::vector<Entry> entries = write(1, 7);
    push(entries);
    const Json pulled = pull("?after=0");
    EXPECT_EQ(pulled["entries"], notebook::write_entries(entries));
    EXPECT_EQ(pulled["more"], false);
}

TEST_F(Sync, a_pull_that_was_cut_off_goes_on_where_it_stopped) {
    const std::vector<Entry> entries = write(1, 25);
    push(entries);
    std::string all;
    std::int64_t cursor = 0;
    int steps = 0;
    for (bool is_more = true; is_more; ++steps) {
        const Json part = pull(fmt::format("?after={}&limit=4", cursor));
        all += part["entries"].get<std::string>();
        cursor = part["cursor"];
        is_more = part["more"];
        if (steps == 2) {  // entries of others arrive in between
            push(write(2, 3));
        }
    }
    EXPECT_EQ(steps, 7);
    const auto got = notebook::read_entries(all).value();
    EXPECT_EQ(got.size(), 28U);
    EXPECT_EQ(pull(fmt::format("?after={}", cursor))["entries"], "");
    EXPECT_EQ(pull(fmt::format("?after={}", cursor))["cursor"], cursor);
}

TEST_F(Sync, one_pull_is_never_much_larger_than_four_mebibytes) {
    std::vector<Entry> entries;
    for (std::uint32_t i = 0; i < 12; ++i) {
        entries.push_back(
            scribe_.write(1, store::april_ninth, EntryKind::sprayer, i,
                          R"({"name":")" + std::string((1 << 20) - 100, 'x') + "\"}"));
    }
    push(entries);
    const Json part = pull("");
    EXPECT_LT(part["entries"].get<std::string>().size(), 6U << 20);
    EXPECT_GE(part["cursor"], 4);
    EXPECT_EQ(part["more"], true);
}

TEST_F(Sync, what_a_pull_asks_for_is_checked) {
    push(write(1, 2));
    const auto status = [&](const std::string& query) {
        return get("/api/sync/pull" + query, token_line()).status;
    };
    EXPECT_EQ(status("?after=2"), 200);
    EXPECT_EQ(status("?after=3"), 409) << "the cursor of another notebook";
    for (const char* query : {"?after=-1", "?after=x", "?after=1.5", "?after=", "?after=%31",
                              "?after=99999999999999999999", "?limit=x"}) {
        EXPECT_EQ(status(query), 400) << query;
    }
    EXPECT_EQ(status("?limit=0"), 422);
    EXPECT_EQ(status("?limit=10001"), 422);
    EXPECT_EQ(status("?other=1&limit=1&after=1"), 200);
}

TEST_F(Sync, a_forged_entry_is_refused_by_name_and_the_others_are_kept) {
    std::vector<Entry> entries = write(1, 5);
    entries[2].body = R"({"name":"forged"})";  // its hash no longer fits
    const Json answer = push(entries);
    EXPECT_EQ(answer["stored"].size(), 4U);
    ASSERT_EQ(answer["refused"].size(), 1U);
    EXPECT_EQ(answer["refused"][0]["id"], text_of(entries[2].id));
    EXPECT_EQ(answer["refused"][0]["code"], "corrupt_data");
    EXPECT_NE(answer["refused"][0]["detail"], "");
    EXPECT_EQ(open_notebook()->extent().value().entries, 4);
}

TEST_F(Sync, an_id_sent_right_and_wrong_is_not_acknowledged) {
    std::vector<Entry> entries = write(1, 2);
    entries.push_back(entries[0]);
    entries.back().body = R"({"name":"forged"})";
    const Json answer = push(entries);
    EXPECT_EQ(answer["stored"], Json::array({text_of(entries[1].id)}));
    EXPECT_EQ(answer["refused"][0]["id"], text_of(entries[0].id));
}

TEST_F(Sync, a_text_that_cannot_be_read_stores_nothing_and_names_the_line) {
    const std::string text = notebook::write_entries(write(1, 3));
    for (const std::size_t length : {text.size() - 1, text.size() / 2, std::size_t{10}}) {
        const Answer answer = post("/api/sync/push", text.substr(0, length), "text/plain");
        EXPECT_EQ(answer.status, 400) << length;
        EXPECT_THAT(answer.body, HasSubstr(R"("field":"line )"));
    }
    EXPECT_EQ(post("/api/sync/push", "{\"entries\": []}", "text/plain").status, 400);
    EXPECT_EQ(open_notebook()->extent().value().entries, 0);
    EXPECT_EQ(push({})["stored"], Json::array());
}

TEST_F(Sync, a_push_cut_off_on_the_way_stores_nothing) {
    const std::string text = notebook::write_entries(write(1, 3));
    const std::string whole = request_text({.method = "POST",
                                            .path = "/api/sync/push",
                                            .body = text,
                                            .type = "text/plain",
                                            .more = token_line()},
                                           port());
    raw(whole.substr(0, whole.size() - 100));
    EXPECT_EQ(open_notebook()->extent().value().entries, 0);
}

TEST_F(Sync, an_attachment_goes_in_once_and_comes_out_the_same) {
    std::string bytes(3'000'000, '\0');
    for (std::size_t i = 0; i < bytes.size(); ++i) {
        bytes[i] = static_cast<char>(i * 2654435761U >> 13U);
    }
    const std::string path = "/api/sync/blob/" + hex_of(blake2b_256(bytes));
    const Ask put{.method = "PUT", .path = path, .body = bytes, .more = token_line()};
    const Ask head{.method = "HEAD", .path = path, .more = token_line()};
    EXPECT_EQ(ask(port(), head).value_or(Answer{}).status, 404);
    EXPECT_EQ(get(path, token_line()).status, 404);
    for (int round = 0; round < 2; ++round) {
        const auto answer = ask(port(), put);
        ASSERT_TRUE(answer);
        EXPECT_EQ(answer->status, 200) << answer->body;
        EXPECT_EQ(Json::parse(answer->body)["bytes"], bytes.size());
    }
    EXPECT_EQ(ask(port(), head).value_or(Answer{}).header("content-length"), "3000000");
    const Answer back = get(path, token_line());
    EXPECT_EQ(back.body, bytes);
    EXPECT_EQ(back.header("content-type"), "application/octet-stream");
    EXPECT_EQ(back.header("content-disposition"), "attachment");
}

TEST_F(Sync, bytes_under_the_name_of_others_are_refused) {
    const std::string path = "/api/sync/blob/" + hex_of(blake2b_256("other"));
    const Ask put{.method = "PUT", .path = path, .body = "bytes", .more = token_line()};
    const Answer answer = ask(port(), put).value_or(Answer{});
    EXPECT_EQ(answer.status, 422);
    EXPECT_THAT(answer.body, HasSubstr(hex_of(blake2b_256("bytes"))));
    EXPECT_EQ(get(path, token_line()).status, 404);
    EXPECT_EQ(get("/api/sync/blob/12zz", token_line()).status, 400);
    const std::string nothing = "/api/sync/blob/" + hex_of(blake2b_256(""));
    EXPECT_EQ(ask(port(), {.method = "PUT", .path = nothing, .more = token_line()})
                  .value_or(Answer{})
                  .status,
              200)
        << "an empty attachment is one too";
}

TEST_F(Sync, computing_does_not_wait_for_a_notebook_that_another_program_holds) {
    const auto other = open_notebook();
    ASSERT_TRUE(other->connection().execute("BEGIN EXCLUSIVE"));
    Client waiting(port());
    waiting.send(request_text({.method = "POST",
                               .path = "/api/sync/push",
                               .body = notebook::write_entries(write(1, 1)),
                               .type = "text/plain",
                               .more = token_line()},
                              port()));
    const auto begin = std::chrono::steady_clock::now();
    for (int i = 0; i < 50; ++i) {
        EXPECT_EQ(post("/api/compute/course", R"({"width": "26 ft"})").status, 200);
    }
    EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(3));
    ASSERT_TRUE(other->connection().execute("ROLLBACK"));
    const auto pushed = waiting.read();
    ASSERT_TRUE(pushed);
    EXPECT_EQ(pushed->status, 200) << pushed->body;
    EXPECT_EQ(open_notebook()->extent().value().entries, 1);
}

TEST_F(Sync, many_pushers_at_once_lose_nothing) {
    constexpr int pushers = 4;
    constexpr int batches = 10;
    std::vector<std::vector<std::vector<Entry>>> work(pushers);
    for (std::uint32_t device = 0; device < pushers; ++device) {
        for (int batch = 0; batch < batches; ++batch) {
            work[device].push_back(write(device + 1, 3));
        }
    }
    {
        std::vector<std::jthread> threads;
        for (const auto& mine : work) {
            threads.emplace_back([&mine, this] {
                for (const auto& batch : mine) {
                    EXPECT_EQ(push(batch)["stored"].size(), 3U);
                }
            });
        }
    }
    EXPECT_EQ(open_notebook()->extent().value().entries, pushers * batches * 3);
    EXPECT_THAT(open_notebook()->chain_problems().value(), IsEmpty());
}

TEST(SyncWithout, a_server_without_a_notebook_says_so) {
    server::ServerOptions options;
    options.port = 0;
    auto server = server::Server::start(std::move(options));
    ASSERT_TRUE(server.has_value());
    for (const char* path : {"/api/sync/notebook", "/api/sync/pull"}) {
        const auto answer =
            ask((*server)->port(),
                {.path = path, .more = "X-Swathbook-Token: " + (*server)->token() + "\r\n"});
        ASSERT_TRUE(answer);
        EXPECT_EQ(answer->status, 503);
        EXPECT_THAT(answer->body, HasSubstr("--notebook FILE"));
    }
    const auto root = ask((*server)->port(), {});
    ASSERT_TRUE(root);
    EXPECT_EQ(root->status, 503);
    EXPECT_THAT(root->body, HasSubstr("web app is not here"));
}

}  // namespace
}  // namespace swathbook::tests
