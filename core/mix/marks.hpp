#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/product.hpp"
#include "core/quantity/reading.hpp"

/// Measuring an exact amount with the jugs, cups, syringes and scales that are really there.
namespace swathbook::mix {

/// A user's own measure. Give its marks one by one, or its finest step and what it holds. A cup
/// marked in weight is only true for the product it came with.
struct MeasuringTool {
    std::string name{};
    std::string only_for{};  ///< product name; empty for a tool good for any product of its sort
    std::vector<Reading<Kind::volume>> marks{};
    std::optional<Reading<Kind::volume>> step{};   ///< distance between evenly spaced marks
    std::optional<Reading<Kind::volume>> holds{};  ///< the top mark of evenly spaced marks
    std::vector<Reading<Kind::mass>> weight_marks{};
    std::optional<Reading<Kind::mass>> weight_step{};   ///< a scale: its finest division
    std::optional<Reading<Kind::mass>> weight_holds{};  ///< a scale: the most it weighs at once
};

/// One way to measure an amount with one tool.
struct MarkChoice {
    std::string tool{};
    int full_measures = 0;         ///< how many times filled to the top mark first
    std::optional<Volume> mark{};  ///< then once to this mark; absent when the tool weighs
    std::optional<Mass> weight_mark{};
    std::optional<Volume> volume{};  ///< what that comes to
    std::optional<Mass> mass{};
    Fraction error{};               ///< measured minus exact, of exact
    std::optional<Volume> batch{};  ///< the batch of mix that this measure suits exactly
    bool is_over_label = false;     ///< the product would pass a label limit if measured so
    std::string text{};             ///< "2 times 32 fl oz and once to 8 fl oz"
};

/// How to measure one amount of one product.
struct MeasureAdvice {
    std::string product{};
    int first_load = 1;                     ///< the advice holds for the loads from this one ...
    int last_load = 1;                      ///< ... to this one
    std::string exact{};                    ///< the exact amount in handy units
    std::optional<MarkChoice> best{};       ///< absent when no tool fits at all
    std::vector<MarkChoice> choices{};      ///< nearest marks below and above, tool by tool
    bool fits = false;                      ///< the best is within the wanted closeness
    std::optional<Volume> finest_volume{};  ///< marks this close together would always fit
    std::optional<Mass> finest_mass{};
};

/// What is to be measured.
struct MeasureTask {
    const ProductCard* card = nullptr;
    double measure_si = 0.0;  ///< m3 of a liquid, kg of a dry product; above 0
    Volume mix{};             ///< the fill of mix it is for
    double within = 0.05;     ///< wanted closeness, as a share
    /// Largest amount the label allows in this fill; the choice is kept at or below it.
    std::optional<double> most_si{};
    std::optional<Volume> largest_batch{};  ///< what the tank takes
};

/// @errors invalid_input (no marks at all, or marks and steps of both sorts), out_of_range (a mark
///         not above 0, more than 200 marks)
[[nodiscard]] Result<void> check_tool(const MeasuringTool& tool, std::string_view field);

/// The nearest marks below and above an amount with every tool that suits the product, and the best
/// of them.
///
/// A tool is filled to its top mark as often as that fits, then once to another mark. The best is
/// the way with the fewest fillings among those within 1 %; failing that among those within the
/// wanted closeness; failing that the nearest. A way that would pass the label's limit is shown but
/// never the best.
///
/// @accuracy exact but for the user's own reading of the mark
/// @valid    tools checked by check_tool
/// @cases    tests/cases/mix/marks.case, tests/unit/mix/marks_test.cpp
[[nodiscard]] MeasureAdvice measure_with(std::span<const MeasuringTool> tools,
                                         const MeasureTask& task, UnitSystem units);

}  // namespace swathbook::mix
