#include "core/weather/spray_window.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/civil_time.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "core/weather/detail/window_rows.hpp"

namespace swathbook::weather {
namespace {

using detail::Observed;

void fill_speeds(SprayWindowAnswer& answer, const Observed& seen, Notes& notes) {
    double sum = 0.0;
    for (const WeatherReading* reading : seen.used) {
        const Speed wind = reading->wind.value;
        sum += wind.si();
        answer.lowest_wind = std::min(answer.lowest_wind.value_or(wind), wind);
        answer.highest_wind = std::max(answer.highest_wind.value_or(wind), wind);
        if (reading->gust) {
            answer.greatest_gust =
                std::max(answer.greatest_gust.value_or(Speed{}), reading->gust->value);
        }
    }
    if (seen.used.empty()) {
        return;
    }
    answer.mean_wind = Speed::from_si(sum / static_cast<double>(seen.used.size()));
    notes.show([&] {
        return Step{
            "Mean wind",
            fmt::format("{} / {}", show(Speed::from_si(sum), notes.units()), seen.used.size()),
            show(*answer.mean_wind, notes.units())};
    });
}

void fill_direction(SprayWindowAnswer& answer, const Observed& seen, Notes& notes) {
    constexpr double steady_length = 0.7;
    if (seen.from.empty()) {
        return;
    }
    std::vector<Angle> angles;
    angles.reserve(seen.from.size());
    for (const Direction& from : seen.from) {
        angles.push_back(from.angle);
    }
    const MeanDirection mean = mean_of(angles);
    answer.resultant_length = mean.resultant_length;
    answer.mean_wind_from = mean.mean;
    answer.direction_deviation = mean.deviation;
    if (mean.mean) {
        answer.mean_wind_from_word = std::string(compass_word(*mean.mean));
    }
    notes.show([&] {
        std::string all;
        for (const Angle angle : angles) {
            all += fmt::format("{}{}", all.empty() ? "" : ", ", show_number(angle.in(degrees), 4));
        }
        return Step{"Mean direction on the circle",
                    fmt::format("arrows at {} deg, end to end", all),
                    mean.mean ? fmt::format("{}, length {}", direction_words(*mean.mean),
                                            show_fixed(mean.resultant_length, 3))
                              : std::string("none: the arrows cancel"),
                    "Jammalamadaka and SenGupta, Topics in Circular Statistics, 2001"};
    });
    if (mean.resultant_length < steady_length) {
        notes.find(Severity::warning, "wind_turns",
                   fmt::format("The directions read do not agree (mean resultant length {}, where "
                               "1 is one direction): the wind turns, and no direction can be "
                               "relied on.",
                               show_fixed(mean.resultant_length, 2)),
                   "common practice");
    }
}

void remark_gust(const SprayWindowAnswer& answer, const SprayWindowRequest& request, Notes& notes) {
    for (const WeatherLimits& limits : request.limits) {
        if (limits.max_wind && !limits.max_gust && answer.greatest_gust &&
            *answer.greatest_gust > limits.max_wind->value) {
            notes.find(Severity::warning, "gust_over_wind_limit",
                       fmt::format("A gust of {} is above the wind limit of {} ({}), which has no "
                                   "gust limit of its own entered. Read what that limit counts.",
                                   show(*answer.greatest_gust, notes.units()),
                                   show(limits.max_wind->value, notes.units()), limits.name));
        }
    }
}

void remark_readings(const SprayWindowAnswer& answer, const Observed& seen, Notes& notes) {
    if (seen.old > 0) {
        notes.find(Severity::warning, "reading_old",
                   fmt::format("{} reading{} more than {} old and {} not counted.", seen.old,
                               seen.old == 1 ? " is" : "s are", show(seen.good_for, "min"),
                               seen.old == 1 ? "is" : "are"));
    }
    const bool high = std::any_of(seen.used.begin(), seen.used.end(), [](const auto* reading) {
        return reading->at_height && reading->at_height->value.in(feet) > 10.0;
    });
    if (high && answer.mean_wind) {
        notes.find(Severity::advice, "read_high",
                   "A wind was read more than 10 ft (3 m) up, where it blows harder than at the "
                   "boom. Against a highest wind that errs on the careful side, against a lowest "
                   "wind and calm it does not.",
                   "common practice");
    }
}

void remark_limits(const SprayWindowRequest& request, Notes& notes) {
    const WeatherLimits* low = nullptr;
    const WeatherLimits* high = nullptr;
    for (const WeatherLimits& limits : request.limits) {
        if (limits.max_wind &&
            (high == nullptr || limits.max_wind->value < high->max_wind->value)) {
            high = &limits;
        }
        if (limits.min_wind && (low == nullptr || limits.min_wind->value > low->min_wind->value)) {
            low = &limits;
        }
    }
    if (low != nullptr && high != nullptr && low->min_wind->value > high->max_wind->value) {
        notes.find(Severity::stop, "limits_leave_no_wind",
                   fmt::format("{} asks for at least {} and {} for at most {}: no wind meets both.",
                               low->name, show(low->min_wind->value, notes.units()), high->name,
                               show(high->max_wind->value, notes.units())));
    }
}

std::string_view words_of(WindowCheck what) {
    switch (what) {
        case WindowCheck::max_wind: return "Highest wind";
        case WindowCheck::min_wind: return "Lowest wind";
        case WindowCheck::max_gust: return "Highest gust";
        case WindowCheck::max_temperature: return "Highest temperature";
        case WindowCheck::min_temperature: return "Lowest temperature";
        case WindowCheck::min_humidity: return "Lowest humidity";
        case WindowCheck::rain: return "Rainfast time";
        default: return "Limit";
    }
}

/// The sentences of the rows with one verdict, and how many there are.
std::string texts_of(const std::vector<WindowRow>& rows, CheckVerdict verdict) {
    std::string all;
    for (const WindowRow& row : rows) {
        if (row.verdict == verdict) {
            all += all.empty() ? "" : " ";
            all += row.text;
        }
    }
    return all;
}

bool any_limit(const std::vector<WindowRow>& rows) {
    return std::any_of(rows.begin(), rows.end(), [](const WindowRow& row) {
        return row.what != WindowCheck::reading_age && row.what != WindowCheck::inversion &&
               row.what != WindowCheck::calm && row.what != WindowCheck::rain &&
               row.verdict != CheckVerdict::not_entered;
    });
}

void decide(SprayWindowAnswer& answer) {
    const std::string stops = texts_of(answer.checks, CheckVerdict::stop);
    const std::string unknown = texts_of(answer.checks, CheckVerdict::not_known);
    for (const WindowRow& row : answer.checks) {
        if (row.verdict == CheckVerdict::not_entered) {
            answer.not_entered.push_back(row.text);
        } else if (!row.not_entered_by.empty()) {
            std::string names;
            for (const std::string& name : row.not_entered_by) {
                names += (names.empty() ? "" : ", ") + name;
            }
            answer.not_entered.push_back(
                fmt::format("{} not entered for {}.", words_of(row.what), names));
        }
    }
    if (!stops.empty()) {
        answer.verdict = WindowVerdict::stop;
        answer.text = "Stop. " + stops;
        return;
    }
    if (!any_limit(answer.checks)) {
        answer.verdict = WindowVerdict::not_known;
        answer.text =
            "Not known: no limit of wind, temperature, humidity or direction was entered. "
            "Enter those of the labels in hand." +
            (unknown.empty() ? "" : " " + unknown);
        return;
    }
    answer.verdict = unknown.empty() ? WindowVerdict::go : WindowVerdict::not_known;
    answer.text =
        unknown.empty()
            ? fmt::format(
                  "Go by the limits entered; {} {} not entered or not for all. Read the "
                  "labels for them, and stop when the weather changes.",
                  answer.not_entered.size(), answer.not_entered.size() == 1 ? "is" : "are")
            : "Not known. " + unknown;
}

}  // namespace

Result<SprayWindowAnswer> spray_window(const SprayWindowRequest& request, Notes& notes) {
    SWATHBOOK_TRY(seen, detail::observed_of(request));
    SprayWindowAnswer answer;
    answer.readings_used = static_cast<int>(seen.used.size());
    const std::int64_t age = seconds_of(seen.now) - seconds_of(seen.last_taken);
    answer.last_reading_age =
        Duration::from_si(static_cast<double>(std::max<std::int64_t>(age, 0)));
    answer.readings_good_until =
        text_of(plus_seconds(seen.last_taken, static_cast<std::int64_t>(seen.good_for.si())));
    fill_speeds(answer, seen, notes);
    fill_direction(answer, seen, notes);
    answer.checks.push_back(detail::age_row(request, seen));
    answer.checks.push_back(detail::inversion_row(seen, notes));
    answer.checks.push_back(detail::calm_row(seen, notes));
    detail::add_amount_rows(answer.checks, request, seen, notes);
    detail::add_sector_rows(answer.checks, request, seen);
    SWATHBOOK_TRY(rain, detail::rain_row(request, seen, answer, notes));
    answer.checks.push_back(std::move(rain));
    remark_gust(answer, request, notes);
    remark_readings(answer, seen, notes);
    remark_limits(request, notes);
    decide(answer);
    notes.find(
        Severity::note, "limits_as_typed",
        "Every limit is as it was typed from a label, contract or rule; what was not entered "
        "is not allowed by this answer. Keep people and animals out, and read wind where "
        "the spray is released.");
    return answer;
}

}  // namespace swathbook::weather
