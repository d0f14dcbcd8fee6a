#include <memory>
#include <string>

#include <fmt/format.h>
#include <CLI/App.hpp>

#include "api/json/json.hpp"
#include "cli/commands/examples.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/helper_program.hpp"
#include "cli/version.hpp"

namespace swathbook::cli {
namespace {

struct Asked {
    std::string output;
    std::string language = "en";
    std::string paper = "letter";
    std::string units = "us";
    int tips = 12;
};

ExitStatus print(const Asked& asked) {
    const api::Json order = {
        {"sheet", "worksheet"}, {"language", asked.language},
        {"paper", asked.paper}, {"units", asked.units},
        {"tips", asked.tips},   {"model_version", fmt::format("Swathbook {}", version)}};
    return run_helper("swathbook-paper", {asked.output}, order.dump());
}

}  // namespace

Command worksheet_command() {
    Command command;
    command.name = "worksheet";
    command.summary = "Prints one page to calibrate by hand, with the formula and its boxes.";
    command.group = "Keeping";
    command.examples = examples_of("worksheet");
    command.declare = [](CLI::App& app) -> Action {
        auto asked = std::make_shared<Asked>();
        app.add_option("--output", asked->output,
                       "The PDF to write; a page for a browser when its name ends in .html.")
            ->type_name("FILE")
            ->required();
        app.add_option("--language", asked->language, "Language of the page.")->type_name("en|es");
        app.add_option("--paper", asked->paper, "Paper size.")->type_name("letter|a4");
        app.add_option("--units", asked->units, "Units of the page.")->type_name("us|metric");
        app.add_option("--tips", asked->tips, "Columns for catches, 1 to 16.")->type_name("COUNT");
        return [asked] { return print(*asked); };
    };
    return command;
}

}  // namespace swathbook::cli
