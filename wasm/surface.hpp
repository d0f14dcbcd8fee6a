#pragma once

#include <cstddef>
#include <string>

/// The flat surface of a module: text goes in and comes out through linear memory.
///
///   at = swathbook_reserve(bytes)   room for a text, to be given back with swathbook_release
///   ask(at, bytes, ...)             any other export: 1 when answered, 0 when refused
///   swathbook_text(), swathbook_text_size()   the text either way, good until the next call
#define SWATHBOOK_EXPORT(name) extern "C" __attribute__((export_name(#name), used))

namespace swathbook::wasm {

/// Makes this the text of the last result.
/// @return what an export returns: 1 when answered, 0 when refused
int leave(std::string text, bool is_answered);

}  // namespace swathbook::wasm
