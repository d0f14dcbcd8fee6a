#include "core/job/detail/tip_wear.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include <fmt/format.h>

#include "core/calibration/tip_check_wear.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"

namespace swathbook::job::detail {
namespace {

using calibration::TipLimits;
using calibration::TipSetResult;

std::string percent(double fraction) {
    return fmt::format("{}{} %", fraction > 0.0 ? "+" : "", show_fixed(fraction * 100.0, 1));
}

Result<void> check_earlier(const EarlierTipCheck& earlier, std::size_t count, const Rated& rated) {
    if (!rated.flow) {
        return fail(ErrorCode::inconsistent, "rated_flow",
                    "Wear since the earlier check is counted from the maker's rating, and none is "
                    "given. Give the size, or the rated flow.");
    }
    if (earlier.flows.size() != count) {
        return fail(ErrorCode::inconsistent, "earlier.flows",
                    fmt::format("The earlier check has {} tips and this one {}. Give the same tips "
                                "in the same order.",
                                earlier.flows.size(), count));
    }
    for (std::size_t i = 0; i < count; ++i) {
        SWATHBOOK_CHECK(require_usable(earlier.flows[i], fmt::format("earlier.flows[{}]", i),
                                       fmt::format("The earlier flow of tip {}", i + 1)));
    }
    SWATHBOOK_CHECK(require_usable(earlier.pressure, "earlier.pressure", "The earlier pressure"));
    SWATHBOOK_CHECK(require_usable(earlier.area_since, "earlier.area_since", "The area since"));
    SWATHBOOK_CHECK(require_usable(earlier.time_since, "earlier.time_since", "The time since"));
    if (earlier.area_since || earlier.time_since) {
        return {};
    }
    return fail(ErrorCode::invalid_input, "earlier.area_since",
                "Give the area or the hours sprayed since the earlier check.");
}

template <Kind K>
Estimate<K> times(Quantity<K> used, const calibration::WearTrend& trend) {
    Estimate<K> left(used * *trend.left);
    if (trend.left_low) {
        left.low = used * *trend.left_low;
    }
    if (trend.left_high) {
        left.high = used * *trend.left_high;
    }
    return left;
}

void find_wear(const calibration::WearTrend& trend, double limit, const WearForecast& forecast,
               Notes& notes) {
    if (trend.gained <= 0.0) {
        notes.find(
            Severity::note, "no_wear_seen",
            fmt::format("Since the earlier check the set changed by {} of the rating. Tips do "
                        "not wear smaller: they were cleaned or changed, or the pressure was "
                        "not the same.",
                        percent(trend.gained)));
        return;
    }
    const std::string left =
        forecast.area_left ? show(forecast.area_left->value, notes.units(), 3)
        : forecast.time_left
            ? fmt::format("{} h", show_number(forecast.time_left->value.si() / 3600.0, 3))
            : std::string();
    notes.find(
        trend.left_high ? Severity::note : Severity::advice, "wear_forecast",
        fmt::format("The set gained {} of the rating since the earlier check. At that pace "
                    "its mean reaches {} after {} more.{} A straight line through two checks "
                    "is a reminder to check again, not a promise.",
                    percent(trend.gained), percent(limit), left,
                    trend.left_high ? ""
                                    : " The gain is within the spread of the readings, so "
                                      "there may be no wear at all."));
}

void show_wear(const calibration::WearTrend& trend, double limit, Notes& notes) {
    notes.show([&] {
        return Step{"Gain since the earlier check, mean of the tips",
                    fmt::format("{} now less {} then", percent(trend.now),
                                percent(trend.now - trend.gained)),
                    fmt::format("{} of the rating ({} to {}, 95 %)", percent(trend.gained),
                                percent(trend.gained_low), percent(trend.gained_high))};
    });
    if (trend.left) {
        notes.show([&] {
            return Step{"Left, in times the use between the checks",
                        fmt::format("({} - {}) / {}", percent(limit), percent(trend.now),
                                    percent(trend.gained)),
                        show_number(*trend.left, 3)};
        });
    }
}

}  // namespace

Result<WearForecast> forecast_wear(const EarlierTipCheck& earlier, const TipSetResult& judged,
                                   const Rated& rated, const TipLimits& limits, Notes& notes) {
    SWATHBOOK_CHECK(check_earlier(earlier, judged.tips.size(), rated));
    constexpr double usual_limit = 0.10;
    const double limit = limits.above_rating.value_or(usual_limit);
    const Flow rated_then =
        earlier.pressure ? tips::rated_flow_at(*rated.known, earlier.pressure->value) : *rated.flow;
    std::vector<double> now;
    std::vector<double> then;
    double resolution = 0.0;
    for (std::size_t i = 0; i < judged.tips.size(); ++i) {
        now.push_back(judged.tips[i].from_rating->si());
        then.push_back(earlier.flows[i].value / rated_then - 1.0);
        resolution = std::max(resolution, earlier.flows[i].half_step_si / rated_then.si());
    }
    const calibration::WearTrend trend = calibration::wear_between(now, then, resolution, limit);
    show_wear(trend, limit, notes);
    WearForecast forecast;
    forecast.gained = {Fraction::from_si(trend.gained), Fraction::from_si(trend.gained_low),
                       Fraction::from_si(trend.gained_high)};
    if (trend.left && earlier.area_since) {
        forecast.area_left = times(earlier.area_since->value, trend);
    }
    if (trend.left && earlier.time_since) {
        forecast.time_left = times(earlier.time_since->value, trend);
    }
    find_wear(trend, limit, forecast, notes);
    return forecast;
}

}  // namespace swathbook::job::detail
