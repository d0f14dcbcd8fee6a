#include <cstdlib>
#include <memory>
#include <string>
#include <vector>

#include <CLI/App.hpp>

#include "api/json/json.hpp"
#include "cli/commands/examples.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/helper_program.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

struct Asked {
    std::string notebook;
    int port = 8420;
    std::string web;
    std::vector<std::string> host_names;
};

constexpr int highest_port = 65535;

ExitStatus serve(const Asked& asked) {
    if (asked.port < 0 || asked.port > highest_port) {
        return usage_fault("--port is 0 (any that is free) to 65535.", "serve");
    }
    const char* usual = std::getenv("SWATHBOOK_NOTEBOOK");
    const std::string notebook = !asked.notebook.empty() ? asked.notebook
                                 : usual != nullptr      ? usual
                                                         : "";
    const api::Json order = {{"notebook", notebook},
                             {"port", asked.port},
                             {"web", asked.web},
                             {"host_names", asked.host_names}};
    return run_helper("swathbook-serve", {}, order.dump());
}

}  // namespace

Command serve_command() {
    Command command;
    command.name = "serve";
    command.summary =
        "The web app and the notebook, for the browser of this computer only. Prints the address "
        "to open; ends with Ctrl-C.";
    command.group = "Keeping";
    command.examples = examples_of("serve");
    command.declare = [](CLI::App& app) -> Action {
        auto asked = std::make_shared<Asked>();
        app.add_option("--notebook", asked->notebook,
                       "The notebook the app keeps; SWATHBOOK_NOTEBOOK when not given. Without "
                       "one, the app computes and keeps what it writes in the browser.")
            ->type_name("NOTEBOOK");
        app.add_option("--port", asked->port,
                       "Where to listen, on 127.0.0.1 only; 8420 when not given, 0 for any that "
                       "is free.")
            ->type_name("NUMBER");
        app.add_option("--web", asked->web,
                       "The folder of the built web app; the one beside the program when not "
                       "given.")
            ->type_name("FOLDER");
        app.add_option("--host-name", asked->host_names,
                       "Another name the server is reached by, as behind a proxy; with a port "
                       "where it is not this one.")
            ->type_name("NAME ...")
            ->expected(1, many_words);
        return [asked] { return serve(*asked); };
    };
    return command;
}

}  // namespace swathbook::cli
