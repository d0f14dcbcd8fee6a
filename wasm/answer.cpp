#include "wasm/answer.hpp"

#include <algorithm>

#include "core/notebook/entry_text.hpp"

namespace swathbook::wasm {
namespace {

using notebook::Entry;
using notebook::EntryKind;
using notebook::FieldNow;
using notebook::Fold;

void write_text(JsonWriter& out, std::string_view name, std::string_view text) {
    out.key(name);
    out.text(text);
}

void write_fields(JsonWriter& out, const std::vector<FieldNow>& fields) {
    out.key("fields");
    out.open_object();
    for (const FieldNow& field : fields) {
        if (field.value != "null") {
            out.key(field.name);
            out.raw(field.value);
        }
    }
    out.close_object();
}

/// When the thing was changed first and last, among the changes that stand.
void write_times(JsonWriter& out, const std::vector<FieldNow>& fields) {
    const auto by_stamp = [](const FieldNow& a, const FieldNow& b) { return a.stamp < b.stamp; };
    const auto [first, last] = std::minmax_element(fields.begin(), fields.end(), by_stamp);
    const bool is_empty = fields.empty();
    write_text(out, "changed", is_empty ? "" : notebook::utc_text(last->stamp.made.milliseconds));
    write_text(out, "author", is_empty ? "" : last->author);
    write_text(out, "created", is_empty ? "" : notebook::utc_text(first->stamp.made.milliseconds));
}

void write_closing(JsonWriter& out, const std::vector<FieldNow>& fields,
                   const notebook::Stamp& closing) {
    out.key("closed");
    out.open_object();
    write_text(out, "at", notebook::utc_text(closing.made.milliseconds));
    write_text(out, "by", fields.empty() ? "" : fields.front().author);
    out.close_object();
}

void write_amendments(JsonWriter& out, const std::vector<notebook::AmendmentNow>& amendments) {
    out.key("amendments");
    out.open_list();
    for (const notebook::AmendmentNow& amendment : amendments) {
        out.open_object();
        write_text(out, "at", notebook::utc_text(amendment.stamp.made.milliseconds));
        write_text(out, "author", amendment.author);
        out.key("body");
        out.raw(amendment.body);
        out.close_object();
    }
    out.close_list();
}

void write_place(JsonWriter& out, const Entry& entry) {
    write_text(out, "id", text_of(entry.id));
    write_text(out, "made", notebook::utc_text(entry.made.milliseconds));
    write_text(out, "kind", notebook::word_of(entry.kind));
    write_text(out, "subject", text_of(entry.subject));
}

}  // namespace

void write_thing(JsonWriter& out, const Fold& state, EntryKind kind, const Uuid& id) {
    const std::vector<FieldNow> fields = state.all_fields(kind, id);
    write_text(out, "id", text_of(id));
    write_fields(out, fields);
    write_times(out, fields);
    if (kind == EntryKind::record || kind == EntryKind::amendment) {
        const auto closing = state.closed_by(id);
        if (closing && kind == EntryKind::record) {
            write_closing(out, fields, *closing);
        }
        const auto amendments = state.amendments(id);
        if (!amendments.empty()) {
            write_amendments(out, amendments);
        }
    }
}

void write_conflicts(JsonWriter& out, const Fold& state) {
    out.key("conflicts");
    out.open_list();
    for (const notebook::Conflict& conflict : state.conflicts()) {
        out.open_object();
        write_text(out, "kind", notebook::word_of(conflict.kind));
        write_text(out, "record", text_of(conflict.record));
        write_text(out, "entry", text_of(conflict.entry));
        if (!conflict.field.empty()) {
            write_text(out, "field", conflict.field);
        }
        write_text(out, "text", notebook::text_of(conflict));
        out.close_object();
    }
    out.close_list();
}

void write_problems(JsonWriter& out, const std::vector<notebook::ChainProblem>& problems) {
    out.key("problems");
    out.open_list();
    for (const notebook::ChainProblem& problem : problems) {
        out.open_object();
        write_text(out, "device", text_of(problem.device));
        write_text(out, "entry", text_of(problem.entry));
        write_text(out, "fault", notebook::word_of(problem.fault));
        write_text(out, "text", notebook::text_of(problem));
        out.close_object();
    }
    out.close_list();
}

void write_history(JsonWriter& out, std::span<const Entry* const> entries) {
    out.key("entries");
    out.open_list();
    for (const Entry* entry : entries) {
        out.open_object();
        write_text(out, "id", text_of(entry->id));
        write_text(out, "made", notebook::utc_text(entry->made.milliseconds));
        write_text(out, "author", entry->author);
        write_text(out, "device", text_of(entry->device));
        out.key("body");
        out.raw(entry->body);
        out.close_object();
    }
    out.close_list();
}

void write_sealed(JsonWriter& out, std::span<const Entry> entries) {
    out.key("list");
    out.open_list();
    for (const Entry& entry : entries) {
        out.open_object();
        write_place(out, entry);
        out.close_object();
    }
    out.close_list();
}

void write_parsed(JsonWriter& out, std::span<const Entry> entries) {
    out.key("list");
    out.open_list();
    for (const Entry& entry : entries) {
        out.open_object();
        write_place(out, entry);
        write_text(out, "device", text_of(entry.device));
        write_text(out, "author", entry.author);
        write_text(out, "text", notebook::write_entries(std::span(&entry, 1)));
        out.close_object();
    }
    out.close_list();
}

}  // namespace swathbook::wasm
