#pragma once

#include "core/notebook/entry.hpp"

namespace swathbook::notebook {

/// Whether an entry of this kind may be made on a record as it stands: a closed record never
/// changes, and only a closed record can be amended. Every place that seals entries asks here.
///
/// @param is_closed whether an entry has closed the record; not asked for other kinds
/// @errors not_permitted{subject}
[[nodiscard]] Result<void> check_permitted(EntryKind kind, const Uuid& record, bool is_closed);

}  // namespace swathbook::notebook
