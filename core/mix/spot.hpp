#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/mix/limits.hpp"
#include "core/mix/recipe.hpp"

/// Spot work by percent solution: what a mixture that is sprayed "to wet" puts on an area.
namespace swathbook::mix {

struct SpotRequest {
    std::vector<TankProduct> products{};  ///< rates on any basis: "2 % v/v", "5 fl oz/ac"
    std::optional<Reading<Kind::volume>> sprayed{};             ///< mix put on `area`, measured
    std::optional<Reading<Kind::net_area>> area{};              ///< ground really wetted
    std::optional<Reading<Kind::mix_per_area>> mix_per_area{};  ///< measured on a test plot
    std::vector<Reading<Kind::volume>> fills{};                 ///< tanks, backpacks, jugs
    std::optional<Reading<Kind::density>> mix_density{};
    std::optional<int> plants{};
    std::optional<Reading<Kind::volume_each>> per_plant{};  ///< to wet one plant
    std::optional<Reading<Kind::flow>> flow{};              ///< of the gun, where that was caught
    std::optional<Reading<Kind::duration>> time_per_plant{};
};

/// One product of the mix.
struct SpotProduct {
    std::string name{};
    std::optional<PercentByVolume> of_mix{};      ///< liquid, of the finished mix
    std::optional<PercentByVolume> of_carrier{};  ///< the same mix, counted of the water
    std::optional<ProductVolumePerMix> volume_per_mix{};
    std::optional<ProductMassPerMix> mass_per_mix{};
    std::optional<ProductVolumePerArea> volume_per_area{};  ///< the hidden rate
    std::optional<ProductMassPerArea> mass_per_area{};
    std::optional<AcidPerArea> acid_per_area{};
    std::optional<IngredientPerArea> ingredient_per_area{};
    std::string per_area_text{};
    std::string used_text{};  ///< product in what was sprayed
    /// Strongest mix that no entered limit forbids at this mix per area.
    std::optional<PercentByVolume> strongest{};
    std::string strongest_text{};
    std::string strongest_by{};  ///< the limit that binds: "max_yearly_rate"
    /// Most mix per area at the strength asked for.
    std::optional<MixPerArea> most_mix_per_area{};
    std::optional<Volume> mix_left{};  ///< of that strength, on this ground, after what was sprayed
    std::vector<LimitCheck> checks{};
};

/// Product in one fill.
struct SpotMeasure {
    std::string name{};
    ProductAmount amount{};
};
struct SpotFill {
    Volume fill;
    Volume carrier;
    std::vector<SpotMeasure> products{};
    std::optional<NetArea> covers{};  ///< at the measured mix per area
};

struct SpotAnswer {
    std::optional<MixPerArea> mix_per_area{};  ///< measured, never assumed
    std::vector<SpotProduct> products{};
    std::vector<SpotFill> fills{};
    std::optional<VolumeEach> per_plant{};
    std::optional<Volume> mix_for_plants{};
};

/// What a percent solution amounts to per area, and the other way round.
///
///   mix per area  = sprayed / area           (measured; a percent job has no rate without it)
///   rate per area = share x mix per area     share = rate per area / mix per area
///   strongest     = (cap - applied earlier this year) / mix per area
///   of carrier    = p / (1 + p)              p counted of the water, one product
///
/// @errors as contents_of and check_card; out_of_range: volumes, areas and counts not above 0;
///         invalid_input: a rate per area without mix per area, area without volume sprayed
/// @valid  the ground counted is the ground wetted; gaps between spots dilute the figure falsely
/// @source unit arithmetic; herbicide maker's spot-spray card (paperzz.com/doc/7758169): product
/// per
///         gallon = rate per acre / gallons per acre
/// @cases  tests/cases/stems/spot.case
[[nodiscard]] Result<SpotAnswer> spot(const SpotRequest& request, Notes& notes);

}  // namespace swathbook::mix
