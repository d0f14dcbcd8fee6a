#include <algorithm>
#include <array>
#include <cstddef>
#include <numeric>
#include <optional>
#include <set>
#include <vector>

#include "core/geometry/ring_check.hpp"

#include "core/base/sort.hpp"

namespace swathbook::geometry {
namespace {

/// A line moves over the ring from west to east (points of one longitude from south to north) and
/// keeps the edges it stands on in their order from south to north. Two edges that meet are next to
/// each other in that order before the line reaches their meeting, so testing new neighbours finds
/// the first meeting, and until then the order is exact.
class Sweep {
public:
    explicit Sweep(const GridRing& ring) : ring_(ring), low_(ring.size()), high_(ring.size()) {
        for (std::size_t edge = 0; edge < ring.size(); ++edge) {
            low_[edge] = std::min(ring.start(edge), ring.end(edge));
            high_[edge] = std::max(ring.start(edge), ring.end(edge));
        }
    }

    std::optional<SelfMeeting> run() {
        std::vector<std::size_t> order(ring_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        sort_list(order, [&](std::size_t u, std::size_t v) {
            return ring_.points[u] != ring_.points[v] ? ring_.points[u] < ring_.points[v] : u < v;
        });
        Line line{South{this}};
        std::vector<Line::iterator> places(ring_.size(), line.end());
        for (std::size_t i = 0; i < order.size(); ++i) {
            const bool twice = i > 0 && ring_.points[order[i - 1]] == ring_.points[order[i]];
            if (twice && test(order[i - 1], order[i])) {
                return found_;
            }
            if (pass_point(order[i], line, places)) {
                return found_;
            }
        }
        return std::nullopt;
    }

private:
    /// Orders two edges that the line stands on. The one that starts later tells by which side of
    /// the other its start, or else its end, lies on.
    struct South {
        const Sweep* sweep;
        bool operator()(std::size_t a, std::size_t b) const {
            if (a == b) {
                return false;
            }
            const bool b_is_later =
                sweep->low_[a] < sweep->low_[b] || (sweep->low_[a] == sweep->low_[b] && a < b);
            return b_is_later ? sweep->rises(a, b) > 0 : sweep->rises(b, a) < 0;
        }
    };
    using Line = std::set<std::size_t, South>;

    /// +1 when `later` lies north of `earlier`, -1 when south; edges on one line by their number.
    [[nodiscard]] int rises(std::size_t earlier, std::size_t later) const {
        const int start = turn(low_[earlier], high_[earlier], low_[later]);
        if (start != 0) {
            return start;
        }
        const int end = turn(low_[earlier], high_[earlier], high_[later]);
        return end != 0 ? end : (earlier < later ? 1 : -1);
    }

    [[nodiscard]] bool are_neighbours(std::size_t a, std::size_t b) const {
        return b == a + 1 || (a == 0 && b + 1 == ring_.size());
    }

    bool test(std::size_t a, std::size_t b) {
        const auto [first, second] = std::minmax(a, b);
        if (are_neighbours(first, second)) {
            return false;
        }
        const Meeting meeting = meeting_of(low_[first], high_[first], low_[second], high_[second]);
        if (meeting == Meeting::none) {
            return false;
        }
        found_ = {meeting, first, second,
                  meeting_point(low_[first], high_[first], low_[second], high_[second])};
        return true;
    }

    bool take_off(std::size_t edge, Line& line, std::vector<Line::iterator>& places) {
        const auto after = line.erase(places[edge]);
        return after != line.begin() && after != line.end() && test(*std::prev(after), *after);
    }

    bool put_on(std::size_t edge, Line& line, std::vector<Line::iterator>& places) {
        const auto place = line.insert(edge).first;
        places[edge] = place;
        const auto after = std::next(place);
        return (place != line.begin() && test(*std::prev(place), edge)) ||
               (after != line.end() && test(edge, *after));
    }

    /// Both edges of a point: first those that end there, then those that start.
    bool pass_point(std::size_t point, Line& line, std::vector<Line::iterator>& places) {
        const std::array<std::size_t, 2> edges{point == 0 ? ring_.size() - 1 : point - 1, point};
        for (const std::size_t edge : edges) {
            if (high_[edge] == ring_.points[point] && take_off(edge, line, places)) {
                return true;
            }
        }
        for (const std::size_t edge : edges) {
            if (low_[edge] == ring_.points[point] && put_on(edge, line, places)) {
                return true;
            }
        }
        return false;
    }

    const GridRing& ring_;
    std::vector<GridPoint> low_;
    std::vector<GridPoint> high_;
    SelfMeeting found_{};
};

}  // namespace

std::optional<SelfMeeting> first_self_meeting(const GridRing& ring) {
    return ring.size() < 3 ? std::nullopt : Sweep(ring).run();
}

}  // namespace swathbook::geometry
