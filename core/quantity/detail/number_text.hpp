#pragma once

#include "core/quantity/detail/cursor.hpp"
#include "core/quantity/detail/fault.hpp"

namespace swathbook::detail {

struct Number {
    double value = 0.0;
    /// Half the last digit typed; of a fraction, half of one part ("2 2/3" -> 1/6).
    double half_step = 0.0;
};

enum class NumberPlace : unsigned char {
    amount,
    after_per,  ///< "per 1,000 sq ft": nobody writes a divisor of one to three decimals
};

/// True when a number can begin here.
[[nodiscard]] bool at_number(const Cursor& cursor);

/// Reads an unsigned number: decimal point or comma, unmistakable thousands marks, exponent,
/// fraction, whole number and fraction, Unicode fractions.
///
/// @accuracy correctly rounded up to 15 digits and |exponent| <= 22; within two units in the last
///           place up to 19 digits, the most that is read
/// @return false with a fault
[[nodiscard]] bool read_number(Cursor& cursor, NumberPlace place, Number& number, Fault& fault);

/// Reads "1:30", "0:31.5" or "1:02:03" as seconds, the last part finest.
/// @return false with a fault; `is_clock` false and the cursor unmoved when no colon follows digits
[[nodiscard]] bool read_clock(Cursor& cursor, bool& is_clock, Number& seconds, Fault& fault);

}  // namespace swathbook::detail
