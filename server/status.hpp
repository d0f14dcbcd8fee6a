#pragma once

#include "core/base/error.hpp"
#include "server/http.hpp"

namespace swathbook::server {

/// The status that an error of the core is answered with: the one table.
[[nodiscard]] Status status_of(ErrorCode code);

/// "Not Found", for the first line of an answer.
[[nodiscard]] std::string_view phrase_of(Status status);

/// An error as an answer: {"error": {"code", "field", "detail"}} under the status of its code.
[[nodiscard]] Response refusal(const Error& error);
/// The same under another status: faults of HTTP itself have statuses of their own.
[[nodiscard]] Response refusal(Status status, const Error& error);

}  // namespace swathbook::server
