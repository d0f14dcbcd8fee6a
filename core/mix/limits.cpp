#include "core/mix/limits.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::mix {
namespace {

/// Arithmetic that should land exactly on a limit may miss it by its last bits.
constexpr double rounding_room = 1e-9;

enum class Side : std::uint8_t { least, most };

LimitStatus judged(double share, Side side) {
    if (side == Side::most) {
        return share > 1.0 + rounding_room ? LimitStatus::above : LimitStatus::within;
    }
    return share < 1.0 - rounding_room ? LimitStatus::below : LimitStatus::within;
}

LimitCheck not_typed(std::string_view word) {
    LimitCheck check;
    check.limit = std::string(word);
    check.why = "not entered is not the same as no limit";
    return check;
}

std::string typed_or_shown(const LabelRate& rate, UnitSystem units) {
    return rate.text.empty() ? show(rate, units) : rate.text;
}

LimitCheck untold(LimitCheck check, std::string why) {
    check.status = LimitStatus::cannot_tell;
    check.why = std::move(why);
    return check;
}

/// A limit given as a rate, in the product's own measure; the check is filled with what is known of
/// the limit itself.
std::optional<ProductRate> limit_rate(const ProductCard& card, const RateLimit& limit,
                                      const RateReading& reading, LimitCheck& check) {
    const RateReading as_written{RateCounts::product, reading.ingredient, reading.mix_density};
    auto rate = product_rate(limit.value, card, as_written, check.limit);
    if (!rate) {
        check = untold(std::move(check), std::move(rate.error().detail));
        return std::nullopt;
    }
    return *rate;
}

/// What every check of one product compares with.
struct Comparison {
    const ProductCard& card;
    const Delivery& delivery;
    const RateReading& reading;
    UnitSystem units;
};

/// A share of a rate in the unit the label uses, so that the two can be compared at a glance; in
/// the usual unit where the label's text is more than a number and a unit.
std::string beside(const LabelRate& limit, double share, UnitSystem units) {
    const std::string_view typed = limit.text;
    const std::string_view unit =
        typed.substr(std::min(typed.find_first_not_of("0123456789./- "), typed.size()));
    if (const auto factor = parse_unit(unit, kind_of(limit.basis)); factor && !unit.empty()) {
        return show_number(limit.si * share / *factor) + " " + std::string(unit);
    }
    return show(LabelRate{limit.si * share, limit.basis}, units);
}

LimitCheck rate_check(const Comparison& with, const std::optional<RateLimit>& limit,
                      std::string_view word, Side side) {
    LimitCheck check = not_typed(word);
    if (!limit) {
        return check;
    }
    check.allowed = typed_or_shown(limit->value, with.units);
    check.where = limit->where;
    check.why.clear();
    const auto allowed = limit_rate(with.card, *limit, with.reading, check);
    if (!allowed) {
        return check;
    }
    const auto& delivered =
        allowed->per == Per::area ? with.delivery.per_area_si : with.delivery.per_mix_si;
    if (!delivered) {
        return untold(std::move(check),
                      allowed->per == Per::area
                          ? "the limit counts an area, and neither area nor mix per area is known"
                          : "the limit counts the mix, and the strength of the mix is not known");
    }
    check.share = *delivered / allowed->si;
    check.status = judged(*check.share, side);
    check.delivered = beside(limit->value, *check.share, with.units);
    return check;
}

template <Kind K>
LimitCheck plain_check(const std::optional<Limit<K>>& limit, std::string_view word, Side side,
                       std::optional<double> delivered_si, std::string_view missing,
                       UnitSystem units) {
    LimitCheck check = not_typed(word);
    if (!limit) {
        return check;
    }
    check.allowed = show(limit->value, units);
    check.where = limit->where;
    check.why.clear();
    if (!delivered_si) {
        return untold(std::move(check), std::string(missing));
    }
    check.share = *delivered_si / limit->value.value.si();
    check.status = judged(*check.share, side);
    check.delivered = show(Quantity<K>::from_si(*delivered_si), units);
    return check;
}

LimitCheck count_check(const LabelLimits& limits, const Delivery& delivery) {
    LimitCheck check = not_typed("max_applications");
    if (!limits.max_applications) {
        return check;
    }
    check.allowed = fmt::format("{} a year", limits.max_applications->value);
    check.where = limits.max_applications->where;
    check.why.clear();
    if (!delivery.earlier_applications) {
        return untold(std::move(check),
                      "how many applications this ground has had this year was not entered; enter "
                      "0 if there were none");
    }
    const int count = *delivery.earlier_applications + 1;
    check.share = static_cast<double>(count) / limits.max_applications->value;
    check.status = judged(*check.share, Side::most);
    check.delivered = fmt::format("{} with this one", count);
    return check;
}

/// What one card says of a limit.
template <class Value>
struct Entered {
    Value value{};
    std::string text{};
    std::string where{};
};

template <class Value, class Get>
Binding<Value> bind(std::span<const ProductCard* const> cards, bool larger_is_stricter, Get get) {
    Binding<Value> binding;
    for (const ProductCard* card : cards) {
        const std::optional<Entered<Value>> entered = get(card->limits);
        if (!entered) {
            if (!is_unregistered_adjuvant(*card)) {
                binding.not_entered_by.push_back(card->name);
            }
            continue;
        }
        const bool is_stricter =
            !binding.value || (larger_is_stricter ? entered->value > *binding.value
                                                  : entered->value < *binding.value);
        if (is_stricter) {
            binding.value = entered->value;
            binding.product = card->name;
            binding.where = entered->where;
            binding.text = entered->text;
        }
    }
    return binding;
}

template <Kind K>
Binding<Quantity<K>> bind_limit(std::span<const ProductCard* const> cards, Side side,
                                std::optional<Limit<K>> LabelLimits::* member) {
    using Said = std::optional<Entered<Quantity<K>>>;
    return bind<Quantity<K>>(
        cards, side == Side::least, [member](const LabelLimits& limits) -> Said {
            const auto& limit = limits.*member;
            return limit ? Said({limit->value.value, limit->value.text, limit->where})
                         : std::nullopt;
        });
}

Binding<DropletLimitClass> bind_droplets(std::span<const ProductCard* const> cards, Side side,
                                         std::optional<DropletLimit> LabelLimits::* member) {
    using Said = std::optional<Entered<DropletLimitClass>>;
    return bind<DropletLimitClass>(
        cards, side == Side::least, [member](const LabelLimits& limits) -> Said {
            const auto& limit = limits.*member;
            return limit ? Said({limit->value, std::string(word_of(limit->value)), limit->where})
                         : std::nullopt;
        });
}

ReentryBinding bind_reentry(std::span<const ProductCard* const> cards) {
    ReentryBinding binding;
    bool asks_for_dry = false;
    for (const ProductCard* card : cards) {
        const auto& limit = card->limits.reentry;
        if (!limit) {
            if (!is_unregistered_adjuvant(*card)) {
                binding.not_entered_by.push_back(card->name);
            }
            continue;
        }
        asks_for_dry = asks_for_dry || limit->until_dry;
        if (limit->after && (!binding.after || limit->after->value > *binding.after)) {
            binding.after = limit->after->value;
            binding.text = limit->after->text;
            binding.product = card->name;
            binding.where = limit->where;
        } else if (binding.product.empty()) {
            binding.product = card->name;
            binding.where = limit->where;
        }
    }
    if (asks_for_dry || binding.not_entered_by.empty()) {
        binding.until_dry = asks_for_dry;
    }
    return binding;
}

std::string place(const std::string& where) {
    return where.empty() ? std::string("label") : "label, " + where;
}

}  // namespace

std::string_view word_of(LimitStatus status) {
    switch (status) {
        case LimitStatus::within: return "within";
        case LimitStatus::above: return "above";
        case LimitStatus::below: return "below";
        case LimitStatus::not_entered: return "not_entered";
        case LimitStatus::cannot_tell: return "cannot_tell";
    }
    return "cannot_tell";
}

LimitCheck check_yearly_cap(const ProductCard& card, const Delivery& delivery,
                            const RateReading& reading, UnitSystem units) {
    Delivery whole_year = delivery;
    if (delivery.per_area_si) {
        whole_year.per_area_si = *delivery.per_area_si + delivery.earlier_area_si.value_or(0.0);
    }
    LimitCheck check = rate_check({card, whole_year, reading, units}, card.limits.max_yearly_rate,
                                  "max_yearly_rate", Side::most);
    const bool is_compared =
        check.status == LimitStatus::within || check.status == LimitStatus::above;
    if (!is_compared) {
        return check;
    }
    const RateBasis basis = card.limits.max_yearly_rate->value.basis;
    const bool counts_area =
        basis == RateBasis::volume_per_area || basis == RateBasis::mass_per_area ||
        basis == RateBasis::ingredient_per_area || basis == RateBasis::acid_per_area;
    if (!counts_area) {
        return untold(std::move(check), "a yearly limit counts an area, not a share of the mix");
    }
    if (!delivery.earlier_area_si && check.status == LimitStatus::within) {
        return untold(std::move(check),
                      "this application alone is within the cap, but what this ground has had "
                      "earlier this year was not entered; enter 0 if nothing");
    }
    return check;
}

std::vector<LimitCheck> check_limits(const ProductCard& card, const Delivery& delivery,
                                     const RateReading& reading, UnitSystem units) {
    const LabelLimits& limits = card.limits;
    const Comparison with{card, delivery, reading, units};
    const char* const no_volume = "the mix per area is not known";
    const char* const no_share = "the share of product in the mix is not known";
    const auto percent = card.form == Form::liquid ? delivery.per_mix_si : std::optional<double>();
    return {
        rate_check(with, limits.min_single_rate, "min_single_rate", Side::least),
        rate_check(with, limits.max_single_rate, "max_single_rate", Side::most),
        check_yearly_cap(card, delivery, reading, units),
        count_check(limits, delivery),
        plain_check(limits.min_carrier, "min_carrier", Side::least, delivery.mix_per_area_si,
                    no_volume, units),
        plain_check(limits.max_carrier, "max_carrier", Side::most, delivery.mix_per_area_si,
                    no_volume, units),
        plain_check(limits.min_percent, "min_percent", Side::least, percent, no_share, units),
        plain_check(limits.max_percent, "max_percent", Side::most, percent, no_share, units),
    };
}

std::string_view spoken_limit(std::string_view limit) {
    constexpr auto words = std::to_array<std::pair<std::string_view, std::string_view>>({
        {"min_single_rate", "least in one application"},
        {"max_single_rate", "most in one application"},
        {"max_yearly_rate", "most in a year"},
        {"max_applications", "number of applications a year"},
        {"min_carrier", "least mix per area"},
        {"max_carrier", "most mix per area"},
        {"min_percent", "least share in the mix"},
        {"max_percent", "largest share in the mix"},
    });
    for (const auto& [word, spoken] : words) {
        if (word == limit) {
            return spoken;
        }
    }
    return limit;
}

void report_checks(const ProductCard& card, std::span<const LimitCheck> checks, Notes& notes) {
    for (const LimitCheck& check : checks) {
        const std::string figures =
            fmt::format("{}: {}, against the label's {}, {}", card.name, check.delivered,
                        spoken_limit(check.limit), check.allowed);
        switch (check.status) {
            case LimitStatus::above:
                notes.find(Severity::stop, "above_label_limit",
                           figures + ". Do not mix this: lower the rate or change the job.",
                           place(check.where));
                break;
            case LimitStatus::below:
                notes.find(Severity::warning, "below_label_limit",
                           figures + ". The label's least rate or volume is not reached.",
                           place(check.where));
                break;
            case LimitStatus::cannot_tell:
                notes.find(Severity::warning, "limit_not_checked",
                           fmt::format("{}: {} ({}) could not be checked: {}.", card.name,
                                       spoken_limit(check.limit), check.allowed, check.why),
                           place(check.where));
                break;
            case LimitStatus::within:
            case LimitStatus::not_entered: break;
        }
    }
}

bool is_unregistered_adjuvant(const ProductCard& card) {
    if (!card.registration.empty()) {
        return false;
    }
    switch (card.formulation) {
        case Formulation::water_conditioner:
        case Formulation::compatibility_agent:
        case Formulation::defoamer:
        case Formulation::surfactant:
        case Formulation::oil:
        case Formulation::drift_agent:
        case Formulation::dye: return true;
        default: return false;
    }
}

StrictestLimits strictest_of(std::span<const ProductCard* const> cards) {
    using L = LabelLimits;
    StrictestLimits made;
    made.min_carrier = bind_limit(cards, Side::least, &L::min_carrier);
    made.max_carrier = bind_limit(cards, Side::most, &L::max_carrier);
    made.reentry = bind_reentry(cards);
    made.grazing = bind_limit(cards, Side::least, &L::grazing);
    made.dairy_grazing = bind_limit(cards, Side::least, &L::dairy_grazing);
    made.haying = bind_limit(cards, Side::least, &L::haying);
    made.slaughter = bind_limit(cards, Side::least, &L::slaughter);
    made.harvest = bind_limit(cards, Side::least, &L::harvest);
    made.replanting = bind_limit(cards, Side::least, &L::replanting);
    made.rainfast = bind_limit(cards, Side::least, &L::rainfast);
    made.finest_droplets = bind_droplets(cards, Side::least, &L::finest_droplets);
    made.coarsest_droplets = bind_droplets(cards, Side::most, &L::coarsest_droplets);
    made.min_wind = bind_limit(cards, Side::least, &L::min_wind);
    made.max_wind = bind_limit(cards, Side::most, &L::max_wind);
    made.max_temperature = bind_limit(cards, Side::most, &L::max_temperature);
    made.max_boom_height = bind_limit(cards, Side::most, &L::max_boom_height);
    return made;
}

namespace {

template <class Value>
void report_conflict(const Binding<Value>& least, const Binding<Value>& most, std::string_view what,
                     Notes& notes) {
    if (least.value && most.value && *least.value > *most.value) {
        notes.find(Severity::stop, "labels_conflict",
                   fmt::format("{} asks for a least {} above the most that {} allows. The two "
                               "labels cannot be obeyed in one tank: spray them apart or choose "
                               "another product.",
                               least.product, what, most.product),
                   fmt::format("{} of {}; {} of {}", place(least.where), least.product,
                               place(most.where), most.product));
    }
}

}  // namespace

void report_conflicts(const StrictestLimits& limits, Notes& notes) {
    report_conflict(limits.min_carrier, limits.max_carrier, "mix per area", notes);
    report_conflict(limits.min_wind, limits.max_wind, "wind speed", notes);
    report_conflict(limits.finest_droplets, limits.coarsest_droplets, "droplet class", notes);
}

}  // namespace swathbook::mix
