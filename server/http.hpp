#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// A request and its answer as the handlers see them: no socket, no library type.
namespace swathbook::server {

enum class Method : std::uint8_t { get, head, post, put, other };

/// The statuses this server answers with; the numbers are those of RFC 9110.
enum class Status : std::uint16_t {
    ok = 200,
    not_modified = 304,
    bad_request = 400,
    forbidden = 403,
    not_found = 404,
    method_not_allowed = 405,
    request_timeout = 408,
    conflict = 409,
    length_required = 411,
    content_too_large = 413,
    unsupported_media_type = 415,
    expectation_failed = 417,
    unprocessable = 422,
    header_fields_too_large = 431,
    internal_error = 500,
    unavailable = 503,
};

struct HeaderLine {
    std::string_view name;
    std::string_view value;
};

/// What was asked. All texts belong to the connection and live until its answer is sent.
struct Request {
    Method method = Method::other;
    std::string_view target;  ///< as it was sent: "/api/sync/pull?after=3"
    std::span<const HeaderLine> headers;
    std::string_view body;

    [[nodiscard]] std::string_view path() const { return target.substr(0, target.find('?')); }
    [[nodiscard]] std::string_view query() const;
    /// The value of a header; nothing when it is absent. Of several, the first.
    [[nodiscard]] std::optional<std::string_view> header(std::string_view name) const;
    /// How often a header stands in the request.
    [[nodiscard]] std::size_t count(std::string_view name) const;
};

/// What is answered. The connection adds Content-Length, Date and the headers of every answer.
struct Response {
    Status status = Status::ok;
    std::string_view type = "application/json";  ///< empty: no Content-Type
    std::vector<std::pair<std::string_view, std::string>> headers{};
    std::string body{};
    std::string_view kept_body{};  ///< instead of `body`: text that outlives every connection
    std::optional<std::uint64_t> announced{};  ///< to HEAD: the length of content not fetched

    [[nodiscard]] std::string_view content() const {
        return kept_body.empty() ? std::string_view(body) : kept_body;
    }
};

/// Equal but for the case of ASCII letters, as names of headers and hosts are compared.
[[nodiscard]] bool same_word(std::string_view a, std::string_view b);

/// A value of the part after '?': plain words only, nothing is decoded. Of several, the first.
[[nodiscard]] std::optional<std::string_view> query_value(std::string_view query,
                                                          std::string_view name);

}  // namespace swathbook::server
