#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/geometry/track.hpp"
#include "core/quantity/label_rate.hpp"
#include "core/quantity/reading.hpp"

/// Closing a job: what should have gone on, what did, and whether the two agree.
namespace swathbook::job {

struct BalanceExclusion {
    std::string name{};
    Reading<Kind::area> area;
};

/// One run of the sprayer, measured or recorded by a receiver.
struct BalancePass {
    std::string name{};
    std::optional<Reading<Kind::length>> length{};
    std::optional<Reading<Kind::length>> width{};  ///< of the job when not entered
    std::optional<Reading<Kind::area>> area{};     ///< instead of length and width
    std::optional<Reading<Kind::duration>> spray_time{};
    std::optional<Reading<Kind::flow>> flow{};  ///< of the job when not entered
    std::vector<geometry::TrackFix> track{};    ///< instead of length and time
};

struct BalanceLoadProduct {
    std::string name{};
    std::optional<Reading<Kind::volume>> amount{};
    std::optional<Reading<Kind::mass>> weight{};
};

/// One tankful as it was made.
struct BalanceLoad {
    std::optional<Reading<Kind::volume>>
        mix{};  ///< everything in it; carrier and liquids if absent
    std::optional<Reading<Kind::volume>> carrier{};
    std::vector<BalanceLoadProduct> products{};
};

struct BalanceProduct {
    std::string name{};
    std::optional<LabelRate>
        rate{};  ///< wanted: of product, per area, per mix or percent by volume
    std::optional<Reading<Kind::volume>> used{};
    std::optional<Reading<Kind::mass>> used_weight{};
    std::optional<Reading<Kind::volume>> stock_before{};
    std::optional<Reading<Kind::volume>> stock_after{};
    std::optional<Reading<Kind::mass>> stock_before_weight{};
    std::optional<Reading<Kind::mass>> stock_after_weight{};
};

struct BalanceRequest {
    std::optional<Reading<Kind::planned_area>> planned_area{};
    std::vector<BalanceExclusion> exclusions{};
    std::optional<Reading<Kind::net_area>> covered_area{};  ///< wetted, overlap taken off
    std::optional<Reading<Kind::payable_area>> payable_area{};
    std::optional<Reading<Kind::mix_per_area>> mix_per_area{};  ///< wanted
    std::optional<Reading<Kind::length>> width{};
    std::optional<Reading<Kind::flow>> flow{};
    std::vector<BalancePass> passes{};
    std::vector<BalanceLoad> loads{};
    std::optional<Reading<Kind::volume>> leftover{};
    std::vector<BalanceProduct> products{};
    std::optional<Reading<Kind::fraction>> area_plus_minus{};  ///< half a 95 % interval
    std::optional<Reading<Kind::fraction>> amount_plus_minus{};
    std::optional<Reading<Kind::fraction>> explain_over{};  ///< 5 % when not entered
    std::optional<Reading<Kind::duration>> gap_after{};     ///< 10 s when not entered
};

struct PassTrack {
    int fixes = 0;
    Length sprayed_length{};
    Duration sprayed_time{};
    Length other_length{};
    int gaps = 0;
    Duration gap_time{};
    Duration gap_time_on{};
    std::vector<geometry::TrackGap> longest_gaps{};
    std::optional<Length> worst_accuracy{};
};

struct PassBalance {
    std::string name{};
    std::optional<Length> length{};
    std::optional<Area> swept_area{};
    std::optional<Duration> spray_time{};
    std::optional<Speed> speed{};
    std::optional<Volume> mix{};  ///< flow x time
    std::optional<MixPerArea> output{};
    std::optional<PassTrack> track{};
};

/// Which ground the rates are counted on.
enum class BalanceGround : std::uint8_t { covered, swept, planned, none };

struct MixBalance {
    std::optional<Volume> expected{};
    std::optional<Volume> by_loads{};   ///< made, less what is left
    std::optional<Volume> by_passes{};  ///< flow x time
    Volume used{};                      ///< by loads where they were entered
    std::optional<MixPerArea> applied{};
    std::optional<Estimate<Kind::fraction>> difference{};  ///< of the wanted mix per area
};

struct ProductBalance {
    std::string name{};
    std::optional<Volume> expected{};
    std::optional<Mass> expected_weight{};
    std::optional<Volume> used{};  ///< put on the ground: what is left in the tank taken off
    std::optional<Mass> used_weight{};
    std::optional<Volume> in_leftover{};
    std::optional<Mass> in_leftover_weight{};
    std::optional<Estimate<Kind::product_volume_per_area>> applied{};
    std::optional<Estimate<Kind::product_mass_per_area>> applied_weight{};
    std::optional<Estimate<Kind::fraction>> difference{};  ///< of the wanted rate
    std::optional<Fraction> amount_difference{};  ///< used against expected; the plan's ground
    std::optional<Volume> stock_used{};
    std::optional<Mass> stock_used_weight{};
    std::optional<Fraction> stock_difference{};  ///< out of stock against out of the jug
    std::string text{};
};

struct BalanceAnswer {
    std::optional<PlannedArea> planned_area{};
    std::optional<Area> excluded_area{};
    std::optional<NetArea> covered_area{};
    std::optional<PayableArea> payable_area{};
    std::optional<Area> swept_area{};  ///< length x width of all passes; overlap is in it
    std::optional<Length> sprayed_length{};
    std::optional<Duration> spray_time{};
    std::optional<Speed> mean_speed{};  ///< length over time
    BalanceGround ground = BalanceGround::none;
    std::optional<Area> ground_area{};
    std::optional<MixBalance> mix{};
    std::vector<ProductBalance> products{};
    std::vector<PassBalance> passes{};
};

/// The mass balance of a job; with tracks alone, the live count of the field.
///
///   swept = sum of length x width          mix by passes = sum of flow x time
///   mix by loads = sum of mixes - leftover
///   product on the ground = in the loads - its share of the leftover (or as typed)
///   rate applied = product on the ground / ground;  difference = applied / wanted - 1
///
/// Ground is the covered area; else what was swept; else planned less exclusions.
///
/// @accuracy sums to a few roundings; the interval is that entered for area and amount, with the
///           resolution of what was typed, in quadrature
/// @valid    1 to 5000 passes, 200,000 fixes in each; the mix left has the strength of all loads
/// @errors   invalid_input, out_of_range, inconsistent (exclusions beyond the plan, more left than
///           made, stock that grew), unsupported (a rate in a.i. or a.e.)
/// @source   mass balance; 5 % as the size that needs explaining: common practice
/// @cases    tests/cases/mix/balance.case, tests/cases/stories/06-*.case, 09-*.case
/// Identities: passes joined or split change no sum; rate x ground gives the amount used back.
[[nodiscard]] Result<BalanceAnswer> balance(const BalanceRequest& request, Notes& notes);

}  // namespace swathbook::job
