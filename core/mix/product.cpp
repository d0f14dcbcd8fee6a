#include "core/mix/product.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

namespace swathbook::mix {
namespace {

constexpr std::size_t longest_registration = 60;
constexpr std::size_t longest_group = 6;

bool is_digit(char character) {
    return character >= '0' && character <= '9';
}

char lower(char character) {
    return character >= 'A' && character <= 'Z' ? static_cast<char>(character - 'A' + 'a')
                                                : character;
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) {
        text.remove_prefix(1);
    }
    while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) {
        text.remove_suffix(1);
    }
    return text;
}

/// Takes "EPA Reg. No." and its spellings off the front; leaves anything else alone.
std::string_view without_introduction(std::string_view text) {
    constexpr std::string_view letters = "abcdefghijklmnopqrstuvwxyz .:#";
    constexpr auto known = std::to_array<std::string_view>(
        {"epa", "epareg", "eparegno", "eparegistration", "regno", "reg", "eparegistrationno",
         "eparegnumber", "eparegistrationnumber"});
    std::size_t end = 0;
    std::string words;
    while (end < text.size() && letters.find(lower(text[end])) != std::string_view::npos) {
        const char character = lower(text[end]);
        if (character >= 'a' && character <= 'z') {
            words.push_back(character);
        }
        ++end;
    }
    const bool is_known =
        words.empty() || std::find(std::begin(known), std::end(known), words) != std::end(known);
    return is_known ? text.substr(end) : text;
}

bool has_epa_form(std::string_view number) {
    int groups = 0;
    std::size_t length = 0;
    for (const char character : number) {
        if (is_digit(character)) {
            ++length;
            continue;
        }
        if (character != '-' || length == 0 || length > longest_group) {
            return false;
        }
        ++groups;
        length = 0;
    }
    return length > 0 && length <= longest_group && (groups == 1 || groups == 2);
}

bool is_printable(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char character) {
        return static_cast<unsigned char>(character) >= 0x20 && character != 0x7f;
    });
}

std::string path(std::string_view front, std::string_view member) {
    return front.empty() ? std::string(member) : fmt::format("{}.{}", front, member);
}

std::string typed(const std::string& text, double si) {
    return text.empty() ? fmt::format("{:.6g} (SI)", si) : text;
}

struct Bounds {
    double low;
    bool low_is_allowed;
    double high;
    std::string_view say;  ///< "must be above 0"
};
constexpr double huge = 1e12;
constexpr Bounds above_zero{0.0, false, huge, "must be a number above 0"};
constexpr Bounds from_zero{0.0, true, huge, "must be 0 or more"};
constexpr Bounds any_number{-huge, true, huge, "must be a number"};
constexpr Bounds share{1e-9, true, 1.0, "must be above 0 % and at most 100 %"};
/// Osmium, the densest element, is 22.6 kg/L; a strength above 5 kg/L is a slip of the unit.
constexpr Bounds concentration{1e-6, true, 5000.0,
                               "must be above 0 and below 5 kg/L (42 lb/gal); check the unit"};

Result<void> check_number(double si, const std::string& text, const Bounds& bounds,
                          const std::string& field) {
    const bool good = std::isfinite(si) && si <= bounds.high &&
                      (bounds.low_is_allowed ? si >= bounds.low : si > bounds.low);
    if (good) {
        return {};
    }
    const std::string detail = fmt::format("{} is {}: it {}. Copy it again from the label.", field,
                                           typed(text, si), bounds.say);
    return fail(ErrorCode::out_of_range, field, detail);
}

template <Kind K>
Result<void> check_reading(const std::optional<Reading<K>>& reading, const Bounds& bounds,
                           const std::string& field) {
    return reading ? check_number(reading->value.si(), reading->text, bounds, field)
                   : Result<void>{};
}

template <Kind K>
Result<void> check_limit(const std::optional<Limit<K>>& limit, const Bounds& bounds,
                         const std::string& field) {
    return limit ? check_number(limit->value.value.si(), limit->value.text, bounds, field)
                 : Result<void>{};
}

Result<void> check_rate(const std::optional<RateLimit>& limit, const std::string& field) {
    return limit ? check_number(limit->value.si, limit->value.text, above_zero, field)
                 : Result<void>{};
}

Result<void> check_ingredients(const ProductCard& card, std::string_view field) {
    for (std::size_t i = 0; i < card.ingredients.size(); ++i) {
        const Ingredient& ingredient = card.ingredients[i];
        const auto at = [&](std::string_view member) {
            return path(field, fmt::format("ingredients[{}].{}", i, member));
        };
        SWATHBOOK_CHECK(check_reading(ingredient.strength, concentration, at("strength")));
        SWATHBOOK_CHECK(
            check_reading(ingredient.acid_strength, concentration, at("acid_strength")));
        SWATHBOOK_CHECK(check_reading(ingredient.part, share, at("part")));
        SWATHBOOK_CHECK(check_reading(ingredient.acid_part, share, at("acid_part")));
        if (ingredient.strength && ingredient.acid_strength &&
            ingredient.acid_strength->value.si() > ingredient.strength->value.si()) {
            return fail(ErrorCode::inconsistent, at("acid_strength"),
                        "The acid equivalent is more than the active ingredient it comes from. A "
                        "salt or ester always weighs at least as much as its acid: check which "
                        "figure on the label is a.i. and which is a.e.");
        }
    }
    return {};
}

struct Pair {
    std::string_view low, high;
};

Result<void> check_order(double low, double high, const Pair& names, std::string_view field) {
    if (low <= high) {
        return {};
    }
    return fail(ErrorCode::inconsistent, path(field, names.low),
                fmt::format("{} is above {}. One of them was copied wrongly from the label.",
                            names.low, names.high));
}

Result<void> check_waits(const LabelLimits& limits, std::string_view field) {
    SWATHBOOK_CHECK(check_limit(limits.min_interval, from_zero, path(field, "min_interval")));
    SWATHBOOK_CHECK(check_limit(limits.grazing, from_zero, path(field, "grazing")));
    SWATHBOOK_CHECK(check_limit(limits.dairy_grazing, from_zero, path(field, "dairy_grazing")));
    SWATHBOOK_CHECK(check_limit(limits.haying, from_zero, path(field, "haying")));
    SWATHBOOK_CHECK(check_limit(limits.slaughter, from_zero, path(field, "slaughter")));
    SWATHBOOK_CHECK(check_limit(limits.harvest, from_zero, path(field, "harvest")));
    SWATHBOOK_CHECK(check_limit(limits.replanting, from_zero, path(field, "replanting")));
    SWATHBOOK_CHECK(check_limit(limits.rainfast, from_zero, path(field, "rainfast")));
    if (limits.reentry) {
        SWATHBOOK_CHECK(
            check_reading(limits.reentry->after, from_zero, path(field, "reentry.after")));
        if (!limits.reentry->after && !limits.reentry->until_dry) {
            return fail(ErrorCode::invalid_input, path(field, "reentry"),
                        "The re-entry limit says neither a time nor \"until dry\". Enter one of "
                        "them, or leave the limit out if it was not copied from the label.");
        }
    }
    return {};
}

Result<void> check_rates(const LabelLimits& limits, std::string_view field) {
    SWATHBOOK_CHECK(check_rate(limits.min_single_rate, path(field, "min_single_rate")));
    SWATHBOOK_CHECK(check_rate(limits.max_single_rate, path(field, "max_single_rate")));
    SWATHBOOK_CHECK(check_rate(limits.max_yearly_rate, path(field, "max_yearly_rate")));
    SWATHBOOK_CHECK(check_limit(limits.min_carrier, above_zero, path(field, "min_carrier")));
    SWATHBOOK_CHECK(check_limit(limits.max_carrier, above_zero, path(field, "max_carrier")));
    SWATHBOOK_CHECK(check_limit(limits.min_percent, share, path(field, "min_percent")));
    SWATHBOOK_CHECK(check_limit(limits.max_percent, share, path(field, "max_percent")));
    if (limits.max_applications && limits.max_applications->value < 1) {
        return fail(
            ErrorCode::out_of_range, path(field, "max_applications"),
            fmt::format("max_applications is {}: a label that allows use allows at least 1.",
                        limits.max_applications->value));
    }
    if (limits.min_single_rate && limits.max_single_rate &&
        limits.min_single_rate->value.basis == limits.max_single_rate->value.basis) {
        SWATHBOOK_CHECK(check_order(limits.min_single_rate->value.si,
                                    limits.max_single_rate->value.si,
                                    {"min_single_rate", "max_single_rate"}, field));
    }
    if (limits.min_carrier && limits.max_carrier) {
        SWATHBOOK_CHECK(check_order(limits.min_carrier->value.value.si(),
                                    limits.max_carrier->value.value.si(),
                                    {"min_carrier", "max_carrier"}, field));
    }
    if (limits.min_percent && limits.max_percent) {
        SWATHBOOK_CHECK(check_order(limits.min_percent->value.value.si(),
                                    limits.max_percent->value.value.si(),
                                    {"min_percent", "max_percent"}, field));
    }
    return {};
}

Result<void> check_conditions(const LabelLimits& limits, std::string_view field) {
    SWATHBOOK_CHECK(check_limit(limits.min_wind, from_zero, path(field, "min_wind")));
    SWATHBOOK_CHECK(check_limit(limits.max_wind, above_zero, path(field, "max_wind")));
    SWATHBOOK_CHECK(
        check_limit(limits.max_temperature, any_number, path(field, "max_temperature")));
    SWATHBOOK_CHECK(
        check_limit(limits.max_boom_height, above_zero, path(field, "max_boom_height")));
    if (limits.min_wind && limits.max_wind) {
        SWATHBOOK_CHECK(check_order(limits.min_wind->value.value.si(),
                                    limits.max_wind->value.value.si(), {"min_wind", "max_wind"},
                                    field));
    }
    if (limits.finest_droplets && limits.coarsest_droplets) {
        SWATHBOOK_CHECK(check_order(static_cast<double>(limits.finest_droplets->value),
                                    static_cast<double>(limits.coarsest_droplets->value),
                                    {"finest_droplets", "coarsest_droplets"}, field));
    }
    return {};
}

}  // namespace

std::string_view word_of(Form form) {
    return form == Form::liquid ? "liquid" : "dry";
}

std::string_view word_of(Formulation formulation) {
    switch (formulation) {
        case Formulation::water_conditioner: return "water_conditioner";
        case Formulation::compatibility_agent: return "compatibility_agent";
        case Formulation::defoamer: return "defoamer";
        case Formulation::soluble_packet: return "soluble_packet";
        case Formulation::soluble_granule: return "soluble_granule";
        case Formulation::dispersible_granule: return "dispersible_granule";
        case Formulation::wettable_powder: return "wettable_powder";
        case Formulation::suspension: return "suspension";
        case Formulation::capsule_suspension: return "capsule_suspension";
        case Formulation::emulsifiable_concentrate: return "emulsifiable_concentrate";
        case Formulation::soluble_liquid: return "soluble_liquid";
        case Formulation::surfactant: return "surfactant";
        case Formulation::oil: return "oil";
        case Formulation::drift_agent: return "drift_agent";
        case Formulation::dye: return "dye";
        case Formulation::other: return "other";
    }
    return "other";
}

std::string_view word_of(DropletLimitClass droplets) {
    switch (droplets) {
        case DropletLimitClass::extremely_fine: return "extremely_fine";
        case DropletLimitClass::very_fine: return "very_fine";
        case DropletLimitClass::fine: return "fine";
        case DropletLimitClass::medium: return "medium";
        case DropletLimitClass::coarse: return "coarse";
        case DropletLimitClass::very_coarse: return "very_coarse";
        case DropletLimitClass::extremely_coarse: return "extremely_coarse";
        case DropletLimitClass::ultra_coarse: return "ultra_coarse";
    }
    return "ultra_coarse";
}

Result<std::string> registration_number(std::string_view text, std::string_view registered_with,
                                        std::string_view field) {
    const std::string_view whole = trimmed(text);
    if (whole.empty()) {
        return std::string();
    }
    if (whole.size() > longest_registration || !is_printable(whole)) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("A registration number is printable text of at most {} characters; "
                                "this one is {} bytes long or holds control characters.",
                                longest_registration, whole.size()));
    }
    if (!trimmed(registered_with).empty()) {
        return std::string(whole);
    }
    const std::string_view number = trimmed(without_introduction(whole));
    if (!has_epa_form(number)) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("\"{}\" does not have the form of an EPA registration number: "
                                "company-product or company-product-distributor, digits only, such "
                                "as 000-00 or 000-00-000. Copy it from the label, or say in "
                                "registered_with who else registered the product.",
                                whole));
    }
    return std::string(number);
}

Result<void> check_card(const ProductCard& card, std::string_view field) {
    if (trimmed(card.name).empty()) {
        return fail(ErrorCode::invalid_input, path(field, "name"),
                    "The product has no name. Copy the name from the label: it is what the mixing "
                    "card and the record show.");
    }
    SWATHBOOK_CHECK(
        registration_number(card.registration, card.registered_with, path(field, "registration")));
    SWATHBOOK_CHECK(check_reading(card.density, concentration, path(field, "density")));
    SWATHBOOK_CHECK(check_ingredients(card, field));
    const std::string limits = path(field, "limits");
    SWATHBOOK_CHECK(check_rates(card.limits, limits));
    SWATHBOOK_CHECK(check_waits(card.limits, limits));
    return check_conditions(card.limits, limits);
}

std::vector<std::string> not_entered(const LabelLimits& limits) {
    const auto all = std::to_array<std::pair<bool, std::string_view>>({
        {limits.min_single_rate.has_value(), "min_single_rate"},
        {limits.max_single_rate.has_value(), "max_single_rate"},
        {limits.max_yearly_rate.has_value(), "max_yearly_rate"},
        {limits.max_applications.has_value(), "max_applications"},
        {limits.min_interval.has_value(), "min_interval"},
        {limits.min_carrier.has_value(), "min_carrier"},
        {limits.max_carrier.has_value(), "max_carrier"},
        {limits.min_percent.has_value(), "min_percent"},
        {limits.max_percent.has_value(), "max_percent"},
        {limits.reentry.has_value(), "reentry"},
        {limits.grazing.has_value(), "grazing"},
        {limits.dairy_grazing.has_value(), "dairy_grazing"},
        {limits.haying.has_value(), "haying"},
        {limits.slaughter.has_value(), "slaughter"},
        {limits.harvest.has_value(), "harvest"},
        {limits.replanting.has_value(), "replanting"},
        {limits.rainfast.has_value(), "rainfast"},
        {limits.finest_droplets.has_value(), "finest_droplets"},
        {limits.coarsest_droplets.has_value(), "coarsest_droplets"},
        {limits.min_wind.has_value(), "min_wind"},
        {limits.max_wind.has_value(), "max_wind"},
        {limits.max_temperature.has_value(), "max_temperature"},
        {limits.max_boom_height.has_value(), "max_boom_height"},
        {limits.protective_equipment.has_value(), "protective_equipment"},
    });
    std::vector<std::string> missing;
    for (const auto& [entered, word] : all) {
        if (!entered) {
            missing.emplace_back(word);
        }
    }
    return missing;
}

}  // namespace swathbook::mix
