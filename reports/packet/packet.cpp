#include "reports/packet/packet.hpp"

#include <fmt/format.h>

#include "core/base/civil_date.hpp"
#include "reports/packet/cover.hpp"

namespace swathbook::reports {
namespace {

/// The sheets that follow the cover, each with its line on it.
struct Sheets {
    std::vector<Sheet> sheets;
    std::vector<CoverLine> lines;

    void add(Sheet sheet, const Voice& voice, Phrase use) {
        lines.push_back({sheet.title, voice.say(use)});
        sheets.push_back(std::move(sheet));
    }
};

Sheets inner_sheets(const PacketInput& input, const JobParts& parts, const Voice& voice) {
    Sheets all;
    all.add(job_sheet(parts, voice), voice, Phrase::cover_job_sheet_use);
    for (const ComputedLoads& loads : input.loads) {
        for (Sheet& card : mixing_cards(loads, input.units)) {
            all.add(std::move(card), voice, Phrase::cover_mixing_card_use);
        }
    }
    for (const ComputedCalibration& calibration : input.calibrations) {
        all.add(calibration_sheet(calibration, voice), voice, Phrase::cover_calibration_use);
    }
    for (const ComputedTipCheck& check : input.tip_checks) {
        all.add(tip_sheet(check, voice), voice, Phrase::cover_tips_use);
    }
    for (const ComputedCrew& crew : input.crews) {
        all.add(crew_sheet(crew, voice), voice, Phrase::cover_crew_use);
    }
    if (input.record) {
        all.add(record_form(*input.record, input.record_values, voice), voice,
                Phrase::cover_record_use);
    }
    return all;
}

}  // namespace

Result<Document> packet_document(const PacketInput& input) {
    constexpr std::size_t date_length = 10;
    const std::string day = input.printed_at.substr(0, date_length);
    if (!parse_civil_date(day, "printed_at") || input.printed_at.size() < date_length + 1 ||
        input.printed_at[date_length] != 'T') {
        return fail(
            ErrorCode::invalid_input, "printed_at",
            fmt::format(
                "\"{}\" is no date and time of printing. Give it like 2031-05-14T06:30:00Z.",
                input.printed_at));
    }
    const Voice voice{input.language, input.units};
    const JobParts parts{input.job,   input.areas,      input.calibrations,
                         input.loads, input.tip_checks, input.crews};
    Sheets inner = inner_sheets(input, parts, voice);
    Document document;
    document.sheets.push_back(cover_sheet(parts, inner.lines, voice));
    for (Sheet& sheet : inner.sheets) {
        document.sheets.push_back(std::move(sheet));
    }
    document.title = input.job.name.empty() ? voice.say(Phrase::cover_title) : input.job.name;
    document.language = input.language == Language::spanish ? "es" : "en";
    document.printed_at = input.printed_at;
    document.paper = input.paper;
    document.footer.page_word = voice.say(Phrase::page_word);
    document.footer.of_word = voice.say(Phrase::of_word);
    document.footer.notebook =
        input.notebook.empty() ? "" : voice.say(Phrase::notebook_named, {input.notebook});
    document.footer.printed = voice.say(Phrase::printed_on, {day});
    document.footer.model_version = input.model_version;
    return document;
}

}  // namespace swathbook::reports
