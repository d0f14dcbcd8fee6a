#pragma once

#include <cstddef>
#include <functional>
#include <utility>

namespace swathbook {

namespace detail {
/// What sorting asks of a list it does not know the type of.
struct SortCalls {
    void* context;
    bool (*comes_before)(void* context, std::size_t a, std::size_t b);
    void (*swap)(void* context, std::size_t a, std::size_t b);
};
void sort(std::size_t count, const SortCalls& calls);
}  // namespace detail

/// Sorts a list; what is equal keeps its order, so that every machine gives the same list.
///
/// One sorting routine serves all types: std::sort writes two thousand bytes for each of them, and
/// the WebAssembly module holds thirty.
///
/// @param less as std::sort takes it
template <class List, class Less = std::less<>>
void sort_list(List& list, Less less = {}) {
    struct Context {
        List& list;
        Less& less;
    } context{list, less};
    detail::sort(list.size(), {&context,
                               [](void* at, std::size_t a, std::size_t b) {
                                   const auto& c = *static_cast<Context*>(at);
                                   return bool(c.less(c.list[a], c.list[b]));
                               },
                               [](void* at, std::size_t a, std::size_t b) {
                                   const auto& c = *static_cast<Context*>(at);
                                   std::swap(c.list[a], c.list[b]);
                               }});
}

}  // namespace swathbook
