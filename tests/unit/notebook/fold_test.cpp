#include "core/notebook/fold.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <map>

#include "core/notebook/body.hpp"
#include "tests/unit/notebook/entry_maker.hpp"

namespace swathbook::notebook {
namespace {

std::string value_of(const Fold& state, EntryKind kind, std::uint32_t subject,
                     std::string_view name) {
    const auto field = state.field(kind, subject_number(subject), name);
    return field ? std::string(field->value) : "absent";
}

TEST(Fold, the_last_writer_wins_field_by_field_and_both_values_stay) {
    Scribe scribe;
    const std::vector<Entry> entries = {
        scribe.write(1, april_ninth, EntryKind::stand, 1, R"({"name":"North","area":"12 ac"})"),
        scribe.write(2, april_ninth + 5, EntryKind::stand, 1, R"({"name":"North field"})"),
        scribe.write(1, april_ninth + 3, EntryKind::stand, 1,
                     R"({"area":"12.4 ac","name":"Upper"})")};
    const Fold state = fold(entries).value();
    EXPECT_EQ(value_of(state, EntryKind::stand, 1, "name"), "\"North field\"");
    EXPECT_EQ(value_of(state, EntryKind::stand, 1, "area"), "\"12.4 ac\"");
    EXPECT_EQ(state.body(EntryKind::stand, subject_number(1)),
              R"({"area":"12.4 ac","name":"North field"})");
    const auto history = history_of(entries, EntryKind::stand, subject_number(1), "name");
    ASSERT_EQ(history.size(), 3U);
    EXPECT_EQ(history[1].value, "\"Upper\"");
    EXPECT_EQ(history[2].value, "\"North field\"");
}

TEST(Fold, a_null_clears_a_field_and_a_later_value_sets_it_again) {
    Scribe scribe;
    std::vector<Entry> entries = {
        scribe.write(1, april_ninth, EntryKind::job, 1, R"({"note":"a"})"),
        scribe.write(1, april_ninth + 1, EntryKind::job, 1, R"({"note":null})")};
    EXPECT_EQ(value_of(fold(entries).value(), EntryKind::job, 1, "note"), "absent");
    entries.push_back(scribe.write(1, april_ninth + 2, EntryKind::job, 1, R"({"note":"b"})"));
    EXPECT_EQ(value_of(fold(entries).value(), EntryKind::job, 1, "note"), "\"b\"");
}

TEST(Fold, a_closed_record_is_exactly_what_its_closing_entry_says) {
    Scribe scribe;
    const std::vector<Entry> entries = {
        scribe.write(1, april_ninth, EntryKind::record, 1,
                     R"({"date":"2026-04-09","note":"draft"})"),
        scribe.write(1, april_ninth + 1, EntryKind::record, 1,
                     R"({"closed":true,"date":"2026-04-09","total_product":"5.6 gal"})"),
        scribe.write(2, april_ninth + 2, EntryKind::record, 1, R"({"total_product":"5.05 gal"})"),
        scribe.write(1, april_ninth + 3, EntryKind::amendment, 1,
                     R"({"date":"2026-04-12","reason":"jug count","total_product":"5.4 gal"})")};
    const Fold state = fold(entries).value();
    EXPECT_TRUE(state.is_closed(subject_number(1)));
    EXPECT_EQ(state.closed_by(subject_number(1))->id, entries[1].id);
    EXPECT_EQ(value_of(state, EntryKind::record, 1, "total_product"), "\"5.6 gal\"");
    EXPECT_EQ(value_of(state, EntryKind::record, 1, "note"), "absent");
    ASSERT_EQ(state.amendments(subject_number(1)).size(), 1U);
    EXPECT_EQ(state.amendments(subject_number(1))[0].author, "A. Field");
    ASSERT_EQ(state.conflicts().size(), 1U);
    EXPECT_EQ(state.conflicts()[0],
              (Conflict{ConflictKind::edit_after_close, subject_number(1), entries[2].id, {}}));
}

TEST(Fold, a_draft_of_another_device_that_the_closed_record_does_not_carry_is_reported) {
    Scribe scribe;
    const std::vector<Entry> entries = {
        scribe.write(2, april_ninth, EntryKind::record, 1,
                     R"({"wind_speed":"9 mph","date":"2026-04-09"})"),
        scribe.write(1, april_ninth + 1, EntryKind::record, 1,
                     R"({"closed":true,"date":"2026-04-09","wind_speed":"6 mph"})")};
    const Fold state = fold(entries).value();
    ASSERT_EQ(state.conflicts().size(), 1U);
    EXPECT_EQ(state.conflicts()[0], (Conflict{ConflictKind::draft_not_in_record, subject_number(1),
                                              entries[0].id, "wind_speed"}));
}

TEST(Fold, closing_twice_and_amending_an_open_record_are_reported) {
    Scribe scribe;
    const std::vector<Entry> entries = {
        scribe.write(1, april_ninth, EntryKind::record, 1, R"({"closed":true,"a":1})"),
        scribe.write(2, april_ninth + 1, EntryKind::record, 1, R"({"closed":true,"a":2})"),
        scribe.write(1, april_ninth + 2, EntryKind::amendment, 2,
                     R"({"date":"2026-04-12","reason":"x"})")};
    const Fold state = fold(entries).value();
    ASSERT_EQ(state.conflicts().size(), 2U);
    EXPECT_EQ(state.conflicts()[0].kind, ConflictKind::closed_twice);
    EXPECT_EQ(state.conflicts()[1].kind, ConflictKind::amends_open_record);
    EXPECT_EQ(value_of(state, EntryKind::record, 1, "a"), "1");
}

TEST(Fold, a_foreign_amendment_without_a_reason_is_kept_and_reported) {
    Scribe scribe;
    std::vector<Entry> entries = {
        scribe.write(1, april_ninth, EntryKind::record, 1, R"({"closed":true})"),
        scribe.write(1, april_ninth + 2, EntryKind::amendment, 1,
                     R"({"date":"2026-04-12","reason":"x"})")};
    entries[1].body = "{}";
    const Fold state = fold(entries).value();
    ASSERT_EQ(state.conflicts().size(), 1U);
    EXPECT_EQ(state.conflicts()[0].kind, ConflictKind::incomplete_amendment);
    EXPECT_EQ(state.amendments(subject_number(1)).size(), 1U);
}

TEST(Fold, a_damaged_body_is_named_and_adds_nothing) {
    Scribe scribe;
    Entry entry = scribe.write(1, april_ninth, EntryKind::stand, 1, R"({"a":1,"b":2})");
    entry.body = R"({"a":1,"b")";
    Fold state;
    const auto added = state.add(view_of(entry));
    ASSERT_FALSE(added.has_value());
    EXPECT_EQ(added.error().code, ErrorCode::corrupt_data);
    EXPECT_NE(added.error().detail.find(text_of(entry.id)), std::string::npos);
    EXPECT_TRUE(state.subjects(EntryKind::stand).empty());
}

TEST(Fold, reading_between_adds_gives_the_same_as_reading_once) {
    Scribe scribe;
    Fold state;
    std::vector<Entry> entries;
    for (std::uint32_t i = 0; i < 30; ++i) {
        entries.push_back(scribe.write(
            i % 3, april_ninth + i, i % 2 == 0 ? EntryKind::record : EntryKind::stand, i % 4,
            i == 20 ? R"({"closed":true})" : "{\"n\":" + std::to_string(i) + "}"));
        ASSERT_TRUE(state.add(view_of(entries.back())).has_value());
        state.settle();
        EXPECT_EQ(state_text(state), state_text(fold(entries).value()));
    }
}

// ---- Properties: the state depends on the set of entries alone. ----

/// Few devices, subjects, fields, times and values, so that everything collides.
rc::Gen<std::vector<Entry>> colliding_entries() {
    return rc::gen::mapcat(rc::gen::inRange<std::uint32_t>(0, 25), [](std::uint32_t count) {
        return rc::gen::map(
            rc::gen::container<std::vector<std::array<std::uint8_t, 6>>>(
                count, rc::gen::arbitrary<std::array<std::uint8_t, 6>>()),
            [](const std::vector<std::array<std::uint8_t, 6>>& dice) {
                std::vector<Entry> entries;
                for (std::uint32_t i = 0; i < dice.size(); ++i) {
                    const auto& d = dice[i];
                    constexpr std::array kinds = {EntryKind::stand, EntryKind::record,
                                                  EntryKind::record, EntryKind::amendment};
                    Entry entry;
                    entry.id = id_number(1, d[5] % 4 == 0 ? 0 : i);  // some ids collide
                    entry.author = d[0] % 2 == 0 ? "A. Field" : "B. Field";
                    entry.device = device_number(d[0] % 3);
                    entry.made =
                        HybridTime{april_ninth + d[1] % 4, static_cast<std::uint16_t>(d[1] % 2)};
                    entry.kind = kinds[d[2] % kinds.size()];
                    entry.subject = subject_number(d[3] % 2);
                    entry.body = "{\"a\":" + std::to_string(d[4] % 3);
                    entry.body += d[4] % 5 == 0 ? ",\"b\":null" : ",\"b\":\"x\"";
                    entry.body += d[5] % 6 == 0 ? ",\"closed\":true" : "";
                    entry.body +=
                        d[5] % 7 == 0 ? ",\"date\":\"2026-04-09\",\"reason\":\"r\"}" : "}";
                    entries.push_back(entry);
                }
                return entries;
            });
    });
}

std::string text_after(const std::vector<Entry>& entries) {
    return state_text(fold(entries).value());
}

std::vector<Entry> shuffled(std::vector<Entry> entries, std::uint32_t seed) {
    std::uint32_t state = seed | 1;
    for (std::size_t i = entries.size(); i > 1; --i) {
        state = state * 1664525 + 1013904223;
        std::swap(entries[i - 1], entries[(state >> 8) % i]);
    }
    return entries;
}

RC_GTEST_PROP(FoldProperty, every_order_gives_the_same_state, (std::uint32_t seed)) {
    const auto entries = *colliding_entries();
    RC_ASSERT(text_after(shuffled(entries, seed)) == text_after(entries));
}

RC_GTEST_PROP(FoldProperty, entries_given_again_change_nothing, (std::uint32_t seed)) {
    const auto entries = *colliding_entries();
    auto twice = shuffled(entries, seed);
    twice.insert(twice.end(), entries.begin(), entries.end());
    RC_ASSERT(text_after(twice) == text_after(entries));
}

RC_GTEST_PROP(FoldProperty, parts_merged_either_way_give_the_whole, (std::uint32_t seed)) {
    const auto entries = *colliding_entries();
    std::vector<Entry> left;
    std::vector<Entry> right;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const auto part = (seed >> (i % 16)) & 3;
        if (part != 0) {
            left.push_back(entries[i]);
        }
        if (part != 1) {
            right.push_back(entries[i]);  // some are on both sides
        }
    }
    auto left_first = left;
    left_first.insert(left_first.end(), right.begin(), right.end());
    auto right_first = right;
    right_first.insert(right_first.end(), left.begin(), left.end());
    RC_ASSERT(text_after(left_first) == text_after(entries));
    RC_ASSERT(text_after(right_first) == text_after(entries));
}

/// The slow obvious twin for things that are not records: a map from field to the greatest write.
RC_GTEST_PROP(FoldProperty, the_state_is_what_the_slow_twin_says, ()) {
    const auto entries = *colliding_entries();
    std::map<std::pair<Uuid, std::string>, std::pair<Stamp, std::string>> slow;
    for (const Entry& entry : entries) {
        BodyReader reader(entry.body);
        while (const auto field = reader.next()) {
            if (entry.kind == EntryKind::stand) {
                auto& winner = slow[{entry.subject, std::string(field->name)}];
                winner = std::max(winner, std::pair(Stamp{entry.made, entry.device, entry.id},
                                                    std::string(field->value)));
            }
        }
    }
    const Fold state = fold(entries).value();
    std::size_t seen = 0;
    for (const Uuid& subject : state.subjects(EntryKind::stand)) {
        for (const FieldNow& field : state.fields(EntryKind::stand, subject)) {
            const auto& winner = slow.at({subject, std::string(field.name)});
            RC_ASSERT(winner.first == field.stamp);
            RC_ASSERT(winner.second == field.value);
            ++seen;
        }
    }
    const auto not_null = std::count_if(
        slow.begin(), slow.end(), [](const auto& item) { return item.second.second != "null"; });
    RC_ASSERT(seen == static_cast<std::size_t>(not_null));
}

RC_GTEST_PROP(FoldProperty, later_entries_never_change_a_closed_record, ()) {
    auto entries = *colliding_entries();
    Scribe scribe;
    Entry closing =
        scribe.write(0, april_ninth - 1, EntryKind::record, 0, R"({"closed":true,"a":77})");
    entries.push_back(closing);
    const Fold state = fold(entries).value();
    RC_ASSERT(state.body(EntryKind::record, subject_number(0)) == closing.body);
    for (const Entry& entry : entries) {
        if (entry.kind == EntryKind::record && entry.subject == subject_number(0) &&
            entry.id != closing.id) {
            const auto& conflicts = state.conflicts();
            RC_ASSERT(std::any_of(conflicts.begin(), conflicts.end(), [&](const Conflict& c) {
                return c.record == subject_number(0) && c.entry == entry.id;
            }));
        }
    }
}

}  // namespace
}  // namespace swathbook::notebook
