#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "api/json/json.hpp"
#include "core/base/uuid.hpp"
#include "core/notebook/book.hpp"

namespace swathbook::wasm {

using api::Json;

/// Members of a request to the notebook, each read or refused by name.
/// @errors invalid_input{name} when a member is absent or of another type
[[nodiscard]] Result<const Json*> member(const Json& request, std::string_view name);
[[nodiscard]] Result<std::string> text_in(const Json& request, std::string_view name);
[[nodiscard]] Result<Uuid> uuid_in(const Json& request, std::string_view name);
[[nodiscard]] Result<notebook::EntryKind> kind_in(const Json& request);
/// "now_ms": the wall clock as Unix milliseconds.
[[nodiscard]] Result<std::int64_t> now_in(const Json& request);
/// "entries": the travelling text, read but not checked.
[[nodiscard]] Result<std::vector<notebook::Entry>> entries_in(const Json& request);
/// Twenty hexadecimal digits.
/// @errors invalid_input{random}
[[nodiscard]] Result<notebook::RandomBytes> random_bytes(const Json& hex);

}  // namespace swathbook::wasm
