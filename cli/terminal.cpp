#include "cli/terminal.hpp"

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include <fmt/format.h>

namespace swathbook::cli {
namespace {

constexpr std::size_t widest = 110;  // longer lines are hard to read
constexpr std::size_t narrowest = 40;

bool is_set(const char* variable) {
    const char* value = std::getenv(variable);
    return value != nullptr && *value != '\0';
}

Paper paper_of(int descriptor) {
    Paper paper;
    if (isatty(descriptor) == 0) {
        return paper;
    }
    const char* terminal = std::getenv("TERM");
    const bool is_dumb = terminal == nullptr || std::string_view(terminal) == "dumb";
    paper.colour = !is_dumb && !is_set("NO_COLOR");
    winsize size{};
    if (ioctl(descriptor, TIOCGWINSZ, &size) == 0 && size.ws_col > 0) {
        paper.width = std::clamp<std::size_t>(size.ws_col, narrowest, widest);
    }
    return paper;
}

std::string_view code_of(Ink ink) {
    switch (ink) {
        case Ink::plain: return "";
        case Ink::bold: return "1";
        case Ink::faint: return "2";
        case Ink::red: return "1;31";
        case Ink::yellow: return "33";
        case Ink::blue: return "34";
    }
    return "";
}

}  // namespace

std::string Paper::in(Ink ink, std::string_view text) const {
    if (!colour || ink == Ink::plain || text.empty()) {
        return std::string(text);
    }
    return fmt::format("\x1b[{}m{}\x1b[0m", code_of(ink), text);
}

Paper paper_of_output() {
    return paper_of(STDOUT_FILENO);
}
Paper paper_of_errors() {
    return paper_of(STDERR_FILENO);
}

void write_output(std::string_view text) {
    std::fwrite(text.data(), 1, text.size(), stdout);
}
void write_error(std::string_view text) {
    std::fflush(stdout);  // so that the two streams keep their order where they meet
    std::fwrite(text.data(), 1, text.size(), stderr);
}

ExitStatus report(const Error& error) {
    const Paper paper = paper_of_errors();
    const std::string place = error.field.empty() ? "" : error.field + ": ";
    write_error(fmt::format("{} {}{} [{}]\n", paper.in(Ink::red, "swathbook:"), place, error.detail,
                            word_of(error.code)));
    return exit_status_of(error.code);
}

ExitStatus usage_fault(std::string_view what, std::string_view command) {
    const Paper paper = paper_of_errors();
    write_error(fmt::format("{} {}\nTry: swathbook help{}{}\n", paper.in(Ink::red, "swathbook:"),
                            what, command.empty() ? "" : " ", command));
    return ExitStatus::usage;
}

ExitStatus finish_output(ExitStatus status) {
    if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) {
        return status;
    }
    const ExitStatus failed = report(
        {ErrorCode::io, "", "The answer could not be written to its end. Is the disk full?"});
    return status == ExitStatus::ok ? failed : status;
}

std::string wrapped(std::string_view text, std::size_t width, std::size_t indent) {
    const std::string margin(indent, ' ');
    std::string out;
    std::string line;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find_first_of(" \n"), text.size());
        const std::string_view word = text.substr(0, end);
        const bool is_break = end < text.size() && text[end] == '\n';
        const std::size_t wanted = columns_of(line) + (line.empty() ? 0 : 1) + columns_of(word);
        if (!line.empty() && indent + wanted > width) {
            out += margin + line + "\n";
            line.clear();
        }
        if (!word.empty()) {
            line += (line.empty() ? "" : " ") + std::string(word);
        }
        if (is_break) {
            out += (line.empty() ? "" : margin + line) + "\n";
            line.clear();
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return line.empty() ? out : out + margin + line + "\n";
}

std::string with_signs(std::string text) {
    for (std::size_t at = text.find("+-"); at != std::string::npos; at = text.find("+-", at + 2)) {
        const char next = at + 2 < text.size() ? text[at + 2] : 'x';
        if (next == ' ' || (next >= '0' && next <= '9')) {
            text.replace(at, 2, "\u00B1");
        }
    }
    return text;
}

std::size_t columns_of(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
    }));
}

std::string padded(std::string_view text, std::size_t columns, bool to_the_right) {
    const std::size_t taken = columns_of(text);
    const std::string space(columns > taken ? columns - taken : 0, ' ');
    return to_the_right ? space + std::string(text) : std::string(text) + space;
}

}  // namespace swathbook::cli
