#include "core/mix/reentry.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/base/civil_time.hpp"
#include "core/mix/limits.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

constexpr double longest_wait_days = 3660.0;

struct ActWords {
    Act act;
    std::string_view word;
    std::string_view who;  // "people without the label's protective equipment may enter"
};
constexpr std::array<ActWords, 8> act_words{{
    {Act::enter, "entering", "people without the label's protective equipment may enter"},
    {Act::graze, "grazing", "livestock other than dairy may graze"},
    {Act::graze_dairy, "grazing by dairy animals", "dairy animals may graze"},
    {Act::cut_hay, "cutting hay", "hay or forage may be cut"},
    {Act::harvest, "harvest", "the crop may be harvested"},
    {Act::replant, "replanting", "seed or plants may go in"},
    {Act::be_rained_on, "rain", "rain no longer washes the spray off"},
    {Act::slaughter, "slaughter", "animals may be slaughtered"},
}};

const ActWords& words_of(Act act) {
    return act_words[static_cast<std::size_t>(act)];
}

/// A moment somebody sprays in: "0031" stands for 2031, and nobody is to count from the first.
Result<CivilTime> moment_in(const std::string& text, const std::string& field) {
    constexpr std::int32_t earliest_year = 1900;
    SWATHBOOK_TRY(moment, parse_civil_time(text, field));
    if (moment.date.year < earliest_year) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("The year is {:04}, before {}. Write all four digits of the year.",
                                moment.date.year, earliest_year));
    }
    return moment;
}

/// One act's limit on the cards used at a place.
ReentryBinding binding_of(const StrictestLimits& strictest, Act act) {
    const auto plain = [](const Binding<Duration>& binding) {
        ReentryBinding same;
        same.after = binding.value;
        same.product = binding.product;
        same.where = binding.where;
        same.not_entered_by = binding.not_entered_by;
        return same;
    };
    switch (act) {
        case Act::enter: return strictest.reentry;
        case Act::graze: return plain(strictest.grazing);
        case Act::graze_dairy: return plain(strictest.dairy_grazing);
        case Act::cut_hay: return plain(strictest.haying);
        case Act::harvest: return plain(strictest.harvest);
        case Act::replant: return plain(strictest.replanting);
        case Act::be_rained_on: return plain(strictest.rainfast);
        case Act::slaughter: return plain(strictest.slaughter);
    }
    return {};
}

template <class Texts>
std::string joined(const Texts& texts) {
    std::string all;
    for (const auto& text : texts) {
        all += all.empty() ? "" : ", ";
        all += text;
    }
    return all;
}

std::int64_t whole_seconds(Duration wait) {
    return static_cast<std::int64_t>(std::ceil(wait.si() / 60.0 - 1e-9)) * 60;
}

std::string wait_words(Duration wait) {
    const double hours_long = wait.in(hours);
    const double days_long = wait.in(days);
    return hours_long >= 48.0 || std::floor(days_long) == days_long
               ? fmt::format("{} d", show_number(days_long))
               : fmt::format("{} h", show_number(hours_long));
}

std::string missing_words(const ReentryAct& act) {
    if (act.not_entered_by.empty()) {
        return "no label here was read for it";
    }
    return fmt::format("not entered from the label of {}; not entered is not zero, read it there",
                       joined(act.not_entered_by));
}

void put_after_spraying(ReentryAct& act, const CivilTime& ended) {
    const std::string_view who = words_of(act.act).who;
    std::string moment;
    std::string spoken = "when the spray has dried";
    std::string dry;
    if (act.wait) {
        const CivilTime from = plus_seconds(ended, whole_seconds(*act.wait));
        moment = text_of(from);
        spoken = "from " + words_of(from);
        dry = act.until_dry == true ? ", and not before the spray has dried" : "";
    }
    if (act.status == ReentryStatus::known) {
        act.from = moment;
        act.text = fmt::format("{} {}{}", who, spoken, dry);
        return;
    }
    act.not_before = moment;
    const std::string at_least =
        act.wait || act.until_dry == true ? fmt::format(" At the earliest {}{}.", spoken, dry) : "";
    act.text = fmt::format("not known when {}: {}.{}", who, missing_words(act), at_least);
}

void put_before_slaughter(ReentryAct& act, const std::optional<CivilTime>& planned) {
    if (act.status == ReentryStatus::not_known) {
        act.text = fmt::format(
            "not known how long animals must be off treated forage before "
            "slaughter: {}{}",
            missing_words(act),
            act.wait ? fmt::format(". At least {}.", wait_words(*act.wait)) : std::string("."));
        return;
    }
    act.text = fmt::format("animals leave treated forage at least {} before slaughter",
                           wait_words(*act.wait));
    if (planned) {
        const CivilTime last = plus_seconds(*planned, -whole_seconds(*act.wait));
        act.animals_off_by = text_of(last);
        act.text +=
            fmt::format(", so by {} for slaughter at {}", words_of(last), words_of(*planned));
    }
}

ReentryAct act_of(const StrictestLimits& strictest, Act what, const CivilTime& ended,
                  const std::optional<CivilTime>& slaughter) {
    ReentryBinding binding = binding_of(strictest, what);
    ReentryAct act;
    act.act = what;
    act.wait = binding.after;
    act.until_dry = binding.until_dry;
    act.product = std::move(binding.product);
    act.where = std::move(binding.where);
    act.not_entered_by = std::move(binding.not_entered_by);
    const bool anything = act.wait.has_value() || act.until_dry == true;
    act.status =
        anything && act.not_entered_by.empty() ? ReentryStatus::known : ReentryStatus::not_known;
    if (what == Act::slaughter) {
        put_before_slaughter(act, slaughter);
    } else {
        put_after_spraying(act, ended);
    }
    return act;
}

Result<std::vector<const ProductCard*>> cards_at(const ReentryRequest& request,
                                                 const ReentryPlace& place, std::size_t index) {
    std::vector<const ProductCard*> cards;
    if (place.products.empty()) {
        for (const ProductCard& card : request.products) {
            cards.push_back(&card);
        }
        return cards;
    }
    for (std::size_t i = 0; i < place.products.size(); ++i) {
        const auto found =
            std::find_if(request.products.begin(), request.products.end(),
                         [&](const ProductCard& card) { return card.name == place.products[i]; });
        if (found == request.products.end()) {
            return fail(ErrorCode::not_found, fmt::format("places[{}].products[{}]", index, i),
                        fmt::format("\"{}\" was used at {}, but there is no product card of that "
                                    "name, so its waits are unknown. Add the card.",
                                    place.products[i], place.name));
        }
        cards.push_back(&*found);
    }
    return cards;
}

void remark(const ReentryPlaceAnswer& place, Notes& notes) {
    std::vector<std::string_view> missing;
    for (const ReentryAct& act : place.acts) {
        if (act.status == ReentryStatus::not_known) {
            missing.push_back(words_of(act.act).word);
        }
    }
    if (!missing.empty()) {
        notes.find(
            Severity::warning, "wait_not_known",
            fmt::format("{}: not known for {}. Keep people and animals out, and cut and plant "
                        "nothing, until the label has been read for it.",
                        place.name, joined(missing)));
    }
}

void show_act(const ReentryPlaceAnswer& place, const ReentryAct& act, Notes& notes) {
    if (!act.wait || act.act == Act::slaughter) {
        return;
    }
    notes.show([&] {
        const std::string& moment = act.from.empty() ? act.not_before : act.from;
        return Step{fmt::format("{}: {}", place.name, words_of(act.act).word),
                    fmt::format("{} + {} (longest wait, {})", place.ended, wait_words(*act.wait),
                                act.product),
                    act.from.empty() ? "not known; not before " + moment : moment, act.where};
    });
}

Result<ReentryPlaceAnswer> place_of(const ReentryRequest& request, std::size_t index,
                                    const std::optional<CivilTime>& slaughter, Notes& notes) {
    const ReentryPlace& place = request.places[index];
    if (place.name.empty()) {
        return fail(ErrorCode::invalid_input, fmt::format("places[{}].name", index),
                    "Every place needs a name, so that nobody opens the wrong gate.");
    }
    SWATHBOOK_TRY(ended, moment_in(place.ended, fmt::format("places[{}].ended", index)));
    SWATHBOOK_TRY(cards, cards_at(request, place, index));
    const StrictestLimits strictest = strictest_of(cards);
    ReentryPlaceAnswer answer;
    answer.name = place.name;
    answer.ended = text_of(ended);
    bool all_known = true;
    std::optional<std::int64_t> last;
    for (const ActWords& words : act_words) {
        ReentryAct act = act_of(strictest, words.act, ended, slaughter);
        show_act(answer, act, notes);
        if (words.act == Act::enter) {
            answer.until_dry = act.until_dry;
        }
        if (words.act != Act::slaughter) {
            all_known = all_known && act.status == ReentryStatus::known;
            const std::int64_t wait = act.wait ? whole_seconds(*act.wait) : 0;
            last = std::max(last.value_or(wait), wait);
        }
        answer.acts.push_back(std::move(act));
    }
    if (all_known && last) {
        answer.everything_from = text_of(plus_seconds(ended, *last));
    }
    remark(answer, notes);
    return answer;
}

Result<void> check_cards(const ReentryRequest& request) {
    if (request.products.empty()) {
        return fail(ErrorCode::invalid_input, "products",
                    "Name at least one product with the waits on its label.");
    }
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        const std::string field = fmt::format("products[{}]", i);
        SWATHBOOK_CHECK(check_card(request.products[i], field));
        const LabelLimits& limits = request.products[i].limits;
        for (const auto* limit :
             {&limits.grazing, &limits.dairy_grazing, &limits.haying, &limits.slaughter,
              &limits.harvest, &limits.replanting, &limits.rainfast}) {
            if (*limit && !((*limit)->value.value.in(days) <= longest_wait_days)) {
                return fail(ErrorCode::out_of_range, field,
                            fmt::format("A wait of {} is longer than ten years; look at its unit.",
                                        wait_words((*limit)->value.value)));
            }
        }
        for (std::size_t j = 0; j < i; ++j) {
            if (request.products[i].name == request.products[j].name) {
                return fail(ErrorCode::invalid_input, field + ".name",
                            fmt::format("Two product cards are named \"{}\"; the one that was used "
                                        "cannot be told. Give each its own name.",
                                        request.products[i].name));
            }
        }
    }
    return {};
}

}  // namespace

std::string_view word_of(Act act) {
    return words_of(act).word;
}

Result<ReentryAnswer> reentry(const ReentryRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check_cards(request));
    if (request.places.empty()) {
        return fail(ErrorCode::invalid_input, "places",
                    "Name at least one place and the end of the last load there.");
    }
    std::optional<CivilTime> slaughter;
    if (!request.slaughter_planned.empty()) {
        SWATHBOOK_TRY(planned, moment_in(request.slaughter_planned, "slaughter_planned"));
        slaughter = planned;
    }
    ReentryAnswer answer;
    for (std::size_t i = 0; i < request.places.size(); ++i) {
        SWATHBOOK_TRY(place, place_of(request, i, slaughter, notes));
        answer.places.push_back(std::move(place));
    }
    notes.find(
        Severity::note, "label_rules_waits",
        "Each wait is the longest that was typed from the labels, counted from the end of the "
        "last load with a day of 24 hours. The label in hand rules; keep signs up until then.");
    return answer;
}

}  // namespace swathbook::mix
