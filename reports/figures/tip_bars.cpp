#include "reports/figures/tip_bars.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace swathbook::reports {
namespace {

constexpr double full_width = 504.0;
constexpr double plot_left = 38.0;
constexpr double plot_right = 414.0;
constexpr double plot_top = 26.0;
constexpr double plot_bottom = 150.0;
constexpr double full_height = 200.0;
constexpr double tick_step = 0.05;
constexpr double farthest = 0.30;  ///< beyond this a bar is broken off

/// The deviations that the picture reaches, in whole ticks.
struct Reach {
    double low = -tick_step;
    double high = tick_step;

    [[nodiscard]] double y(double off) const {
        const double kept = std::clamp(off, low, high);
        return plot_top + (high - kept) / (high - low) * (plot_bottom - plot_top);
    }
};

Reach reach_of(const TipBarsPicture& picture) {
    double low = 0.0;
    double high = 0.0;
    const auto take = [&](double off) {
        const double kept = std::clamp(off, -farthest, farthest);
        low = std::min(low, kept);
        high = std::max(high, kept);
    };
    for (const TipBar& bar : picture.bars) {
        take(bar.off);
    }
    for (const LimitLine& limit : picture.limits) {
        take(limit.off);
    }
    return {std::floor(low / tick_step - 0.2) * tick_step,
            std::ceil(high / tick_step + 0.2) * tick_step};
}

std::string percent_text(double off) {
    const int percent = static_cast<int>(std::lround(off * 100));
    return percent == 0 ? "0" : fmt::format("{:+d} %", percent);
}

void add_grid(Drawing& drawing, const Reach& reach) {
    const int first = static_cast<int>(std::lround(reach.low / tick_step));
    const int last = static_cast<int>(std::lround(reach.high / tick_step));
    const int stride = last - first > 8 ? 2 : 1;
    for (int tick = first; tick <= last; ++tick) {
        if (tick % stride != 0) {
            continue;
        }
        const double y = reach.y(tick * tick_step);
        drawing.shapes.push_back(Line{plot_left - 3, y, plot_left, y, Stroke::thin});
        drawing.shapes.push_back(
            Label{plot_left - 6, y, percent_text(tick * tick_step), Anchor::right, 7.5});
    }
    drawing.shapes.push_back(Line{plot_left, plot_top, plot_left, plot_bottom, Stroke::thin});
}

Fill fill_of(BarPattern pattern) {
    switch (pattern) {
        case BarPattern::within:
        case BarPattern::at_limit: return Fill::light;
        case BarPattern::over: return Fill::hatch_right;
        case BarPattern::under: return Fill::hatch_left;
        case BarPattern::other_size: return Fill::crossed;
    }
    return Fill::light;
}

void add_bar(Drawing& drawing, const TipBar& bar, const Reach& reach, double middle, double width) {
    const double zero = reach.y(0.0);
    const double end = reach.y(bar.off);
    const double top = std::min(zero, end);
    const double height = std::max(std::abs(zero - end), 0.6);
    const Stroke outline = bar.pattern == BarPattern::at_limit ? Stroke::heavy : Stroke::normal;
    drawing.shapes.push_back(
        Box{middle - width / 2, top, width, height, fill_of(bar.pattern), outline});
    if (bar.off < reach.low || bar.off > reach.high) {  // a white gap: the bar goes on beyond
        const double cut = bar.off > 0 ? top + 8 : top + height - 12;
        drawing.shapes.push_back(Label{middle, cut + 2, "\u2248", Anchor::middle, 12, true, true});
    }
    const double label_y = bar.off >= 0 ? top - 7 : top + height + 7;
    drawing.shapes.push_back(Label{middle, label_y, bar.off_text, Anchor::middle, 7.5,
                                   bar.pattern != BarPattern::within, true});
    drawing.shapes.push_back(Label{middle, plot_bottom + 20, bar.name, Anchor::middle, 11, true});
    drawing.shapes.push_back(Label{middle, plot_bottom + 33, bar.flow_text, Anchor::middle, 7.5});
    drawing.shapes.push_back(Label{middle, plot_bottom + 43, bar.word, Anchor::middle, 7.5, true});
}

void add_limits(Drawing& drawing, const TipBarsPicture& picture, const Reach& reach) {
    std::vector<LimitLine> limits = picture.limits;
    limits.push_back({0.0, picture.reference});
    std::stable_sort(limits.begin(), limits.end(),
                     [](const LimitLine& a, const LimitLine& b) { return a.off > b.off; });
    double lowest_label = 0.0;
    for (const LimitLine& limit : limits) {
        const double y = reach.y(limit.off);
        const bool is_reference = limit.off == 0.0;
        drawing.shapes.push_back(
            Line{plot_left, y, plot_right, y, is_reference ? Stroke::normal : Stroke::dashed});
        const double label_y = std::max(y, lowest_label + 10);  // labels step aside, lines do not
        if (label_y > y + 0.5) {
            drawing.shapes.push_back(Line{plot_right, y, plot_right + 3, label_y, Stroke::thin});
        }
        drawing.shapes.push_back(
            Label{plot_right + 4, label_y, limit.text, Anchor::left, 7.5, !is_reference});
        lowest_label = label_y;
    }
}

}  // namespace

Drawing tip_bars(const TipBarsPicture& picture) {
    Drawing drawing{full_width, full_height, {}};
    const std::size_t count = std::min(picture.bars.size(), tips_in_a_picture);
    const Reach reach = reach_of(picture);
    add_grid(drawing, reach);
    add_limits(drawing, picture, reach);
    const double step =
        (plot_right - plot_left) / static_cast<double>(std::max<std::size_t>(count, 1));
    const double width = std::min(step * 0.6, 26.0);
    for (std::size_t i = 0; i < count; ++i) {
        add_bar(drawing, picture.bars[i], reach, plot_left + step * (static_cast<double>(i) + 0.5),
                width);
    }
    return drawing;
}

}  // namespace swathbook::reports
