#pragma once

#include "core/base/error.hpp"

namespace swathbook::cli {

/// How the program ended, as scripts see it. Numbers are permanent; the man page lists them.
enum class ExitStatus : int {
    ok = 0,
    failed = 1,       ///< anything not named below
    usage = 2,        ///< an unknown command or flag, a flag without its value
    input = 3,        ///< the values given cannot be used
    refused = 4,      ///< understood, and not done: a closed record stays closed
    not_found = 5,    ///< no such operation, entry or file
    conflict = 6,     ///< collides with something already kept
    unavailable = 7,  ///< busy or out of reach: try again
    storage = 8,      ///< the disk or the notebook file failed
    internal = 70,    ///< a fault of the program
};

[[nodiscard]] ExitStatus exit_status_of(ErrorCode code);

}  // namespace swathbook::cli
