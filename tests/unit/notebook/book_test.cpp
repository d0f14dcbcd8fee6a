#include "core/notebook/book.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/notebook/permission.hpp"
#include "tests/unit/notebook/entry_maker.hpp"

namespace swathbook::notebook {
namespace {

Draft draft(EntryKind kind, std::uint32_t subject, const std::string& body) {
    return Draft{"A. Field", kind, subject_number(subject), body};
}

std::vector<Entry> season(Scribe& scribe) {
    return {scribe.write(1, april_ninth, EntryKind::stand, 1, R"({"name":"North"})"),
            scribe.write(2, april_ninth + 9, EntryKind::record, 1, R"({"note":"draft"})"),
            scribe.write(1, april_ninth + 1, EntryKind::record, 1, R"({"closed":true,"a":1})"),
            scribe.write(1, april_ninth + 2, EntryKind::stand, 1, R"({"name":null})"),
            scribe.write(2, april_ninth + 12, EntryKind::record, 1, R"({"a":2})")};
}

TEST(Book, the_end_of_the_chain_and_the_state_are_the_same_in_every_order) {
    Scribe scribe;
    std::vector<Entry> entries = season(scribe);
    const std::string wanted = state_text(fold(entries).value());
    std::sort(entries.begin(), entries.end(),
              [](const Entry& a, const Entry& b) { return a.id < b.id; });
    do {
        Book book(device_number(1));
        for (const Entry& entry : entries) {
            EXPECT_TRUE(book.add(view_of(entry), april_ninth).value());
            EXPECT_FALSE(book.add(view_of(entry), april_ninth).value());
            (void)book.state();  // settling between entries changes nothing
        }
        EXPECT_EQ(book.size(), entries.size());
        EXPECT_EQ(state_text(book.state()), wanted);
        EXPECT_EQ(book.head().last, (HybridTime{april_ninth + 12, 0}));
        const auto last = std::find_if(entries.begin(), entries.end(), [](const Entry& entry) {
            return entry.made == HybridTime{april_ninth + 2, 0};
        });
        EXPECT_EQ(book.head().hash, last->hash);
    } while (std::next_permutation(entries.begin(), entries.end(),
                                   [](const Entry& a, const Entry& b) { return a.id < b.id; }));
}

TEST(Book, another_entry_with_a_known_id_is_a_conflict) {
    Scribe scribe;
    Entry entry = scribe.write(1, april_ninth, EntryKind::stand, 1, R"({"name":"North"})");
    Book book(device_number(1));
    ASSERT_TRUE(book.add(view_of(entry), april_ninth).value());
    entry.body = R"({"name":"South"})";
    EXPECT_EQ(book.add(view_of(entry), april_ninth).error().code, ErrorCode::corrupt_data);
    entry.hash = hash_of(view_of(entry));
    EXPECT_EQ(book.add(view_of(entry), april_ninth).error().code, ErrorCode::conflict);
    EXPECT_EQ(book.size(), 1U);
}

TEST(Book, sealing_counts_the_drafts_before_and_adds_none) {
    Book book(device_number(1));
    const std::vector<RandomBytes> random(2);
    const std::string amendment = R"({"date":"2026-04-12","reason":"count"})";
    const std::vector<Draft> amended{draft(EntryKind::record, 1, R"({"closed":true})"),
                                     draft(EntryKind::amendment, 1, amendment)};
    const auto sealed = book.seal(amended, april_ninth, random).value();
    EXPECT_EQ(sealed[1].previous, sealed[0].hash);
    EXPECT_LT(sealed[0].made, sealed[1].made);
    EXPECT_EQ(book.size(), 0U);
    EXPECT_EQ(book.head().hash, Digest{});
    const std::vector<Draft> changed{draft(EntryKind::record, 1, R"({"closed":true})"),
                                     draft(EntryKind::record, 1, R"({"note":"late"})")};
    EXPECT_EQ(book.seal(changed, april_ninth, random).error().code, ErrorCode::not_permitted);
}

TEST(Permission, only_records_and_amendments_ask_whether_the_record_is_closed) {
    const Uuid record = subject_number(1);
    EXPECT_TRUE(check_permitted(EntryKind::record, record, false));
    EXPECT_TRUE(check_permitted(EntryKind::amendment, record, true));
    EXPECT_TRUE(check_permitted(EntryKind::stand, record, true));
    EXPECT_EQ(check_permitted(EntryKind::record, record, true).error().field, "subject");
    EXPECT_EQ(check_permitted(EntryKind::amendment, record, false).error().code,
              ErrorCode::not_permitted);
}

TEST(Conflict, says_in_one_sentence_what_was_not_applied) {
    for (const ConflictKind kind :
         {ConflictKind::edit_after_close, ConflictKind::closed_twice,
          ConflictKind::draft_not_in_record, ConflictKind::amends_open_record,
          ConflictKind::incomplete_amendment}) {
        const std::string text = text_of(Conflict{kind, subject_number(1), {}, "total_product"});
        EXPECT_TRUE(text.starts_with("Entry 0000") && text.ends_with(".")) << text;
        EXPECT_EQ(text.find("total_product") != std::string::npos,
                  kind == ConflictKind::draft_not_in_record);
    }
}

}  // namespace
}  // namespace swathbook::notebook
