#pragma once

#include <string>
#include <string_view>

#include "reports/document.hpp"

namespace swathbook::reports::html {

/// The document as one element to put into a page: the same words and figures as its PDF. Looks
/// come from paper.css beside this file; the browser breaks the pages and numbers them.
[[nodiscard]] std::string fragment(const Document& document);

/// The same as a page of its own, with the style sheet in it.
[[nodiscard]] std::string page(const Document& document);

/// paper.css, as it stood when the program was built.
[[nodiscard]] std::string_view paper_css();

}  // namespace swathbook::reports::html
