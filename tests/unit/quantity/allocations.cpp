// Replaces the global operators to count them; alone in its file, so that no pair of them is
// inlined next to a malloc of another kind.
#include "tests/unit/quantity/allocations.hpp"

#include <cstdlib>
#include <new>

namespace {
std::size_t allocations = 0;
}

void* operator new(std::size_t bytes) {
    ++allocations;
    void* const memory = std::malloc(bytes == 0 ? 1 : bytes);
    if (memory == nullptr) {
        std::abort();
    }
    return memory;
}

void operator delete(void* memory) noexcept {
    std::free(memory);
}

void operator delete(void* memory, std::size_t /*bytes*/) noexcept {
    std::free(memory);
}

namespace swathbook {

std::size_t allocations_so_far() {
    return allocations;
}

}  // namespace swathbook
