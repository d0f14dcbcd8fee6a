#pragma once

#include <memory>
#include <string>
#include <vector>

#include <CLI/App.hpp>

#include "cli/command.hpp"

namespace swathbook::cli {

/// A command with its options declared.
struct Branch {
    const Command* command = nullptr;
    std::unique_ptr<CLI::App> app;
    Action action;
};
using Tree = std::vector<Branch>;

/// One command, ready to read a command line.
[[nodiscard]] Branch branch_of(const Command& command);
/// All of them: help, manual and completions are written from the options that really are there.
[[nodiscard]] Tree tree_of_all();

/// The words an option takes when they are a closed set ("boom|boomless"), else nothing.
[[nodiscard]] std::vector<std::string> words_of(const CLI::Option& option);
/// What stands for the value: its closed set of words, "WORD" where they are too many for a line.
[[nodiscard]] std::string value_of_usage(const CLI::Option& option);
/// "--width LENGTH", "--working".
[[nodiscard]] std::string usage_of(const CLI::Option& option);
/// Whether the option reads a file.
[[nodiscard]] bool takes_file(const CLI::Option& option);
/// The sub-commands of a branch: `new`, `add` of `notebook`.
[[nodiscard]] std::vector<const CLI::App*> parts_of(const CLI::App& app);
/// The sub-command of that name, or null.
[[nodiscard]] const CLI::App* part_named(const CLI::App& app, std::string_view name);
/// The options people give, in the order they were declared; --help last.
[[nodiscard]] std::vector<const CLI::Option*> options_of(const CLI::App& app);

}  // namespace swathbook::cli
