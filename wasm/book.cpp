#include "wasm/book.hpp"

#include <algorithm>
#include <array>
#include <memory>

#include <fmt/format.h>

#include "core/base/sort.hpp"
#include "core/notebook/body.hpp"
#include "core/notebook/entry_text.hpp"
#include "wasm/answer.hpp"
#include "wasm/request.hpp"

namespace swathbook::wasm {
namespace {

using notebook::Book;
using notebook::Draft;
using notebook::Entry;

// The notebook of this module: a page, worker or test holds one module for one notebook.
std::unique_ptr<Book> open_book;  // NOLINT: state is what these acts are about

Result<void> open(const Json& request, JsonWriter&) {
    SWATHBOOK_TRY(device, uuid_in(request, "device"));
    SWATHBOOK_CHECK(now_in(request));
    open_book = std::make_unique<Book>(device);
    return {};
}

Result<void> add(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(now_ms, now_in(request));
    SWATHBOOK_TRY(entries, entries_in(request));
    std::int64_t added = 0;
    out.key("refused");
    out.open_list();
    for (const Entry& entry : entries) {
        const auto taken = open_book->add(view_of(entry), now_ms);
        if (taken) {
            added += *taken ? 1 : 0;
            continue;
        }
        out.open_object();
        out.key("id");
        out.text(text_of(entry.id));
        out.key("code");
        out.text(word_of(taken.error().code));
        out.key("detail");
        out.text(taken.error().detail);
        out.close_object();
    }
    out.close_list();
    out.key("added");
    out.integer(added);
    return {};
}

Result<Draft> draft_of(const Json& json) {
    Draft draft;
    SWATHBOOK_TRY(author, text_in(json, "author"));
    SWATHBOOK_TRY(kind, kind_in(json));
    SWATHBOOK_TRY(subject, uuid_in(json, "subject"));
    SWATHBOOK_TRY(body, member(json, "body"));
    return Draft{std::move(author), kind, subject, api::json_text(*body)};
}

/// Reads every element of a list with `read`, naming the one at fault.
template <class Value, class Read>
Result<std::vector<Value>> list_in(const Json& request, std::string_view name, Read read) {
    SWATHBOOK_TRY(list, member(request, name));
    std::vector<Value> values;
    for (std::size_t i = 0; i < (list->is_array() ? list->size() : 0); ++i) {
        auto value = read((*list)[i]);
        if (!value) {
            Error error = std::move(value).error();
            error.field = fmt::format("{}[{}].{}", name, i, error.field);
            return tl::unexpected(std::move(error));
        }
        values.push_back(std::move(*value));
    }
    return values;
}

Result<void> seal(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(now_ms, now_in(request));
    SWATHBOOK_TRY(drafts, list_in<Draft>(request, "drafts", draft_of));
    SWATHBOOK_TRY(random, list_in<notebook::RandomBytes>(request, "random", random_bytes));
    if (drafts.empty() || drafts.size() != random.size()) {
        return fail(ErrorCode::invalid_input, "random",
                    fmt::format("There are {} drafts and {} random texts: give one of each for "
                                "every entry to be made.",
                                drafts.size(), random.size()));
    }
    SWATHBOOK_TRY(entries, open_book->seal(drafts, now_ms, random));
    out.key("entries");
    out.text(notebook::write_entries(entries));
    write_sealed(out, entries);
    return {};
}

Result<void> things(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(kind, kind_in(request));
    const notebook::Fold& state = open_book->state();
    out.key("things");
    out.open_list();
    for (const Uuid& id : state.subjects(kind)) {
        out.open_object();
        write_thing(out, state, kind, id);
        out.close_object();
    }
    out.close_list();
    return {};
}

Result<void> thing(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(kind, kind_in(request));
    SWATHBOOK_TRY(id, uuid_in(request, "id"));
    const notebook::Fold& state = open_book->state();
    const auto known = state.subjects(kind);
    if (!std::binary_search(known.begin(), known.end(), id)) {
        return fail(ErrorCode::not_found, "id",
                    fmt::format("The notebook has no {} {}.", word_of(kind), text_of(id)));
    }
    write_thing(out, state, kind, id);
    return {};
}

Result<void> history(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(entries, entries_in(request));
    SWATHBOOK_TRY(kind, kind_in(request));
    SWATHBOOK_TRY(subject, uuid_in(request, "subject"));
    std::vector<const Entry*> found;
    for (const Entry& entry : entries) {
        if (entry.kind == kind && entry.subject == subject) {
            found.push_back(&entry);
        }
    }
    const auto stamp = [](const Entry* entry) {
        return notebook::Stamp{entry->made, entry->device, entry->id};
    };
    sort_list(found, [&](const Entry* a, const Entry* b) { return stamp(a) < stamp(b); });
    const auto same = [](const Entry* a, const Entry* b) { return *a == *b; };
    found.erase(std::unique(found.begin(), found.end(), same), found.end());
    write_history(out, found);
    return {};
}

Result<void> conflicts(const Json&, JsonWriter& out) {
    write_conflicts(out, open_book->state());
    return {};
}

Result<void> check(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(entries, entries_in(request));
    write_problems(out, notebook::verify_chains(entries));
    return {};
}

Result<void> state(const Json&, JsonWriter& out) {
    out.key("digest");
    out.text(hex_of(blake2b_256(notebook::state_text(open_book->state()))));
    out.key("entries");
    out.integer(static_cast<std::int64_t>(open_book->size()));
    return {};
}

Result<void> parse_entries(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(entries, entries_in(request));
    write_parsed(out, entries);
    return {};
}

Result<void> uuid(const Json& request, JsonWriter& out) {
    SWATHBOOK_TRY(now_ms, now_in(request));
    SWATHBOOK_TRY(hex, member(request, "random"));
    SWATHBOOK_TRY(random, random_bytes(*hex));
    out.key("id");
    out.text(text_of(make_uuid(now_ms, random)));
    return {};
}

struct Act {
    std::string_view name;
    bool needs_book;
    Result<void> (*run)(const Json& request, JsonWriter& out);
};
constexpr std::array acts{
    Act{"open", false, open},   Act{"add", true, add},
    Act{"seal", true, seal},    Act{"things", true, things},
    Act{"thing", true, thing},  Act{"conflicts", true, conflicts},
    Act{"state", true, state},  Act{"history", false, history},
    Act{"check", false, check}, Act{"parse_entries", false, parse_entries},
    Act{"uuid", false, uuid},
};

}  // namespace

Result<std::string> book(std::string_view name, std::string_view json) {
    const auto act =
        std::find_if(acts.begin(), acts.end(), [&](const Act& each) { return each.name == name; });
    if (act == acts.end()) {
        return fail(ErrorCode::not_found, "", fmt::format("The notebook has no act \"{}\".", name));
    }
    if (act->needs_book && open_book == nullptr) {
        return fail(ErrorCode::unavailable, "device",
                    "No notebook is open in this module. Open it with its device and add its "
                    "entries first.");
    }
    SWATHBOOK_TRY(request, api::parse_json(json));
    JsonWriter out;
    out.open_object();
    SWATHBOOK_CHECK(act->run(request, out));
    out.close_object();
    return out.take();
}

}  // namespace swathbook::wasm
