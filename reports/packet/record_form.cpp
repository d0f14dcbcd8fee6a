#include "reports/packet/record_form.hpp"

#include <algorithm>

namespace swathbook::reports {
namespace {

using notebook::AuthorityCheck;
using notebook::RecordField;
using notebook::Standing;
using notebook::Timeliness;

/// How strongly a field is asked for. Marks differ in shape so that a copy keeps them.
enum class Need : std::uint8_t { advised, decide, required };

struct FormField {
    std::string key;
    std::string label;
    Need need = Need::advised;
    std::vector<std::string> asked_by;
    std::vector<std::string> notes;
};

const char* mark_of(Need need) {
    switch (need) {
        case Need::required: return "\u25CF ";  // filled circle
        case Need::decide: return "\u25C7 ";    // open diamond
        case Need::advised: return "\u25CB ";   // open circle
    }
    return "";
}

Phrase word_for(Standing standing) {
    switch (standing) {
        case Standing::in_force: return Phrase::record_in_force;
        case Standing::unsettled: return Phrase::record_unsettled;
        case Standing::does_not_apply: return Phrase::record_does_not_apply;
        case Standing::not_yet: return Phrase::record_not_yet;
        case Standing::rescinded: return Phrase::record_rescinded;
    }
    return Phrase::record_in_force;
}

bool counts(Standing standing) {
    return standing == Standing::in_force || standing == Standing::unsettled;
}

std::string deadline_text(const AuthorityCheck& check, const Voice& voice) {
    if (!check.deadline) {
        return voice.say(Phrase::record_no_deadline);
    }
    switch (check.timeliness) {
        case Timeliness::on_time: return *check.deadline + "\n" + voice.say(Phrase::record_on_time);
        case Timeliness::late: return *check.deadline + "\n" + voice.say(Phrase::record_late);
        case Timeliness::open: return *check.deadline + "\n" + voice.say(Phrase::record_open);
        case Timeliness::overdue: return *check.deadline + "\n" + voice.say(Phrase::record_overdue);
        case Timeliness::no_deadline: return *check.deadline;
    }
    return *check.deadline;
}

void add_authorities(Sheet& sheet, const ComputedRecordCheck& check, const Voice& voice) {
    Table table;
    table.columns = {{voice.say(Phrase::record_authority), 3.2},
                     {voice.say(Phrase::record_standing), 1.4},
                     {voice.say(Phrase::record_deadline), 1.5},
                     {voice.say(Phrase::record_keep), 1.2},
                     {voice.say(Phrase::record_missing), 1, Align::right}};
    table.style = Style::small;
    for (const AuthorityCheck& each : check.answer.checks) {
        const bool in_force = counts(each.standing);
        const bool overdue =
            each.timeliness == Timeliness::overdue || each.timeliness == Timeliness::late;
        std::string rule = each.authority;
        if (!each.citation.empty()) {
            rule += "\n" + each.citation;
        }
        if (!each.why.empty() && !is_said(check.notes, each.why)) {
            rule += "\n" + each.why;
        }
        table.rows.push_back(
            {{rule, in_force},
             {voice.say(word_for(each.standing))},
             {in_force ? deadline_text(each, voice) : "\u2013", overdue},
             {in_force ? each.keep_until.value_or(voice.say(Phrase::record_no_deadline))
                       : "\u2013"},
             {in_force ? std::to_string(each.missing.size()) : "\u2013", !each.missing.empty()}});
    }
    sheet.add(Heading{voice.say(Phrase::record_authorities), 1});
    sheet.add(std::move(table));
}

class FieldCollector {
public:
    explicit FieldCollector(Language language) : language_(language) {}

    void take(const std::vector<RecordField>& fields, Need need, const std::string& authority) {
        for (const RecordField& field : fields) {
            FormField& row = row_of(field);
            row.need = std::max(row.need, need);
            if (need != Need::advised) {
                row.asked_by.push_back(authority);
            }
            if (!field.note.empty() &&
                std::find(row.notes.begin(), row.notes.end(), field.note) == row.notes.end()) {
                row.notes.push_back(field.note);
            }
        }
    }
    [[nodiscard]] const std::vector<FormField>& rows() const { return rows_; }

private:
    FormField& row_of(const RecordField& field) {
        for (FormField& row : rows_) {
            if (row.key == field.key) {
                return row;
            }
        }
        const bool spanish = language_ == Language::spanish && !field.label_es.empty();
        rows_.push_back({field.key, spanish ? field.label_es : field.label, Need::advised, {}, {}});
        return rows_.back();
    }

    Language language_;
    std::vector<FormField> rows_;
};

std::vector<FormField> fields_of(const ComputedRecordCheck& check, const Voice& voice) {
    FieldCollector collector(voice.language);
    for (const AuthorityCheck& each : check.answer.checks) {
        if (counts(each.standing)) {
            collector.take(each.present, Need::required, each.authority);
            collector.take(each.missing, Need::required, each.authority);
            collector.take(each.to_decide, Need::decide, each.authority);
            collector.take(each.advised, Need::advised, each.authority);
        }
    }
    return collector.rows();
}

std::string value_of(const std::string& field, const std::vector<RecordValue>& values) {
    for (const RecordValue& value : values) {
        if (value.field == field) {
            return value.value;
        }
    }
    return {};
}

void add_fields(Sheet& sheet, const std::vector<FormField>& fields,
                const std::vector<RecordValue>& values, const Voice& voice) {
    Blanks blanks;
    for (const FormField& field : fields) {
        std::string remark;
        if (!field.asked_by.empty()) {
            remark = voice.say(Phrase::record_asked_by, {joined(field.asked_by)});
        }
        for (const std::string& note : field.notes) {
            remark += (remark.empty() ? "" : "; ") + voice.core(note);
        }
        blanks.blanks.push_back(
            {mark_of(field.need) + field.label, value_of(field.key, values), "", remark, 0.5});
    }
    sheet.add(Heading{voice.say(Phrase::record_fields), 1});
    sheet.add(Text{voice.say(Phrase::record_intro), Style::small});
    sheet.add(std::move(blanks));
}

void add_doubts(Sheet& sheet, const ComputedRecordCheck& check, const Voice& voice) {
    std::vector<std::string> doubts;
    for (const AuthorityCheck& each : check.answer.checks) {
        if (!counts(each.standing)) {
            continue;
        }
        for (const std::string& doubt : each.to_verify) {
            doubts.push_back(each.authority + ": " + voice.core(doubt));
        }
        if (!each.note.empty()) {
            doubts.push_back(each.authority + ": " + voice.core(each.note));
        }
    }
    if (!doubts.empty()) {
        sheet.add(Heading{voice.say(Phrase::record_verify), 1});
        sheet.add(CheckList{std::move(doubts), Style::small});
    }
}

}  // namespace

Sheet record_form(const ComputedRecordCheck& check, const std::vector<RecordValue>& values,
                  const Voice& voice) {
    Sheet sheet = titled(voice.say(Phrase::record_title), check.name, voice);
    add_authorities(sheet, check, voice);
    add_findings(sheet, check.notes, voice);
    add_fields(sheet, fields_of(check, voice), values, voice);
    add_doubts(sheet, check, voice);
    sheet.add(
        Text{voice.say(Phrase::record_defer) + " " + voice.say(Phrase::record_amend), Style::small},
        true);
    sheet.add(Blanks{{{voice.say(Phrase::record_completed_by), "", "", "", 0.4},
                      {voice.say(Phrase::record_completed_on), "", "", "", 0.25},
                      {voice.say(Phrase::signature_word), "", "", "", 0.35}}});
    return sheet;
}

}  // namespace swathbook::reports
