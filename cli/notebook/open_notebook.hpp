#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "core/notebook/fold.hpp"
#include "store/sqlite/sqlite_notebook.hpp"

namespace swathbook::cli {

using OpenNotebook = std::unique_ptr<store::SqliteNotebook>;

/// The notebook a command works on: the file named by --notebook, else by SWATHBOOK_NOTEBOOK.
/// @errors not_found when neither names one; as SqliteNotebook::open
[[nodiscard]] Result<OpenNotebook> open_notebook(const std::string& flag, store::OpenMode mode);

/// Who makes a change: --author, else the author the notebook was made for.
/// @errors invalid_input{author} when neither is known
[[nodiscard]] Result<std::string> author_of(store::SqliteNotebook& notebook,
                                            const std::string& flag);

/// A thing in a notebook.
struct Thing {
    notebook::EntryKind kind = notebook::EntryKind::sprayer;
    Uuid id;
};

/// Finds a thing by its id, the beginning of its id (four letters or more) or its name.
/// @errors not_found; conflict when several answer to it, with their ids
[[nodiscard]] Result<Thing> find_thing(const notebook::Fold& state, std::string_view word,
                                       std::optional<notebook::EntryKind> kind = {});

/// What a thing is called: its "name", else nothing.
[[nodiscard]] std::string name_of(const notebook::Fold& state, const Thing& thing);

/// All things, in order of kind, then of id (which is the order they were made in).
[[nodiscard]] std::vector<Thing> things_in(const notebook::Fold& state,
                                           std::optional<notebook::EntryKind> kind = {});

}  // namespace swathbook::cli
