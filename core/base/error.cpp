#include "core/base/error.hpp"

namespace swathbook {

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
