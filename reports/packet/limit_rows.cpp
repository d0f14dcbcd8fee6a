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

template <class Value>
LimitRow row_of(Phrase name, const Binding<Value>& binding, const Voice& voice) {
    return {name, binding.value ? text_of(*binding.value, voice) : "", binding.product,
            binding.where, binding.not_entered_by};
}

LimitRow reentry_row(const mix::ReentryBinding& reentry, const Voice& voice) {
    LimitRow row{Phrase::limit_reentry, "", reentry.product, reentry.where, reentry.not_entered_by};
    if (reentry.after) {
        row.value = text_of(*reentry.after, voice);
        if (reentry.until_dry) {
            row.value += ", " + voice.say(Phrase::limit_until_dry);
        }
    } else if (reentry.until_dry) {
        row.value = voice.say(Phrase::limit_only_until_dry);
    }
    return row;
}

std::vector<LimitRow> waiting_rows(const StrictestLimits& limits, const Voice& voice) {
    return {reentry_row(limits.reentry, voice),
            row_of(Phrase::limit_grazing, limits.grazing, voice),
            row_of(Phrase::limit_dairy_grazing, limits.dairy_grazing, voice),
            row_of(Phrase::limit_haying, limits.haying, voice),
            row_of(Phrase::limit_slaughter, limits.slaughter, voice),
            row_of(Phrase::limit_harvest, limits.harvest, voice),
            row_of(Phrase::limit_replanting, limits.replanting, voice)};
}

std::vector<LimitRow> all_rows(const StrictestLimits& limits, const Voice& voice) {
    std::vector<LimitRow> rows = {
        row_of(Phrase::limit_min_wind, limits.min_wind, voice),
        row_of(Phrase::limit_max_wind, limits.max_wind, voice),
        row_of(Phrase::limit_max_temperature, limits.max_temperature, voice),
        row_of(Phrase::limit_finest_droplets, limits.finest_droplets, voice),
        row_of(Phrase::limit_coarsest_droplets, limits.coarsest_droplets, voice),
        row_of(Phrase::limit_max_boom_height, limits.max_boom_height, voice),
        row_of(Phrase::limit_min_carrier, limits.min_carrier, voice),
        row_of(Phrase::limit_max_carrier, limits.max_carrier, voice),
        row_of(Phrase::limit_rainfast, limits.rainfast, voice)};
    for (LimitRow& row : waiting_rows(limits, voice)) {
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

Table strictest_table(const StrictestLimits& limits, const Voice& voice) {
    Table table;
    table.columns = {{voice.say(Phrase::job_limit), 2.2},
                     {voice.say(Phrase::job_value), 1.7},
                     {voice.say(Phrase::job_label_of), 1.7},
                     {voice.say(Phrase::where_on_label), 2.0}};
    for (const LimitRow& row : all_rows(limits, voice)) {
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

std::string not_entered_by_anyone(const StrictestLimits& limits, const Voice& voice) {
    std::vector<std::string> names;
    for (const LimitRow& row : all_rows(limits, voice)) {
        if (row.value.empty()) {
            names.push_back(voice.say(row.name));
        }
    }
    return names.empty() ? "" : voice.say(Phrase::limits_not_entered, {joined(names)});
}

std::vector<std::string> waiting_times(const StrictestLimits& limits, const Voice& voice) {
    std::vector<std::string> lines;
    std::vector<std::string> silent;
    for (const LimitRow& row : waiting_rows(limits, voice)) {
        if (row.value.empty()) {
            silent.push_back(voice.say(row.name));
            continue;
        }
        const std::string product = row.product.empty() ? "" : " (" + row.product + ")";
        lines.push_back(voice.say(row.name) + ": " + row.value + product);
    }
    if (!silent.empty()) {
        lines.push_back(voice.say(Phrase::limits_not_entered, {joined(silent)}));
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
