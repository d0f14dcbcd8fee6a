#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "reports/pdf/painter.hpp"

namespace swathbook::reports::pdf {

/// A strip of page as wide as the text, never split: what the paginator stacks.
struct Slab {
    double height = 0.0;
    bool keep_with_next = false;
    bool is_gap = false;              ///< dropped at the top of a page
    const char* tag = "P";            ///< structure of the tagged PDF
    const char* group_tag = nullptr;  ///< "Table" or "L" around neighbouring slabs
    int group = 0;
    std::shared_ptr<const Slab> head{};  ///< repeated when the group goes on over the page
    std::function<void(Painter&, double x, double y)> draw{};
};

/// Words one under the other in a column of a row.
struct Run {
    std::string text;
    Type type;
};

struct Stack {
    double x = 0.0;
    double width = 0.0;
    std::vector<Run> runs;
    const char* tag = nullptr;  ///< "TD", "TH"
    bool tick_box = false;      ///< to the left of the first run, inside the stack
    bool line_to_write_on = false;
    bool sign = false;  ///< the severity sign, to the left like a tick box
    Severity severity = Severity::note;
};

/// One row of stacks side by side.
struct Row {
    std::vector<Stack> stacks;
    double space_above = cell_padding;
    double space_below = cell_padding;
    double least_height = 0.0;
    Stroke rule_below = Stroke::none;
    Stroke rule_above = Stroke::none;
    bool shaded = false;
    bool frame_left = false, frame_right = false, frame_top = false, frame_bottom = false;
    double width = 0.0;
    std::vector<double> upright_rules;  ///< thin lines at these places, from top to bottom
    const char* tag = "P";
};

inline constexpr double tick_indent = 17.0;

/// Slabs for a row: one, or several when its words are taller than a page allows.
[[nodiscard]] std::vector<Slab> slabs_of(const Row& row, const Typesetter& typesetter,
                                         double tallest);

}  // namespace swathbook::reports::pdf
