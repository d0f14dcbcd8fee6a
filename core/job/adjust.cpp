#include "core/job/adjust.hpp"

#include <cmath>

#include <fmt/format.h>

#include "core/droplets/class_window.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"
#include "core/tips/known_rating.hpp"
#include "core/tips/rate_working.hpp"

namespace swathbook::job {
namespace {

using tips::InWindow;

constexpr std::size_t most_speeds = 50;

/// The request understood.
struct Present {
    double rate = 0.0;    ///< SI, with water
    double target = 0.0;  ///< SI, as water
    std::optional<Speed> speed{};
    std::optional<Pressure> pressure{};
    std::optional<Length> width{};  ///< per tip
    std::optional<tips::KnownRating> rating{};
    tips::PressureWindow window{};
    std::optional<droplets::ClassWindow> classes{};
    double exponent = 0.5;

    [[nodiscard]] double factor() const { return target / rate; }
};

std::string percent(double fraction) {
    return fmt::format("{}{} %", fraction > 0.0 ? "+" : "", show_fixed(fraction * 100.0, 1));
}

Result<void> check(const AdjustRequest& request) {
    SWATHBOOK_CHECK(require_usable(request.target, "target", "The rate wanted"));
    SWATHBOOK_CHECK(require_usable(request.rate, "rate", "The present rate"));
    SWATHBOOK_CHECK(require_usable(request.tip_flow, "tip_flow", "The flow of a tip"));
    SWATHBOOK_CHECK(require_usable(request.speed, "speed", "Ground speed"));
    SWATHBOOK_CHECK(require_usable(request.pressure, "pressure", "The pressure"));
    SWATHBOOK_CHECK(require_usable(request.speed_low, "speed_low", "The slowest speed"));
    SWATHBOOK_CHECK(require_usable(request.speed_high, "speed_high", "The fastest speed"));
    SWATHBOOK_CHECK(require_usable(request.carrier_min, "carrier_min", "The least carrier"));
    SWATHBOOK_CHECK(
        require_usable(request.carrier_density, "carrier_density", "The density of the mix"));
    SWATHBOOK_CHECK(droplets::check_bands(request.classes, "classes"));
    if (request.speed_low && request.speed_high &&
        request.speed_low->value > request.speed_high->value) {
        return fail(ErrorCode::inconsistent, "speed_low",
                    fmt::format("The slowest speed {} is above the fastest {}. Exchange them.",
                                show(*request.speed_low, UnitSystem::us),
                                show(*request.speed_high, UnitSystem::us)));
    }
    if (request.speeds.size() > most_speeds) {
        return fail(ErrorCode::out_of_range, "speeds",
                    fmt::format("{} speeds are listed; the limit is {}.", request.speeds.size(),
                                most_speeds));
    }
    for (std::size_t i = 0; i < request.speeds.size(); ++i) {
        SWATHBOOK_CHECK(
            require_usable(request.speeds[i], fmt::format("speeds[{}]", i), "A speed listed"));
    }
    return {};
}

/// Output from flow, speed and width, where all are known.
std::optional<double> rate_of_flow(const AdjustRequest& request, const Present& present) {
    if (!present.speed || !present.width) {
        return std::nullopt;
    }
    const double ground = present.speed->si() * present.width->si();
    if (request.tip_flow) {
        return request.tip_flow->value.si() / ground;
    }
    if (present.rating && (present.pressure || !present.rating->has_pressure)) {
        return tips::rated_flow_at(*present.rating, present.pressure).si() / ground;
    }
    return std::nullopt;
}

Result<double> present_rate(const AdjustRequest& request, const Present& present, Notes& notes) {
    const std::optional<double> from_flow = rate_of_flow(request, present);
    if (!request.rate && !from_flow) {
        return fail(
            ErrorCode::invalid_input, "rate",
            "What the sprayer puts out now is needed. Give its calibrated rate; or the flow "
            "of a tip (or its size and pressure) with the speed and the tip spacing.");
    }
    if (!request.rate) {
        notes.show([&] {
            return Step{"Rate now",
                        tips::rate_expression(
                            Flow::from_si(*from_flow * present.speed->si() * present.width->si()),
                            *present.speed, *present.width, notes.units()),
                        show(MixPerArea::from_si(*from_flow), notes.units())};
        });
        return *from_flow;
    }
    const double rate = request.rate->value.si();
    constexpr double disagreement = 0.05;
    if (from_flow && std::fabs(*from_flow / rate - 1.0) > disagreement) {
        notes.find(
            Severity::warning, "rate_disagrees_with_flow",
            fmt::format("The rate entered is {}, but flow, speed and width give {}. The rate "
                        "entered is used; find out which reading is wrong.",
                        show(*request.rate, notes.units()),
                        show(MixPerArea::from_si(*from_flow), notes.units())));
    }
    return rate;
}

Result<Present> understand(const AdjustRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check(request));
    Present present;
    present.exponent = request.exponent;
    if (request.speed) {
        present.speed = request.speed->value;
    }
    if (request.pressure) {
        present.pressure = request.pressure->value;
    }
    SWATHBOOK_TRY(width, tips::width_per_tip(request.spacing, request.width, request.tips));
    present.width = width;
    SWATHBOOK_TRY(rating,
                  tips::understand_rating({request.size, request.convention, request.rated_flow,
                                           request.rated_pressure, request.exponent},
                                          "", notes));
    present.rating = rating;
    SWATHBOOK_TRY(window, tips::window_of(request.pressure_low, request.pressure_high, ""));
    present.window = window;
    if (!request.droplets.empty()) {
        auto classes = droplets::class_window_from_text(request.droplets);
        if (!classes) {
            return fail(classes.error().code, "droplets", std::move(classes.error().detail));
        }
        present.classes = *classes;
    }
    SWATHBOOK_TRY(rate, present_rate(request, present, notes));
    present.rate = rate;
    present.target = request.target.value.si();
    if (request.carrier_density) {
        const double factor = tips::water_factor(request.carrier_density->value);
        present.target *= factor;
        notes.show([&] {
            return Step{
                "Target as water",
                fmt::format("{} x sqrt({})", show(request.target, notes.units()),
                            show_number(tips::specific_gravity(request.carrier_density->value))),
                show(MixPerArea::from_si(present.target), notes.units()),
                "University of Nebraska CropWatch 2016"};
        });
    }
    return present;
}

InWindow stand_in_speeds(const AdjustRequest& request, Speed speed) {
    if (request.speed_low && speed < request.speed_low->value) {
        return InWindow::below;
    }
    if (request.speed_high && speed > request.speed_high->value) {
        return InWindow::above;
    }
    return request.speed_low && request.speed_high ? InWindow::within : InWindow::not_entered;
}

std::optional<BySpeed> by_speed(const AdjustRequest& request, const Present& present,
                                Notes& notes) {
    if (!present.speed) {
        return std::nullopt;
    }
    BySpeed way;
    way.factor = 1.0 / present.factor();
    way.speed = *present.speed * way.factor;
    way.window = stand_in_speeds(request, way.speed);
    notes.show([&] {
        return Step{"Speed for the target, same pressure and tips",
                    fmt::format("{} x {} / {}", show(*present.speed, notes.units()),
                                show(MixPerArea::from_si(present.rate), notes.units()),
                                show(MixPerArea::from_si(present.target), notes.units())),
                    show(way.speed, notes.units()), "University of Missouri G1270A"};
    });
    if (way.window == InWindow::below || way.window == InWindow::above) {
        notes.find(Severity::warning, "speed_out_of_window",
                   fmt::format("The target by speed alone needs {}, {} the speeds entered.",
                               show(way.speed, notes.units()),
                               way.window == InWindow::below ? "below" : "above"));
    }
    return way;
}

std::string letters(droplets::DropletClass droplet_class) {
    return std::string(droplets::info_of(droplet_class).letters);
}

void find_class_change(const ByPressure& way, const Present& present, Notes& notes) {
    if (way.class_now && way.class_then && *way.class_now != *way.class_then) {
        notes.find(
            way.class_allowed.value_or(true) ? Severity::advice : Severity::warning,
            "droplet_class_changes",
            fmt::format("From {} to {} the tip goes from class {} to {}.",
                        show(*present.pressure, notes.units()), show(way.pressure, notes.units()),
                        letters(*way.class_now), letters(*way.class_then)),
            "the maker's table, as entered");
    }
    if (way.class_allowed == false) {
        notes.find(Severity::stop, "droplet_class_not_allowed",
                   fmt::format("At {} the tip is class {}; the label asks {}. Reach the target "
                               "another way.",
                               show(way.pressure, notes.units()), letters(*way.class_then),
                               droplets::describe(*present.classes)),
                   "the label, as entered");
    }
    if (present.classes && !way.class_then) {
        notes.find(
            Severity::warning, "droplet_class_not_entered",
            fmt::format("The tip's class at {} is not entered, so it cannot be held against "
                        "the label's {}. Look it up in the maker's table.",
                        show(way.pressure, notes.units()), droplets::describe(*present.classes)));
    }
}

void find_pressure(const ByPressure& way, const Present& present, Notes& notes) {
    constexpr double small_change = 1.25;
    if (way.factor > small_change || way.factor < 1.0 / small_change) {
        notes.find(Severity::advice, "pressure_for_small_corrections",
                   fmt::format("{} {} needs {} the pressure: twice the flow takes four times. "
                               "Pressure is for small corrections; use speed or another tip for "
                               "more.",
                               percent(present.factor() - 1.0), "in flow",
                               fmt::format("{} times", show_fixed(way.factor, 2))),
                   "Oklahoma State Extension, Calibrating a Low-Pressure Ground Sprayer");
    }
    if (way.window == InWindow::below || way.window == InWindow::above) {
        notes.find(Severity::warning, "pressure_out_of_window",
                   fmt::format("The target by pressure alone needs {}, {} the window entered ({}).",
                               show(way.pressure, notes.units()),
                               way.window == InWindow::below ? "below" : "above",
                               tips::describe(present.window, notes.units())));
    }
    if (way.window == InWindow::not_entered) {
        notes.find(Severity::advice, "pressure_window_not_entered",
                   "The pressures the tip may be run at are not both entered; not entered is not "
                   "\"any\". Copy them from the maker's table.");
    }
}

std::optional<ByPressure> by_pressure(const AdjustRequest& request, const Present& present,
                                      Notes& notes) {
    if (!present.pressure) {
        return std::nullopt;
    }
    ByPressure way;
    way.factor = tips::pressure_factor(present.factor(), present.exponent);
    way.pressure = *present.pressure * way.factor;
    way.window = tips::stand_in(present.window, way.pressure);
    way.class_now = droplets::class_at(request.classes, *present.pressure);
    way.class_then = droplets::class_at(request.classes, way.pressure);
    if (present.classes && way.class_then) {
        way.class_allowed = droplets::allows(*present.classes, *way.class_then);
    }
    notes.show([&] {
        return Step{
            "Pressure for the target, same speed and tips",
            fmt::format("{} x ({} / {}) ^ (1 / {})", show(*present.pressure, notes.units()),
                        show(MixPerArea::from_si(present.target), notes.units()),
                        show(MixPerArea::from_si(present.rate), notes.units()), present.exponent),
            show(way.pressure, notes.units()),
            "flow goes with the square root of pressure (Oklahoma State Extension)"};
    });
    find_pressure(way, present, notes);
    find_class_change(way, present, notes);
    return way;
}

std::vector<SizeAtPressure> sizes_for(Flow flow, tips::SizeConvention convention,
                                      const tips::PressureWindow& window) {
    // Without a window: sizes whose pressure stays within a fourth and four times their rating.
    constexpr double far = 4.0;
    std::vector<SizeAtPressure> fitting;
    for (const tips::IsoSize& size : tips::iso_sizes()) {
        const tips::Rating rating = tips::rating_of(size, convention);
        const Pressure pressure = tips::pressure_for(rating, flow);
        const InWindow stands = tips::stand_in(window, pressure);
        const double ratio = pressure / rating.pressure;
        const bool near = ratio <= far && ratio >= 1.0 / far;
        if (stands == InWindow::within || (stands == InWindow::not_entered && near)) {
            fitting.push_back(
                {std::string(size.size), std::string(size.colour_english), pressure, stands});
        }
    }
    return fitting;
}

std::optional<ByTip> by_tip(const Present& present, Notes& notes) {
    if (!present.speed || !present.width) {
        return std::nullopt;
    }
    ByTip way;
    way.flow = Flow::from_si(present.target * present.speed->si() * present.width->si());
    way.us_sizes = sizes_for(way.flow, tips::SizeConvention::us_gallons_at_40_psi, present.window);
    way.iso_sizes = sizes_for(way.flow, tips::SizeConvention::litres_at_3_bar, present.window);
    notes.show([&] {
        return Step{"Flow for the target through one tip, same speed",
                    tips::flow_expression(MixPerArea::from_si(present.target), *present.speed,
                                          *present.width, notes.units()),
                    show(way.flow, notes.units())};
    });
    if (way.us_sizes.empty() && way.iso_sizes.empty()) {
        notes.find(
            Severity::advice, "no_size_gives_the_flow",
            fmt::format("No size of the colour code gives {} inside {}. Change the speed, or "
                        "look for another kind of tip.",
                        show(way.flow, notes.units()),
                        present.window.is_entered() ? tips::describe(present.window, notes.units())
                                                    : std::string("a sensible pressure")));
    }
    return way;
}

/// Pressure at which a rate controller holds the target at another speed.
std::optional<Pressure> controller_pressure(const Present& present, Speed speed) {
    if (!present.pressure || !present.speed) {
        return std::nullopt;
    }
    const double flow = present.factor() * (speed / *present.speed);
    return *present.pressure * tips::pressure_factor(flow, present.exponent);
}

std::optional<Speed> controller_speed(const Present& present, std::optional<Pressure> limit) {
    if (!limit || !present.pressure || !present.speed) {
        return std::nullopt;
    }
    const double flow = tips::power(*limit / *present.pressure, present.exponent);
    return *present.speed * (flow / present.factor());
}

void fill_speeds(const AdjustRequest& request, const Present& present, AdjustAnswer& answer) {
    double rates = 0.0;
    double speeds = 0.0;
    double inverse = 0.0;
    for (const Reading<Kind::speed>& reading : request.speeds) {
        AtSpeed row;
        row.speed = reading.value;
        if (present.speed) {
            row.rate = MixPerArea::from_si(present.rate * (*present.speed / row.speed));
            rates += row.rate->si();
        }
        row.controller_pressure = controller_pressure(present, row.speed);
        if (row.controller_pressure) {
            row.window = tips::stand_in(present.window, *row.controller_pressure);
            row.droplet_class = droplets::class_at(request.classes, *row.controller_pressure);
        }
        speeds += row.speed.si();
        inverse += 1.0 / row.speed.si();
        answer.at_speeds.push_back(row);
    }
    const auto count = static_cast<double>(request.speeds.size());
    if (request.speeds.size() < 2 || !present.speed) {
        return;
    }
    answer.rate_equal_distance = MixPerArea::from_si(rates / count);
    answer.speed_equal_distance = Speed::from_si(count / inverse);
    answer.rate_equal_time =
        MixPerArea::from_si(present.rate * present.speed->si() * count / speeds);
}

void find_speeds(const AdjustRequest& request, const AdjustAnswer& answer, Notes& notes) {
    for (const AtSpeed& row : answer.at_speeds) {
        const bool out = row.window == InWindow::below || row.window == InWindow::above;
        if (out) {
            notes.find(Severity::warning, "controller_out_of_window",
                       fmt::format("At {} a rate controller would need {}, {} the window entered: "
                                   "it cannot hold the rate there.",
                                   show(row.speed, notes.units()),
                                   show(*row.controller_pressure, notes.units()),
                                   row.window == InWindow::below ? "below" : "above"));
        }
        if (row.rate && request.carrier_min && *row.rate < request.carrier_min->value) {
            notes.find(Severity::warning, "carrier_min_at_speed",
                       fmt::format("At {} the rate falls to {}, less than the label's least "
                                   "carrier, {}.",
                                   show(row.speed, notes.units()), show(*row.rate, notes.units()),
                                   show(*request.carrier_min, notes.units())),
                       "the label, as entered");
        }
    }
    if (answer.rate_equal_distance) {
        notes.find(
            Severity::note, "mean_over_distance",
            fmt::format("Over equal distances at these speeds the ground gets {} on average, "
                        "not {}: the slow ground takes longer. The speed to reckon with is "
                        "{}, the harmonic mean.",
                        show(*answer.rate_equal_distance, notes.units()),
                        show(*answer.rate_equal_time, notes.units()),
                        show(*answer.speed_equal_distance, notes.units())));
    }
}

void find_target(const AdjustRequest& request, const Present& present, Notes& notes) {
    if (request.carrier_min && request.target.value < request.carrier_min->value) {
        notes.find(Severity::stop, "target_under_carrier_min",
                   fmt::format("The rate wanted, {}, is less than the label's least carrier, {}.",
                               show(request.target, notes.units()),
                               show(*request.carrier_min, notes.units())),
                   "the label, as entered");
    }
    constexpr double no_change = 1e-9;
    if (std::fabs(present.factor() - 1.0) > no_change) {
        const bool more = present.factor() > 1.0;
        notes.find(
            Severity::note, "which_way",
            more ? "For more on the ground: slower, or more pressure, or a larger tip. Never "
                   "the other way round, whatever a handout prints."
                 : "For less on the ground: faster, or less pressure, or a smaller tip. Never "
                   "the other way round, whatever a handout prints.");
    }
    notes.find(Severity::note, "calibrate_again",
               "These figures say where to set the sprayer. Calibrate again there, with clean "
               "water, before mixing.");
}

}  // namespace

Result<AdjustAnswer> adjust(const AdjustRequest& request, Notes& notes) {
    SWATHBOOK_TRY(present, understand(request, notes));
    AdjustAnswer answer;
    answer.rate_now = MixPerArea::from_si(present.rate);
    answer.target_as_water = MixPerArea::from_si(present.target);
    answer.factor = present.factor();
    answer.by_speed = by_speed(request, present, notes);
    answer.by_pressure = by_pressure(request, present, notes);
    answer.by_tip = by_tip(present, notes);
    answer.controller_slowest = controller_speed(present, present.window.low);
    answer.controller_fastest = controller_speed(present, present.window.high);
    fill_speeds(request, present, answer);
    find_speeds(request, answer, notes);
    find_target(request, present, notes);
    return answer;
}

}  // namespace swathbook::job
