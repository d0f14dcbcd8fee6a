#include "core/weather/detail/window_rows.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/base/civil_time.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::weather::detail {
namespace {

constexpr std::string_view inversion_source =
    "North Dakota State University, Crop and Pest Report, 20 May 2021";
constexpr std::string_view cue_source =
    "University of Missouri, 2017; Clemson Extension, drift labeling";
constexpr std::string_view calm_source =
    "Pesticide Environmental Stewardship, Evaluate the weather";
constexpr double default_half_angle_deg = 45.0;

constexpr std::array<std::string_view, 7> cue_words{"none seen",
                                                    "still air",
                                                    "smoke or dust hangs",
                                                    "fog or dew",
                                                    "clear calm evening or night",
                                                    "clouds dying out",
                                                    "cold air pools"};

std::string cues_seen(const Observed& seen) {
    std::string words;
    for (std::size_t i = 1; i < cue_words.size(); ++i) {
        const bool any = std::any_of(seen.used.begin(), seen.used.end(), [&](const auto* reading) {
            return std::count(reading->cues.begin(), reading->cues.end(),
                              static_cast<InversionCue>(i)) > 0;
        });
        if (any) {
            words += words.empty() ? "" : ", ";
            words += cue_words[i];
        }
    }
    return words;
}

bool somebody_looked(const Observed& seen) {
    return std::any_of(seen.used.begin(), seen.used.end(),
                       [](const auto* reading) { return !reading->cues.empty(); });
}

/// How much warmer the air is above, and how finely that is known.
struct Layer {
    const MeasuredInversion* measured = nullptr;
    double warmer_above = 0.0;
    double half_step = 0.0;
};

/// The most inverted of the pairs measured.
Layer layer_of(const Observed& seen) {
    Layer worst;
    for (const WeatherReading* reading : seen.used) {
        if (!reading->measured_inversion) {
            continue;
        }
        const MeasuredInversion& pair = *reading->measured_inversion;
        const double warmer = pair.high_temperature.value.si() - pair.low_temperature.value.si();
        if (worst.measured == nullptr || warmer > worst.warmer_above) {
            worst = {&pair, warmer,
                     pair.high_temperature.half_step_si + pair.low_temperature.half_step_si};
        }
    }
    return worst;
}

/// "Warmer by 2 °F at 10 ft than at 3 ft"
std::string layer_words(const Layer& layer, UnitSystem units) {
    return fmt::format("{} by {} at {} than at {}", layer.warmer_above > 0.0 ? "warmer" : "cooler",
                       change_words(std::fabs(layer.warmer_above), units),
                       show(layer.measured->high_height.value, units),
                       show(layer.measured->low_height.value, units));
}

/// Whether two thermometers have shown cooler air above, beyond what they can be read to.
bool mixing_measured(const Observed& seen) {
    const Layer layer = layer_of(seen);
    return layer.measured != nullptr && layer.warmer_above < -layer.half_step;
}

std::string minutes_words(std::int64_t seconds) {
    return fmt::format("{} min", show_number(static_cast<double>(seconds) / 60.0, 3));
}

void show_layer(const Layer& layer, Notes& notes) {
    notes.show([&] {
        const MeasuredInversion& pair = *layer.measured;
        const UnitSystem units = notes.units();
        return Step{"Air above against air below",
                    fmt::format("{} at {} less {} at {}", show(pair.high_temperature.value, units),
                                show(pair.high_height.value, units),
                                show(pair.low_temperature.value, units),
                                show(pair.low_height.value, units)),
                    change_words(layer.warmer_above, units), std::string(inversion_source)};
    });
}

}  // namespace

std::string change_words(double kelvins_apart, UnitSystem units) {
    const bool us = units == UnitSystem::us;
    return fmt::format("{} {}", show_number(us ? kelvins_apart * 9.0 / 5.0 : kelvins_apart, 3),
                       us ? "degF" : "degC");
}

WindowRow age_row(const SprayWindowRequest& request, const Observed& seen) {
    WindowRow row;
    row.what = WindowCheck::reading_age;
    const std::int64_t age =
        std::max<std::int64_t>(seconds_of(seen.now) - seconds_of(seen.last_taken), 0);
    const auto good = static_cast<std::int64_t>(seen.good_for.si());
    row.reading = minutes_words(age);
    row.limit = minutes_words(good);
    row.whose = request.reading_good_for ? "as entered" : "common practice";
    row.margin = minutes_words(good - age);
    row.verdict = seen.used.empty() ? CheckVerdict::not_known : CheckVerdict::go;
    row.text =
        seen.used.empty()
            ? fmt::format("The last reading is {} old; a reading counts for {}. Read again.",
                          row.reading, row.limit)
            : fmt::format("The last reading is {} old and counts for {}.", row.reading, row.limit);
    return row;
}

WindowRow inversion_row(const Observed& seen, Notes& notes) {
    WindowRow row;
    row.what = WindowCheck::inversion;
    row.limit = "none";
    row.whose = "hard stop";
    const std::string cues = cues_seen(seen);
    const Layer layer = layer_of(seen);
    row.reading = cues;
    if (layer.measured != nullptr) {
        show_layer(layer, notes);
        row.reading += (cues.empty() ? "" : "; ") + layer_words(layer, notes.units());
        row.margin = change_words(-layer.warmer_above, notes.units());
    }
    const bool inverted = layer.measured != nullptr && layer.warmer_above > 0.0;
    if (inverted || !cues.empty()) {
        row.verdict = CheckVerdict::stop;
        row.text = fmt::format(
            "Inversion: {}. Fine spray hangs and travels in such air; wait until "
            "it mixes again.",
            row.reading);
        notes.find(Severity::stop, "inversion", row.text,
                   std::string(inverted ? inversion_source : cue_source));
        return row;
    }
    if (layer.measured == nullptr && !somebody_looked(seen)) {
        row.verdict = CheckVerdict::not_known;
        row.text =
            "Nobody has said whether an inversion was looked for. Look for its cues and "
            "enter those seen, or that none was seen.";
        return row;
    }
    row.verdict = CheckVerdict::go;
    row.reading = layer.measured != nullptr ? row.reading : "no cue seen";
    row.text = fmt::format("No inversion: {}.", row.reading);
    if (layer.measured != nullptr && layer.warmer_above >= -layer.half_step) {
        notes.find(Severity::advice, "inversion_within_reading",
                   fmt::format("The two temperatures agree within what they were read to, {}. Read "
                               "them to a tenth, and look for cues.",
                               change_words(layer.half_step, notes.units())));
    }
    return row;
}

WindowRow calm_row(const Observed& seen, Notes& notes) {
    WindowRow row;
    row.what = WindowCheck::calm;
    const Speed calm = Speed::of(calm_mph, miles_per_hour);
    row.limit = show(calm, notes.units());
    row.whose = "common practice";
    if (seen.used.empty()) {
        row.verdict = CheckVerdict::not_known;
        row.text = "No reading counts now, so nobody knows whether it is calm.";
        return row;
    }
    const auto* least = *std::min_element(
        seen.used.begin(), seen.used.end(),
        [](const auto* a, const auto* b) { return a->wind.value < b->wind.value; });
    row.reading = show(least->wind.value, notes.units());
    row.margin = show(least->wind.value - calm, notes.units());
    if (least->wind.value >= calm) {
        row.verdict = CheckVerdict::go;
        row.text = fmt::format("Wind {}, not calm (under {}).", row.reading, row.limit);
        return row;
    }
    if (mixing_measured(seen)) {
        row.verdict = CheckVerdict::go;
        row.text = fmt::format("Wind {} is calm (under {}), but the air above was measured cooler.",
                               row.reading, row.limit);
        notes.find(Severity::warning, "calm",
                   row.text + " So light a wind turns without notice: keep measuring both.",
                   std::string(calm_source));
        return row;
    }
    row.verdict = CheckVerdict::stop;
    row.text = fmt::format(
        "Wind {} is calm (under {}): its direction is anybody's guess and the "
        "air may be inverted. Wait for steady wind, or measure the temperature "
        "at two heights.",
        row.reading, row.limit);
    notes.find(Severity::stop, "calm", row.text, std::string(calm_source));
    return row;
}

namespace {

/// A sector with its texts read; both parsed before, so neither can fail here.
struct ReadSector {
    Angle bearing{};
    Angle half{};
};

ReadSector read_sector(const WindSector& sector) {
    ReadSector read;
    read.bearing = parse_direction(sector.bearing, "").value_or(Direction{}).angle;
    read.half =
        sector.half_angle ? sector.half_angle->value : Angle::of(default_half_angle_deg, degrees);
    return read;
}

/// What is left between a direction and a sector: above 0 outside it.
double clearance(const ReadSector& sector, Angle direction) {
    return angle_between(sector.bearing, direction).in(degrees)-sector.half.in(degrees);
}

std::string degrees_words(double number) {
    return fmt::format("{} deg", show_number(number, 3));
}

bool no_direction(WindowRow& row, const Observed& seen) {
    if (!seen.from.empty() && !seen.direction_missing) {
        return false;
    }
    row.verdict = CheckVerdict::not_known;
    row.text = fmt::format("{}: the wind must have a direction to be judged; {}.", row.limit,
                           seen.used.empty() ? "no reading counts now" : "a reading has none");
    return true;
}

WindowRow keep_away_row(const WeatherLimits& limits, const WindSector& sector,
                        const Observed& seen) {
    const ReadSector read = read_sector(sector);
    WindowRow row;
    row.what = WindowCheck::keep_away;
    row.whose = sector.name.empty() ? limits.name : sector.name + ", " + limits.name;
    row.limit = fmt::format("not towards {} within {}", direction_words(read.bearing),
                            degrees_words(read.half.in(degrees)));
    if (no_direction(row, seen)) {
        return row;
    }
    const auto left = [&](const Direction& from) { return clearance(read, opposite(from.angle)); };
    const Direction& worst = *std::min_element(
        seen.from.begin(), seen.from.end(),
        [&](const Direction& a, const Direction& b) { return left(a) < left(b); });
    row.reading = "from " + direction_words(worst.angle);
    row.margin = degrees_words(left(worst));
    row.verdict = left(worst) <= 0.0 ? CheckVerdict::stop : CheckVerdict::go;
    row.text =
        fmt::format("Wind {} goes {} past the bearing of {}, and {} or less is too near: {}.",
                    row.reading, degrees_words(left(worst) + read.half.in(degrees)), row.whose,
                    degrees_words(read.half.in(degrees)),
                    left(worst) <= 0.0 ? "it blows there" : row.margin + " left");
    return row;
}

/// Every reading must lie in one of the sectors of that limit.
WindowRow allowed_row(const WeatherLimits& limits, const Observed& seen) {
    WindowRow row;
    row.what = WindowCheck::wind_from_allowed;
    row.whose = limits.name;
    for (const WindSector& sector : limits.wind_from_allowed) {
        const ReadSector read = read_sector(sector);
        row.limit +=
            fmt::format("{}from {} within {}", row.limit.empty() ? "" : " or ",
                        direction_words(read.bearing), degrees_words(read.half.in(degrees)));
    }
    if (no_direction(row, seen)) {
        return row;
    }
    double least = 180.0;
    for (const Direction& from : seen.from) {
        double best = -180.0;
        for (const WindSector& sector : limits.wind_from_allowed) {
            best = std::max(best, -clearance(read_sector(sector), from.angle));
        }
        if (best < least) {
            least = best;
            row.reading = "from " + direction_words(from.angle);
        }
    }
    row.margin = degrees_words(least);
    row.verdict = least < 0.0 ? CheckVerdict::stop : CheckVerdict::go;
    row.text =
        fmt::format("Wind {}, allowed {} ({}): {}.", row.reading, row.limit, row.whose,
                    least < 0.0 ? "outside by " + degrees_words(-least) : row.margin + " left");
    return row;
}

struct LongestWait {
    std::optional<Duration> wait{};
    std::string whose{};
};

void take_rainfast(LongestWait& longest, const std::optional<Reading<Kind::duration>>& rainfast,
                   std::string_view whose) {
    if (rainfast && (!longest.wait || rainfast->value > *longest.wait)) {
        longest.wait = rainfast->value;
        longest.whose = std::string(whose);
    }
}

}  // namespace

void add_sector_rows(std::vector<WindowRow>& rows, const SprayWindowRequest& request,
                     const Observed& seen) {
    const std::size_t before = rows.size();
    for (const WeatherLimits& limits : request.limits) {
        for (const WindSector& sector : limits.keep_away) {
            rows.push_back(keep_away_row(limits, sector, seen));
        }
    }
    if (rows.size() == before) {
        WindowRow row;
        row.what = WindowCheck::keep_away;
        row.text = "No place to keep the spray away from was entered.";
        rows.push_back(std::move(row));
    }
    const std::size_t allowed = rows.size();
    for (const WeatherLimits& limits : request.limits) {
        if (!limits.wind_from_allowed.empty()) {
            rows.push_back(allowed_row(limits, seen));
        }
    }
    if (rows.size() == allowed) {
        WindowRow row;
        row.what = WindowCheck::wind_from_allowed;
        row.text = "No direction the wind must come from was entered.";
        rows.push_back(std::move(row));
    }
}

Result<WindowRow> rain_row(const SprayWindowRequest& request, const Observed& seen,
                           SprayWindowAnswer& answer, Notes& notes) {
    WindowRow row;
    row.what = WindowCheck::rain;
    if (request.rain_expected.empty()) {
        row.text = "No time of rain was entered: look at the forecast.";
        return row;
    }
    SWATHBOOK_TRY(rain, parse_civil_time(request.rain_expected, "rain_expected"));
    row.reading = "Rain " + words_of(rain);
    LongestWait longest;
    take_rainfast(longest, request.rainfast, "as entered");
    for (const WeatherLimits& limits : request.limits) {
        take_rainfast(longest, limits.rainfast, limits.name);
        if (!limits.rainfast && !request.rainfast) {
            row.not_entered_by.push_back(limits.name);
        }
    }
    if (!longest.wait) {
        row.verdict = CheckVerdict::not_known;
        row.text = fmt::format("{}, but no rainfast time was entered: read the label for it.",
                               row.reading);
        return row;
    }
    const auto wait = static_cast<std::int64_t>(std::ceil(longest.wait->si() / 60.0 - 1e-9)) * 60;
    const CivilTime stop = plus_seconds(rain, -wait);
    const std::int64_t left = seconds_of(stop) - seconds_of(seen.now);
    answer.latest_stop = text_of(stop);
    answer.time_left = Duration::from_si(static_cast<double>(left));
    row.limit = "stop by " + words_of(stop);
    row.whose = longest.whose;
    row.margin = minutes_words(left);
    row.verdict = left <= 0 ? CheckVerdict::stop : CheckVerdict::go;
    row.text = fmt::format("{}, {} rainfast ({}): {}; {}.", row.reading, minutes_words(wait),
                           row.whose, row.limit,
                           left <= 0 ? minutes_words(-left) + " too late" : row.margin + " left");
    notes.show([&] {
        return Step{"Latest stop before rain",
                    fmt::format("{} - {}", text_of(rain), minutes_words(wait)), text_of(stop)};
    });
    return row;
}

}  // namespace swathbook::weather::detail
