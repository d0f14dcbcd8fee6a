#include "core/base/error.hpp"

#include "core/base/result.hpp"

namespace swathbook {

Error::Error() = default;
Error::Error(ErrorCode what, std::string_view where, std::string_view sentences)
    : code(what), field(where), detail(sentences) {}
Error::Error(const Error& other) = default;
Error::Error(Error&& other) noexcept = default;
Error& Error::operator=(const Error& other) = default;
Error& Error::operator=(Error&& other) noexcept = default;
Error::~Error() = default;

tl::unexpected<Error> fail(ErrorCode code, std::string_view field, std::string_view detail) {
    return tl::unexpected<Error>(Error(code, field, detail));
}

std::string_view word_of(ErrorCode code) {
    switch (code) {
        case ErrorCode::invalid_input: return "invalid_input";
        case ErrorCode::out_of_range: return "out_of_range";
        case ErrorCode::inconsistent: return "inconsistent";
        case ErrorCode::not_found: return "not_found";
        case ErrorCode::conflict: return "conflict";
        case ErrorCode::unsupported: return "unsupported";
        case ErrorCode::not_permitted: return "not_permitted";
        case ErrorCode::corrupt_data: return "corrupt_data";
        case ErrorCode::io: return "io";
        case ErrorCode::unavailable: return "unavailable";
        case ErrorCode::internal: return "internal";
    }
    return "internal";
}

}  // namespace swathbook
