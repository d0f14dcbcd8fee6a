#include "cli/guide/help.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "api/describe/type.hpp"

namespace swathbook::cli {
namespace {

constexpr std::size_t name_column = 16;
constexpr std::size_t text_indent = 6;

std::string entry(std::string_view name, std::string_view text, const Paper& paper) {
    std::string body = wrapped(text, paper.width, name_column + 2);
    body.erase(0, std::min(name_column + 2, body.size()));
    return "  " + padded(name, name_column) + body;
}

std::string indented(std::string_view lines) {
    std::string out;
    while (!lines.empty()) {
        const std::size_t end = std::min(lines.find('\n'), lines.size());
        out += "  " + std::string(lines.substr(0, end)) + "\n";
        lines.remove_prefix(std::min(end + 1, lines.size()));
    }
    return out;
}

std::vector<std::string> groups_of(const CLI::App& app) {
    std::vector<std::string> groups;
    for (const CLI::Option* option : options_of(app)) {
        if (std::find(groups.begin(), groups.end(), option->get_group()) == groups.end()) {
            groups.push_back(option->get_group());
        }
    }
    return groups;
}

std::string usage_line(const CLI::App& app) {
    std::string line = "swathbook";
    for (const CLI::App* part = &app; part != nullptr; part = part->get_parent()) {
        const std::string& name = part->get_name();
        line.insert(9, " " + (name.starts_with("swathbook ") ? name.substr(10) : name));
    }
    for (const CLI::Option* option : options_of(app)) {
        line += option->nonpositional() ? "" : " " + option->get_type_name();
    }
    return line + (parts_of(app).empty() ? " [--flags]" : " COMMAND");
}

}  // namespace

std::string overview(const Paper& paper) {
    std::string out = "Swathbook: labelled rates, on the right ground, on record.\n\n" +
                      paper.in(Ink::bold, "Examples") + "\n";
    for (const Command& command : commands()) {
        if (command.group == "Computing" && !command.examples.empty()) {
            out += indented(command.examples.substr(0, command.examples.find('\n')));
        }
    }
    std::string_view group;
    for (const Command& command : commands()) {
        if (command.group != group) {
            group = command.group;
            out += "\n" + paper.in(Ink::bold, group) + "\n";
        }
        out += entry(command.name, command.summary, paper);
    }
    return out +
           "\n'swathbook help COMMAND' tells more. The label is the law: limits come from the\n"
           "label in your hand.\n";
}

std::string help_text(const CLI::App& app, std::string_view examples, const Paper& paper) {
    std::string out = wrapped(app.get_description(), paper.width, 0) + "\n";
    if (!examples.empty()) {
        out += paper.in(Ink::bold, "Examples") + "\n" + indented(examples) + "\n";
    }
    out += paper.in(Ink::bold, "Usage") + "\n  " + usage_line(app) + "\n";
    if (!parts_of(app).empty()) {
        out += "\n" + paper.in(Ink::bold, "Commands") + "\n";
        for (const CLI::App* part : parts_of(app)) {
            out += entry(part->get_name(), part->get_description(), paper);
        }
    }
    for (const std::string& group : groups_of(app)) {
        out += "\n" + paper.in(Ink::bold, group) + "\n";
        for (const CLI::Option* option : options_of(app)) {
            if (option->get_group() == group) {
                out += "  " + usage_of(*option) + "\n" +
                       wrapped(option->get_description(), paper.width, text_indent);
            }
        }
    }
    return out;
}

ExitStatus print_help(std::span<const std::string> words) {
    const Command* command = find_command(words[0]);
    if (command == nullptr) {
        std::vector<std::string_view> names;
        for (const Command& known : commands()) {
            names.push_back(known.name);
        }
        return usage_fault(
            fmt::format("There is no command \"{}\". {}", words[0], api::suggest(words[0], names)));
    }
    const Branch branch = branch_of(*command);
    const CLI::App* app = branch.app.get();
    for (const std::string& word : words.subspan(1)) {
        const CLI::App* inner = part_named(*app, word);
        if (inner == nullptr) {
            return usage_fault(fmt::format("\"{}\" has no command \"{}\".", app->get_name(), word),
                               words[0]);
        }
        app = inner;
    }
    write_output(help_text(*app, words.size() == 1 ? command->examples : "", paper_of_output()));
    return ExitStatus::ok;
}

}  // namespace swathbook::cli
