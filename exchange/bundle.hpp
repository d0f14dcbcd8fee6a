#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "store/notebook_store.hpp"

/// A bundle carries a notebook from one device to another as one file: a zip with
///   entries.txt      the entries as travelling text (core/notebook/entry_text.hpp)
///   blobs/DIGEST     each attachment under its digest
///   manifest.json    {"form":"swathbook bundle 1", ..., "parts":[{"name","digest","size"}]}
/// Taking the same bundle in twice changes nothing. docs/methods/notebook.md shows how to check one
/// with standard tools.
namespace swathbook::exchange {

struct BundleReport {
    store::MergeReport entries;
    std::size_t blobs = 0;  ///< attachments in the bundle; those kept already count as well
};

/// True when the bytes begin as a zip does.
[[nodiscard]] bool looks_like_bundle(std::string_view bytes);

/// Everything a notebook holds, as the bytes of a bundle.
///
/// @param made_at RFC 3339, for the manifest; never taken from a clock here
/// @errors those of the store; internal when the zip cannot be made
[[nodiscard]] Result<std::string> make_bundle(store::NotebookStore& notebook,
                                              std::string_view made_at);

/// Takes a bundle in. Every part is checked against its digest before the first is kept, so a
/// damaged bundle changes nothing.
///
/// @errors invalid_input{bundle} when it is another kind of file; corrupt_data{bundle} naming the
///         part that is damaged or missing; unsupported{bundle} when a newer version made it;
///         out_of_range{bundle} when a part is larger than the store takes; those of the store
[[nodiscard]] Result<BundleReport> take_bundle(store::NotebookStore& notebook,
                                               std::string_view bytes);

}  // namespace swathbook::exchange
