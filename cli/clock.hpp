#pragma once

#include <string>

namespace swathbook::cli {

/// This moment in UTC, to the second: "2031-05-14T06:30:00.000Z".
[[nodiscard]] std::string now_text();

}  // namespace swathbook::cli
