#include "core/quantity/parse.hpp"

#include <cmath>

#include "core/quantity/detail/amount_text.hpp"
#include "core/quantity/detail/fault.hpp"

namespace swathbook {
namespace {

using detail::Fault;
using detail::Problem;
using detail::UnitMeaning;

bool may_be_negative(Kind kind) {
    return kind == Kind::temperature || kind == Kind::temperature_change || kind == Kind::angle;
}

tl::unexpected<Error> refused(const Fault& fault, std::string_view text, Kind kind) {
    return tl::unexpected<Error>(detail::error_of(fault, text, &kind));
}

/// Sign, zero point and limits: what holds of every amount however it came.
Result<ParsedAmount> finish(double si, double half_step, bool negative, const UnitMeaning& unit,
                            std::string_view text, Kind kind) {
    if (negative && !may_be_negative(kind)) {
        return refused({Problem::negative}, text, kind);
    }
    double value = negative ? -si : si;
    if (kind == Kind::temperature) {
        value += unit.zero;
        if (value < 0.0) {
            return refused({Problem::below_absolute_zero}, text, kind);
        }
    }
    if (!std::isfinite(value)) {
        return refused({Problem::number_out_of_range}, text, kind);
    }
    return ParsedAmount{value, half_step};
}

}  // namespace

Result<ParsedAmount> parse_amount(std::string_view text, Kind kind) {
    const KindInfo& info = info_of(kind);
    detail::AmountText amount;
    Fault fault;
    double factor = 1.0;
    if (!detail::read_amount(text, info.dimension == Dimension::time, amount, fault) ||
        !detail::check_kind(amount.unit, info, factor, fault)) {
        return refused(fault, text, kind);
    }
    return finish(amount.si * factor, amount.half_step * factor, amount.negative, amount.unit, text,
                  kind);
}

Result<double> parse_unit(std::string_view unit, Kind kind) {
    UnitMeaning meaning;
    Fault fault;
    double factor = 1.0;
    if (!detail::read_unit_alone(unit, meaning, fault) ||
        !detail::check_kind(meaning, info_of(kind), factor, fault)) {
        return refused(fault, unit, kind);
    }
    if (kind == Kind::temperature && meaning.zero != 0.0) {
        return refused({Problem::offset_unit}, unit, kind);
    }
    return meaning.si * factor;
}

Result<ParsedAmount> parse_amount(double number, std::string_view unit, Kind kind) {
    if (!std::isfinite(number)) {
        return refused({Problem::not_a_number}, unit, kind);
    }
    UnitMeaning meaning;
    Fault fault;
    double factor = 1.0;
    if (!detail::read_unit_alone(unit, meaning, fault) ||
        !detail::check_kind(meaning, info_of(kind), factor, fault)) {
        return refused(fault, unit, kind);
    }
    return finish(std::abs(number) * meaning.si * factor, 0.0, number < 0.0, meaning, unit, kind);
}

}  // namespace swathbook
