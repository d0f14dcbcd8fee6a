#include "reports/packet/job_sheet.hpp"

#include <algorithm>

#include "reports/packet/limit_rows.hpp"

namespace swathbook::reports {
namespace {

using mix::LimitCheck;
using mix::LimitStatus;
using mix::ProductTotal;

/// "2.47 - 2.55 ac": both ends with the same decimals.
std::string area_range(const Estimate<Kind::area>& area, const Voice& voice) {
    if (!area.low || !area.high) {
        return "\u2013";
    }
    const std::string low = area_text(*area.low, voice);
    return low.substr(0, low.find(' ')) + " \u2013 " + area_text(*area.high, voice);
}

void add_ground(Sheet& sheet, const JobParts& parts, const Voice& voice) {
    if (parts.areas.empty()) {
        return;
    }
    Table table;
    table.columns = {{voice.say(Phrase::job_stand), 2},
                     {voice.say(Phrase::job_area), 1.4, Align::right},
                     {voice.say(Phrase::job_area_interval), 2.2, Align::right},
                     {voice.say(Phrase::job_holes), 1.4, Align::right},
                     {voice.say(Phrase::job_carry_more), 1.3, Align::right}};
    for (const ComputedArea& area : parts.areas) {
        Area holes{};
        for (const geometry::AreaPart& part : area.answer.parts) {
            holes += part.holes_area.value_or(Area{});
        }
        table.rows.push_back(
            {{area.name, true},
             {area_text(area.answer.area.value, voice), true},
             {area_range(area.answer.area, voice)},
             {holes.si() > 0 ? area_text(holes, voice) : "\u2013"},
             {area.answer.carry_more ? signed_percent(area.answer.carry_more->si()) : "\u2013"}});
    }
    sheet.add(Heading{voice.say(Phrase::job_ground), 1});
    sheet.add(std::move(table));
    for (const ComputedArea& area : parts.areas) {
        for (const Finding& finding : area.notes.findings()) {
            if (finding.severity >= Severity::warning) {
                sheet.add(Remark{finding.severity, area.name, typeset(voice.core(finding.text)),
                                 voice.core(finding.source)});
            }
        }
    }
}

void add_sprayers(Sheet& sheet, const JobParts& parts, const Voice& voice) {
    if (parts.calibrations.empty()) {
        return;
    }
    Table table;
    table.columns = {{voice.say(Phrase::sprayer_word), 2},
                     {voice.say(Phrase::output_word), 1.4, Align::right},
                     {voice.say(Phrase::job_area_interval), 2.2, Align::right},
                     {voice.say(Phrase::width_word), 1.2, Align::right},
                     {voice.say(Phrase::speed_word), 1.2, Align::right}};
    for (const ComputedCalibration& each : parts.calibrations) {
        const auto& answer = each.answer;
        table.rows.push_back({{each.name, true},
                              {voice.show(answer.output.value), true},
                              {voice.range(answer.output)},
                              {voice.show(answer.width)},
                              {answer.speed ? voice.show(answer.speed->value) : "\u2013"}});
    }
    sheet.add(Heading{voice.say(Phrase::job_sprayers), 1});
    sheet.add(std::move(table));
}

void add_totals(Sheet& sheet, const ComputedLoads& loads, const Voice& voice) {
    const mix::LoadsAnswer& answer = loads.answer;
    Facts facts;
    facts.columns = 3;
    facts.facts.push_back({voice.say(Phrase::job_loads), std::to_string(answer.load_count)});
    facts.facts.push_back({voice.say(Phrase::job_mix_total), voice.show(answer.total_mix)});
    add_fact(facts, voice.say(Phrase::job_ground_treated), voice.show(answer.treated_area));
    sheet.add(std::move(facts));
    Table table;
    table.columns = {{voice.say(Phrase::product_word), 2.2},
                     {voice.say(Phrase::card_registration), 1.2},
                     {voice.say(Phrase::rate_word), 1.3, Align::right},
                     {voice.say(Phrase::job_each_load), 1.5, Align::right},
                     {voice.say(Phrase::job_in_all), 1.5, Align::right}};
    for (std::size_t i = 0; i < answer.products.size(); ++i) {
        const ProductTotal& product = answer.products[i];
        const bool is_known = i < loads.request.products.size();
        const std::string first_load =
            !answer.loads.empty() && i < answer.loads.front().products.size()
                ? answer.loads.front().products[i].amount.text
                : "";
        table.rows.push_back({{product.name, true},
                              {is_known ? loads.request.products[i].card.registration : ""},
                              {is_known ? show(loads.request.products[i].rate, voice.units) : ""},
                              {first_load},
                              {product.total.text, true}});
    }
    sheet.add(std::move(table));
}

Phrase word_for(LimitStatus status) {
    switch (status) {
        case LimitStatus::within: return Phrase::status_within;
        case LimitStatus::above: return Phrase::status_above;
        case LimitStatus::below: return Phrase::status_below;
        case LimitStatus::not_entered: return Phrase::not_entered;
        case LimitStatus::cannot_tell: return Phrase::status_cannot_tell;
    }
    return Phrase::not_entered;
}

/// Every product's rates beside what its label says. Limits that were not typed are named in one
/// row so that nobody takes them for "no limit".
void add_rate_checks(Sheet& sheet, const ComputedLoads& loads, const Voice& voice) {
    Table table;
    table.style = Style::small;
    table.columns = {{voice.say(Phrase::product_word), 1.7},
                     {voice.say(Phrase::job_limit), 1.8},
                     {voice.say(Phrase::job_delivered), 1.3, Align::right},
                     {voice.say(Phrase::job_allowed), 1.3, Align::right},
                     {voice.say(Phrase::job_standing), 1.2},
                     {voice.say(Phrase::where_on_label), 2.1}};
    for (const ProductTotal& product : loads.answer.products) {
        std::vector<std::string> silent;
        for (const LimitCheck& check : product.limits) {
            if (check.status == LimitStatus::not_entered) {
                silent.push_back(limit_name(check.limit, voice));
                continue;
            }
            const bool strong = check.status != LimitStatus::within;
            table.rows.push_back({{product.name},
                                  {limit_name(check.limit, voice)},
                                  {check.delivered, strong},
                                  {check.allowed},
                                  {voice.say(word_for(check.status)), strong},
                                  {check.where}});
        }
        if (!silent.empty()) {
            table.rows.push_back(
                {{product.name}, {joined(silent)}, {}, {}, {voice.say(Phrase::not_entered)}, {}});
        }
    }
    if (!table.rows.empty()) {
        sheet.add(Heading{voice.say(Phrase::job_rates_against), 2});
        sheet.add(std::move(table));
    }
}

void add_products(Sheet& sheet, const JobParts& parts, const Voice& voice) {
    for (const ComputedLoads& loads : parts.loads) {
        const std::string name = loads.name.empty() ? "" : ": " + loads.name;
        sheet.add(Heading{voice.say(Phrase::job_products) + name, 1});
        add_totals(sheet, loads, voice);
        add_rate_checks(sheet, loads, voice);
        sheet.add(Heading{voice.say(Phrase::job_limits), 2});
        Table limits = strictest_table({loads.answer.strictest, loads.request.products}, voice);
        limits.style = Style::small;
        sheet.add(std::move(limits));
        const std::string silent =
            not_entered_by_anyone({loads.answer.strictest, loads.request.products}, voice);
        if (!silent.empty()) {
            sheet.add(Text{silent});
        }
        add_findings(sheet, loads.notes, voice);
    }
}

void add_before(Sheet& sheet, const Voice& voice) {
    sheet.add(Heading{voice.say(Phrase::job_before), 1});
    sheet.add(
        CheckList{{voice.say(Phrase::job_before_label), voice.say(Phrase::job_before_boundary),
                   voice.say(Phrase::job_before_notice), voice.say(Phrase::job_before_people),
                   voice.say(Phrase::job_before_calibrated), voice.say(Phrase::job_before_ppe)}});
    sheet.add(Blanks{{{voice.say(Phrase::job_before_emergency)}}});
}

void add_weather(Sheet& sheet, const Voice& voice) {
    constexpr int rows_to_write = 5;
    Table table;
    table.least_row_height = 23.0;
    table.upright_rules = true;
    const bool us = voice.units == UnitSystem::us;
    const std::string speed_unit = us ? ", mph" : ", km/h";
    const std::string degrees = us ? ", °F" : ", °C";
    table.columns = {{voice.say(Phrase::time_word), 1},
                     {voice.say(Phrase::job_wind_from), 1},
                     {voice.say(Phrase::job_wind_speed) + speed_unit, 1.2},
                     {voice.say(Phrase::job_gust) + speed_unit, 1.2},
                     {voice.say(Phrase::job_temperature) + degrees, 1},
                     {voice.say(Phrase::job_humidity) + ", %", 1.1},
                     {voice.say(Phrase::job_go_or_stop), 1.3}};
    for (int row = 0; row < rows_to_write; ++row) {
        table.rows.push_back(std::vector<Cell>(table.columns.size()));
    }
    sheet.add(Heading{voice.say(Phrase::job_weather), 1});
    sheet.add(std::move(table));
    sheet.add(Notice{voice.say(Phrase::job_spraying_caution),
                     {voice.say(Phrase::job_caution_wind), voice.say(Phrase::job_caution_inversion),
                      voice.say(Phrase::job_caution_heat), voice.say(Phrase::job_caution_low)}});
}

void add_after(Sheet& sheet, const JobParts& parts, const Voice& voice) {
    sheet.add(Heading{voice.say(Phrase::job_after), 1});
    std::vector<std::string> waits;
    for (const ComputedLoads& loads : parts.loads) {
        for (std::string& line :
             waiting_times({loads.answer.strictest, loads.request.products}, voice)) {
            waits.push_back(std::move(line));
        }
    }
    sheet.add(Notice{voice.say(Phrase::job_after_reentry), std::move(waits)});
    sheet.add(CheckList{{voice.say(Phrase::job_after_rinse), voice.say(Phrase::job_after_clean),
                         voice.say(Phrase::job_after_record)}});
}

}  // namespace

Facts job_facts(const JobText& job, const Voice& voice) {
    return Facts{{{voice.say(Phrase::place_word), job.place},
                  {voice.say(Phrase::made_for), job.customer},
                  {voice.say(Phrase::target_word), job.target},
                  {voice.say(Phrase::planned_for), job.planned_for},
                  {voice.say(Phrase::operator_word), job.operator_name},
                  {voice.say(Phrase::licence_word), job.licence},
                  {voice.say(Phrase::supervised_word), job.supervised}},
                 3};
}

Sheet job_sheet(const JobParts& parts, const Voice& voice) {
    Sheet sheet = titled(voice.say(Phrase::job_title), parts.job.name, voice);
    sheet.add(job_facts(parts.job, voice));
    sheet.add(Text{voice.say(Phrase::label_is_the_law), Style::strong});
    add_ground(sheet, parts, voice);
    add_sprayers(sheet, parts, voice);
    add_products(sheet, parts, voice);
    add_before(sheet, voice);
    add_weather(sheet, voice);
    add_after(sheet, parts, voice);
    return sheet;
}

}  // namespace swathbook::reports
