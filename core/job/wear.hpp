#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"

/// How a set of tips wears: the trend of its flow over ground sprayed, liquid passed or time.
namespace swathbook::job {

/// One measurement of the same tips.
struct WearPoint {
    std::string date{};  ///< "2031-05-14"; needed when no ground or liquid is counted
    std::optional<Reading<Kind::area>> acres_since_new{};
    std::optional<Reading<Kind::volume>> volume_since_new{};
    Reading<Kind::flow> flow;                           ///< of one tip, or of all of them
    std::optional<Reading<Kind::pressure>> pressure{};  ///< when it was measured
};

struct WearRequest {
    std::vector<WearPoint> points{};
    std::optional<Reading<Kind::flow>> new_flow{};    ///< measured when new
    std::optional<Reading<Kind::flow>> rated_flow{};  ///< of the maker, when that is not known
    std::optional<Reading<Kind::pressure>> reference_pressure{};  ///< of the new or rated flow
    std::optional<Reading<Kind::fraction>> limit{};  ///< over new; the trade's 10 % unless entered
};

enum class WearAxis : std::uint8_t { area, volume, time };

enum class WearVerdict : std::uint8_t {
    not_enough_points,  ///< fewer than three, or all on one day
    no_trend,           ///< the slope's interval holds zero
    wearing,            ///< flow rises
    falling,            ///< flow falls: clogged, or not measured alike
};

struct WearRow {
    std::string date{};
    std::string at{};  ///< ground, liquid or months, as counted
    Flow flow{};       ///< at the reference pressure
    Fraction over_new{};
    std::optional<Fraction> trend{};  ///< the line there
};

struct WearAnswer {
    WearVerdict verdict = WearVerdict::not_enough_points;
    std::string text{};
    Flow new_flow{};
    Fraction limit{};
    std::string limit_source{};
    WearAxis axis = WearAxis::time;
    int points = 0;
    Fraction over_new_now{};                              ///< as last measured
    std::optional<Estimate<Kind::fraction>> trend_now{};  ///< the line at the last point
    bool over_limit_now = false;
    std::optional<Estimate<Kind::fraction>> slope{};  ///< for one step of `slope_per`
    std::string slope_per{};                          ///< "100 ac", "1000 gal", "month"
    std::optional<double> explained{};                ///< R squared
    std::optional<Estimate<Kind::area>> limit_at_area{};
    std::optional<Estimate<Kind::volume>> limit_at_volume{};
    std::string limit_on{};        ///< day the trend crosses the limit
    std::string limit_on_early{};  ///< earliest and latest of its 95 % interval
    std::string limit_on_late{};
    std::vector<WearRow> rows{};
};

/// Fits a straight line to the flow over new and says where it crosses the limit.
///
///   over new = flow sqrt(p0 / p) / new flow - 1
///   line by least squares; slope +- t(n - 2) x its standard error
///
/// Over ground when every point has it, else over liquid, else over days (a month is 30.4375 days).
/// With a date on every point too, the crossing of ground or liquid is also given as a day, at the
/// mean pace between first and last point.
///
/// @errors invalid_input (no point, no new flow, a point that cannot be placed), out_of_range,
///         inconsistent (a pressure on one side only)
/// @valid  1 to 1000 points; wear goes faster at first and the line is then no forecast
/// @source square-root law as core/tips/capacity.hpp; 10 %: Agricultural Engineering 2018, doi
///         10.1515/agriceng-2018-0037; least squares: NIST StRD Norris
/// @cases  tests/cases/tips/wear.case
/// Identities: the unit of ground or flow never matters; the order of the points never matters.
[[nodiscard]] Result<WearAnswer> wear(const WearRequest& request, Notes& notes);

}  // namespace swathbook::job
