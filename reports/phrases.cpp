#include "reports/phrases.hpp"

#include <array>
#include <cstddef>

#include "api/language/languages.hpp"

namespace swathbook::reports {
namespace {

struct Entry {
    std::string_view key;
    std::string_view english;
    std::string_view spanish;
};

constexpr std::array<Entry, phrase_count> catalogue = {{
#define SWATHBOOK_PHRASE(key, english, spanish) Entry{#key, english, spanish},
#include "reports/phrases.def"
}};

}  // namespace

std::string_view say(Language language, Phrase phrase) {
    const Entry& entry = catalogue[static_cast<std::size_t>(phrase)];
    return language == Language::spanish ? entry.spanish : entry.english;
}

std::string say(Language language, Phrase phrase, std::initializer_list<std::string_view> values) {
    const std::string_view pattern = say(language, phrase);
    std::string text;
    for (std::size_t at = 0; at < pattern.size(); ++at) {
        const bool is_place =
            pattern[at] == '{' && at + 2 < pattern.size() && pattern[at + 2] == '}';
        const std::size_t index = is_place ? static_cast<std::size_t>(pattern[at + 1] - '0') : 0;
        if (is_place && index < values.size()) {
            text += *(values.begin() + index);
            at += 2;
        } else {
            text += pattern[at];
        }
    }
    return text;
}

std::string in_language(Language language, std::string_view core_text) {
    const std::string_view code = language == Language::spanish ? api::spanish : api::english;
    return api::in_language(api::catalogue_of(code), core_text);
}

std::string_view key_of(Phrase phrase) {
    return catalogue[static_cast<std::size_t>(phrase)].key;
}

}  // namespace swathbook::reports
