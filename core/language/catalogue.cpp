#include "core/language/catalogue.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/base/sort.hpp"

namespace swathbook::language {
namespace {

constexpr int deepest = 5;                  // words within words within a sentence
constexpr int most_steps = 5000;            // places tried for one sentence: hostile text ends here
constexpr std::size_t longest_value = 600;  // of words to be said anew
constexpr std::size_t longest_said = 20'000;
constexpr std::size_t surely_a_sentence = 16;  // characters by which a template is told for certain

/// The longest sentence first: its end is the last of these that a known sentence reaches.
bool ends_sentence(std::string_view text, std::size_t space) {
    if (space == 0 || text[space] != ' ') {
        return false;
    }
    const char before = text[space - 1];
    return before == '.' || before == '?' || before == '!' || before == ';' || before == ':' ||
           before == '"' || before == ')';
}

Result<Place> place_of(std::string_view mark, std::size_t line) {
    if (mark.empty()) {
        return Place::verbatim;
    }
    if (mark == "n") {
        return Place::figure;
    }
    if (mark == "w") {
        return Place::words;
    }
    if (mark == "l") {
        return Place::names;
    }
    return fail(ErrorCode::corrupt_data, "",
                fmt::format("Line {} of the catalogue has a place {{{}}}: write {{}}, {{n}}, {{w}} "
                            "or {{l}}.",
                            line, mark));
}

Result<Template> template_of(std::string_view english, std::string_view foreign, std::size_t line) {
    Template made;
    made.foreign = foreign;
    std::size_t begin = 0;
    for (std::size_t open = english.find('{'); open != std::string_view::npos;
         open = english.find('{', begin)) {
        const std::size_t close = english.find('}', open);
        if (close == std::string_view::npos) {
            break;
        }
        SWATHBOOK_TRY(kind, place_of(english.substr(open + 1, close - open - 1), line));
        made.literals.push_back(english.substr(begin, open - begin));
        made.places.push_back(kind);
        begin = close + 1;
    }
    made.literals.push_back(english.substr(begin));
    for (const std::string_view literal : made.literals) {
        made.weight += literal.size();
    }
    return made;
}

/// The number between the braces at `open`, or -1 when these are no place.
int number_at(std::string_view text, std::size_t open) {
    int number = 0;
    std::size_t at = open + 1;
    while (at < text.size() && text[at] >= '0' && text[at] <= '9' && at < open + 3) {
        number = number * 10 + (text[at++] - '0');
    }
    return at > open + 1 && at < text.size() && text[at] == '}' ? number : -1;
}

/// Whether the inner literals stand in the text one after the other: what a match needs at least.
bool holds_in_order(const Template& made, std::string_view text) {
    const std::size_t end = text.size() - made.literals.back().size();
    std::size_t at = made.literals.front().size();
    for (std::size_t i = 1; i + 1 < made.literals.size(); ++i) {
        at = text.find(made.literals[i], at + 1);
        if (at == std::string_view::npos) {
            return false;
        }
        at += made.literals[i].size();
    }
    return at < end;
}

/// Whether the other language names each place at least once, and no other.
bool names_its_places(const Template& made) {
    std::vector<bool> named(made.places.size(), false);
    for (std::size_t at = made.foreign.find('{'); at != std::string_view::npos;
         at = made.foreign.find('{', at + 1)) {
        const int number = number_at(made.foreign, at);
        if (number < 0 || static_cast<std::size_t>(number) >= named.size()) {
            return false;
        }
        named[static_cast<std::size_t>(number)] = true;
    }
    return std::find(named.begin(), named.end(), false) == named.end();
}

std::string filled(const Template& made, const std::vector<std::string>& values) {
    std::string text;
    for (std::size_t at = 0; at < made.foreign.size(); ++at) {
        const int number = made.foreign[at] == '{' ? number_at(made.foreign, at) : -1;
        if (number >= 0) {
            text += values[static_cast<std::size_t>(number)];
            at = made.foreign.find('}', at);
        } else {
            text += made.foreign[at];
        }
    }
    return text;
}

struct Joint {
    std::string_view english;
    std::string_view word;  ///< key of the joining word in the catalogue; empty: as it is
};

constexpr std::array joints{Joint{"; ", ""}, Joint{" + ", ""},        Joint{", and ", " and "},
                            Joint{", ", ""}, Joint{" and ", " and "}, Joint{" or ", " or "}};

}  // namespace

/// What one sentence may cost, with all the words in it.
struct Catalogue::Work {
    int steps = 0;
};

/// One look for the template of a sentence.
struct Catalogue::Search {
    std::string_view text;
    int depth;
    Work& work;
    bool is_strict;  ///< places for words hold only words that are known
    const Template* tried = nullptr;
    std::vector<std::string> values{};
    const Template* best = nullptr;
    std::string said{};
};

Result<Catalogue> Catalogue::read(std::string text) {
    Catalogue made;
    made.text_.assign(text.begin(), text.end());
    std::string_view rest(made.text_.data(), made.text_.size());
    for (std::size_t number = 1; !rest.empty(); ++number) {
        const std::size_t end = std::min(rest.find('\n'), rest.size());
        SWATHBOOK_CHECK(made.add(rest.substr(0, end), number));
        rest.remove_prefix(std::min(end + 1, rest.size()));
    }
    made.order();
    return made;
}

Result<void> Catalogue::add(std::string_view line, std::size_t number) {
    if (line.empty() || line.front() == '#') {
        return {};
    }
    const std::size_t tab = line.find('\t');
    if (tab == std::string_view::npos || tab == 0 || tab + 1 == line.size() ||
        line.find('\t', tab + 1) != std::string_view::npos) {
        return fail(ErrorCode::corrupt_data, "",
                    fmt::format("Line {} of the catalogue is not English, one tab, and the other "
                                "language.",
                                number));
    }
    SWATHBOOK_TRY(made, template_of(line.substr(0, tab), line.substr(tab + 1), number));
    if (!names_its_places(made)) {
        return fail(ErrorCode::corrupt_data, "",
                    fmt::format("Line {} of the catalogue does not name the same places on both "
                                "sides.",
                                number));
    }
    templates_.push_back(std::move(made));
    return {};
}

/// Templates that begin with a place come first, then by their first byte, longest first.
void Catalogue::order() {
    const auto group = [](const Template& made) {
        return made.literals.front().empty()
                   ? 0U
                   : static_cast<unsigned char>(made.literals.front().front());
    };
    sort_list(templates_, [&group](const Template& a, const Template& b) {
        return group(a) != group(b) ? group(a) < group(b) : a.weight > b.weight;
    });
    starts_.assign(257, static_cast<std::uint32_t>(templates_.size()));
    for (std::size_t i = templates_.size(); i-- > 0;) {
        starts_[group(templates_[i])] = static_cast<std::uint32_t>(i);
    }
    for (std::size_t byte = 256; byte-- > 0;) {
        starts_[byte] = std::min(starts_[byte], starts_[byte + 1]);
    }
}

bool Catalogue::accept(Search& search, std::size_t index, std::string_view value) const {
    std::string& into = search.values[index];
    switch (search.tried->places[index]) {
        case Place::verbatim: into = value; return true;
        case Place::figure: into = value; return !search.is_strict || is_figure(value);
        case Place::names: {
            constexpr std::string_view joint = " and ";
            into = value;
            const std::string word = joining(joint, search.work);
            for (std::size_t at = into.find(joint); at != std::string::npos;
                 at = into.find(joint, at + word.size())) {
                into.replace(at, joint.size(), word);
            }
            return true;
        }
        case Place::words:
            if (in_words(value, search.depth + 1, search.work, into)) {
                return true;
            }
            into = value;
            return !search.is_strict;
    }
    return false;
}

/// Puts the value that begins at `at` into place `index`: the shortest that lets the rest match.
bool Catalogue::place(Search& search, std::size_t index, std::size_t at) const {
    const Template& made = *search.tried;
    const std::string_view literal = made.literals[index + 1];
    const bool is_last = index + 1 == made.places.size();
    for (std::size_t end = at + 1; end <= search.text.size(); ++end) {
        if (is_last) {
            end = search.text.size() - literal.size();
        } else {
            end = literal.empty() ? end : search.text.find(literal, end);
        }
        if (end == std::string_view::npos || end <= at || ++search.work.steps > most_steps) {
            return false;
        }
        if (accept(search, index, search.text.substr(at, end - at)) &&
            (is_last || place(search, index + 1, end + literal.size()))) {
            return true;
        }
        if (is_last) {
            return false;
        }
    }
    return false;
}

void Catalogue::consider(const Template& made, Search& search) const {
    const bool is_better = search.best == nullptr || made.weight > search.best->weight;
    const std::size_t least = made.weight + made.places.size();
    if (!is_better || search.text.size() < least ||
        !search.text.starts_with(made.literals.front()) ||
        !search.text.ends_with(made.literals.back())) {
        return;
    }
    if (made.places.empty()) {
        if (search.text.size() == made.weight) {
            search.best = &made;
            search.said = made.foreign;
        }
        return;
    }
    if ((!search.is_strict && made.weight < surely_a_sentence) ||
        !holds_in_order(made, search.text)) {
        return;
    }
    search.tried = &made;
    search.values.assign(made.places.size(), {});
    if (place(search, 0, made.literals.front().size())) {
        search.best = &made;
        search.said = filled(made, search.values);
    }
}

bool Catalogue::find(std::string_view english, int depth, bool is_strict, Work& work,
                     std::string& said) const {
    Search search{english, depth, work, is_strict};
    const auto first = static_cast<unsigned char>(english.front());
    for (std::size_t i = starts_[first]; i < starts_[first + 1U]; ++i) {
        consider(templates_[i], search);
    }
    for (std::size_t i = starts_[0]; i < starts_[1]; ++i) {
        consider(templates_[i], search);
    }
    said = std::move(search.said);
    return search.best != nullptr;
}

bool Catalogue::in_words(std::string_view english, int depth, Work& work, std::string& said) const {
    if (english.empty() || english.size() > longest_value || depth > deepest ||
        work.steps > most_steps) {
        return false;
    }
    if (find(english, depth, true, work, said)) {
        return true;
    }
    if (is_figure(english)) {
        said = english;
        return true;
    }
    return in_parts(english, depth, work, said) || in_sentences(english, depth, work, said);
}

/// Known sentences one after the other, each to its end.
bool Catalogue::in_sentences(std::string_view english, int depth, Work& work,
                             std::string& said) const {
    for (std::size_t space = english.size() - 1; space > 0; --space) {
        std::string first;
        std::string rest;
        if (ends_sentence(english, space) && space + 1 < english.size() &&
            find(english.substr(0, space), depth, true, work, first) &&
            in_words(english.substr(space + 1), depth + 1, work, rest)) {
            said = std::move(first).append(" ").append(rest);
            return true;
        }
    }
    return false;
}

/// The joining word in the other language; as it is where the catalogue has none.
std::string Catalogue::joining(std::string_view english, Work& work) const {
    std::string word;
    return find(english, 1, true, work, word) ? word : std::string(english);
}

/// A list of words: each said by itself, joined as that language joins.
bool Catalogue::in_parts(std::string_view english, int depth, Work& work, std::string& said) const {
    for (const Joint& joint : joints) {
        const std::size_t at = english.find(joint.english);
        if (at == std::string_view::npos) {
            continue;
        }
        std::string before;
        std::string behind;
        if (!in_words(english.substr(0, at), depth + 1, work, before) ||
            !in_words(english.substr(at + joint.english.size()), depth + 1, work, behind)) {
            continue;
        }
        said = std::move(before);
        said += joint.word.empty() ? std::string(joint.english) : joining(joint.word, work);
        said += behind;
        return true;
    }
    return false;
}

/// First as if every word were known, then with words that stay in English; each time the whole,
/// or the longest known beginning and then the rest.
Said Catalogue::say(std::string_view english, Work& work) const {
    std::string said;
    for (const bool is_strict : {true, false}) {
        if (find(english, 0, is_strict, work, said)) {
            return {std::move(said), is_strict};
        }
        for (std::size_t space = english.size() - 1; space > 0; --space) {
            if (ends_sentence(english, space) && space + 1 < english.size() &&
                find(english.substr(0, space), 0, is_strict, work, said)) {
                const Said rest = say(english.substr(space + 1), work);
                return {said + " " + rest.text, is_strict && rest.is_complete};
            }
        }
    }
    return {std::string(english), is_formula(english)};
}

Said Catalogue::say(std::string_view english) const {
    if (english.empty() || english.size() > longest_said || templates_.empty()) {
        return {std::string(english), english.empty()};
    }
    Work work;
    return say(english, work);
}

}  // namespace swathbook::language
