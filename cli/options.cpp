#include "cli/options.hpp"

#include <algorithm>
#include <cctype>

#include <CLI/App.hpp>

namespace swathbook::cli {
namespace {

constexpr char value_mark = '\x01';

bool looks_negative(const std::string& word) {
    return word.size() > 1 && word[0] == '-' &&
           (std::isdigit(static_cast<unsigned char>(word[1])) != 0 || word[1] == '.');
}

std::string name_in(const std::string& word) {
    return word.starts_with("--") ? word.substr(0, word.find('=')) : std::string();
}

}  // namespace

std::vector<std::string> marked(std::span<const std::string> arguments) {
    std::vector<std::string> words(arguments.begin(), arguments.end());
    for (std::string& word : words) {
        if (looks_negative(word)) {
            word.insert(word.begin(), value_mark);
        } else if (const std::string name = name_in(word); !name.empty()) {
            std::replace(word.begin(), word.begin() + static_cast<std::ptrdiff_t>(name.size()), '_',
                         '-');
        }
    }
    return words;
}

std::vector<std::string> restored(std::vector<std::string> words) {
    for (std::string& word : words) {
        if (word.starts_with(value_mark)) {
            word.erase(0, 1);
        }
    }
    return words;
}

std::string repeated_flag(const CLI::App& app, std::span<const std::string> arguments) {
    std::vector<std::string> seen;
    for (const std::string& word : arguments) {
        std::string name = name_in(word);
        std::replace(name.begin(), name.end(), '_', '-');
        const CLI::Option* option = name.size() > 2 ? app.get_option_no_throw(name) : nullptr;
        if (option == nullptr || option->get_type_name().ends_with(" ...")) {
            continue;
        }
        if (std::find(seen.begin(), seen.end(), name) != seen.end()) {
            return name;
        }
        seen.push_back(name);
    }
    return {};
}

std::vector<std::string> flags_in(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::Option* option : app.get_options()) {
        for (const std::string& name : option->get_lnames()) {
            names.push_back("--" + name);
        }
    }
    return names;
}

}  // namespace swathbook::cli
