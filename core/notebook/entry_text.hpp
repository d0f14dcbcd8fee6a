#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/notebook/entry.hpp"

namespace swathbook::notebook {

/// Entries as one text: for each its canonical text, a line "hash" with 64 hexadecimal digits, and
/// an empty line. The form in which entries travel.
[[nodiscard]] std::string write_entries(std::span<const Entry> entries);

/// Reads that text back. Form is checked, hashes and chains are not (check_entry, verify_chains).
///
/// @errors corrupt_data{"line N"} at the first line that is not what the form asks for
[[nodiscard]] Result<std::vector<Entry>> read_entries(std::string_view text);

}  // namespace swathbook::notebook
