#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "core/base/error.hpp"
#include "core/quantity/kind.hpp"

namespace swathbook::detail {

/// What can be wrong with a piece of quantity text. Kept as a number until it is certain that the
/// text is refused: building the sentence costs more than reading the text.
enum class Problem : std::uint8_t {
    none,
    empty,
    too_long,
    no_number,
    not_a_number,  ///< NaN or infinite, from a program
    negative,
    below_absolute_zero,
    number_too_long,
    number_out_of_range,
    comma_or_thousands,
    digit_groups,  ///< marks between digits that form no number
    zero_denominator,
    bad_fraction,
    run_together,  ///< "11/2": eleven halves, or 1-1/2 that lost its gap
    range,
    two_numbers,
    no_unit,
    number_in_unit,
    unknown_word,
    unknown_sign,
    ambiguous_word,
    ambiguous_ounce,
    ambiguous_ton,
    ambiguous_are,
    ambiguous_case,
    ambiguous_percent,
    mixed_percent,
    two_units,
    contradictory,
    modifier_misplaced,
    modifier_alone,
    nothing_per,
    per_nothing,
    two_pers,
    no_such_quotient,
    sum_of_kinds,
    sum_order,
    sum_bases,
    sum_not_allowed,
    clock_not_duration,
    bad_clock,
    offset_unit,
    wrong_dimension,
    substance_missing,
    substance_wrong,
    percent_wrong,
    grains_of_mineral,
    temperature_scale,
    basis_missing,
    basis_not_supported,
};

/// A problem and the words it is about.
struct Fault {
    Problem problem = Problem::none;
    std::string_view where{};  ///< part of the text, or a spelling
    std::string_view other{};  ///< second part, or the choices
};

/// The sentence for people. `kind` is null when any label rate would have done.
[[nodiscard]] Error error_of(const Fault& fault, std::string_view text, const Kind* kind);

/// What a dimension is called in a sentence: "a volume", "a volume per area".
[[nodiscard]] std::string_view phrase_of(Dimension dimension);

/// A piece of typed text in quotes, cut to 60 bytes, with bytes that cannot be shown made "?".
[[nodiscard]] std::string in_quotes(std::string_view text);

}  // namespace swathbook::detail
