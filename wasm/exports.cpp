#include <cstddef>
#include <cstdlib>
#include <string>
#include <string_view>

#include "api/call.hpp"
#include "core/base/blake2b.hpp"
#include "wasm/book.hpp"

/// The flat surface of the module: text goes in and comes out through linear memory.
///
///   at = swathbook_reserve(bytes)              room for a text, to be given back with
///   swathbook_release swathbook_call(name, bytes, json, bytes)   1 when answered, 0 when refused;
///   the text either way is swathbook_text(), swathbook_text_size()    the last result; good until
///   the next call
#define SWATHBOOK_EXPORT(name) extern "C" __attribute__((export_name(#name), used))

namespace {

std::string last_text;  // NOLINT: the one result the caller reads before it asks again

}  // namespace

SWATHBOOK_EXPORT(swathbook_reserve) void* swathbook_reserve(std::size_t bytes) {
    return std::malloc(bytes == 0 ? 1 : bytes);
}

SWATHBOOK_EXPORT(swathbook_release) void swathbook_release(void* text) {
    std::free(text);
}

SWATHBOOK_EXPORT(swathbook_call)
int swathbook_call(const char* name, std::size_t name_bytes, const char* json,
                   std::size_t json_bytes) {
    auto called = swathbook::api::call(std::string_view(name, name_bytes),
                                       std::string_view(json, json_bytes));
    last_text = std::move(called.json);
    return called.error ? 0 : 1;
}

/// One act on the notebook in this module's memory; 1 or 0 as swathbook_call.
SWATHBOOK_EXPORT(swathbook_book)
int swathbook_book(const char* act, std::size_t act_bytes, const char* json,
                   std::size_t json_bytes) {
    auto done =
        swathbook::wasm::book(std::string_view(act, act_bytes), std::string_view(json, json_bytes));
    const bool is_done = done.has_value();
    last_text = is_done ? std::move(*done) : swathbook::api::error_json(done.error());
    return is_done ? 1 : 0;
}

/// BLAKE2b-256 of some bytes, as 64 hexadecimal digits. Always answers.
SWATHBOOK_EXPORT(swathbook_digest) int swathbook_digest(const char* bytes, std::size_t size) {
    last_text = swathbook::hex_of(swathbook::blake2b_256(std::string_view(bytes, size)));
    return 1;
}

SWATHBOOK_EXPORT(swathbook_text) const char* swathbook_text() {
    return last_text.data();
}
SWATHBOOK_EXPORT(swathbook_text_size) std::size_t swathbook_text_size() {
    return last_text.size();
}
