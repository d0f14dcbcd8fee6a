#pragma once

#include <string>

#include "core/base/result.hpp"
#include "reports/document.hpp"

namespace swathbook::reports::pdf {

/// Lays a document out on paper and returns the bytes of a tagged PDF with its fonts inside.
/// The same document gives the same bytes (on one machine with the same fonts).
///
/// @errors invalid_input when the document has no sheets; unavailable when no wanted font is
///         installed; internal when Cairo reports a fault
[[nodiscard]] Result<std::string> render(const Document& document);

}  // namespace swathbook::reports::pdf
