#include "core/quantity/detail/hint.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "core/quantity/detail/amount_text.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::detail {
namespace {

/// A number, a word or one sign, in small letters.
struct Token {
    std::string low;
    std::size_t from = 0;
    std::size_t to = 0;
    [[nodiscard]] bool is_number() const { return low[0] >= '0' && low[0] <= '9'; }
};

enum class Glyph : unsigned char { space, digit, letter, sign };

Glyph glyph_of(char letter, bool in_number) {
    if (letter == ' ' || letter == '\t') {
        return Glyph::space;
    }
    if ((letter >= '0' && letter <= '9') || (in_number && letter == '.')) {
        return Glyph::digit;
    }
    const char small = static_cast<char>(letter | 0x20);
    const bool is_letter =
        (small >= 'a' && small <= 'z') || static_cast<unsigned char>(letter) > 127;
    return is_letter ? Glyph::letter : Glyph::sign;
}

std::vector<Token> tokens_of(std::string_view text) {
    std::vector<Token> tokens;
    Glyph before = Glyph::space;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const Glyph glyph = glyph_of(text[i], before == Glyph::digit);
        if (glyph != Glyph::space) {
            if (glyph != before || glyph == Glyph::sign) {
                tokens.push_back({{}, i, i});
            }
            const bool is_capital = text[i] >= 'A' && text[i] <= 'Z';
            tokens.back().low += is_capital ? static_cast<char>(text[i] | 0x20) : text[i];
            tokens.back().to = i + 1;
        }
        before = glyph;
    }
    return tokens;
}

enum class Meaning : unsigned char { month, year, often, which_acre, ordinal, gravity };

struct WordMeaning {
    std::string_view word;
    Meaning meaning;
};
constexpr auto meanings = std::to_array<WordMeaning>({
    {"month", Meaning::month},
    {"months", Meaning::month},
    {"mo", Meaning::month},
    {"mos", Meaning::month},
    {"mes", Meaning::month},
    {"meses", Meaning::month},
    {"year", Meaning::year},
    {"years", Meaning::year},
    {"yr", Meaning::year},
    {"yrs", Meaning::year},
    {"annum", Meaning::year},
    {"a\u00f1o", Meaning::year},
    {"a\u00f1os", Meaning::year},
    {"season", Meaning::often},
    {"application", Meaning::often},
    {"treated", Meaning::which_acre},
    {"broadcast", Meaning::which_acre},
    {"sprayed", Meaning::which_acre},
    {"th", Meaning::ordinal},
    {"ths", Meaning::ordinal},
    {"rd", Meaning::ordinal},
    {"nd", Meaning::ordinal},
    {"st", Meaning::ordinal},
    {"sg", Meaning::gravity},
    {"gravity", Meaning::gravity},
});

bool means(const Token& token, Meaning meaning) {
    return std::any_of(meanings.begin(), meanings.end(), [&](const WordMeaning& row) {
        return row.meaning == meaning && row.word == token.low;
    });
}

std::string_view trimmed(std::string_view text) {
    const std::size_t first = text.find_first_not_of(' ');
    return first == std::string_view::npos
               ? std::string_view{}
               : text.substr(first, text.find_last_not_of(' ') - first + 1);
}

/// A text being refused, and what is wanted in its place.
struct Refused {
    std::string_view text;
    std::vector<Token> tokens;
    const KindInfo* info;
    Problem problem;

    [[nodiscard]] bool wants(Dimension dimension) const {
        return info != nullptr && info->dimension == dimension;
    }
    [[nodiscard]] bool wants_share() const {
        return info == nullptr || wants(Dimension::ratio) || wants(Dimension::volume_per_volume);
    }
    [[nodiscard]] std::size_t find(std::string_view word) const {
        const auto found = std::find_if(tokens.begin(), tokens.end(),
                                        [&](const Token& token) { return token.low == word; });
        return static_cast<std::size_t>(found - tokens.begin());
    }
    [[nodiscard]] bool has(std::string_view word) const { return find(word) < tokens.size(); }
    [[nodiscard]] std::size_t find(Meaning meaning) const {
        const auto found = std::find_if(tokens.begin(), tokens.end(),
                                        [&](const Token& token) { return means(token, meaning); });
        return static_cast<std::size_t>(found - tokens.begin());
    }
    [[nodiscard]] std::string_view before(std::size_t i) const {
        return trimmed(text.substr(0, tokens[i].from));
    }
    [[nodiscard]] std::string_view behind(std::size_t i) const {
        return trimmed(text.substr(tokens[i].to));
    }
};

/// A whole text that is one number.
std::optional<double> number_in(std::string_view text) {
    Cursor cursor(trimmed(text));
    Number number;
    Fault fault;
    if (!at_number(cursor) || !read_number(cursor, NumberPlace::amount, number, fault) ||
        !cursor.at_end()) {
        return std::nullopt;
    }
    return number.value;
}

std::string months_text(const Refused& it) {
    const std::size_t month = it.find(Meaning::month);
    const std::size_t at = std::min(month, it.find(Meaning::year));
    if (at < it.tokens.size() && it.wants(Dimension::time)) {
        // A wait that is suggested too short does harm: no figure where the count was not read
        // ("2-3 months", "four months").
        const auto count = number_in(it.before(at));
        const double longest = at == month ? 31.0 : 366.0;
        return count ? fmt::format(
                           "Months and years differ in length. Give days, the longer "
                           "reading: \"{:.6g} days\".",
                           std::ceil(*count * longest))
                     : "Months and years differ in length. Give the days of the longest reading.";
    }
    if (it.wants(Dimension::time) && it.has("dry")) {
        return "That is no length of time. The re-entry limit has until_dry for it; elsewhere give "
               "the "
               "time the label says";
    }
    return {};
}

/// "per year", "/season" behind a rate.
std::string often_text(const Refused& it) {
    const std::size_t at = std::min(it.find(Meaning::year), it.find(Meaning::often));
    if (it.wants(Dimension::time) || at >= it.tokens.size() || at < 2 ||
        (it.tokens[at - 1].low != "/" && it.tokens[at - 1].low != "per")) {
        return {};
    }
    return fmt::format(
        "The field says how often: max_yearly_rate in a year, max_single_rate in "
        "one application. Type {} there.",
        in_quotes(it.before(at - 1)));
}

/// "1:50", "1 to 100", "1 part in 50".
std::string ratio_text(const Refused& it) {
    std::vector<std::string_view> words;
    for (const Token& token : it.tokens) {
        if (token.low != "part" && token.low != "parts" && token.low != "water" &&
            token.low != "v" && token.low != "/") {
            words.push_back(token.low);
        }
    }
    if (!it.wants_share() || words.size() != 3) {
        return {};
    }
    const auto one = number_in(words[0]);
    const auto many = number_in(words[2]);
    if (!one || !many || !(*many > *one)) {
        return {};
    }
    const double in = *one / *many * 100.0;
    if (words[1] == "in" || words[1] == "per") {
        return fmt::format("Type \"{:.3g} % v/v\".", in);
    }
    return words[1] != ":" && words[1] != "to"
               ? std::string{}
               : fmt::format(
                     "Type \"{:.3g} % v/v\" if {} in {} of mix is meant, \"{:.3g} % v/v\" "
                     "if {} is added to {} of water.",
                     in, words[0], words[2], *one / (*one + *many) * 100.0, words[0], words[2]);
}

std::string million_text(const Refused& it) {
    const bool spelled = it.has("parts") && it.has("million");
    const std::size_t at = spelled ? it.find("parts") : it.find("ppm");
    if (at >= it.tokens.size()) {
        return {};
    }
    const auto count = number_in(it.before(at));
    if (count && it.wants_share()) {
        return fmt::format("Type \"{0:.6g} % v/v\" by volume or \"{0:.6g} % w/w\" by weight.",
                           *count / 1e4);
    }
    if (it.wants(Dimension::mass_fraction) && it.has("caco")) {
        return "Counted as CaCO3 it is hardness: type the number alone in \"hardness\", with "
               "hardness_scale ppm_calcium_carbonate.";
    }
    return count && spelled ? fmt::format("Type \"{:.6g} ppm\".", *count) : std::string{};
}

/// "1m20s": all parts with "min" for "m".
std::string minutes_text(const Refused& it) {
    if (!it.wants(Dimension::time) || it.problem != Problem::sum_of_kinds || !it.has("m")) {
        return {};
    }
    std::string typed;
    for (const Token& token : it.tokens) {
        typed += typed.empty() ? "" : " ";
        typed += token.low == "m" ? "min" : token.low;
    }
    return fmt::format("\"m\" is metres. Type \"{}\".", typed);
}

/// "66 ft x 66 ft".
std::string product_text(const Refused& it) {
    const std::size_t at = std::min({it.find("x"), it.find("*"), it.find("\u00d7")});
    if (!it.wants(Dimension::area) || at >= it.tokens.size()) {
        return {};
    }
    AmountText left;
    AmountText right;
    Fault fault;
    std::string typed;
    if (read_amount(it.behind(at), false, right, fault) &&
        right.unit.dimension == Dimension::length) {
        const auto bare = number_in(it.before(at));
        const bool sound = bare || (read_amount(it.before(at), false, left, fault) &&
                                    left.unit.dimension == Dimension::length);
        const double unit = right.unit.top_si == 1.0 ? 1.0 : feet.si;
        const double across = bare ? *bare * right.unit.top_si : left.si;
        typed = sound ? fmt::format(", \"{:.6g} {}\"", across / unit * (right.si / unit),
                                    unit == 1.0 ? "m2" : "ft2")
                      : std::string{};
    }
    return fmt::format("Type the product{}, or give width and course_length.", typed);
}

/// "1/128th acre", "1.5 pt/treated acre", "1.28 SG".
std::string word_text(const Refused& it) {
    const std::size_t acre = it.find(Meaning::which_acre);
    if (acre < it.tokens.size() && it.problem == Problem::unknown_word) {
        return fmt::format(
            "Which acre is meant goes in the member \"counts\": treated or field. "
            "Type \"{}{}{}\".",
            it.before(acre), it.before(acre).ends_with('/') ? "" : " ", it.behind(acre));
    }
    const std::size_t ordinal = it.find(Meaning::ordinal);
    if (ordinal < it.tokens.size() && ordinal > 0 && it.tokens[ordinal - 1].is_number() &&
        it.problem == Problem::unknown_word) {
        return fmt::format("Type \"{} {}\".", it.before(ordinal), it.behind(ordinal));
    }
    if (it.wants(Dimension::mass_per_volume) && it.find(Meaning::gravity) < it.tokens.size()) {
        for (const Token& token : it.tokens) {
            if (token.is_number()) {
                return fmt::format("Specific gravity counts against water: type \"{} kg/L\".",
                                   token.low);
            }
        }
    }
    return {};
}

/// "fl oz" of "12 +/- 0.5 fl oz".
std::string_view behind_last_number(const Refused& it) {
    std::string_view unit;
    for (std::size_t i = 0; i < it.tokens.size(); ++i) {
        unit = it.tokens[i].is_number() ? it.behind(i) : unit;
    }
    return unit;
}

/// "12 +/- 0.5 gal" and "1'000 mL".
std::string mark_text(const Refused& it) {
    for (const std::string_view mark : {"+/-", "+-", "\u00b1"}) {
        const std::size_t at = it.text.find(mark);
        if (at != std::string_view::npos) {
            const std::string_view reading = trimmed(it.text.substr(0, at));
            const std::string_view unit =
                number_in(reading) ? behind_last_number(it) : std::string_view{};
            return fmt::format(
                "Type the reading alone, {}: its last digit tells how closely it "
                "was read.",
                in_quotes(unit.empty() ? std::string(reading)
                                       : fmt::format("{} {}", reading, unit)));
        }
    }
    for (std::size_t i = 0; i + 2 < it.tokens.size(); ++i) {
        const Token& mark = it.tokens[i + 1];
        const Token& group = it.tokens[i + 2];
        const bool is_mark = mark.low == "'" || mark.low == "\u2019";
        if (is_mark && it.tokens[i].is_number() && it.tokens[i].to == mark.from &&
            group.is_number() && group.to - mark.to == 3) {
            return fmt::format("Write thousands without a mark: {}.",
                               in_quotes(std::string(it.text.substr(0, mark.from)) +
                                         std::string(it.text.substr(mark.to))));
        }
    }
    return {};
}

}  // namespace

std::string hint_for(const Fault& fault, std::string_view text, const KindInfo* info) {
    if (text.size() > longest_text) {
        return {};
    }
    const Refused it{text, tokens_of(text), info, fault.problem};
    if (it.tokens.empty()) {
        return {};
    }
    using Say = std::string (*)(const Refused&);
    constexpr std::array<Say, 8> says{&months_text,  &often_text,   &ratio_text, &million_text,
                                      &minutes_text, &product_text, &word_text,  &mark_text};
    for (const Say say : says) {
        std::string said = say(it);
        if (!said.empty()) {
            return said;
        }
    }
    return {};
}

}  // namespace swathbook::detail
