#include "store/sqlite/rows.hpp"

#include <algorithm>
#include <limits>

namespace swathbook::store {

namespace {

tl::unexpected<Error> damaged() {
    return fail(ErrorCode::corrupt_data, "path",
                "A row of the notebook is not an entry: the file is damaged. Restore it from a "
                "backup; keep the damaged file.");
}

template <std::size_t Size>
bool copy(std::span<const std::uint8_t> bytes, std::array<std::uint8_t, Size>& into) {
    if (bytes.size() != Size) {
        return false;
    }
    std::copy(bytes.begin(), bytes.end(), into.begin());
    return true;
}

bool is_possible_time(std::int64_t milliseconds, std::int64_t counter) {
    return milliseconds >= 0 && milliseconds <= notebook::last_millisecond && counter >= 0 &&
           counter <= std::numeric_limits<std::uint16_t>::max();
}

/// `first` is the column of the id.
Result<notebook::EntryView> read_row(const Statement& row, int first) {
    notebook::EntryView entry;
    const std::int64_t counter = row.integer(first + 4);
    entry.made.milliseconds = row.integer(first + 3);
    auto kind = notebook::parse_entry_kind(row.text(first + 5), "kind");
    if (!copy(row.bytes(first), entry.id.bytes) ||
        !copy(row.bytes(first + 2), entry.device.bytes) ||
        !copy(row.bytes(first + 6), entry.subject.bytes) || !kind ||
        !is_possible_time(entry.made.milliseconds, counter)) {
        return damaged();
    }
    entry.made.counter = static_cast<std::uint16_t>(counter);
    entry.kind = *kind;
    entry.author = row.text(first + 1);
    entry.body = row.text(first + 7);
    return entry;
}

}  // namespace

Result<notebook::EntryView> entry_of_row(const Statement& row) {
    SWATHBOOK_TRY(entry, read_row(row, 1));
    if (!copy(row.bytes(9), entry.previous) || !copy(row.bytes(10), entry.hash)) {
        return damaged();
    }
    return entry;
}

Result<notebook::EntryView> foldable_of_row(const Statement& row) {
    return read_row(row, 0);
}

}  // namespace swathbook::store
