#pragma once

#include <string>

#include "reports/drawing.hpp"

namespace swathbook::reports::html {

/// A drawing as one <svg> element of its own size in points, looks in attributes.
///
/// @param number different for each figure of a page: its patterns are named by it
/// @param name   what the figure shows, for who cannot see it
[[nodiscard]] std::string svg_of(const Drawing& drawing, int number, const std::string& name);

}  // namespace swathbook::reports::html
