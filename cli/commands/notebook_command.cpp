#include <memory>
#include <string>
#include <utility>
#include <vector>

#include <CLI/App.hpp>

#include "cli/commands/examples.hpp"
#include "cli/commands/plain_commands.hpp"
#include "cli/notebook/acts.hpp"
#include "cli/options.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

using Act = Result<void> (*)(const NotebookAsk&);

constexpr const char* kind_words =
    "sprayer|tip_set|operator|calibration|landowner|stand|setback|product_card|job|load|pass|"
    "reading|record|"
    "attachment";

/// One sub-command and the options it takes, all written into the same request.
class Part {
public:
    Part(CLI::App& parent, const char* name, const char* summary, NotebookAsk& ask)
        : app_(*parent.add_subcommand(name, summary)), ask_(ask) {
        app_.set_help_flag("-h,--help", "This help.");
    }
    Part& notebook() {
        app_.add_option("--notebook", ask_.notebook,
                        "The notebook; SWATHBOOK_NOTEBOOK when not given.")
            ->type_name("NOTEBOOK");
        return *this;
    }
    Part& author() {
        app_.add_option("--author", ask_.author,
                        "Who makes the change; the notebook's author when not given.")
            ->type_name("NAME");
        return *this;
    }
    Part& which(const char* doc) {
        app_.add_option("which", ask_.which, doc)->type_name("WHICH")->required();
        return *this;
    }
    Part& kind(bool is_required) {
        app_.add_option("kind", ask_.kind, "The kind of thing.")
            ->type_name(kind_words)
            ->required(is_required);
        return *this;
    }
    Part& file(const char* doc) {
        app_.add_option("file", ask_.file, doc)->type_name("FILE")->required();
        return *this;
    }
    Part& words(const char* doc) {
        app_.add_option("words", ask_.words, doc)
            ->type_name("NAME=VALUE ...")
            ->expected(0, many_words);
        return *this;
    }
    Part& option(const char* name, std::string NotebookAsk::* member, const char* type,
                 const char* doc) {
        app_.add_option(name, ask_.*member, doc)->type_name(type);
        return *this;
    }
    Part& json() {
        app_.add_flag("--json", ask_.as_json, "As JSON, for programs.");
        return *this;
    }
    [[nodiscard]] CLI::App* app() const { return &app_; }

private:
    CLI::App& app_;
    NotebookAsk& ask_;
};

using Parts = std::vector<std::pair<CLI::App*, Act>>;

void declare_writing(CLI::App& app, NotebookAsk& ask, Parts& parts) {
    parts.emplace_back(Part(app, "new", "Makes a notebook: one file, also a GeoPackage.", ask)
                           .file("The file to make.")
                           .author()
                           .app(),
                       &make_notebook);
    parts.emplace_back(
        Part(app, "add", "Writes an entry: a new thing, or a change to one. Prints its id.", ask)
            .kind(true)
            .words("What is known of it: name=\"Boom rig\" tank_volume=\"47 gal\".")
            .option("--to", &NotebookAsk::which, "WHICH", "Change this thing, by id or name.")
            .option("--body", &NotebookAsk::body, "JSON", "The whole body as JSON, or @FILE.")
            .notebook()
            .author()
            .app(),
        &add_entry);
    parts.emplace_back(Part(app, "close", "Closes a record: from then on it is only amended.", ask)
                           .which("The record, by id or name.")
                           .notebook()
                           .author()
                           .app(),
                       &close_record);
    parts.emplace_back(
        Part(app, "amend", "Adds a correction to a closed record.", ask)
            .which("The record, by id or name.")
            .words("The corrected values.")
            .option("--date", &NotebookAsk::date, "DATE", "The day of the correction, 2031-05-16.")
            .option("--reason", &NotebookAsk::reason, "TEXT", "Why it is corrected.")
            .notebook()
            .author()
            .app(),
        &amend_record);
}

void declare_reading(CLI::App& app, NotebookAsk& ask, Parts& parts) {
    parts.emplace_back(
        Part(app, "list", "What the notebook holds.", ask).kind(false).notebook().json().app(),
        &list_things);
    parts.emplace_back(
        Part(app, "show", "One thing as it stands, with its amendments.", ask)
            .which("The thing, by id or name.")
            .option("--kind", &NotebookAsk::kind, kind_words, "The kind, where a name is shared.")
            .notebook()
            .json()
            .app(),
        &show_thing);
    parts.emplace_back(
        Part(app, "history", "Every entry about one thing, oldest first.", ask)
            .which("The thing, by id or name.")
            .option("--field", &NotebookAsk::field, "NAME", "Only what this field has been.")
            .notebook()
            .app(),
        &show_history);
}

void declare_copying(CLI::App& app, NotebookAsk& ask, Parts& parts) {
    parts.emplace_back(
        Part(app, "check", "Checks every page, entry, chain and attachment.", ask).notebook().app(),
        &check_notebook);
    parts.emplace_back(
        Part(app, "backup", "Copies the notebook to a new file and checks the copy.", ask)
            .file("The file to make.")
            .notebook()
            .app(),
        &back_up_notebook);
    parts.emplace_back(Part(app, "restore", "Makes a working notebook from a backup.", ask)
                           .which("The backup.")
                           .file("The notebook to make.")
                           .app(),
                       &restore_notebook);
    parts.emplace_back(
        Part(app, "export",
             "Writes everything for another notebook: entries and attachments to FILE.zip, or the "
             "entries alone as text.",
             ask)
            .option("--to", &NotebookAsk::file, "FILE",
                    "The file; FILE.zip holds the attachments too. Standard output when not given.")
            .notebook()
            .app(),
        &export_entries);
    parts.emplace_back(
        Part(app, "merge", "Takes in entries of another notebook; doing it twice does no harm.",
             ask)
            .file("What 'export' or the app wrote; - for standard input.")
            .notebook()
            .app(),
        &merge_entries);
}

ExitStatus act(const NotebookAsk& ask, const Parts& parts) {
    for (const auto& [app, chosen] : parts) {
        if (app->parsed()) {
            const auto done = chosen(ask);
            return done ? ExitStatus::ok : report(done.error());
        }
    }
    return usage_fault(
        "Say what to do with the notebook: new, add, list, show, close, check, backup ...",
        "notebook");
}

}  // namespace

Command notebook_command() {
    Command command;
    command.name = "notebook";
    command.summary = "The book that is kept: entries, closed records, backups.";
    command.group = "Keeping";
    command.examples = examples_of("notebook");
    command.declare = [](CLI::App& app) -> Action {
        auto ask = std::make_shared<NotebookAsk>();
        Parts parts;
        declare_writing(app, *ask, parts);
        declare_reading(app, *ask, parts);
        declare_copying(app, *ask, parts);
        return [ask, parts] { return act(*ask, parts); };
    };
    return command;
}

}  // namespace swathbook::cli
