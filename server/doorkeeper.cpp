#include "server/doorkeeper.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/base/blake2b.hpp"
#include "server/status.hpp"

namespace swathbook::server {
namespace {

constexpr std::uint16_t usual_port = 80;  // browsers leave it out of Host

std::string lower_case(std::string_view text) {
    std::string lower(text);
    std::transform(lower.begin(), lower.end(), lower.begin(), [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    });
    return lower;
}

bool has_port(std::string_view name) {
    const std::size_t colon = name.rfind(':');
    return colon != std::string_view::npos && name.find(']', colon) == std::string_view::npos;
}

Response forbid(std::string_view field, std::string detail) {
    return refusal(Error{ErrorCode::not_permitted, std::string(field), std::move(detail)});
}

}  // namespace

std::string_view security_headers() {
    return "Content-Security-Policy: default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; "
           "style-src 'self'; img-src 'self' blob: data:; connect-src 'self'; worker-src 'self'; "
           "manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; "
           "object-src 'none'\r\n"
           "X-Content-Type-Options: nosniff\r\n"
           "Referrer-Policy: no-referrer\r\n"
           "Cross-Origin-Opener-Policy: same-origin\r\n"
           "Cross-Origin-Resource-Policy: same-origin\r\n"
           "Permissions-Policy: geolocation=(self), screen-wake-lock=(self), camera=(self), "
           "accelerometer=(), display-capture=(), gyroscope=(), hid=(), magnetometer=(), "
           "microphone=(), midi=(), payment=(), serial=(), usb=()\r\n";
}

Doorkeeper::Doorkeeper(std::uint16_t port, std::span<const std::string> host_names,
                       std::string token)
    : token_(std::move(token)) {
    const auto add = [this, port](std::string_view name, bool is_ours_only) {
        const std::string lower = lower_case(name);
        if (has_port(lower)) {
            hosts_.push_back({lower, is_ours_only});
            return;
        }
        hosts_.push_back({fmt::format("{}:{}", lower, port), is_ours_only});
        if (port == usual_port) {
            hosts_.push_back({lower, is_ours_only});
        }
    };
    for (const std::string_view name : {"localhost", "127.0.0.1", "[::1]"}) {
        add(name, true);
    }
    for (const std::string& name : host_names) {
        add(name, false);
    }
}

const Doorkeeper::Host* Doorkeeper::host_of(std::string_view name) const {
    for (const Host& host : hosts_) {
        if (same_word(host.name, name)) {
            return &host;
        }
    }
    return nullptr;
}

std::optional<Response> Doorkeeper::refuse(const Request& request) const {
    if (request.count("Host") != 1) {
        return refusal(Status::bad_request,
                       {ErrorCode::invalid_input, "Host",
                        fmt::format("A request carries one Host header; this one carries {}.",
                                    request.count("Host"))});
    }
    const Host* host = host_of(*request.header("Host"));
    if (host == nullptr) {
        return forbid("Host",
                      fmt::format("This server answers to {} only. Another name is allowed by "
                                  "starting it with --host-name NAME.",
                                  hosts_.front().name));
    }
    const auto origin = request.header("Origin");
    const bool is_own_origin =
        !origin || (request.count("Origin") == 1 &&
                    (same_word(*origin, "http://" + host->name) ||
                     (!host->is_ours_only && same_word(*origin, "https://" + host->name))));
    const auto site = request.header("Sec-Fetch-Site");
    const bool is_own_site = !site || (request.count("Sec-Fetch-Site") == 1 &&
                                       (*site == "same-origin" || *site == "none"));
    if (!is_own_origin || !is_own_site) {
        return forbid(is_own_origin ? "Sec-Fetch-Site" : "Origin",
                      "Another site asked for this. Only the pages of this server may; open its "
                      "address yourself.");
    }
    return std::nullopt;
}

std::optional<Response> Doorkeeper::refuse_without_token(const Request& request) const {
    if (request.count(token_header) == 1 && same_secret(*request.header(token_header), token_)) {
        return std::nullopt;
    }
    return forbid(token_header,
                  "The notebook is open only to whoever has the token of this run. Open the whole "
                  "address that 'swathbook serve' printed; each start has a new one.");
}

Result<std::string> make_token(const store::Outside& outside) {
    std::array<std::uint8_t, 32> bytes{};
    SWATHBOOK_CHECK(outside.random(bytes));
    return hex_of(bytes);
}

bool same_secret(std::string_view given, std::string_view secret) {
    if (secret.empty()) {
        return false;
    }
    unsigned difference = given.size() == secret.size() ? 0U : 1U;
    for (std::size_t i = 0; i < given.size(); ++i) {
        const auto a = static_cast<unsigned char>(given[i]);
        const auto b = static_cast<unsigned char>(secret[i % secret.size()]);
        difference |= static_cast<unsigned>(a ^ b);
        // Keeps the compiler from ending the loop at the first difference.
        __asm__ volatile("" : "+r"(difference));
    }
    return difference == 0;
}

}  // namespace swathbook::server
