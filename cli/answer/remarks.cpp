#include "cli/answer/remarks.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "cli/answer/words.hpp"

namespace swathbook::cli {
namespace {

using api::Json;

struct Loudness {
    std::string_view word;
    std::string_view shown;
    Ink ink;
};

constexpr std::array loudest_first{
    Loudness{"stop", "STOP", Ink::red}, Loudness{"warning", "Warning", Ink::yellow},
    Loudness{"advice", "Advice", Ink::blue}, Loudness{"note", "Note", Ink::plain}};

constexpr std::size_t text_column = 9;  // "Warning" and two spaces

std::string text_in(const Json& object, std::string_view key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : "";
}

std::string print_finding(const Json& finding, const Loudness& loudness, const Paper& paper) {
    std::string text = with_signs(text_in(finding, "text"));
    if (const std::string source = text_in(finding, "source"); !source.empty()) {
        text += " (" + source + ")";
    }
    std::string body = wrapped(text, paper.width, text_column);
    body.erase(0, std::min(text_column, body.size()));
    const std::string shown = words().text(loudness.shown);
    return paper.in(loudness.ink, shown) +
           std::string(text_column - std::min(columns_of(shown), text_column - 1), ' ') + body;
}

}  // namespace

std::string print_findings(const Json& answer, const Paper& paper) {
    std::string out;
    const auto findings = answer.find("findings");
    if (findings == answer.end()) {
        return out;
    }
    for (const Loudness& loudness : loudest_first) {
        for (const Json& finding : *findings) {
            if (text_in(finding, "severity") == loudness.word) {
                out += print_finding(finding, loudness, paper);
            }
        }
    }
    return out.empty() ? out : "\n" + out;
}

std::string print_working(const Json& answer, const Paper& paper) {
    const auto working = answer.find("working");
    if (working == answer.end() || working->empty()) {
        return {};
    }
    std::string out = "\n" + paper.in(Ink::bold, words().text("Working")) + "\n";
    int number = 0;
    for (const Json& step : *working) {
        constexpr std::size_t indent = 5;
        out += fmt::format("{:3}. {}\n", ++number, text_in(step, "text"));
        const std::string expression = with_signs(text_in(step, "expression"));
        const std::string result = with_signs(text_in(step, "result"));
        const std::string_view equals = expression.empty() || result.empty() ? "" : " = ";
        out += wrapped(fmt::format("{}{}{}", expression, equals, result), paper.width, indent);
        if (const std::string source = text_in(step, "source"); !source.empty()) {
            out += wrapped("[" + source + "]", paper.width, indent);
        }
    }
    return out;
}

}  // namespace swathbook::cli
