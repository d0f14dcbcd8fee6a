#include "core/notebook/chain.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>

#include "tests/unit/notebook/entry_maker.hpp"

namespace swathbook::notebook {
namespace {

std::vector<Entry> two_devices(std::uint32_t count) {
    Scribe scribe;
    std::vector<Entry> entries;
    for (std::uint32_t i = 0; i < count; ++i) {
        entries.push_back(scribe.write(i % 2, april_ninth + i, EntryKind::stand, i,
                                       "{\"n\":" + std::to_string(i) + "}"));
    }
    return entries;
}

std::vector<ChainProblem> problems_of(const std::vector<Entry>& entries) {
    return verify_chains(entries);
}

TEST(Chain, whole_chains_have_no_problem) {
    EXPECT_TRUE(problems_of(two_devices(40)).empty());
    EXPECT_TRUE(problems_of({}).empty());
}

TEST(Chain, an_altered_entry_is_named) {
    auto entries = two_devices(10);
    entries[4].body = "{\"n\":99}";
    const auto problems = problems_of(entries);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0], (ChainProblem{device_number(0), entries[4].id, ChainFault::altered}));
    EXPECT_NE(text_of(problems[0]).find(text_of(entries[4].id)), std::string::npos);
}

TEST(Chain, an_altered_entry_with_its_hash_made_anew_breaks_the_next_link) {
    auto entries = two_devices(10);
    entries[4].body = "{\"n\":99}";
    entries[4].hash = hash_of(view_of(entries[4]));
    const auto problems = problems_of(entries);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0],
              (ChainProblem{device_number(0), entries[6].id, ChainFault::missing_link}));
}

TEST(Chain, a_missing_entry_is_noticed_at_the_one_after_it) {
    auto entries = two_devices(10);
    const Uuid after = entries[5].id;
    entries.erase(entries.begin() + 3);
    const auto problems = problems_of(entries);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0], (ChainProblem{device_number(1), after, ChainFault::missing_link}));
}

TEST(Chain, two_entries_after_the_same_one_are_a_fork) {
    auto entries = two_devices(6);
    std::array<std::uint8_t, 10> random{};
    random[0] = 1;
    const Entry twin =
        seal(Draft{"A. Field", EntryKind::stand, subject_number(1), "{}"}, device_number(0),
             ChainHead{entries[2].made, entries[2].hash}, april_ninth + 50, random)
            .value();
    entries.push_back(twin);
    const auto problems = problems_of(entries);
    ASSERT_EQ(problems.size(), 2U);
    EXPECT_EQ(problems[0].fault, ChainFault::fork);
    EXPECT_EQ(problems[1].fault, ChainFault::fork);
}

TEST(Chain, a_stamp_that_does_not_grow_is_named) {
    auto entries = two_devices(4);
    entries[3].made = entries[1].made;
    entries[3].hash = hash_of(view_of(entries[3]));
    const auto problems = problems_of(entries);
    ASSERT_EQ(problems.size(), 1U);
    EXPECT_EQ(problems[0].fault, ChainFault::out_of_order);
}

TEST(Chain, one_id_with_two_contents_is_named) {
    auto entries = two_devices(4);
    Entry twin = entries[3];
    twin.body = "{}";
    twin.hash = hash_of(view_of(twin));
    entries.push_back(twin);
    const auto problems = problems_of(entries);
    const auto faults = [&](ChainFault fault) {
        return std::count_if(problems.begin(), problems.end(),
                             [&](const ChainProblem& p) { return p.fault == fault; });
    };
    EXPECT_EQ(faults(ChainFault::same_id), 1);  // both are one entry by name
    EXPECT_EQ(faults(ChainFault::fork), 1);
}

RC_GTEST_PROP(Chain, order_and_repetition_change_nothing, ()) {
    auto entries = two_devices(*rc::gen::inRange<std::uint32_t>(1, 30));
    const auto victim = *rc::gen::inRange<std::size_t>(0, entries.size());
    switch (*rc::gen::inRange(0, 3)) {
        case 0: entries[victim].author = "B. Field"; break;
        case 1: entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(victim)); break;
        default: break;
    }
    const auto expected = problems_of(entries);
    auto shuffled = entries;
    shuffled.insert(shuffled.end(), entries.begin(), entries.end());
    const auto seed = *rc::gen::arbitrary<std::uint32_t>();
    std::uint32_t state = seed | 1;
    for (std::size_t i = shuffled.size(); i > 1; --i) {
        state = state * 1664525 + 1013904223;
        std::swap(shuffled[i - 1], shuffled[state % i]);
    }
    RC_ASSERT(problems_of(shuffled) == expected);
}

}  // namespace
}  // namespace swathbook::notebook
