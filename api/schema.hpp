#pragma once

#include <string>

#include "api/operation.hpp"

namespace swathbook::api {

/// The JSON Schema (draft 2020-12) of an operation: properties "request" and "answer", definitions
/// in "$defs".
[[nodiscard]] std::string schema_of(const Operation& operation);

/// All operations as JSON: [{"name", "summary", "stories"}], ended by a line feed.
[[nodiscard]] std::string list_of_operations();

/// TypeScript declarations of every request and answer, and a map from operation names to both.
[[nodiscard]] std::string typescript_of_all();

}  // namespace swathbook::api
