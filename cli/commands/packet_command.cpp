#include <dirent.h>

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include <fmt/format.h>
#include <CLI/App.hpp>

#include "api/json/json.hpp"
#include "api/operation.hpp"
#include "cli/clock.hpp"
#include "cli/commands/examples.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/files.hpp"
#include "cli/helper_program.hpp"
#include "cli/notebook/open_notebook.hpp"
#include "cli/terminal.hpp"
#include "cli/version.hpp"

namespace swathbook::cli {
namespace {

using api::Json;

struct Asked {
    std::string folder;
    std::string output;
    std::string language = "en";
    std::string paper = "letter";
    std::string units = "us";
    std::string printed_at;
    std::string notebook;
};

Result<std::vector<std::string>> request_files(const std::string& folder) {
    DIR* open = opendir(folder.c_str());
    if (open == nullptr) {
        return fail(
            ErrorCode::not_found, "",
            fmt::format("There is no folder \"{}\" with the requests of a packet.", folder));
    }
    std::vector<std::string> names;
    while (const dirent* entry = readdir(open)) {
        const std::string name = entry->d_name;
        if (name.ends_with(".json") && name != "packet.json") {
            names.push_back(name.substr(0, name.size() - 5));
        }
    }
    closedir(open);
    std::sort(names.begin(), names.end());
    return names;
}

/// "03-tip-check-boom-rig" asks "tip-check": the longest operation the name begins with, after its
/// number.
std::string operation_in(std::string_view name) {
    name.remove_prefix(std::min(name.find_first_not_of("0123456789"), name.size()));
    name.remove_prefix(name.starts_with('-') ? 1 : 0);
    std::string_view longest;
    for (const api::Operation& operation : api::operations()) {
        const bool is_whole =
            name == operation.name || name.starts_with(std::string(operation.name) + "-");
        if (is_whole && operation.name.size() > longest.size()) {
            longest = operation.name;
        }
    }
    return std::string(longest);
}

Result<Json> parts_of_packet(const std::string& folder, const Json& names) {
    SWATHBOOK_TRY(files, request_files(folder));
    Json parts = Json::array();
    for (const std::string& file : files) {
        const std::string operation = operation_in(file);
        if (operation.empty()) {
            return fail(ErrorCode::invalid_input, file + ".json",
                        "The name of a request says its number and its operation: "
                        "01-calibrate-boom-rig.json.");
        }
        SWATHBOOK_TRY(request, read_file(folder + "/" + file + ".json"));
        const auto named = names.find(file);
        parts.push_back(
            {{"file", file + ".json"},
             {"name",
              named != names.end() && named->is_string() ? named->get<std::string>() : file},
             {"operation", operation},
             {"request", request}});
    }
    return parts;
}

/// Everything the printing program needs, as one JSON text.
Result<std::string> order_of(const Asked& asked) {
    Json story = Json::object();
    if (const auto text = read_file(asked.folder + "/packet.json")) {
        SWATHBOOK_TRY(parsed, api::parse_json(*text));
        story = std::move(parsed);
    } else if (text.error().code != ErrorCode::not_found) {
        return tl::unexpected<Error>(text.error());
    }
    SWATHBOOK_TRY(parts, parts_of_packet(asked.folder, story.value("names", Json::object())));
    std::string notebook_id;
    if (!asked.notebook.empty()) {
        SWATHBOOK_TRY(notebook, open_notebook(asked.notebook, store::OpenMode::read_only));
        notebook_id = text_of(notebook->device());
    }
    const Json order = {{"job", story.value("job", Json::object())},
                        {"record_values", story.value("record_values", Json::object())},
                        {"parts", std::move(parts)},
                        {"language", asked.language},
                        {"paper", asked.paper},
                        {"units", asked.units},
                        {"printed_at", asked.printed_at.empty() ? now_text() : asked.printed_at},
                        {"notebook", notebook_id},
                        {"model_version", fmt::format("Swathbook {}", version)}};
    return order.dump();
}

ExitStatus print(const Asked& asked) {
    const auto order = order_of(asked);
    if (!order) {
        return report(order.error());
    }
    return run_helper("swathbook-paper", {asked.output}, *order);
}

}  // namespace

Command packet_command() {
    Command command;
    command.name = "packet";
    command.summary =
        "Prints a job packet as PDF: sheets for calibration, tips, crew, mixing and the record.";
    command.group = "Keeping";
    command.examples = examples_of("packet");
    command.declare = [](CLI::App& app) -> Action {
        auto asked = std::make_shared<Asked>();
        app.add_option("folder", asked->folder,
                       "A folder of requests, each named by number and operation "
                       "(01-calibrate-boom-rig.json), "
                       "and packet.json with the job's names.")
            ->type_name("FOLDER")
            ->required();
        app.add_option("--output", asked->output,
                       "The PDF to write; a page for a browser when its name ends in .html.")
            ->type_name("FILE")
            ->required();
        app.add_option("--language", asked->language,
                       "Language of the sheets; mixing cards carry both.")
            ->type_name("en|es");
        app.add_option("--paper", asked->paper, "Paper size.")->type_name("letter|a4");
        app.add_option("--units", asked->units, "Units of the sheets.")->type_name("us|metric");
        app.add_option("--printed-at", asked->printed_at,
                       "Date and time for the footer; now when not given.")
            ->type_name("TIME");
        app.add_option("--notebook", asked->notebook, "The notebook whose id stands in the footer.")
            ->type_name("NOTEBOOK");
        return [asked] { return print(*asked); };
    };
    return command;
}

}  // namespace swathbook::cli
