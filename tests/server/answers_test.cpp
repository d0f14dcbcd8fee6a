// What each address answers, over a real socket.
#include <thread>

#include "api/call.hpp"
#include "api/operation.hpp"
#include "tests/server/running.hpp"

namespace swathbook::tests {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

std::string content_of(const std::filesystem::path& file) {
    std::ifstream stream(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

class Answers : public Running {
protected:
    void SetUp() override {
        Running::SetUp();
        start();
    }
};

TEST_F(Answers, computing_gives_the_bytes_of_the_command) {
    int count = 0;
    for (const auto& entry : std::filesystem::directory_iterator("data/demo")) {
        const std::string name = entry.path().stem().string();
        for (const api::Operation& operation : api::operations()) {
            if (!entry.path().string().ends_with(".json") ||
                !name.substr(std::min<std::size_t>(3, name.size())).starts_with(operation.name)) {
                continue;
            }
            const std::string command = fmt::format("{} compute {} --request {}", SWATHBOOK_PROGRAM,
                                                    operation.name, entry.path().string());
            const Answer answer =
                post(fmt::format("/api/compute/{}", operation.name), content_of(entry.path()));
            EXPECT_EQ(answer.status, 200) << name;
            EXPECT_EQ(answer.body, store::run_command(command).output) << name;
            ++count;
        }
    }
    EXPECT_GE(count, 9) << "the demo has nine requests";
}

TEST_F(Answers, what_an_operation_refuses_is_its_own_error_under_the_status_of_the_table) {
    for (const api::Operation& operation : api::operations()) {
        const std::string name(operation.name);
        const api::Called called = api::call(name, R"({"no_such_member": 1})");
        ASSERT_EQ(called.error, ErrorCode::invalid_input) << name;
        const Answer answer = post("/api/compute/" + name, R"({"no_such_member": 1})");
        EXPECT_EQ(answer.status, 400) << name;
        EXPECT_EQ(answer.body, called.json + "\n");
    }
    EXPECT_EQ(post("/api/compute/course", R"({"width": "0 ft"})").status, 422);
    EXPECT_EQ(post("/api/compute/nothing", "{}").status, 404);
    EXPECT_EQ(post("/api/compute/course", "").status, 400);
    EXPECT_EQ(post("/api/compute/course", "{").status, 400);
}

TEST_F(Answers, a_large_request_is_computed_the_same_on_another_thread) {
    const std::string small = R"({"width": "26 ft"})";
    const std::string large = R"({"width": "26 ft")" + std::string(1 << 20, ' ') + "}";
    EXPECT_EQ(post("/api/compute/course", large).body, post("/api/compute/course", small).body);
}

TEST_F(Answers, operations_are_listed_as_the_command_lists_them) {
    const Answer answer = get("/api/operations");
    EXPECT_EQ(answer.body, store::run_command(SWATHBOOK_PROGRAM " operations --json").output);
    EXPECT_EQ(answer.header("content-type"), "application/json");
}

TEST_F(Answers, health_tells_the_version_and_what_there_is) {
    const Json health = Json::parse(get("/api/health").body);
    EXPECT_EQ(
        health,
        Json({{"status", "ok"}, {"version", "0.0.0-test"}, {"notebook", true}, {"web", true}}));
}

TEST_F(Answers, a_worksheet_and_a_packet_come_as_pdf) {
    const Answer sheet = post("/api/worksheet", R"({"tips": 8, "language": "es"})");
    ASSERT_EQ(sheet.status, 200) << sheet.body;
    EXPECT_EQ(sheet.header("content-type"), "application/pdf");
    EXPECT_THAT(sheet.body, StartsWith("%PDF-"));
    const Json order = {{"job", {{"name", "Heron Flat"}}},
                        {"parts",
                         {{{"file", "01-calibrate-boom-rig.json"},
                           {"name", "Boom rig"},
                           {"operation", "calibrate"},
                           {"request", content_of("data/demo/01-calibrate-boom-rig.json")}}}}};
    const Answer packet = post("/api/packet", order.dump());
    ASSERT_EQ(packet.status, 200) << packet.body;
    std::ofstream(folder_.file("packet.pdf"), std::ios::binary) << packet.body;
    const auto text =
        store::run_command("pdftotext -layout '" + folder_.file("packet.pdf") + "' -");
    EXPECT_THAT(text.output, HasSubstr("Heron Flat"));
    EXPECT_THAT(text.output, HasSubstr("Swathbook 0.0.0-test"));
}

TEST_F(Answers, an_order_that_cannot_be_printed_is_refused_in_the_words_of_the_operations) {
    const Answer tips = post("/api/worksheet", R"({"tips": 99})");
    EXPECT_EQ(tips.status, 422);
    EXPECT_THAT(tips.body, HasSubstr(R"("field":"tips")"));
    EXPECT_EQ(post("/api/packet", "[]").status, 400);
    EXPECT_EQ(post("/api/packet", R"({"language": "la"})").status, 400);
    const Json order = {{"parts",
                         {{{"file", "01.json"},
                           {"name", "x"},
                           {"operation", "calibrate"},
                           {"request", "{\"width\": \"wide\"}"}}}}};
    const Answer part = post("/api/packet", order.dump());
    EXPECT_EQ(part.status, 400);
    EXPECT_THAT(part.body, HasSubstr("01.json"));
}

TEST_F(Answers, the_app_is_served_with_its_forms_tags_and_types) {
    const Answer page = get("/");
    EXPECT_EQ(page.status, 200);
    EXPECT_EQ(page.body, "<!doctype html>");
    const Answer brotli = get("/", "Accept-Encoding: br\r\n");
    EXPECT_EQ(brotli.body, "brotli");
    EXPECT_EQ(brotli.header("content-encoding"), "br");
    const Answer again = get("/", "If-None-Match: " + page.header("etag") + "\r\n");
    EXPECT_EQ(again.status, 304);
    EXPECT_EQ(again.headers.count("content-length"), 0U);
    EXPECT_EQ(get("/assets/index-BxY3kQ9z.js").header("cache-control"),
              "public, max-age=31536000, immutable");
    EXPECT_EQ(get("/assets/index-Gone1234.js").status, 404);
    EXPECT_EQ(get("/../book.gpkg").status, 404);
}

TEST_F(Answers, head_tells_what_get_would_without_the_content) {
    Client client(port());
    for (const char* path : {"/", "/api/health", "/api/operations", "/assets/none.js"}) {
        client.send(request_text({.method = "HEAD", .path = path}, port()));
        const auto head = client.read(true);
        client.send(request_text({.method = "GET", .path = path}, port()));
        const auto whole = client.read();
        ASSERT_TRUE(head && whole) << path;
        EXPECT_EQ(head->status, whole->status) << path;
        EXPECT_EQ(head->header("content-length"), std::to_string(whole->body.size())) << path;
        EXPECT_EQ(head->header("etag"), whole->header("etag")) << path;
    }
}

TEST_F(Answers, requests_sent_in_one_go_are_answered_in_order) {
    Client client(port());
    const std::string course = R"({"width": "26 ft"})";
    const Ask compute{.method = "POST",
                      .path = "/api/compute/course",
                      .body = course,
                      .type = "application/json"};
    const Ask pull{.path = "/api/sync/pull", .more = token_line()};  // on another thread
    const Ask health{.path = "/api/health"};
    client.send(request_text(compute, port()) + request_text(pull, port()) +
                request_text(health, port()));
    EXPECT_EQ(client.read().value_or(Answer{}).body, api::call("course", course).json + "\n");
    EXPECT_THAT(client.read().value_or(Answer{}).body, StartsWith(R"({"cursor":0)"));
    EXPECT_THAT(client.read().value_or(Answer{}).body, HasSubstr("0.0.0-test"));
}

TEST_F(Answers, a_client_that_waits_for_leave_to_send_is_given_it) {
    Client client(port());
    const std::string body = R"({"width": "26 ft"})";
    client.send(
        "POST /api/compute/course HTTP/1.1\r\n" + host() +
        "Content-Type: application/json\r\nExpect: 100-continue\r\nContent-Length: 18\r\n\r\n");
    EXPECT_EQ(client.read().value_or(Answer{}).status, 100);
    client.send(body);
    EXPECT_EQ(client.read().value_or(Answer{}).status, 200);
    EXPECT_EQ(raw("POST /api/compute/course HTTP/1.1\r\n" + host() +
                  "Content-Type: application/json\r\nExpect: 100-continue\r\n"
                  "Content-Length: 99999999\r\n\r\n")
                  .status,
              413)
        << "no leave for a body that is too large";
}

TEST_F(Answers, every_answer_carries_the_headers_that_fence_the_app_in) {
    const std::vector<Answer> answers{get("/"),
                                      get("/none"),
                                      get("/api/health"),
                                      post("/api/compute/none", "{}"),
                                      raw("no HTTP at all\r\n\r\n"),
                                      raw("GET / HTTP/1.1\r\nHost: evil.example\r\n\r\n")};
    for (const Answer& answer : answers) {
        SCOPED_TRACE(answer.status);
        EXPECT_THAT(answer.header("content-security-policy"),
                    HasSubstr("default-src 'none'; script-src 'self' 'wasm-unsafe-eval'"));
        EXPECT_EQ(answer.header("x-content-type-options"), "nosniff");
        EXPECT_EQ(answer.header("referrer-policy"), "no-referrer");
        EXPECT_EQ(answer.header("cross-origin-opener-policy"), "same-origin");
        EXPECT_EQ(answer.header("cross-origin-resource-policy"), "same-origin");
        EXPECT_THAT(answer.header("permissions-policy"), HasSubstr("camera=(self)"));
        EXPECT_NE(answer.header("date"), "");
        EXPECT_EQ(answer.headers.count("access-control-allow-origin"), 0U);
    }
}

TEST_F(Answers, five_hundred_idle_connections_hold_nothing_up) {
    std::vector<std::unique_ptr<Client>> idle;
    for (int i = 0; i < 500; ++i) {
        idle.push_back(std::make_unique<Client>(port()));
        ASSERT_TRUE(idle.back()->is_connected()) << i;
    }
    idle.front()->send("GET / HT");  // one stops in the middle
    const auto begin = std::chrono::steady_clock::now();
    EXPECT_EQ(get("/api/health").status, 200);
    EXPECT_LT(std::chrono::steady_clock::now() - begin, std::chrono::seconds(2));
    for (const auto& client : idle) {
        if (client != idle.front()) {
            client->send(request_text({.path = "/api/health"}, port()));
        }
    }
    for (const auto& client : idle) {
        if (client != idle.front()) {
            EXPECT_EQ(client->read().value_or(Answer{}).status, 200);
        }
    }
}

}  // namespace
}  // namespace swathbook::tests
