#include "core/weather/detail/observed.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/civil_time.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::weather::detail {
namespace {

constexpr std::size_t most_readings = 1000;
constexpr std::int64_t clock_slack_s = 120;  // two clocks never agree to the second
constexpr std::int64_t oldest_s = std::int64_t{2} * 86400;
constexpr double default_good_minutes = 30.0;
constexpr double longest_good_hours = 24.0;

template <Kind K>
Result<void> require_between(const std::optional<Reading<K>>& reading, Quantity<K> low,
                             Quantity<K> high, const std::string& field, std::string_view what) {
    if (!reading || (reading->value >= low && reading->value <= high)) {
        return {};
    }
    return fail(ErrorCode::out_of_range, field,
                fmt::format("{} is {}, outside {} to {} ({} to {}). Check the number and its unit.",
                            what, show(*reading, UnitSystem::us), show(low, UnitSystem::us),
                            show(high, UnitSystem::us), show(low, UnitSystem::metric),
                            show(high, UnitSystem::metric)));
}

Result<void> require_wind(const std::optional<Reading<Kind::speed>>& wind, const std::string& field,
                          std::string_view what) {
    return require_between(wind, Speed{}, Speed::of(50.0, metres_per_second), field, what);
}
Result<void> require_air(const std::optional<Reading<Kind::temperature>>& air,
                         const std::string& field, std::string_view what) {
    return require_between(air, Temperature::of(-50.0, degrees_celsius),
                           Temperature::of(60.0, degrees_celsius), field, what);
}
Result<void> require_share(const std::optional<Reading<Kind::fraction>>& share,
                           const std::string& field, std::string_view what) {
    return require_between(share, Fraction{}, Fraction::of(1.0, ones), field, what);
}

Result<CivilTime> moment_of(const std::string& text, const std::string& field,
                            std::string_view what) {
    if (text.empty()) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("{} is not entered. Write it with the zone, as "
                                "2031-05-04T14:20-05:00.",
                                what));
    }
    return parse_civil_time(text, field);
}

Result<void> check_measured(const MeasuredInversion& measured, const std::string& field) {
    SWATHBOOK_CHECK(require_usable(measured.low_height, field + ".low_height", "The low height"));
    SWATHBOOK_CHECK(
        require_usable(measured.high_height, field + ".high_height", "The high height"));
    SWATHBOOK_CHECK(require_air(measured.low_temperature, field + ".low_temperature",
                                "The temperature at the low height"));
    SWATHBOOK_CHECK(require_air(measured.high_temperature, field + ".high_temperature",
                                "The temperature at the high height"));
    if (measured.high_height.value <= measured.low_height.value) {
        return fail(ErrorCode::inconsistent, field + ".high_height",
                    fmt::format("The high thermometer at {} is not above the low one at {}. "
                                "Exchange them, or check the heights.",
                                show(measured.high_height, UnitSystem::us),
                                show(measured.low_height, UnitSystem::us)));
    }
    return {};
}

Result<void> check_cues(const WeatherReading& reading, const std::string& field) {
    const auto none = std::count(reading.cues.begin(), reading.cues.end(), InversionCue::none_seen);
    if (none > 0 && static_cast<std::size_t>(none) < reading.cues.size()) {
        return fail(ErrorCode::inconsistent, field + ".cues",
                    "\"none_seen\" stands beside a cue that was seen. Take one of them out.");
    }
    return {};
}

Result<void> check_reading(const WeatherReading& reading, const std::string& field) {
    SWATHBOOK_CHECK(require_wind(reading.wind, field + ".wind", "Wind"));
    SWATHBOOK_CHECK(require_wind(reading.gust, field + ".gust", "The gust"));
    if (reading.gust && reading.gust->value < reading.wind.value) {
        return fail(
            ErrorCode::inconsistent, field + ".gust",
            fmt::format("The gust of {} is below the wind of {}. A gust is the highest "
                        "moment of the same minutes; exchange or correct them.",
                        show(*reading.gust, UnitSystem::us), show(reading.wind, UnitSystem::us)));
    }
    SWATHBOOK_CHECK(require_air(reading.temperature, field + ".temperature", "Air temperature"));
    SWATHBOOK_CHECK(require_share(reading.humidity, field + ".humidity", "Humidity"));
    SWATHBOOK_CHECK(
        require_usable(reading.at_height, field + ".at_height", "The height of the reading"));
    SWATHBOOK_CHECK(check_cues(reading, field));
    return reading.measured_inversion
               ? check_measured(*reading.measured_inversion, field + ".measured_inversion")
               : Result<void>{};
}

Result<void> check_sectors(const std::vector<WindSector>& sectors, const std::string& field) {
    for (std::size_t i = 0; i < sectors.size(); ++i) {
        const std::string at = fmt::format("{}[{}]", field, i);
        SWATHBOOK_CHECK(parse_direction(sectors[i].bearing, at + ".bearing"));
        const auto& half = sectors[i].half_angle;
        SWATHBOOK_CHECK(require_between(half, Angle::of(0.0, degrees), Angle::of(180.0, degrees),
                                        at + ".half_angle", "The angle to each side"));
    }
    return {};
}

Result<void> check_limits(const WeatherLimits& limits, const std::string& field) {
    if (limits.name.empty()) {
        return fail(ErrorCode::invalid_input, field + ".name",
                    "Say whose limits these are: the product, the contract, the state rule.");
    }
    SWATHBOOK_CHECK(require_wind(limits.max_wind, field + ".max_wind", "The highest wind"));
    SWATHBOOK_CHECK(require_wind(limits.min_wind, field + ".min_wind", "The lowest wind"));
    SWATHBOOK_CHECK(require_wind(limits.max_gust, field + ".max_gust", "The highest gust"));
    SWATHBOOK_CHECK(
        require_air(limits.max_temperature, field + ".max_temperature", "The highest temperature"));
    SWATHBOOK_CHECK(
        require_air(limits.min_temperature, field + ".min_temperature", "The lowest temperature"));
    SWATHBOOK_CHECK(
        require_share(limits.min_humidity, field + ".min_humidity", "The lowest humidity"));
    SWATHBOOK_CHECK(check_sectors(limits.keep_away, field + ".keep_away"));
    SWATHBOOK_CHECK(check_sectors(limits.wind_from_allowed, field + ".wind_from_allowed"));
    return require_between(limits.rainfast, Duration{}, Duration::of(30.0, days),
                           field + ".rainfast", "The rainfast time");
}

Result<void> take_reading(Observed& seen, const WeatherReading& reading, const std::string& field) {
    SWATHBOOK_CHECK(check_reading(reading, field));
    SWATHBOOK_TRY(taken, moment_of(reading.taken, field + ".taken", "When the reading was taken"));
    std::optional<Direction> from;
    if (!reading.wind_from.empty()) {
        SWATHBOOK_TRY(read, parse_direction(reading.wind_from, field + ".wind_from"));
        from = read;
    }
    const std::int64_t age = seconds_of(seen.now) - seconds_of(taken);
    if (age < -clock_slack_s || age > oldest_s) {
        return fail(ErrorCode::inconsistent, field + ".taken",
                    fmt::format("The reading was taken {}, {} `now`, {}. Check the day, the hour "
                                "and the zone of both.",
                                words_of(taken), age < 0 ? "after" : "more than two days before",
                                words_of(seen.now)));
    }
    const bool first = seen.used.empty() && seen.old == 0;
    if (first || seconds_of(taken) > seconds_of(seen.last_taken)) {
        seen.last_taken = taken;
    }
    if (static_cast<double>(age) > seen.good_for.si()) {
        ++seen.old;
        return {};
    }
    seen.used.push_back(&reading);
    if (from && reading.wind.value.si() > 0.0) {
        seen.from.push_back(*from);
    }
    seen.direction_missing = seen.direction_missing || (!from && reading.wind.value.si() > 0.0);
    return {};
}

}  // namespace

Result<Observed> observed_of(const SprayWindowRequest& request) {
    Observed seen;
    SWATHBOOK_TRY(now, moment_of(request.now, "now", "The time of asking"));
    seen.now = now;
    if (request.readings.empty() || request.readings.size() > most_readings) {
        return fail(ErrorCode::invalid_input, "readings",
                    fmt::format("There are {} readings; enter 1 to {}: wind, its direction, and "
                                "the time it was read.",
                                request.readings.size(), most_readings));
    }
    SWATHBOOK_CHECK(require_usable(request.reading_good_for, "reading_good_for",
                                   "How long a reading is good for"));
    SWATHBOOK_CHECK(require_between(request.reading_good_for, Duration{},
                                    Duration::of(longest_good_hours, hours), "reading_good_for",
                                    "How long a reading is good for"));
    SWATHBOOK_CHECK(require_between(request.rainfast, Duration{}, Duration::of(30.0, days),
                                    "rainfast", "The rainfast time"));
    seen.good_for = request.reading_good_for ? request.reading_good_for->value
                                             : Duration::of(default_good_minutes, minutes);
    for (std::size_t i = 0; i < request.limits.size(); ++i) {
        SWATHBOOK_CHECK(check_limits(request.limits[i], fmt::format("limits[{}]", i)));
    }
    for (std::size_t i = 0; i < request.readings.size(); ++i) {
        SWATHBOOK_CHECK(take_reading(seen, request.readings[i], fmt::format("readings[{}]", i)));
    }
    return seen;
}

}  // namespace swathbook::weather::detail
