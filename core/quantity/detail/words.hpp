#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <string_view>

#include "core/quantity/unit_table.hpp"

namespace swathbook::detail {

/// What a word does in a unit text.
enum class Role : std::uint8_t {
    atom,       ///< a unit: "gal"
    modifier,   ///< narrows the unit beside it: "fl", "US", "square", "a.e."
    per,        ///< "per", "por"
    join,       ///< "and", "plus", "y"
    of,         ///< "of", "de"
    by,         ///< "by", as in "% by volume"
    volume,     ///< "v", "vol", as in "% v/v"
    hundred,    ///< "ciento", as in "por ciento"
    stuff,      ///< what the unit is of, without effect: "water", "spray", "mix"
    range,      ///< "to": a range is not one value
    ambiguous,  ///< a spelling with two meanings; `choices` names them
};

/// What the modifiers around a unit said, as bits.
enum Flag : std::uint16_t {
    no_flag = 0,
    fluid = 1U << 0U,
    weight = 1U << 1U,
    us = 1U << 2U,
    imperial = 1U << 3U,
    square = 1U << 4U,
    cubic = 1U << 5U,
    delta = 1U << 6U,
    ingredient = 1U << 7U,
    acid = 1U << 8U,
    substance_noun = 1U << 9U,  ///< "ingredient", "equivalent": only beside active or acid
    product = 1U << 10U,
    ton = 1U << 11U,  ///< the bare word, to be narrowed by short, long or metric
    short_size = 1U << 12U,
    long_size = 1U << 13U,
    metric = 1U << 14U,
};

struct Spelling {
    std::string_view text;  ///< folded: lower case, no accents, no dots; at most 16 bytes
    Role role;
    Atom atom = Atom::each;         ///< when role is atom
    std::uint16_t flags = no_flag;  ///< of a modifier, or what the spelling implies ("floz")
    std::string_view choices{};     ///< when role is ambiguous
};

/// A word folded for look-up: lower case, accents and dots dropped, in two machine words.
struct WordKey {
    std::uint64_t low = 0;
    std::uint64_t high = 0;
    std::size_t length = 0;  ///< 0 when there is no word or it is longer than any spelling

    constexpr void add(unsigned char letter) {
        if (length < 8) {
            low |= static_cast<std::uint64_t>(letter) << (8U * length);
        } else if (length < 16) {
            high |= static_cast<std::uint64_t>(letter) << (8U * (length - 8));
        }
        ++length;
    }
    constexpr bool operator==(const WordKey&) const = default;
};

/// Whether a folded word is this one.
[[nodiscard]] constexpr bool is_key(const WordKey& key, std::string_view word) {
    WordKey wanted;
    for (const char letter : word) {
        wanted.add(static_cast<unsigned char>(letter));
    }
    return key == wanted;
}

/// @return null when the word is in no spelling
[[nodiscard]] const Spelling* find_word(const WordKey& key);
[[nodiscard]] std::span<const Spelling> all_spellings();

/// The spelling of a unit or modifier that needs the fewest letter changes, at most two in a long
/// word and one in a short one; empty when none is near. Slow: for error messages only.
[[nodiscard]] std::string_view nearest_spelling(std::string_view folded);

}  // namespace swathbook::detail
