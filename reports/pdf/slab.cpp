#include "reports/pdf/slab.hpp"

#include <algorithm>

namespace swathbook::reports::pdf {
namespace {

constexpr double line_to_write_on_height = 22.0;

double words_left(const Stack& stack) {
    return stack.tick_box || stack.sign ? tick_indent : 0.0;
}

double words_width(const Stack& stack) {
    return stack.width - words_left(stack);
}

double height_of(const Stack& stack, const Typesetter& typesetter) {
    double height = stack.line_to_write_on ? line_to_write_on_height : 0.0;
    for (const Run& run : stack.runs) {
        if (!run.text.empty()) {
            height += typesetter.height_of(run.text, run.type, words_width(stack));
        }
    }
    return std::max(height, stack.tick_box || stack.sign ? tick_size : 0.0);
}

/// The runs of a stack dealt out over as many strips as their height needs.
std::vector<std::vector<Run>> strips_of(const Stack& stack, const Typesetter& typesetter,
                                        double tallest) {
    std::vector<std::vector<Run>> strips(1);
    double filled = 0.0;
    for (const Run& run : stack.runs) {
        for (std::string& piece :
             typesetter.pieces(run.text, run.type, words_width(stack), tallest)) {
            const double height = typesetter.height_of(piece, run.type, words_width(stack));
            if (filled > 0.0 && filled + height > tallest) {
                strips.emplace_back();
                filled = 0.0;
            }
            filled += height;
            strips.back().push_back(Run{std::move(piece), run.type});
        }
    }
    return strips;
}

void draw_stack(Painter& painter, const Stack& stack, double x, double y) {
    double top = y;
    if (stack.tick_box) {
        const double first_line =
            stack.runs.empty() ? tick_size : stack.runs.front().type.size * 1.21;
        painter.tick_box(x + stack.x, y + std::max(0.0, (first_line - tick_size) / 2));
    }
    if (stack.sign) {
        painter.severity_sign(stack.severity, x + stack.x, y, tick_size + 2.5);
    }
    if (stack.tag != nullptr) {
        painter.begin(stack.tag);
    }
    for (const Run& run : stack.runs) {
        top += painter.words(run.text, run.type, x + stack.x + words_left(stack), top,
                             words_width(stack));
    }
    if (stack.tag != nullptr) {
        painter.end(stack.tag);
    }
    if (stack.line_to_write_on) {
        const double line_y = top + line_to_write_on_height - 3;
        painter.line(x + stack.x, line_y, x + stack.x + stack.width, line_y, Stroke::thin);
    }
}

void draw_row(Painter& painter, const Row& row, double height, double x, double y) {
    if (row.shaded) {
        painter.box(Box{x, y, row.width, height, Fill::light, Stroke::none});
    }
    for (const Stack& stack : row.stacks) {
        draw_stack(painter, stack, x, y + row.space_above);
    }
    if (row.rule_above != Stroke::none) {
        painter.line(x, y, x + row.width, y, row.rule_above);
    }
    if (row.rule_below != Stroke::none) {
        painter.line(x, y + height, x + row.width, y + height, row.rule_below);
    }
    for (const double rule : row.upright_rules) {
        painter.line(x + rule, y, x + rule, y + height, Stroke::thin);
    }
    if (row.frame_left) {
        painter.line(x, y, x, y + height, Stroke::normal, Ink::black);
    }
    if (row.frame_right) {
        painter.line(x + row.width, y, x + row.width, y + height, Stroke::normal, Ink::black);
    }
    if (row.frame_top) {
        painter.line(x, y, x + row.width, y, Stroke::normal, Ink::black);
    }
    if (row.frame_bottom) {
        painter.line(x, y + height, x + row.width, y + height, Stroke::normal, Ink::black);
    }
}

Slab slab_of(Row row, const Typesetter& typesetter) {
    double words_height = 0.0;
    for (const Stack& stack : row.stacks) {
        words_height = std::max(words_height, height_of(stack, typesetter));
    }
    Slab slab;
    slab.height = std::max(row.least_height, words_height + row.space_above + row.space_below);
    slab.tag = row.tag;
    slab.draw = [row = std::move(row), height = slab.height](Painter& painter, double x, double y) {
        draw_row(painter, row, height, x, y);
    };
    return slab;
}

/// Strip number `part` of a row: ticks and signs stand only in the first, closing rules only in the
/// last.
Row part_of(const Row& row, const std::vector<std::vector<std::vector<Run>>>& strips,
            std::size_t part, std::size_t parts) {
    Row cut = row;
    for (std::size_t i = 0; i < cut.stacks.size(); ++i) {
        cut.stacks[i].runs = part < strips[i].size() ? strips[i][part] : std::vector<Run>{};
        if (part > 0) {
            cut.stacks[i].sign = false;
        }
        cut.stacks[i].tick_box = cut.stacks[i].tick_box && part == 0;
        cut.stacks[i].line_to_write_on = cut.stacks[i].line_to_write_on && part + 1 == parts;
    }
    if (part > 0) {
        cut.rule_above = Stroke::none;
        cut.frame_top = false;
    }
    if (part + 1 < parts) {
        cut.rule_below = Stroke::none;
        cut.frame_bottom = false;
    }
    return cut;
}

}  // namespace

std::vector<Slab> slabs_of(const Row& row, const Typesetter& typesetter, double tallest) {
    Slab whole = slab_of(row, typesetter);
    std::vector<Slab> slabs;
    if (whole.height <= tallest) {
        slabs.push_back(std::move(whole));
        return slabs;
    }
    const double room = tallest - row.space_above - row.space_below;
    std::vector<std::vector<std::vector<Run>>> strips;
    std::size_t parts = 1;
    for (const Stack& stack : row.stacks) {
        strips.push_back(strips_of(stack, typesetter, room));
        parts = std::max(parts, strips.back().size());
    }
    for (std::size_t part = 0; part < parts; ++part) {
        slabs.push_back(slab_of(part_of(row, strips, part, parts), typesetter));
    }
    return slabs;
}

}  // namespace swathbook::reports::pdf
