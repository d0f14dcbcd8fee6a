#include "core/notebook/entry.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cstdio>

#include "core/notebook/chain.hpp"
#include "core/notebook/entry_text.hpp"
#include "tests/unit/notebook/entry_maker.hpp"

namespace swathbook::notebook {
namespace {

std::string first_word_of_command(const std::string& command) {
    std::string output;
    FILE* pipe = popen(command.c_str(), "r");
    for (int character = 0;
         pipe != nullptr && (character = fgetc(pipe)) != EOF && character != ' ';) {
        output.push_back(static_cast<char>(character));
    }
    if (pipe != nullptr) {
        pclose(pipe);
    }
    return output;
}

TEST(Entry, the_canonical_text_is_nine_lines) {
    Scribe scribe;
    const Entry entry = scribe.write(1, april_ninth, EntryKind::stand, 7,
                                     R"({"name":"North, old field","area":"12.4 ac"})");
    const std::string expected =
        "swathbook entry 1\n"
        "id " +
        text_of(entry.id) +
        "\n"
        "author A. Field\n"
        "device d0000000-0000-0000-0000-000000000001\n"
        "made 2026-04-09T14:03:05.000Z#00000\n"
        "kind stand\n"
        "subject 50000000-0000-0000-0000-000000000007\n"
        "body {\"area\":\"12.4 ac\",\"name\":\"North, old field\"}\n"
        "previous 0000000000000000000000000000000000000000000000000000000000000000\n";
    EXPECT_EQ(canonical_text(view_of(entry)), expected);
}

// The judge is b2sum of GNU coreutils, as docs/methods/notebook.md tells an outsider to use it.
TEST(Entry, an_outsider_gets_the_same_hash_with_b2sum) {
    Scribe scribe;
    static_cast<void>(scribe.write(1, april_ninth, EntryKind::stand, 7, R"({"name":"Loma"})"));
    const Entry entry =
        scribe.write(1, april_ninth, EntryKind::stand, 7, R"({"name":"Loma del ca\u00f1o"})");
    const std::string path = testing::TempDir() + "swathbook_entry_test.txt";
    FILE* file = fopen(path.c_str(), "wb");
    ASSERT_NE(file, nullptr);
    const std::string text = canonical_text(view_of(entry));
    fwrite(text.data(), 1, text.size(), file);
    fclose(file);
    EXPECT_EQ(first_word_of_command("b2sum -l 256 '" + path + "'"), hex_of(entry.hash));
    std::remove(path.c_str());
}

TEST(Entry, the_example_of_the_method_page_has_the_hash_it_states) {
    std::string page;
    FILE* file = fopen("docs/methods/notebook.md", "rb");
    ASSERT_NE(file, nullptr);
    for (int character = 0; (character = fgetc(file)) != EOF;) {
        page.push_back(static_cast<char>(character));
    }
    fclose(file);
    const std::size_t begin = page.find("swathbook entry 1\n");
    const std::size_t end = page.find("```", begin);
    ASSERT_NE(end, std::string::npos);
    const std::string text = page.substr(begin, end - begin);
    const std::string hash = hex_of(blake2b_256(text));
    EXPECT_NE(page.find("`" + hash + "`"), std::string::npos) << hash;
    const auto entries = read_entries(text + "hash " + hash + "\n\n");
    ASSERT_TRUE(entries.has_value()) << entries.error().detail;
    EXPECT_TRUE(check_entry(view_of(entries->front()), april_ninth).has_value());
}

TEST(Entry, a_changed_byte_anywhere_is_found) {
    Scribe scribe;
    const Entry entry = scribe.write(1, april_ninth, EntryKind::job, 7, R"({"rate":"2 qt/ac"})");
    EXPECT_TRUE(check_entry(view_of(entry), april_ninth).has_value());
    Entry rate = entry;
    rate.body = R"({"rate":"3 qt/ac"})";
    Entry author = entry;
    author.author = "B. Field";
    Entry subject = entry;
    subject.subject.bytes[15] ^= 1;
    Entry made = entry;
    made.made.counter = 1;
    Entry previous = entry;
    previous.previous[31] = 1;
    Entry kind = entry;
    kind.kind = EntryKind::load;
    for (const Entry& changed : {rate, author, subject, made, previous, kind}) {
        const auto checked = check_entry(view_of(changed), april_ninth);
        ASSERT_FALSE(checked.has_value());
        EXPECT_EQ(checked.error().code, ErrorCode::corrupt_data);
        EXPECT_EQ(checked.error().field, "hash");
    }
}

TEST(Entry, an_entry_from_the_far_future_is_refused_at_the_door) {
    Scribe scribe;
    const Entry entry = scribe.write(1, april_ninth, EntryKind::job, 7, "{}");
    EXPECT_EQ(check_entry(view_of(entry), april_ninth - 25 * 3600000LL).error().code,
              ErrorCode::out_of_range);
}

TEST(Entry, a_draft_without_author_or_with_a_line_break_in_it_is_refused) {
    for (const std::string& author :
         {std::string(), std::string("A\nB"), std::string(201, 'x'), std::string("\xff")}) {
        const auto entry = seal(Draft{author, EntryKind::job, subject_number(1), "{}"},
                                device_number(1), {}, april_ninth, {});
        ASSERT_FALSE(entry.has_value());
        EXPECT_EQ(entry.error().field, "author");
    }
}

TEST(Entry, an_amendment_needs_a_reason_and_a_date) {
    const auto attempt = [](const std::string& body) {
        return seal(Draft{"A. Field", EntryKind::amendment, subject_number(1), body},
                    device_number(1), {}, april_ninth, {});
    };
    EXPECT_TRUE(attempt(
        R"({"date":"2026-04-10","reason":"wind was read at the barn","wind_speed":"7 mph"})"));
    EXPECT_EQ(attempt(R"({"date":"2026-04-10"})").error().field, "reason");
    EXPECT_EQ(attempt(R"({"date":"2026-04-10","reason":"  "})").error().field, "reason");
    EXPECT_EQ(attempt(R"({"reason":"typing"})").error().field, "date");
    EXPECT_EQ(attempt(R"({"reason":"typing","date":"10 April"})").error().field, "date");
}

TEST(Entry, every_kind_has_a_word_that_reads_back) {
    for (int number = 1; number <= entry_kinds; ++number) {
        const auto kind = static_cast<EntryKind>(number);
        EXPECT_EQ(parse_entry_kind(word_of(kind), "kind").value(), kind);
    }
    EXPECT_EQ(parse_entry_kind("tractor", "kind").error().code, ErrorCode::invalid_input);
}

TEST(EntryText, entries_travel_as_text_and_come_back_the_same) {
    Scribe scribe;
    std::vector<Entry> entries;
    for (std::uint32_t i = 0; i < 20; ++i) {
        entries.push_back(scribe.write(i % 3, april_ninth + i, EntryKind::reading, i,
                                       R"({"wind":"7 mph","note":"line\nbreak"})"));
    }
    EXPECT_EQ(read_entries(write_entries(entries)).value(), entries);
    EXPECT_TRUE(read_entries("").value().empty());
}

RC_GTEST_PROP(EntryText, text_cut_or_changed_anywhere_never_reads_as_the_same_entries, ()) {
    Scribe scribe;
    const std::vector<Entry> entries = {
        scribe.write(1, april_ninth, EntryKind::job, 1, R"({"a":1})"),
        scribe.write(1, april_ninth, EntryKind::job, 1, R"({"a":2})")};
    std::string text = write_entries(entries);
    const auto place = *rc::gen::inRange<std::size_t>(0, text.size());
    if (*rc::gen::arbitrary<bool>()) {
        text.resize(place);
    } else {
        text[place] = static_cast<char>(text[place] ^ *rc::gen::inRange(1, 128));
    }
    const auto read = read_entries(text);
    if (!read) {
        RC_ASSERT(read.error().code == ErrorCode::corrupt_data);
        RC_ASSERT(read.error().field.substr(0, 5) == "line ");
        return;
    }
    // Upper-case hexadecimal digits are the one change of text that changes nothing.
    RC_ASSERT(*read == entries || read->size() < entries.size() || !verify_chains(*read).empty());
}

}  // namespace
}  // namespace swathbook::notebook
