#include <string_view>

#include "api/call.hpp"
#include "core/base/blake2b.hpp"
#include "wasm/book.hpp"
#include "wasm/surface.hpp"

/// One act on the notebook in this module's memory.
SWATHBOOK_EXPORT(swathbook_book)
int swathbook_book(const char* act, std::size_t act_bytes, const char* json,
                   std::size_t json_bytes) {
    auto done =
        swathbook::wasm::book(std::string_view(act, act_bytes), std::string_view(json, json_bytes));
    return done ? swathbook::wasm::leave(std::move(*done), true)
                : swathbook::wasm::leave(swathbook::api::error_json(done.error()), false);
}

/// BLAKE2b-256 of some bytes, as 64 hexadecimal digits. Always answers.
SWATHBOOK_EXPORT(swathbook_digest) int swathbook_digest(const char* bytes, std::size_t size) {
    return swathbook::wasm::leave(
        swathbook::hex_of(swathbook::blake2b_256(std::string_view(bytes, size))), true);
}
