#pragma once

#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

#include "core/base/result.hpp"

namespace swathbook::api {

using Json = nlohmann::ordered_json;

/// Reads JSON text strictly: one value, no duplicate keys (the second would silently win), no
/// number beyond double, nesting at most 64, text at most 64 MiB.
/// @errors invalid_input with line and column
[[nodiscard]] Result<Json> parse_json(std::string_view text);

/// The value as text, as JSON is written without spaces; every digit of a number is kept.
[[nodiscard]] std::string json_text(const Json& json);

}  // namespace swathbook::api
