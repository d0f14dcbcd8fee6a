#pragma once

#include <string_view>
#include <utility>

#include <tl/expected.hpp>

#include "core/base/error.hpp"

namespace swathbook {

/// A value, or the Error that kept it from being made.
template <class T>
using Result = tl::expected<T, Error>;

/// Builds the failure side of a Result: `return fail(ErrorCode::out_of_range, "speed", "Speed is 0
/// mph. ...");`
[[nodiscard]] tl::unexpected<Error> fail(ErrorCode code, std::string_view field,
                                         std::string_view detail);

/// The error of a Result on its way to the caller's Result, whatever values the two hold.
struct PassedOn {
    Error& error;

    template <class T>
    operator tl::expected<T, Error>() && {  // NOLINT: implicit, as a failure is
        return tl::expected<T, Error>(tl::unexpect, std::move(error));
    }
};

}  // namespace swathbook

/// Evaluates an expression that yields a Result; on failure returns that failure from the enclosing
/// function, otherwise binds the value to `name`.
#define SWATHBOOK_TRY(name, ...)                               \
    auto name##_or_error = (__VA_ARGS__);                      \
    if (!name##_or_error) {                                    \
        return ::swathbook::PassedOn{name##_or_error.error()}; \
    }                                                          \
    auto name = std::move(*name##_or_error)

/// The same for a Result<void>, or where the value is not wanted.
#define SWATHBOOK_CHECK(...)                                              \
    do {                                                                  \
        if (auto swathbook_checked = (__VA_ARGS__); !swathbook_checked) { \
            return ::swathbook::PassedOn{swathbook_checked.error()};      \
        }                                                                 \
    } while (false)
