#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"

namespace swathbook::notebook {

/// Whether a rule counts for this application on the day of asking.
enum class Standing : std::uint8_t {
    in_force,
    unsettled,       ///< it depends on something the request does not say; judged as if in force
    does_not_apply,  ///< the rule is about another kind of application
    not_yet,         ///< the rule starts after the application
    rescinded,       ///< the rule has ended: it asks for nothing today
};

/// How the record stands against a deadline.
enum class Timeliness : std::uint8_t {
    on_time,
    late,         ///< completed after the deadline
    open,         ///< not completed, the deadline has not passed
    overdue,      ///< not completed, the deadline has passed
    no_deadline,  ///< none is known for this authority
};

struct RecordCheckRequest {
    std::vector<std::string> authorities;   ///< as named in data/rules/authorities.tsv, any case
    std::string date;                       ///< day of the application, year-month-day
    std::optional<std::string> end_date;    ///< day it ended, when another
    std::optional<std::string> end_time;    ///< local time it ended, "16:30"
    std::vector<std::string> fields;        ///< keys of the fields the record holds
    std::optional<bool> restricted_use;     ///< a restricted-use product was applied
    std::optional<bool> worker_protection;  ///< the Worker Protection Standard covers the place
    std::optional<bool> commodity;          ///< grown as an agricultural commodity
    std::optional<std::string> completed;   ///< day the record was completed
    std::optional<std::string> completed_time;
    std::string as_of;  ///< day of asking: rules are in force or not on this day
};

/// One field of a record as one authority wants it.
struct RecordField {
    std::string key;
    std::string label;
    std::string label_es;
    std::string note;    ///< in what form, or in what case
    std::string source;  ///< publication the row rests on
};

struct AuthorityCheck {
    std::string authority;
    std::string citation;
    Standing standing = Standing::in_force;
    std::string why;  ///< why it stands so, when it is not plainly in force
    std::vector<RecordField> missing;
    std::vector<RecordField> to_decide;  ///< absent, and wanted only in the case the note states
    std::vector<RecordField> advised;    ///< absent, and recommended
    std::vector<RecordField> present;
    std::optional<std::string> deadline;  ///< last day, with the time when it counts in hours
    Timeliness timeliness = Timeliness::no_deadline;
    std::optional<std::string> keep_until;
    std::vector<std::string> to_verify;  ///< what rests on memory or on a secondary description
    std::string note;
};

struct RecordCheckAnswer {
    std::vector<AuthorityCheck> checks;         ///< in the order asked
    bool nothing_missing = false;               ///< no required field is absent for any authority
    std::optional<std::string> first_deadline;  ///< the earliest of the deadlines
    std::optional<std::string> keep_until;      ///< the latest of the retention days
};

/// Judges a record against the dated rule tables, authority by authority: what is missing, by when
/// it had to be complete, and how long it must be kept.
///
///   deadline   = end of the application + days or hours of the rule
///   keep_until = day of the application + years of the rule
///
/// @valid  the tables hold what could be read of each rule; what rests on memory is listed in
///         to_verify, and an authority whose text was read in part says so in a finding
/// @errors not_found{authorities[i]} for an authority that is not in the tables;
///         invalid_input{authorities|fields[i]|date|...} for names and dates that are none;
///         inconsistent{end_date|completed} for days in an impossible order
/// @source data/rules/ (each row names its publication)
/// @cases  tests/cases/records/
[[nodiscard]] Result<RecordCheckAnswer> record_check(const RecordCheckRequest& request,
                                                     Notes& notes);

}  // namespace swathbook::notebook
