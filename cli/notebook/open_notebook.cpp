#include "cli/notebook/open_notebook.hpp"

#include <cstdlib>

#include <fmt/format.h>

#include "core/notebook/body.hpp"

namespace swathbook::cli {
namespace {

using notebook::EntryKind;

constexpr std::size_t shortest_prefix = 4;

std::string several(const notebook::Fold& state, std::string_view word,
                    const std::vector<Thing>& found) {
    std::string text = fmt::format("Several things answer to \"{}\"; say which by its id:", word);
    for (const Thing& thing : found) {
        text += fmt::format(" {} ({} {})", text_of(thing.id), notebook::word_of(thing.kind),
                            name_of(state, thing));
    }
    return text;
}

}  // namespace

Result<OpenNotebook> open_notebook(const std::string& flag, store::OpenMode mode) {
    const char* usual = std::getenv("SWATHBOOK_NOTEBOOK");
    const std::string path = !flag.empty() ? flag : usual != nullptr ? usual : "";
    if (path.empty()) {
        return fail(
            ErrorCode::not_found, "notebook",
            "Say which notebook: --notebook FILE, or SWATHBOOK_NOTEBOOK=FILE in the environment. "
            "'swathbook notebook new FILE' makes one.");
    }
    store::OpenOptions options;
    options.mode = mode;
    return store::SqliteNotebook::open(path, options, store::system_outside());
}

Result<std::string> author_of(store::SqliteNotebook& notebook, const std::string& flag) {
    if (!flag.empty()) {
        return flag;
    }
    SWATHBOOK_TRY(kept, notebook.setting("author"));
    if (!kept) {
        return fail(ErrorCode::invalid_input, "author",
                    "Nobody is named as the author of this change. Add --author NAME.");
    }
    return std::move(*kept);
}

std::string name_of(const notebook::Fold& state, const Thing& thing) {
    const auto name = state.field(thing.kind, thing.id, "name");
    const auto text = name ? notebook::text_of_json_string(name->value) : std::nullopt;
    return text.value_or("");
}

std::vector<Thing> things_in(const notebook::Fold& state, std::optional<EntryKind> kind) {
    std::vector<Thing> things;
    for (int number = 1; number <= notebook::entry_kinds; ++number) {
        const auto each = static_cast<EntryKind>(number);
        if (kind.value_or(each) != each) {
            continue;
        }
        for (const Uuid& id : state.subjects(each)) {
            things.push_back({each, id});
        }
    }
    return things;
}

Result<Thing> find_thing(const notebook::Fold& state, std::string_view word,
                         std::optional<EntryKind> kind) {
    std::vector<Thing> found;
    for (const Thing& thing : things_in(state, kind)) {
        if (thing.kind == EntryKind::amendment) {
            continue;
        }
        const std::string id = text_of(thing.id);
        const bool is_prefix = word.size() >= shortest_prefix && id.starts_with(word);
        if (is_prefix || name_of(state, thing) == word) {
            found.push_back(thing);
        }
    }
    if (found.size() == 1) {
        return found.front();
    }
    if (found.empty()) {
        return fail(
            ErrorCode::not_found, "",
            fmt::format("Nothing in this notebook has the name or id \"{}\". 'swathbook notebook "
                        "list' shows what there is.",
                        word));
    }
    return fail(ErrorCode::conflict, "", several(state, word, found));
}

}  // namespace swathbook::cli
