#include "core/notebook/record_check.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

template <>
struct Description<notebook::Standing> {
    static constexpr std::string_view name = "Standing";
    static Choices<notebook::Standing> choices() {
        using notebook::Standing;
        return {{Standing::in_force, "in_force", "The rule counts."},
                {Standing::unsettled, "unsettled",
                 "It depends on something not said; judged as if it counts."},
                {Standing::does_not_apply, "does_not_apply",
                 "The rule is about another kind of application."},
                {Standing::not_yet, "not_yet", "The rule starts after the application."},
                {Standing::rescinded, "rescinded", "The rule has ended and asks for nothing."}};
    }
};

template <>
struct Description<notebook::Timeliness> {
    static constexpr std::string_view name = "Timeliness";
    static Choices<notebook::Timeliness> choices() {
        using notebook::Timeliness;
        return {
            {Timeliness::on_time, "on_time", "Completed by the deadline."},
            {Timeliness::late, "late", "Completed after the deadline."},
            {Timeliness::open, "open", "Not completed; the deadline has not passed."},
            {Timeliness::overdue, "overdue", "Not completed; the deadline has passed."},
            {Timeliness::no_deadline, "no_deadline", "No deadline is known for this authority."}};
    }
};

template <>
struct Description<notebook::RecordCheckRequest> {
    static constexpr std::string_view name = "RecordCheckRequest";
    static constexpr auto fields() {
        using T = notebook::RecordCheckRequest;
        return std::array{
            field<&T::authorities>("authorities",
                                   "Whose rules to judge by, as named in the rule tables: \"40 CFR "
                                   "171.303\", \"Texas\", \"good practice\".")
                .required(),
            field<&T::date>("date", "Day of the application, year-month-day.").required(),
            field<&T::end_date>("end_date", "Day the application ended, when it was another."),
            field<&T::end_time>("end_time", "Local time the application ended, \"16:30\"."),
            field<&T::fields>("fields", "Keys of the fields the record holds."),
            field<&T::restricted_use>("restricted_use",
                                      "Whether a restricted-use product was applied."),
            field<&T::worker_protection>(
                "worker_protection", "Whether the Worker Protection Standard covers the place."),
            field<&T::commodity>("commodity", "Whether the site grows an agricultural commodity."),
            field<&T::completed>("completed", "Day the record was completed."),
            field<&T::completed_time>("completed_time",
                                      "Local time the record was completed, \"17:15\"."),
            field<&T::as_of>("as_of", "Day of asking; rules count or not on this day.").required()};
    }
};

template <>
struct Description<notebook::RecordField> {
    static constexpr std::string_view name = "RecordField";
    static constexpr auto fields() {
        using T = notebook::RecordField;
        return std::array{
            field<&T::key>("key", "Name of the field for programs.").in_full(),
            field<&T::label>("label", "Label in English."),
            field<&T::label_es>("label_es", "Label in Spanish.").labelled("In Spanish"),
            field<&T::note>("note", "In what form, or in what case, it is wanted.").spoken(),
            field<&T::source>("source", "Publication that says so.")};
    }
};

template <>
struct Description<notebook::AuthorityCheck> {
    static constexpr std::string_view name = "AuthorityCheck";
    static constexpr auto fields() {
        using T = notebook::AuthorityCheck;
        return std::array{
            field<&T::authority>("authority", "Whose rule it is."),
            field<&T::citation>("citation", "Where the rule stands."),
            field<&T::standing>("standing", "Whether the rule counts here."),
            field<&T::why>("why", "Why it stands so; empty when it plainly counts.").spoken(),
            field<&T::missing>("missing", "Required fields the record does not hold."),
            field<&T::to_decide>("to_decide",
                                 "Absent fields wanted only in the case their note states.")
                .labelled("For you to decide"),
            field<&T::advised>("advised", "Absent fields that are recommended."),
            field<&T::present>("present", "Wanted fields the record holds."),
            field<&T::deadline>("deadline", "Last day (and time) to complete the record."),
            field<&T::timeliness>("timeliness", "How the record stands against it."),
            field<&T::keep_until>("keep_until", "Day until which the record must be kept."),
            field<&T::to_verify>("to_verify", "What rests on memory or on a description by others.")
                .spoken()
                .labelled("To verify"),
            field<&T::note>("note", "What else is known about the rule.").spoken()};
    }
};

template <>
struct Description<notebook::RecordCheckAnswer> {
    static constexpr std::string_view name = "RecordCheckAnswer";
    static constexpr auto fields() {
        using T = notebook::RecordCheckAnswer;
        return std::array{
            field<&T::checks>("checks", "One judgement per authority, in the order asked."),
            field<&T::nothing_missing>("nothing_missing", "Whether no required field is absent."),
            field<&T::first_deadline>("first_deadline", "The earliest of the deadlines."),
            field<&T::keep_until>("keep_until", "The latest of the retention days.")};
    }
};

Operation record_check_operation() {
    return operation<&notebook::record_check>(
        "record-check",
        "What a record still lacks for each authority, its deadline, and how long to keep it.",
        {7});
}

}  // namespace swathbook::api
