#include "reports/packet/cover.hpp"

namespace swathbook::reports {
namespace {

void add_contents(Sheet& sheet, const std::vector<CoverLine>& contents, const Voice& voice) {
    Table table;
    table.columns = {{voice.say(Phrase::cover_sheet), 1.3}, {voice.say(Phrase::cover_use), 2}};
    for (const CoverLine& line : contents) {
        table.rows.push_back({{line.sheet, true}, {line.use}});
    }
    sheet.add(Heading{voice.say(Phrase::cover_contents), 1});
    sheet.add(std::move(table));
}

void add_figures(Sheet& sheet, const JobParts& parts, const Voice& voice) {
    Facts figures;
    figures.columns = 2;
    figures.style = Style::large;
    for (const ComputedCalibration& each : parts.calibrations) {
        figures.facts.push_back({each.name, voice.show(each.answer.output.value)});
    }
    for (const ComputedArea& area : parts.areas) {
        figures.facts.push_back({area.name, area_text(area.answer.area.value, voice)});
    }
    for (const ComputedLoads& loads : parts.loads) {
        const std::string count = std::to_string(loads.answer.load_count) + " \u00D7 ";
        const bool alike = loads.answer.load_count > 0 && !loads.answer.loads.empty();
        figures.facts.push_back({loads.name + ": " + voice.say(Phrase::job_loads),
                                 alike && loads.request.split == mix::Split::equal
                                     ? count + voice.show(loads.answer.loads.front().fill)
                                     : std::to_string(loads.answer.load_count)});
    }
    if (!figures.facts.empty()) {
        sheet.add(Heading{voice.say(Phrase::cover_figures), 1});
        sheet.add(std::move(figures));
    }
}

/// What must not be overlooked in any sheet, said once more at the front.
void add_loud_findings(Sheet& sheet, const JobParts& parts, const Voice& voice) {
    const auto add = [&](const std::string& name, const Notes& notes) {
        for (const Finding& finding : notes.findings()) {
            if (finding.severity == Severity::stop) {
                sheet.add(Remark{finding.severity, voice.say(Phrase::severity_stop) + ": " + name,
                                 typeset(voice.core(finding.text)), voice.core(finding.source)});
            }
        }
    };
    for (const ComputedLoads& loads : parts.loads) {
        add(loads.name, loads.notes);
    }
    for (const ComputedCalibration& each : parts.calibrations) {
        add(each.name, each.notes);
    }
    for (const ComputedTipCheck& check : parts.tip_checks) {
        add(check.name, check.notes);
    }
    for (const ComputedCrew& crew : parts.crews) {
        add(crew.name, crew.notes);
    }
    for (const ComputedArea& area : parts.areas) {
        add(area.name, area.notes);
    }
}

}  // namespace

Sheet cover_sheet(const JobParts& parts, const std::vector<CoverLine>& contents,
                  const Voice& voice) {
    const bool is_named = !parts.job.name.empty();
    Sheet sheet = titled(is_named ? parts.job.name : voice.say(Phrase::cover_title),
                         is_named ? voice.say(Phrase::cover_title) : "", voice);
    sheet.add(job_facts(parts.job, voice));
    add_loud_findings(sheet, parts, voice);
    add_figures(sheet, parts, voice);
    add_contents(sheet, contents, voice);
    sheet.add(Text{voice.say(Phrase::label_is_the_law), Style::strong});
    return sheet;
}

}  // namespace swathbook::reports
