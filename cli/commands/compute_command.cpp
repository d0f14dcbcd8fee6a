#include <memory>
#include <string>

#include <CLI/App.hpp>

#include "api/call.hpp"
#include "cli/commands/examples.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/files.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

struct Asked {
    std::string operation;
    std::string request_file = "-";
};

/// The answer is JSON on standard output whether it is an answer or a refusal; the status tells
/// which.
ExitStatus compute(const Asked& asked) {
    const auto request = read_file(asked.request_file);
    if (!request) {
        return report(request.error());
    }
    const api::Called called = api::call(asked.operation, *request);
    write_output(called.json + "\n");
    return called.error ? exit_status_of(*called.error) : ExitStatus::ok;
}

}  // namespace

Command compute_command() {
    Command command;
    command.name = "compute";
    command.summary = "One operation, JSON in and JSON out: for programs.";
    command.group = "For programs";
    command.examples = examples_of("compute");
    command.declare = [](CLI::App& app) -> Action {
        auto asked = std::make_shared<Asked>();
        app.add_option("operation", asked->operation,
                       "Its name; 'swathbook operations' lists them.")
            ->type_name("NAME")
            ->required();
        app.add_option("--request", asked->request_file,
                       "The request; standard input when not given.")
            ->type_name("FILE");
        return [asked] { return compute(*asked); };
    };
    return command;
}

}  // namespace swathbook::cli
