#include "reports/packet/common.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

namespace swathbook::reports {
namespace {

Phrase word_for(Severity severity) {
    switch (severity) {
        case Severity::note: return Phrase::severity_note;
        case Severity::advice: return Phrase::severity_advice;
        case Severity::warning: return Phrase::severity_warning;
        case Severity::stop: return Phrase::severity_stop;
    }
    return Phrase::severity_note;
}

}  // namespace

std::string typeset(std::string text) {
    using Replacement = std::pair<std::string_view, std::string_view>;
    static constexpr std::array better = {
        Replacement{"+-", "\u00B1"},    Replacement{" x ", " \u00D7 "},
        Replacement{" * ", " \u00D7 "}, Replacement{"degF", "\u00B0F"},
        Replacement{"degC", "\u00B0C"}, Replacement{" ft2", " ft\u00B2"},
        Replacement{" m2", " m\u00B2"}, Replacement{" in2", " in\u00B2"}};
    for (const auto& [plain, good] : better) {
        for (std::size_t at = text.find(plain); at != std::string::npos;
             at = text.find(plain, at + good.size())) {
            text.replace(at, plain.size(), good);
        }
    }
    return text;
}

bool is_said(const Notes& notes, std::string_view sentence) {
    return std::any_of(notes.findings().begin(), notes.findings().end(),
                       [sentence](const Finding& finding) {
                           return finding.text.find(sentence) != std::string::npos;
                       });
}

std::string plain_percent(double fraction, int decimals) {
    return show_fixed(fraction * 100.0, decimals) + " %";
}

std::string area_text(Area area, const Voice& voice) {
    const std::string_view unit = voice.units == UnitSystem::us ? "ac" : "ha";
    const double number = number_in(area.si(), Kind::area, unit);
    constexpr double small_plot = 0.1;
    return (number < small_plot ? show_number(number) : show_fixed(number, 2)) + " " +
           std::string(unit);
}

std::string signed_percent(double fraction, int decimals) {
    const std::string text = plain_percent(fraction, decimals);
    const bool is_zero = text.find_first_of("123456789") == std::string::npos;
    if (is_zero) {
        return text.front() == '-' ? text.substr(1) : text;
    }
    return fraction > 0 ? "+" + text : text;
}

std::string joined(const std::vector<std::string>& parts, std::string_view between) {
    std::string text;
    for (const std::string& part : parts) {
        text += text.empty() ? part : std::string(between) + part;
    }
    return text;
}

void add_findings(Sheet& sheet, const Notes& notes, const Voice& voice) {
    if (notes.findings().empty()) {
        return;
    }
    std::vector<Finding> findings = notes.findings();
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        return static_cast<int>(a.severity) > static_cast<int>(b.severity);
    });
    sheet.add(Heading{voice.say(Phrase::findings_heading), 1});
    for (const Finding& finding : findings) {
        sheet.add(Remark{finding.severity, voice.say(word_for(finding.severity)),
                         voice.core(finding.text), voice.core(finding.source)});
    }
}

void add_working(Sheet& sheet, const Notes& notes, const Voice& voice) {
    if (notes.steps().empty()) {
        return;
    }
    sheet.add(Heading{voice.say(Phrase::working_heading), 1});
    std::vector<Step> steps = notes.steps();
    for (Step& step : steps) {
        step.text = typeset(voice.core(step.text));
        step.expression = typeset(voice.core(step.expression));
        step.result = typeset(voice.core(step.result));
        step.source = voice.core(step.source);
    }
    sheet.add(Working{std::move(steps), 1, voice.say(Phrase::source_word)});
}

Sheet titled(std::string title, std::string second_title, const Voice& voice) {
    Sheet sheet;
    sheet.continued_title = voice.say(Phrase::continued, {title});
    sheet.title = std::move(title);
    sheet.second_title = std::move(second_title);
    return sheet;
}

void add_fact(Facts& facts, std::string name, std::string value) {
    if (!value.empty()) {
        facts.facts.push_back({std::move(name), std::move(value)});
    }
}

}  // namespace swathbook::reports
