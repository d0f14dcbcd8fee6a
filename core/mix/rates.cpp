#include "core/mix/rates.hpp"

#include <fmt/format.h>

#include <cmath>

#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

char lower(char character) {
    return character >= 'A' && character <= 'Z' ? static_cast<char>(character - 'A' + 'a')
                                                : character;
}

bool same_words(std::string_view a, std::string_view b) {
    if (a.size() != b.size()) {
        return false;
    }
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (lower(a[i]) != lower(b[i])) {
            return false;
        }
    }
    return true;
}

/// One substance of a product, by whichever pair of figures the label gives.
Result<double> content(const ProductCard& card, std::optional<double> by_volume,
                       std::optional<double> by_weight, std::string_view substance,
                       std::string_view field) {
    const bool is_liquid = card.form == Form::liquid;
    if (is_liquid && by_volume) {
        return *by_volume;
    }
    if (!is_liquid && by_weight) {
        return *by_weight;
    }
    if (is_liquid && by_weight && card.density) {
        return *by_weight * card.density->value.si();
    }
    const std::string_view wanted =
        is_liquid ? (by_weight ? "the density of the product (lb/gal), to go with its share by "
                                 "weight,"
                               : "the strength by volume (lb/gal or g/L)")
                  : "the share by weight (%)";
    return fail(ErrorCode::invalid_input, field,
                fmt::format("This rate counts {} but the card of {} does not have {} of it. Copy "
                            "that figure from the ingredient statement of the label.",
                            substance, card.name, wanted));
}

Result<ProductRate> by_substance(double mass_si, Per per, const ProductCard& card,
                                 RateCounts counts, const RateReading& reading,
                                 std::string_view field) {
    SWATHBOOK_TRY(ingredient, ingredient_of(card, reading.ingredient, field));
    SWATHBOOK_TRY(share, counts == RateCounts::acid ? acid_content(card, *ingredient, field)
                                                    : ingredient_content(card, *ingredient, field));
    return ProductRate{mass_si / share, per};
}

Result<ProductRate> by_volume(double volume_si, Per per, const ProductCard& card,
                              std::string_view field) {
    if (card.form == Form::liquid) {
        return ProductRate{volume_si, per};
    }
    if (card.density) {
        return ProductRate{volume_si * card.density->value.si(), per};
    }
    return fail(ErrorCode::inconsistent, field,
                fmt::format("{} is a dry product but its rate is a volume. Dry products are "
                            "weighed: enter the rate by weight, or the bulk density of the product "
                            "if the label really gives a volume.",
                            card.name));
}

Result<ProductRate> by_mass(double mass_si, Per per, const ProductCard& card,
                            std::string_view field) {
    if (card.form == Form::dry) {
        return ProductRate{mass_si, per};
    }
    if (card.density) {
        return ProductRate{mass_si / card.density->value.si(), per};
    }
    return fail(ErrorCode::invalid_input, field,
                fmt::format("{} is a liquid but its rate is a weight. Enter the density of the "
                            "product (lb/gal, from the label or the safety data sheet), or say "
                            "what the weight counts: \"lb a.i.\" or \"lb a.e.\".",
                            card.name));
}

Result<ProductRate> by_mass_or_substance(double mass_si, Per per, const ProductCard& card,
                                         const RateReading& reading, std::string_view field) {
    return reading.counts == RateCounts::product
               ? by_mass(mass_si, per, card, field)
               : by_substance(mass_si, per, card, reading.counts, reading, field);
}

Result<void> check_size(const LabelRate& rate, std::string_view field) {
    if (!std::isfinite(rate.si) || rate.si < 0.0) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("The rate is {}: it must be a number of 0 or more. Copy it again "
                                "from the label.",
                                rate.text.empty() ? show_number(rate.si) : rate.text));
    }
    constexpr double largest = 1e6;  // a thousand kilometres of liquid: the unit was a slip
    if (rate.si > largest) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("The rate is {}: more than any label gives. Check the unit.",
                                rate.text.empty() ? show_number(rate.si) : rate.text));
    }
    const bool is_share =
        rate.basis == RateBasis::percent_by_volume || rate.basis == RateBasis::percent_by_weight;
    if (is_share && rate.si > 1.0) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("The rate is {} %: no more than 100 % of a mix can be product.",
                                show_number(rate.si * 100.0)));
    }
    return {};
}

Result<void> check_counts(const LabelRate& rate, RateCounts counts, std::string_view field) {
    const bool says_substance =
        rate.basis == RateBasis::ingredient_per_area || rate.basis == RateBasis::acid_per_area;
    const bool is_volume = rate.basis == RateBasis::volume_per_area ||
                           rate.basis == RateBasis::volume_per_mix ||
                           rate.basis == RateBasis::percent_by_volume;
    const bool agrees =
        !says_substance || (counts == RateCounts::acid) == (rate.basis == RateBasis::acid_per_area);
    if (counts == RateCounts::product || (agrees && !is_volume)) {
        return {};
    }
    return fail(ErrorCode::inconsistent, field,
                fmt::format("The rate is written as {} but is said to count {}. Write the rate in "
                            "the substance it counts, or drop that remark.",
                            word_of(rate.basis),
                            counts == RateCounts::acid ? "acid equivalent" : "active ingredient"));
}

}  // namespace

std::string path_to(std::string_view front, std::string_view member) {
    return front.empty() ? std::string(member) : fmt::format("{}.{}", front, member);
}

Result<const Ingredient*> ingredient_of(const ProductCard& card, std::string_view name,
                                        std::string_view field) {
    if (card.ingredients.empty()) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("The card of {} lists no active ingredient, so a rate in a.i. or "
                                "a.e. cannot be turned into product. Copy name and strength from "
                                "the ingredient statement of the label.",
                                card.name));
    }
    if (name.empty()) {
        if (card.ingredients.size() == 1) {
            return &card.ingredients.front();
        }
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("{} holds {} active ingredients. Say which one the rate counts: "
                                "{}.",
                                card.name, card.ingredients.size(), [&] {
                                    std::string names;
                                    for (const Ingredient& each : card.ingredients) {
                                        names += names.empty() ? "" : ", ";
                                        names += each.name;
                                    }
                                    return names;
                                }()));
    }
    for (const Ingredient& each : card.ingredients) {
        if (same_words(each.name, name)) {
            return &each;
        }
    }
    return fail(ErrorCode::not_found, field,
                fmt::format("\"{}\" is not among the active ingredients on the card of {}.", name,
                            card.name));
}

Result<double> ingredient_content(const ProductCard& card, const Ingredient& ingredient,
                                  std::string_view field) {
    const auto by_volume =
        ingredient.strength ? std::optional<double>(ingredient.strength->value.si()) : std::nullopt;
    const auto by_weight =
        ingredient.part ? std::optional<double>(ingredient.part->value.si()) : std::nullopt;
    return content(card, by_volume, by_weight, "active ingredient (a.i.)", field);
}

Result<double> acid_content(const ProductCard& card, const Ingredient& ingredient,
                            std::string_view field) {
    const auto by_volume = ingredient.acid_strength
                               ? std::optional<double>(ingredient.acid_strength->value.si())
                               : std::nullopt;
    const auto by_weight = ingredient.acid_part
                               ? std::optional<double>(ingredient.acid_part->value.si())
                               : std::nullopt;
    return content(card, by_volume, by_weight, "acid equivalent (a.e.)", field);
}

Result<ProductRate> product_rate(const LabelRate& rate, const ProductCard& card,
                                 const RateReading& reading, std::string_view field) {
    SWATHBOOK_CHECK(check_size(rate, field));
    SWATHBOOK_CHECK(check_counts(rate, reading.counts, field));
    const double mix_density = reading.mix_density ? reading.mix_density->si() : water_kg_per_m3;
    switch (rate.basis) {
        case RateBasis::volume_per_area: return by_volume(rate.si, Per::area, card, field);
        case RateBasis::mass_per_area:
            return by_mass_or_substance(rate.si, Per::area, card, reading, field);
        case RateBasis::ingredient_per_area:
            return by_substance(rate.si, Per::area, card, RateCounts::ingredient, reading, field);
        case RateBasis::acid_per_area:
            return by_substance(rate.si, Per::area, card, RateCounts::acid, reading, field);
        case RateBasis::volume_per_mix:
        case RateBasis::percent_by_volume: return by_volume(rate.si, Per::mix, card, field);
        case RateBasis::mass_per_mix:
            return by_mass_or_substance(rate.si, Per::mix, card, reading, field);
        case RateBasis::percent_by_weight:
            return by_mass_or_substance(rate.si * mix_density, Per::mix, card, reading, field);
    }
    return fail(ErrorCode::internal, field, "A rate basis was forgotten.");
}

namespace {

std::string gallons_and_ounces(double cubic_metres) {
    const double ounces = cubic_metres / us_fluid_ounces.si;
    const double gallons = std::floor(ounces / fluid_ounces_per_us_gallon);
    const double rest = ounces - gallons * fluid_ounces_per_us_gallon;
    const std::string rest_text = show_number(rest, rest < 100.0 ? 3 : 4);
    if (rest_text == "0") {
        return show_number(gallons) + " gal";
    }
    return rest_text == "128" ? show_number(gallons + 1.0) + " gal"
                              : fmt::format("{} gal {} fl oz", show_number(gallons), rest_text);
}

std::string volume_text(double cubic_metres, UnitSystem units) {
    constexpr double pourable_ounce = 1.0;  // below one fluid ounce people measure millilitres
    if (units == UnitSystem::metric) {
        return cubic_metres >= litres.si ? show_number(cubic_metres / litres.si) + " L"
                                         : show_number(cubic_metres / millilitres.si) + " mL";
    }
    const double ounces = cubic_metres / us_fluid_ounces.si;
    if (ounces >= fluid_ounces_per_us_gallon) {
        return gallons_and_ounces(cubic_metres);
    }
    return ounces >= pourable_ounce ? show_number(ounces) + " fl oz"
                                    : show_number(cubic_metres / millilitres.si) + " mL";
}

std::string mass_text(double mass_kg, UnitSystem units) {
    if (units == UnitSystem::metric) {
        return mass_kg >= 1.0 ? show_number(mass_kg) + " kg"
                              : show_number(mass_kg / grams.si) + " g";
    }
    if (mass_kg >= pounds.si) {
        return show_number(mass_kg / pounds.si) + " lb";
    }
    return mass_kg >= ounces_weight.si ? show_number(mass_kg / ounces_weight.si) + " oz wt"
                                       : show_number(mass_kg / grams.si) + " g";
}

}  // namespace

std::string handy_text(double measure, Form form, UnitSystem units) {
    return form == Form::liquid ? volume_text(measure, units) : mass_text(measure, units);
}

std::string handy_text(ProductRate rate, Form form, UnitSystem units) {
    const bool is_us = units == UnitSystem::us;
    const double area = is_us ? acres.si : hectares.si;
    const double mix = 100.0 * (is_us ? us_gallons.si : litres.si);
    const bool is_per_area = rate.per == Per::area;
    const double measure = rate.si * (is_per_area ? area : mix);
    const bool is_gallons = is_us && form == Form::liquid && measure >= us_gallons.si;
    if (is_gallons) {  // "1 gal 26 fl oz/ac" could be misread
        return is_per_area ? show_number(measure / us_gallons.si) + " gal/ac"
                           : show_number(measure / us_fluid_ounces.si / 100.0) + " fl oz/gal";
    }
    const std::string_view ground = is_us ? "/ac" : "/ha";
    const std::string_view tank = is_us ? "/100 gal" : "/100 L";
    return handy_text(measure, form, units) + std::string(is_per_area ? ground : tank);
}

ProductAmount amount_of(double measure, const ProductCard& card, UnitSystem units) {
    ProductAmount amount;
    const double density = card.density ? card.density->value.si() : 0.0;
    if (card.form == Form::liquid) {
        amount.volume = Volume::from_si(measure);
        if (card.density) {
            amount.mass = Mass::from_si(measure * density);
        }
    } else {
        amount.mass = Mass::from_si(measure);
    }
    amount.text = handy_text(measure, card.form, units);
    return amount;
}

}  // namespace swathbook::mix
