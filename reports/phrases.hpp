#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <string_view>

#include "reports/document.hpp"

namespace swathbook::reports {

/// Every fixed phrase that is printed, by its key. The words stand in phrases.def, English and
/// Spanish beside each other. What a user typed (names, label text) is never translated.
enum class Phrase : std::uint16_t {
#define SWATHBOOK_PHRASE(key, english, spanish) key,
#include "reports/phrases.def"
};

inline constexpr int phrase_count = 0
#define SWATHBOOK_PHRASE(key, english, spanish) +1
#include "reports/phrases.def"
    ;

/// The phrase in a language.
[[nodiscard]] std::string_view say(Language language, Phrase phrase);

/// The phrase with {0}, {1} ... replaced; a place without a value stays as it is written.
[[nodiscard]] std::string say(Language language, Phrase phrase,
                              std::initializer_list<std::string_view> values);

/// A sentence that core says in English, in the language, by the catalogue of data/language.
/// English comes back for a sentence that is not in it: a worker must never lose a step.
[[nodiscard]] std::string in_language(Language language, std::string_view core_text);

/// The key as it stands in phrases.def, for tests and messages.
[[nodiscard]] std::string_view key_of(Phrase phrase);

}  // namespace swathbook::reports
