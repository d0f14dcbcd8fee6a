#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "api/json/json.hpp"
#include "core/base/error.hpp"

namespace swathbook::api {

/// What a call came to: JSON text either way.
struct Called {
    std::string json;                ///< the answer, or {"error": {"code", "field", "detail"}}
    std::optional<ErrorCode> error;  ///< empty when the call was answered
};

/// Runs one operation on a JSON request. Every face asks here, so every face gives the same bytes.
///
/// @param operation its name, "calibrate"
/// @param request   JSON text; may carry "units": "us" | "metric", "working": true and "language":
/// "en" | "es" beside the operation's fields
[[nodiscard]] Called call(std::string_view operation, std::string_view request);

/// The failure form of an answer.
[[nodiscard]] std::string error_json(const Error& error);

}  // namespace swathbook::api
