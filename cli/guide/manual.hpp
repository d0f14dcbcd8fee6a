#pragma once

#include <string>

#include "cli/guide/tree.hpp"

namespace swathbook::cli {

/// swathbook(1) in mdoc, written from the option tree; clean under `mandoc -Tlint`.
[[nodiscard]] std::string manual_page(const Tree& tree);

}  // namespace swathbook::cli
