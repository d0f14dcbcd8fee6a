#pragma once

#include <string>
#include <vector>

namespace swathbook::tests {

/// How a real process ended and what it wrote.
struct Ended {
    int status = -1;  ///< exit status, or 128 + signal
    std::string out;
    std::string err;
};

struct Start {
    std::vector<std::string> words;          ///< program and arguments
    std::string input{};                     ///< its standard input
    std::vector<std::string> environment{};  ///< "NAME=value", beside PATH; nothing else is passed
                                             ///< on (but options of sanitizers)
};

/// Runs a program to its end with its streams in files, so that no pipe can fill up.
[[nodiscard]] Ended run(const Start& start);
/// The program under test with these arguments.
[[nodiscard]] Ended swathbook(std::vector<std::string> arguments, std::string input = {},
                              std::vector<std::string> environment = {});
/// The same, from a line as one types it (words in quotes stay together).
[[nodiscard]] Ended swathbook_line(const std::string& line);

}  // namespace swathbook::tests
