#include "reports/packet/calibration_sheet.hpp"

namespace swathbook::reports {
namespace {

using calibration::BudgetLine;
using calibration::CalibrateAnswer;
using calibration::CalibrateRequest;
using calibration::ErrorSource;

Phrase phrase_for(ErrorSource source) {
    switch (source) {
        case ErrorSource::course_time: return Phrase::error_course_time;
        case ErrorSource::catch_amount: return Phrase::error_catch_amount;
        case ErrorSource::catch_time: return Phrase::error_catch_time;
        case ErrorSource::vessel: return Phrase::error_vessel;
        case ErrorSource::tips_not_caught: return Phrase::error_tips_not_caught;
        case ErrorSource::course_length: return Phrase::error_course_length;
        case ErrorSource::width: return Phrase::error_width;
        case ErrorSource::area: return Phrase::error_area;
        case ErrorSource::speed: return Phrase::error_speed;
        case ErrorSource::flow: return Phrase::error_flow;
        case ErrorSource::refill_mark: return Phrase::error_refill_mark;
    }
    return Phrase::error_width;
}

template <Kind K>
Fact fact_of(Phrase name, const Estimate<K>& estimate, const Voice& voice) {
    return {voice.say(name), voice.show(estimate.value), voice.interval(estimate)};
}

void add_output(Sheet& sheet, const CalibrateAnswer& answer, const Voice& voice) {
    Facts output;
    output.columns = 3;
    output.style = Style::large;
    if (answer.band_output && answer.field_output) {
        output.facts.push_back(fact_of(Phrase::output_band, *answer.band_output, voice));
        output.facts.push_back(fact_of(Phrase::output_field, *answer.field_output, voice));
    } else {
        output.facts.push_back(fact_of(Phrase::output_of_sprayer, answer.output, voice));
    }
    if (answer.speed) {
        output.facts.push_back(fact_of(Phrase::speed_word, *answer.speed, voice));
    }
    if (answer.tank_area) {
        output.facts.push_back(fact_of(Phrase::area_of_one_tank, *answer.tank_area, voice));
    }
    sheet.add(std::move(output));
}

void add_details(Sheet& sheet, const CalibrateAnswer& answer, const Voice& voice) {
    Facts facts;
    facts.columns = 3;
    if (answer.flow) {
        facts.facts.push_back(fact_of(Phrase::flow_all_tips, *answer.flow, voice));
    }
    if (answer.flow_per_tip) {
        facts.facts.push_back(fact_of(Phrase::flow_per_tip, *answer.flow_per_tip, voice));
    }
    add_fact(facts, voice.say(Phrase::width_word), voice.show(answer.width));
    add_fact(facts, voice.say(Phrase::mean_time), voice.show(answer.mean_course_time));
    add_fact(facts, voice.say(Phrase::acres_per_hour), voice.show(answer.area_per_time));
    sheet.add(std::move(facts));
}

std::string times_text(const CalibrateRequest& request, const Voice& voice) {
    std::vector<std::string> times;
    for (const auto& time : request.course_times) {
        times.push_back(voice.show(time));
    }
    return joined(times);
}

std::string catches_text(const CalibrateRequest& request, const Voice& voice) {
    std::vector<std::string> catches;
    for (const calibration::Catch& each : request.catches) {
        std::string text = each.tip.empty() ? "" : each.tip + ": ";
        if (each.amount) {
            text += voice.show(*each.amount);
        } else if (each.weight) {
            text += voice.show(*each.weight);
        }
        if (each.time) {
            text += " / " + voice.show(*each.time);
        }
        catches.push_back(std::move(text));
    }
    return joined(catches, ";  ");
}

template <Kind K>
void add_reading(Facts& facts, const Voice& voice, Phrase name,
                 const std::optional<Reading<K>>& reading) {
    if (reading) {
        facts.facts.push_back({voice.say(name), voice.show(*reading)});
    }
}

void add_inputs(Sheet& sheet, const CalibrateRequest& request, const Voice& voice) {
    Facts inputs;
    inputs.columns = 3;
    add_reading(inputs, voice, Phrase::width_word, request.width);
    add_reading(inputs, voice, Phrase::input_spacing, request.spacing);
    if (request.tips) {
        inputs.facts.push_back({voice.say(Phrase::input_tip_count), std::to_string(*request.tips)});
    }
    add_reading(inputs, voice, Phrase::input_course, request.course_length);
    add_fact(inputs, voice.say(Phrase::input_times), times_text(request, voice));
    add_reading(inputs, voice, Phrase::speed_word, request.speed);
    add_reading(inputs, voice, Phrase::input_flow, request.flow);
    add_reading(inputs, voice, Phrase::input_refill, request.refill);
    add_reading(inputs, voice, Phrase::area_word, request.area);
    add_reading(inputs, voice, Phrase::input_tank, request.tank_volume);
    add_reading(inputs, voice, Phrase::input_band, request.band_width);
    add_reading(inputs, voice, Phrase::input_rows, request.row_spacing);
    sheet.add(Heading{voice.say(Phrase::inputs_heading), 1});
    sheet.add(std::move(inputs));
    const std::string catches = catches_text(request, voice);
    if (!catches.empty()) {
        sheet.add(Facts{{{voice.say(Phrase::input_catches), catches}}, 1});
    }
}

void add_budget(Sheet& sheet, const CalibrateAnswer& answer, const Voice& voice) {
    if (answer.error_budget.empty()) {
        return;
    }
    Table table;
    table.columns = {{voice.say(Phrase::error_term), 3},
                     {voice.say(Phrase::error_alone), 1, Align::right},
                     {voice.say(Phrase::error_share), 1, Align::right},
                     {voice.say(Phrase::error_repeat), 2}};
    for (const BudgetLine& line : answer.error_budget) {
        const bool largest = answer.largest_term && line.source == *answer.largest_term;
        table.rows.push_back(
            {{voice.say(phrase_for(line.source)), largest},
             {plain_percent(line.plus_minus.si(), 2), largest},
             {plain_percent(line.share.si(), 0), largest},
             {voice.say(line.repeats_help ? Phrase::error_repeat_yes : Phrase::error_repeat_no)}});
    }
    sheet.add(Heading{voice.say(Phrase::error_heading), 1});
    sheet.add(std::move(table));
    if (!answer.repeats.text.empty()) {
        sheet.add(Text{typeset(voice.core(answer.repeats.text))});
    }
}

/// What a sticker, a shortcut or a hand calculation says beside the measurement, where no finding
/// says it already.
void add_comparisons(Sheet& sheet, const ComputedCalibration& calibration) {
    const CalibrateAnswer& answer = calibration.answer;
    const auto add = [&](const std::string& text, Style style) {
        if (!text.empty() && !is_said(calibration.notes, text)) {
            sheet.add(Text{typeset(text), style});
        }
    };
    for (const auto* believed : {&answer.believed, &answer.assumed}) {
        if (*believed) {
            add((*believed)->text, Style::strong);
        }
    }
    if (answer.shortcut) {
        add(answer.shortcut->text, Style::body);
    }
    if (answer.hand) {
        add(answer.hand->text, Style::body);
    }
}

}  // namespace

Sheet calibration_sheet(const ComputedCalibration& calibration, const Voice& voice) {
    const CalibrateAnswer& answer = calibration.answer;
    Sheet sheet = titled(voice.say(Phrase::calibration_title, {calibration.name}), "", voice);
    add_output(sheet, answer, voice);
    add_details(sheet, answer, voice);
    add_comparisons(sheet, calibration);
    sheet.add(Notice{voice.say(Phrase::calibration_caution_title),
                     {voice.say(Phrase::calibration_caution_water),
                      voice.say(Phrase::calibration_caution_ppe)}});
    add_findings(sheet, calibration.notes, voice);
    add_inputs(sheet, calibration.request, voice);
    add_budget(sheet, answer, voice);
    add_working(sheet, calibration.notes, voice);
    if (calibration.request.caught == calibration::CarrierCaught::water) {
        sheet.add(Text{voice.say(Phrase::calibration_clean_water), Style::small});
    }
    return sheet;
}

}  // namespace swathbook::reports
