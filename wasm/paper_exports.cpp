#include <string_view>

#include "api/call.hpp"
#include "reports/html/render.hpp"
#include "reports/order.hpp"
#include "wasm/surface.hpp"

/// The sheets of an order (reports/order.hpp) as one HTML element, or an error.
SWATHBOOK_EXPORT(swathbook_sheets) int swathbook_sheets(const char* order, std::size_t bytes) {
    auto document = swathbook::reports::document_of(std::string_view(order, bytes));
    return document ? swathbook::wasm::leave(swathbook::reports::html::fragment(*document), true)
                    : swathbook::wasm::leave(swathbook::api::error_json(document.error()), false);
}
