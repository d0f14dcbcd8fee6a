#include "cli/commands/examples.hpp"

#include <array>

namespace swathbook::cli {
namespace {

struct Example {
    std::string_view command;
    std::string_view line;
};

// Figures are invented, of the size met in the field.
constexpr std::array examples{
    Example{"operations", "swathbook operations"},
    Example{"operations", "swathbook operations --json"},
    Example{"help", "swathbook help operations"},
    Example{"completion", "swathbook completion bash"},
    Example{"man", "swathbook man"},
};

}  // namespace

std::string examples_of(std::string_view command) {
    std::string lines;
    for (const Example& example : examples) {
        if (example.command == command) {
            lines += std::string(example.line) + "\n";
        }
    }
    return lines;
}

}  // namespace swathbook::cli
