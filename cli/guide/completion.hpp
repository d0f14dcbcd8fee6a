#pragma once

#include <string>

#include "cli/guide/tree.hpp"

namespace swathbook::cli {

/// Completion scripts written from the option tree: commands, sub-commands, flags, closed sets of
/// words, and file names where a flag takes a file.
[[nodiscard]] std::string bash_completion(const Tree& tree);
[[nodiscard]] std::string zsh_completion(const Tree& tree);
[[nodiscard]] std::string fish_completion(const Tree& tree);

}  // namespace swathbook::cli
