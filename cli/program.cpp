#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <CLI/App.hpp>

#include "api/operation.hpp"
#include "cli/command.hpp"
#include "cli/commands/operation_command.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/guide/help.hpp"
#include "cli/guide/tree.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"
#include "cli/version.hpp"

namespace swathbook::cli {
namespace {

std::vector<Command> make_commands() {
    std::vector<Command> all;
    for (const api::Operation& operation : api::operations()) {
        all.push_back(operation_command(operation));
    }
    all.push_back(notebook_command());
    all.push_back(packet_command());
    all.push_back(worksheet_command());
    all.push_back(serve_command());
    all.push_back(compute_command());
    all.push_back(operations_command());
    all.push_back(help_command());
    all.push_back(manual_command());
    all.push_back(completion_command());
    return all;
}

std::vector<std::string_view> views_of(const std::vector<std::string>& words) {
    return {words.begin(), words.end()};
}

/// The sub-command that was reached: `add` in `swathbook notebook add ...`.
const CLI::App& reached(const CLI::App& app) {
    const CLI::App* here = &app;
    while (!here->get_subcommands().empty()) {
        here = here->get_subcommands().back();
    }
    return *here;
}

/// What is wrong with a command line that the option reader itself let through; empty when nothing.
std::string complaint(const CLI::App& app, std::span<const std::string> arguments) {
    const CLI::App& part = reached(app);
    if (const std::string repeated = repeated_flag(part, arguments); !repeated.empty()) {
        return fmt::format("{} stands twice; it takes one value.", repeated);
    }
    const std::vector<std::string> left = restored(app.remaining(true));
    if (left.empty()) {
        return {};
    }
    const auto flag = std::find_if(left.begin(), left.end(),
                                   [](const std::string& word) { return word.starts_with("-"); });
    if (flag == left.end()) {
        return fmt::format("\"{}\" is one word too many.", left.front());
    }
    const std::string name = flag->substr(0, flag->find('='));
    return fmt::format("There is no flag {}. {}", name,
                       api::suggest(name, views_of(flags_in(part))));
}

bool asks_for_help(std::span<const std::string> arguments) {
    for (const std::string& word : arguments) {
        if (word == "--") {
            return false;
        }
        if (word == "-h" || word == "--help") {
            return true;
        }
    }
    return false;
}

/// The words before the first flag: `notebook add` of `notebook add --kind job --help`.
ExitStatus help_for(std::span<const std::string> arguments) {
    std::vector<std::string> words{arguments[0]};
    const Branch branch = branch_of(*find_command(arguments[0]));
    const CLI::App* app = branch.app.get();
    for (const std::string& word : arguments.subspan(1)) {
        app = part_named(*app, word);
        if (app == nullptr) {
            break;
        }
        words.push_back(word);
    }
    return print_help(words);
}

ExitStatus run_command(const Command& command, std::span<const std::string> arguments) {
    const Branch branch = branch_of(command);
    std::vector<std::string> words = marked(arguments.subspan(1));
    std::reverse(words.begin(), words.end());
    try {
        branch.app->parse(std::move(words));
    } catch (const CLI::ParseError& error) {
        const std::string what = complaint(*branch.app, arguments.subspan(1));
        return usage_fault(what.empty() ? std::string(error.what()) : what, command.name);
    }
    if (const std::string what = complaint(*branch.app, arguments.subspan(1)); !what.empty()) {
        return usage_fault(what, command.name);
    }
    return branch.action();
}

ExitStatus run_word(std::span<const std::string> arguments) {
    const std::string& word = arguments[0];
    if (word == "--help" || word == "-h") {
        write_output(overview(paper_of_output()));
        return ExitStatus::ok;
    }
    if (word == "--version") {
        write_output(fmt::format("swathbook {}\n", version));
        return ExitStatus::ok;
    }
    const Command* command = find_command(word);
    if (command == nullptr) {
        std::vector<std::string_view> names;
        for (const Command& known : commands()) {
            names.push_back(known.name);
        }
        return usage_fault(fmt::format("There is no {} \"{}\". {}",
                                       word.starts_with("-") ? "flag" : "command", word,
                                       api::suggest(word, names)));
    }
    return asks_for_help(arguments) ? help_for(arguments) : run_command(*command, arguments);
}

}  // namespace

std::span<const Command> commands() {
    static const std::vector<Command> all = make_commands();
    return all;
}

const Command* find_command(std::string_view name) {
    for (const Command& command : commands()) {
        if (command.name == name) {
            return &command;
        }
    }
    return nullptr;
}

ExitStatus run(std::span<const std::string> arguments) {
    try {
        if (arguments.empty()) {
            write_output(overview(paper_of_output()));
            return ExitStatus::ok;
        }
        return run_word(arguments);
    } catch (const std::exception& error) {  // only libraries throw, and only by a fault of ours
        return report(
            {ErrorCode::internal, "", fmt::format("The program failed: {}.", error.what())});
    }
}

}  // namespace swathbook::cli
