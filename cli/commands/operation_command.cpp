#include "cli/commands/operation_command.hpp"

#include <cstdlib>
#include <memory>
#include <optional>
#include <vector>

#include <fmt/format.h>
#include <CLI/App.hpp>

#include "api/call.hpp"
#include "cli/answer/print_answer.hpp"
#include "cli/answer/words.hpp"
#include "cli/commands/examples.hpp"
#include "cli/files.hpp"
#include "cli/notebook/keep.hpp"
#include "cli/options.hpp"
#include "cli/request/flags.hpp"
#include "cli/request/values.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

/// What was written on the command line, kept until the command runs.
struct Asked {
    std::vector<Flag> flags;
    std::vector<CLI::Option*> options;  // one for each flag
    std::string request_file;
    std::string units;
    std::string language;
    std::string keep_as;
    std::string notebook;
    std::string author;
    bool working = false;
    bool brief = false;
    bool as_json = false;
};

CLI::Option* declare_flag(CLI::App& app, const Flag& flag) {
    CLI::Option* option = app.add_option(flag.name)->description(help_of(flag));
    option->type_name(placeholder_of(flag))->group("Inputs");
    if (flag.type->shape() == api::Shape::boolean && !flag.is_list) {
        return option->expected(0, 1);
    }
    if (flag.is_list) {
        option->type_name(placeholder_of(flag) + " ...");
    }
    return option->expected(1, many_words);
}

void declare_common(CLI::App& app, Asked& asked) {
    app.add_option("--request", asked.request_file,
                   "A JSON request to start from; flags are laid over it. - reads standard input.")
        ->type_name("FILE")
        ->group("Inputs");
    app.add_option("--units", asked.units,
                   "Units the answer is written in; SWATHBOOK_UNITS when not given, else us.")
        ->type_name("us|metric")
        ->group("Answer");
    // An operation whose request names the language of its texts (practice) has the flag already.
    if (app.get_option_no_throw("--language") == nullptr) {
        app.add_option(
               "--language", asked.language,
               "Language the answer speaks; en when not given. Names stay as they were typed.")
            ->type_name("en|es")
            ->group("Answer");
    }
    app.add_flag("--working", asked.working, "Show every step, to be checked with a pencil.")
        ->group("Answer");
    app.add_flag("--brief", asked.brief, "Only the plain values and the remarks.")->group("Answer");
    app.add_flag("--json", asked.as_json, "The answer as JSON, for programs.")->group("Answer");
    app.add_option("--keep", asked.keep_as,
                   "Keep request and answer in the notebook under this name.")
        ->type_name("NAME")
        ->group("Notebook");
    app.add_option("--notebook", asked.notebook, "The notebook; SWATHBOOK_NOTEBOOK when not given.")
        ->type_name("NOTEBOOK")
        ->group("Notebook");
    app.add_option("--author", asked.author, "Who keeps it; the notebook's author when not given.")
        ->type_name("NAME")
        ->group("Notebook");
}

Result<api::Json> starting_request(const Asked& asked) {
    if (asked.request_file.empty()) {
        return api::Json(api::Json::object());
    }
    SWATHBOOK_TRY(text, read_file(asked.request_file));
    SWATHBOOK_TRY(request, api::parse_json(text));
    if (!request.is_object()) {
        return fail(ErrorCode::invalid_input, "",
                    "A request is a JSON object: {\"width\": \"26 ft\", ...}.");
    }
    return request;
}

/// The flags laid over the request file.
Result<api::Json> request_of(const Asked& asked) {
    SWATHBOOK_TRY(request, starting_request(asked));
    for (std::size_t i = 0; i < asked.flags.size(); ++i) {
        if (asked.options[i]->empty()) {
            continue;
        }
        std::vector<std::string> words = restored(asked.options[i]->results());
        if (asked.flags[i].type->shape() == api::Shape::boolean && words.size() == 1 &&
            words[0].empty()) {
            words.clear();
        }
        SWATHBOOK_TRY(value, value_of(asked.flags[i], words));
        SWATHBOOK_CHECK(put(request, asked.flags[i], std::move(value)));
    }
    const char* preferred = std::getenv("SWATHBOOK_UNITS");
    const std::string units = !asked.units.empty()   ? asked.units
                              : preferred != nullptr ? std::string(preferred)
                                                     : std::string();
    if (!units.empty() && (!asked.units.empty() || !request.contains("units"))) {
        request["units"] = units;
    }
    if (!asked.language.empty()) {
        request["language"] = asked.language;
    }
    if (asked.working) {
        request["working"] = true;
    }
    return request;
}

ExitStatus keep_answer(const api::Operation& operation, const Asked& asked,
                       const std::string& request, const std::string& answer) {
    const auto kept =
        keep({asked.notebook, asked.author, asked.keep_as, operation.name, request, answer});
    if (!kept) {
        return report(kept.error());
    }
    write_error(fmt::format("kept as \"{}\", {}\n", asked.keep_as, text_of(*kept)));
    return ExitStatus::ok;
}

ExitStatus report_refusal(const api::Called& called, const api::Json& parsed) {
    const api::Json& error = parsed["error"];
    return report(
        {*called.error, error["field"].get<std::string>(), error["detail"].get<std::string>()});
}

ExitStatus answer(const api::Operation& operation, const Asked& asked) {
    const auto request = request_of(asked);
    if (!request) {
        return report(request.error());
    }
    const std::string text = request->dump();
    if (const auto language = request->find("language");
        language != request->end() && language->is_string()) {
        speak(language->get_ref<const std::string&>());
    }
    const api::Called called = api::call(operation.name, text);
    if (asked.as_json) {
        write_output(called.json + "\n");
    }
    const auto parsed = api::parse_json(called.json);
    if (!parsed) {
        return report(
            {ErrorCode::internal, "", "The answer is not JSON: " + parsed.error().detail});
    }
    if (called.error) {
        return report_refusal(called, *parsed);
    }
    if (!asked.as_json) {
        const auto print = asked.brief ? &print_summary : &print_answer;
        write_output(print(operation.answer(), *parsed, paper_of_output()));
    }
    return asked.keep_as.empty() ? ExitStatus::ok
                                 : keep_answer(operation, asked, text, called.json);
}

}  // namespace

Command operation_command(const api::Operation& operation) {
    Command command;
    command.name = operation.name;
    command.summary = operation.summary;
    command.group = "Computing";
    command.examples = examples_of(operation.name);
    command.declare = [&operation](CLI::App& app) -> Action {
        auto asked = std::make_shared<Asked>();
        asked->flags = flags_of(operation.request());
        for (const Flag& flag : asked->flags) {
            asked->options.push_back(declare_flag(app, flag));
        }
        declare_common(app, *asked);
        return [&operation, asked] { return answer(operation, *asked); };
    };
    return command;
}

}  // namespace swathbook::cli
