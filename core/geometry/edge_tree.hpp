#pragma once

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <vector>

#include "core/geometry/grid_ring.hpp"

namespace swathbook::geometry {

/// Boxes round runs of edges, two runs to a box above them: edges that follow each other lie near
/// each other, so the order of the ring is already a good order for a search tree.
class EdgeTree {
public:
    explicit EdgeTree(const GridRing& ring);

    /// Calls visit(edge of this ring, edge of the other ring) for every pair whose boxes touch,
    /// until it returns false.
    /// @return false when a visit returned false
    template <class Visit>
    bool pairs_with(const EdgeTree& other, Visit&& visit) const {
        return size_ == 0 || other.size_ == 0 || join(0, other, 0, visit);
    }
    /// The same for pairs of different edges of this one ring, each pair once, lower edge first.
    template <class Visit>
    bool pairs_within(Visit&& visit) const {
        return size_ == 0 || join_self(0, visit);
    }

private:
    struct Box {
        std::int64_t west, south, east, north;
        std::size_t first, count;  // the run of edges below
        std::size_t left, right;   // boxes below; left == 0 for a leaf
    };
    std::size_t build(const GridRing& ring, std::size_t first, std::size_t count);
    [[nodiscard]] static bool touch(const Box& a, const Box& b) {
        return a.west <= b.east && b.west <= a.east && a.south <= b.north && b.south <= a.north;
    }

    template <class Visit>
    bool join(std::size_t mine, const EdgeTree& other, std::size_t theirs, Visit& visit) const {
        const Box& a = boxes_[mine];
        const Box& b = other.boxes_[theirs];
        if (!touch(a, b)) {
            return true;
        }
        if (a.left == 0 && b.left == 0) {
            return visit(a.first, b.first);
        }
        if (b.left == 0 || (a.left != 0 && a.count >= b.count)) {
            return join(a.left, other, theirs, visit) && join(a.right, other, theirs, visit);
        }
        return join(mine, other, b.left, visit) && join(mine, other, b.right, visit);
    }
    template <class Visit>
    bool join_self(std::size_t index, Visit& visit) const {
        const Box& box = boxes_[index];
        return box.left == 0 || (join_self(box.left, visit) && join_self(box.right, visit) &&
                                 join(box.left, *this, box.right, visit));
    }

    std::vector<Box> boxes_{};
    std::size_t size_ = 0;
};

}  // namespace swathbook::geometry
