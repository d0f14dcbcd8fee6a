#include "core/quantity/label_rate.hpp"

#include "core/quantity/detail/amount_text.hpp"
#include "core/quantity/detail/fault.hpp"
#include "core/quantity/parse.hpp"

namespace swathbook {
namespace {

using detail::Fault;
using detail::PercentOf;
using detail::Problem;
using detail::UnitMeaning;

/// The basis a unit text says, or a fault that names the choices.
bool basis_of(const UnitMeaning& unit, RateBasis& basis, Fault& fault) {
    switch (unit.dimension) {
        case Dimension::volume_per_area: basis = RateBasis::volume_per_area; return true;
        case Dimension::mass_per_area:
            basis = unit.substance == Substance::acid         ? RateBasis::acid_per_area
                    : unit.substance == Substance::ingredient ? RateBasis::ingredient_per_area
                                                              : RateBasis::mass_per_area;
            return true;
        case Dimension::volume_per_volume: basis = RateBasis::volume_per_mix; return true;
        case Dimension::mass_per_volume:
            basis = RateBasis::mass_per_mix;
            fault.problem = Problem::basis_not_supported;
            return unit.substance == Substance::any;
        case Dimension::ratio:
            basis = unit.percent == PercentOf::weight ? RateBasis::percent_by_weight
                                                      : RateBasis::percent_by_volume;
            fault.problem = Problem::ambiguous_percent;
            return unit.percent != PercentOf::unsaid;
        case Dimension::volume:
        case Dimension::mass: fault.problem = Problem::basis_missing; return false;
        case Dimension::volume_each:
        case Dimension::mass_each: fault.problem = Problem::basis_not_supported; return false;
        default:
            fault = {Problem::wrong_dimension, detail::phrase_of(unit.dimension)};
            return false;
    }
}

}  // namespace

Kind kind_of(RateBasis basis) {
    switch (basis) {
        case RateBasis::volume_per_area: return Kind::product_volume_per_area;
        case RateBasis::mass_per_area: return Kind::product_mass_per_area;
        case RateBasis::ingredient_per_area: return Kind::ingredient_per_area;
        case RateBasis::acid_per_area: return Kind::acid_per_area;
        case RateBasis::volume_per_mix: return Kind::product_volume_per_mix;
        case RateBasis::mass_per_mix: return Kind::product_mass_per_mix;
        case RateBasis::percent_by_volume: return Kind::percent_by_volume;
        case RateBasis::percent_by_weight: return Kind::percent_by_weight;
    }
    return Kind::product_volume_per_area;
}

std::string_view word_of(RateBasis basis) {
    switch (basis) {
        case RateBasis::volume_per_area: return "volume_per_area";
        case RateBasis::mass_per_area: return "mass_per_area";
        case RateBasis::ingredient_per_area: return "ingredient_per_area";
        case RateBasis::acid_per_area: return "acid_per_area";
        case RateBasis::volume_per_mix: return "volume_per_mix";
        case RateBasis::mass_per_mix: return "mass_per_mix";
        case RateBasis::percent_by_volume: return "percent_by_volume";
        case RateBasis::percent_by_weight: return "percent_by_weight";
    }
    return "volume_per_area";
}

Result<LabelRate> parse_label_rate(std::string_view text) {
    detail::AmountText amount;
    Fault fault;
    LabelRate rate;
    if (!detail::read_amount(text, false, amount, fault) ||
        !basis_of(amount.unit, rate.basis, fault)) {
        return tl::unexpected<Error>(detail::error_of(fault, text, nullptr));
    }
    if (amount.negative) {
        return tl::unexpected<Error>(detail::error_of({Problem::negative}, text, nullptr));
    }
    rate.si = amount.si;
    rate.half_step_si = amount.half_step;
    rate.text = std::string(text);
    return rate;
}

}  // namespace swathbook
