#pragma once

#include <span>
#include <string>
#include <string_view>

#include "cli/guide/tree.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {

/// What `swathbook` alone prints: examples first, then the commands.
[[nodiscard]] std::string overview(const Paper& paper);
/// Help of one command: examples, then its options by group.
[[nodiscard]] std::string help_text(const CLI::App& app, std::string_view examples,
                                    const Paper& paper);
/// `swathbook help notebook add`: prints it, or says which commands there are.
[[nodiscard]] ExitStatus print_help(std::span<const std::string> words);

}  // namespace swathbook::cli
