#pragma once

#include <string>

#include "api/json/json.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {

/// The findings of an answer, loudest first, each with its severity in words.
[[nodiscard]] std::string print_findings(const api::Json& answer, const Paper& paper);

/// The working of an answer as numbered lines; empty when the answer carries none.
[[nodiscard]] std::string print_working(const api::Json& answer, const Paper& paper);

}  // namespace swathbook::cli
