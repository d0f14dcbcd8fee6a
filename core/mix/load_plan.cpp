#include "core/mix/load_plan.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/quantity/print.hpp"

namespace swathbook::mix {
namespace {

constexpr double rounding_room = 1e-9;  // 3.000000000001 tankfuls are 3
constexpr double most_loads = 500.0;

/// Fails unless a reading is a number above 0 and not absurd for a job on the ground.
template <Kind K>
Result<void> require_above_zero(const std::optional<Reading<K>>& reading, double most_si,
                                std::string_view field, std::string_view what) {
    if (!reading) {
        return {};
    }
    const double si = reading->value.si();
    if (std::isfinite(si) && si > 0.0 && si <= most_si) {
        return {};
    }
    const std::string value = show(*reading, UnitSystem::us);
    return fail(ErrorCode::out_of_range, field,
                si > most_si
                    ? fmt::format("{} is {}: more than any ground job needs ({}). Check the unit.",
                                  what, value, show(most_si, K, UnitSystem::us))
                    : fmt::format("{} is {}: it must be a number above 0.", what, value));
}

constexpr double most_area_m2 = 1e9;      // 100,000 ha
constexpr double most_volume_m3 = 1e4;    // 2.6 million gallons
constexpr double most_mix_per_area = 10;  // a metre of water is absurd ten times over
constexpr double most_length_m = 1e3;

Result<void> check_inputs(const LoadsRequest& request) {
    SWATHBOOK_CHECK(require_above_zero(request.net_area, most_area_m2, "net_area", "The net area"));
    SWATHBOOK_CHECK(
        require_above_zero(request.planned_area, most_area_m2, "planned_area", "The planned area"));
    SWATHBOOK_CHECK(require_above_zero(request.mix_per_area, most_mix_per_area, "mix_per_area",
                                       "The mix per area"));
    SWATHBOOK_CHECK(
        require_above_zero(request.mix_volume, most_volume_m3, "mix_volume", "The mix volume"));
    SWATHBOOK_CHECK(require_above_zero(request.tank_usable, most_volume_m3, "tank_usable",
                                       "The usable tank volume"));
    const bool no_dead_volume = request.dead_volume && request.dead_volume->value.si() == 0.0;
    if (!no_dead_volume) {
        SWATHBOOK_CHECK(require_above_zero(request.dead_volume, most_volume_m3, "dead_volume",
                                           "The dead volume"));
    }
    if (request.bands) {
        using Width = std::optional<Reading<Kind::length>>;
        SWATHBOOK_CHECK(require_above_zero(Width(request.bands->band_width), most_length_m,
                                           "bands.band_width", "The band width"));
        SWATHBOOK_CHECK(require_above_zero(Width(request.bands->row_spacing), most_length_m,
                                           "bands.row_spacing", "The row spacing"));
    }
    return {};
}

Result<double> band_share_of(const LoadsRequest& request, Notes& notes) {
    if (!request.bands) {
        return 1.0;
    }
    const auto& band = request.bands->band_width;
    const auto& row = request.bands->row_spacing;
    if (band.value > row.value) {
        return fail(ErrorCode::inconsistent, "bands.band_width",
                    fmt::format("The band ({}) is wider than the row spacing ({}). If the bands "
                                "touch, all the ground is sprayed: leave bands out.",
                                show(band, notes.units()), show(row, notes.units())));
    }
    const double share = band.value / row.value;
    notes.show([&] {
        return Step{
            "Treated share of the field",
            fmt::format("{} band / {} rows", show(band, notes.units()), show(row, notes.units())),
            show_number(share * 100.0) + " %"};
    });
    return share;
}

/// The mix per area, on treated ground whatever it was counted on.
Result<std::optional<MixPerArea>> mix_on_treated(const LoadsRequest& request, double band_share,
                                                 Notes& notes) {
    if (!request.mix_per_area) {
        return std::optional<MixPerArea>();
    }
    const MixPerArea given = request.mix_per_area->value;
    if (band_share == 1.0) {
        return std::optional(given);
    }
    if (!request.mix_counts) {
        return fail(ErrorCode::invalid_input, "mix_counts",
                    "Only bands are sprayed. Was the mix per area calibrated over the band width "
                    "(treated) or the row spacing (field)? Say mix_counts: treated or field.");
    }
    if (*request.mix_counts == Counts::treated) {
        return std::optional(given);
    }
    const MixPerArea treated = given / band_share;
    notes.show([&] {
        return Step{"Mix on the bands themselves",
                    fmt::format("{} of field / {} %", show(given, notes.units()),
                                show_number(band_share * 100.0)),
                    show(treated, notes.units())};
    });
    return std::optional(treated);
}

void find_treated_ground(const LoadsRequest& request, GroundPlan& plan, Notes& notes) {
    if (request.net_area) {
        plan.treated = request.net_area->value;
        if (request.bands) {
            plan.field = request.planned_area
                             ? request.planned_area->value
                             : PlannedArea::from_si(plan.treated->si() / plan.band_share);
        }
        return;
    }
    if (!request.planned_area) {
        return;
    }
    const double planned = request.planned_area->value.si();
    plan.treated = NetArea::from_si(planned * plan.band_share);
    if (request.bands) {
        plan.field = request.planned_area->value;
        notes.show([&] {
            return Step{"Treated ground",
                        fmt::format("{} * {} %", show(*plan.field, notes.units()),
                                    show_number(plan.band_share * 100.0)),
                        show(*plan.treated, notes.units())};
        });
    }
    notes.find(Severity::note, "planned_area_used",
               fmt::format("The loads are for the planned {}. Ground left out by setbacks and "
                           "exclusions is not wetted: enter the net area when it is known.",
                           show(*request.planned_area, notes.units())));
}

Result<void> volume_from_area(const LoadsRequest& request, GroundPlan& plan, Notes& notes) {
    if (!plan.mix_per_treated) {
        return fail(ErrorCode::invalid_input, "mix_per_area",
                    "The mix per area is missing. Calibrate the sprayer and enter its gal/ac or "
                    "L/ha.");
    }
    if (!request.tank_usable) {
        return fail(ErrorCode::invalid_input, "tank_usable",
                    "How much can be sprayed out of one fill of the tank? Enter tank_usable, for "
                    "instance \"47 gal\".");
    }
    plan.sprayed = Volume::from_si(plan.treated->si() * plan.mix_per_treated->si());
    notes.show([&] {
        return Step{"Mix for the job",
                    fmt::format("{} * {}", show(*plan.treated, notes.units()),
                                show(*plan.mix_per_treated, notes.units())),
                    show(plan.sprayed, notes.units(), 5)};
    });
    return {};
}

Result<void> volume_as_given(const LoadsRequest& request, GroundPlan& plan, Notes& notes) {
    plan.sprayed = request.mix_volume->value - plan.dead;
    if (plan.sprayed.si() <= 0.0) {
        return fail(
            ErrorCode::out_of_range, "mix_volume",
            fmt::format("{} of mix would all stay in the sprayer: its dead volume is {}.",
                        show(*request.mix_volume, notes.units()), show(plan.dead, notes.units())));
    }
    if (plan.mix_per_treated) {
        plan.treated = NetArea::from_si(plan.sprayed.si() / plan.mix_per_treated->si());
        notes.show([&] {
            return Step{"Ground this mix covers",
                        fmt::format("{} / {}", show(plan.sprayed, notes.units()),
                                    show(*plan.mix_per_treated, notes.units())),
                        show(*plan.treated, notes.units())};
        });
    }
    return {};
}

Result<void> check_which_given(const LoadsRequest& request) {
    const bool has_area = request.net_area || request.planned_area;
    if (has_area && request.mix_volume) {
        return fail(ErrorCode::inconsistent, "mix_volume",
                    "Both an area and a volume of mix are given, and each would decide the loads. "
                    "Give one of them.");
    }
    if (!has_area && !request.mix_volume) {
        return fail(ErrorCode::invalid_input, "net_area",
                    "Give the ground to be wetted (net_area, or planned_area), or the volume of "
                    "mix to make (mix_volume).");
    }
    if (request.net_area && request.planned_area &&
        request.net_area->value.si() > request.planned_area->value.si() * (1.0 + rounding_room)) {
        return fail(ErrorCode::inconsistent, "net_area",
                    "The net area is larger than the planned area. Net ground is what is really "
                    "wetted inside the plan.");
    }
    return {};
}

}  // namespace

Result<GroundPlan> plan_ground(const LoadsRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check_which_given(request));
    SWATHBOOK_CHECK(check_inputs(request));
    GroundPlan plan;
    SWATHBOOK_TRY(band_share, band_share_of(request, notes));
    plan.band_share = band_share;
    SWATHBOOK_TRY(mix_per_treated, mix_on_treated(request, band_share, notes));
    plan.mix_per_treated = mix_per_treated;
    if (request.dead_volume) {
        plan.dead = request.dead_volume->value;
    }
    find_treated_ground(request, plan, notes);
    SWATHBOOK_CHECK(plan.treated ? volume_from_area(request, plan, notes)
                                 : volume_as_given(request, plan, notes));
    return plan;
}

Result<std::vector<Volume>> split_volume(Volume total, Volume usable, Split split) {
    const double ratio = total / usable;
    if (!(ratio <= most_loads)) {
        return fail(ErrorCode::out_of_range, "tank_usable",
                    fmt::format("The job would take {} loads; more than {} are not planned here. "
                                "Check the tank volume and the area.",
                                show_number(std::ceil(ratio)), show_number(most_loads)));
    }
    const double count = std::max(1.0, std::ceil(ratio - rounding_room));
    const auto parts = static_cast<std::size_t>(count);
    if (split == Split::equal) {
        return std::vector<Volume>(parts, total / count);
    }
    std::vector<Volume> made(parts, usable);
    made.back() = total - usable * (count - 1.0);
    return made;
}

}  // namespace swathbook::mix
