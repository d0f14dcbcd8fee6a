#pragma once

namespace swathbook::detail {
[[noreturn]] void assertion_failed(const char* condition, const char* reason, const char* file,
                                   int line);
}

/// For programmer mistakes only; never reachable by input. On in every build: a wrong rate is worse
/// than a stop.
#define SWATHBOOK_ASSERT(condition, reason)                                                \
    do {                                                                                   \
        if (!(condition)) {                                                                \
            ::swathbook::detail::assertion_failed(#condition, reason, __FILE__, __LINE__); \
        }                                                                                  \
    } while (false)
