#pragma once

#include <span>
#include <string>
#include <vector>

#include "api/json/json.hpp"
#include "core/base/result.hpp"

namespace swathbook::cli {

/// The body of an entry from what was typed: a JSON text or @FILE to start from, and name=value
/// words laid over it. A value that is JSON (a number, true, null, a list, an object) is kept as
/// such; anything else is text.
/// @errors invalid_input{name=value}, not_found
[[nodiscard]] Result<std::string> body_from(const std::string& json,
                                            std::span<const std::string> words);

}  // namespace swathbook::cli
