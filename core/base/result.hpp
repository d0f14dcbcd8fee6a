#pragma once

#include <string>
#include <utility>

#include <tl/expected.hpp>

#include "core/base/error.hpp"

namespace swathbook {

/// A value, or the Error that kept it from being made.
template <class T>
using Result = tl::expected<T, Error>;

/// Builds the failure side of a Result: `return fail(ErrorCode::out_of_range, "speed", "Speed is 0
/// mph. ...");`
[[nodiscard]] inline tl::unexpected<Error> fail(ErrorCode code, std::string field,
                                                std::string detail) {
    return tl::unexpected<Error>(Error{code, std::move(field), std::move(detail)});
}

}  // namespace swathbook

/// Evaluates an expression that yields a Result; on failure returns that failure from the enclosing
/// function, otherwise binds the value to `name`.
#define SWATHBOOK_TRY(name, ...)                                                       \
    auto name##_or_error = (__VA_ARGS__);                                              \
    if (!name##_or_error) {                                                            \
        return tl::unexpected<::swathbook::Error>(std::move(name##_or_error).error()); \
    }                                                                                  \
    auto name = std::move(name##_or_error).value()

/// The same for a Result<void>, or where the value is not wanted.
#define SWATHBOOK_CHECK(...)                                                                 \
    do {                                                                                     \
        if (auto swathbook_checked = (__VA_ARGS__); !swathbook_checked) {                    \
            return tl::unexpected<::swathbook::Error>(std::move(swathbook_checked).error()); \
        }                                                                                    \
    } while (false)
