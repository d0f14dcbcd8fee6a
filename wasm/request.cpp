#include "wasm/request.hpp"

#include <cmath>

#include <fmt/format.h>

#include "core/notebook/entry_text.hpp"

namespace swathbook::wasm {
namespace {

tl::unexpected<Error> refuse(std::string_view name, std::string_view wanted) {
    return fail(ErrorCode::invalid_input, name,
                fmt::format("\"{}\" is missing or is not {}.", name, wanted));
}

}  // namespace

Result<const Json*> member(const Json& request, std::string_view name) {
    const auto found = request.is_object() ? request.find(name) : request.end();
    if (found == request.end()) {
        return refuse(name, "in the request");
    }
    return &*found;
}

Result<std::string> text_in(const Json& request, std::string_view name) {
    const auto found = member(request, name);
    if (!found || !(*found)->is_string()) {
        return refuse(name, "text");
    }
    return (*found)->get_ref<const std::string&>();
}

Result<Uuid> uuid_in(const Json& request, std::string_view name) {
    SWATHBOOK_TRY(text, text_in(request, name));
    return parse_uuid(text, name);
}

Result<notebook::EntryKind> kind_in(const Json& request) {
    SWATHBOOK_TRY(word, text_in(request, "kind"));
    return notebook::parse_entry_kind(word, "kind");
}

Result<std::int64_t> now_in(const Json& request) {
    const auto found = member(request, "now_ms");
    const double now = found && (*found)->is_number() ? (*found)->get<double>() : -1.0;
    if (!(now >= 0.0 && now <= static_cast<double>(notebook::last_millisecond))) {
        return refuse("now_ms", "a time in milliseconds from 1970");
    }
    return static_cast<std::int64_t>(std::floor(now));
}

Result<std::vector<notebook::Entry>> entries_in(const Json& request) {
    SWATHBOOK_TRY(text, text_in(request, "entries"));
    return notebook::read_entries(text);
}

Result<notebook::RandomBytes> random_bytes(const Json& hex) {
    notebook::RandomBytes bytes{};
    if (!hex.is_string() || !detail::read_hex(hex.get_ref<const std::string&>(), bytes)) {
        return refuse("random", "20 hexadecimal digits from a source nobody can guess");
    }
    return bytes;
}

}  // namespace swathbook::wasm
