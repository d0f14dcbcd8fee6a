#include "core/calibration/straight_line.hpp"

#include <cmath>

#include "core/calibration/repeats.hpp"

namespace swathbook::calibration {

double StraightLine::error_at(double across) const {
    const double off = across - mean_across;
    return residual_deviation * std::sqrt(1.0 / count + off * off / spread_across);
}

std::optional<StraightLine> straight_line(std::span<const double> across,
                                          std::span<const double> heights) {
    if (across.size() < 2 || across.size() != heights.size()) {
        return std::nullopt;
    }
    StraightLine line;
    const Repeats places = repeats_of(across);
    const Repeats levels = repeats_of(heights);
    line.count = places.count;
    line.mean_across = places.mean;
    double together = 0.0;
    double total = 0.0;
    for (std::size_t i = 0; i < across.size(); ++i) {
        const double off = across[i] - places.mean;
        const double up = heights[i] - levels.mean;
        line.spread_across += off * off;
        together += off * up;
        total += up * up;
    }
    if (line.spread_across <= 0.0) {
        return std::nullopt;
    }
    line.slope = together / line.spread_across;
    line.intercept = levels.mean - line.slope * places.mean;
    double left = 0.0;
    for (std::size_t i = 0; i < across.size(); ++i) {
        const double residual = (heights[i] - levels.mean) - line.slope * (across[i] - places.mean);
        left += residual * residual;
    }
    line.explained = total > 0.0 ? 1.0 - left / total : 1.0;
    if (line.count > 2) {
        line.residual_deviation = std::sqrt(left / (line.count - 2));
        line.slope_error = line.residual_deviation / std::sqrt(line.spread_across);
        line.intercept_error = line.error_at(0.0);
    }
    return line;
}

std::optional<Crossing> crossing_of(const StraightLine& line, double height, double factor) {
    // (a + b u - h)^2 = f^2 s^2 (1/n + u^2/S), with u counted from the mean place.
    const double steep = line.slope;
    const double gap = height - line.at(line.mean_across);
    const double noise = factor * line.residual_deviation;
    const double lead = steep * steep - noise * noise / line.spread_across;
    if (steep == 0.0 || lead <= 0.0) {
        return std::nullopt;
    }
    const double half = steep * gap;
    const double rest = gap * gap - noise * noise / line.count;
    const double inside = half * half - lead * rest;
    const double root = std::sqrt(inside > 0.0 ? inside : 0.0);
    Crossing crossing;
    crossing.across = line.mean_across + gap / steep;
    crossing.low = line.mean_across + (half - root) / lead;
    crossing.high = line.mean_across + (half + root) / lead;
    return crossing;
}

}  // namespace swathbook::calibration
