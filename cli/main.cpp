#include <string>
#include <vector>

#include "cli/command.hpp"
#include "cli/terminal.hpp"

int main(int count, char** words) {
    const std::vector<std::string> arguments(words + (count > 0 ? 1 : 0), words + count);
    return static_cast<int>(swathbook::cli::finish_output(swathbook::cli::run(arguments)));
}
