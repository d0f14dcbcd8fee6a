#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/job/detail/balance_parts.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"

namespace swathbook::job::detail {
namespace {

constexpr double stock_agrees_within = 0.02;
constexpr double default_explain = 0.05;

/// An amount of one product in its own measure: m3 of a liquid, kg of a dry one.
struct Measured {
    std::optional<double> used{};  ///< on the ground
    double step = 0.0;             ///< half the last digit, as a share
    double in_leftover = 0.0;
    std::optional<double> stock{};
    bool dry = false;
};

std::string amount_words(double si, bool dry, UnitSystem units) {
    if (dry) {
        return show(Mass::from_si(si), units);
    }
    return show(si, Kind::volume, units == UnitSystem::us ? "gal" : "L");
}

Result<void> add_load_product(Measured& measured, const BalanceLoadProduct& product,
                              const std::string& at) {
    SWATHBOOK_CHECK(require_usable(product.amount, at + ".amount", "The amount of product"));
    SWATHBOOK_CHECK(require_usable(product.weight, at + ".weight", "The weight of product"));
    if (product.amount.has_value() == product.weight.has_value()) {
        return fail(ErrorCode::invalid_input, at + ".amount",
                    fmt::format("Enter for \"{}\" either an amount (poured) or a weight (weighed).",
                                product.name));
    }
    if (measured.used && measured.dry != product.weight.has_value()) {
        return fail(ErrorCode::inconsistent, at,
                    fmt::format("\"{}\" is poured in one load and weighed in another. Enter it the "
                                "same way in all.",
                                product.name));
    }
    measured.dry = product.weight.has_value();
    const double si = measured.dry ? product.weight->value.si() : product.amount->value.si();
    const double step = measured.dry ? product.weight->half_step_si : product.amount->half_step_si;
    measured.step += step;  // absolute until the sum is known
    measured.used = measured.used.value_or(0.0) + si;
    return {};
}

Result<void> add_load(Measured& measured, const BalanceRequest& request, std::size_t load,
                      const std::string& name) {
    const auto& products = request.loads[load].products;
    for (std::size_t j = 0; j < products.size(); ++j) {
        if (products[j].name != name) {
            continue;
        }
        const std::string field = fmt::format("loads[{}].products[{}]", load, j);
        SWATHBOOK_CHECK(add_load_product(measured, products[j], field));
    }
    return {};
}

/// What the loads say of one product; the share left in the tank is taken off.
Result<Measured> from_loads(const BalanceRequest& request, const std::string& name) {
    Measured measured;
    for (std::size_t i = 0; i < request.loads.size(); ++i) {
        SWATHBOOK_CHECK(add_load(measured, request, i, name));
    }
    if (!measured.used) {
        return measured;
    }
    measured.step /= *measured.used;
    const double made = made_by_loads(request);
    if (request.leftover && made > 0.0) {
        measured.in_leftover = *measured.used * request.leftover->value.si() / made;
        measured.used = *measured.used - measured.in_leftover;
    }
    return measured;
}

template <Kind K>
Result<std::optional<double>> stock_out(const std::optional<Reading<K>>& before,
                                        const std::optional<Reading<K>>& after,
                                        const std::string& at) {
    if (!before || !after) {
        return std::optional<double>{};
    }
    const double out = before->value.si() - after->value.si();
    if (out < 0.0 || !(before->value.si() >= 0.0)) {
        return fail(ErrorCode::inconsistent, at,
                    fmt::format("Stock grew from {} to {}. Exchange them, or enter what was "
                                "brought in with the stock before.",
                                show(*before, UnitSystem::us), show(*after, UnitSystem::us)));
    }
    return std::optional<double>(out);
}

/// What was typed of one product, before the loads are asked.
Result<Measured> measured_of(const BalanceRequest& request, std::size_t index) {
    const BalanceProduct& product = request.products[index];
    const std::string at = fmt::format("products[{}]", index);
    SWATHBOOK_CHECK(require_usable(product.used, at + ".used", "The product used"));
    SWATHBOOK_CHECK(require_usable(product.used_weight, at + ".used_weight", "The product used"));
    SWATHBOOK_TRY(measured, from_loads(request, product.name));
    if (product.used) {
        measured = Measured{product.used->value.si(),
                            product.used->half_step_si / product.used->value.si(),
                            0.0,
                            {},
                            false};
    } else if (product.used_weight) {
        measured = Measured{product.used_weight->value.si(),
                            product.used_weight->half_step_si / product.used_weight->value.si(),
                            0.0,
                            {},
                            true};
    }
    SWATHBOOK_TRY(poured,
                  stock_out(product.stock_before, product.stock_after, at + ".stock_after"));
    SWATHBOOK_TRY(weighed, stock_out(product.stock_before_weight, product.stock_after_weight,
                                     at + ".stock_after_weight"));
    const auto& out = poured ? poured : weighed;
    if (!out) {
        return measured;
    }
    if (!measured.used) {
        measured.dry = !poured;
        measured.used = out;
    } else if (measured.dry == !poured) {
        measured.stock = out;
    }
    return measured;
}

/// What the rate asks on the ground and with the mix of the plan; nothing when it cannot be told.
Result<std::optional<double>> expected_of(const LabelRate& rate, const BalanceAnswer& answer,
                                          double ground, const std::string& field) {
    switch (rate.basis) {
        case RateBasis::volume_per_area:
        case RateBasis::mass_per_area: return std::optional<double>(rate.si * ground);
        case RateBasis::volume_per_mix:
        case RateBasis::mass_per_mix:
        case RateBasis::percent_by_volume: {
            const auto& mix = answer.mix;
            return mix && mix->expected ? std::optional<double>(rate.si * mix->expected->si())
                                        : std::optional<double>{};
        }
        default: break;
    }
    return fail(ErrorCode::unsupported, field,
                "A balance counts product as sold. Enter the rate as product per area, per volume "
                "of mix, or percent by volume.");
}

void put_amounts(ProductBalance& row, const Measured& measured, std::optional<double> expected) {
    if (measured.dry) {
        row.used_weight =
            measured.used ? std::optional(Mass::from_si(*measured.used)) : std::nullopt;
        row.expected_weight = expected ? std::optional(Mass::from_si(*expected)) : std::nullopt;
        row.stock_used_weight =
            measured.stock ? std::optional(Mass::from_si(*measured.stock)) : std::nullopt;
        if (measured.in_leftover > 0.0) {
            row.in_leftover_weight = Mass::from_si(measured.in_leftover);
        }
        return;
    }
    row.used = measured.used ? std::optional(Volume::from_si(*measured.used)) : std::nullopt;
    row.expected = expected ? std::optional(Volume::from_si(*expected)) : std::nullopt;
    row.stock_used =
        measured.stock ? std::optional(Volume::from_si(*measured.stock)) : std::nullopt;
    if (measured.in_leftover > 0.0) {
        row.in_leftover = Volume::from_si(measured.in_leftover);
    }
}

/// Rate on the ground and its distance from the wanted one.
void put_rates(ProductBalance& row, const BalanceRequest& request, const BalanceAnswer& answer,
               const BalanceProduct& product, const Measured& measured) {
    if (!measured.used || !answer.ground_area) {
        return;
    }
    const double applied = *measured.used / answer.ground_area->si();
    const double plus_minus = plus_minus_of(request, measured.step);
    if (measured.dry) {
        row.applied_weight = with_interval<Kind::product_mass_per_area>(applied, plus_minus);
    } else {
        row.applied = with_interval<Kind::product_volume_per_area>(applied, plus_minus);
    }
    if (!product.rate) {
        return;
    }
    const bool per_area = product.rate->basis == RateBasis::volume_per_area ||
                          product.rate->basis == RateBasis::mass_per_area;
    if (per_area) {
        row.difference = difference_of(applied, product.rate->si, plus_minus);
    } else if (answer.mix && answer.mix->used.si() > 0.0) {
        row.difference = difference_of(*measured.used / answer.mix->used.si(), product.rate->si,
                                       plus_minus_of(request, measured.step));
    }
}

std::string rate_words(const ProductBalance& row, UnitSystem units) {
    const bool us = units == UnitSystem::us;
    if (row.applied) {
        return show(row.applied->value.si(), Kind::product_volume_per_area,
                    us ? "fl oz/ac" : "L/ha", 3);
    }
    return row.applied_weight ? show(row.applied_weight->value.si(), Kind::product_mass_per_area,
                                     us ? "lb/ac" : "kg/ha", 3)
                              : std::string("no rate: no ground was entered");
}

std::string text_of(const ProductBalance& row, const BalanceProduct& product,
                    const Measured& measured, std::optional<double> expected, UnitSystem units) {
    if (!measured.used) {
        return fmt::format("How much of {} was used is not entered.", product.name);
    }
    std::string text =
        fmt::format("{}: used {}", product.name, amount_words(*measured.used, measured.dry, units));
    if (expected) {
        text += fmt::format(", expected {}", amount_words(*expected, measured.dry, units));
    }
    text += fmt::format("; {}", rate_words(row, units));
    if (row.difference) {
        text += fmt::format(" against {}, {}", show(*product.rate, units),
                            signed_percent(row.difference->value.si()));
        if (row.difference->low) {
            text += fmt::format(" ({} to {})", signed_percent(row.difference->low->si()),
                                signed_percent(row.difference->high->si()));
        }
    }
    return text + ".";
}

void remark(const ProductBalance& row, const BalanceRequest& request, const std::string& name,
            Notes& notes) {
    const double limit = request.explain_over ? request.explain_over->value.si() : default_explain;
    if (row.difference && std::fabs(row.difference->value.si()) > limit) {
        const bool told = !row.difference->low || row.difference->low->si() > 0.0 ||
                          row.difference->high->si() < 0.0;
        notes.find(Severity::warning, "explain_before_filing",
                   fmt::format("{} {}: explain before filing.{}", row.text,
                               signed_percent(row.difference->value.si()),
                               told ? ""
                                    : " The interval holds zero, so the measurement itself may be "
                                      "the reason."),
                   request.explain_over ? "" : "common practice: more than 5 %");
    }
    if (row.stock_difference && std::fabs(row.stock_difference->si()) > stock_agrees_within) {
        notes.find(Severity::warning, "stock_disagrees",
                   fmt::format("Out of stock of {} went {} against what was put in the loads: look "
                               "for a spill, a load not written down, or a jug not counted.",
                               name, signed_percent(row.stock_difference->si())));
    }
}

void show_product(const ProductBalance& row, const BalanceAnswer& answer, const Measured& measured,
                  Notes& notes) {
    if (!measured.used || !answer.ground_area) {
        return;
    }
    notes.show([&] {
        return Step{
            fmt::format("{} on the ground", row.name),
            fmt::format("{} / {}", amount_words(*measured.used, measured.dry, notes.units()),
                        show(*answer.ground_area, notes.units())),
            rate_words(row, notes.units())};
    });
}

}  // namespace

Result<void> fill_products(BalanceAnswer& answer, const BalanceRequest& request, Notes& notes) {
    const double excluded = answer.excluded_area ? answer.excluded_area->si() : 0.0;
    const double planned = answer.planned_area  ? answer.planned_area->si() - excluded
                           : answer.ground_area ? answer.ground_area->si()
                                                : 0.0;
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        const BalanceProduct& product = request.products[i];
        if (product.name.empty()) {
            return fail(ErrorCode::invalid_input, fmt::format("products[{}].name", i),
                        "Every product needs its name.");
        }
        SWATHBOOK_TRY(measured, measured_of(request, i));
        std::optional<double> expected;
        if (product.rate) {
            const bool dry_rate = product.rate->basis == RateBasis::mass_per_area ||
                                  product.rate->basis == RateBasis::mass_per_mix;
            if (measured.used && dry_rate != measured.dry) {
                return fail(ErrorCode::inconsistent, fmt::format("products[{}].rate", i),
                            fmt::format("The rate of {} is by {}, but the product was {}.",
                                        product.name, dry_rate ? "weight" : "volume",
                                        measured.dry ? "weighed" : "poured"));
            }
            measured.dry = dry_rate;
            SWATHBOOK_TRY(asked, expected_of(*product.rate, answer, planned,
                                             fmt::format("products[{}].rate", i)));
            expected = planned > 0.0 ? asked : std::nullopt;
        }
        ProductBalance row;
        row.name = product.name;
        put_amounts(row, measured, expected);
        put_rates(row, request, answer, product, measured);
        if (measured.used && expected && *expected > 0.0) {
            row.amount_difference = Fraction::from_si(*measured.used / *expected - 1.0);
        }
        if (measured.stock && measured.used) {
            row.stock_difference =
                Fraction::from_si(*measured.stock / (*measured.used + measured.in_leftover) - 1.0);
        }
        row.text = text_of(row, product, measured, expected, notes.units());
        show_product(row, answer, measured, notes);
        remark(row, request, product.name, notes);
        answer.products.push_back(std::move(row));
    }
    return {};
}

}  // namespace swathbook::job::detail
