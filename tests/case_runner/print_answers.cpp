// What the native program answers, for the tests that ask the same of WebAssembly and compare the
// bytes.
//
//   print_answers [FOLDER]   every case: name, tab, operation, tab, request, tab, answer
//   print_answers --ask      an answer for each line "operation, tab, request" on standard input
//   print_answers --names    the name of every operation

#include <iostream>
#include <string>

#include "api/call.hpp"
#include "api/operation.hpp"
#include "tests/case_runner/case_file.hpp"

namespace {

int print_cases(const std::string& folder) {
    const auto cases = swathbook::tests::read_case_folder(folder);
    if (!cases) {
        std::cerr << cases.error().detail << "\n";
        return 1;
    }
    for (const auto& each : *cases) {
        std::cout << each.name << '\t' << each.operation << '\t' << each.request << '\t'
                  << swathbook::api::call(each.operation, each.request).json << '\n';
    }
    return 0;
}

int answer_lines() {
    for (std::string line; std::getline(std::cin, line);) {
        const std::size_t tab = line.find('\t');
        if (tab == std::string::npos) {
            std::cerr << "a line without a tab\n";
            return 1;
        }
        std::cout << swathbook::api::call(line.substr(0, tab), line.substr(tab + 1)).json << '\n';
    }
    return 0;
}

int print_names() {
    for (const auto& operation : swathbook::api::operations()) {
        std::cout << operation.name << '\n';
    }
    return 0;
}

}  // namespace

int main(int argc, char** argv) {
    std::ios::sync_with_stdio(false);
    const std::string asked = argc > 1 ? argv[1] : "tests/cases";
    return asked == "--ask"     ? answer_lines()
           : asked == "--names" ? print_names()
                                : print_cases(asked);
}
