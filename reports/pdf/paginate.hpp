#pragma once

#include <vector>

#include "reports/pdf/slab.hpp"

namespace swathbook::reports::pdf {

struct PlacedSlab {
    const Slab* slab = nullptr;
    double y = 0.0;  ///< from the top of the text area
};

struct PlacedPage {
    std::vector<PlacedSlab> slabs;
    bool continues = false;  ///< a further page of the same sheet
};

/// Stacks slabs on pages: what must keep with the next does so where a page can hold both, gaps at
/// a page's top vanish, and a table's head stands again over its further rows.
///
/// @param slabs       stay alive as long as the pages are used
/// @param page_height room for slabs on the first page
/// @param later_height room on further pages, whose head line takes some
[[nodiscard]] std::vector<PlacedPage> paginate(const std::vector<Slab>& slabs, double page_height,
                                               double later_height);

}  // namespace swathbook::reports::pdf
