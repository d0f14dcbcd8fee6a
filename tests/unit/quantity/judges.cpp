#include "tests/unit/quantity/judges.hpp"

#include <fmt/format.h>
#include <sys/types.h>
#include <udunits2.h>
#include <unistd.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace swathbook::judges {
namespace {

/// The units database is read once; it is freed by the end of the process.
ut_system* udunits_system() {
    static ut_system* const system = [] {
        ut_set_error_message_handler(ut_ignore);
        return ut_read_xml(nullptr);
    }();
    return system;
}

struct UnitDeleter {
    ut_unit* unit;
    ~UnitDeleter() { ut_free(unit); }
};

std::vector<std::string> lines_of_gnu_units(const std::string& input) {
    std::vector<std::string> lines;
    std::FILE* const batch = std::tmpfile();
    if (batch == nullptr) {
        return lines;
    }
    std::fputs(input.c_str(), batch);
    std::fflush(batch);
    const std::string command =
        fmt::format("units --terse --digits 15 < /proc/{}/fd/{} 2>&1", getpid(), fileno(batch));
    std::FILE* const pipe = popen(command.c_str(), "r");
    std::array<char, 512> line{};
    while (pipe != nullptr && std::fgets(line.data(), line.size(), pipe) != nullptr) {
        lines.emplace_back(line.data());
    }
    if (pipe != nullptr) {
        pclose(pipe);
    }
    std::fclose(batch);
    return lines;
}

}  // namespace

std::vector<double> gnu_units(const std::vector<Question>& questions) {
    std::string input;
    for (const Question& question : questions) {
        input += fmt::format("{}\n{}\n", question.from, question.to);
    }
    const std::vector<std::string> lines = lines_of_gnu_units(input);
    std::vector<double> answers;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        char* end = nullptr;
        const double answer = std::strtod(lines[i].c_str(), &end);
        answers.push_back(end == lines[i].c_str() ? std::nan("") : answer);
        if (lines[i].starts_with("conformability")) {
            i += 2;  // what the two sides reduce to
        }
    }
    return answers;
}

std::vector<bool> known_to_gnu_units(const std::vector<std::string>& words) {
    std::string input;
    for (const std::string& word : words) {
        input += word + "\n\n";  // an empty second line asks for the definition
    }
    std::vector<bool> known;
    for (const std::string& line : lines_of_gnu_units(input)) {
        known.push_back(!line.starts_with("Unknown unit"));
    }
    return known;
}

std::optional<double> udunits(double number, const std::string& from, const std::string& to) {
    ut_system* const system = udunits_system();
    if (system == nullptr) {
        return std::nullopt;
    }
    const UnitDeleter from_unit{ut_parse(system, from.c_str(), UT_UTF8)};
    const UnitDeleter to_unit{ut_parse(system, to.c_str(), UT_UTF8)};
    if (from_unit.unit == nullptr || to_unit.unit == nullptr ||
        ut_are_convertible(from_unit.unit, to_unit.unit) == 0) {
        return std::nullopt;
    }
    cv_converter* const converter = ut_get_converter(from_unit.unit, to_unit.unit);
    if (converter == nullptr) {
        return std::nullopt;
    }
    const double answer = cv_convert_double(converter, number);
    cv_free(converter);
    return answer;
}

}  // namespace swathbook::judges
