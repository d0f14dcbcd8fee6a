#pragma once

#include <string_view>

#include "server/desk.hpp"
#include "server/http.hpp"

namespace swathbook::server {

/// POST /api/compute/NAME: the bytes that `swathbook compute NAME` prints, also when it refuses.
[[nodiscard]] Response compute(Desk& desk, const Request& request, std::string_view name);
/// GET /api/operations: the bytes that `swathbook operations --json` prints.
[[nodiscard]] Response list_operations(Desk& desk, const Request& request, std::string_view rest);
/// GET /api/health: that the server answers, its version, and whether it has a notebook and the
/// app.
[[nodiscard]] Response tell_health(Desk& desk, const Request& request, std::string_view rest);

}  // namespace swathbook::server
