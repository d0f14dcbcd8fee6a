// Acts that only look at a notebook.

#include <fmt/format.h>

#include "api/json/json.hpp"
#include "api/operation.hpp"
#include "cli/answer/print_answer.hpp"
#include "cli/notebook/acts.hpp"
#include "cli/notebook/open_notebook.hpp"
#include "cli/terminal.hpp"
#include "core/notebook/body.hpp"

namespace swathbook::cli {
namespace {

using api::Json;
using notebook::EntryKind;

constexpr std::size_t kind_column = 14;
constexpr std::size_t name_column = 22;

Result<std::optional<EntryKind>> kind_asked(const std::string& word) {
    if (word.empty()) {
        return std::optional<EntryKind>();
    }
    return notebook::parse_entry_kind(word, "kind").map([](EntryKind kind) {
        return std::optional(kind);
    });
}

std::string list_as_json(const notebook::Fold& state, const std::vector<Thing>& things) {
    std::string out = "[";
    for (const Thing& thing : things) {
        out += fmt::format("{}{{\"kind\":{},\"id\":\"{}\",\"closed\":{},\"body\":{}}}",
                           out.size() > 1 ? ",\n " : "",
                           notebook::json_string(notebook::word_of(thing.kind)), text_of(thing.id),
                           thing.kind == EntryKind::record && state.is_closed(thing.id),
                           state.body(thing.kind, thing.id));
    }
    return out + "]\n";
}

std::string answer_kept(const Json& body, const Paper& paper) {
    const auto operation = body.contains("operation") && body["operation"].is_string()
                               ? api::find_operation(body["operation"].get<std::string>())
                               : fail(ErrorCode::not_found, "", "");
    if (!operation || !body.contains("answer")) {
        return {};
    }
    return "\n" + print_answer((*operation)->answer(), body["answer"], paper);
}

std::string fields_of(const Json& body, const Paper& paper) {
    std::string out;
    for (const auto& [name, value] : body.items()) {
        if (name == "answer" || name == "request" || name == "boundary") {
            continue;
        }
        std::string text =
            value.is_structured() && !value.contains("unit") ? value.dump() : value_text(value);
        text = wrapped(text, paper.width, name_column);
        text.erase(0, std::min(name_column, text.size()));
        out += padded(api::label_from_name(name), name_column) + (text.empty() ? "\n" : text);
    }
    return out;
}

std::string amendments_of(const notebook::Fold& state, const Uuid& record, const Paper& paper) {
    std::string out;
    for (const notebook::AmendmentNow& amendment : state.amendments(record)) {
        const auto body = api::parse_json(amendment.body);
        out += "\n" + paper.in(Ink::bold, fmt::format("Amended by {}", amendment.author)) + "\n" +
               (body ? fields_of(*body, paper) : std::string(amendment.body) + "\n");
    }
    return out;
}

}  // namespace

Result<void> list_things(const NotebookAsk& ask) {
    SWATHBOOK_TRY(kind, kind_asked(ask.kind));
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_only));
    SWATHBOOK_TRY(state, notebook->state());
    const std::vector<Thing> things = things_in(state, kind);
    if (ask.as_json) {
        write_output(list_as_json(state, things));
        return {};
    }
    for (const Thing& thing : things) {
        if (thing.kind != EntryKind::amendment) {
            const bool is_closed = thing.kind == EntryKind::record && state.is_closed(thing.id);
            write_output(fmt::format(
                "{}{}  {}{}\n", padded(notebook::word_of(thing.kind), kind_column),
                text_of(thing.id), name_of(state, thing), is_closed ? "  (closed)" : ""));
        }
    }
    for (const notebook::Conflict& conflict : state.conflicts()) {
        write_output(fmt::format("conflict: {} of record {}, entry {} {}\n",
                                 notebook::word_of(conflict.kind), text_of(conflict.record),
                                 text_of(conflict.entry), conflict.field));
    }
    return {};
}

Result<void> show_thing(const NotebookAsk& ask) {
    SWATHBOOK_TRY(kind, kind_asked(ask.kind));
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_only));
    SWATHBOOK_TRY(state, notebook->state());
    SWATHBOOK_TRY(thing, find_thing(state, ask.which, kind));
    const std::string text = state.body(thing.kind, thing.id);
    if (ask.as_json) {
        write_output(list_as_json(state, {thing}));
        return {};
    }
    SWATHBOOK_TRY(body, api::parse_json(text));
    const Paper paper = paper_of_output();
    write_output(fmt::format("{} {}{}\n", notebook::word_of(thing.kind), text_of(thing.id),
                             state.is_closed(thing.id) ? "  (closed)" : ""));
    write_output(fields_of(body, paper) + answer_kept(body, paper) +
                 amendments_of(state, thing.id, paper));
    return {};
}

Result<void> show_history(const NotebookAsk& ask) {
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_only));
    SWATHBOOK_TRY(state, notebook->state());
    SWATHBOOK_TRY(thing, find_thing(state, ask.which));
    SWATHBOOK_TRY(entries, notebook->entries_of(thing.kind, thing.id));
    for (const notebook::Entry& entry : entries) {
        if (ask.field.empty()) {
            write_output(fmt::format("{}  {}  {}\n", notebook::utc_text(entry.made.milliseconds),
                                     entry.author, entry.body));
        } else if (const auto value = notebook::field_of(entry.body, ask.field)) {
            write_output(fmt::format("{}  {}  {}\n", notebook::utc_text(entry.made.milliseconds),
                                     entry.author, *value));
        }
    }
    return {};
}

}  // namespace swathbook::cli
