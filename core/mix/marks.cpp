#include "core/mix/marks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/sort.hpp"
#include "core/mix/rates.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::mix {
namespace {

constexpr std::size_t most_marks = 200;
constexpr double close_enough = 0.01;      // fewer fillings count for more than the last percent
constexpr double rounding_room = 1e-9;     // an amount that is a mark but for its last bits
constexpr double most_fillings = 10000.0;  // beyond this a tool is of no use

/// A tool reduced to one sort of mark, in SI.
struct Scale {
    std::vector<double> marks;  ///< rising; empty when evenly spaced
    double step = 0.0;
    double top = 0.0;  ///< infinite for a scale without a stated end
};

template <Kind K>
Scale scale_of(const std::vector<Reading<K>>& marks, const std::optional<Reading<K>>& step,
               const std::optional<Reading<K>>& holds) {
    Scale scale;
    for (const auto& mark : marks) {
        scale.marks.push_back(mark.value.si());
    }
    sort_list(scale.marks);
    if (!scale.marks.empty()) {
        scale.top = scale.marks.back();
    } else if (step) {
        scale.step = step->value.si();
        scale.top = holds ? holds->value.si() : std::numeric_limits<double>::infinity();
    }
    return scale;
}

/// An amount a tool can measure: `fills` times the top mark and then `mark`.
struct Reach {
    double fills = 0.0;
    double mark = 0.0;
};

struct Nearest {
    Reach below;
    Reach above;
};

double snapped_floor(double ratio) {
    return std::floor(ratio + rounding_room);
}

Nearest nearest_in_steps(const Scale& scale, double rest, double fills) {
    const double whole = snapped_floor(rest / scale.step);
    const double below = whole * scale.step;
    const bool is_on_a_mark = rest - below <= rounding_room * rest;
    const double above = is_on_a_mark ? below : std::min((whole + 1.0) * scale.step, scale.top);
    return {{fills, below}, {fills, above}};
}

Nearest nearest_in_marks(const Scale& scale, double rest, double fills) {
    Nearest nearest{{fills, 0.0}, {fills, scale.top}};
    for (const double mark : scale.marks) {
        if (mark <= rest * (1.0 + rounding_room)) {
            nearest.below.mark = mark;
        }
        if (mark >= rest * (1.0 - rounding_room)) {
            nearest.above.mark = mark;
            break;
        }
    }
    if (rest == 0.0) {
        nearest.above.mark = 0.0;
    }
    return nearest;
}

Nearest nearest_to(const Scale& scale, double amount) {
    const bool is_endless = std::isinf(scale.top);
    const double fills = is_endless ? 0.0 : snapped_floor(amount / scale.top);
    const double rest = is_endless ? amount : std::max(0.0, amount - fills * scale.top);
    const bool is_full = rest <= rounding_room * amount;
    if (is_full) {
        return {{fills, 0.0}, {fills, 0.0}};
    }
    return scale.step > 0.0 ? nearest_in_steps(scale, rest, fills)
                            : nearest_in_marks(scale, rest, fills);
}

std::string spoken(const Reach& reach, double top, Form form, UnitSystem units) {
    const auto text = [&](double measure) { return handy_text(measure, form, units); };
    if (reach.fills == 0.0) {
        return "to " + text(reach.mark);
    }
    const std::string fills = reach.fills == 1.0
                                  ? "1 full " + text(top)
                                  : fmt::format("{} full {}", show_number(reach.fills), text(top));
    return reach.mark == 0.0 ? fills : fmt::format("{} and to {}", fills, text(reach.mark));
}

/// What every choice of one tool shares.
struct Ground {
    const MeasureTask* task = nullptr;
    const std::string* tool = nullptr;
    double top = 0.0;
    double exact = 0.0;  ///< in the tool's own sort
    bool weighs = false;
    UnitSystem units = UnitSystem::us;
};

MarkChoice choice_of(const Reach& reach, const Ground& ground) {
    const MeasureTask& task = *ground.task;
    const double measured = reach.fills * (reach.fills > 0.0 ? ground.top : 0.0) + reach.mark;
    MarkChoice choice;
    choice.tool = *ground.tool;
    choice.full_measures = static_cast<int>(reach.fills);
    if (ground.weighs) {
        choice.weight_mark = Mass::from_si(reach.mark);
        choice.mass = Mass::from_si(measured);
    } else {
        choice.mark = Volume::from_si(reach.mark);
        choice.volume = Volume::from_si(measured);
    }
    const double share = measured / ground.exact;
    choice.error = Fraction::from_si(share - 1.0);
    const Volume batch = task.mix * share;
    const bool is_possible =
        measured > 0.0 && (!task.largest_batch || batch <= *task.largest_batch * (1.0 + 1e-12));
    if (is_possible) {
        choice.batch = batch;
    }
    choice.is_over_label =
        task.most_si && task.measure_si * share > *task.most_si * (1.0 + rounding_room);
    choice.text = spoken(reach, ground.top, ground.weighs ? Form::dry : Form::liquid, ground.units);
    return choice;
}

int fillings(const MarkChoice& choice) {
    const bool has_rest = (choice.mark && choice.mark->si() > 0.0) ||
                          (choice.weight_mark && choice.weight_mark->si() > 0.0);
    return choice.full_measures + (has_rest ? 1 : 0);
}

bool is_empty(const MarkChoice& choice) {
    return fillings(choice) == 0;
}

int tier(const MarkChoice& choice, double within) {
    const double error = std::abs(choice.error.si());
    if (choice.is_over_label || is_empty(choice)) {
        return 3;
    }
    return error <= close_enough ? 0 : (error <= within * (1.0 + rounding_room) ? 1 : 2);
}

bool is_better(const MarkChoice& a, const MarkChoice& b, double within) {
    const int tier_a = tier(a, within);
    const int tier_b = tier(b, within);
    if (tier_a != tier_b) {
        return tier_a < tier_b;
    }
    const double error_a = std::abs(a.error.si());
    const double error_b = std::abs(b.error.si());
    if (tier_a < 2 && fillings(a) != fillings(b)) {
        return fillings(a) < fillings(b);
    }
    return error_a < error_b;
}

/// The amount in the tool's own sort of mark; absent when the tool does not suit the product.
std::optional<double> amount_for(const MeasureTask& task, bool weighs) {
    const bool is_liquid = task.card->form == Form::liquid;
    if (is_liquid != weighs) {
        return task.measure_si;
    }
    if (is_liquid && task.card->density) {
        return task.measure_si * task.card->density->value.si();
    }
    return std::nullopt;  // a dry product in a volume measure: only its own marked cup is true
}

template <Kind K>
Result<void> check_marks(const std::vector<Reading<K>>& marks,
                         const std::optional<Reading<K>>& step,
                         const std::optional<Reading<K>>& holds, std::string_view prefix,
                         std::string_view field) {
    const auto wrong = [&](std::string_view member, double si, const std::string& text) {
        return fail(ErrorCode::out_of_range, path_to(field, fmt::format("{}{}", prefix, member)),
                    fmt::format("A mark of {} cannot be measured to: marks are amounts above 0. "
                                "Leave it out.",
                                text.empty() ? show(si, K, UnitSystem::us) : text));
    };
    const auto good = [](double si) { return std::isfinite(si) && si > 0.0 && si < 1e6; };
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (!good(marks[i].value.si())) {
            return wrong(fmt::format("marks[{}]", i), marks[i].value.si(), marks[i].text);
        }
    }
    if (step && !good(step->value.si())) {
        return wrong("step", step->value.si(), step->text);
    }
    if (holds && (!good(holds->value.si()) || !step || holds->value < step->value)) {
        return wrong("holds", holds->value.si(), holds->text);
    }
    return {};
}

}  // namespace

Result<void> check_tool(const MeasuringTool& tool, std::string_view field) {
    const int sorts = (tool.marks.empty() ? 0 : 1) + (tool.step ? 1 : 0) +
                      (tool.weight_marks.empty() ? 0 : 1) + (tool.weight_step ? 1 : 0);
    if (sorts != 1) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("The measure \"{}\" must have one sort of marks: its marks one by "
                                "one, or its step and what it holds, in volume or in weight. It "
                                "has {}.",
                                tool.name, sorts == 0 ? "none" : "several"));
    }
    if (tool.marks.size() > most_marks || tool.weight_marks.size() > most_marks) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("The measure \"{}\" has more than {} marks. Give its step and what "
                                "it holds instead.",
                                tool.name, most_marks));
    }
    SWATHBOOK_CHECK(check_marks(tool.marks, tool.step, tool.holds, "", field));
    return check_marks(tool.weight_marks, tool.weight_step, tool.weight_holds, "weight_", field);
}

MeasureAdvice measure_with(std::span<const MeasuringTool> tools, const MeasureTask& task,
                           UnitSystem units) {
    MeasureAdvice advice;
    advice.product = task.card->name;
    advice.exact = handy_text(task.measure_si, task.card->form, units);
    const double finest = 2.0 * task.within * task.measure_si;
    if (task.card->form == Form::liquid) {
        advice.finest_volume = Volume::from_si(finest);
    } else {
        advice.finest_mass = Mass::from_si(finest);
    }
    for (const MeasuringTool& tool : tools) {
        if (!tool.only_for.empty() && tool.only_for != task.card->name) {
            continue;
        }
        const bool weighs = !tool.weight_marks.empty() || tool.weight_step.has_value();
        const auto exact = amount_for(task, weighs);
        const Scale scale = weighs
                                ? scale_of(tool.weight_marks, tool.weight_step, tool.weight_holds)
                                : scale_of(tool.marks, tool.step, tool.holds);
        if (!exact || *exact / scale.top > most_fillings) {
            continue;
        }
        const Ground ground{&task, &tool.name, scale.top, *exact, weighs, units};
        const Nearest nearest = nearest_to(scale, *exact);
        MarkChoice below = choice_of(nearest.below, ground);
        MarkChoice above = choice_of(nearest.above, ground);
        const bool is_exact = below.error == above.error;
        if (!is_empty(below)) {
            advice.choices.push_back(std::move(below));
        }
        if (!is_exact) {
            advice.choices.push_back(std::move(above));
        }
    }
    for (const MarkChoice& choice : advice.choices) {
        const bool is_usable = tier(choice, task.within) < 3;
        if (is_usable && (!advice.best || is_better(choice, *advice.best, task.within))) {
            advice.best = choice;
        }
    }
    advice.fits = advice.best && tier(*advice.best, task.within) <= 1;
    return advice;
}

}  // namespace swathbook::mix
