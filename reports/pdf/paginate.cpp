#include "reports/pdf/paginate.hpp"

namespace swathbook::reports::pdf {
namespace {

constexpr double rounding = 1e-6;

/// How many slabs from `first` on must stay together, and how tall they are.
struct Chain {
    std::size_t count = 0;
    double height = 0.0;
};

Chain chain_from(const std::vector<Slab>& slabs, std::size_t first) {
    Chain chain;
    for (std::size_t i = first; i < slabs.size(); ++i) {
        chain.height += slabs[i].height;
        ++chain.count;
        if (!slabs[i].keep_with_next) {
            break;
        }
    }
    return chain;
}

class Stacker {
public:
    Stacker(double first_height, double later_height)
        : height_(first_height), later_height_(later_height), pages_(1) {}

    void place_chain(const std::vector<Slab>& slabs, std::size_t first, const Chain& chain) {
        const bool fits_a_page = chain.height <= later_height_ + rounding;
        if (fits_a_page && y_ > 0.0 && y_ + chain.height > height_ + rounding) {
            turn();
        }
        for (std::size_t i = first; i < first + chain.count; ++i) {
            place(slabs[i]);
        }
    }
    [[nodiscard]] std::vector<PlacedPage> take() { return std::move(pages_); }

private:
    void turn() {
        pages_.emplace_back();
        pages_.back().continues = true;
        height_ = later_height_;
        y_ = 0.0;
    }
    void put(const Slab& slab) {
        pages_.back().slabs.push_back({&slab, y_});
        y_ += slab.height;
    }
    void place(const Slab& slab) {
        if (slab.is_gap && (y_ == 0.0 || y_ + slab.height > height_)) {
            return;
        }
        if (y_ > 0.0 && y_ + slab.height > height_ + rounding) {
            turn();
        }
        const bool head_is_missing = y_ == 0.0 && slab.head != nullptr;
        if (head_is_missing) {
            put(*slab.head);
        }
        put(slab);
    }

    double height_;
    double later_height_;
    double y_ = 0.0;
    std::vector<PlacedPage> pages_;
};

}  // namespace

std::vector<PlacedPage> paginate(const std::vector<Slab>& slabs, double page_height,
                                 double later_height) {
    Stacker stacker(page_height, later_height);
    for (std::size_t i = 0; i < slabs.size();) {
        const Chain chain = chain_from(slabs, i);
        stacker.place_chain(slabs, i, chain);
        i += chain.count;
    }
    return stacker.take();
}

}  // namespace swathbook::reports::pdf
