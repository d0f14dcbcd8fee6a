#pragma once

#include <string_view>

namespace swathbook::cli {

/// As in the project() line of CMakeLists.txt.
inline constexpr std::string_view version = SWATHBOOK_VERSION;

}  // namespace swathbook::cli
