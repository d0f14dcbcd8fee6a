#pragma once

#include <string>
#include <string_view>

namespace swathbook::cli {

/// Command lines that show a command at work, one a line; empty when there are none. Every one of
/// them is run by the tests.
[[nodiscard]] std::string examples_of(std::string_view command);

}  // namespace swathbook::cli
