#include "reports/packet/tip_sheet.hpp"

#include <algorithm>

#include "reports/figures/tip_bars.hpp"

namespace swathbook::reports {
namespace {

using calibration::TipAction;
using calibration::TipResult;
using calibration::TipVerdict;
using job::TipCheckAnswer;

Phrase word_for(TipVerdict verdict) {
    switch (verdict) {
        case TipVerdict::ok: return Phrase::tip_ok;
        case TipVerdict::at_limit: return Phrase::tip_at_limit;
        case TipVerdict::high_worn: return Phrase::tip_worn;
        case TipVerdict::low_clogged: return Phrase::tip_clogged;
        case TipVerdict::other_size: return Phrase::tip_other_size;
    }
    return Phrase::tip_ok;
}

Phrase word_for(TipAction action) {
    switch (action) {
        case TipAction::keep: return Phrase::tip_keep;
        case TipAction::watch: return Phrase::tip_watch;
        case TipAction::replace: return Phrase::tip_replace;
        case TipAction::clean: return Phrase::tip_clean;
    }
    return Phrase::tip_keep;
}

BarPattern pattern_for(TipVerdict verdict) {
    switch (verdict) {
        case TipVerdict::ok: return BarPattern::within;
        case TipVerdict::at_limit: return BarPattern::at_limit;
        case TipVerdict::high_worn: return BarPattern::over;
        case TipVerdict::low_clogged: return BarPattern::under;
        case TipVerdict::other_size: return BarPattern::other_size;
    }
    return BarPattern::within;
}

/// Flows to one thousandth: tips are compared digit by digit.
std::string flow_number(Flow flow, const Voice& voice) {
    const std::string_view unit = voice.units == UnitSystem::us ? "gal/min" : "L/min";
    return show_fixed(number_in(flow.si(), Kind::flow, unit), 3);
}

std::string flow_text(Flow flow, const Voice& voice) {
    return flow_number(flow, voice) + (voice.units == UnitSystem::us ? " gal/min" : " L/min");
}

/// Limit lines as deviations from what the picture's zero stands for.
std::vector<LimitLine> limit_lines(const ComputedTipCheck& check, const Voice& voice) {
    const TipCheckAnswer& answer = check.answer;
    const job::TipLimitFigures& limits = answer.limits;
    const double zero = answer.rated ? answer.rated->si() : answer.mean.si();
    std::vector<LimitLine> lines;
    const auto add = [&](const std::optional<Fraction>& limit, double sign, double base,
                         Phrase words) {
        if (limit) {
            const double off = sign * limit->si();
            lines.push_back(
                {base * (1 + off) / zero - 1, voice.say(words, {signed_percent(off, 0)})});
        }
    };
    if (answer.rated) {
        add(limits.above_rating, 1, answer.rated->si(), Phrase::tips_limit_rating);
        add(limits.below_rating, -1, answer.rated->si(), Phrase::tips_limit_rating);
    }
    add(limits.above_mean, 1, answer.mean.si(), Phrase::tips_limit_mean);
    add(limits.below_mean, -1, answer.mean.si(), Phrase::tips_limit_mean);
    return lines;
}

TipBar bar_of(const TipResult& tip, const Voice& voice) {
    const double off = tip.from_rating ? tip.from_rating->si() : tip.from_mean.si();
    TipBar bar;
    bar.name = std::to_string(tip.tip);
    bar.off = off;
    bar.off_text = signed_percent(off);
    bar.flow_text = flow_number(tip.flow, voice);
    bar.pattern = pattern_for(tip.verdict);
    if (tip.verdict != TipVerdict::ok) {
        bar.word = voice.say(word_for(tip.verdict));
    }
    return bar;
}

void add_pictures(Sheet& sheet, const ComputedTipCheck& check, const Voice& voice) {
    const TipCheckAnswer& answer = check.answer;
    const std::string reference =
        answer.rated ? voice.say(Phrase::tips_rated, {flow_text(*answer.rated, voice)})
                     : voice.say(Phrase::tips_mean, {flow_text(answer.mean, voice)});
    const std::vector<LimitLine> limits = limit_lines(check, voice);
    for (std::size_t first = 0; first < answer.tips.size(); first += tips_in_a_picture) {
        TipBarsPicture picture;
        picture.limits = limits;
        picture.reference = reference;
        for (std::size_t i = first; i < std::min(first + tips_in_a_picture, answer.tips.size());
             ++i) {
            picture.bars.push_back(bar_of(answer.tips[i], voice));
        }
        const bool is_last = first + tips_in_a_picture >= answer.tips.size();
        sheet.add(
            Figure{tip_bars(picture), is_last ? voice.say(Phrase::tips_picture, {reference}) : ""});
    }
}

std::string list_of(const std::vector<int>& tips, const Voice& voice) {
    std::vector<std::string> names;
    names.reserve(tips.size());
    for (const int tip : tips) {
        names.push_back(std::to_string(tip));
    }
    return names.empty() ? voice.say(Phrase::tips_none) : joined(names);
}

void add_summary(Sheet& sheet, const TipCheckAnswer& answer, const Voice& voice) {
    Facts decision;
    decision.columns = 2;
    decision.style = Style::large;
    decision.facts.push_back(
        {voice.say(answer.replace_all ? Phrase::tips_replace_all : Phrase::tips_replace_list),
         list_of(answer.replace, voice)});
    decision.facts.push_back({voice.say(Phrase::tips_clean_list), list_of(answer.clean, voice)});
    sheet.add(std::move(decision));
    Facts facts;
    facts.columns = 3;
    const std::string off = answer.mean_from_rating
                                ? " (" + signed_percent(answer.mean_from_rating->si()) + ")"
                                : std::string();
    facts.facts.push_back({voice.say(Phrase::tips_set_mean), flow_text(answer.mean, voice) + off});
    facts.facts.push_back(
        {voice.say(Phrase::tips_variation), plain_percent(answer.variation.si())});
    add_fact(facts, voice.say(Phrase::tips_rated_flow),
             answer.rated ? flow_text(*answer.rated, voice) : "");
    add_fact(facts, voice.say(Phrase::tips_rate_now), voice.show(answer.rate_now));
    add_fact(facts, voice.say(Phrase::tips_rate_after), voice.show(answer.rate_after));
    sheet.add(std::move(facts));
}

void add_verdicts(Sheet& sheet, const TipCheckAnswer& answer, const Voice& voice) {
    Table table;
    table.columns = {{voice.say(Phrase::tip_word), 0.7},
                     {voice.say(Phrase::tips_flow), 1.3, Align::right},
                     {voice.say(Phrase::tips_from_rating), 1, Align::right},
                     {voice.say(Phrase::tips_from_mean), 1, Align::right},
                     {voice.say(Phrase::tips_verdict), 1.2},
                     {voice.say(Phrase::tips_to_do), 2.6}};
    for (const TipResult& tip : answer.tips) {
        const bool strong = tip.verdict != TipVerdict::ok;
        const std::string like = tip.reads_like ? " " + *tip.reads_like : "";
        table.rows.push_back(
            {{std::to_string(tip.tip), true},
             {flow_text(tip.flow, voice), strong},
             {tip.from_rating ? signed_percent(tip.from_rating->si()) : "", strong},
             {signed_percent(tip.from_mean.si()), strong},
             {voice.say(word_for(tip.verdict)) + like, strong},
             {voice.language == Language::english && !tip.what_to_do.empty()
                  ? tip.what_to_do
                  : voice.say(word_for(tip.action))}});
    }
    sheet.add(std::move(table));
}

void add_other_limits(Sheet& sheet, const TipCheckAnswer& answer, const Voice& voice) {
    if (answer.other_limits.empty()) {
        return;
    }
    Table table;
    table.columns = {{voice.say(Phrase::job_limit), 3.2},
                     {voice.say(Phrase::source_word), 2.6},
                     {voice.say(Phrase::tips_out_of), 1.4}};
    table.style = Style::small;
    for (const job::OtherRuleOutcome& other : answer.other_limits) {
        table.rows.push_back({{voice.core(other.text)},
                              {voice.core(other.source)},
                              {list_of(other.out, voice), !other.out.empty()}});
    }
    sheet.add(Heading{voice.say(Phrase::tips_other_limits), 1});
    sheet.add(std::move(table));
}

}  // namespace

Sheet tip_sheet(const ComputedTipCheck& check, const Voice& voice) {
    Sheet sheet = titled(voice.say(Phrase::tips_title, {check.name}), "", voice);
    add_summary(sheet, check.answer, voice);
    add_pictures(sheet, check, voice);
    sheet.add(Facts{{{voice.say(Phrase::tips_limit_used), voice.core(check.answer.limit_text),
                      voice.core(check.answer.limit_source)}},
                    1});
    add_verdicts(sheet, check.answer, voice);
    sheet.add(Text{voice.say(Phrase::tips_caution), Style::strong});
    add_findings(sheet, check.notes, voice);
    add_other_limits(sheet, check.answer, voice);
    add_working(sheet, check.notes, voice);
    return sheet;
}

}  // namespace swathbook::reports
