#pragma once

#include <string>
#include <vector>

#include "reports/drawing.hpp"

namespace swathbook::reports {

/// What a bar says about its tip; each has a pattern of its own.
enum class BarPattern : std::uint8_t {
    within,      ///< pale
    at_limit,    ///< pale with a heavy outline
    over,        ///< lines rising to the right
    under,       ///< lines falling to the right
    other_size,  ///< crossed lines
};

struct TipBar {
    std::string name;       ///< number of the tip
    double off = 0.0;       ///< flow over the reference, less 1
    std::string off_text;   ///< "+10.0 %"
    std::string flow_text;  ///< "0.440"
    std::string word;       ///< "worn"; empty when nothing is wrong
    BarPattern pattern = BarPattern::within;
};

struct LimitLine {
    double off = 0.0;
    std::string text;  ///< "limit +10 %"
};

struct TipBarsPicture {
    std::vector<TipBar> bars;  ///< at most tips_in_a_picture of them
    std::vector<LimitLine> limits;
    std::string reference;  ///< what 0 stands for: "0.400 gal/min, as rated"
};

inline constexpr std::size_t tips_in_a_picture = 12;

/// Bars up and down from the reference flow, with the limits as dashed lines. Bars farther off than
/// the picture reaches end in a gap and carry their figure.
[[nodiscard]] Drawing tip_bars(const TipBarsPicture& picture);

}  // namespace swathbook::reports
