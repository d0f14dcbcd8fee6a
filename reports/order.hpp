#pragma once

#include <string_view>

#include "core/base/result.hpp"
#include "reports/document.hpp"

namespace swathbook::reports {

/// What is to be printed, read from the order that `swathbook packet` and `swathbook worksheet`
/// write: one JSON object, {"sheet":"worksheet", ...} or a packet with its "parts", each a name, an
/// operation and a request. The PDF, the HTML, the server and the WebAssembly module all read it
/// here.
///
/// @errors invalid_input{language|paper|units|printed_at}; those of the operations, the field led
/// by
///         the file of the part; out_of_range{tips}
[[nodiscard]] Result<Document> document_of(std::string_view order_json);

}  // namespace swathbook::reports
