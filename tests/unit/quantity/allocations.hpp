#pragma once

#include <cstddef>

namespace swathbook {

/// How often this program has asked for memory.
std::size_t allocations_so_far();

}  // namespace swathbook
