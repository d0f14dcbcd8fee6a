#include "core/mix/substitute.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/mix/recipe.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::mix {
namespace {

/// The strengths of both products in the one substance they are compared in.
struct Match {
    DoseSubstance substance = DoseSubstance::acid;
    double planned = 0.0;  ///< kg in a measure of the planned product
    double in_hand = 0.0;
    std::string name{};
};

bool has_acid(const Ingredient& ingredient) {
    return ingredient.acid_strength || ingredient.acid_part;
}

bool has_ingredient(const Ingredient& ingredient) {
    return ingredient.strength || ingredient.part;
}

char lower(char character) {
    return character >= 'A' && character <= 'Z' ? static_cast<char>(character - 'A' + 'a')
                                                : character;
}

bool same_name(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return lower(x) == lower(y); });
}

Result<void> check_same(const Ingredient& planned, const Ingredient& in_hand) {
    if (same_name(planned.name, in_hand.name)) {
        return {};
    }
    return fail(ErrorCode::inconsistent, "in_hand.ingredients",
                fmt::format("The plan is for {} and the product in hand holds {}. A substitute has "
                            "the same ingredient; if these are salts or esters of one acid, name "
                            "that acid on both cards and give the acid equivalents (a.e.).",
                            planned.name, in_hand.name));
}

Result<Match> match_of(const SubstituteRequest& request) {
    SWATHBOOK_TRY(planned,
                  ingredient_of(request.planned, request.ingredient, "planned.ingredients"));
    SWATHBOOK_TRY(in_hand, ingredient_of(request.in_hand,
                                         request.in_hand.ingredients.size() > 1 ? planned->name
                                                                                : std::string(),
                                         "in_hand.ingredients"));
    SWATHBOOK_CHECK(check_same(*planned, *in_hand));
    Match match;
    match.name = planned->name;
    if (has_acid(*planned) != has_acid(*in_hand) ||
        (!has_acid(*planned) && !has_ingredient(*planned))) {
        const bool planned_lacks = !has_acid(*planned);
        return fail(ErrorCode::invalid_input,
                    planned_lacks ? "planned.ingredients" : "in_hand.ingredients",
                    fmt::format("The card of {} gives no acid equivalent (a.e.) of {}, so the two "
                                "cannot be compared: a salt or ester weighs more than its acid by "
                                "an amount that depends on which one it is. Copy the a.e. figure "
                                "from the label.",
                                planned_lacks ? request.planned.name : request.in_hand.name,
                                planned->name));
    }
    match.substance = has_acid(*planned) ? DoseSubstance::acid : DoseSubstance::ingredient;
    const bool by_acid = match.substance == DoseSubstance::acid;
    SWATHBOOK_TRY(planned_content,
                  by_acid ? acid_content(request.planned, *planned, "planned.ingredients")
                          : ingredient_content(request.planned, *planned, "planned.ingredients"));
    SWATHBOOK_TRY(in_hand_content,
                  by_acid ? acid_content(request.in_hand, *in_hand, "in_hand.ingredients")
                          : ingredient_content(request.in_hand, *in_hand, "in_hand.ingredients"));
    match.planned = planned_content;
    match.in_hand = in_hand_content;
    return match;
}

LabelRate rate_in_hand(const SubstituteRequest& request, const ProductRate& rate) {
    const bool is_liquid = request.in_hand.form == Form::liquid;
    RateBasis basis = is_liquid ? RateBasis::volume_per_mix : RateBasis::mass_per_mix;
    if (rate.per == Per::area) {
        basis = is_liquid ? RateBasis::volume_per_area : RateBasis::mass_per_area;
    } else if (is_liquid && request.rate.basis == RateBasis::percent_by_volume) {
        basis = RateBasis::percent_by_volume;
    }
    return LabelRate{rate.si, basis, 0.0, ""};
}

void show_dose(const SubstituteRequest& request, const Match& match, double planned_rate,
               const SubstituteAnswer& answer, Notes& notes) {
    notes.show([&] {
        const std::string asked =
            request.rate.text.empty() ? show(request.rate, notes.units()) : request.rate.text;
        const bool is_acid = match.substance == DoseSubstance::acid;
        const Kind kind = is_acid ? Kind::acid_per_area : Kind::ingredient_per_area;
        const double dose = planned_rate * match.planned;
        const bool is_per_area = answer.acid_per_area || answer.ingredient_per_area;
        return Step{
            fmt::format("Dose of {} in the plan", match.name),
            fmt::format(
                "{} of {} * {}", asked, request.planned.name,
                request.planned.form == Form::liquid
                    ? show(match.planned, is_acid ? Kind::acid_strength : Kind::ingredient_strength,
                           notes.units())
                    : show_number(match.planned * 100.0) + " %"),
            is_per_area ? show(dose, kind, notes.units())
                        : fmt::format("{} g in 1 L of mix", show_number(dose)),
            is_acid ? "acid equivalents are compared; Iowa State University Extension, "
                      "Glyphosate math"
                    : ""};
    });
    notes.show([&] {
        return Step{fmt::format("Rate of {}", request.in_hand.name),
                    fmt::format("dose / {}", request.in_hand.form == Form::liquid
                                                 ? show(match.in_hand,
                                                        match.substance == DoseSubstance::acid
                                                            ? Kind::acid_strength
                                                            : Kind::ingredient_strength,
                                                        notes.units())
                                                 : show_number(match.in_hand * 100.0) + " %"),
                    answer.text};
    });
}

void remark_on_other_ingredients(const SubstituteRequest& request, const Match& match,
                                 Notes& notes) {
    const auto others = [&](const ProductCard& card) {
        std::string names;
        for (const Ingredient& ingredient : card.ingredients) {
            if (!same_name(ingredient.name, match.name)) {
                names += (names.empty() ? "" : ", ") + ingredient.name;
            }
        }
        return names;
    };
    const std::string lost = others(request.planned);
    if (!lost.empty()) {
        notes.find(Severity::warning, "ingredient_lost",
                   fmt::format("{} also holds {}, which {} does not replace.", request.planned.name,
                               lost, request.in_hand.name));
    }
    const std::string gained = others(request.in_hand);
    if (!gained.empty()) {
        notes.find(Severity::warning, "ingredient_added",
                   fmt::format("{} also holds {}, which was not in the plan. Its own limits and "
                               "its effect on the site count too.",
                               request.in_hand.name, gained));
    }
}

void remark(const SubstituteRequest& request, const Match& match, const SubstituteAnswer& answer,
            Notes& notes) {
    if (match.substance == DoseSubstance::ingredient) {
        notes.find(Severity::warning, "same_form_assumed",
                   fmt::format("Neither card gives an acid equivalent, so active ingredient was "
                               "matched. That is only right when both hold {} in the same form "
                               "(the same salt or ester); compare the ingredient statements.",
                               match.name));
    }
    remark_on_other_ingredients(request, match, notes);
    report_checks(request.in_hand, answer.limits, notes);
    if (!answer.not_entered.empty()) {
        notes.find(Severity::warning, "limits_not_entered",
                   fmt::format("{} limits of {} were not entered from its label. That is not the "
                               "same as no limit.",
                               answer.not_entered.size(), request.in_hand.name));
    }
    if (request.planned.form != request.in_hand.form ||
        request.planned.formulation != request.in_hand.formulation) {
        notes.find(
            Severity::advice, "formulation_changes",
            fmt::format("{} is {} ({}), {} was {} ({}): its place in the mixing order and "
                        "the adjuvants its label asks for may differ.",
                        request.in_hand.name, word_of(request.in_hand.form),
                        word_of(request.in_hand.formulation), request.planned.name,
                        word_of(request.planned.form), word_of(request.planned.formulation)));
    }
    notes.find(Severity::note, "read_the_new_label",
               fmt::format("Sites, timing, surfactant, waits and protective equipment follow the "
                           "label of {} now, not that of {}.",
                           request.in_hand.name, request.planned.name));
}

Result<Delivery> delivered(const SubstituteRequest& request, const ProductRate& rate) {
    TankProduct product;
    product.card = request.in_hand;
    product.applied_this_year = request.applied_this_year;
    product.applications_this_year = request.applications_this_year;
    MixBasis basis;
    const Dissolved dissolved;
    if (request.mix_per_area) {
        const double mix = request.mix_per_area->value.si();
        if (!(mix > 0.0 && mix <= 10.0)) {
            return fail(ErrorCode::out_of_range, "mix_per_area",
                        fmt::format("The mix per area is {}: it must be a number above 0 that a "
                                    "sprayer can put out.",
                                    show(*request.mix_per_area, UnitSystem::us)));
        }
        basis.mix_per_treated_area = request.mix_per_area->value;
    }
    SWATHBOOK_TRY(delivery, delivery_of(product, dissolved, basis, ""));
    delivery.per_area_si.reset();
    delivery.per_mix_si.reset();
    if (rate.per == Per::area) {
        delivery.per_area_si = rate.si;
        if (delivery.mix_per_area_si) {
            delivery.per_mix_si = rate.si / *delivery.mix_per_area_si;
        }
    } else {
        delivery.per_mix_si = rate.si;
        if (delivery.mix_per_area_si) {
            delivery.per_area_si = rate.si * *delivery.mix_per_area_si;
        }
    }
    return delivery;
}

}  // namespace

Result<SubstituteAnswer> substitute(const SubstituteRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check_card(request.planned, "planned"));
    SWATHBOOK_CHECK(check_card(request.in_hand, "in_hand"));
    SWATHBOOK_TRY(match, match_of(request));
    RateReading reading{request.measures, request.ingredient, std::nullopt};
    if (request.mix_density) {
        reading.mix_density = request.mix_density->value;
    }
    SWATHBOOK_TRY(planned_rate, product_rate(request.rate, request.planned, reading, "rate"));
    const ProductRate rate{planned_rate.si * (match.planned / match.in_hand), planned_rate.per};
    SWATHBOOK_TRY(delivery, delivered(request, rate));
    SubstituteAnswer answer;
    answer.ingredient = match.name;
    answer.matched = match.substance;
    if (delivery.per_area_si) {
        const double dose = *delivery.per_area_si * match.in_hand;
        if (match.substance == DoseSubstance::acid) {
            answer.acid_per_area = AcidPerArea::from_si(dose);
        } else {
            answer.ingredient_per_area = IngredientPerArea::from_si(dose);
        }
    }
    answer.rate = rate_in_hand(request, rate);
    answer.text = answer.rate.basis == RateBasis::percent_by_volume
                      ? show(answer.rate, notes.units())
                      : handy_text(rate, request.in_hand.form, notes.units());
    answer.amount_ratio = Fraction::from_si(match.planned / match.in_hand);
    answer.limits =
        check_limits(request.in_hand, delivery,
                     {RateCounts::product, match.name, reading.mix_density}, notes.units());
    answer.not_entered = not_entered(request.in_hand.limits);
    show_dose(request, match, planned_rate.si, answer, notes);
    remark(request, match, answer, notes);
    return answer;
}

}  // namespace swathbook::mix
