#include "cli/guide/completion.hpp"

#include <algorithm>
#include <functional>

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace swathbook::cli {
namespace {

/// Text between single quotes, for any of the three shells.
std::string in_quotes(std::string_view text) {
    std::string out = "'";
    for (const char letter : text) {
        out +=
            letter == '\'' ? std::string("'\\''") : std::string(1, letter == '\n' ? ' ' : letter);
    }
    return out + "'";
}

std::string first_sentence(std::string_view text) {
    const std::size_t end = std::min(text.find(". "), text.find('\n'));
    return std::string(text.substr(0, end));
}

std::string long_name(const CLI::Option& option) {
    return option.get_lnames().empty() ? "" : "--" + option.get_lnames().front();
}

/// Everything that may stand after a command: sub-commands, words of positionals, flags.
std::vector<std::string> words_after(const CLI::App& app) {
    std::vector<std::string> words;
    for (const CLI::App* part : parts_of(app)) {
        words.push_back(part->get_name());
    }
    for (const CLI::Option* option : options_of(app)) {
        if (option->nonpositional()) {
            words.push_back(long_name(*option));
        } else {
            const auto choices = words_of(*option);
            words.insert(words.end(), choices.begin(), choices.end());
        }
    }
    return words;
}

/// Calls `visit` for a command and for each of its sub-commands with the words that lead there.
void walk(const Tree& tree,
          const std::function<void(const std::string& path, const CLI::App& app)>& visit) {
    for (const Branch& branch : tree) {
        const std::string name(branch.command->name);
        visit(name, *branch.app);
        for (const CLI::App* part : parts_of(*branch.app)) {
            visit(name + " " + part->get_name(), *part);
        }
    }
}

std::vector<std::string> command_names(const Tree& tree) {
    std::vector<std::string> names;
    for (const Branch& branch : tree) {
        names.emplace_back(branch.command->name);
    }
    return names;
}

/// What bash offers after a flag: the words of its closed set, or files.
std::string bash_values(const std::string& path, const CLI::App& app) {
    std::string cases;
    for (const CLI::Option* option : options_of(app)) {
        const auto words = words_of(*option);
        const std::string pattern = in_quotes(path + "|" + long_name(*option));
        if (option->nonpositional() && !words.empty()) {
            cases += fmt::format("        {}) words={} ;;\n", pattern,
                                 in_quotes(fmt::format("{}", fmt::join(words, " "))));
        } else if (option->nonpositional() && takes_file(*option)) {
            cases += fmt::format("        {}) compopt -o default; return ;;\n", pattern);
        }
    }
    return cases;
}

}  // namespace

std::string bash_completion(const Tree& tree) {
    std::string after;
    std::string values;
    std::vector<std::string> with_parts;
    walk(tree, [&](const std::string& path, const CLI::App& app) {
        after += fmt::format("        {}) words={} ;;\n", in_quotes(path),
                             in_quotes(fmt::format("{}", fmt::join(words_after(app), " "))));
        values += bash_values(path, app);
        if (!parts_of(app).empty()) {
            with_parts.push_back(path);
        }
    });
    return fmt::format(
        R"(# bash completion for swathbook: source <(swathbook completion bash)
_swathbook() {{
    local current=${{COMP_WORDS[COMP_CWORD]}} previous=${{COMP_WORDS[COMP_CWORD-1]}} path words=''
    COMPREPLY=()
    if [ "$COMP_CWORD" -eq 1 ]; then
        mapfile -t COMPREPLY < <(compgen -W {0} -- "$current")
        return
    fi
    path=${{COMP_WORDS[1]}}
    case " {1} " in
        *" $path "*) [ "$COMP_CWORD" -lt 3 ] || path="$path ${{COMP_WORDS[2]}}" ;;
    esac
    case "$path|$previous" in
{2}        *) ;;
    esac
    if [ -z "$words" ]; then
        case "$path" in
{3}        esac
    fi
    mapfile -t COMPREPLY < <(compgen -W "$words" -- "$current")
}}
complete -F _swathbook swathbook
)",
        in_quotes(fmt::format("{}", fmt::join(command_names(tree), " "))),
        fmt::join(with_parts, " "), values, after);
}

std::string fish_completion(const Tree& tree) {
    std::string out =
        "# fish completion for swathbook: swathbook completion fish | source\n"
        "complete -c swathbook -f\n";
    for (const Branch& branch : tree) {
        out +=
            fmt::format("complete -c swathbook -n __fish_use_subcommand -a {} -d {}\n",
                        branch.command->name, in_quotes(first_sentence(branch.command->summary)));
        const std::string seen =
            fmt::format("'__fish_seen_subcommand_from {}'", branch.command->name);
        const auto add = [&out, &seen](const CLI::App& app, const std::string& condition) {
            for (const CLI::App* part : parts_of(app)) {
                out +=
                    fmt::format("complete -c swathbook -n {} -a {} -d {}\n", seen, part->get_name(),
                                in_quotes(first_sentence(part->get_description())));
            }
            for (const CLI::Option* option : options_of(app)) {
                const auto words = words_of(*option);
                const bool takes_value = option->get_items_expected_max() > 0;
                const std::string offered =
                    words.empty() ? ""
                                  : " -a " + in_quotes(fmt::format("{}", fmt::join(words, " ")));
                out += fmt::format(
                    "complete -c swathbook -n {}{}{}{}{} -d {}\n", condition,
                    option->nonpositional() ? " -l " + option->get_lnames().front() : "",
                    option->nonpositional() && takes_value ? " -r" : "",
                    takes_file(*option) ? " -F" : "", offered,
                    in_quotes(first_sentence(option->get_description())));
            }
        };
        add(*branch.app, seen);
        for (const CLI::App* part : parts_of(*branch.app)) {
            add(*part,
                fmt::format("'__fish_seen_subcommand_from {}; and __fish_seen_subcommand_from {}'",
                            branch.command->name, part->get_name()));
        }
    }
    return out;
}

std::string zsh_completion(const Tree& tree) {
    std::string described;
    for (const Branch& branch : tree) {
        std::string summary = first_sentence(branch.command->summary);
        described += fmt::format("        {}\n",
                                 in_quotes(fmt::format("{}:{}", branch.command->name, summary)));
    }
    std::string after;
    std::string values;
    std::vector<std::string> with_parts;
    walk(tree, [&](const std::string& path, const CLI::App& app) {
        after += fmt::format("        {}) offered=({}) ;;\n", in_quotes(path),
                             fmt::join(words_after(app), " "));
        for (const CLI::Option* option : options_of(app)) {
            const auto words = words_of(*option);
            const std::string pattern = in_quotes(path + "|" + long_name(*option));
            if (option->nonpositional() && !words.empty()) {
                values +=
                    fmt::format("        {}) offered=({}) ;;\n", pattern, fmt::join(words, " "));
            } else if (option->nonpositional() && takes_file(*option)) {
                values += fmt::format("        {}) _files; return ;;\n", pattern);
            }
        }
        if (!parts_of(app).empty()) {
            with_parts.push_back(path);
        }
    });
    return fmt::format(
        R"(#compdef swathbook
# zsh completion for swathbook: swathbook completion zsh > a folder of $fpath, as _swathbook
_swathbook() {{
    local -a described offered
    local path_words="${{words[2]}}"
    if (( CURRENT == 2 )); then
        described=(
{0}        )
        _describe command described
        return
    fi
    if [[ " {1} " == *" $path_words "* ]] && (( CURRENT > 3 )); then
        path_words="$path_words ${{words[3]}}"
    fi
    case "$path_words|${{words[CURRENT-1]}}" in
{2}        *) ;;
    esac
    if (( ! $#offered )); then
        case "$path_words" in
{3}        esac
    fi
    compadd -- $offered
}}
compdef _swathbook swathbook
)",
        described, fmt::join(with_parts, " "), values, after);
}

}  // namespace swathbook::cli
