#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace swathbook::cli {

inline constexpr std::size_t largest_file = std::size_t{64} << 20;

/// The whole of a file, or of standard input when the name is "-".
/// @errors not_found, out_of_range when too large, io
[[nodiscard]] Result<std::string> read_file(const std::string& name,
                                            std::size_t most = largest_file);

/// Writes a file whole or not at all: beside it first, then in its place.
/// @errors io
[[nodiscard]] Result<void> write_file(const std::string& name, std::string_view content);

}  // namespace swathbook::cli
