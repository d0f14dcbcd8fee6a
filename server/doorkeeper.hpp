#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "server/http.hpp"
#include "store/outside.hpp"

namespace swathbook::server {

/// The headers of every answer: nothing is loaded from elsewhere, nobody else may load or frame it.
[[nodiscard]] std::string_view security_headers();

/// Who may ask. A web page of a stranger reaches a local port as easily as its own server, and a
/// name of the stranger's may be made to mean 127.0.0.1: so the name asked for is checked on every
/// request and before all else, then where the request says it comes from.
class Doorkeeper {
public:
    /// @param host_names  names beside localhost, 127.0.0.1 and [::1]; without a port, this one
    ///                    is meant
    /// @param token       what sync requests must carry
    Doorkeeper(std::uint16_t port, std::span<const std::string> host_names, std::string token);

    /// The refusal of a request that may not be answered, whatever it asks for.
    ///
    /// 400 without exactly one Host; 403 for a Host that is not ours, an Origin other than that
    /// host, a Sec-Fetch-Site other than "same-origin" or "none".
    [[nodiscard]] std::optional<Response> refuse(const Request& request) const;

    /// The refusal of a request without the token; the time it takes does not tell how much of a
    /// wrong one was right.
    [[nodiscard]] std::optional<Response> refuse_without_token(const Request& request) const;

    [[nodiscard]] const std::string& token() const { return token_; }

private:
    struct Host {
        std::string name;          ///< lower case, with the port where a browser would write one
        bool is_ours_only = true;  ///< a loopback name: never behind a proxy that adds TLS
    };
    [[nodiscard]] const Host* host_of(std::string_view name) const;

    std::vector<Host> hosts_;
    std::string token_;
};

inline constexpr std::string_view token_header = "X-Swathbook-Token";

/// A token nobody can guess: 32 random bytes, as hexadecimal.
[[nodiscard]] Result<std::string> make_token(const store::Outside& outside);

/// Whether two texts are the same, in a time that depends on the length of the first only.
[[nodiscard]] bool same_secret(std::string_view given, std::string_view secret);

}  // namespace swathbook::server
