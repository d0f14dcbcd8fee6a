#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace swathbook {

/// What kind of failure an operation met. Numbers are permanent: they are stored and mapped to exit
/// statuses.
enum class ErrorCode : std::uint8_t {
    invalid_input =
        1,  ///< the text or shape of an input cannot be understood, or could mean several things
    out_of_range =
        2,  ///< understood, but outside the limits that the relation or the ground allows
    inconsistent = 3,   ///< two inputs contradict each other
    not_found = 4,      ///< a named thing (operation, tip, entry) does not exist
    conflict = 5,       ///< the change collides with one already kept (closed record, newer entry)
    unsupported = 6,    ///< understood, but this version does not do it
    not_permitted = 7,  ///< refused: the act is not allowed (changing a closed record)
    corrupt_data = 8,   ///< stored or received data fail their own checks
    io = 9,             ///< a file or device could not be read or written
    unavailable = 10,   ///< busy or out of reach for now: try again
    internal = 11,      ///< a fault of ours
};

/// The permanent word for a code, as it appears in JSON ("out_of_range").
[[nodiscard]] std::string_view word_of(ErrorCode code);

/// A failure a user can cause. `detail` says what was wrong, the value with its unit, the limit,
/// and what to do.
///
/// Nearly every function hands errors on. How they are copied, moved and dropped stands once, in
/// error.cpp, and not at each of those thousand places: a fifth of the WebAssembly module.
struct Error {
    ErrorCode code = ErrorCode::internal;
    std::string
        field;  ///< the input at fault as a path, e.g. "catches[2]"; empty when no single input is
    std::string detail;  ///< for people: complete sentences

    Error();
    Error(ErrorCode what, std::string_view where, std::string_view sentences);
    Error(const Error& other);
    Error(Error&& other) noexcept;
    Error& operator=(const Error& other);
    Error& operator=(Error&& other) noexcept;
    ~Error();

    bool operator==(const Error&) const = default;
};

}  // namespace swathbook
