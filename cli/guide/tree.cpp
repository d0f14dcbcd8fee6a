#include "cli/guide/tree.hpp"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

namespace swathbook::cli {

Branch branch_of(const Command& command) {
    Branch branch;
    branch.command = &command;
    branch.app = std::make_unique<CLI::App>(std::string(command.summary),
                                            fmt::format("swathbook {}", command.name));
    branch.app->set_help_flag("-h,--help", "This help.");
    branch.app->allow_extras();
    branch.action = command.declare(*branch.app);
    return branch;
}

Tree tree_of_all() {
    Tree tree;
    for (const Command& command : commands()) {
        tree.push_back(branch_of(command));
    }
    return tree;
}

std::vector<std::string> words_of(const CLI::Option& option) {
    std::string text = option.get_type_name();
    if (text.ends_with(" ...")) {
        text.resize(text.size() - 4);
    }
    std::vector<std::string> words;
    while (text.find('|') != std::string::npos) {
        words.push_back(text.substr(0, text.find('|')));
        text.erase(0, text.find('|') + 1);
    }
    if (!words.empty()) {
        words.push_back(text);
    }
    return words;
}

std::string value_of_usage(const CLI::Option& option) {
    constexpr std::size_t longest = 44;
    const std::string type = option.get_type_name();
    return type.size() <= longest || words_of(option).empty() ? type : "WORD";
}

std::string usage_of(const CLI::Option& option) {
    const bool takes_value = option.get_items_expected_max() > 0;
    if (option.nonpositional()) {
        std::string name;
        for (const std::string& letter : option.get_snames()) {
            name += "-" + letter + ", ";
        }
        name += option.get_lnames().empty() ? "" : "--" + option.get_lnames().front();
        return takes_value ? name + " " + value_of_usage(option) : name;
    }
    return value_of_usage(option);
}

bool takes_file(const CLI::Option& option) {
    const std::string& type = option.get_type_name();
    return type == "FILE" || type == "@FILE" || type == "NOTEBOOK";
}

std::vector<const CLI::App*> parts_of(const CLI::App& app) {
    return app.get_subcommands([](const CLI::App*) { return true; });
}

const CLI::App* part_named(const CLI::App& app, std::string_view name) {
    for (const CLI::App* part : parts_of(app)) {
        if (part->get_name() == name) {
            return part;
        }
    }
    return nullptr;
}

std::vector<const CLI::Option*> options_of(const CLI::App& app) {
    std::vector<const CLI::Option*> options;
    for (const CLI::Option* option : app.get_options()) {
        if (option != app.get_help_ptr()) {
            options.push_back(option);
        }
    }
    if (app.get_help_ptr() != nullptr) {
        options.push_back(app.get_help_ptr());
    }
    return options;
}

}  // namespace swathbook::cli
