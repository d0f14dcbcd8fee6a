#include "core/tips/capacity.hpp"

#include <cmath>
#include <string>
#include <string_view>

#include <fmt/format.h>

#include "core/base/elementary.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::tips {
namespace {

constexpr double plain_orifice = 0.5;

}  // namespace

double power(double ratio, double exponent) {
    if (exponent == plain_orifice) {
        return std::sqrt(ratio);
    }
    return exponent == 1.0 ? ratio : elementary::power(ratio, exponent);
}

double pressure_factor(double flow_factor, double exponent) {
    if (exponent == plain_orifice) {
        return flow_factor * flow_factor;
    }
    return exponent == 1.0 ? flow_factor : elementary::power(flow_factor, 1.0 / exponent);
}

Flow flow_at(const Rating& rating, Pressure pressure) {
    return rating.flow * power(pressure / rating.pressure, rating.exponent);
}

Pressure pressure_for(const Rating& rating, Flow flow) {
    return rating.pressure * pressure_factor(flow / rating.flow, rating.exponent);
}

Result<void> check_exponent(double exponent, std::string_view field) {
    if (exponent > 0.0 && exponent <= 1.0) {
        return {};
    }
    return fail(ErrorCode::out_of_range, field,
                fmt::format("The flow exponent is {}. It must be above 0 and at most 1; a plain "
                            "tip has 0.5. A tip whose flow does not rise with pressure cannot be "
                            "set by pressure: measure it at the pressure used.",
                            exponent));
}

double specific_gravity(Density solution) {
    return solution.in(kilograms_per_litre);
}

double water_factor(Density solution) {
    return std::sqrt(specific_gravity(solution));
}

}  // namespace swathbook::tips
