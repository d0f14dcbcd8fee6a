#include "core/mix/recipe.hpp"

#include <algorithm>

#include <fmt/format.h>

#include <cmath>

#include "core/quantity/print.hpp"

namespace swathbook::mix {
namespace {

std::string element(std::string_view field, std::size_t index) {
    return fmt::format("{}[{}]", field, index);
}

/// A rate per area as the label counts it, turned to treated ground.
Result<double> on_treated_ground(double per_area, const TankProduct& product, const MixBasis& basis,
                                 std::string_view field) {
    const bool all_is_sprayed = basis.band_share == 1.0;
    if (!all_is_sprayed && !product.counts) {
        return fail(ErrorCode::invalid_input, path_to(field, "counts"),
                    fmt::format("Only bands are sprayed, and the rate of {} is per area. Does the "
                                "label count the ground under the bands or the whole field? Say "
                                "counts: treated or field.",
                                product.card.name));
    }
    const bool counts_field = product.counts == Counts::field;
    return counts_field ? per_area / basis.band_share : per_area;
}

Result<Dissolved> dissolved_per_area(double rate, const TankProduct& product, const MixBasis& basis,
                                     std::string_view field) {
    if (!basis.mix_per_treated_area) {
        return fail(ErrorCode::invalid_input, "mix_per_area",
                    fmt::format("The rate of {} is per area, so the mix per area is needed to know "
                                "how much goes into a tank. Calibrate the sprayer and enter its "
                                "gal/ac or L/ha.",
                                product.card.name));
    }
    SWATHBOOK_TRY(per_treated, on_treated_ground(rate, product, basis, field));
    Dissolved made;
    made.per_treated = per_treated;
    made.per_mix = per_treated / basis.mix_per_treated_area->si();
    made.is_per_area = true;
    return made;
}

/// The carrier's share of the mix, once it is known which liquids are counted of the mix and which
/// of the carrier.
Result<double> carrier_share_of(double liquid_of_mix, double liquid_of_carrier,
                                std::string_view field) {
    if (liquid_of_mix < 1.0) {
        return (1.0 - liquid_of_mix) / (1.0 + liquid_of_carrier);
    }
    return fail(ErrorCode::out_of_range, field,
                fmt::format("The liquid products alone would be {} % of the mix; no room is left "
                            "for carrier. Check the rates and the mix per area.",
                            show_number(liquid_of_mix * 100.0, 3)));
}

/// A dry product heavier than the mix it is stirred into is a slip of the unit.
Result<void> check_dry(std::span<const TankProduct> products, const MixContents& contents,
                       std::string_view field) {
    constexpr double heaviest_kg_per_m3 = 1000.0;
    for (std::size_t i = 0; i < products.size(); ++i) {
        if (products[i].card.form == Form::dry &&
            !(contents.products[i].per_mix <= heaviest_kg_per_m3)) {
            return fail(ErrorCode::out_of_range, path_to(element(field, i), "rate"),
                        fmt::format("{} would weigh more than the mix it goes into. Check the rate "
                                    "and the mix per area.",
                                    products[i].card.name));
        }
    }
    return {};
}

/// Two products whose names differ in capitals or in spaces around them are one to a person.
bool same_name(std::string_view a, std::string_view b) {
    const auto trimmed = [](std::string_view text) {
        const std::size_t first = text.find_first_not_of(' ');
        return first == std::string_view::npos
                   ? std::string_view{}
                   : text.substr(first, text.find_last_not_of(' ') - first + 1);
    };
    const auto lower = [](char letter) {
        return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    };
    a = trimmed(a);
    b = trimmed(b);
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&](char x, char y) { return lower(x) == lower(y); });
}

Result<void> check_names(std::span<const TankProduct> products, std::string_view field) {
    constexpr std::size_t most_products = 20;
    if (products.empty() || products.size() > most_products) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("A mix has 1 to {} products; this one has {}.", most_products,
                                products.size()));
    }
    for (std::size_t i = 0; i < products.size(); ++i) {
        SWATHBOOK_CHECK(check_card(products[i].card, path_to(element(field, i), "card")));
        for (std::size_t j = 0; j < i; ++j) {
            if (same_name(products[i].card.name, products[j].card.name)) {
                return fail(ErrorCode::inconsistent, element(field, i),
                            fmt::format("{} is in the list twice. Add its rates together, so that "
                                        "its limits see all of it.",
                                        products[i].card.name));
            }
        }
    }
    return {};
}

}  // namespace

RateReading reading_of(const TankProduct& product, const MixBasis& basis) {
    return {product.measures, product.ingredient, basis.mix_density};
}

Result<MixContents> contents_of(std::span<const TankProduct> products, const MixBasis& basis,
                                std::string_view field) {
    SWATHBOOK_CHECK(check_names(products, field));
    MixContents contents;
    contents.products.reserve(products.size());
    double liquid_of_mix = 0.0;
    double liquid_of_carrier = 0.0;
    for (std::size_t i = 0; i < products.size(); ++i) {
        const TankProduct& product = products[i];
        const std::string at = element(field, i);
        SWATHBOOK_TRY(rate, product_rate(product.rate, product.card, reading_of(product, basis),
                                         path_to(at, "rate")));
        if (rate.si == 0.0) {
            return fail(ErrorCode::out_of_range, path_to(at, "rate"),
                        fmt::format("The rate of {} is 0. Leave the product out, or enter its "
                                    "rate.",
                                    product.card.name));
        }
        Dissolved dissolved;
        if (rate.per == Per::area) {
            SWATHBOOK_TRY(per_area, dissolved_per_area(rate.si, product, basis, at));
            dissolved = per_area;
        } else {
            dissolved.per_mix = rate.si;
        }
        const bool of_carrier = rate.per == Per::mix && product.share_of == MixShare::carrier;
        if (product.card.form == Form::liquid) {
            (of_carrier ? liquid_of_carrier : liquid_of_mix) += dissolved.per_mix;
        }
        contents.products.push_back(dissolved);
    }
    SWATHBOOK_TRY(carrier_share, carrier_share_of(liquid_of_mix, liquid_of_carrier, field));
    contents.carrier_share = carrier_share;
    SWATHBOOK_CHECK(check_dry(products, contents, field));
    for (std::size_t i = 0; i < products.size(); ++i) {
        Dissolved& dissolved = contents.products[i];
        if (!dissolved.is_per_area) {
            dissolved.per_mix *= products[i].share_of == MixShare::carrier ? carrier_share : 1.0;
            if (basis.mix_per_treated_area) {
                dissolved.per_treated = dissolved.per_mix * basis.mix_per_treated_area->si();
            }
        }
    }
    return contents;
}

Result<Delivery> delivery_of(const TankProduct& product, const Dissolved& dissolved,
                             const MixBasis& basis, std::string_view field) {
    Delivery delivery;
    delivery.per_area_si = dissolved.per_treated;
    delivery.per_mix_si = dissolved.per_mix;
    if (basis.mix_per_treated_area) {
        delivery.mix_per_area_si = basis.mix_per_treated_area->si();
    }
    if (product.applied_this_year) {
        const RateReading as_written{RateCounts::product, product.ingredient, basis.mix_density};
        const std::string at = path_to(field, "applied_this_year");
        SWATHBOOK_TRY(earlier,
                      product_rate(*product.applied_this_year, product.card, as_written, at));
        if (earlier.per != Per::area) {
            return fail(ErrorCode::inconsistent, at,
                        "What was applied earlier this year must be an amount per area: a share of "
                        "a mix does not say how much reached the ground.");
        }
        delivery.earlier_area_si = earlier.si;
    }
    if (product.applications_this_year) {
        constexpr int most_applications = 1000;
        if (*product.applications_this_year < 0 ||
            *product.applications_this_year > most_applications) {
            return fail(ErrorCode::out_of_range, path_to(field, "applications_this_year"),
                        fmt::format("{} earlier applications: enter a count from 0 to {}.",
                                    *product.applications_this_year, most_applications));
        }
        delivery.earlier_applications = product.applications_this_year;
    }
    return delivery;
}

std::vector<const ProductCard*> cards_of(std::span<const TankProduct> products) {
    std::vector<const ProductCard*> cards;
    cards.reserve(products.size());
    for (const TankProduct& product : products) {
        cards.push_back(&product.card);
    }
    return cards;
}

}  // namespace swathbook::mix
