#pragma once

#include <vector>

#include "reports/pdf/slab.hpp"

namespace swathbook::reports::pdf {

/// Where blocks are set: the typeface, the width there is, and how tall one slab may be at most.
struct Room {
    const Typesetter& typesetter;
    double width = 0.0;
    double tallest = 0.0;
    int next_group = 1;
};

/// The strips a block is made of, in order.
[[nodiscard]] std::vector<Slab> slabs_of(const Block& block, Room& room);
/// The head of a sheet's first page.
[[nodiscard]] std::vector<Slab> title_slabs(const Sheet& sheet, Room& room);

}  // namespace swathbook::reports::pdf
