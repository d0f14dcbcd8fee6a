#include <algorithm>
#include <array>

#include "core/language/catalogue.hpp"

namespace swathbook::language {
namespace {

constexpr bool is_digit(char letter) {
    return letter >= '0' && letter <= '9';
}

constexpr bool is_letter(char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z');
}

/// Words of units as the core prints them; the same in every language.
constexpr auto unit_words = std::to_array<std::string_view>(
    {"fl",  "oz",  "wt",  "gal", "qt",    "pt",  "L",     "mL",    "ac",   "ha",   "lb",   "g",
     "kg",  "mg",  "t",   "ft",  "in",    "yd",  "m",     "cm",    "mm",   "km",   "mi",   "mph",
     "psi", "bar", "kPa", "MPa", "Pa",    "s",   "min",   "h",     "d",    "degF", "degC", "delta",
     "deg", "K",   "a.i", "a.e", "v",     "w",   "ppm",   "CaCO3", "each", "per",  "sqrt", "x",
     "imp", "UTC", "ft2", "m2",  "cut",   "US",  "USgal", "CaO",   "ae",   "A",    "Na",   "Ca",
     "Mg",  "Fe",  "e",   "n",   "plant", "tsp", "tbsp"});

bool is_unit_word(std::string_view word) {
    return std::find(unit_words.begin(), unit_words.end(), word) != unit_words.end();
}

/// Calls for every run of letters, digits and points; false as soon as one is no unit and no
/// number.
bool only_units(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size()) {
        if (static_cast<unsigned char>(text[at]) >= 0x80) {
            return false;
        }
        if (!is_letter(text[at]) && !is_digit(text[at])) {
            ++at;
            continue;
        }
        const std::size_t begin = at;
        bool has_digit = false;
        while (at < text.size() && (is_letter(text[at]) || is_digit(text[at]) || text[at] == '.')) {
            has_digit = has_digit || is_digit(text[at]);
            ++at;
        }
        std::string_view word = text.substr(begin, at - begin);
        while (word.ends_with('.')) {
            word.remove_suffix(1);
        }
        if (!has_digit && !is_unit_word(word)) {
            return false;
        }
    }
    return true;
}

}  // namespace

bool is_formula(std::string_view text) {
    return only_units(text);
}

bool is_figure(std::string_view text) {
    constexpr std::size_t longest = 60;
    if (text.empty() || text.size() > longest) {
        return false;
    }
    const std::size_t first = text.find_first_not_of("+-~<>=(");
    return first != std::string_view::npos && is_digit(text[first]) && only_units(text);
}

}  // namespace swathbook::language
