// Acts that change a notebook.

#include <fmt/format.h>

#include "cli/notebook/acts.hpp"
#include "cli/notebook/body_words.hpp"
#include "cli/notebook/keep.hpp"
#include "cli/notebook/open_notebook.hpp"
#include "cli/terminal.hpp"

namespace swathbook::cli {
namespace {

using notebook::EntryKind;

struct Change {
    EntryKind kind;
    Uuid subject;
    std::string body;
};

/// Appends one entry; prints the id of the thing it is about.
Result<void> append(store::SqliteNotebook& notebook, const NotebookAsk& ask, Change change) {
    SWATHBOOK_TRY(author, author_of(notebook, ask.author));
    const notebook::Draft draft{author, change.kind, change.subject, std::move(change.body)};
    SWATHBOOK_CHECK(notebook.append(std::span(&draft, 1)));
    write_output(text_of(change.subject) + "\n");
    return {};
}

}  // namespace

Result<void> make_notebook(const NotebookAsk& ask) {
    if (ask.author.empty()) {
        return fail(
            ErrorCode::invalid_input, "author",
            "Say who writes in this notebook: --author NAME. It stands beside every entry.");
    }
    SWATHBOOK_TRY(notebook, open_notebook(ask.file, store::OpenMode::create));
    SWATHBOOK_CHECK(notebook->set_setting("author", ask.author));
    write_output(ask.file + "\n");
    return {};
}

Result<void> add_entry(const NotebookAsk& ask) {
    SWATHBOOK_TRY(kind, notebook::parse_entry_kind(ask.kind, "kind"));
    SWATHBOOK_TRY(body, body_from(ask.body, ask.words));
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_write));
    if (ask.which.empty()) {
        SWATHBOOK_TRY(fresh, new_thing());
        return append(*notebook, ask, {kind, fresh, std::move(body)});
    }
    SWATHBOOK_TRY(state, notebook->state());
    SWATHBOOK_TRY(thing, find_thing(state, ask.which, kind));
    return append(*notebook, ask, {kind, thing.id, std::move(body)});
}

Result<void> close_record(const NotebookAsk& ask) {
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_write));
    SWATHBOOK_TRY(state, notebook->state());
    SWATHBOOK_TRY(thing, find_thing(state, ask.which, EntryKind::record));
    // The closing entry carries the whole record: that, and nothing else, is what was closed.
    const std::vector<std::string> closing{"closed=true"};
    SWATHBOOK_TRY(body, body_from(state.body(thing.kind, thing.id), closing));
    return append(*notebook, ask, {thing.kind, thing.id, std::move(body)});
}

Result<void> amend_record(const NotebookAsk& ask) {
    SWATHBOOK_TRY(notebook, open_notebook(ask.notebook, store::OpenMode::read_write));
    SWATHBOOK_TRY(state, notebook->state());
    SWATHBOOK_TRY(thing, find_thing(state, ask.which, EntryKind::record));
    std::vector<std::string> words = ask.words;
    words.push_back("date=" + ask.date);
    words.push_back("reason=" + ask.reason);
    SWATHBOOK_TRY(body, body_from(ask.body, words));
    return append(*notebook, ask, {EntryKind::amendment, thing.id, std::move(body)});
}

}  // namespace swathbook::cli
