#include "core/base/sort.hpp"

#include <algorithm>
#include <cstdint>
#include <numeric>
#include <vector>

namespace swathbook::detail {

void sort(std::size_t count, const SortCalls& calls) {
    std::vector<std::uint32_t> from(count);  // from[i]: where the item for place i stands
    std::iota(from.begin(), from.end(), 0U);
    std::sort(from.begin(), from.end(), [&calls](std::uint32_t a, std::uint32_t b) {
        if (calls.comes_before(calls.context, a, b)) {
            return true;
        }
        return a < b && !calls.comes_before(calls.context, b, a);
    });
    for (std::uint32_t first = 0; first < count; ++first) {
        // Round one cycle of places: the first item is carried until its own place comes.
        std::uint32_t place = first;
        while (from[place] != first) {
            const std::uint32_t next = from[place];
            calls.swap(calls.context, place, next);
            from[place] = place;
            place = next;
        }
        from[place] = place;
    }
}

}  // namespace swathbook::detail
