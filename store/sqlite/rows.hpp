#pragma once

#include "core/notebook/entry.hpp"
#include "store/sqlite/connection.hpp"

namespace swathbook::store {

/// Reads an entry from a row of "sequence, id, author, device, made_ms, made_counter, kind,
/// subject, body, previous, hash". The texts live until the next step.
/// @errors corrupt_data{path} when a column cannot be part of an entry
[[nodiscard]] Result<notebook::EntryView> entry_of_row(const Statement& row);

/// The same for "id, author, device, made_ms, made_counter, kind, subject, body"; hashes stay zero.
[[nodiscard]] Result<notebook::EntryView> foldable_of_row(const Statement& row);

}  // namespace swathbook::store
