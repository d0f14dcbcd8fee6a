#include "tests/case_runner/case_file.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

#include <fmt/format.h>

namespace swathbook::tests {
namespace {

struct Line {
    int number;
    std::string word;
    std::string rest;
};

std::string trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t\r");
    const auto last = text.find_last_not_of(" \t\r");
    return first == std::string_view::npos ? "" : std::string(text.substr(first, last - first + 1));
}

/// Folds continuation lines, drops comments, and marks the end of each case with an empty word.
std::vector<Line> lines_of(const std::string& text) {
    std::vector<Line> lines;
    std::istringstream stream(text);
    std::string raw;
    for (int number = 1; std::getline(stream, raw); ++number) {
        if (!raw.empty() && raw[0] == '#') {
            continue;
        }
        const std::string content = trimmed(raw);
        if (content.empty()) {
            lines.push_back({number, "", ""});
        } else if ((raw[0] == ' ' || raw[0] == '\t') && !lines.empty() &&
                   !lines.back().word.empty()) {
            lines.back().rest += " " + content;
        } else {
            const auto space = content.find_first_of(" \t");
            lines.push_back({number, content.substr(0, space),
                             space == std::string::npos ? "" : trimmed(content.substr(space))});
        }
    }
    lines.push_back({0, "", ""});
    return lines;
}

Result<Demand> number_demand(const Line& line) {
    // Path, "=", number, unit (may be empty), "within", tolerance, unit.
    static const std::regex form(
        R"(^(.+?)\s+=\s+(-?[0-9.eE+-]+)\s*(.*?)\s+within\s+([0-9.eE+-]+)\s*(.*)$)");
    std::smatch parts;
    if (!std::regex_match(line.rest, parts, form)) {
        return fail(ErrorCode::invalid_input, "",
                    "write: PATH = NUMBER UNIT within TOLERANCE UNIT");
    }
    Demand demand;
    demand.sort = line.word == "misprint" ? Demand::Sort::misprint : Demand::Sort::number;
    demand.path = parts[1];
    demand.wanted = parts[2];
    demand.unit = trimmed(parts[3].str());
    demand.tolerance = std::stod(parts[4]);
    demand.tolerance_unit = trimmed(parts[5].str());
    return demand;
}

Result<Demand> expect_demand(const Line& line) {
    for (const auto& [marker, sort] :
         {std::pair{" is ", Demand::Sort::exact}, std::pair{" has ", Demand::Sort::contains}}) {
        const auto at = line.rest.find(marker);
        if (at != std::string::npos && line.rest.find(" = ") > at) {
            Demand demand;
            demand.sort = sort;
            demand.path = trimmed(line.rest.substr(0, at));
            demand.wanted = trimmed(line.rest.substr(at + std::string(marker).size()));
            return demand;
        }
    }
    return number_demand(line);
}

Result<Demand> demand_of(const Line& line) {
    if (line.word == "expect") {
        return expect_demand(line);
    }
    if (line.word == "misprint") {
        return number_demand(line);
    }
    Demand demand;
    if (line.word == "refuse") {
        const auto space = line.rest.find_first_of(" \t");
        demand.sort = Demand::Sort::refuse;
        demand.wanted = line.rest.substr(0, space);
        demand.path = space == std::string::npos ? "" : trimmed(line.rest.substr(space));
        return demand;
    }
    if (line.word == "finding" || line.word == "no-finding") {
        demand.sort = line.word == "finding" ? Demand::Sort::finding : Demand::Sort::no_finding;
        demand.wanted = line.rest;
        return demand;
    }
    return fail(ErrorCode::invalid_input, "", "unknown line \"" + line.word + "\"");
}

Result<void> take(Case& into, const Line& line) {
    if (line.word == "case") {
        into.name = line.rest;
        into.line = line.number;
    } else if (line.word == "kind") {
        static constexpr std::array known{"published", "misprint", "story", "derived", "practice"};
        if (std::find(known.begin(), known.end(), line.rest) == known.end()) {
            return fail(ErrorCode::invalid_input, "", "unknown kind \"" + line.rest + "\"");
        }
        into.kind = line.rest;
    } else if (line.word == "source") {
        into.source = line.rest;
    } else if (line.word == "compute") {
        const auto space = line.rest.find_first_of(" \t");
        into.operation = line.rest.substr(0, space);
        into.request = space == std::string::npos ? "{}" : trimmed(line.rest.substr(space));
    } else if (line.word != "note") {
        SWATHBOOK_TRY(demand, demand_of(line));
        demand.line = line.number;
        into.demands.push_back(std::move(demand));
    }
    return {};
}

}  // namespace

Result<std::vector<Case>> read_cases(const std::string& file, const std::string& text) {
    std::vector<Case> cases;
    Case current;
    for (const Line& line : lines_of(text)) {
        if (!line.word.empty()) {
            if (auto taken = take(current, line); !taken) {
                return fail(ErrorCode::invalid_input, "",
                            fmt::format("{}:{}: {}", file, line.number, taken.error().detail));
            }
            continue;
        }
        if (current.name.empty() && current.operation.empty()) {
            continue;
        }
        if (current.name.empty() || current.kind.empty() || current.source.empty() ||
            current.operation.empty() || current.demands.empty()) {
            return fail(
                ErrorCode::invalid_input, "",
                fmt::format(
                    "{}:{}: a case needs case, kind, source, compute and something expected", file,
                    current.line));
        }
        current.file = file;
        cases.push_back(std::move(current));
        current = Case{};
    }
    return cases;
}

Result<std::vector<Case>> read_case_folder(const std::string& folder) {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
        if (entry.path().extension() == ".case") {
            files.push_back(entry.path().string());
        }
    }
    std::sort(files.begin(), files.end());
    std::vector<Case> all;
    for (const std::string& file : files) {
        std::ifstream stream(file);
        std::stringstream text;
        text << stream.rdbuf();
        SWATHBOOK_TRY(cases, read_cases(file, text.str()));
        all.insert(all.end(), std::make_move_iterator(cases.begin()),
                   std::make_move_iterator(cases.end()));
    }
    return all;
}

}  // namespace swathbook::tests
