#pragma once

#include <string>

#include "api/json/json.hpp"
#include "tests/case_runner/case_file.hpp"

namespace swathbook::tests {

/// Why an answer does not meet a demand; empty when it does.
[[nodiscard]] std::string complaint(const Demand& demand, const api::Json& answer);

/// The value at a path like `loads[0].mix` or `rows[part=1/128 ac].length`; null when there is
/// none.
[[nodiscard]] const api::Json* at_path(const api::Json& root, const std::string& path);

}  // namespace swathbook::tests
