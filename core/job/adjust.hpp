#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/droplets/class_by_pressure.hpp"
#include "core/quantity/reading.hpp"
#include "core/tips/iso_size.hpp"
#include "core/tips/pressure_window.hpp"

/// From what a sprayer puts out now to what is wanted: by speed, by pressure or by tip, and what
/// each does to the droplets.
namespace swathbook::job {

struct AdjustRequest {
    Reading<Kind::mix_per_area> target{};
    std::optional<Reading<Kind::mix_per_area>> rate{};  ///< as calibrated; or from flow and speed
    std::optional<Reading<Kind::flow>> tip_flow{};      ///< measured through one tip
    std::optional<Reading<Kind::speed>> speed{};
    std::optional<Reading<Kind::pressure>> pressure{};
    std::optional<Reading<Kind::length>> spacing{};
    std::optional<Reading<Kind::length>> width{};
    std::optional<int> tips{};

    std::string size{};
    std::optional<tips::SizeConvention> convention{};
    std::optional<Reading<Kind::flow>> rated_flow{};
    std::optional<Reading<Kind::pressure>> rated_pressure{};
    double exponent = 0.5;
    std::vector<droplets::ClassBand> classes{};  ///< of the tip, as its maker prints them
    std::string droplets{};                      ///< class wanted, in the label's words

    std::optional<Reading<Kind::pressure>> pressure_low{};
    std::optional<Reading<Kind::pressure>> pressure_high{};
    std::optional<Reading<Kind::speed>> speed_low{};
    std::optional<Reading<Kind::speed>> speed_high{};
    std::optional<Reading<Kind::mix_per_area>> carrier_min{};
    /// Of the mix; the calibration was with water.
    std::optional<Reading<Kind::density>> carrier_density{};
    std::vector<Reading<Kind::speed>> speeds{};  ///< other speeds to tell rate and pressure at
};

struct BySpeed {
    Speed speed{};  ///< that gives the target at the present pressure
    double factor = 1.0;
    tips::InWindow window = tips::InWindow::not_entered;  ///< of the speeds entered
};

struct ByPressure {
    Pressure pressure{};  ///< that gives the target at the present speed
    double factor = 1.0;
    tips::InWindow window = tips::InWindow::not_entered;
    std::optional<droplets::DropletClass> class_now{};
    std::optional<droplets::DropletClass> class_then{};
    std::optional<bool> class_allowed{};
};

/// A size of the colour code that would give the target at the present speed.
struct SizeAtPressure {
    std::string size{};
    std::string colour{};
    Pressure pressure{};
    tips::InWindow window = tips::InWindow::not_entered;
};

struct ByTip {
    Flow flow{};                              ///< through one tip, at the present speed
    std::vector<SizeAtPressure> us_sizes{};   ///< rated in gal/min at 40 psi
    std::vector<SizeAtPressure> iso_sizes{};  ///< rated in L/min at 3 bar
};

/// What another speed does.
struct AtSpeed {
    Speed speed{};
    std::optional<MixPerArea> rate{};               ///< with the present flow: no rate controller
    std::optional<Pressure> controller_pressure{};  ///< to hold the target
    tips::InWindow window = tips::InWindow::not_entered;
    std::optional<droplets::DropletClass> droplet_class{};
};

struct AdjustAnswer {
    MixPerArea rate_now{};  ///< with water, as calibrated
    MixPerArea target_as_water{};
    double factor = 1.0;  ///< target over present output
    std::optional<BySpeed> by_speed{};
    std::optional<ByPressure> by_pressure{};
    std::optional<ByTip> by_tip{};
    std::optional<Speed> controller_slowest{};  ///< holding the target inside the pressure window
    std::optional<Speed> controller_fastest{};
    std::vector<AtSpeed> at_speeds{};
    /// Mean rate over the speeds listed: over equal distances, and over equal times.
    std::optional<MixPerArea> rate_equal_distance{};
    std::optional<MixPerArea> rate_equal_time{};
    std::optional<Speed> speed_equal_distance{};  ///< harmonic mean
};

/// Three ways to a wanted rate, each with its window.
///
///   by speed:    speed * rate now / target
///   by pressure: pressure * (target / rate now) ^ (1 / exponent)
///   by tip:      target * speed * width per tip
///   rate controller: pressure * (speed2 / speed1) ^ (1 / exponent)
///   mix heavier than water: target as water = target * sqrt(specific gravity)
///
/// Identities: at the needed speed, or at the needed pressure, the rate is the target; a target
/// equal to the present rate changes nothing.
///
/// @errors invalid_input when the present output cannot be known; out_of_range, inconsistent
/// @source rate goes with 1 / speed: University of Missouri G1270A; flow with the square root of
///         pressure: Oklahoma State Extension; 12 to 15 mph at one rate takes 40 to 63 psi: Iowa
///         State University
/// @cases  tests/cases/tips/adjust.case
[[nodiscard]] Result<AdjustAnswer> adjust(const AdjustRequest& request, Notes& notes);

}  // namespace swathbook::job
