#include <algorithm>
#include <array>
#include <memory>
#include <string>

#include <fmt/format.h>
#include <CLI/App.hpp>

#include "cli/commands/examples.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/guide/completion.hpp"
#include "cli/guide/help.hpp"
#include "cli/guide/manual.hpp"
#include "cli/guide/tree.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

Command made(std::string_view name, std::string_view summary) {
    Command command;
    command.name = name;
    command.summary = summary;
    command.group = "Help";
    command.examples = examples_of(name);
    return command;
}

ExitStatus print_completion(const std::string& shell) {
    const Tree tree = tree_of_all();
    if (shell == "bash") {
        write_output(bash_completion(tree));
    } else if (shell == "zsh") {
        write_output(zsh_completion(tree));
    } else if (shell == "fish") {
        write_output(fish_completion(tree));
    } else {
        return usage_fault(
            fmt::format("There is no completion for \"{}\": bash, zsh or fish.", shell),
            "completion");
    }
    return ExitStatus::ok;
}

}  // namespace

Command completion_command() {
    Command command = made("completion", "Completion of commands and flags for a shell.");
    command.declare = [](CLI::App& app) -> Action {
        auto shell = std::make_shared<std::string>();
        app.add_option("shell", *shell, "The shell to write for.")
            ->type_name("bash|zsh|fish")
            ->required();
        return [shell] { return print_completion(*shell); };
    };
    return command;
}

Command manual_command() {
    Command command = made("man", "The manual page, for man(1).");
    command.declare = [](CLI::App&) -> Action {
        return [] {
            write_output(manual_page(tree_of_all()));
            return ExitStatus::ok;
        };
    };
    return command;
}

Command help_command() {
    Command command = made("help", "Help on a command.");
    command.declare = [](CLI::App& app) -> Action {
        auto words = std::make_shared<std::vector<std::string>>();
        app.add_option("command", *words, "The command.")->type_name("COMMAND");
        return [words] {
            if (words->empty()) {
                write_output(overview(paper_of_output()));
                return ExitStatus::ok;
            }
            return print_help(*words);
        };
    };
    return command;
}

}  // namespace swathbook::cli
