#pragma once

#include <optional>

#include "core/quantity/detail/cursor.hpp"
#include "core/quantity/detail/fault.hpp"
#include "core/quantity/detail/number_text.hpp"

namespace swathbook::detail {

enum class PercentOf : unsigned char { unsaid, volume, weight };

/// What a unit text came to.
struct UnitMeaning {
    Dimension dimension = Dimension::ratio;
    double si = 1.0;    ///< SI units in one
    double zero = 0.0;  ///< zero point in SI (temperatures)
    Substance substance = Substance::any;
    PercentOf percent = PercentOf::unsaid;
    bool is_change = false;  ///< "delta degF"
    bool is_grains = false;  ///< grains count hardness, in a volume of water

    Dimension top = Dimension::ratio;  ///< what stands before "per"
    double top_si = 1.0;
    bool has_bottom = false;
    double bottom_si = 1.0;
    Dimension bottom = Dimension::ratio;
};

/// What ended a unit text.
enum class Stop : unsigned char {
    end,
    per,
    per_each,  ///< "mL each": per, without the word
    join,      ///< "+", "and"
    number,    ///< a number: "6 ft 2 in"
};

/// Reads one unit, up to the end of the text, a joining word or the number of the next term.
/// @param summed_with dimension of the term before, which tells what a bare ounce is
/// @return false with a fault
[[nodiscard]] bool read_unit(Cursor& cursor, std::optional<Dimension> summed_with,
                             UnitMeaning& meaning, Stop& stop, Fault& fault);

}  // namespace swathbook::detail
