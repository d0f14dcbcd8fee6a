#include "wasm/surface.hpp"

#include <cstdlib>
#include <utility>

namespace {

std::string last_text;  // NOLINT: the one result the caller reads before it asks again

}  // namespace

namespace swathbook::wasm {

int leave(std::string text, bool is_answered) {
    last_text = std::move(text);
    return is_answered ? 1 : 0;
}

}  // namespace swathbook::wasm

SWATHBOOK_EXPORT(swathbook_reserve) void* swathbook_reserve(std::size_t bytes) {
    return std::malloc(bytes == 0 ? 1 : bytes);
}

SWATHBOOK_EXPORT(swathbook_release) void swathbook_release(void* text) {
    std::free(text);
}

SWATHBOOK_EXPORT(swathbook_text) const char* swathbook_text() {
    return last_text.data();
}

SWATHBOOK_EXPORT(swathbook_text_size) std::size_t swathbook_text_size() {
    return last_text.size();
}
