// Prints the native answer of every case, one line each: name, tab, operation, tab, request, tab,
// answer. The WebAssembly test asks the same and compares the bytes.

#include <iostream>

#include "api/call.hpp"
#include "tests/case_runner/case_file.hpp"

int main(int argc, char** argv) {
    const auto cases = swathbook::tests::read_case_folder(argc > 1 ? argv[1] : "tests/cases");
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
