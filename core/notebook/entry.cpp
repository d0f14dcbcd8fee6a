#include "core/notebook/entry.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/civil_date.hpp"
#include "core/notebook/body.hpp"

namespace swathbook::notebook {

namespace {

constexpr std::array<std::string_view, entry_kinds> words = {
    "sprayer", "tip_set", "operator",     "calibration", "landowner",
    "stand",   "setback", "product_card", "job",         "load",
    "pass",    "reading", "record",       "amendment",   "attachment"};

constexpr std::size_t longest_author = 200;

Result<void> check_author(std::string_view author) {
    const bool has_control = std::any_of(author.begin(), author.end(), [](char character) {
        return static_cast<unsigned char>(character) < 0x20 || character == 0x7f;
    });
    if (author.empty() || author.size() > longest_author || has_control || !is_utf8(author)) {
        return fail(ErrorCode::invalid_input, "author",
                    fmt::format("The author must be 1 to {} bytes of UTF-8 on one line; {} bytes "
                                "were given. Name the person who makes the entry.",
                                longest_author, author.size()));
    }
    return {};
}

Result<void> check_content(EntryKind kind, std::string_view author, std::string_view body) {
    SWATHBOOK_CHECK(check_author(author));
    if (kind == EntryKind::amendment) {
        SWATHBOOK_CHECK(check_amendment_body(body));
    }
    return {};
}

}  // namespace

std::string_view word_of(EntryKind kind) {
    const auto number = static_cast<std::size_t>(kind);
    return number >= 1 && number <= words.size() ? words[number - 1] : "unknown";
}

Result<EntryKind> parse_entry_kind(std::string_view word, std::string_view field) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (words[i] == word) {
            return static_cast<EntryKind>(i + 1);
        }
    }
    return fail(ErrorCode::invalid_input, field,
                fmt::format("\"{}\" is not a kind of entry. The kinds are {}.", word.substr(0, 40),
                            fmt::join(words, ", ")));
}

EntryView view_of(const Entry& entry) {
    return EntryView{entry.id,      entry.author, entry.device,   entry.made, entry.kind,
                     entry.subject, entry.body,   entry.previous, entry.hash};
}

Entry copy_of(const EntryView& view) {
    return Entry{view.id,      std::string(view.author), view.device,   view.made, view.kind,
                 view.subject, std::string(view.body),   view.previous, view.hash};
}

std::string canonical_text(const EntryView& entry) {
    std::string text;
    text.reserve(380 + entry.author.size() + entry.body.size());
    const auto line = [&text](std::string_view word, std::string_view rest) {
        text += word;
        text += ' ';
        text += rest;
        text += '\n';
    };
    line("swathbook", "entry 1");
    line("id", text_of(entry.id));
    line("author", entry.author);
    line("device", text_of(entry.device));
    line("made", text_of(entry.made));
    line("kind", word_of(entry.kind));
    line("subject", text_of(entry.subject));
    line("body", entry.body);
    line("previous", hex_of(entry.previous));
    return text;
}

Digest hash_of(const EntryView& entry) {
    return blake2b_256(canonical_text(entry));
}

Result<Entry> seal(const Draft& draft, const Uuid& device, const ChainHead& head,
                   std::int64_t now_ms, const std::array<std::uint8_t, 10>& random) {
    SWATHBOOK_TRY(body, canonical_body(draft.body));
    SWATHBOOK_CHECK(check_content(draft.kind, draft.author, body));
    SWATHBOOK_TRY(made, next_stamp(head.last, now_ms));
    Entry entry{make_uuid(made.milliseconds, random),
                draft.author,
                device,
                made,
                draft.kind,
                draft.subject,
                std::move(body),
                head.hash,
                {}};
    entry.hash = hash_of(view_of(entry));
    return entry;
}

Result<void> check_entry(const EntryView& entry, std::int64_t now_ms) {
    if (hash_of(entry) != entry.hash) {
        return fail(ErrorCode::corrupt_data, "hash",
                    fmt::format("Entry {} does not give its own hash: it was altered or damaged "
                                "after it was made. Fetch it again from the device that made it.",
                                text_of(entry.id)));
    }
    if (!is_canonical_body(entry.body)) {
        return fail(
            ErrorCode::invalid_input, "body",
            fmt::format("The body of entry {} is not a canonical JSON object.", text_of(entry.id)));
    }
    SWATHBOOK_CHECK(check_content(entry.kind, entry.author, entry.body));
    return check_not_ahead(entry.made, now_ms);
}

Result<void> check_amendment_body(std::string_view body) {
    const auto reason = text_of_json_string(field_of(body, "reason").value_or(""));
    if (!reason || reason->find_first_not_of(" \t\n") == std::string::npos) {
        return fail(ErrorCode::invalid_input, "reason",
                    "An amendment needs a reason. Say why the closed record is corrected.");
    }
    const auto date = text_of_json_string(field_of(body, "date").value_or(""));
    SWATHBOOK_CHECK(parse_civil_date(date.value_or(""), "date"));
    return {};
}

bool closes_record(std::string_view body) {
    return field_of(body, "closed") == "true";
}

}  // namespace swathbook::notebook
