#include "core/notebook/record_check.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

#include "core/notebook/rule_tables.hpp"

namespace swathbook::notebook {
namespace {

RecordCheckRequest request_for(const std::string& authority) {
    RecordCheckRequest request;
    request.authorities = {authority};
    request.date = "2026-04-09";
    request.as_of = "2026-04-09";
    return request;
}

RecordCheckAnswer answer_to(const RecordCheckRequest& request) {
    Notes notes;
    return record_check(request, notes).value();
}

Error error_of(const RecordCheckRequest& request) {
    Notes notes;
    return record_check(request, notes).error();
}

bool has(const std::vector<RecordField>& fields, std::string_view key) {
    return std::any_of(fields.begin(), fields.end(),
                       [&](const RecordField& field) { return field.key == key; });
}

TEST(RecordCheck, every_authority_of_the_tables_can_be_asked_alone) {
    for (const AuthorityRow& row : authority_rows()) {
        auto request = request_for(std::string(row.key));
        const auto answer = answer_to(request);
        ASSERT_EQ(answer.checks.size(), 1U);
        EXPECT_EQ(answer.checks[0].authority, row.key);
        for (const RequirementRow& requirement : requirement_rows()) {
            if (requirement.authority == row.key) {
                request.fields.emplace_back(requirement.field);
            }
        }
        EXPECT_TRUE(answer_to(request).nothing_missing) << row.key;
    }
}

TEST(RecordCheck, the_hour_of_the_end_carries_into_a_deadline_in_hours) {
    auto request = request_for("40 CFR 170.311");
    request.worker_protection = true;
    request.end_time = "16:30";
    request.completed = "2026-04-10";
    request.completed_time = "16:30";
    request.as_of = "2026-04-11";
    EXPECT_EQ(answer_to(request).checks[0].deadline, "2026-04-10 16:30");
    EXPECT_EQ(answer_to(request).checks[0].timeliness, Timeliness::on_time);
    request.completed_time = "16:31";
    EXPECT_EQ(answer_to(request).checks[0].timeliness, Timeliness::late);
    EXPECT_FALSE(answer_to(request).checks[0].to_verify.empty());  // its final text was not read
}

TEST(RecordCheck, worker_protection_fields_are_missing_only_where_the_standard_applies) {
    auto request = request_for("40 CFR 170.311");
    EXPECT_EQ(answer_to(request).checks[0].standing, Standing::unsettled);
    request.worker_protection = false;
    EXPECT_EQ(answer_to(request).checks[0].standing, Standing::does_not_apply);
    EXPECT_TRUE(answer_to(request).checks[0].missing.empty());
    request.worker_protection = true;
    EXPECT_TRUE(has(answer_to(request).checks[0].missing, "active_ingredients"));
    EXPECT_TRUE(has(answer_to(request).checks[0].to_decide, "copies_given"));
}

TEST(RecordCheck, of_two_options_the_one_nearest_to_complete_is_asked_for) {
    auto request = request_for("Wisconsin ATCP 29");
    request.fields = {"rate_product"};
    const auto check = answer_to(request).checks[0];
    EXPECT_TRUE(has(check.missing, "area_treated"));
    EXPECT_FALSE(has(check.missing, "concentration"));
    request.fields = {"rate_product", "area_treated"};
    EXPECT_FALSE(has(answer_to(request).checks[0].missing, "total_product"));
}

TEST(RecordCheck, commodity_fields_follow_what_is_said) {
    auto request = request_for("California 3 CCR 6624");
    EXPECT_TRUE(has(answer_to(request).checks[0].to_decide, "site_id_operator_id"));
    request.commodity = true;
    EXPECT_TRUE(has(answer_to(request).checks[0].missing, "site_id_operator_id"));
    request.commodity = false;
    EXPECT_FALSE(has(answer_to(request).checks[0].missing, "site_id_operator_id"));
    EXPECT_FALSE(has(answer_to(request).checks[0].to_decide, "site_id_operator_id"));
}

TEST(RecordCheck, a_night_job_counts_from_the_day_it_ended) {
    auto request = request_for("Wisconsin ATCP 29");
    request.end_date = "2026-04-10";
    request.as_of = "2026-04-10";
    EXPECT_EQ(answer_to(request).checks[0].deadline, "2026-04-10");
    EXPECT_EQ(answer_to(request).checks[0].timeliness, Timeliness::open);
    EXPECT_EQ(answer_to(request).keep_until, "2028-04-10");
}

TEST(RecordCheck, the_longest_retention_and_the_first_deadline_govern) {
    auto request = request_for("Washington");
    request.authorities.emplace_back("Texas");
    request.authorities.emplace_back("Minnesota 18B.37");
    EXPECT_EQ(answer_to(request).keep_until, "2033-04-09");
    EXPECT_EQ(answer_to(request).first_deadline, "2026-04-09");
}

TEST(RecordCheck, dates_that_cannot_be_are_refused_by_name) {
    auto request = request_for("Texas");
    request.date = "2026-02-30";
    EXPECT_EQ(error_of(request).field, "date");
    request = request_for("Texas");
    request.end_date = "2026-04-08";
    EXPECT_EQ(error_of(request).code, ErrorCode::inconsistent);
    EXPECT_EQ(error_of(request).field, "end_date");
    request = request_for("Texas");
    request.end_time = "24:00";
    EXPECT_EQ(error_of(request).field, "end_time");
    request = request_for("Texas");
    request.completed = "2026-04-10";
    EXPECT_EQ(error_of(request).field, "completed");
    request = request_for("Texas");
    request.as_of = "";
    EXPECT_EQ(error_of(request).field, "as_of");
    request = request_for("Texas");
    request.authorities.clear();
    EXPECT_EQ(error_of(request).field, "authorities");
    request.authorities = {"Texas", "TEXAS"};
    EXPECT_EQ(error_of(request).field, "authorities[1]");
}

TEST(RecordCheck, labels_are_in_both_languages) {
    std::set<std::string_view> spanish;
    for (const FieldRow& row : field_rows()) {
        EXPECT_FALSE(row.label_en.empty());
        EXPECT_FALSE(row.label_es.empty());
        EXPECT_TRUE(spanish.insert(row.label_es).second) << row.label_es;
    }
    EXPECT_EQ(spanish.size(), 60U);
}

TEST(RecordCheck, the_working_shows_the_dates_put_in) {
    auto request = request_for("Minnesota 18B.37");
    Notes notes(UnitSystem::us, true);
    ASSERT_TRUE(record_check(request, notes).has_value());
    ASSERT_GE(notes.steps().size(), 2U);
    EXPECT_EQ(notes.steps()[0].expression, "2026-04-09 + 5 days");
    EXPECT_EQ(notes.steps()[0].result, "2026-04-14");
    EXPECT_EQ(notes.steps()[1].expression, "2026-04-09 + 5 years");
}

RC_GTEST_PROP(RecordCheck, holding_more_never_leaves_more_missing, ()) {
    const auto rows = authority_rows();
    auto request =
        request_for(std::string(rows[*rc::gen::inRange<std::size_t>(0, rows.size())].key));
    request.restricted_use = *rc::gen::arbitrary<bool>();
    request.commodity = *rc::gen::arbitrary<bool>();
    const auto fields = field_rows();
    const auto held = *rc::gen::container<std::vector<std::size_t>>(
        rc::gen::inRange<std::size_t>(0, fields.size()));
    for (const std::size_t i : held) {
        request.fields.emplace_back(fields[i].key);
    }
    const auto before = answer_to(request).checks[0].missing.size();
    request.fields.emplace_back(fields[*rc::gen::inRange<std::size_t>(0, fields.size())].key);
    RC_ASSERT(answer_to(request).checks[0].missing.size() <= before);
}

}  // namespace
}  // namespace swathbook::notebook
