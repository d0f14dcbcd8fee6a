#include "reports/packet/limit_rows.hpp"

#include <utility>

#include "core/quantity/units.hpp"

namespace swathbook::reports {
namespace {

using mix::Binding;
using mix::DropletLimitClass;
using mix::StrictestLimits;

std::string text_of(DropletLimitClass droplets, const Voice& voice) {
    switch (droplets) {
        case DropletLimitClass::extremely_fine: return voice.say(Phrase::droplet_extremely_fine);
        case DropletLimitClass::very_fine: return voice.say(Phrase::droplet_very_fine);
        case DropletLimitClass::fine: return voice.say(Phrase::droplet_fine);
        case DropletLimitClass::medium: return voice.say(Phrase::droplet_medium);
        case DropletLimitClass::coarse: return voice.say(Phrase::droplet_coarse);
        case DropletLimitClass::very_coarse: return voice.say(Phrase::droplet_very_coarse);
        case DropletLimitClass::extremely_coarse:
            return voice.say(Phrase::droplet_extremely_coarse);
        case DropletLimitClass::ultra_coarse: return voice.say(Phrase::droplet_ultra_coarse);
    }
    return {};
}

template <Kind K>
std::string text_of(Quantity<K> value, const Voice& voice) {
    return voice.show(value);
}

/// Waits read better in whole days when they are that.
std::string text_of(Duration value, const Voice& voice) {
    const double whole_days = value.in(days);
    if (whole_days >= 1.0 && whole_days == static_cast<double>(static_cast<long>(whole_days))) {
        return show(value, "d");
    }
    return value.in(hours) >= 1.0 || value.si() == 0.0 ? show(value, "h") : voice.show(value);
}

struct LimitRow {
    Phrase name;
    std::string value;  ///< empty when nobody entered it
    std::string product;
    std::string where;
    std::vector<std::string> not_entered_by;
};

/// The limits as the user typed them from the label that binds.
const mix::LabelLimits* label_of(const std::string& product, const Labels& labels) {
    for (const mix::TankProduct& each : labels.products) {
        if (each.card.name == product) {
            return &each.card.limits;
        }
    }
    return nullptr;
}

/// Label figures stand as they were typed; when the sheet uses other units, the same in those
/// follows.
std::string as_typed(const std::string& typed, const std::string& converted) {
    const auto unit_of = [](const std::string& text) {
        const std::size_t at = text.find_first_not_of("0123456789.,/-+ ");
        return at == std::string::npos ? std::string() : text.substr(at);
    };
    if (typed.empty()) {
        return converted;
    }
    const std::string shown = typeset(typed);
    return unit_of(shown) == unit_of(converted) ? shown : shown + " (" + converted + ")";
}

template <Kind K>
std::string typed_in(const mix::Limit<K>& limit) {
    return limit.value.text;
}
std::string typed_in(const mix::DropletLimit&) {
    return {};
}

template <class Value, class LabelLimit>
LimitRow row_of(Phrase name, const Binding<Value>& binding,
                std::optional<LabelLimit> mix::LabelLimits::* member, const Labels& labels,
                const Voice& voice) {
    LimitRow row{name, "", binding.product, binding.where, binding.not_entered_by};
    if (binding.value) {
        const mix::LabelLimits* label = label_of(binding.product, labels);
        const std::string typed =
            label != nullptr && label->*member ? typed_in(*(label->*member)) : "";
        row.value = as_typed(typed, text_of(*binding.value, voice));
    }
    return row;
}

LimitRow reentry_row(const Labels& labels, const Voice& voice) {
    const mix::ReentryBinding& reentry = labels.limits.reentry;
    LimitRow row{Phrase::limit_reentry, "", reentry.product, reentry.where, reentry.not_entered_by};
    if (reentry.after) {
        const mix::LabelLimits* label = label_of(reentry.product, labels);
        const bool is_typed = label != nullptr && label->reentry && label->reentry->after;
        row.value =
            as_typed(is_typed ? label->reentry->after->text : "", text_of(*reentry.after, voice));
        if (reentry.until_dry == true) {
            row.value += ", " + voice.say(Phrase::limit_until_dry);
        }
    } else if (reentry.until_dry == true) {
        row.value = voice.say(Phrase::limit_only_until_dry);
    }
    return row;
}

std::vector<LimitRow> waiting_rows(const Labels& labels, const Voice& voice) {
    using L = mix::LabelLimits;
    const StrictestLimits& limits = labels.limits;
    return {
        reentry_row(labels, voice),
        row_of(Phrase::limit_grazing, limits.grazing, &L::grazing, labels, voice),
        row_of(Phrase::limit_dairy_grazing, limits.dairy_grazing, &L::dairy_grazing, labels, voice),
        row_of(Phrase::limit_haying, limits.haying, &L::haying, labels, voice),
        row_of(Phrase::limit_slaughter, limits.slaughter, &L::slaughter, labels, voice),
        row_of(Phrase::limit_harvest, limits.harvest, &L::harvest, labels, voice),
        row_of(Phrase::limit_replanting, limits.replanting, &L::replanting, labels, voice)};
}

std::vector<LimitRow> all_rows(const Labels& labels, const Voice& voice) {
    using L = mix::LabelLimits;
    const StrictestLimits& limits = labels.limits;
    std::vector<LimitRow> rows = {
        row_of(Phrase::limit_min_wind, limits.min_wind, &L::min_wind, labels, voice),
        row_of(Phrase::limit_max_wind, limits.max_wind, &L::max_wind, labels, voice),
        row_of(Phrase::limit_max_temperature, limits.max_temperature, &L::max_temperature, labels,
               voice),
        row_of(Phrase::limit_finest_droplets, limits.finest_droplets, &L::finest_droplets, labels,
               voice),
        row_of(Phrase::limit_coarsest_droplets, limits.coarsest_droplets, &L::coarsest_droplets,
               labels, voice),
        row_of(Phrase::limit_max_boom_height, limits.max_boom_height, &L::max_boom_height, labels,
               voice),
        row_of(Phrase::limit_min_carrier, limits.min_carrier, &L::min_carrier, labels, voice),
        row_of(Phrase::limit_max_carrier, limits.max_carrier, &L::max_carrier, labels, voice),
        row_of(Phrase::limit_rainfast, limits.rainfast, &L::rainfast, labels, voice)};
    for (LimitRow& row : waiting_rows(labels, voice)) {
        rows.push_back(std::move(row));
    }
    return rows;
}

std::string who_is_missing(const LimitRow& row, const Voice& voice) {
    return row.not_entered_by.empty()
               ? ""
               : voice.say(Phrase::job_not_entered_by, {joined(row.not_entered_by)});
}

}  // namespace

Table strictest_table(const Labels& labels, const Voice& voice) {
    Table table;
    table.columns = {{voice.say(Phrase::job_limit), 2.2},
                     {voice.say(Phrase::job_value), 1.7},
                     {voice.say(Phrase::job_label_of), 1.7},
                     {voice.say(Phrase::where_on_label), 2.0}};
    for (const LimitRow& row : all_rows(labels, voice)) {
        if (row.value.empty()) {
            continue;
        }
        const std::string missing = who_is_missing(row, voice);
        const std::string between = row.where.empty() || missing.empty() ? "" : "; ";
        table.rows.push_back({{voice.say(row.name)},
                              {row.value, true},
                              {row.product},
                              {row.where + between + missing}});
    }
    return table;
}

std::string not_entered_by_anyone(const Labels& labels, const Voice& voice) {
    std::vector<std::string> names;
    for (const LimitRow& row : all_rows(labels, voice)) {
        if (row.value.empty()) {
            names.push_back(voice.say(row.name));
        }
    }
    return names.empty() ? "" : voice.say(Phrase::limits_not_entered, {joined(names, "; ")});
}

std::vector<std::string> waiting_times(const Labels& labels, const Voice& voice) {
    std::vector<std::string> lines;
    std::vector<std::string> silent;
    for (const LimitRow& row : waiting_rows(labels, voice)) {
        if (row.value.empty()) {
            silent.push_back(voice.say(row.name));
            continue;
        }
        const std::string product = row.product.empty() ? "" : " (" + row.product + ")";
        lines.push_back(voice.say(row.name) + ": " + row.value + product);
    }
    if (!silent.empty()) {
        lines.push_back(voice.say(Phrase::limits_not_entered, {joined(silent, "; ")}));
    }
    return lines;
}

std::string limit_name(std::string_view limit, const Voice& voice) {
    static constexpr std::pair<std::string_view, Phrase> names[] = {
        {"min_single_rate", Phrase::limit_min_single_rate},
        {"max_single_rate", Phrase::limit_max_single_rate},
        {"max_yearly_rate", Phrase::limit_max_yearly_rate},
        {"max_applications", Phrase::limit_max_applications},
        {"min_interval", Phrase::limit_min_interval},
        {"min_carrier", Phrase::limit_min_carrier},
        {"max_carrier", Phrase::limit_max_carrier},
        {"min_percent", Phrase::limit_min_percent},
        {"max_percent", Phrase::limit_max_percent}};
    for (const auto& [word, phrase] : names) {
        if (word == limit) {
            return voice.say(phrase);
        }
    }
    return std::string(limit);
}

}  // namespace swathbook::reports
