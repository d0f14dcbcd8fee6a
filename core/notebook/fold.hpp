#pragma once

#include <compare>
#include <cstdint>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/notebook/entry.hpp"

namespace swathbook::notebook {

/// The order in which entries count: later wins. Device and id settle equal times, so that every
/// two entries have one order on every machine.
struct Stamp {
    HybridTime made;
    Uuid device;
    Uuid id;

    auto operator<=>(const Stamp&) const = default;
};

/// One field of a thing as it stands, and the entry it comes from.
struct FieldNow {
    std::string_view name;
    std::string_view value;  ///< canonical JSON
    std::string_view author;
    Stamp stamp;
};

/// What the fold could not simply apply. Nothing of it is lost: the entries stay in the notebook.
enum class ConflictKind : std::uint8_t {
    edit_after_close,      ///< an entry changes a record after the entry that closed it
    closed_twice,          ///< a later entry closes a record again
    draft_not_in_record,   ///< another device had changed the record before it was closed, and the
                           ///< closed record does not carry that value
    amends_open_record,    ///< an amendment of a record that nobody has closed
    incomplete_amendment,  ///< an amendment without a reason or a date
};
[[nodiscard]] std::string_view word_of(ConflictKind kind);

struct Conflict {
    ConflictKind kind = ConflictKind::edit_after_close;
    Uuid record;
    Uuid entry;         ///< the entry that was not applied
    std::string field;  ///< for draft_not_in_record

    auto operator<=>(const Conflict&) const = default;
};

/// One sentence for people, naming the record and the entry that was not applied.
[[nodiscard]] std::string text_of(const Conflict& conflict);

/// A correction of a closed record. It adds to the record and never changes it.
struct AmendmentNow {
    std::string_view author;
    Stamp stamp;
    std::string_view body;  ///< "date", "reason" and the corrected fields
};

/// The state of a notebook: what its entries amount to.
///
/// The same set of entries gives the same state and the same conflicts whatever the order in which
/// they are added and however often each is added. Per field the last writer wins by Stamp; the
/// values that lost stay in the entries (history_of). Two rules differ:
/// a record's content, once an entry has closed it, is exactly the body of the closing entry with
/// the smallest stamp; amendments are listed beside it.
///
/// Memory: the winning values, about 60 bytes a field and 40 bytes an entry that won one; records
/// and amendments keep all their bodies.
class Fold {
public:
    Fold();
    ~Fold();
    Fold(const Fold&) = delete;
    Fold& operator=(const Fold&) = delete;
    Fold(Fold&&) noexcept;
    Fold& operator=(Fold&&) noexcept;

    /// @errors corrupt_data{body} when the body is not a canonical object; nothing is added then
    [[nodiscard]] Result<void> add(const EntryView& entry);

    /// Works out records and conflicts after the last add. Adding may go on afterwards; settle
    /// again before reading.
    void settle();

    /// Subjects that have a state, in ascending order.
    [[nodiscard]] std::vector<Uuid> subjects(EntryKind kind) const;
    /// Fields of a thing in order of name; cleared fields are left out. Empty when unknown. The
    /// texts live until the next add or settle.
    [[nodiscard]] std::vector<FieldNow> fields(EntryKind kind, const Uuid& subject) const;
    /// The same with the cleared fields, whose value is null: who changed a thing last may have
    /// cleared one.
    [[nodiscard]] std::vector<FieldNow> all_fields(EntryKind kind, const Uuid& subject) const;
    [[nodiscard]] std::optional<FieldNow> field(EntryKind kind, const Uuid& subject,
                                                std::string_view name) const;
    /// The fields as one canonical JSON object.
    [[nodiscard]] std::string body(EntryKind kind, const Uuid& subject) const;

    [[nodiscard]] bool is_closed(const Uuid& record) const;
    /// The entry that closed a record.
    [[nodiscard]] std::optional<Stamp> closed_by(const Uuid& record) const;
    /// In order of stamp.
    [[nodiscard]] std::vector<AmendmentNow> amendments(const Uuid& record) const;
    /// Sorted; empty when nothing collided.
    [[nodiscard]] const std::vector<Conflict>& conflicts() const;

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

/// Adds all and settles.
/// @errors as Fold::add, for the first entry at fault
[[nodiscard]] Result<Fold> fold(std::span<const Entry> entries);

/// One line a field: "kind subject name value", sorted, then one line a conflict. Two notebooks are
/// in the same state when these texts are equal.
[[nodiscard]] std::string state_text(const Fold& fold);

/// One value a field has had.
struct Write {
    Stamp stamp;
    std::string author;
    std::string value;

    auto operator<=>(const Write&) const = default;
};

/// Every value that was ever written to one field, oldest first: the last one stands (unless the
/// thing is a closed record).
[[nodiscard]] std::vector<Write> history_of(std::span<const Entry> entries, EntryKind kind,
                                            const Uuid& subject, std::string_view field);

}  // namespace swathbook::notebook
