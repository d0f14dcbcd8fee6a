#include "server/routes.hpp"

#include <algorithm>
#include <array>
#include <exception>

#include <fmt/format.h>

#include "server/compute.hpp"
#include "server/paper.hpp"
#include "server/status.hpp"
#include "server/sync.hpp"

namespace swathbook::server {
namespace {

constexpr std::string_view json = "application/json";
constexpr std::string_view plain_text = "text/plain";

Response asset(Desk& desk, const Request& request, std::string_view) {
    return desk.shelf.answer(request);
}

constexpr std::array routes{
    Route{"/api/compute/", Method::post, Lane::compute, false, json, most_compute_bytes, &compute},
    Route{"/api/operations", Method::get, Lane::here, false, {}, 0, &list_operations},
    Route{"/api/health", Method::get, Lane::here, false, {}, 0, &tell_health},
    Route{"/api/packet", Method::post, Lane::paper, false, json, most_compute_bytes, &packet},
    Route{"/api/worksheet", Method::post, Lane::paper, false, json, most_compute_bytes, &worksheet},
    Route{"/api/sync/notebook", Method::get, Lane::notebook, true, {}, 0, &sync_notebook},
    Route{"/api/sync/push", Method::post, Lane::notebook, true, plain_text, most_push_bytes,
          &sync_push},
    Route{"/api/sync/pull", Method::get, Lane::notebook, true, {}, 0, &sync_pull},
    Route{"/api/sync/blob/", Method::get, Lane::notebook, true, {}, 0, &sync_get_blob},
    Route{"/api/sync/blob/",
          Method::put,
          Lane::notebook,
          true,
          {},
          store::NotebookStore::largest_blob,
          &sync_put_blob},
};
constexpr Route asset_route{"/", Method::get, Lane::here, false, {}, 0, &asset};

/// Whether the route's address is this path; `rest` becomes the word after it.
bool is_at(const Route& route, std::string_view path, std::string_view& rest) {
    if (!route.path.ends_with('/')) {
        rest = {};
        return path == route.path;
    }
    rest = path.starts_with(route.path) ? path.substr(route.path.size()) : std::string_view();
    return !rest.empty() && rest.find('/') == std::string_view::npos;
}

bool takes(const Route& route, Method method) {
    return route.method == method || (route.method == Method::get && method == Method::head);
}

std::string_view words_of(Method method) {
    switch (method) {
        case Method::get:
        case Method::head: return "GET, HEAD";
        case Method::post: return "POST";
        case Method::put: return "PUT";
        case Method::other: return "";
    }
    return "";
}

Response wrong_method(const std::string& allowed) {
    Response response =
        refusal(Status::method_not_allowed,
                {ErrorCode::unsupported, "", fmt::format("This address takes {}.", allowed)});
    response.headers.emplace_back("Allow", allowed);
    return response;
}

tl::expected<Admitted, Response> find_route(const Request& request) {
    const std::string_view path = request.path();
    if (!path.starts_with("/api/")) {
        if (!takes(asset_route, request.method)) {
            return tl::unexpected(wrong_method(std::string(words_of(Method::get))));
        }
        return Admitted{&asset_route, {}};
    }
    std::string allowed;
    for (const Route& route : routes) {
        std::string_view rest;
        if (!is_at(route, path, rest)) {
            continue;
        }
        if (takes(route, request.method)) {
            return Admitted{&route, rest};
        }
        allowed += (allowed.empty() ? "" : ", ") + std::string(words_of(route.method));
    }
    if (!allowed.empty()) {
        return tl::unexpected(wrong_method(allowed));
    }
    return tl::unexpected(
        refusal({ErrorCode::not_found, "",
                 fmt::format("There is no address \"{}\". docs/serving.md lists them.",
                             path.substr(0, 200))}));
}

/// The media type without its parameters is the wanted one.
bool is_media_type(const Request& request, std::string_view wanted) {
    const std::string_view said = request.header("Content-Type").value_or("");
    const std::string_view type = said.substr(0, said.find_first_of("; \t"));
    return request.count("Content-Type") == 1 && same_word(type, wanted);
}

std::optional<Response> refuse_body(const Route& route, const Request& request,
                                    std::optional<std::uint64_t> length, bool is_framed) {
    const bool takes_body = route.method == Method::post || route.method == Method::put;
    if (takes_body && !is_framed) {
        return refusal(Status::length_required,
                       {ErrorCode::invalid_input, "Content-Length",
                        "This address takes a body; say its length, or send it in chunks."});
    }
    if (!route.media_type.empty() && !is_media_type(request, route.media_type)) {
        return refusal(Status::unsupported_media_type,
                       {ErrorCode::unsupported, "Content-Type",
                        fmt::format("The body of this address is {}; say so in Content-Type.",
                                    route.media_type)});
    }
    const auto expected = request.header("Expect");
    if (expected && !same_word(*expected, "100-continue")) {
        return refusal(Status::expectation_failed,
                       {ErrorCode::unsupported, "Expect", "Only 100-continue can be expected."});
    }
    if (length.value_or(0) > route.most_bytes) {
        return too_large(route.most_bytes);
    }
    return std::nullopt;
}

}  // namespace

Response too_large(std::size_t most_bytes) {
    return refusal(Status::content_too_large,
                   {ErrorCode::out_of_range, "",
                    fmt::format("The body is larger than {} bytes, the most that this address "
                                "takes. Send it in smaller parts.",
                                most_bytes)});
}

tl::expected<Admitted, Response> admit(const Desk& desk, const Request& request,
                                       std::optional<std::uint64_t> length, bool is_framed) {
    if (auto refused = desk.door.refuse(request)) {
        return tl::unexpected(std::move(*refused));
    }
    if (!request.target.starts_with('/')) {
        return tl::unexpected(
            refusal({ErrorCode::invalid_input, "",
                     "The address of a request begins with \"/\"; this is no proxy."}));
    }
    auto found = find_route(request);
    if (!found) {
        return found;
    }
    if (found->route->needs_token) {
        if (auto refused = desk.door.refuse_without_token(request)) {
            return tl::unexpected(std::move(*refused));
        }
    }
    if (auto refused = refuse_body(*found->route, request, length, is_framed)) {
        return tl::unexpected(std::move(*refused));
    }
    return found;
}

Lane lane_of(const Admitted& admitted, std::size_t body_bytes) {
    const Lane lane = admitted.route->lane;
    return lane == Lane::compute && body_bytes <= small_request ? Lane::here : lane;
}

Response answer(Desk& desk, const Admitted& admitted, const Request& request) {
    try {
        return admitted.route->answer(desk, request, admitted.rest);
    } catch (const std::exception& error) {  // only libraries throw, and only by a fault of ours
        return refusal(
            {ErrorCode::internal, "", fmt::format("The server failed: {}.", error.what())});
    }
}

}  // namespace swathbook::server
