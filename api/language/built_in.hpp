#pragma once

#include <string_view>

namespace swathbook::api {

/// The text of data/language/es.tsv as it was when this program was built; empty in the WebAssembly
/// module, which would be twice its size with it.
[[nodiscard]] std::string_view built_in_spanish();

/// The text of data/language/labels.es.tsv, likewise.
[[nodiscard]] std::string_view built_in_spanish_labels();

}  // namespace swathbook::api
