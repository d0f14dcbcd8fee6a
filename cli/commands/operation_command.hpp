#pragma once

#include "api/operation.hpp"
#include "cli/command.hpp"

namespace swathbook::cli {

/// The friendly command of one operation: its flags come from the description of its request, what
/// it prints from the description of its answer.
[[nodiscard]] Command operation_command(const api::Operation& operation);

}  // namespace swathbook::cli
