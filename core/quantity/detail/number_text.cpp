#include "core/quantity/detail/number_text.hpp"

#include <array>
#include <cstdint>

namespace swathbook::detail {
namespace {

constexpr int most_digits = 19;  // what an unsigned 64-bit integer holds
constexpr int largest_exact_power = 22;
constexpr std::array<double, largest_exact_power + 1> powers{
    1e0,  1e1,  1e2,  1e3,  1e4,  1e5,  1e6,  1e7,  1e8,  1e9,  1e10, 1e11,
    1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22};

bool refuse(Fault& fault, Problem problem, const char* from, const Cursor& to) {
    fault.problem = problem;
    fault.where = std::string_view(from, static_cast<std::size_t>(to.place() - from));
    return false;
}

/// number * 10^exponent, through powers of ten that a double holds exactly.
double scaled(double number, int exponent) {
    if (exponent < 0) {
        if (exponent < -largest_exact_power) {
            number /= powers[largest_exact_power];
            exponent += largest_exact_power;
        }
        return number / powers[static_cast<std::size_t>(-exponent)];
    }
    if (exponent > largest_exact_power) {
        number *= powers[largest_exact_power];
        exponent -= largest_exact_power;
    }
    return number * powers[static_cast<std::size_t>(exponent)];
}

/// Digits with points and commas among them, before it is decided what the marks mean.
struct DigitRun {
    std::uint64_t mantissa = 0;
    int significant = 0;
    int digits = 0;
    int points = 0;
    int commas = 0;
    char last_mark = 0;
    int first_group = 0;      ///< digits before the first mark
    int last_group = 0;       ///< digits behind the last mark, or all
    bool full_groups = true;  ///< every group between marks has three digits
    bool leading_zero = false;

    void add_digit(unsigned char digit) {
        significant += significant > 0 || digit != '0' ? 1 : 0;
        mantissa = mantissa * 10 + (digit - std::uint64_t{'0'});
        ++digits;
        ++last_group;
    }
    void add_mark(char mark) {
        if (last_mark == 0) {
            first_group = last_group;
        } else {
            full_groups = full_groups && last_group == 3;
        }
        (mark == '.' ? points : commas) += 1;
        last_mark = mark;
        last_group = 0;
    }
};

bool read_digits(Cursor& cursor, DigitRun& run, Fault& fault) {
    const char* const start = cursor.place();
    run.leading_zero = cursor.byte() == '0';
    for (;;) {
        const unsigned char here = cursor.byte();
        if (Cursor::is_digit(here)) {
            run.add_digit(here);
            if (run.significant > most_digits) {
                return refuse(fault, Problem::number_too_long, start, cursor);
            }
        } else if (here == '.' || here == ',') {
            const bool digit_next = Cursor::is_digit(cursor.byte(1));
            if (!digit_next && (here == ',' || run.digits == 0)) {
                return true;
            }
            run.add_mark(static_cast<char>(here));
        } else {
            return true;
        }
        cursor.advance(1);
    }
}

/// How many of the digits are decimals; decides between decimal comma and thousands marks.
bool count_decimals(const DigitRun& run, NumberPlace place, int& decimals, Problem& problem) {
    const int marks = run.points + run.commas;
    const bool could_group =
        run.first_group >= 1 && run.first_group <= 3 && !run.leading_zero && run.full_groups;
    decimals = marks == 0 ? 0 : run.last_group;
    if (marks == 0 || (marks == 1 && run.points == 1)) {
        return true;
    }
    if (marks == 1) {
        if (!could_group || run.last_group != 3) {
            return true;
        }
        if (place == NumberPlace::after_per && run.mantissa % 1000 == 0) {
            decimals = 0;
            return true;
        }
        problem = Problem::comma_or_thousands;
        return false;
    }
    problem = Problem::digit_groups;
    if (run.points == 0 || run.commas == 0) {
        decimals = 0;
        return could_group && run.last_group == 3;
    }
    return could_group && (run.last_mark == '.' ? run.points : run.commas) == 1;
}

/// Passes "e-3"; leaves anything else alone.
int read_exponent(Cursor& cursor) {
    if ((cursor.byte() | 0x20U) != 'e') {
        return 0;
    }
    const bool negative = cursor.byte(1) == '-';
    const std::size_t sign_bytes = negative || cursor.byte(1) == '+' ? 1 : 0;
    if (!Cursor::is_digit(cursor.byte(1 + sign_bytes))) {
        return 0;
    }
    cursor.advance(1 + sign_bytes);
    int exponent = 0;
    while (cursor.at_digit()) {
        exponent = exponent < 1000 ? exponent * 10 + (cursor.byte() - '0') : exponent;
        cursor.advance(1);
    }
    return negative ? -exponent : exponent;
}

struct Parts {
    int top = 0;
    int bottom = 1;
};

/// A one-character fraction such as a half; bytes 0 when none is here.
Parts one_character_fraction(const Cursor& cursor, std::size_t& bytes) {
    static constexpr std::array<Parts, 3> latin{{{1, 4}, {1, 2}, {3, 4}}};
    static constexpr std::array<Parts, 15> others{{{1, 7},
                                                   {1, 9},
                                                   {1, 10},
                                                   {1, 3},
                                                   {2, 3},
                                                   {1, 5},
                                                   {2, 5},
                                                   {3, 5},
                                                   {4, 5},
                                                   {1, 6},
                                                   {5, 6},
                                                   {1, 8},
                                                   {3, 8},
                                                   {5, 8},
                                                   {7, 8}}};
    if (cursor.byte() == 0xC2 && cursor.byte(1) >= 0xBC && cursor.byte(1) <= 0xBE) {
        bytes = 2;
        return latin[cursor.byte(1) - std::size_t{0xBC}];
    }
    if (cursor.byte() == 0xE2 && cursor.byte(1) == 0x85 && cursor.byte(2) >= 0x90 &&
        cursor.byte(2) <= 0x9E) {
        bytes = 3;
        return others[cursor.byte(2) - std::size_t{0x90}];
    }
    bytes = 0;
    return {};
}

bool read_short_integer(Cursor& cursor, int& integer) {
    if (!cursor.at_digit()) {
        return false;
    }
    integer = 0;
    while (cursor.at_digit()) {
        integer = integer < 100000 ? integer * 10 + (cursor.byte() - '0') : integer;
        cursor.advance(1);
    }
    return true;
}

/// Passes a slash with digits behind it, and those digits.
bool read_bottom(Cursor& cursor, int& bottom) {
    const char* const start = cursor.place();
    cursor.skip_space();
    if (cursor.pass(Sign::slash) || cursor.pass(Sign::fraction_slash)) {
        cursor.skip_space();
        if (read_short_integer(cursor, bottom)) {
            return true;
        }
    }
    cursor.go_to(start);
    return false;
}

constexpr int largest_bottom = 9999;

/// "11/2" and "22/3" are how 1½ and 2⅔ come out of a PDF.
bool could_be_mixed(std::uint64_t top, int bottom) {
    const auto parts = static_cast<std::uint64_t>(bottom);
    for (std::uint64_t place = 10; top >= parts && place <= top; place *= 10) {
        const std::uint64_t rest = top % place;
        if (rest >= place / 10 && rest < parts) {
            return true;
        }
    }
    return false;
}

bool check_fraction(const Parts& parts, bool beside_whole, const char* start, const Cursor& cursor,
                    Fault& fault) {
    if (parts.bottom == 0) {
        return refuse(fault, Problem::zero_denominator, start, cursor);
    }
    if (parts.bottom > largest_bottom || (beside_whole && parts.top >= parts.bottom)) {
        return refuse(fault, Problem::bad_fraction, start, cursor);
    }
    return true;
}

/// Looks behind a whole number for " 2/3", "-2/3" or a one-character fraction.
/// @return false with a fault; `found` tells whether there was a fraction
bool read_fraction_behind(Cursor& cursor, const char* start, Parts& parts, bool& found,
                          Fault& fault) {
    const char* const behind = cursor.place();
    cursor.skip_space();
    const bool joined = cursor.pass(Sign::minus);
    cursor.skip_space();
    std::size_t bytes = 0;
    parts = one_character_fraction(cursor, bytes);
    found = bytes != 0;
    if (found) {
        cursor.advance(bytes);
        return true;
    }
    if (read_short_integer(cursor, parts.top)) {
        found = read_bottom(cursor, parts.bottom);
        if (found) {
            return check_fraction(parts, true, start, cursor, fault);
        }
        if (joined) {
            return refuse(fault, Problem::range, start, cursor);
        }
        return refuse(fault, Problem::two_numbers, start, cursor);
    }
    cursor.go_to(behind);
    return true;
}

bool is_fraction_start(const Cursor& cursor) {
    std::size_t bytes = 0;
    (void)one_character_fraction(cursor, bytes);
    return bytes != 0;
}

/// True when what follows could go on with a fraction: keeps the common number on a short path.
bool may_continue(const Cursor& cursor) {
    const unsigned char here = cursor.byte();
    return here == ' ' || here == '/' || here == '-' || here >= 0x80;
}

}  // namespace

bool at_number(const Cursor& cursor) {
    const unsigned char here = cursor.byte();
    if (Cursor::is_digit(here)) {
        return true;
    }
    if (here == '.' || here == ',') {
        return Cursor::is_digit(cursor.byte(1));
    }
    return here >= 0x80 && is_fraction_start(cursor);
}

bool read_number(Cursor& cursor, NumberPlace place, Number& number, Fault& fault) {
    const char* const start = cursor.place();
    std::size_t bytes = 0;
    Parts parts = one_character_fraction(cursor, bytes);
    if (bytes != 0) {
        cursor.advance(bytes);
        number = {static_cast<double>(parts.top) / parts.bottom, 0.5 / parts.bottom};
        return true;
    }
    DigitRun run;
    if (!read_digits(cursor, run, fault)) {
        return false;
    }
    int decimals = 0;
    Problem problem = Problem::none;
    if (!count_decimals(run, place, decimals, problem)) {
        return refuse(fault, problem, start, cursor);
    }
    const char* const digits_end = cursor.place();
    const int exponent = read_exponent(cursor) - decimals;
    if (exponent < -2 * largest_exact_power || exponent > 2 * largest_exact_power) {
        return refuse(fault, Problem::number_out_of_range, start, cursor);
    }
    number = {scaled(static_cast<double>(run.mantissa), exponent), 0.5 * scaled(1.0, exponent)};
    const bool whole = run.last_mark == 0 && digits_end == cursor.place();
    if (!whole || !may_continue(cursor)) {
        return true;
    }
    int bottom = 1;
    if (read_bottom(cursor, bottom)) {
        if (!check_fraction({0, bottom}, false, start, cursor, fault)) {
            return false;
        }
        if (could_be_mixed(run.mantissa, bottom)) {
            return refuse(fault, Problem::run_together, start, cursor);
        }
        number = {number.value / bottom, 0.5 / bottom};
        return true;
    }
    bool found = false;
    if (!read_fraction_behind(cursor, start, parts, found, fault)) {
        return false;
    }
    if (found) {
        number.value += static_cast<double>(parts.top) / parts.bottom;
        number.half_step = 0.5 / parts.bottom;
    }
    return true;
}

bool read_clock(Cursor& cursor, bool& is_clock, Number& seconds, Fault& fault) {
    const char* const start = cursor.place();
    constexpr double parts_per_step = 60.0;
    int part = 0;
    is_clock = read_short_integer(cursor, part) && cursor.byte() == ':';
    if (!is_clock) {
        cursor.go_to(start);
        return true;
    }
    double total = part;
    int steps = 0;
    while (cursor.pass(Sign::colon)) {
        Number next;
        const bool two_digits = cursor.at_digit() && Cursor::is_digit(cursor.byte(1)) &&
                                !Cursor::is_digit(cursor.byte(2));
        if (!two_digits || ++steps > 2) {
            return refuse(fault, Problem::bad_clock, start, cursor);
        }
        DigitRun run;
        if (!read_digits(cursor, run, fault)) {
            return false;
        }
        const int decimals = run.last_mark == 0 ? 0 : run.last_group;
        next = {scaled(static_cast<double>(run.mantissa), -decimals), 0.5 * scaled(1.0, -decimals)};
        if (next.value >= parts_per_step || run.points + run.commas > 1 ||
            (decimals > 0 && cursor.byte() == ':')) {
            return refuse(fault, Problem::bad_clock, start, cursor);
        }
        total = total * parts_per_step + next.value;
        seconds.half_step = next.half_step;
    }
    seconds.value = total;
    return true;
}

}  // namespace swathbook::detail
