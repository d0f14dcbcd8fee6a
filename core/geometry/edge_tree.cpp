#include "core/geometry/edge_tree.hpp"

namespace swathbook::geometry {

EdgeTree::EdgeTree(const GridRing& ring) : size_(ring.size()) {
    if (size_ > 0) {
        boxes_.reserve(2 * size_);
        build(ring, 0, size_);
    }
}

std::size_t EdgeTree::build(const GridRing& ring, std::size_t first, std::size_t count) {
    const std::size_t index = boxes_.size();
    boxes_.emplace_back();
    Box box{};
    box.first = first;
    box.count = count;
    if (count == 1) {
        const GridPoint a = ring.start(first);
        const GridPoint b = ring.end(first);
        box.west = std::min(a.east, b.east);
        box.east = std::max(a.east, b.east);
        box.south = std::min(a.north, b.north);
        box.north = std::max(a.north, b.north);
    } else {
        box.left = build(ring, first, count / 2);
        box.right = build(ring, first + count / 2, count - count / 2);
        const Box& left = boxes_[box.left];
        const Box& right = boxes_[box.right];
        box.west = std::min(left.west, right.west);
        box.east = std::max(left.east, right.east);
        box.south = std::min(left.south, right.south);
        box.north = std::max(left.north, right.north);
    }
    boxes_[index] = box;
    return index;
}

}  // namespace swathbook::geometry
