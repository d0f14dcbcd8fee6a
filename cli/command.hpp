#pragma once

#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "cli/exit_status.hpp"

namespace CLI {
class App;
}

namespace swathbook::cli {

/// What a command does once its options are read.
using Action = std::function<ExitStatus()>;

/// One word after `swathbook`. Options are declared only for the command that is asked for, and for
/// all of them when a manual or a completion is written: nothing else pays for them.
struct Command {
    std::string_view name;
    std::string_view summary;  ///< one sentence
    std::string_view group;    ///< heading in the list of commands
    std::string examples;      ///< command lines, one a line
    std::function<Action(CLI::App&)> declare;
};

/// Every command, in the order help lists them.
[[nodiscard]] std::span<const Command> commands();
/// The command of that name, or null.
[[nodiscard]] const Command* find_command(std::string_view name);

/// Runs one command line, without the program's name. Never throws, never exits.
[[nodiscard]] ExitStatus run(std::span<const std::string> arguments);

}  // namespace swathbook::cli
