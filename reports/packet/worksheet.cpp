#include "reports/packet/worksheet.hpp"

#include <fmt/format.h>

#include "reports/figures/course_drawing.hpp"
#include "reports/phrases.hpp"

namespace swathbook::reports {
namespace {

/// What differs between the two editions of units.
struct Edition {
    std::string length_unit;
    std::string catch_unit;
    std::string output_unit;
    std::string speed_unit;
    std::string tank_unit;
    std::string area_unit;
    std::string pressure_unit;
    std::string output_factor;
    std::string speed_factor;
    Phrase shortcut_warning;
};

Edition edition_of(UnitSystem units, Language language) {
    const bool spanish = language == Language::spanish;
    if (units == UnitSystem::metric) {
        return {"m",
                "mL",
                "L/ha",
                "km/h",
                "L",
                "ha",
                spanish ? "bar o kPa" : "bar or kPa",
                "10",
                "3.6",
                Phrase::shortcut_warning_metric};
    }
    return {
        spanish ? "pies" : "ft",    "fl oz", "gal/ac", "mph", "gal", "ac", "psi", "340.3", "0.6818",
        Phrase::shortcut_warning_us};
}

Table catch_table(const WorksheetInput& input, const Edition& edition) {
    Table table;
    table.least_row_height = 19.5;
    table.columns.push_back({std::string(say(input.language, Phrase::tip_word)), 4.7});
    std::vector<Cell> caught = {{say(input.language, Phrase::caught_in, {edition.catch_unit})}};
    std::vector<Cell> off = {{std::string(say(input.language, Phrase::off_mean))}};
    for (int tip = 1; tip <= input.tips; ++tip) {
        table.columns.push_back({std::to_string(tip), 1.0, Align::middle});
        caught.push_back({});
        off.push_back({});
    }
    for (const Phrase sum : {Phrase::sum_word, Phrase::mean_word}) {
        table.columns.push_back({std::string(say(input.language, sum)), 1.7, Align::middle});
        caught.push_back({});
    }
    table.rows = {std::move(caught), std::move(off)};
    table.upright_rules = true;
    return table;
}

FormulaPart box(std::string caption, double width) {
    return {true, "", std::move(caption), width};
}
FormulaPart fixed(std::string text, double width) {
    return {true, std::move(text), "", width};
}
FormulaPart sign(std::string text) {
    return {false, std::move(text)};
}

void add_measuring(Sheet& sheet, const WorksheetInput& input, const Edition& edition) {
    const Language language = input.language;
    const auto words = [language](Phrase phrase) { return std::string(say(language, phrase)); };
    sheet.add(Heading{words(Phrase::worksheet_measure), 1});
    sheet.add(
        Figure{course_drawing({words(Phrase::course_rolling_start),
                               words(Phrase::course_start_flag), words(Phrase::course_end_flag),
                               words(Phrase::course_width), words(Phrase::course_length)}),
               words(Phrase::course_caption)});
    Blanks blanks;
    blanks.blanks = {{words(Phrase::width_served), "", edition.length_unit, "", 1.0 / 6},
                     {words(Phrase::length_of_course), "", edition.length_unit, "", 1.0 / 6}};
    for (const char* run : {"1", "2", "3"}) {
        blanks.blanks.push_back({say(language, Phrase::run_time, {run}), "", "s", "", 1.0 / 6});
    }
    blanks.blanks.push_back({words(Phrase::mean_time), "", "s", "", 1.0 / 6});
    sheet.add(std::move(blanks));
}

void add_catching(Sheet& sheet, const WorksheetInput& input, const Edition& edition) {
    const Language language = input.language;
    sheet.add(Heading{std::string(say(language, Phrase::worksheet_catch)), 1});
    sheet.add(catch_table(input, edition));
    sheet.add(Text{say(language, Phrase::worksheet_tips_rule, {"______"}), Style::small});
}

void add_working_out(Sheet& sheet, const WorksheetInput& input, const Edition& edition) {
    const Language language = input.language;
    const auto words = [language](Phrase phrase) { return std::string(say(language, phrase)); };
    const std::string width = "W, " + edition.length_unit;
    const std::string length = "L, " + edition.length_unit;
    const std::string output = words(Phrase::output_word) + ",\n" + edition.output_unit;
    const std::string speed = words(Phrase::speed_word) + ",\n" + edition.speed_unit;
    const std::string caught = say(language, Phrase::caught_by_all, {edition.catch_unit});
    const std::string tank = say(language, Phrase::usable_tank, {edition.tank_unit});
    const std::string covers = words(Phrase::area_of_one_tank) + ",\n" + edition.area_unit;
    sheet.add(Heading{words(Phrase::worksheet_work_out), 1});
    sheet.add(Formula{{box(caught, 92), sign("×"), fixed(edition.output_factor, 50), sign("÷"),
                       sign("("), box(width, 58), sign("×"), box(length, 58), sign(")"), sign("="),
                       box(output, 88)}});
    sheet.add(Formula{{box(length, 44), sign("÷"), box(words(Phrase::seconds_mean), 44), sign("×"),
                       fixed(edition.speed_factor, 46), sign("="), box(speed, 54), sign("   "),
                       box(tank, 44), sign("÷"), box(output, 54), sign("="), box(covers, 54)}});
    sheet.add(Remark{Severity::warning, words(Phrase::severity_warning),
                     words(edition.shortcut_warning)});
}

}  // namespace

Result<Sheet> worksheet_sheet(const WorksheetInput& input) {
    if (input.tips < 1 || input.tips > 16) {
        return fail(
            ErrorCode::out_of_range, "tips",
            fmt::format(
                "{} tips do not fit one worksheet. Ask for 1 to 16, and use a second sheet for a "
                "longer boom.",
                input.tips));
    }
    const Edition edition = edition_of(input.units, input.language);
    const Language language = input.language;
    const auto words = [language](Phrase phrase) { return std::string(say(language, phrase)); };
    Sheet sheet;
    sheet.title = words(Phrase::worksheet_title);
    sheet.second_title = words(Phrase::worksheet_subtitle);
    sheet.add(Text{words(Phrase::worksheet_clean_water), Style::body});
    sheet.add(Blanks{{{words(Phrase::sprayer_word), "", "", "", 0.4},
                      {words(Phrase::operator_word), "", "", "", 0.35},
                      {words(Phrase::date_word), "", "", "", 0.25},
                      {words(Phrase::tips_word), "", "", "", 0.4},
                      {words(Phrase::gear_word), "", "", "", 0.25},
                      {words(Phrase::pressure_word), "", edition.pressure_unit, "", 0.175},
                      {words(Phrase::believed_output), "", edition.output_unit, "", 0.175}}});
    add_measuring(sheet, input, edition);
    add_catching(sheet, input, edition);
    add_working_out(sheet, input, edition);
    return sheet;
}

Result<Document> worksheet_document(const WorksheetInput& input) {
    SWATHBOOK_TRY(sheet, worksheet_sheet(input));
    Document document;
    document.title = sheet.title;
    document.language = input.language == Language::spanish ? "es" : "en";
    document.paper = input.paper;
    document.printed_at = input.printed_on.empty() ? "" : input.printed_on + "T00:00:00Z";
    document.footer.page_word = say(input.language, Phrase::page_word);
    document.footer.of_word = say(input.language, Phrase::of_word);
    document.footer.printed =
        input.printed_on.empty() ? "" : say(input.language, Phrase::printed_on, {input.printed_on});
    document.footer.model_version = input.model_version;
    document.sheets.push_back(std::move(sheet));
    return document;
}

}  // namespace swathbook::reports
