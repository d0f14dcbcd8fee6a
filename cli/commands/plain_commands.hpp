#pragma once

#include "cli/command.hpp"

/// The commands that are not operations themselves.
namespace swathbook::cli {

[[nodiscard]] Command notebook_command();
[[nodiscard]] Command packet_command();
[[nodiscard]] Command worksheet_command();
[[nodiscard]] Command serve_command();
[[nodiscard]] Command compute_command();
[[nodiscard]] Command operations_command();
[[nodiscard]] Command completion_command();
[[nodiscard]] Command manual_command();
[[nodiscard]] Command help_command();

}  // namespace swathbook::cli
