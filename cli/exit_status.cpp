#include "cli/exit_status.hpp"

namespace swathbook::cli {

ExitStatus exit_status_of(ErrorCode code) {
    switch (code) {
        case ErrorCode::invalid_input:
        case ErrorCode::out_of_range:
        case ErrorCode::inconsistent:
        case ErrorCode::unsupported: return ExitStatus::input;
        case ErrorCode::not_found: return ExitStatus::not_found;
        case ErrorCode::conflict: return ExitStatus::conflict;
        case ErrorCode::not_permitted: return ExitStatus::refused;
        case ErrorCode::corrupt_data:
        case ErrorCode::io: return ExitStatus::storage;
        case ErrorCode::unavailable: return ExitStatus::unavailable;
        case ErrorCode::internal: return ExitStatus::internal;
    }
    return ExitStatus::failed;
}

}  // namespace swathbook::cli
