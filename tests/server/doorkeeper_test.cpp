// Who may ask. The rules are those of docs/serving.md; the forms of the headers are those of RFC
// 9110 (Host), RFC 6454 (Origin) and the W3C draft "Fetch Metadata Request Headers"
// (Sec-Fetch-Site).
#include "server/doorkeeper.hpp"

#include <gtest/gtest.h>

#include "core/base/error.hpp"

namespace swathbook::server {
namespace {

const std::vector<std::string> no_names;

Request request_with(const std::vector<HeaderLine>& headers) {
    Request request;
    request.method = Method::get;
    request.target = "/";
    request.headers = headers;
    return request;
}

Status verdict(const Doorkeeper& door, const std::vector<HeaderLine>& headers) {
    const auto refused = door.refuse(request_with(headers));
    return refused ? refused->status : Status::ok;
}

TEST(Doorkeeper, lets_in_the_three_loopback_names_with_the_port) {
    const Doorkeeper door(8420, no_names, "secret");
    for (const char* host : {"localhost:8420", "127.0.0.1:8420", "[::1]:8420", "LocalHost:8420"}) {
        EXPECT_EQ(verdict(door, {{"Host", host}}), Status::ok) << host;
    }
}

TEST(Doorkeeper, turns_away_every_other_name) {
    const Doorkeeper door(8420, no_names, "secret");
    for (const char* host :
         {"localhost", "localhost:8421", "localhost:84200", "localhost.:8420", "evil.example",
          "evil.example:8420", "localhost:8420.evil.example", "localhost:8420@evil.example",
          "127.0.0.1", "127.1:8420", "0.0.0.0:8420", "::1:8420", "localhost:08420", "",
          " localhost:8420", "localhost:8420,evil.example"}) {
        EXPECT_EQ(verdict(door, {{"Host", host}}), Status::forbidden) << host;
    }
}

TEST(Doorkeeper, asks_for_exactly_one_host) {
    const Doorkeeper door(8420, no_names, "secret");
    EXPECT_EQ(verdict(door, {}), Status::bad_request);
    EXPECT_EQ(verdict(door, {{"Host", "localhost:8420"}, {"host", "localhost:8420"}}),
              Status::bad_request);
    EXPECT_EQ(verdict(door, {{"Host", "localhost:8420"}, {"Host", "evil.example"}}),
              Status::bad_request);
}

TEST(Doorkeeper, takes_names_it_was_given_with_or_without_their_port) {
    const std::vector<std::string> names{"books.example", "field.example:443"};
    const Doorkeeper door(8420, names, "secret");
    EXPECT_EQ(verdict(door, {{"Host", "books.example:8420"}}), Status::ok);
    EXPECT_EQ(verdict(door, {{"Host", "books.example"}}), Status::forbidden);
    EXPECT_EQ(verdict(door, {{"Host", "field.example:443"}}), Status::ok);
    EXPECT_EQ(verdict(door, {{"Host", "field.example:8420"}}), Status::forbidden);
}

TEST(Doorkeeper, on_the_usual_port_browsers_leave_it_out) {
    const Doorkeeper door(80, no_names, "secret");
    EXPECT_EQ(verdict(door, {{"Host", "localhost"}}), Status::ok);
    EXPECT_EQ(verdict(door, {{"Host", "localhost:80"}}), Status::ok);
    EXPECT_EQ(verdict(door, {{"Host", "localhost:8080"}}), Status::forbidden);
}

TEST(Doorkeeper, an_origin_is_this_very_host_or_the_request_is_refused) {
    const std::vector<std::string> names{"books.example"};
    const Doorkeeper door(8420, names, "secret");
    const auto with = [&](const char* host, const char* origin) {
        return verdict(door, {{"Host", host}, {"Origin", origin}});
    };
    EXPECT_EQ(with("localhost:8420", "http://localhost:8420"), Status::ok);
    EXPECT_EQ(with("127.0.0.1:8420", "http://127.0.0.1:8420"), Status::ok);
    EXPECT_EQ(with("books.example:8420", "https://books.example:8420"), Status::ok);
    for (const char* origin : {"http://127.0.0.1:8420", "https://localhost:8420", "null", "",
                               "http://localhost", "http://localhost:84201", "http://evil.example",
                               "http://localhost:8420 http://evil.example", "localhost:8420"}) {
        EXPECT_EQ(with("localhost:8420", origin), Status::forbidden) << origin;
    }
    EXPECT_EQ(verdict(door, {{"Host", "localhost:8420"},
                             {"Origin", "http://localhost:8420"},
                             {"Origin", "http://evil.example"}}),
              Status::forbidden);
}

TEST(Doorkeeper, a_browser_that_says_the_page_is_another_site_is_refused) {
    const Doorkeeper door(8420, no_names, "secret");
    const auto with = [&](const char* site) {
        return verdict(door, {{"Host", "localhost:8420"}, {"Sec-Fetch-Site", site}});
    };
    EXPECT_EQ(with("same-origin"), Status::ok);
    EXPECT_EQ(with("none"), Status::ok);
    for (const char* site : {"cross-site", "same-site", "", "None", "same-origin, cross-site"}) {
        EXPECT_EQ(with(site), Status::forbidden) << site;
    }
}

TEST(Doorkeeper, the_token_is_taken_whole_or_not_at_all) {
    const Doorkeeper door(8420, no_names, "abcdef");
    const auto is_open = [&](const std::vector<HeaderLine>& headers) {
        return !door.refuse_without_token(request_with(headers));
    };
    EXPECT_TRUE(is_open({{"x-swathbook-token", "abcdef"}}));
    EXPECT_FALSE(is_open({}));
    EXPECT_FALSE(is_open({{"X-Swathbook-Token", "abcdef"}, {"X-Swathbook-Token", "abcdef"}}));
    for (const char* wrong :
         {"", "abcde", "abcdeg", "bbcdef", "abcdefa", "abcdefabcdef", "ABCDEF"}) {
        EXPECT_FALSE(is_open({{"X-Swathbook-Token", wrong}})) << wrong;
    }
    EXPECT_FALSE(same_secret("", "")) << "no token is no secret";
}

TEST(Doorkeeper, each_start_has_another_token_of_256_bits) {
    const auto one = make_token(store::system_outside());
    const auto two = make_token(store::system_outside());
    ASSERT_TRUE(one && two);
    EXPECT_EQ(one->size(), 64U);
    EXPECT_NE(*one, *two);
}

}  // namespace
}  // namespace swathbook::server
