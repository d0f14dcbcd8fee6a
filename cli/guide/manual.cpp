#include "cli/guide/manual.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace swathbook::cli {
namespace {

struct Status {
    int number;
    std::string_view meaning;
};

// One row for each value of ExitStatus; the tests compare the two.
constexpr std::array statuses{
    Status{0, "The answer was given."},
    Status{1, "It failed for a reason not named below."},
    Status{2, "The command line is wrong: an unknown command or flag, a flag without its value."},
    Status{3, "The values given cannot be used; the message says which, why, and what to do."},
    Status{4, "Understood, and refused: a closed record stays as it is."},
    Status{5, "There is no such operation, entry or file."},
    Status{6, "It collides with something already kept."},
    Status{7, "Busy or out of reach: try again."},
    Status{8, "The disk or the notebook file failed."},
    Status{70, "A fault of the program."}};

/// Text as mdoc takes it: no line begins with a control character, backslashes are named.
std::string roff(std::string_view text) {
    std::string out;
    bool at_start = true;
    for (const char letter : text) {
        if (at_start && (letter == '.' || letter == '\'')) {
            out += "\\&";
        }
        out += letter == '\\' ? "\\e" : std::string(1, letter);
        at_start = letter == '\n';
    }
    return out;
}

/// Each sentence on a line of its own, as manual pages are written.
std::string sentences(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool ends = text[i] == ' ' && i > 1 && text[i - 1] == '.' && i + 1 < text.size() &&
                          std::isupper(static_cast<unsigned char>(text[i + 1])) != 0;
        out += ends || text[i] == '\n' ? '\n' : text[i];
    }
    return roff(out) + "\n";
}

/// A word that mdoc must not take for a macro of its own.
std::string word(std::string_view text) {
    std::string out = roff(text);
    std::replace(out.begin(), out.end(), '"', '\'');
    return "\"" + out + "\"";
}

std::string option_entry(const CLI::Option& option) {
    const std::string type = value_of_usage(option);
    const bool takes_value = option.get_items_expected_max() > 0;
    std::string out = ".It ";
    if (option.nonpositional()) {
        out += "Fl Fl " + option.get_lnames().front();
        out += takes_value ? " Ar " + word(type) : "";
    } else {
        out += "Ar " + word(type);
    }
    return out + "\n" + sentences(option.get_description());
}

std::string options_list(const CLI::App& app) {
    std::string out = ".Bl -tag -width Ds\n";
    for (const CLI::Option* option : options_of(app)) {
        out += option_entry(*option);
    }
    return out + ".El\n";
}

std::string example_block(std::string_view lines) {
    return lines.empty() ? "" : ".Bd -literal -offset indent\n" + roff(lines) + ".Ed\n";
}

std::string command_section(const Branch& branch) {
    std::string out =
        fmt::format(".Ss {}\n{}", branch.command->name, sentences(branch.command->summary));
    out += example_block(branch.command->examples);
    out += options_list(*branch.app);
    for (const CLI::App* part : parts_of(*branch.app)) {
        out += fmt::format(".Ss {} {}\n{}{}", branch.command->name, part->get_name(),
                           sentences(part->get_description()), options_list(*part));
    }
    return out;
}

std::string status_list() {
    std::string out = ".Sh EXIT STATUS\n.Bl -tag -width Ds\n";
    for (const Status& status : statuses) {
        out += fmt::format(".It {}\n{}", status.number, sentences(status.meaning));
    }
    return out + ".El\n";
}

constexpr std::string_view head = R"(.Dd $Mdocdate$
.Dt SWATHBOOK 1
.Os
.Sh NAME
.Nm swathbook
.Nd labelled rates on the right ground, and the record of it
.Sh SYNOPSIS
.Nm
.Ar command
.Op Fl Fl flags
.Sh DESCRIPTION
.Nm
computes what a ground sprayer really puts out, how much to mix, where it may
go and where it went, shows its working, and keeps the record.
It never supplies the limits of a label: they are entered from the label in
hand.
What is not entered is never taken for
.Dq no limit .
.Pp
An amount is written with its unit:
.Ql 26 ft ,
.Ql 2 qt/ac ,
.Ql 17 lb/100 gal ,
.Ql 31.5 s .
Answers go to standard output, messages and errors to standard error.
.Sh COMMANDS
)";

constexpr std::string_view tail = R"(.Sh ENVIRONMENT
.Bl -tag -width Ds
.It Ev SWATHBOOK_UNITS
Units of answers when
.Fl Fl units
is not given:
.Ql us
or
.Ql metric .
.It Ev NO_COLOR
When set and not empty, no colour is used.
.El
)";

}  // namespace

std::string manual_page(const Tree& tree) {
    std::string out(head);
    for (const Branch& branch : tree) {
        out += command_section(branch);
    }
    out += tail;
    return out + status_list();
}

}  // namespace swathbook::cli
