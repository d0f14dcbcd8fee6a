#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/base/civil_time.hpp"
#include "core/quantity/print.hpp"
#include "core/weather/detail/window_rows.hpp"

namespace swathbook::weather::detail {
namespace {

struct TypedLimit {
    double si = 0.0;
    std::string_view whose{};
};

/// One kind of amount: what was read of it, and everybody's limit.
struct AmountCheck {
    WindowCheck what;
    Kind kind;     ///< of the amount
    bool at_most;  ///< the limit is an upper one
    std::string_view name;
    std::optional<double> reading{};  ///< the worst of the readings used
    double half_step = 0.0;
    std::vector<TypedLimit> limits{};
    std::vector<std::string> not_entered_by{};
};

template <Kind K>
void take(AmountCheck& check, const Reading<K>& reading) {
    const double si = reading.value.si();
    if (!check.reading || (check.at_most ? si > *check.reading : si < *check.reading)) {
        check.reading = si;
        check.half_step = reading.half_step_si;
    }
}

template <Kind K>
void limits_into(AmountCheck& check, const std::vector<WeatherLimits>& all,
                 std::optional<Reading<K>> WeatherLimits::* member) {
    for (const WeatherLimits& limits : all) {
        if (limits.*member) {
            check.limits.push_back({(limits.*member)->value.si(), limits.name});
        } else {
            check.not_entered_by.push_back(limits.name);
        }
    }
}

std::string difference(double si, Kind kind, UnitSystem units) {
    return kind == Kind::temperature ? change_words(si, units) : show(si, kind, units);
}

/// Whole text and verdict of one row. `margin` below zero is beyond the limit.
WindowRow row_of(const AmountCheck& check, Notes& notes) {
    WindowRow row;
    row.what = check.what;
    row.not_entered_by = check.not_entered_by;
    if (check.reading) {
        row.reading = show(*check.reading, check.kind, notes.units());
    }
    if (check.limits.empty()) {
        row.text = fmt::format("{} limit not entered: read the labels for it.", check.name);
        return row;
    }
    const auto tighter = [&](const TypedLimit& a, const TypedLimit& b) {
        return check.at_most ? a.si < b.si : a.si > b.si;
    };
    const TypedLimit& strictest =
        *std::min_element(check.limits.begin(), check.limits.end(), tighter);
    row.limit = show(strictest.si, check.kind, notes.units());
    row.whose = std::string(strictest.whose);
    const std::string asked =
        fmt::format("{} {} ({})", check.at_most ? "at most" : "at least", row.limit, row.whose);
    if (!check.reading) {
        row.verdict = CheckVerdict::not_known;
        row.text = fmt::format("{} not read; {} is asked.", check.name, asked);
        return row;
    }
    const double left =
        check.at_most ? strictest.si - *check.reading : *check.reading - strictest.si;
    row.margin = difference(left, check.kind, notes.units());
    row.verdict = left < 0.0 ? CheckVerdict::stop : CheckVerdict::go;
    row.text = left < 0.0
                   ? fmt::format("{} {}, {}: beyond it by {}.", check.name, row.reading, asked,
                                 difference(-left, check.kind, notes.units()))
                   : fmt::format("{} {}, {}: {} left.", check.name, row.reading, asked, row.margin);
    if (left >= 0.0 && left < check.half_step) {
        notes.find(Severity::warning, "within_the_reading",
                   fmt::format("{} The last digit read is good to half a step, {}: it may be "
                               "beyond the limit already.",
                               row.text, difference(check.half_step, check.kind, notes.units())));
    }
    return row;
}

}  // namespace

void add_amount_rows(std::vector<WindowRow>& rows, const SprayWindowRequest& request,
                     const Observed& seen, Notes& notes) {
    using W = WindowCheck;
    std::array<AmountCheck, 6> checks{{
        {W::max_wind, Kind::speed, true, "Wind"},
        {W::min_wind, Kind::speed, false, "Lowest wind"},
        {W::max_gust, Kind::speed, true, "Gust"},
        {W::max_temperature, Kind::temperature, true, "Temperature"},
        {W::min_temperature, Kind::temperature, false, "Lowest temperature"},
        {W::min_humidity, Kind::fraction, false, "Humidity"},
    }};
    auto& [most, least, gust, warmest, coldest, driest] = checks;
    for (const WeatherReading* reading : seen.used) {
        take(most, reading->wind);
        take(least, reading->wind);
        if (reading->gust) {
            take(gust, *reading->gust);
        }
        if (reading->temperature) {
            take(warmest, *reading->temperature);
            take(coldest, *reading->temperature);
        }
        if (reading->humidity) {
            take(driest, *reading->humidity);
        }
    }
    limits_into(most, request.limits, &WeatherLimits::max_wind);
    limits_into(least, request.limits, &WeatherLimits::min_wind);
    limits_into(gust, request.limits, &WeatherLimits::max_gust);
    limits_into(warmest, request.limits, &WeatherLimits::max_temperature);
    limits_into(coldest, request.limits, &WeatherLimits::min_temperature);
    limits_into(driest, request.limits, &WeatherLimits::min_humidity);
    for (const AmountCheck& check : checks) {
        rows.push_back(row_of(check, notes));
    }
}

}  // namespace swathbook::weather::detail
