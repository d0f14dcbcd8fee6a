#pragma once

#include <string_view>

#include "core/base/result.hpp"
#include "core/quantity/quantity.hpp"

namespace swathbook::tips {

/// What a tip puts out at one pressure, and how its flow follows pressure.
struct Rating {
    Flow flow{};
    Pressure pressure{};
    double exponent = 0.5;  ///< 0.5 for a plain orifice
};

/// Flow of a tip at a pressure.
///
///   q = q0 * (p / p0) ^ exponent
///
/// @accuracy exponent 0.5 by square root: relative error under 4e-16; others as std::pow
/// @valid    rating and pressure above 0, exponent above 0 and at most 1 (checked by check_rating)
/// @source   flow goes with the square root of pressure, four times the pressure for twice the
///           flow: Oklahoma State Extension, "Calibrating a Low-Pressure Ground Sprayer:
///           Boom-Mounted Nozzles". Other exponents: two-orifice flooding nozzles whose flow stayed
///           level or fell (Womac, "Atomization Characteristics of High-Flow Variable-Orifice
///           Flooding Nozzles"), so a tip may carry its own
/// @cases    tests/cases/tips/capacity.case
[[nodiscard]] Flow flow_at(const Rating& rating, Pressure pressure);

/// Pressure at which a tip gives a flow: the same relation solved for p.
[[nodiscard]] Pressure pressure_for(const Rating& rating, Flow flow);

/// x ^ exponent, by square root where the exponent is 0.5, so that native code and WebAssembly
/// agree to the last bit for plain tips.
[[nodiscard]] double power(double ratio, double exponent);

/// How many times the pressure must change for the flow to change by a factor.
[[nodiscard]] double pressure_factor(double flow_factor, double exponent);

/// Fails unless the relation can be used both ways.
/// @errors out_of_range for an exponent not above 0 or over 1
[[nodiscard]] Result<void> check_exponent(double exponent, std::string_view field);

/// Density of the solution relative to water.
/// @source SG = density / density of water; water is taken as 1 kg/L, 8.345 lb/gal. University of
///         Nebraska CropWatch 2016 divides by 8.34, 0.07 % apart
[[nodiscard]] double specific_gravity(Density solution);

/// Rate of water that goes through tips as the wanted rate of a heavier solution does.
///
///   water rate = solution rate * sqrt(SG)
///
/// @source University of Nebraska CropWatch 2016, "Setting the Sprayer Flow Rate for Non-Water
///         Solutions"; Oklahoma State Extension, "Using Water to Calibrate Sprayers". Multiply the
///         wanted rate, never a chart value
/// @cases  tests/cases/tips/density.case
[[nodiscard]] double water_factor(Density solution);

}  // namespace swathbook::tips
