#include "core/mix/spot.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

constexpr double largest_volume_m3 = 1000.0;
constexpr double plot_differs = 0.1;  // of the measured mix per area, before it is worth a remark

std::string element(std::size_t index) {
    return fmt::format("products[{}]", index);
}

// ---- checks ----------------------------------------------------------------------------------

template <Kind K>
Result<void> above_zero(const std::optional<Reading<K>>& reading, const std::string& field,
                        double most_si, UnitSystem units) {
    if (reading && !(reading->value.si() > 0.0 && reading->value.si() <= most_si)) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("Enter more than 0 and at most {}; got {}.",
                                show(Quantity<K>::from_si(most_si), units), show(*reading, units)));
    }
    return {};
}

Result<void> check_plants(const SpotRequest& request, UnitSystem units) {
    SWATHBOOK_CHECK(above_zero(request.per_plant, "per_plant", 1.0, units));
    SWATHBOOK_CHECK(above_zero(request.flow, "flow", 0.1, units));
    SWATHBOOK_CHECK(above_zero(request.time_per_plant, "time_per_plant", 86400.0, units));
    if (request.plants && (*request.plants < 1 || *request.plants > 10'000'000)) {
        return fail(ErrorCode::out_of_range, "plants",
                    fmt::format("{} plants: give between 1 and 10,000,000.", *request.plants));
    }
    if (request.per_plant && (request.flow || request.time_per_plant)) {
        return fail(
            ErrorCode::inconsistent, "per_plant",
            "Give either the volume that wets a plant, or flow and time for one; not both.");
    }
    if (request.flow.has_value() != request.time_per_plant.has_value()) {
        return fail(ErrorCode::invalid_input, request.flow ? "time_per_plant" : "flow",
                    "The volume on a plant is flow times time: give both.");
    }
    return {};
}

Result<void> check(const SpotRequest& request, UnitSystem units) {
    if (request.products.empty()) {
        return fail(ErrorCode::invalid_input, "products",
                    "Name at least one product and its rate.");
    }
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        SWATHBOOK_CHECK(check_card(request.products[i].card, path_to(element(i), "card")));
        if (request.products[i].counts == Counts::field) {
            return fail(ErrorCode::inconsistent, path_to(element(i), "counts"),
                        "Spot work counts the ground wetted, not a field with rows.");
        }
    }
    SWATHBOOK_CHECK(above_zero(request.sprayed, "sprayed", largest_volume_m3, units));
    SWATHBOOK_CHECK(above_zero(request.area, "area", 1e9, units));
    SWATHBOOK_CHECK(above_zero(request.mix_per_area, "mix_per_area", 0.1, units));
    SWATHBOOK_CHECK(above_zero(request.mix_density, "mix_density", 5000.0, units));
    for (std::size_t i = 0; i < request.fills.size(); ++i) {
        SWATHBOOK_CHECK(above_zero(std::optional(request.fills[i]), fmt::format("fills[{}]", i),
                                   largest_volume_m3, units));
    }
    if (request.area && !request.sprayed && !request.mix_per_area) {
        return fail(ErrorCode::invalid_input, "sprayed",
                    "The area alone gives no rate: say how much mix went on it.");
    }
    return check_plants(request, units);
}

// ---- mix per area ----------------------------------------------------------------------------

std::optional<MixPerArea> measured_mix(const SpotRequest& request, Notes& notes) {
    if (!request.sprayed || !request.area) {
        if (!request.mix_per_area) {
            notes.find(
                Severity::warning, "area_not_measured",
                "How much mix goes on an area is not known, so neither is the rate per area "
                "hidden in the percent solution, and no cap per area can be checked. Measure "
                "the ground wetted and the mix used on it.");
            return std::nullopt;
        }
        return request.mix_per_area->value;
    }
    const auto mix = MixPerArea::from_si(request.sprayed->value.si() / request.area->value.si());
    notes.show([&] {
        return Step{"Mix on the ground",
                    fmt::format("{} / {}", show(*request.sprayed, notes.units()),
                                show(*request.area, notes.units())),
                    show(mix, notes.units())};
    });
    if (request.mix_per_area && std::abs(mix / request.mix_per_area->value - 1.0) > plot_differs) {
        notes.find(
            Severity::warning, "plot_and_job_differ",
            fmt::format("On the job {} went on, on the test plot {}. The job's figure is used; "
                        "catch the operator again.",
                        show(mix, notes.units()), show(*request.mix_per_area, notes.units())));
    }
    return mix;
}

// ---- one product -----------------------------------------------------------------------------

/// A limit turned into the most product that this application may put on an area.
struct AreaCap {
    std::string limit;
    double per_area;
};

/// Everything known about one product of the mix.
struct Working {
    const TankProduct* product;
    const Dissolved* dissolved;
    const MixBasis* basis;
    const SpotRequest* request;
};

std::vector<AreaCap> area_caps(const Working& at, const Delivery& delivery, Notes& notes) {
    std::vector<AreaCap> caps;
    const LabelLimits& limits = at.product->card.limits;
    const RateReading reading{RateCounts::product, at.product->ingredient, at.basis->mix_density};
    const auto add = [&](const std::optional<RateLimit>& limit, const char* word, double earlier) {
        if (!limit) {
            return;
        }
        const auto most = product_rate(limit->value, at.product->card, reading);
        if (!most || most->per != Per::area) {
            return;  // check_limits names what is missing
        }
        const double left = std::max(0.0, most->si - earlier);
        caps.push_back({word, left});
        notes.show([&] {
            const Form form = at.product->card.form;
            return Step{
                fmt::format("{} left under {}", at.product->card.name, word),
                fmt::format("{} - {} applied earlier", handy_text(*most, form, notes.units()),
                            handy_text(ProductRate{earlier, Per::area}, form, notes.units())),
                handy_text(ProductRate{left, Per::area}, form, notes.units()), limit->where};
        });
    };
    add(limits.max_single_rate, "max_single_rate", 0.0);
    add(limits.max_yearly_rate, "max_yearly_rate", delivery.earlier_area_si.value_or(0.0));
    return caps;
}

/// What the strongest mix rests on, as a division a person can do.
std::string strongest_expression(const Working& at, const std::vector<AreaCap>& caps,
                                 const SpotProduct& answer, UnitSystem units) {
    const auto cap = std::find_if(caps.begin(), caps.end(), [&](const AreaCap& each) {
        return each.limit == answer.strongest_by;
    });
    if (cap == caps.end() || !at.basis->mix_per_treated_area) {
        return answer.strongest_by + " of the label";
    }
    return fmt::format(
        "{} left ({}) / {}",
        handy_text(ProductRate{cap->per_area, Per::area}, at.product->card.form, units), cap->limit,
        show(*at.basis->mix_per_treated_area, units));
}

void put_strongest(const Working& at, const std::vector<AreaCap>& caps, SpotProduct& answer,
                   Notes& notes) {
    const bool is_liquid = at.product->card.form == Form::liquid;
    std::optional<double> strongest;
    const auto consider = [&](double share, std::string by) {
        if (!strongest || share < *strongest) {
            strongest = share;
            answer.strongest_by = std::move(by);
        }
    };
    if (at.basis->mix_per_treated_area) {
        for (const AreaCap& cap : caps) {
            consider(cap.per_area / at.basis->mix_per_treated_area->si(), cap.limit);
        }
    }
    if (is_liquid && at.product->card.limits.max_percent) {
        consider(at.product->card.limits.max_percent->value.value.si(), "max_percent");
    }
    if (!strongest) {
        return;
    }
    if (is_liquid) {
        answer.strongest = PercentByVolume::from_si(*strongest);
    }
    answer.strongest_text =
        handy_text(ProductRate{*strongest, Per::mix}, at.product->card.form, notes.units());
    notes.show([&] {
        const std::string share =
            answer.strongest ? show(*answer.strongest, notes.units()) : answer.strongest_text;
        return Step{fmt::format("Strongest lawful mix of {}", answer.name),
                    strongest_expression(at, caps, answer, notes.units()), share + " (round down)"};
    });
}

void put_most_mix(const Working& at, const std::vector<AreaCap>& caps, SpotProduct& answer) {
    const auto least = std::min_element(
        caps.begin(), caps.end(),
        [](const AreaCap& a, const AreaCap& b) { return a.per_area < b.per_area; });
    if (least == caps.end() || !(at.dissolved->per_mix > 0.0)) {
        return;
    }
    answer.most_mix_per_area = MixPerArea::from_si(least->per_area / at.dissolved->per_mix);
    if (at.request->area && at.request->sprayed) {
        const double allowed = answer.most_mix_per_area->si() * at.request->area->value.si();
        answer.mix_left = Volume::from_si(std::max(0.0, allowed - at.request->sprayed->value.si()));
    }
}

void put_per_area(const Working& at, SpotProduct& answer, Notes& notes) {
    if (!at.dissolved->per_treated) {
        return;
    }
    const ProductCard& card = at.product->card;
    const double per_area = *at.dissolved->per_treated;
    answer.per_area_text = handy_text(ProductRate{per_area, Per::area}, card.form, notes.units());
    if (card.form == Form::liquid) {
        answer.volume_per_area = ProductVolumePerArea::from_si(per_area);
    } else {
        answer.mass_per_area = ProductMassPerArea::from_si(per_area);
    }
    const auto ingredient = ingredient_of(card, at.product->ingredient, "ingredient");
    if (ingredient) {
        if (const auto content = acid_content(card, **ingredient, "acid_strength")) {
            answer.acid_per_area = AcidPerArea::from_si(per_area * *content);
        }
        if (const auto content = ingredient_content(card, **ingredient, "strength")) {
            answer.ingredient_per_area = IngredientPerArea::from_si(per_area * *content);
        }
    }
    notes.show([&] {
        return Step{fmt::format("{} per area", card.name),
                    fmt::format("{} x {}",
                                handy_text(ProductRate{at.dissolved->per_mix, Per::mix}, card.form,
                                           notes.units()),
                                at.basis->mix_per_treated_area
                                    ? show(*at.basis->mix_per_treated_area, notes.units())
                                    : std::string("mix per area")),
                    answer.per_area_text};
    });
}

void put_shares(const Working& at, double carrier_share, SpotProduct& answer, Notes& notes) {
    const double per_mix = at.dissolved->per_mix;
    if (at.product->card.form == Form::dry) {
        answer.mass_per_mix = ProductMassPerMix::from_si(per_mix);
        return;
    }
    answer.volume_per_mix = ProductVolumePerMix::from_si(per_mix);
    answer.of_mix = PercentByVolume::from_si(per_mix);
    if (carrier_share > 0.0) {
        answer.of_carrier = PercentByVolume::from_si(per_mix / carrier_share);
    }
    notes.show([&] {
        return Step{
            fmt::format("{} in the mix", answer.name),
            fmt::format("{} {}",
                        at.product->rate.text.empty() ? show(at.product->rate, notes.units())
                                                      : at.product->rate.text,
                        at.product->share_of == MixShare::carrier ? "of the carrier"
                                                                  : "of the finished mix"),
            fmt::format("{} of the finished mix = {} of the carrier, {}",
                        show(*answer.of_mix, notes.units()),
                        answer.of_carrier ? show(*answer.of_carrier, notes.units()) : "-",
                        notes.units() == UnitSystem::us
                            ? fmt::format("{} mL in a gallon", show_number(per_mix * 3785.411784))
                            : fmt::format("{} mL in a litre", show_number(per_mix * 1000.0)))};
    });
}

Result<SpotProduct> product_answer(const Working& at, std::size_t index, double carrier_share,
                                   Notes& notes) {
    SpotProduct answer;
    answer.name = at.product->card.name;
    SWATHBOOK_TRY(delivery, delivery_of(*at.product, *at.dissolved, *at.basis, element(index)));
    put_shares(at, carrier_share, answer, notes);
    put_per_area(at, answer, notes);
    if (at.request->sprayed) {
        answer.used_text = handy_text(at.dissolved->per_mix * at.request->sprayed->value.si(),
                                      at.product->card.form, notes.units());
    }
    const std::vector<AreaCap> caps = area_caps(at, delivery, notes);
    put_strongest(at, caps, answer, notes);
    put_most_mix(at, caps, answer);
    answer.checks =
        check_limits(at.product->card, delivery, reading_of(*at.product, *at.basis), notes.units());
    report_checks(at.product->card, answer.checks, notes);
    const LabelLimits& limits = at.product->card.limits;
    if (!limits.max_yearly_rate && !is_unregistered_adjuvant(at.product->card)) {
        notes.find(Severity::warning, "yearly_cap_not_entered",
                   fmt::format("The most per area in a year was not entered for {}. Not entered is "
                               "not \"no limit\": a percent solution can go over it unseen.",
                               answer.name));
    } else if (limits.max_yearly_rate && !delivery.earlier_area_si && answer.strongest) {
        notes.find(Severity::warning, "strongest_if_nothing_earlier",
                   fmt::format("The strongest mix of {} holds only if this ground had none of it "
                               "earlier this year; that was not entered.",
                               answer.name));
    }
    return answer;
}

// ---- fills and plants ------------------------------------------------------------------------

void put_fills(const SpotRequest& request, const MixContents& contents,
               const std::optional<MixPerArea>& mix, SpotAnswer& answer, Notes& notes) {
    for (const auto& reading : request.fills) {
        SpotFill fill;
        fill.fill = reading.value;
        fill.carrier = reading.value * contents.carrier_share;
        std::string texts;
        for (std::size_t i = 0; i < request.products.size(); ++i) {
            const ProductCard& card = request.products[i].card;
            const double measure = contents.products[i].per_mix * reading.value.si();
            fill.products.push_back({card.name, amount_of(measure, card, notes.units())});
            texts += fmt::format("{}{} of {}", texts.empty() ? "" : ", ",
                                 fill.products.back().amount.text, card.name);
        }
        if (mix) {
            fill.covers = NetArea::from_si(reading.value.si() / mix->si());
        }
        notes.show([&] {
            return Step{fmt::format("A fill of {}", show(reading, notes.units())),
                        fmt::format("{} of carrier", show(fill.carrier, notes.units())), texts};
        });
        answer.fills.push_back(std::move(fill));
    }
}

void put_plants(const SpotRequest& request, SpotAnswer& answer, Notes& notes) {
    if (request.per_plant) {
        answer.per_plant = request.per_plant->value;
    } else if (request.flow) {
        answer.per_plant =
            VolumeEach::from_si(request.flow->value.si() * request.time_per_plant->value.si());
        notes.show([&] {
            return Step{"Mix to wet one plant",
                        fmt::format("{} x {}", show(*request.flow, notes.units()),
                                    show(*request.time_per_plant, notes.units())),
                        show(*answer.per_plant, notes.units())};
        });
    }
    if (answer.per_plant && request.plants) {
        answer.mix_for_plants = Volume::from_si(answer.per_plant->si() * *request.plants);
        notes.show([&] {
            return Step{"Mix for all plants",
                        fmt::format("{} plants x {}", *request.plants,
                                    show(*answer.per_plant, notes.units())),
                        show(*answer.mix_for_plants, notes.units())};
        });
    }
}

}  // namespace

Result<SpotAnswer> spot(const SpotRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check(request, notes.units()));
    SpotAnswer answer;
    answer.mix_per_area = measured_mix(request, notes);
    MixBasis basis;
    basis.mix_per_treated_area = answer.mix_per_area;
    if (request.mix_density) {
        basis.mix_density = request.mix_density->value;
    }
    SWATHBOOK_TRY(contents, contents_of(request.products, basis));
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        const Working at{&request.products[i], &contents.products[i], &basis, &request};
        SWATHBOOK_TRY(product, product_answer(at, i, contents.carrier_share, notes));
        answer.products.push_back(std::move(product));
    }
    put_fills(request, contents, answer.mix_per_area, answer, notes);
    put_plants(request, answer, notes);
    return answer;
}

}  // namespace swathbook::mix
