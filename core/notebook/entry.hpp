#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/blake2b.hpp"
#include "core/base/result.hpp"
#include "core/base/uuid.hpp"
#include "core/notebook/hybrid_time.hpp"

namespace swathbook::notebook {

/// What an entry is about. Numbers are permanent; the words are what is stored and hashed.
enum class EntryKind : std::uint8_t {
    sprayer = 1,
    tip_set = 2,
    crew_member = 3,  ///< the word is "operator", which C++ keeps for itself
    calibration = 4,
    landowner = 5,
    stand = 6,
    setback = 7,
    product_card = 8,
    job = 9,
    load = 10,
    pass = 11,
    reading = 12,
    record = 13,      ///< an application record: open until an entry sets "closed" to true
    amendment = 14,   ///< adds to a closed record: subject is the record; needs "date" and "reason"
    attachment = 15,  ///< names a blob ("blob": its digest) and the thing it belongs to ("of")
};
inline constexpr int entry_kinds = 15;

[[nodiscard]] std::string_view word_of(EntryKind kind);
/// @errors invalid_input{field}
[[nodiscard]] Result<EntryKind> parse_entry_kind(std::string_view word, std::string_view field);

/// One change, appended and never altered. Every member but `hash` is part of what is hashed.
struct Entry {
    Uuid id;             ///< version 7
    std::string author;  ///< who made the change, as people write it: 1 to 200 bytes of UTF-8
    Uuid device;         ///< which device's chain this entry belongs to
    HybridTime made;
    EntryKind kind = EntryKind::sprayer;
    Uuid subject;       ///< the thing the entry is about
    std::string body;   ///< canonical JSON object, see body.hpp
    Digest previous{};  ///< hash of the entry before it on this device; zeros for the first
    Digest hash{};      ///< BLAKE2b-256 of canonical_text

    bool operator==(const Entry&) const = default;
};

/// The same without owning the text.
struct EntryView {
    Uuid id;
    std::string_view author;
    Uuid device;
    HybridTime made;
    EntryKind kind = EntryKind::sprayer;
    Uuid subject;
    std::string_view body;
    Digest previous{};
    Digest hash{};
};
[[nodiscard]] EntryView view_of(const Entry& entry);
[[nodiscard]] Entry copy_of(const EntryView& view);

/// A change somebody wants to make: an entry before it has a stamp, an id and a place in a chain.
struct Draft {
    std::string author;
    EntryKind kind = EntryKind::sprayer;
    Uuid subject;
    std::string body;  ///< any JSON object; it is brought into canonical form
};

/// The end of a device's chain.
struct ChainHead {
    HybridTime last;  ///< the greatest stamp the device has made or read
    Digest hash{};    ///< hash of its last entry; zeros when it has none
};

/// The text whose BLAKE2b-256 is the hash of an entry: nine lines, each ended by a line feed.
/// docs/methods/notebook.md shows how to check one with standard tools.
[[nodiscard]] std::string canonical_text(const EntryView& entry);
[[nodiscard]] Digest hash_of(const EntryView& entry);

/// Turns a draft into the next entry of a device's chain.
///
/// @param random ten unguessable bytes for the id
/// @errors invalid_input{author|body|reason|date}, out_of_range{made} as next_stamp
[[nodiscard]] Result<Entry> seal(const Draft& draft, const Uuid& device, const ChainHead& head,
                                 std::int64_t now_ms, const std::array<std::uint8_t, 10>& random);

/// Checks an entry that came from elsewhere, by itself: form, hash, and that its stamp is not far
/// ahead of this clock. Its place in the chain is checked by verify_chains.
///
/// @errors corrupt_data{hash} when the content does not give the hash;
///         invalid_input{author|body|reason|date}; out_of_range{made}
[[nodiscard]] Result<void> check_entry(const EntryView& entry, std::int64_t now_ms);

/// An amendment needs "reason" (text that is not empty) and "date" (year-month-day).
/// @errors invalid_input{reason|date}
[[nodiscard]] Result<void> check_amendment_body(std::string_view body);

/// True when a record's entry closes it.
[[nodiscard]] bool closes_record(std::string_view body);

}  // namespace swathbook::notebook
