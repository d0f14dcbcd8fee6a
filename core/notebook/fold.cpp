#include "core/notebook/fold.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstring>

#include "core/base/assert.hpp"
#include "core/base/sort.hpp"
#include "core/notebook/body.hpp"
#include "core/notebook/detail/text_pool.hpp"
#include "core/notebook/detail/thing_table.hpp"

namespace swathbook::notebook {

using detail::nothing;
using detail::Thing;

namespace {

/// The entry behind a value.
struct Writer {
    HybridTime made;
    Uuid id;
    std::uint32_t device;
    std::uint32_t author;
};

struct FieldSlot {
    std::string_view value;
    std::uint32_t name;
    std::uint32_t writer;
    std::uint32_t next;
};

/// A whole body of a record or an amendment.
struct BodySlot {
    std::string_view body;
    std::uint32_t writer;
    std::uint32_t next;
};

struct Closing {
    std::uint32_t thing;
    std::uint32_t writer;
};

}  // namespace

struct Fold::Parts {
    detail::ThingTable things;
    detail::Interner names;
    detail::Interner authors;
    detail::TextPool texts;
    detail::Interner devices;  // the 16 bytes of each
    std::vector<Writer> writers;
    std::vector<FieldSlot> fields;
    std::vector<BodySlot> bodies;
    std::vector<Closing> closings;  // sorted by thing after settle
    std::vector<Conflict> conflicts;
    std::vector<Uuid> unsettled;  // records that entries came for since the last settle

    std::uint32_t device_number(const Uuid& device);
    [[nodiscard]] Uuid device(std::uint32_t number) const;
    std::uint32_t add_writer(const EntryView& entry);
    [[nodiscard]] Stamp stamp_of(std::uint32_t writer) const;
    [[nodiscard]] std::vector<BodySlot> bodies_of(std::uint32_t thing) const;
    void write_fields(std::uint32_t thing, const EntryView& entry);
    void write_field(std::uint32_t thing, const BodyField& field, const EntryView& entry,
                     std::uint32_t& writer);
    void keep_body(std::uint32_t thing, const EntryView& entry);
    void write_kept(std::uint32_t thing, const BodySlot& kept);
    void settle_record(std::uint32_t thing);
    void settle_closed(std::uint32_t thing, const std::vector<BodySlot>& kept, std::size_t closer);
    void note_lost_drafts(std::uint32_t thing, const BodySlot& closer);
    void settle_amendments(std::uint32_t thing);
    void forget_settled(const std::vector<Uuid>& records);
    [[nodiscard]] const Closing* closing_of(const Uuid& record) const;
    [[nodiscard]] FieldNow now(const FieldSlot& slot) const;
};

std::uint32_t Fold::Parts::device_number(const Uuid& device) {
    return devices.number_of(
        {reinterpret_cast<const char*>(device.bytes.data()), device.bytes.size()});
}

Uuid Fold::Parts::device(std::uint32_t number) const {
    Uuid device;
    std::memcpy(device.bytes.data(), devices.text(number).data(), device.bytes.size());
    return device;
}

std::uint32_t Fold::Parts::add_writer(const EntryView& entry) {
    writers.push_back(
        Writer{entry.made, entry.id, device_number(entry.device), authors.number_of(entry.author)});
    return static_cast<std::uint32_t>(writers.size() - 1);
}

Stamp Fold::Parts::stamp_of(std::uint32_t writer) const {
    const Writer& w = writers[writer];
    return Stamp{w.made, device(w.device), w.id};
}

void Fold::Parts::write_field(std::uint32_t thing, const BodyField& field, const EntryView& entry,
                              std::uint32_t& writer) {
    const std::uint32_t name = names.number_of(field.name);
    std::uint32_t* link = &things.at(thing).first_field;
    while (*link != nothing && fields[*link].name != name) {
        link = &fields[*link].next;
    }
    if (*link == nothing) {
        writer = writer == nothing ? add_writer(entry) : writer;
        // Set before growing: `link` may point into the vector that grows.
        *link = static_cast<std::uint32_t>(fields.size());
        fields.push_back(FieldSlot{texts.keep(field.value), name, writer, nothing});
        return;
    }
    FieldSlot& slot = fields[*link];
    const Stamp mine{entry.made, entry.device, entry.id};
    const Stamp theirs = stamp_of(slot.writer);
    // Equal stamps mean the same entry, or a forged twin: the greater value, so that order is moot.
    if (mine < theirs || (mine == theirs && field.value <= slot.value)) {
        return;
    }
    writer = writer == nothing ? add_writer(entry) : writer;
    slot.writer = writer;
    slot.value = texts.keep(field.value);
}

void Fold::Parts::write_fields(std::uint32_t thing, const EntryView& entry) {
    std::uint32_t writer = nothing;
    BodyReader reader(entry.body);
    while (const auto field = reader.next()) {
        write_field(thing, *field, entry, writer);
    }
}

void Fold::Parts::keep_body(std::uint32_t thing, const EntryView& entry) {
    const std::uint32_t writer = add_writer(entry);
    Thing& owner = things.at(thing);
    bodies.push_back(BodySlot{texts.keep(entry.body), writer, owner.first_body});
    owner.first_body = static_cast<std::uint32_t>(bodies.size() - 1);
}

/// The kept bodies of a thing, in order of stamp, each once.
std::vector<BodySlot> Fold::Parts::bodies_of(std::uint32_t thing) const {
    std::vector<BodySlot> kept;
    for (std::uint32_t i = things.at(thing).first_body; i != nothing; i = bodies[i].next) {
        kept.push_back(bodies[i]);
    }
    const auto key = [this](const BodySlot& slot) {
        return std::pair(stamp_of(slot.writer), slot.body);
    };
    sort_list(kept, [&](const BodySlot& a, const BodySlot& b) { return key(a) < key(b); });
    kept.erase(std::unique(kept.begin(), kept.end(),
                           [&](const BodySlot& a, const BodySlot& b) { return key(a) == key(b); }),
               kept.end());
    return kept;
}

void Fold::Parts::write_kept(std::uint32_t thing, const BodySlot& kept) {
    const Writer& writer = writers[kept.writer];
    EntryView entry;
    entry.id = writer.id;
    entry.made = writer.made;
    entry.device = device(writer.device);
    entry.author = authors.text(writer.author);
    entry.body = kept.body;
    write_fields(thing, entry);
}

void Fold::Parts::note_lost_drafts(std::uint32_t thing, const BodySlot& closer) {
    const Uuid record = things.at(thing).subject;
    const std::uint32_t closing_device = writers[closer.writer].device;
    for (std::uint32_t i = things.at(thing).first_field; i != nothing; i = fields[i].next) {
        const FieldSlot& draft = fields[i];
        if (writers[draft.writer].device == closing_device) {
            continue;  // who closed the record knew their own earlier entries
        }
        const std::string_view name = names.text(draft.name);
        if (field_of(closer.body, name).value_or("null") != draft.value) {
            conflicts.push_back(Conflict{ConflictKind::draft_not_in_record, record,
                                         writers[draft.writer].id, std::string(name)});
        }
    }
}

void Fold::Parts::settle_closed(std::uint32_t thing, const std::vector<BodySlot>& kept,
                                std::size_t closer) {
    for (std::size_t i = 0; i < closer; ++i) {
        write_kept(thing, kept[i]);
    }
    note_lost_drafts(thing, kept[closer]);
    things.at(thing).first_field = nothing;
    write_kept(thing, kept[closer]);
    closings.push_back(Closing{thing, kept[closer].writer});
    for (std::size_t i = closer + 1; i < kept.size(); ++i) {
        const auto kind = closes_record(kept[i].body) ? ConflictKind::closed_twice
                                                      : ConflictKind::edit_after_close;
        conflicts.push_back(
            Conflict{kind, things.at(thing).subject, writers[kept[i].writer].id, {}});
    }
}

void Fold::Parts::settle_record(std::uint32_t thing) {
    const std::vector<BodySlot> kept = bodies_of(thing);
    things.at(thing).first_field = nothing;
    const auto closer = std::find_if(kept.begin(), kept.end(),
                                     [](const BodySlot& slot) { return closes_record(slot.body); });
    if (closer != kept.end()) {
        settle_closed(thing, kept, static_cast<std::size_t>(closer - kept.begin()));
        return;
    }
    for (const BodySlot& slot : kept) {
        write_kept(thing, slot);
    }
}

void Fold::Parts::settle_amendments(std::uint32_t thing) {
    const Uuid record = things.at(thing).subject;
    const bool is_open = closing_of(record) == nullptr;
    for (const BodySlot& slot : bodies_of(thing)) {
        const Uuid id = writers[slot.writer].id;
        if (is_open) {
            conflicts.push_back(Conflict{ConflictKind::amends_open_record, record, id, {}});
        }
        if (!check_amendment_body(slot.body)) {
            conflicts.push_back(Conflict{ConflictKind::incomplete_amendment, record, id, {}});
        }
    }
}

const Closing* Fold::Parts::closing_of(const Uuid& record) const {
    SWATHBOOK_ASSERT(unsettled.empty(), "settle() comes before reading");
    const std::uint32_t thing = things.find(EntryKind::record, record);
    const auto place =
        std::lower_bound(closings.begin(), closings.end(), thing,
                         [](const Closing& closing, std::uint32_t t) { return closing.thing < t; });
    return place != closings.end() && place->thing == thing ? &*place : nullptr;
}

FieldNow Fold::Parts::now(const FieldSlot& slot) const {
    return FieldNow{names.text(slot.name), slot.value, authors.text(writers[slot.writer].author),
                    stamp_of(slot.writer)};
}

Fold::Fold() : parts_(std::make_unique<Parts>()) {}
Fold::~Fold() = default;
Fold::Fold(Fold&&) noexcept = default;
Fold& Fold::operator=(Fold&&) noexcept = default;

Result<void> Fold::add(const EntryView& entry) {
    BodyReader reader(entry.body);
    while (reader.next()) {
    }
    if (reader.is_broken()) {
        return fail(ErrorCode::corrupt_data, "body",
                    fmt::format("The body of entry {} cannot be read. Verify the notebook and "
                                "restore it from a backup.",
                                text_of(entry.id)));
    }
    const std::uint32_t thing = parts_->things.find_or_add(entry.kind, entry.subject);
    const bool keeps_bodies = entry.kind == EntryKind::record || entry.kind == EntryKind::amendment;
    if (keeps_bodies) {
        parts_->unsettled.push_back(entry.subject);
        parts_->keep_body(thing, entry);
    } else {
        parts_->write_fields(thing, entry);
    }
    return {};
}

/// Drops what the last settle found for these records.
void Fold::Parts::forget_settled(const std::vector<Uuid>& records) {
    const auto is_among = [&records](const Uuid& record) {
        return std::binary_search(records.begin(), records.end(), record);
    };
    std::erase_if(conflicts, [&](const Conflict& conflict) { return is_among(conflict.record); });
    std::erase_if(closings, [&](const Closing& closing) {
        return is_among(things.at(closing.thing).subject);
    });
}

void Fold::settle() {
    if (parts_->unsettled.empty()) {
        return;
    }
    Parts& parts = *parts_;
    std::vector<Uuid> records = std::move(parts.unsettled);
    parts.unsettled.clear();
    sort_list(records);
    records.erase(std::unique(records.begin(), records.end()), records.end());
    parts.forget_settled(records);
    const auto each = [&](EntryKind kind, auto settle_one) {
        for (const Uuid& record : records) {
            const std::uint32_t thing = parts.things.find(kind, record);
            if (thing != nothing) {
                settle_one(thing);
            }
        }
    };
    each(EntryKind::record, [&](std::uint32_t thing) { parts.settle_record(thing); });
    sort_list(parts.closings, [](const Closing& a, const Closing& b) { return a.thing < b.thing; });
    each(EntryKind::amendment, [&](std::uint32_t thing) { parts.settle_amendments(thing); });
    sort_list(parts.conflicts);
    parts.conflicts.erase(std::unique(parts.conflicts.begin(), parts.conflicts.end()),
                          parts.conflicts.end());
}

std::vector<Uuid> Fold::subjects(EntryKind kind) const {
    SWATHBOOK_ASSERT(parts_->unsettled.empty(), "settle() comes before reading");
    std::vector<Uuid> found;
    for (const Thing& thing : parts_->things.all()) {
        if (thing.kind == kind) {
            found.push_back(thing.subject);
        }
    }
    sort_list(found);
    return found;
}

std::vector<FieldNow> Fold::fields(EntryKind kind, const Uuid& subject) const {
    std::vector<FieldNow> found = all_fields(kind, subject);
    std::erase_if(found, [](const FieldNow& field) { return field.value == "null"; });
    return found;
}

std::vector<FieldNow> Fold::all_fields(EntryKind kind, const Uuid& subject) const {
    SWATHBOOK_ASSERT(parts_->unsettled.empty(), "settle() comes before reading");
    std::vector<FieldNow> found;
    const std::uint32_t thing = parts_->things.find(kind, subject);
    if (thing == nothing) {
        return found;
    }
    for (std::uint32_t i = parts_->things.at(thing).first_field; i != nothing;
         i = parts_->fields[i].next) {
        found.push_back(parts_->now(parts_->fields[i]));
    }
    sort_list(found, [](const FieldNow& a, const FieldNow& b) { return a.name < b.name; });
    return found;
}

std::optional<FieldNow> Fold::field(EntryKind kind, const Uuid& subject,
                                    std::string_view name) const {
    for (const FieldNow& candidate : fields(kind, subject)) {
        if (candidate.name == name) {
            return candidate;
        }
    }
    return std::nullopt;
}

std::string Fold::body(EntryKind kind, const Uuid& subject) const {
    std::string text = "{";
    for (const FieldNow& field : fields(kind, subject)) {
        text += fmt::format("{}\"{}\":{}", text.size() > 1 ? "," : "", field.name, field.value);
    }
    return text + "}";
}

bool Fold::is_closed(const Uuid& record) const {
    return parts_->closing_of(record) != nullptr;
}

std::optional<Stamp> Fold::closed_by(const Uuid& record) const {
    const Closing* closing = parts_->closing_of(record);
    return closing == nullptr ? std::nullopt : std::optional(parts_->stamp_of(closing->writer));
}

std::vector<AmendmentNow> Fold::amendments(const Uuid& record) const {
    SWATHBOOK_ASSERT(parts_->unsettled.empty(), "settle() comes before reading");
    std::vector<AmendmentNow> found;
    const std::uint32_t thing = parts_->things.find(EntryKind::amendment, record);
    if (thing == nothing) {
        return found;
    }
    for (const BodySlot& slot : parts_->bodies_of(thing)) {
        found.push_back(AmendmentNow{parts_->authors.text(parts_->writers[slot.writer].author),
                                     parts_->stamp_of(slot.writer), slot.body});
    }
    return found;
}

const std::vector<Conflict>& Fold::conflicts() const {
    SWATHBOOK_ASSERT(parts_->unsettled.empty(), "settle() comes before reading");
    return parts_->conflicts;
}

Result<Fold> fold(std::span<const Entry> entries) {
    Fold state;
    for (const Entry& entry : entries) {
        SWATHBOOK_CHECK(state.add(view_of(entry)));
    }
    state.settle();
    return state;
}

}  // namespace swathbook::notebook
