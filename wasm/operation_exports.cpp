#include <string_view>

#include "api/call.hpp"
#include "wasm/surface.hpp"

/// One operation on a JSON request.
SWATHBOOK_EXPORT(swathbook_call)
int swathbook_call(const char* name, std::size_t name_bytes, const char* json,
                   std::size_t json_bytes) {
    auto called = swathbook::api::call(std::string_view(name, name_bytes),
                                       std::string_view(json, json_bytes));
    return swathbook::wasm::leave(std::move(called.json), !called.error);
}
