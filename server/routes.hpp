#pragma once

#include <cstdint>
#include <string_view>

#include "core/base/result.hpp"
#include "server/desk.hpp"
#include "server/http.hpp"

namespace swathbook::server {

/// Where an answer is worked out. What may take long, or waits for a disk, never holds up the
/// threads that read and write sockets.
enum class Lane : std::uint8_t {
    here,      ///< on the thread of the connection: microseconds
    compute,   ///< here while the request is small, else among as many threads as the machine has
    notebook,  ///< one thread, the only one that touches the notebook
    paper,     ///< one thread, which starts the printing program
};

using Answer = Response (*)(Desk& desk, const Request& request, std::string_view rest);

/// One address and what it takes. "/api/compute/" stands for the address with one more word.
struct Route {
    std::string_view path;
    Method method = Method::get;  ///< get takes HEAD too
    Lane lane = Lane::here;
    bool needs_token = false;
    std::string_view media_type;  ///< what the body must say it is; empty: anything
    std::size_t most_bytes = 0;   ///< of the body
    Answer answer = nullptr;
};

/// A request that may be answered, and by what.
struct Admitted {
    const Route* route = nullptr;
    std::string_view rest;  ///< the word after the route's path
};

/// Everything that is checked before the body is read: who asks (Doorkeeper), whether there is such
/// an address, the method, the token, the media type, the announced length.
///
/// @param length the announced length of the body; nothing when it comes in chunks
/// @param is_framed whether a body is announced at all
[[nodiscard]] tl::expected<Admitted, Response> admit(const Desk& desk, const Request& request,
                                                     std::optional<std::uint64_t> length,
                                                     bool is_framed);

/// A request larger than this is computed on another thread.
inline constexpr std::size_t small_request = std::size_t{32} << 10;
/// Where the admitted request is to be answered, now that its size is known.
[[nodiscard]] Lane lane_of(const Admitted& admitted, std::size_t body_bytes);

/// Answers; what a library throws becomes an error of kind internal.
[[nodiscard]] Response answer(Desk& desk, const Admitted& admitted, const Request& request);

/// The refusal of a body that outgrows its limit.
[[nodiscard]] Response too_large(std::size_t most_bytes);

inline constexpr std::size_t most_compute_bytes = std::size_t{4} << 20;
inline constexpr std::size_t most_push_bytes = std::size_t{16} << 20;

}  // namespace swathbook::server
