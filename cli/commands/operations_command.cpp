#include <memory>
#include <string>

#include <fmt/format.h>
#include <CLI/App.hpp>

#include "api/language/labels.hpp"
#include "api/language/languages.hpp"
#include "api/operation.hpp"
#include "api/schema.hpp"
#include "cli/commands/examples.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

struct Asked {
    std::string schema;
    std::string labels;
    bool typescript = false;
    bool as_json = false;
};

std::string list_for_people(const Paper& paper) {
    constexpr std::size_t name_column = 16;
    std::string out;
    for (const api::Operation& operation : api::operations()) {
        std::string text = wrapped(operation.summary, paper.width, name_column);
        text.erase(0, name_column);
        out += padded(operation.name, name_column) + text;
    }
    return out;
}

ExitStatus list(const Asked& asked) {
    if (!asked.schema.empty()) {
        const auto operation = api::find_operation(asked.schema);
        if (!operation) {
            return report(operation.error());
        }
        write_output(api::schema_of(**operation) + "\n");
    } else if (!asked.labels.empty()) {
        if (asked.labels != api::english && asked.labels != api::spanish) {
            return usage_fault(
                fmt::format("Labels are in \"en\" or \"es\", not \"{}\".", asked.labels),
                "operations");
        }
        write_output(api::labels_json(asked.labels) + "\n");
    } else if (asked.typescript) {
        write_output(api::typescript_of_all());
    } else {
        write_output(asked.as_json ? api::list_of_operations()
                                   : list_for_people(paper_of_output()));
    }
    return ExitStatus::ok;
}

}  // namespace

Command operations_command() {
    Command command;
    command.name = "operations";
    command.summary = "What can be computed; its JSON Schema; types for TypeScript.";
    command.group = "For programs";
    command.examples = examples_of("operations");
    command.declare = [](CLI::App& app) -> Action {
        auto asked = std::make_shared<Asked>();
        app.add_option("--schema", asked->schema, "The JSON Schema of one operation.")
            ->type_name("NAME");
        app.add_option("--labels", asked->labels,
                       "Labels, docs and choices of every field in a language, as JSON.")
            ->type_name("en|es");
        app.add_flag("--typescript", asked->typescript,
                     "TypeScript types of every request and answer.");
        app.add_flag("--json", asked->as_json, "The list as JSON.");
        return [asked] { return list(*asked); };
    };
    return command;
}

}  // namespace swathbook::cli
