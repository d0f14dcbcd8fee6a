#include "core/notebook/record_check.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/notebook/detail/field_needs.hpp"
#include "core/notebook/detail/record_days.hpp"

namespace swathbook::notebook {

namespace {

using detail::RecordDays;
using detail::source_title;

char lower(char character) {
    return character >= 'A' && character <= 'Z' ? static_cast<char>(character + 32) : character;
}

bool same_words(std::string_view a, std::string_view b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [](char x, char y) { return lower(x) == lower(y); });
}

Result<const AuthorityRow*> find_authority(std::string_view name, std::size_t place) {
    const auto rows = authority_rows();
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const AuthorityRow& row) {
        return same_words(row.key, name);
    });
    if (found != rows.end()) {
        return &*found;
    }
    std::vector<std::string_view> names;
    for (const AuthorityRow& row : rows) {
        names.push_back(row.key);
    }
    return fail(ErrorCode::not_found, fmt::format("authorities[{}]", place),
                fmt::format("No rules are kept for \"{}\". Known are: {}. For any other, ask the "
                            "authority itself.",
                            name.substr(0, 60), fmt::join(names, "; ")));
}

Result<std::vector<const AuthorityRow*>> find_authorities(const RecordCheckRequest& request) {
    if (request.authorities.empty()) {
        return fail(ErrorCode::invalid_input, "authorities",
                    "No authority is named. Name at least one, for example \"good practice\".");
    }
    std::vector<const AuthorityRow*> found;
    for (std::size_t i = 0; i < request.authorities.size(); ++i) {
        SWATHBOOK_TRY(row, find_authority(request.authorities[i], i));
        if (std::find(found.begin(), found.end(), row) != found.end()) {
            return fail(ErrorCode::invalid_input, fmt::format("authorities[{}]", i),
                        fmt::format("{} is named twice. Name it once.", row->key));
        }
        found.push_back(row);
    }
    return found;
}

Result<void> check_field_names(const std::vector<std::string>& fields) {
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (detail::find_field(fields[i]) == nullptr) {
            return fail(ErrorCode::invalid_input, fmt::format("fields[{}]", i),
                        fmt::format("\"{}\" is not a field of the record table. The keys stand in "
                                    "data/rules/fields.tsv, for example \"wind_speed\".",
                                    fields[i].substr(0, 60)));
        }
    }
    return {};
}

bool is_before(CivilDate day, std::string_view cell) {
    return !cell.empty() && text_of(day) < cell;  // both are year-month-day
}

/// Settles whether a rule counts, and says why when it does not plainly do so.
void judge_standing(const AuthorityRow& row, const RecordCheckRequest& request,
                    const RecordDays& days, AuthorityCheck& check) {
    const bool is_over = !row.valid_until.empty() && !is_before(days.as_of, row.valid_until);
    if (is_over || (!row.valid_until.empty() && !is_before(days.date, row.valid_until))) {
        check.standing = Standing::rescinded;
        check.why = fmt::format("{}. It asks for nothing on {}.", row.ended_by,
                                text_of(std::max(days.as_of, days.date)));
        return;
    }
    if (is_before(days.date, row.valid_from)) {
        check.standing = Standing::not_yet;
        check.why = fmt::format("In force from {}; the application was on {}.", row.valid_from,
                                text_of(days.date));
        return;
    }
    const bool is_about_use = row.applies_when == "restricted_use";
    if (!is_about_use && row.applies_when != "worker_protection") {
        return;
    }
    const auto& said = is_about_use ? request.restricted_use : request.worker_protection;
    const std::string_view matter =
        is_about_use ? "restricted-use products" : "places under the Worker Protection Standard";
    if (!said) {
        check.standing = Standing::unsettled;
        check.why = fmt::format(
            "It is about {}: say whether this application was ({}). Judged "
            "here as if it was.",
            matter, is_about_use ? "restricted_use" : "worker_protection");
    } else if (!*said) {
        check.standing = Standing::does_not_apply;
        check.why = fmt::format("It is about {} only.", matter);
    }
}

bool counts(const AuthorityCheck& check) {
    return check.standing == Standing::in_force || check.standing == Standing::unsettled;
}

/// What of the row was not read in the rule itself.
std::vector<std::string> doubts_of(const AuthorityRow& row) {
    std::vector<std::string> doubts;
    const auto doubt = [&](std::string_view what, std::string_view basis) {
        if (basis == "memory") {
            doubts.push_back(fmt::format("{} is from memory: verify it in the rule itself.", what));
        } else if (basis == "secondary") {
            doubts.push_back(
                fmt::format("{} is from a description by others: verify it in the "
                            "rule itself.",
                            what));
        } else if (basis == "partial") {
            doubts.push_back(
                fmt::format("{} could be read in part only: get it from the "
                            "authority.",
                            what));
        }
    };
    doubt("The field list", row.fields_basis);
    doubt("The deadline", row.deadline_basis);
    doubt("The retention period", row.keep_basis);
    return doubts;
}

void judge_days(const AuthorityRow& row, const RecordDays& days, AuthorityCheck& check,
                Notes& notes) {
    if (const auto deadline = detail::deadline_of(row, days)) {
        check.deadline = deadline->text;
        check.timeliness = detail::timeliness_of(deadline, days);
        notes.show([&] {
            return Step{fmt::format("Complete by, {}", row.key), deadline->expression,
                        deadline->text, std::string(source_title(row.deadline_source))};
        });
    }
    if (const auto keep = detail::keep_until(row, days)) {
        check.keep_until = text_of(*keep);
        notes.show([&] {
            return Step{fmt::format("Keep until, {}", row.key),
                        fmt::format("{} + {} years", text_of(days.end), row.keep_years),
                        text_of(*keep), std::string(source_title(row.keep_source))};
        });
    }
}

void remark_on_deadline(const AuthorityRow& row, const AuthorityCheck& check,
                        const RecordCheckRequest& request, Notes& notes) {
    const std::string source(source_title(row.deadline_source));
    if (check.timeliness == Timeliness::overdue) {
        notes.find(Severity::warning, "record_overdue",
                   fmt::format("{}: the record had to be complete by {} and is not. Complete it "
                               "now and write down why it is late.",
                               check.authority, *check.deadline),
                   source);
    } else if (check.timeliness == Timeliness::late) {
        notes.find(Severity::warning, "record_late",
                   fmt::format("{}: completed on {}, the last day was {}. Keep the reason with "
                               "the record.",
                               check.authority, *request.completed, *check.deadline),
                   source);
    }
    const bool counts_hours = !row.deadline.empty() && row.deadline.back() == 'h';
    if (counts_hours && !request.end_time) {
        notes.find(Severity::advice, "end_time_missing",
                   fmt::format("{} counts hours from the end of the application. Without end_time "
                               "they are counted from midnight at the start of that day.",
                               check.authority));
    }
}

void remark(const AuthorityRow& row, const AuthorityCheck& check, const RecordCheckRequest& request,
            Notes& notes) {
    if (check.standing == Standing::rescinded) {
        const std::string_view source = row.key == "7 CFR 110" ? source_title("R1") : "";
        notes.find(
            Severity::note, "rule_rescinded",
            fmt::format("{}: {} Rules of states, tribes and the EPA remain.", row.key, check.why),
            std::string(source));
        return;
    }
    if (!counts(check)) {
        return;
    }
    if (check.standing == Standing::unsettled) {
        notes.find(Severity::advice, "say_whether_it_applies",
                   fmt::format("{}: {}", row.key, check.why));
    }
    if (!check.to_verify.empty()) {
        notes.find(Severity::warning, "rule_to_verify",
                   fmt::format("{}: {}", row.key, fmt::join(check.to_verify, " ")));
    }
    remark_on_deadline(row, check, request, notes);
}

AuthorityCheck check_authority(const AuthorityRow& row, const RecordCheckRequest& request,
                               const RecordDays& days, Notes& notes) {
    AuthorityCheck check;
    check.authority = row.key;
    check.citation = row.citation;
    check.note = row.note;
    judge_standing(row, request, days, check);
    if (counts(check)) {
        check.to_verify = doubts_of(row);
        detail::judge_fields(request, detail::held_fields(request), check);
        judge_days(row, days, check, notes);
    }
    remark(row, check, request, notes);
    return check;
}

}  // namespace

Result<RecordCheckAnswer> record_check(const RecordCheckRequest& request, Notes& notes) {
    SWATHBOOK_TRY(authorities, find_authorities(request));
    SWATHBOOK_TRY(days, detail::read_days(request));
    SWATHBOOK_CHECK(check_field_names(request.fields));
    RecordCheckAnswer answer;
    answer.nothing_missing = true;
    for (const AuthorityRow* row : authorities) {
        const AuthorityCheck& check =
            answer.checks.emplace_back(check_authority(*row, request, days, notes));
        answer.nothing_missing = answer.nothing_missing && check.missing.empty();
        if (check.deadline &&
            (!answer.first_deadline || *check.deadline < *answer.first_deadline)) {
            answer.first_deadline = check.deadline;
        }
        if (check.keep_until && (!answer.keep_until || *check.keep_until > *answer.keep_until)) {
            answer.keep_until = check.keep_until;
        }
    }
    notes.find(Severity::note, "authority_is_yours",
               "Which authority applies is for you and your regulator to settle. The rule tables "
               "were made from excerpts and summaries, and rules change: before you rely on an "
               "answer, read the rule and the label in hand.");
    return answer;
}

}  // namespace swathbook::notebook
