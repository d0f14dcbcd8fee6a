#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/limits.hpp"
#include "core/mix/marks.hpp"
#include "core/mix/order.hpp"
#include "core/mix/recipe.hpp"

/// Loads: how much mix a job needs, in how many tankfuls, and what goes into each.
namespace swathbook::mix {

/// Bands of spray over rows.
struct Bands {
    Reading<Kind::length> band_width{};
    Reading<Kind::length> row_spacing{};
};

enum class Split : std::uint8_t {
    equal,           ///< every load the same: one card for all
    full_then_rest,  ///< full tanks, then what is left
};

struct LoadsRequest {
    /// Ground really wetted. With bands: the ground under them.
    std::optional<Reading<Kind::net_area>> net_area{};
    /// Ground in the plan, when no better figure exists. With bands: the whole field.
    std::optional<Reading<Kind::planned_area>> planned_area{};
    std::optional<Bands> bands{};
    std::optional<Reading<Kind::mix_per_area>> mix_per_area{};  ///< from the calibration
    std::optional<Counts> mix_counts{};  ///< which ground mix_per_area counts; with bands only
    /// Instead of an area: make this much mix, as for a backpack or a spot job.
    std::optional<Reading<Kind::volume>> mix_volume{};
    std::optional<Reading<Kind::volume>> tank_usable{};  ///< what can be sprayed out of one fill
    std::optional<Reading<Kind::volume>> dead_volume{};  ///< stays in sump and hoses, never sprayed
    Split split = Split::equal;
    std::vector<TankProduct> products{};
    std::optional<Reading<Kind::density>>
        mix_density{};    ///< for percent by weight; water if absent
    int rinse_times = 3;  ///< how often each emptied jug is rinsed into the tank; 0 for never
    std::optional<Reading<Kind::fraction>> rinse_fill{};  ///< how full; common practice if absent
    std::vector<MeasuringTool> tools{};
    std::optional<Reading<Kind::fraction>> measure_within{};  ///< wanted closeness; 5 % if absent
    OrderConvention order = OrderConvention::dry_suspension_solution_emulsion;
    std::vector<std::string> label_order{};  ///< product names; when given, it is the order
};

/// One product in one load.
struct LoadAmount {
    std::string name{};
    ProductAmount amount{};
    int jugs_emptied = 0;  ///< within this load
};

struct Load {
    int number = 1;
    Volume fill{};     ///< mix to make up: what is sprayed, and in the first load the dead volume
    Volume sprayed{};  ///< of this fill
    std::optional<NetArea> area{};  ///< treated ground it covers
    std::vector<LoadAmount> products{};
    Volume rinse_water{};  ///< from the jugs emptied; part of the carrier
    Volume carrier{};      ///< to run in beside products and rinse water
};

struct IngredientTotal {
    std::string name{};
    std::optional<IngredientMass> ingredient{};
    std::optional<AcidMass> acid{};
    std::optional<IngredientPerArea> ingredient_per_area{};
    std::optional<AcidPerArea> acid_per_area{};
};

/// One product over the whole job.
struct ProductTotal {
    std::string name{};
    ProductAmount total{};                ///< the loads added up
    std::optional<LabelRate> per_area{};  ///< product on treated ground
    LabelRate per_mix{};                  ///< product in the finished mix
    std::vector<IngredientTotal> ingredients{};
    std::vector<LimitCheck> limits{};
    std::vector<std::string> not_entered{};  ///< limits nobody typed; not the same as no limit
};

struct LoadsAnswer {
    std::optional<NetArea> treated_area{};
    std::optional<PlannedArea> field_area{};  ///< when bands are sprayed
    std::optional<MixPerArea> mix_per_treated_area{};
    Volume sprayed_mix{};  ///< the loads' sprayed volumes added up
    Volume total_mix{};    ///< the loads' fills added up: sprayed and dead volume
    Volume dead_volume{};  ///< left in the sprayer at the end
    int load_count = 0;
    std::vector<Load> loads{};
    std::vector<ProductTotal> products{};
    std::vector<MeasureAdvice> measuring{};
    std::vector<OrderStep> order{};
    StrictestLimits strictest{};
    std::vector<std::string> cautions{};
};

/// Works out the loads of a job.
///
///   mix = area * mix per area;  load = mix / number of loads, or full tanks and the rest
///   product in a load = rate * area of the load   (or share * fill)
///   carrier = fill - liquid products - rinse water of the jugs
///
/// Amounts follow from the area or volume of their load, never from rounded amounts; totals are the
/// loads added up, so loads and totals agree to the last bit.
///
/// @accuracy each amount within 1e-14 of exact arithmetic
/// @valid    up to 500 loads and 20 products; dry products are taken to add no volume
/// @errors   invalid_input (no area and no volume, no tank, missing basis), inconsistent (area and
///           volume both given), out_of_range (amounts not above 0, more than 500 loads, products
///           alone filling the tank); those of contents_of, check_tool and mixing_order
/// @source   unit arithmetic; jug rinsing: EPA farm text (20-25 % full, three times) and University
///           of Illinois Extension, 50 Ways no. 30 (1/4 full under 5 gal, 1/5 from 5 gal)
/// @cases    tests/cases/mix/loads.case, tests/cases/stories/, tests/unit/mix/loads_test.cpp
[[nodiscard]] Result<LoadsAnswer> loads(const LoadsRequest& request, Notes& notes);

}  // namespace swathbook::mix
