#include "server/sync.hpp"

#include <charconv>
#include <set>
#include <vector>

#include <fmt/format.h>

#include "api/json/writer.hpp"
#include "core/notebook/entry_text.hpp"
#include "server/status.hpp"

namespace swathbook::server {
namespace {

constexpr std::size_t most_pulled_bytes = std::size_t{4} << 20;
constexpr std::int64_t usual_pull = 1000;
constexpr std::int64_t most_pulled = 10000;

Response no_notebook() {
    return refusal({ErrorCode::unavailable, "notebook",
                    "This server has no notebook. Start it with --notebook FILE; 'swathbook "
                    "notebook new FILE' makes one."});
}

Response json_answer(api::JsonWriter& out) {
    Response response;
    response.body = out.take() + "\n";
    return response;
}

/// A whole number of the query; `usual` when it is not given.
Result<std::int64_t> number_in(const Request& request, std::string_view name, std::int64_t usual) {
    const auto text = query_value(request.query(), name);
    if (!text) {
        return usual;
    }
    std::int64_t number = 0;
    const auto [end, fault] = std::from_chars(text->data(), text->data() + text->size(), number);
    if (fault != std::errc() || end != text->data() + text->size() || number < 0) {
        return fail(ErrorCode::invalid_input, std::string(name),
                    fmt::format("\"{}\" is no whole number of 0 or more.", text->substr(0, 40)));
    }
    return number;
}

std::span<const std::uint8_t> bytes_of(std::string_view text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

/// A walk over the entries that ends when enough has been written.
struct Pulled {
    std::int64_t cursor = 0;
    bool is_more = false;
    std::string text;
};

Result<Pulled> pull(store::NotebookStore& notebook, std::int64_t after, std::int64_t limit) {
    Pulled pulled;
    pulled.cursor = after;
    std::int64_t count = 0;
    const auto walked = notebook.each_entry(
        after, [&](std::int64_t number, const notebook::EntryView& entry) -> Result<void> {
            pulled.is_more = count >= limit || pulled.text.size() >= most_pulled_bytes;
            if (pulled.is_more) {
                return fail(ErrorCode::conflict, "", "");  // the way to end a walk
            }
            const notebook::Entry copy = copy_of(entry);
            pulled.text += notebook::write_entries(std::span(&copy, 1));
            pulled.cursor = number;
            ++count;
            return {};
        });
    if (!walked && !pulled.is_more) {
        return tl::unexpected<Error>(walked.error());
    }
    return pulled;
}

Result<Pulled> pull_asked(store::NotebookStore& notebook, const Request& request) {
    SWATHBOOK_TRY(after, number_in(request, "after", 0));
    SWATHBOOK_TRY(limit, number_in(request, "limit", usual_pull));
    if (limit < 1 || limit > most_pulled) {
        return fail(ErrorCode::out_of_range, "limit",
                    fmt::format("The limit is {} entries; it is 1 to {}.", limit, most_pulled));
    }
    SWATHBOOK_TRY(extent, notebook.extent());
    if (after > extent.last) {
        return fail(ErrorCode::conflict, "after",
                    fmt::format("The cursor {} is beyond the last entry, {}: it belongs to another "
                                "notebook. Pull again from 0.",
                                after, extent.last));
    }
    return pull(notebook, after, limit);
}

void write_refused(api::JsonWriter& out, const store::Refusal& refusal) {
    out.open_object();
    out.key("id");
    out.text(text_of(refusal.entry));
    out.key("code");
    out.text(word_of(refusal.error.code));
    out.key("detail");
    out.text(refusal.error.detail);
    out.close_object();
}

}  // namespace

Response sync_notebook(Desk& desk, const Request&, std::string_view) {
    if (!desk.notebook) {
        return no_notebook();
    }
    const auto extent = desk.notebook->extent();
    if (!extent) {
        return refusal(extent.error());
    }
    api::JsonWriter out;
    out.open_object();
    out.key("device");
    out.text(text_of(desk.notebook->device()));
    out.key("notebook");  // this copy is known by the device whose chain it writes
    out.text(text_of(desk.notebook->device()));
    out.key("name");
    out.text(desk.notebook_name);
    out.key("cursor");
    out.integer(extent->last);
    out.key("entries");
    out.integer(extent->entries);
    out.close_object();
    return json_answer(out);
}

Response sync_push(Desk& desk, const Request& request, std::string_view) {
    if (!desk.notebook) {
        return no_notebook();
    }
    const auto entries = notebook::read_entries(request.body);
    if (!entries) {
        return refusal(Status::bad_request, entries.error());
    }
    const auto merged = desk.notebook->merge(*entries);
    if (!merged) {
        return refusal(merged.error());
    }
    std::set<Uuid> left;  // neither refused nor named yet
    for (const notebook::Entry& entry : *entries) {
        left.insert(entry.id);
    }
    for (const store::Refusal& refused : merged->refused) {
        left.erase(refused.entry);
    }
    api::JsonWriter out;
    out.open_object();
    out.key("stored");
    out.open_list();
    for (const notebook::Entry& entry : *entries) {
        if (left.erase(entry.id) == 1) {
            out.text(text_of(entry.id));
        }
    }
    out.close_list();
    out.key("refused");
    out.open_list();
    for (const store::Refusal& refused : merged->refused) {
        write_refused(out, refused);
    }
    out.close_list();
    out.close_object();
    return json_answer(out);
}

Response sync_pull(Desk& desk, const Request& request, std::string_view) {
    if (!desk.notebook) {
        return no_notebook();
    }
    const auto pulled = pull_asked(*desk.notebook, request);
    if (!pulled) {
        return refusal(pulled.error());
    }
    api::JsonWriter out;
    out.open_object();
    out.key("cursor");
    out.integer(pulled->cursor);
    out.key("more");
    out.boolean(pulled->is_more);
    out.key("entries");
    out.text(pulled->text);
    out.close_object();
    return json_answer(out);
}

Response sync_get_blob(Desk& desk, const Request& request, std::string_view digest_text) {
    if (!desk.notebook) {
        return no_notebook();
    }
    const auto digest = parse_digest(digest_text, "digest");
    if (!digest) {
        return refusal(digest.error());
    }
    if (request.method == Method::head) {
        const auto size = desk.notebook->blob_size(*digest);
        if (!size) {
            return refusal(size.error());
        }
        Response response;
        response.type = "application/octet-stream";
        response.announced = *size;
        return response;
    }
    const auto bytes = desk.notebook->blob(*digest);
    if (!bytes) {
        return refusal(bytes.error());
    }
    Response response;
    response.type = "application/octet-stream";
    response.headers.emplace_back("Content-Disposition", "attachment");
    response.body.assign(bytes->begin(), bytes->end());
    return response;
}

Response sync_put_blob(Desk& desk, const Request& request, std::string_view digest_text) {
    if (!desk.notebook) {
        return no_notebook();
    }
    const auto digest = parse_digest(digest_text, "digest");
    if (!digest) {
        return refusal(digest.error());
    }
    const Digest found = blake2b_256(request.body);
    if (found != *digest) {
        return refusal({ErrorCode::inconsistent, "digest",
                        fmt::format("The {} bytes give the digest {}, not the one of the address. "
                                    "They were damaged on the way; send them again.",
                                    request.body.size(), hex_of(found))});
    }
    const auto kept = desk.notebook->put_blob(bytes_of(request.body));
    if (!kept) {
        return refusal(kept.error());
    }
    api::JsonWriter out;
    out.open_object();
    out.key("digest");
    out.text(hex_of(*kept));
    out.key("bytes");
    out.integer(static_cast<long long>(request.body.size()));
    out.close_object();
    return json_answer(out);
}

}  // namespace swathbook::server
