#include "core/quantity/detail/amount_text.hpp"

#include <algorithm>
#include <array>

#include "core/quantity/units.hpp"

namespace swathbook::detail {
namespace {

bool refuse(Fault& fault, Problem problem, std::string_view where = {},
            std::string_view other = {}) {
    fault = {problem, where, other};
    return false;
}

bool check_length(std::string_view text, Cursor& cursor, Fault& fault) {
    if (text.size() > longest_text) {
        return refuse(fault, Problem::too_long);
    }
    cursor.skip_space();
    return !cursor.at_end() || refuse(fault, Problem::empty);
}

bool can_be_summed(Dimension dimension) {
    switch (dimension) {
        case Dimension::length:
        case Dimension::area:
        case Dimension::volume:
        case Dimension::mass:
        case Dimension::time: return true;
        default: return false;
    }
}

/// Terms read so far: those that have their "per" and those that wait for the last one's.
struct Sum {
    double si = 0.0;
    double top_si = 0.0;  ///< of terms without "per"
    double half_step = 0.0;
    double top_half_step = 0.0;
    int terms = 0;
    int terms_with_bottom = 0;
};

constexpr int most_terms = 4;

/// "1 lb + 4 oz a.e.": the one substance named holds for all; two different do not add.
bool join_substances(const UnitMeaning& before, UnitMeaning& unit, Fault& fault) {
    if (before.substance == Substance::any) {
        return true;
    }
    if (unit.substance != Substance::any && unit.substance != before.substance) {
        return refuse(fault, Problem::sum_bases);
    }
    unit.substance = before.substance;
    return true;
}

bool check_term(const UnitMeaning& before, UnitMeaning& unit, Stop joined_by, int terms,
                Fault& fault) {
    if (unit.top != before.top) {
        return refuse(fault, Problem::sum_of_kinds, phrase_of(before.top), phrase_of(unit.top));
    }
    if (!can_be_summed(unit.top) || terms >= most_terms) {
        return refuse(fault, Problem::sum_not_allowed, phrase_of(unit.top));
    }
    if (joined_by == Stop::number && (unit.top_si >= before.top_si || before.has_bottom)) {
        return refuse(fault, Problem::sum_order);
    }
    if (before.has_bottom && unit.has_bottom && before.bottom != unit.bottom) {
        return refuse(fault, Problem::sum_bases);
    }
    return join_substances(before, unit, fault);
}

void add_term(Sum& sum, const UnitMeaning& unit, const Number& number) {
    ++sum.terms;
    const double half_step = number.half_step * unit.top_si;
    if (!unit.has_bottom) {
        sum.top_si += number.value * unit.top_si;
        sum.top_half_step =
            sum.top_half_step == 0.0 ? half_step : std::min(sum.top_half_step, half_step);
        return;
    }
    ++sum.terms_with_bottom;
    const double pending_half_step =
        sum.top_half_step == 0.0 ? half_step : std::min(sum.top_half_step, half_step);
    const double with_bottom = pending_half_step / unit.bottom_si;
    sum.half_step = sum.half_step == 0.0 ? with_bottom : std::min(sum.half_step, with_bottom);
    // One term is the common case: number * (top/bottom) rounds as parse_unit does.
    sum.si += sum.top_si == 0.0 ? number.value * unit.si
                                : (sum.top_si + number.value * unit.top_si) / unit.bottom_si;
    sum.top_si = 0.0;
    sum.top_half_step = 0.0;
}

/// The "per" stands on the last term for all, or on every term.
bool check_bottoms(const Sum& sum, const UnitMeaning& last, Fault& fault) {
    const bool sound = sum.terms_with_bottom == 0 || sum.terms_with_bottom == sum.terms ||
                       (sum.terms_with_bottom == 1 && last.has_bottom);
    return sound || refuse(fault, Problem::sum_bases);
}

bool read_sign(Cursor& cursor) {
    if (cursor.pass(Sign::plus)) {
        cursor.skip_space();
        return false;
    }
    const bool negative = cursor.pass(Sign::minus);
    if (negative) {
        cursor.skip_space();
    }
    return negative;
}

/// "NaN", "inf": what programs write for numbers that are none.
bool is_not_finite(Cursor cursor) {
    const WordKey key = cursor.read_word().key;
    constexpr std::array words{std::string_view("nan"), std::string_view("inf"),
                               std::string_view("infinity")};
    return std::any_of(words.begin(), words.end(),
                       [&key](std::string_view word) { return is_key(key, word); });
}

/// Behind a clock reading: nothing, "min" behind minutes and seconds, or "h", which makes "1:30" an
/// hour and a half.
bool finish_clock(Cursor& cursor, std::string_view typed, Number& seconds, Fault& fault) {
    cursor.skip_space();
    if (cursor.at_end()) {
        return true;
    }
    UnitMeaning unit;
    Stop stop = Stop::end;
    if (!read_unit(cursor, std::nullopt, unit, stop, fault)) {
        return false;
    }
    const bool two_parts = typed.find(':') == typed.rfind(':');
    const bool is_alone = unit.dimension == Dimension::time && stop == Stop::end;
    const bool is_hours = is_alone && unit.si == hours.si;
    const bool is_minutes = is_alone && unit.si == minutes.si && two_parts;
    if (!is_hours && !is_minutes) {
        return refuse(fault, Problem::bad_clock, typed);
    }
    if (two_parts && is_hours) {
        seconds.value *= minutes.si;
        seconds.half_step *= minutes.si;
    }
    return true;
}

/// The number a text begins with, or a whole clock reading in seconds.
bool read_first_number(Cursor& cursor, bool expected_time, Number& number, bool& is_clock,
                       Fault& fault) {
    if (!at_number(cursor)) {
        return refuse(fault, is_not_finite(cursor) ? Problem::not_a_number : Problem::no_number);
    }
    const char* const start = cursor.place();
    if (!read_clock(cursor, is_clock, number, fault)) {
        return false;
    }
    if (!is_clock) {
        return read_number(cursor, NumberPlace::amount, number, fault);
    }
    const std::string_view typed(start, static_cast<std::size_t>(cursor.place() - start));
    return expected_time ? finish_clock(cursor, typed, number, fault)
                         : refuse(fault, Problem::clock_not_duration, typed);
}

}  // namespace

bool read_amount(std::string_view text, bool expected_time, AmountText& amount, Fault& fault) {
    Cursor cursor(text);
    if (!check_length(text, cursor, fault)) {
        return false;
    }
    amount.negative = read_sign(cursor);
    Number number;
    bool is_clock = false;
    if (!read_first_number(cursor, expected_time, number, is_clock, fault)) {
        return false;
    }
    if (is_clock) {
        amount.unit.dimension = amount.unit.top = Dimension::time;
        amount.si = number.value;
        amount.half_step = number.half_step;
        return true;
    }
    Stop stop = Stop::end;
    UnitMeaning& unit = amount.unit;
    if (!read_unit(cursor, std::nullopt, unit, stop, fault)) {
        return false;
    }
    Sum sum;
    add_term(sum, unit, number);
    while (stop != Stop::end) {
        const UnitMeaning before = unit;
        const Stop joined_by = stop;
        cursor.skip_space();
        if (!at_number(cursor)) {
            return refuse(fault, Problem::no_number, cursor.rest());
        }
        if (!read_number(cursor, NumberPlace::amount, number, fault) ||
            !read_unit(cursor, before.top, unit, stop, fault) ||
            !check_term(before, unit, joined_by, sum.terms, fault)) {
            return false;
        }
        add_term(sum, unit, number);
    }
    if (!check_bottoms(sum, unit, fault)) {
        return false;
    }
    amount.si = sum.terms_with_bottom > 0 ? sum.si : sum.top_si;
    amount.half_step = sum.terms_with_bottom > 0 ? sum.half_step : sum.top_half_step;
    return true;
}

bool read_unit_alone(std::string_view text, UnitMeaning& unit, Fault& fault) {
    Cursor cursor(text);
    if (!check_length(text, cursor, fault)) {
        return false;
    }
    Stop stop = Stop::end;
    if (at_number(cursor)) {
        return refuse(fault, Problem::number_in_unit, cursor.rest());
    }
    if (!read_unit(cursor, std::nullopt, unit, stop, fault)) {
        return false;
    }
    return stop == Stop::end || refuse(fault, Problem::number_in_unit, cursor.rest());
}

namespace {

bool check_dimension(const UnitMeaning& unit, const KindInfo& info, double& factor, Fault& fault) {
    factor = 1.0;
    if (info.dimension == Dimension::mass_fraction && unit.is_grains) {
        return refuse(fault, Problem::grains_of_mineral);
    }
    if (unit.dimension == info.dimension) {
        return !unit.is_change || refuse(fault, Problem::temperature_scale);
    }
    if (info.dimension == Dimension::temperature_change &&
        unit.dimension == Dimension::temperature) {
        return true;
    }
    if (info.dimension == Dimension::pressure && unit.dimension == Dimension::mass_per_area &&
        unit.substance == Substance::any) {
        factor = standard_gravity_m_per_s2;  // lb/in2, kg/cm2: the weight of the mass
        return true;
    }
    if (info.dimension == Dimension::mass_fraction &&
        unit.dimension == Dimension::mass_per_volume && unit.substance == Substance::any) {
        factor = 1.0 / kilograms_per_litre.si;  // mg/L of water at 1 kg/L
        return true;
    }
    if (info.dimension == Dimension::temperature && unit.dimension == Dimension::angle) {
        return refuse(fault, Problem::temperature_scale);
    }
    return refuse(fault, Problem::wrong_dimension, phrase_of(unit.dimension));
}

bool check_percent(const UnitMeaning& unit, const KindInfo& info, Fault& fault) {
    const PercentOf wanted = info.kind == Kind::percent_by_volume   ? PercentOf::volume
                             : info.kind == Kind::percent_by_weight ? PercentOf::weight
                                                                    : PercentOf::unsaid;
    if (unit.percent == wanted) {
        return true;
    }
    return refuse(fault, unit.percent == PercentOf::unsaid ? Problem::ambiguous_percent
                                                           : Problem::percent_wrong);
}

}  // namespace

bool check_kind(const UnitMeaning& unit, const KindInfo& info, double& factor, Fault& fault) {
    if (!check_dimension(unit, info, factor, fault)) {
        return false;
    }
    if (unit.dimension == Dimension::ratio && !check_percent(unit, info, fault)) {
        return false;
    }
    if (unit.substance != info.substance) {
        return refuse(fault, unit.substance == Substance::any ? Problem::substance_missing
                                                              : Problem::substance_wrong);
    }
    return true;
}

}  // namespace swathbook::detail
