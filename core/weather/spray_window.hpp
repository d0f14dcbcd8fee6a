#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"

/// Go or stop, by the readings just taken and the limits that were typed.
namespace swathbook::weather {

/// What the eye sees of air that does not mix: each is a sign of an inversion.
enum class InversionCue : std::uint8_t {
    none_seen,                ///< somebody looked, and saw none of them
    still_air,                ///< no wind to feel, or it comes and goes from all sides
    smoke_or_dust_hangs,      ///< in a layer, instead of rising and thinning
    fog_or_dew,               ///< fog, mist, dew or frost on the ground
    clear_calm_dusk_to_dawn,  ///< clear sky and little wind between evening and morning
    clouds_dying_out,         ///< fair-weather clouds flatten and vanish towards evening
    cold_air_pools,           ///< colder in the hollow than on the slope
};

/// Temperature read at two heights: warmer above than below is an inversion.
struct MeasuredInversion {
    Reading<Kind::length> low_height;
    Reading<Kind::temperature> low_temperature;
    Reading<Kind::length> high_height;
    Reading<Kind::temperature> high_temperature;
};

/// One look at the weather, where the spraying is.
struct WeatherReading {
    std::string taken{};        ///< with the zone: 2031-05-04T14:20-05:00
    Reading<Kind::speed> wind;  ///< 0 is a reading: calm
    std::optional<Reading<Kind::speed>> gust{};
    std::string wind_from{};  ///< degrees or a point of the compass; empty when not read
    std::optional<Reading<Kind::temperature>> temperature{};
    std::optional<Reading<Kind::fraction>> humidity{};
    std::optional<Reading<Kind::length>> at_height{};
    std::vector<InversionCue> cues{};
    std::optional<MeasuredInversion> measured_inversion{};
};

/// A sector of the compass round a bearing.
struct WindSector {
    std::string name{};     ///< "school", "creek"
    std::string bearing{};  ///< degrees or a point of the compass
    std::optional<Reading<Kind::angle>>
        half_angle{};  ///< to each side; 45 degrees when not entered
};

/// The limits of one label, contract or rule. What is left out is not entered, never "no limit".
struct WeatherLimits {
    std::string name{};  ///< whose: product, contract, state rule
    std::optional<Reading<Kind::speed>> max_wind{};
    std::optional<Reading<Kind::speed>> min_wind{};
    std::optional<Reading<Kind::speed>> max_gust{};
    std::optional<Reading<Kind::temperature>> max_temperature{};
    std::optional<Reading<Kind::temperature>> min_temperature{};
    std::optional<Reading<Kind::fraction>> min_humidity{};
    std::vector<WindSector> keep_away{};          ///< bearing to what the wind must not blow at
    std::vector<WindSector> wind_from_allowed{};  ///< where the wind must come from
    std::optional<Reading<Kind::duration>> rainfast{};
};

struct SprayWindowRequest {
    std::vector<WeatherReading> readings{};
    std::vector<WeatherLimits> limits{};
    std::string now{};
    std::optional<Reading<Kind::duration>> reading_good_for{};  ///< 30 min when not entered
    std::string rain_expected{};                                ///< empty: no forecast entered
    std::optional<Reading<Kind::duration>> rainfast{};  ///< longest of the job, beside `limits`
};

enum class WindowCheck : std::uint8_t {
    reading_age,
    inversion,
    calm,
    max_wind,
    min_wind,
    max_gust,
    max_temperature,
    min_temperature,
    min_humidity,
    keep_away,
    wind_from_allowed,
    rain,
};

enum class CheckVerdict : std::uint8_t {
    go,           ///< within the strictest limit entered
    stop,         ///< beyond it
    not_known,    ///< a limit or a hazard, and nothing read to judge it by
    not_entered,  ///< nobody typed this limit; that is not "no limit"
};

/// Never "not entered": what was not entered keeps nobody from stopping, and allows nothing.
enum class WindowVerdict : std::uint8_t { go, stop, not_known };

struct WindowRow {
    WindowCheck what = WindowCheck::max_wind;
    CheckVerdict verdict = CheckVerdict::not_entered;
    std::string reading{};  ///< "9.2 mph"
    std::string limit{};    ///< the strictest: "10 mph"
    std::string whose{};    ///< who sets it; the place for a sector
    std::string margin{};   ///< what is left of it; below zero when beyond: "-1.5 mph"
    std::vector<std::string> not_entered_by{};
    std::string text{};
};

struct SprayWindowAnswer {
    WindowVerdict verdict = WindowVerdict::not_known;
    std::string text{};
    int readings_used = 0;  ///< those still good at `now`
    std::optional<Duration> last_reading_age{};
    std::string readings_good_until{};
    std::optional<Speed> mean_wind{};
    std::optional<Speed> lowest_wind{};
    std::optional<Speed> highest_wind{};
    std::optional<Speed> greatest_gust{};
    std::optional<Angle> mean_wind_from{};
    std::string mean_wind_from_word{};
    std::optional<double> resultant_length{};
    std::optional<Angle> direction_deviation{};
    std::vector<WindowRow> checks{};
    std::vector<std::string> not_entered{};  ///< the same rows in words, to be shown beside the go
    std::string latest_stop{};               ///< rain expected less the longest rainfast time
    std::optional<Duration> time_left{};     ///< until then
};

/// Judges the readings that are still good against the strictest of all limits of each kind.
///
/// A wind limit is held against the highest (or lowest) single reading, not the mean. An inversion,
/// seen or measured, stops whatever the limits say; so does wind below 3 mph, unless two
/// thermometers have shown cooler air above. Nothing here is worked out from a drift curve.
///
/// @errors invalid_input (no reading, no `now`, a name or time missing or unreadable), out_of_range
///         (a figure no weather has), inconsistent (a gust below its wind, a reading after `now`,
///         "none_seen" beside a cue)
/// @valid   readings within two days of `now`, at most 1000; wind to 110 mph, -50 to 60 C
/// @source  calm below 3 mph: Pesticide Environmental Stewardship, "Evaluate the weather"; warmer
///          air above cooler: North Dakota State University, Crop and Pest Report, 20 May 2021;
///          cues: University of Missouri (2017) and Clemson Extension; docs/methods/weather.md
/// @cases   tests/cases/weather/spray_window.case
/// Identities: a further limit never turns stop or not known into go; more wind never turns a stop
/// by max_wind into go.
[[nodiscard]] Result<SprayWindowAnswer> spray_window(const SprayWindowRequest& request,
                                                     Notes& notes);

}  // namespace swathbook::weather
