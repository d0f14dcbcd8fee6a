#include "core/job/wear.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/base/civil_date.hpp"
#include "core/calibration/straight_line.hpp"
#include "core/calibration/student_t.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"
#include "core/quantity/units.hpp"
#include "core/tips/capacity.hpp"

namespace swathbook::job {
namespace {

constexpr std::size_t most_points = 1000;
constexpr double trade_limit = 0.10;
constexpr std::string_view trade_source =
    "the trade's 10 %: Agricultural Engineering 2018, doi 10.1515/agriceng-2018-0037";
constexpr double days_in_month = 30.4375;
constexpr double days_in_century = 36525.0;

/// A point with its place on the axis.
struct Placed {
    const WearPoint* point = nullptr;
    double across = 0.0;  ///< m2, m3 or days from the first day
    std::optional<std::int64_t> day{};
    double flow = 0.0;  ///< at the reference pressure
    double over = 0.0;
};

struct Wear {
    WearAxis axis = WearAxis::time;
    double step = 1.0;  ///< of the axis, for the slope
    double new_flow = 0.0;
    double limit = 0.0;
    std::vector<Placed> placed{};
};

Result<void> check_request(const WearRequest& request) {
    if (request.points.empty() || request.points.size() > most_points) {
        return fail(ErrorCode::invalid_input, "points",
                    fmt::format("There are {} measurements; enter 1 to {}.", request.points.size(),
                                most_points));
    }
    if (!request.new_flow && !request.rated_flow) {
        return fail(ErrorCode::invalid_input, "new_flow",
                    "Wear is counted from new. Enter the flow measured when the tips were new, or "
                    "the maker's rated flow, at the pressure of these measurements.");
    }
    SWATHBOOK_CHECK(require_usable(request.new_flow, "new_flow", "The flow when new"));
    SWATHBOOK_CHECK(require_usable(request.rated_flow, "rated_flow", "The rated flow"));
    SWATHBOOK_CHECK(require_usable(request.reference_pressure, "reference_pressure",
                                   "The pressure of the new flow"));
    if (request.limit && !(request.limit->value.si() > 0.0 && request.limit->value.si() <= 1.0)) {
        return fail(ErrorCode::out_of_range, "limit",
                    fmt::format("The limit is {} over new; enter more than 0 and at most 100 %.",
                                show(*request.limit, UnitSystem::us)));
    }
    return {};
}

Result<void> check_point(const WearRequest& request, std::size_t index) {
    const WearPoint& point = request.points[index];
    const std::string at = fmt::format("points[{}]", index);
    SWATHBOOK_CHECK(require_usable(point.flow, at + ".flow", "The flow"));
    SWATHBOOK_CHECK(require_usable(point.pressure, at + ".pressure", "The pressure"));
    const auto bad = [](double si, double most) { return !(si >= 0.0 && si <= most); };
    if (point.acres_since_new && bad(point.acres_since_new->value.si(), 1e6 * acres.si)) {
        return fail(ErrorCode::out_of_range, at + ".acres_since_new",
                    "Ground sprayed since new is between 0 and a million acres.");
    }
    if (point.volume_since_new && bad(point.volume_since_new->value.si(), 1e5)) {
        return fail(ErrorCode::out_of_range, at + ".volume_since_new",
                    "Liquid passed since new is between 0 and 26 million gallons.");
    }
    if (point.pressure && !request.reference_pressure) {
        return fail(ErrorCode::inconsistent, "reference_pressure",
                    fmt::format("{} has a pressure, but the new flow has none to bring it to. "
                                "Enter the pressure of the new or rated flow.",
                                at));
    }
    return {};
}

WearAxis axis_of(const WearRequest& request) {
    const auto all = [&](auto has) {
        return std::all_of(request.points.begin(), request.points.end(), has);
    };
    if (all([](const WearPoint& point) { return point.acres_since_new.has_value(); })) {
        return WearAxis::area;
    }
    if (all([](const WearPoint& point) { return point.volume_since_new.has_value(); })) {
        return WearAxis::volume;
    }
    return WearAxis::time;
}

Result<Placed> placed_of(const WearRequest& request, WearAxis axis, std::size_t index) {
    SWATHBOOK_CHECK(check_point(request, index));
    const WearPoint& point = request.points[index];
    Placed placed;
    placed.point = &point;
    if (!point.date.empty()) {
        SWATHBOOK_TRY(date, parse_civil_date(point.date, fmt::format("points[{}].date", index)));
        placed.day = days_from_civil(date);
    } else if (axis == WearAxis::time) {
        return fail(ErrorCode::invalid_input, fmt::format("points[{}].date", index),
                    "Enter the day of every measurement, or the ground sprayed since new at every "
                    "one of them.");
    }
    const bool by_area = axis == WearAxis::area;
    placed.across = by_area                    ? point.acres_since_new->value.si()
                    : axis == WearAxis::volume ? point.volume_since_new->value.si()
                                               : static_cast<double>(*placed.day);
    placed.flow = point.flow.value.si();
    if (point.pressure) {
        placed.flow = tips::flow_at({point.flow.value, point.pressure->value},
                                    request.reference_pressure->value)
                          .si();
    }
    return placed;
}

Result<Wear> read_wear(const WearRequest& request, const Notes& notes) {
    SWATHBOOK_CHECK(check_request(request));
    Wear wear;
    wear.axis = axis_of(request);
    const bool us = notes.units() == UnitSystem::us;
    wear.step = wear.axis == WearAxis::area     ? 100.0 * (us ? acres.si : hectares.si)
                : wear.axis == WearAxis::volume ? 1000.0 * (us ? us_gallons.si : litres.si)
                                                : days_in_month;
    wear.new_flow = (request.new_flow ? *request.new_flow : *request.rated_flow).value.si();
    wear.limit = request.limit ? request.limit->value.si() : trade_limit;
    for (std::size_t i = 0; i < request.points.size(); ++i) {
        SWATHBOOK_TRY(placed, placed_of(request, wear.axis, i));
        placed.over = placed.flow / wear.new_flow - 1.0;
        wear.placed.push_back(placed);
    }
    std::stable_sort(wear.placed.begin(), wear.placed.end(),
                     [](const Placed& a, const Placed& b) { return a.across < b.across; });
    return wear;
}

std::string percent_words(double share) {
    return fmt::format("{}{} %", share < 0.0 ? "-" : "+", show_number(100.0 * std::fabs(share), 3));
}

std::string place_words(const Wear& wear, const Placed& placed, UnitSystem units) {
    switch (wear.axis) {
        case WearAxis::area: return show(Area::from_si(placed.across), units);
        case WearAxis::volume: return show(Volume::from_si(placed.across), units);
        case WearAxis::time: break;
    }
    return fmt::format(
        "{} months", show_number((placed.across - wear.placed.front().across) / days_in_month, 3));
}

/// The day of a place on the axis: read off the days themselves, or by the mean pace of the work.
std::optional<std::int64_t> day_of(const Wear& wear, double across) {
    const Placed& first = wear.placed.front();
    const Placed& last = wear.placed.back();
    double day = across;
    if (wear.axis != WearAxis::time) {
        if (!first.day || !last.day || *last.day <= *first.day || last.across <= first.across) {
            return std::nullopt;
        }
        const double pace =
            (last.across - first.across) / static_cast<double>(*last.day - *first.day);
        day = static_cast<double>(*last.day) + (across - last.across) / pace;
    }
    const double from_last = day - static_cast<double>(last.day.value_or(0));
    if (!(std::fabs(from_last) <= days_in_century)) {
        return std::nullopt;
    }
    return static_cast<std::int64_t>(std::floor(day));
}

std::string day_text(const Wear& wear, double across) {
    const auto day = day_of(wear, across);
    return day ? text_of(civil_from_days(*day)) : std::string();
}

template <Kind K>
Estimate<K> crossing_estimate(const calibration::Crossing& crossing) {
    Estimate<K> estimate(Quantity<K>::from_si(crossing.across));
    estimate.low = Quantity<K>::from_si(std::max(crossing.low, 0.0));
    if (crossing.high) {
        estimate.high = Quantity<K>::from_si(*crossing.high);
    }
    return estimate;
}

Estimate<Kind::fraction> around(double middle, double half) {
    return {Fraction::from_si(middle), Fraction::from_si(middle - half),
            Fraction::from_si(middle + half)};
}

void fill_crossing(WearAnswer& answer, const Wear& wear, const calibration::StraightLine& line,
                   double factor) {
    const auto crossing = calibration::crossing_of(line, wear.limit, factor);
    if (!crossing) {
        return;
    }
    if (wear.axis == WearAxis::area) {
        answer.limit_at_area = crossing_estimate<Kind::area>(*crossing);
    } else if (wear.axis == WearAxis::volume) {
        answer.limit_at_volume = crossing_estimate<Kind::volume>(*crossing);
    }
    answer.limit_on = day_text(wear, crossing->across);
    if (!answer.limit_on.empty()) {
        answer.limit_on_early = day_text(wear, crossing->low);
        answer.limit_on_late = crossing->high ? day_text(wear, *crossing->high) : std::string();
    }
}

void show_line(const WearAnswer& answer, const calibration::StraightLine& line, double factor,
               Notes& notes) {
    notes.show([&] {
        return Step{fmt::format("Slope for each {}", answer.slope_per),
                    fmt::format("least squares over {} points, R2 {}", line.count,
                                show_number(line.explained, 3)),
                    percent_words(answer.slope->value.si()), "NIST StRD, Norris"};
    });
    notes.show([&] {
        const double half = answer.slope->high->si() - answer.slope->value.si();
        return Step{"Interval of the slope",
                    fmt::format("t({}) = {} x standard error {}", line.count - 2,
                                show_number(factor, 4), percent_words(half / factor)),
                    fmt::format("{} to {}", percent_words(answer.slope->low->si()),
                                percent_words(answer.slope->high->si()))};
    });
}

std::string crossing_words(const WearAnswer& answer, UnitSystem units) {
    std::string words;
    if (answer.limit_at_area) {
        words = fmt::format(" at {} ({} to {})", show(answer.limit_at_area->value, units),
                            show(*answer.limit_at_area->low, units),
                            show(*answer.limit_at_area->high, units));
    } else if (answer.limit_at_volume) {
        words = fmt::format(" at {} ({} to {})", show(answer.limit_at_volume->value, units),
                            show(*answer.limit_at_volume->low, units),
                            show(*answer.limit_at_volume->high, units));
    }
    if (!answer.limit_on.empty()) {
        words += fmt::format(" on {} ({} to {})", answer.limit_on, answer.limit_on_early,
                             answer.limit_on_late.empty() ? "no end" : answer.limit_on_late);
    }
    return words;
}

/// Fills the trend when there are points enough for one.
void fill_trend(WearAnswer& answer, const Wear& wear, Notes& notes) {
    std::vector<double> across;
    std::vector<double> over;
    for (const Placed& placed : wear.placed) {
        across.push_back(placed.across);
        over.push_back(placed.over);
    }
    const auto line = calibration::straight_line(across, over);
    if (!line || line->count < 3) {
        return;
    }
    const double factor = calibration::student_t_95(line->count - 2);
    answer.slope = around(line->slope * wear.step, factor * line->slope_error * wear.step);
    answer.explained = line->explained;
    const double last = wear.placed.back().across;
    answer.trend_now = around(line->at(last), factor * line->error_at(last));
    for (std::size_t i = 0; i < answer.rows.size(); ++i) {
        answer.rows[i].trend = Fraction::from_si(line->at(across[i]));
    }
    show_line(answer, *line, factor, notes);
    const bool flat = answer.slope->low->si() <= 0.0 && answer.slope->high->si() >= 0.0;
    answer.verdict = flat                ? WearVerdict::no_trend
                     : line->slope > 0.0 ? WearVerdict::wearing
                                         : WearVerdict::falling;
    if (answer.verdict == WearVerdict::wearing) {
        fill_crossing(answer, wear, *line, factor);
    }
}

std::string text_of_verdict(const WearAnswer& answer, UnitSystem units) {
    const std::string now =
        fmt::format("Last measured {} over new, limit {}.", percent_words(answer.over_new_now.si()),
                    percent_words(answer.limit.si()));
    switch (answer.verdict) {
        case WearVerdict::not_enough_points:
            return now + " Not enough points for a trend: measure at three times or more.";
        case WearVerdict::no_trend:
            return fmt::format(
                "{} A trend cannot be told from none: {} for each {}, but anything "
                "from {} to {} fits these points.",
                now, percent_words(answer.slope->value.si()), answer.slope_per,
                percent_words(answer.slope->low->si()), percent_words(answer.slope->high->si()));
        case WearVerdict::falling:
            return fmt::format(
                "{} The flow falls {} for each {}: tips clog or were not measured "
                "alike, they do not wear smaller.",
                now, percent_words(answer.slope->value.si()), answer.slope_per);
        case WearVerdict::wearing: break;
    }
    const std::string where = crossing_words(answer, units);
    return fmt::format("{} It rises {} for each {}{}{}.", now,
                       percent_words(answer.slope->value.si()), answer.slope_per,
                       where.empty() ? "" : " and the trend crosses the limit", where);
}

void remark(const WearAnswer& answer, Notes& notes) {
    if (answer.over_limit_now) {
        notes.find(
            Severity::warning, "over_limit_now",
            fmt::format("The tips put out {} over new, beyond the limit of {} already: "
                        "replace the whole set and calibrate again.",
                        percent_words(answer.over_new_now.si()), percent_words(answer.limit.si())),
            answer.limit_source);
    }
    if (answer.verdict == WearVerdict::falling) {
        notes.find(Severity::warning, "flow_falls",
                   "Tips do not wear smaller. Clean them with a soft brush and clean water, check "
                   "gauge and strainers, and measure again.",
                   "common practice");
    }
    if (answer.verdict == WearVerdict::wearing) {
        notes.find(Severity::note, "trend_is_no_promise",
                   "The line supposes that liquid, pressure and care stay as they were; the "
                   "interval is of the trend, not of a single measurement. Measure again before "
                   "the early end of it.");
    }
}

}  // namespace

Result<WearAnswer> wear(const WearRequest& request, Notes& notes) {
    SWATHBOOK_TRY(wear, read_wear(request, notes));
    const bool us = notes.units() == UnitSystem::us;
    WearAnswer answer;
    answer.new_flow = Flow::from_si(wear.new_flow);
    answer.limit = Fraction::from_si(wear.limit);
    answer.limit_source = std::string(request.limit ? "as entered" : trade_source);
    answer.axis = wear.axis;
    answer.points = static_cast<int>(wear.placed.size());
    answer.slope_per = wear.axis == WearAxis::area     ? (us ? "100 ac" : "100 ha")
                       : wear.axis == WearAxis::volume ? (us ? "1000 gal" : "1000 L")
                                                       : "month";
    for (const Placed& placed : wear.placed) {
        answer.rows.push_back({placed.point->date, place_words(wear, placed, notes.units()),
                               Flow::from_si(placed.flow), Fraction::from_si(placed.over),
                               std::nullopt});
    }
    const Placed& last = wear.placed.back();
    answer.over_new_now = Fraction::from_si(last.over);
    answer.over_limit_now = last.over > wear.limit;
    notes.show([&] {
        return Step{"Over new, as last measured",
                    fmt::format("{} / {} - 1", show(Flow::from_si(last.flow), notes.units()),
                                show(answer.new_flow, notes.units())),
                    percent_words(last.over)};
    });
    fill_trend(answer, wear, notes);
    answer.text = text_of_verdict(answer, notes.units());
    remark(answer, notes);
    return answer;
}

}  // namespace swathbook::job
