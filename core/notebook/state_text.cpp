#include <algorithm>
#include <iterator>

#include <fmt/format.h>

#include "core/base/sort.hpp"
#include "core/notebook/body.hpp"
#include "core/notebook/fold.hpp"

namespace swathbook::notebook {

std::string_view word_of(ConflictKind kind) {
    switch (kind) {
        case ConflictKind::edit_after_close: return "edit_after_close";
        case ConflictKind::closed_twice: return "closed_twice";
        case ConflictKind::draft_not_in_record: return "draft_not_in_record";
        case ConflictKind::amends_open_record: return "amends_open_record";
        case ConflictKind::incomplete_amendment: return "incomplete_amendment";
    }
    return "edit_after_close";
}

std::string text_of(const Conflict& conflict) {
    const auto meaning = [&]() -> std::string {
        switch (conflict.kind) {
            case ConflictKind::edit_after_close:
                return "changes the record after it was closed and was not applied; amend the "
                       "record if the change is right";
            case ConflictKind::closed_twice:
                return "closes a record that was closed before; the first closing stands";
            case ConflictKind::draft_not_in_record:
                return fmt::format(
                    "had set {} before the record was closed on another device, and the closed "
                    "record does not carry that value; amend the record if the value is right",
                    conflict.field);
            case ConflictKind::amends_open_record:
                return "amends a record that nobody has closed; it counts once the record is "
                       "closed";
            case ConflictKind::incomplete_amendment:
                return "amends the record without a reason or a date; amend it again with both";
        }
        return {};
    };
    return fmt::format("Entry {} on record {} {}.", text_of(conflict.entry),
                       text_of(conflict.record), meaning());
}

namespace {

/// A thing's fields, or the amendments of a record, a line each.
void add_thing(const Fold& fold, EntryKind kind, const Uuid& subject, std::string& text) {
    const auto out = std::back_inserter(text);
    const std::string thing = fmt::format("{} {}", word_of(kind), text_of(subject));
    for (const FieldNow& field : fold.fields(kind, subject)) {
        fmt::format_to(out, "{} {} {}\n", thing, field.name, field.value);
    }
    if (kind != EntryKind::amendment) {
        return;
    }
    for (const AmendmentNow& amendment : fold.amendments(subject)) {
        fmt::format_to(out, "{} {} {}\n", thing, text_of(amendment.stamp.id), amendment.body);
    }
}

}  // namespace

std::string state_text(const Fold& fold) {
    std::string text;
    for (int number = 1; number <= entry_kinds; ++number) {
        const auto kind = static_cast<EntryKind>(number);
        for (const Uuid& subject : fold.subjects(kind)) {
            add_thing(fold, kind, subject, text);
        }
    }
    for (const Conflict& conflict : fold.conflicts()) {
        fmt::format_to(std::back_inserter(text), "conflict {} {} {} {}\n", word_of(conflict.kind),
                       text_of(conflict.record), text_of(conflict.entry), conflict.field);
    }
    return text;
}

std::vector<Write> history_of(std::span<const Entry> entries, EntryKind kind, const Uuid& subject,
                              std::string_view field) {
    std::vector<Write> writes;
    for (const Entry& entry : entries) {
        if (entry.kind != kind || entry.subject != subject) {
            continue;
        }
        BodyReader reader(entry.body);
        while (const auto member = reader.next()) {
            if (member->name == field) {
                writes.push_back(Write{Stamp{entry.made, entry.device, entry.id}, entry.author,
                                       std::string(member->value)});
            }
        }
    }
    sort_list(writes);
    writes.erase(std::unique(writes.begin(), writes.end()), writes.end());
    return writes;
}

}  // namespace swathbook::notebook
