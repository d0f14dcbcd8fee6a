#include "core/mix/stems.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/mix/limits.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

constexpr double largest_dose_ml = 1000.0;
constexpr int most_stems = 10'000'000;
constexpr double most_cuts = 2'000'000'000.0;
constexpr double rounding_room = 1e-12;  // a ceiling of exactly 412 cuts must not become 411

int whole_down(double cuts) {
    return static_cast<int>(std::min(std::floor(cuts * (1.0 + rounding_room)), most_cuts));
}

std::string element(std::size_t index) {
    return fmt::format("products[{}]", index);
}

// ---- checks ----------------------------------------------------------------------------------

Result<void> check_area(const std::optional<Reading<Kind::net_area>>& area, const char* field,
                        UnitSystem units) {
    if (area && !(area->value.si() > 0.0 && area->value.in(hectares) <= 1e6)) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("The ground must be larger than 0; got {}.", show(*area, units)));
    }
    return {};
}

Result<void> check_products(const StemsRequest& request) {
    if (request.products.empty()) {
        return fail(ErrorCode::invalid_input, "products",
                    "Name at least one product of the liquid in the bottle.");
    }
    double shares = 0.0;
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        const StemProduct& product = request.products[i];
        SWATHBOOK_CHECK(check_card(product.card, path_to(element(i), "card")));
        if (product.card.form != Form::liquid) {
            return fail(
                ErrorCode::inconsistent, path_to(element(i), "card.form"),
                fmt::format("{} is dry; stems are treated with a liquid measured by volume. "
                            "Enter the solution it is made into as a liquid product with "
                            "its strength.",
                            product.card.name));
        }
        const double share = product.share ? product.share->value.si() : 1.0;
        if (!(share > 0.0 && share <= 1.0)) {
            return fail(ErrorCode::out_of_range, path_to(element(i), "share"),
                        fmt::format("The share of {} in the liquid is above 0 and at most 100 % "
                                    "v/v; got {}.",
                                    product.card.name, show(*product.share, UnitSystem::us)));
        }
        shares += share;
    }
    if (shares > 1.0 + 1e-9) {
        return fail(
            ErrorCode::inconsistent, "products",
            fmt::format("The products make up {} % of the liquid together. A product without "
                        "a share is taken undiluted: enter the shares.",
                        show_number(100.0 * shares)));
    }
    return {};
}

Result<void> check_counts(const StemsRequest& request) {
    const auto bad_rate = [](const std::optional<double>& cuts) {
        return cuts && !(*cuts > 0.0 && *cuts <= 1000.0);
    };
    if (bad_rate(request.cuts_per_inch)) {
        return fail(ErrorCode::out_of_range, "cuts_per_inch",
                    "Cuts per inch of diameter are above 0 and at most 1000.");
    }
    if (bad_rate(request.cuts_per_stem)) {
        return fail(ErrorCode::out_of_range, "cuts_per_stem",
                    "Cuts per stem are above 0 and at most 1000.");
    }
    if (request.cuts_per_inch && request.cuts_per_stem) {
        return fail(ErrorCode::inconsistent, "cuts_per_stem",
                    "Say either cuts per inch of diameter or cuts per stem, not both.");
    }
    const auto bad_count = [](const std::optional<int>& count) {
        return count && (*count < 0 || *count > most_stems);
    };
    if (bad_count(request.stems) || bad_count(request.cuts_made)) {
        return fail(ErrorCode::out_of_range, bad_count(request.stems) ? "stems" : "cuts_made",
                    fmt::format("A count lies between 0 and {}; got {}.", most_stems,
                                bad_count(request.stems) ? *request.stems : *request.cuts_made));
    }
    for (std::size_t i = 0; i < request.stems_by_size.size(); ++i) {
        const StemClass& size = request.stems_by_size[i];
        const double inches_wide = size.diameter.value.in(inches);
        if (size.stems < 0 || size.stems > most_stems ||
            !(inches_wide > 0.0 && inches_wide < 400.0)) {
            return fail(ErrorCode::out_of_range, fmt::format("stems_by_size[{}]", i),
                        fmt::format("{} stems of {}: give a count from 0 on and a diameter above 0 "
                                    "and below 400 in.",
                                    size.stems, show(size.diameter, UnitSystem::us)));
        }
    }
    if (!request.stems_by_size.empty() && request.stems) {
        return fail(ErrorCode::inconsistent, "stems",
                    "The stems are counted by size already; leave the plain count out.");
    }
    if (!request.stems_by_size.empty() && !request.cuts_per_inch && !request.cuts_per_stem) {
        return fail(ErrorCode::invalid_input, "cuts_per_inch",
                    "Say how many cuts an inch of diameter gets, or a stem: the label tells.");
    }
    if (request.stems && request.cuts_per_inch) {
        return fail(ErrorCode::invalid_input, "stems_by_size",
                    "Cuts per inch of diameter need stems counted by size.");
    }
    return {};
}

Result<void> check(const StemsRequest& request, UnitSystem units) {
    SWATHBOOK_CHECK(check_products(request));
    const double dose_ml = request.dose.value.in(millilitres_each);
    if (!(dose_ml > 0.0 && dose_ml <= largest_dose_ml)) {
        return fail(ErrorCode::out_of_range, "dose",
                    fmt::format("The dose of a cut or stem is above 0 and at most {} mL; got {}.",
                                largest_dose_ml, show(request.dose, units)));
    }
    SWATHBOOK_CHECK(check_counts(request));
    SWATHBOOK_CHECK(check_area(request.area, "area", units));
    SWATHBOOK_CHECK(check_area(request.area_done, "area_done", units));
    if (request.area && request.area_done &&
        request.area_done->value > request.area->value * (1.0 + 1e-9)) {
        return fail(ErrorCode::inconsistent, "area_done",
                    fmt::format("The ground walked ({}) is larger than the whole ({}).",
                                show(*request.area_done, units), show(*request.area, units)));
    }
    return {};
}

// ---- doses and ceilings ----------------------------------------------------------------------

/// Product as sold in one cut.
VolumeEach product_in_cut(const StemsRequest& request, const StemProduct& product) {
    return request.dose.value * (product.share ? product.share->value.si() : 1.0);
}

StemDose dose_of(const StemsRequest& request, const StemProduct& product, Notes& notes) {
    StemDose dose;
    dose.product = product.card.name;
    dose.volume = product_in_cut(request, product);
    const std::string made_of =
        product.share ? fmt::format("{} x {}", show(request.dose, notes.units()),
                                    show(*product.share, notes.units()))
                      : fmt::format("{}, undiluted", show(request.dose, notes.units()));
    notes.show([&] {
        return Step{fmt::format("{} in one cut", dose.product), made_of,
                    show(dose.volume, notes.units())};
    });
    const auto ingredient = ingredient_of(product.card, product.ingredient, "ingredient");
    if (!ingredient) {
        return dose;
    }
    if (const auto content = acid_content(product.card, **ingredient, "acid_strength")) {
        dose.acid = AcidEach::from_si(dose.volume.si() * *content);
        notes.show([&] {
            return Step{fmt::format("Acid equivalent of {} in one cut", dose.product),
                        fmt::format("{} x {}", show(dose.volume, notes.units()),
                                    show(AcidStrength::from_si(*content), "g a.e./L")),
                        show(*dose.acid, notes.units())};
        });
    }
    if (const auto content = ingredient_content(product.card, **ingredient, "strength")) {
        dose.ingredient = IngredientEach::from_si(dose.volume.si() * *content);
    }
    return dose;
}

/// One limit to be counted in cuts.
struct Limit {
    std::string_view word;
    const LabelRate* rate;
    std::string_view where;
    RateCounts counts;
    bool is_yearly;
};

std::vector<Limit> limits_of(const StemProduct& product) {
    std::vector<Limit> limits;
    if (product.ceiling) {
        limits.push_back({"ceiling", &*product.ceiling, "", product.measures, true});
    }
    const LabelLimits& label = product.card.limits;
    if (label.max_single_rate) {
        limits.push_back({"max_single_rate", &label.max_single_rate->value,
                          label.max_single_rate->where, RateCounts::product, false});
    }
    if (label.max_yearly_rate) {
        limits.push_back({"max_yearly_rate", &label.max_yearly_rate->value,
                          label.max_yearly_rate->where, RateCounts::product, true});
    }
    return limits;
}

Result<double> per_area(const LabelRate& rate, const StemProduct& product, RateCounts counts,
                        const std::string& field) {
    const RateReading reading{counts, product.ingredient, std::nullopt};
    SWATHBOOK_TRY(converted, product_rate(rate, product.card, reading, field));
    if (converted.per != Per::area) {
        return fail(ErrorCode::inconsistent, field,
                    fmt::format("\"{}\" is a share of a mix and says nothing of the ground. A "
                                "ceiling for stems is an amount per area, such as 1 lb a.e./ac.",
                                rate.text));
    }
    return converted.si;
}

void show_ceiling(const StemCeiling& ceiling, VolumeEach dose, double allowed, Notes& notes) {
    notes.show([&] {
        return Step{
            fmt::format("Cuts that {} allows ({})", ceiling.product, ceiling.limit),
            fmt::format("{}{} = {} mL of product on an acre / {} mL in a cut", ceiling.allowed,
                        ceiling.left.empty() ? "" : ", " + ceiling.left + " left",
                        show_number(allowed * acres.si / millilitres.si, 6),
                        show_number(dose.in(millilitres_each))),
            fmt::format("{} per ac, rounded down: {} (never up)",
                        show_number(ceiling.cuts.in(swathbook::per_acre), 6), ceiling.per_acre),
            ceiling.where};
    });
}

Result<StemCeiling> ceiling_of(const StemsRequest& request, std::size_t index, const Limit& limit,
                               Notes& notes) {
    const StemProduct& product = request.products[index];
    const std::string field = path_to(
        element(index),
        limit.word == "ceiling" ? "ceiling" : fmt::format("card.limits.{}.value", limit.word));
    SWATHBOOK_TRY(most, per_area(*limit.rate, product, limit.counts, field));
    double allowed = most;
    StemCeiling ceiling;
    if (limit.is_yearly && product.applied_this_year) {
        SWATHBOOK_TRY(earlier, per_area(*product.applied_this_year, product, product.measures,
                                        path_to(element(index), "applied_this_year")));
        allowed = std::max(0.0, most - earlier);
        ceiling.left = show(ProductVolumePerArea::from_si(allowed), notes.units());
    } else if (limit.is_yearly) {
        notes.find(Severity::warning, "earlier_use_not_entered",
                   fmt::format("What this ground had of {} earlier this year was not entered. The "
                               "count takes it as if there were none; enter 0 or the amount.",
                               product.card.name));
    }
    const VolumeEach dose = product_in_cut(request, product);
    ceiling.product = product.card.name;
    ceiling.limit = std::string(limit.word);
    ceiling.allowed =
        limit.rate->text.empty() ? show(*limit.rate, notes.units()) : limit.rate->text;
    ceiling.where = std::string(limit.where);
    ceiling.cuts = CountPerArea::from_si(allowed / dose.si());
    ceiling.per_acre = whole_down(ceiling.cuts.in(swathbook::per_acre));
    ceiling.per_hectare = whole_down(ceiling.cuts.in(swathbook::per_hectare));
    show_ceiling(ceiling, dose, allowed, notes);
    return ceiling;
}

Result<const StemCeiling*> put_ceilings(const StemsRequest& request, StemsAnswer& answer,
                                        Notes& notes) {
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        const std::vector<Limit> limits = limits_of(request.products[i]);
        for (const Limit& limit : limits) {
            SWATHBOOK_TRY(ceiling, ceiling_of(request, i, limit, notes));
            answer.ceilings.push_back(std::move(ceiling));
        }
        if (limits.empty() && !is_unregistered_adjuvant(request.products[i].card)) {
            notes.find(Severity::warning, "ceiling_not_entered",
                       fmt::format("No most per area was entered for {}. Not entered is not \"no "
                                   "limit\": look for it on the label before cutting.",
                                   request.products[i].card.name));
        }
    }
    const auto strictest = std::min_element(
        answer.ceilings.begin(), answer.ceilings.end(),
        [](const StemCeiling& a, const StemCeiling& b) { return a.cuts < b.cuts; });
    if (strictest == answer.ceilings.end()) {
        return nullptr;
    }
    strictest->governs = true;
    answer.cuts_per_acre = strictest->per_acre;
    answer.cuts_per_hectare = strictest->per_hectare;
    return &*strictest;
}

// ---- the live count --------------------------------------------------------------------------

std::string ceiling_words(const StemCeiling& ceiling, UnitSystem units) {
    return units == UnitSystem::us ? fmt::format("{} cuts/ac", ceiling.per_acre)
                                   : fmt::format("{} cuts/ha", ceiling.per_hectare);
}

void count_whole_ground(const StemsRequest& request, const StemCeiling& ceiling,
                        StemsAnswer& answer, Notes& notes) {
    const double exact = ceiling.cuts.si() * request.area->value.si();
    answer.cuts_on_area = whole_down(exact);
    notes.show([&] {
        return Step{
            "Cuts on the whole ground",
            fmt::format("{} per ac x {}", show_number(ceiling.cuts.in(swathbook::per_acre), 6),
                        show(*request.area, notes.units())),
            fmt::format("{}, rounded down", *answer.cuts_on_area)};
    });
    const int made = request.cuts_made.value_or(0);
    answer.cuts_remaining = *answer.cuts_on_area - made;
    answer.share_used = exact > 0.0 ? std::optional(Fraction::from_si(made / exact)) : std::nullopt;
    if (*answer.cuts_remaining < 0) {
        notes.find(
            Severity::stop, "over_ceiling",
            fmt::format("{} cuts were made, {} more than the {} that {} allows on this ground. "
                        "Stop, write it down, and ask the label's maker or the state what to "
                        "do.",
                        made, -*answer.cuts_remaining, *answer.cuts_on_area, ceiling.product),
            ceiling.where);
    } else if (answer.share_used && answer.share_used->si() > 0.9) {
        notes.find(Severity::warning, "near_ceiling",
                   fmt::format("{} cuts are left of {} on this ground.", *answer.cuts_remaining,
                               *answer.cuts_on_area),
                   ceiling.where);
    }
    if (answer.cuts_planned && *answer.cuts_planned > *answer.cuts_on_area) {
        notes.find(
            Severity::stop, "plan_over_ceiling",
            fmt::format("The stems need {} cuts and the ceiling allows {} on this ground ({}). "
                        "Leave {} cuts for another year, or take a smaller dose that the "
                        "label allows.",
                        *answer.cuts_planned, *answer.cuts_on_area,
                        ceiling_words(ceiling, notes.units()),
                        *answer.cuts_planned - *answer.cuts_on_area),
            ceiling.where);
    }
}

void count_ground_walked(const StemsRequest& request, const StemCeiling* ceiling,
                         StemsAnswer& answer, Notes& notes) {
    const NetArea walked = request.area_done->value;
    answer.density = CountPerArea::from_si(*request.cuts_made / walked.si());
    if (ceiling == nullptr) {
        return;
    }
    const int allowed = whole_down(ceiling->cuts.si() * walked.si());
    answer.cuts_remaining_here = allowed - *request.cuts_made;
    notes.show([&] {
        return Step{"Cuts per area so far",
                    fmt::format("{} cuts / {}", *request.cuts_made,
                                show(*request.area_done, notes.units())),
                    fmt::format("{} per ac; the ceiling is {}",
                                show_number(answer.density->in(swathbook::per_acre)),
                                ceiling_words(*ceiling, notes.units()))};
    });
    if (*answer.cuts_remaining_here < 0) {
        notes.find(
            Severity::stop, "over_ceiling_here",
            fmt::format("On the {} walked so far {} cuts are allowed and {} were made. Ground "
                        "not yet walked does not lend its share to this ground.",
                        show(*request.area_done, notes.units()), allowed, *request.cuts_made),
            ceiling->where);
    }
    if (answer.cuts_remaining && *answer.cuts_remaining >= 0 && *request.cuts_made > 0) {
        answer.area_left_to_cover = NetArea::from_si(*answer.cuts_remaining / answer.density->si());
        const NetArea unwalked = request.area->value - walked;
        if (*answer.area_left_to_cover < unwalked * (1.0 - 1e-9)) {
            notes.find(
                Severity::warning, "ceiling_before_the_end",
                fmt::format("At the cuts per area so far, the {} cuts left last for {} of the "
                            "{} still to walk.",
                            *answer.cuts_remaining, show(*answer.area_left_to_cover, notes.units()),
                            show(unwalked, notes.units())));
        }
    }
}

// ---- stock -----------------------------------------------------------------------------------

/// Whole cuts for all stems: a part of a cut is a cut, and every stem gets one.
std::optional<int> planned_cuts(const StemsRequest& request, Notes& notes) {
    double cuts = 0.0;
    for (const StemClass& size : request.stems_by_size) {
        const double each = request.cuts_per_inch
                                ? size.diameter.value.in(inches) * *request.cuts_per_inch
                                : *request.cuts_per_stem;
        const double whole = std::max(1.0, std::ceil(each * (1.0 - rounding_room)));
        cuts += whole * size.stems;
        notes.show([&] {
            return Step{fmt::format("Cuts for stems of {}", show(size.diameter, notes.units())),
                        fmt::format("{} stems x {} cuts ({} rounded up)", size.stems, whole,
                                    show_number(each)),
                        show_number(whole * size.stems)};
        });
    }
    if (request.stems) {
        cuts =
            std::ceil(*request.stems * request.cuts_per_stem.value_or(1.0) * (1.0 - rounding_room));
    }
    if (request.stems_by_size.empty() && !request.stems) {
        return std::nullopt;
    }
    return static_cast<int>(std::min(cuts, most_cuts));
}

void put_stock(const StemsRequest& request, StemsAnswer& answer, Notes& notes) {
    const double cuts = *answer.cuts_planned;
    const Volume liquid = Volume::from_si(request.dose.value.si() * cuts);
    Volume carrier = liquid;
    for (StemDose& dose : answer.doses) {
        dose.stock = Volume::from_si(dose.volume.si() * cuts);
        dose.stock_text = handy_text(dose.stock->si(), Form::liquid, notes.units());
        carrier -= *dose.stock;
        notes.show([&] {
            return Step{
                fmt::format("{} for all cuts", dose.product),
                fmt::format("{} cuts x {}", *answer.cuts_planned, show(dose.volume, notes.units())),
                dose.stock_text};
        });
    }
    answer.liquid = liquid;
    answer.carrier = std::max(carrier, Volume{});
}

}  // namespace

Result<StemsAnswer> stems(const StemsRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check(request, notes.units()));
    StemsAnswer answer;
    for (const StemProduct& product : request.products) {
        answer.doses.push_back(dose_of(request, product, notes));
        if (!product.share) {
            notes.find(Severity::note, "taken_undiluted",
                       fmt::format("No share was entered for {}: it is taken undiluted.",
                                   product.card.name));
        }
    }
    SWATHBOOK_TRY(ceiling, put_ceilings(request, answer, notes));
    answer.cuts_planned = planned_cuts(request, notes);
    if (answer.cuts_planned) {
        put_stock(request, answer, notes);
    }
    if (request.area && ceiling != nullptr) {
        count_whole_ground(request, *ceiling, answer, notes);
    }
    if (request.area_done && request.cuts_made) {
        count_ground_walked(request, ceiling, answer, notes);
    }
    if (request.cuts_made && !request.area && !request.area_done) {
        notes.find(Severity::warning, "area_not_entered",
                   "Cuts are counted, but not on how much ground: a ceiling per area cannot be "
                   "checked. Measure the ground the stems stand on.");
    }
    return answer;
}

}  // namespace swathbook::mix
