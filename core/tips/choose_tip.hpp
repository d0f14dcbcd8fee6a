#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/droplets/class_by_pressure.hpp"
#include "core/droplets/droplet_class.hpp"
#include "core/quantity/reading.hpp"
#include "core/tips/iso_size.hpp"

/// Which tip of a table gives the wanted volume at the wanted speed, inside its pressures and with
/// the droplet class the label asks for.
namespace swathbook::tips {

/// One line of a maker's table, as typed. What is not entered is not known, never "any".
struct TableTip {
    std::string name{};
    std::string size{};  ///< colour-code size, or the maker's flow below
    std::optional<SizeConvention> convention{};
    std::optional<Reading<Kind::flow>> rated_flow{};
    std::optional<Reading<Kind::pressure>> rated_pressure{};
    double exponent = 0.5;
    std::optional<Reading<Kind::pressure>> pressure_low{};
    std::optional<Reading<Kind::pressure>> pressure_high{};
    std::vector<droplets::ClassBand> classes{};
    std::optional<int> strainer_mesh{};
};

struct ChooseTipRequest {
    Reading<Kind::mix_per_area> rate{};  ///< mix wanted on the ground
    Reading<Kind::speed> speed{};        ///< usual speed
    std::optional<Reading<Kind::speed>> speed_low{};
    std::optional<Reading<Kind::speed>> speed_high{};
    bool rate_controller = false;  ///< pressure follows speed; otherwise the rate does
    std::optional<Reading<Kind::length>> spacing{};
    std::optional<Reading<Kind::length>> width{};
    std::optional<int> tips{};
    std::optional<Reading<Kind::pressure>> pressure_low{};  ///< what the sprayer can hold
    std::optional<Reading<Kind::pressure>> pressure_high{};
    std::string droplets{};  ///< class wanted, in the label's words; empty: not entered
    std::optional<Reading<Kind::mix_per_area>> carrier_min{};
    /// Of the mix, where it is not like water.
    std::optional<Reading<Kind::density>> carrier_density{};
    std::vector<TableTip> table{};               ///< empty: the sizes of the colour code
    std::optional<SizeConvention> convention{};  ///< of the colour code
};

enum class TipFit : std::uint8_t {
    fits,
    partly,    ///< at the usual speed, but not over all of the speeds entered
    unproven,  ///< the table does not say enough: pressure window or class not entered
    refused,
};

struct TipChoice {
    std::string name{};
    std::string size{};
    std::string colour{};
    std::string colour_spanish{};
    TipFit fit = TipFit::unproven;
    Pressure pressure{};             ///< that gives the rate at the usual speed
    std::optional<Speed> slowest{};  ///< at which a rate controller stays inside the window
    std::optional<Speed> fastest{};
    std::optional<droplets::DropletClass> droplet_class{};  ///< at that pressure
    std::optional<int> strainer_mesh{};
    std::vector<std::string> reasons_for{};
    std::vector<std::string> reasons_against{};
};

struct ChooseTipAnswer {
    Flow flow_needed{};                ///< through one tip, of the mix
    std::optional<Flow> water_flow{};  ///< the same in water, which tables are made with
    std::string droplets_wanted{};
    std::optional<MixPerArea> rate_at_slowest{};  ///< at fixed pressure
    std::optional<MixPerArea> rate_at_fastest{};
    std::vector<TipChoice> choices{};  ///< best first; refused ones last, with their reasons
};

/// Ranks every tip of a table.
///
///   flow needed = rate * speed * width per tip;  pressure = p0 * (flow needed / q0) ^ (1 /
///   exponent)
///
/// A tip fits when that pressure is inside both the tip's and the sprayer's window and its class
/// there is one the label allows; with a rate controller the same at the slowest and the fastest
/// speed entered. Among equals the one nearest the middle of its window comes first.
///
/// @errors out_of_range, inconsistent, invalid_input (label words), not_found (size)
/// @source flow and pressure: capacity.hpp; sizes: iso_size.hpp
/// @cases  tests/cases/tips/choose_tip.case
[[nodiscard]] Result<ChooseTipAnswer> choose_tip(const ChooseTipRequest& request, Notes& notes);

}  // namespace swathbook::tips
