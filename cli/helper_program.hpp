#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cli/exit_status.hpp"

namespace swathbook::cli {

/// Where the running program lies, without a slash at the end.
[[nodiscard]] std::string folder_of_this_program();

/// Becomes a helper program that lies beside this one, with `input` as its standard input. Returns
/// only when that fails.
[[nodiscard]] ExitStatus run_helper(const std::string& name,
                                    const std::vector<std::string>& arguments,
                                    std::string_view input);

}  // namespace swathbook::cli
