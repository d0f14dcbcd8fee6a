#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <memory>
#include <string>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include "server/server.hpp"
#include "tests/server/client.hpp"
#include "tests/store/temp_notebook.hpp"

namespace swathbook::tests {

using Json = nlohmann::json;

/// A server in this process, with a notebook and a small app, on a port of its own.
class Running : public testing::Test {
protected:
    /// Opens the doors; a test that needs other limits says so before.
    void start() {
        server::ServerOptions options;
        options.port = 0;
        options.limits = limits_;
        options.threads = 2;
        options.version = "0.0.0-test";
        options.paper_program = SWATHBOOK_PAPER;
        options.notebook = open_notebook();
        options.notebook_name = "book.gpkg";
        options.web_folder = folder_.file("web");
        std::filesystem::create_directories(folder_.file("web/assets"));
        std::ofstream(folder_.file("web/index.html")) << "<!doctype html>";
        std::ofstream(folder_.file("web/index.html.br")) << "brotli";
        std::ofstream(folder_.file("web/assets/index-BxY3kQ9z.js")) << "script";
        auto started = server::Server::start(std::move(options));
        ASSERT_TRUE(started.has_value()) << started.error().detail;
        server_ = std::move(*started);
    }
    void SetUp() override {
        store::OpenOptions options;
        options.mode = store::OpenMode::create;
        ASSERT_TRUE(store::SqliteNotebook::open(path(), options, outside_.outside()).has_value());
    }
    [[nodiscard]] std::string path() const { return folder_.file("book.gpkg"); }
    /// The notebook as another program sees it.
    [[nodiscard]] std::unique_ptr<store::SqliteNotebook> open_notebook() {
        auto opened = store::SqliteNotebook::open(path(), {}, outside_.outside());
        EXPECT_TRUE(opened.has_value());
        return std::move(*opened);
    }
    [[nodiscard]] std::uint16_t port() const { return server_->port(); }
    [[nodiscard]] std::string token_line() const {
        return "X-Swathbook-Token: " + server_->token() + "\r\n";
    }
    [[nodiscard]] Answer get(const std::string& path, const std::string& more = "") const {
        return ask(port(), {.method = "GET", .path = path, .more = more}).value_or(Answer{});
    }
    [[nodiscard]] Answer post(const std::string& path, const std::string& body,
                              const std::string& type = "application/json") const {
        return ask(port(), {.method = "POST",
                            .path = path,
                            .body = body,
                            .type = type,
                            .more = token_line()})
            .value_or(Answer{});
    }
    /// What the server answers to these very bytes; status 0 when it closes without a word.
    Answer raw(const std::string& bytes) const {
        Client client(port());
        client.send(bytes);
        client.end_sending();
        return client.read().value_or(Answer{});
    }
    [[nodiscard]] std::string host() const {
        return "Host: localhost:" + std::to_string(port()) + "\r\n";
    }

    server::Limits limits_;
    store::TestOutside outside_;
    const store::TempFolder folder_;
    std::unique_ptr<server::Server> server_;
};

}  // namespace swathbook::tests
