#include "core/notebook/entry_text.hpp"

#include <fmt/format.h>

#include <optional>

namespace swathbook::notebook {

namespace {

/// Hands out the lines of a text and remembers where it is.
class Lines {
public:
    explicit Lines(std::string_view text) : text_(text) {}

    [[nodiscard]] bool at_end() const { return text_.empty(); }
    [[nodiscard]] tl::unexpected<Error> refuse(std::string_view wanted) const {
        return fail(ErrorCode::corrupt_data, fmt::format("line {}", number_),
                    fmt::format("Line {} of the entries is not {}. The text is damaged or cut "
                                "short; export it again.",
                                number_, wanted));
    }
    /// The next line without its line feed; nothing when no line feed ends it.
    std::optional<std::string_view> next() {
        ++number_;
        const std::size_t end = text_.find('\n');
        if (end == std::string_view::npos) {
            return std::nullopt;
        }
        const std::string_view line = text_.substr(0, end);
        text_.remove_prefix(end + 1);
        return line;
    }
    /// The rest of a line that begins with `word` and a space.
    std::optional<std::string_view> after(std::string_view word) {
        const auto line = next();
        if (!line || line->size() <= word.size() || line->substr(0, word.size()) != word ||
            (*line)[word.size()] != ' ') {
            return std::nullopt;
        }
        return line->substr(word.size() + 1);
    }

private:
    std::string_view text_;
    std::size_t number_ = 0;
};

/// Reads "word value" with a parser of the value; any fault becomes a fault of that line.
template <class Parse, class Value>
Result<void> read_line(Lines& lines, std::string_view word, Parse parse, Value& value) {
    const auto rest = lines.after(word);
    if (!rest) {
        return lines.refuse(fmt::format("\"{} ...\"", word));
    }
    auto parsed = parse(*rest, word);
    if (!parsed) {
        return lines.refuse(fmt::format("a valid \"{}\"", word));
    }
    value = std::move(parsed).value();
    return {};
}

Result<std::string> as_is(std::string_view text, std::string_view) {
    return std::string(text);
}

Result<Entry> read_entry(Lines& lines) {
    if (lines.next() != "swathbook entry 1") {
        return lines.refuse("\"swathbook entry 1\"");
    }
    Entry entry;
    SWATHBOOK_CHECK(read_line(lines, "id", parse_uuid, entry.id));
    SWATHBOOK_CHECK(read_line(lines, "author", as_is, entry.author));
    SWATHBOOK_CHECK(read_line(lines, "device", parse_uuid, entry.device));
    SWATHBOOK_CHECK(read_line(lines, "made", parse_hybrid_time, entry.made));
    SWATHBOOK_CHECK(read_line(lines, "kind", parse_entry_kind, entry.kind));
    SWATHBOOK_CHECK(read_line(lines, "subject", parse_uuid, entry.subject));
    SWATHBOOK_CHECK(read_line(lines, "body", as_is, entry.body));
    SWATHBOOK_CHECK(read_line(lines, "previous", parse_digest, entry.previous));
    SWATHBOOK_CHECK(read_line(lines, "hash", parse_digest, entry.hash));
    if (lines.next() != "") {
        return lines.refuse("empty, as after each entry");
    }
    return entry;
}

}  // namespace

std::string write_entries(std::span<const Entry> entries) {
    std::string text;
    for (const Entry& entry : entries) {
        text += canonical_text(view_of(entry));
        text += fmt::format("hash {}\n\n", hex_of(entry.hash));
    }
    return text;
}

Result<std::vector<Entry>> read_entries(std::string_view text) {
    Lines lines(text);
    std::vector<Entry> entries;
    while (!lines.at_end()) {
        SWATHBOOK_TRY(entry, read_entry(lines));
        entries.push_back(std::move(entry));
    }
    return entries;
}

}  // namespace swathbook::notebook
