#pragma once

#include <string>
#include <vector>

#include "core/base/result.hpp"

namespace swathbook::tests {

/// One demand on an answer, as written in a case file.
struct Demand {
    enum class Sort { number, exact, contains, misprint, finding, no_finding, refuse };
    Sort sort = Sort::exact;
    std::string path;      ///< into the answer; the error field for `refuse`
    std::string wanted;    ///< number, JSON, text or code
    std::string unit;      ///< of `wanted`; empty for plain numbers
    double tolerance = 0;  ///< in tolerance_unit
    std::string tolerance_unit;
    int line = 0;
};

struct Case {
    std::string file;
    int line = 0;
    std::string name;
    std::string kind;
    std::string source;
    std::string operation;
    std::string request;
    std::vector<Demand> demands;
};

/// Reads the text of one case file. @errors invalid_input with file and line
[[nodiscard]] Result<std::vector<Case>> read_cases(const std::string& file,
                                                   const std::string& text);

/// Reads every .case file below a folder, in alphabetical order.
[[nodiscard]] Result<std::vector<Case>> read_case_folder(const std::string& folder);

}  // namespace swathbook::tests
