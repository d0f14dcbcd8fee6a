#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"

namespace swathbook::language {

/// A sentence in another language, and whether all of it could be said there.
struct Said {
    std::string text;
    bool is_complete = true;  ///< false when the sentence, or a word in it, came through in English
};

/// What a place of a template may hold.
enum class Place : std::uint8_t {
    verbatim,  ///< {}   what a person typed, an amount: never translated
    figure,    ///< {n}  an amount; as verbatim, and begins with a digit or sign
    words,     ///< {w}  words of the catalogue, an amount, or a list of them
    names,     ///< {l}  what people typed, joined by "and": only the joining word is said anew
};

/// One line of a catalogue: an English sentence with places, and the same in the other language.
struct Template {
    std::vector<std::string_view> literals;  ///< one more than places; the first and last may be ""
    std::vector<Place> places;
    std::string_view foreign;  ///< {0}, {1} ... stand for the places, in any order
    std::size_t weight = 0;    ///< characters of the literals: the more, the closer the match
};

/// The sentences of one language beside their English.
///
/// The core composes English. A catalogue finds which template a sentence was made from, takes the
/// values out, says in the other language those that are words, and puts them into the template of
/// that language. A sentence it does not know comes back in English, whole: nobody loses a text.
class Catalogue {
public:
    /// Reads a catalogue: lines "English <TAB> other language"; lines beginning with # are remarks.
    /// @errors corrupt_data with the line, when a line has no tab, or its two sides do not name the
    /// same places
    [[nodiscard]] static Result<Catalogue> read(std::string text);

    /// @accuracy what was typed by a person comes back byte for byte
    [[nodiscard]] Said say(std::string_view english) const;

    /// Sentences it knows.
    [[nodiscard]] std::size_t size() const { return templates_.size(); }

private:
    struct Work;
    struct Search;

    [[nodiscard]] Result<void> add(std::string_view line, std::size_t number);
    void order();
    [[nodiscard]] Said say(std::string_view english, Work& work) const;
    [[nodiscard]] bool find(std::string_view english, int depth, bool is_strict, Work& work,
                            std::string& said) const;
    [[nodiscard]] bool in_words(std::string_view english, int depth, Work& work,
                                std::string& said) const;
    [[nodiscard]] bool in_parts(std::string_view english, int depth, Work& work,
                                std::string& said) const;
    [[nodiscard]] bool in_sentences(std::string_view english, int depth, Work& work,
                                    std::string& said) const;
    [[nodiscard]] std::string joining(std::string_view english, Work& work) const;
    [[nodiscard]] bool place(Search& search, std::size_t index, std::size_t at) const;
    [[nodiscard]] bool accept(Search& search, std::size_t index, std::string_view value) const;
    void consider(const Template& made, Search& search) const;

    // Views into the text live as long as the vector's one block, which moves with the catalogue.
    std::vector<char> text_;
    std::vector<Template> templates_;    // ordered by first literal
    std::vector<std::uint32_t> starts_;  // where templates of each first byte begin; 257 numbers
};

/// An amount as the core prints it: digits, signs and short units, nothing to translate.
[[nodiscard]] bool is_figure(std::string_view text);

/// A formula or an amount: no word in it that a reader would want said in another language.
[[nodiscard]] bool is_formula(std::string_view text);

}  // namespace swathbook::language
