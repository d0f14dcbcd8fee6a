#pragma once

#include <cstdint>
#include <functional>
#include <span>

#include "core/base/result.hpp"

namespace swathbook::store {

/// What the core must not reach by itself: the clock and unguessable bytes. Tests bring their own.
struct Outside {
    std::function<std::int64_t()> now_ms;  ///< Unix time in milliseconds
    std::function<Result<void>(std::span<std::uint8_t>)> random;
};

/// The system clock (UTC) and getrandom(2).
[[nodiscard]] Outside system_outside();

}  // namespace swathbook::store
