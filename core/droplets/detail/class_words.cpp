#include "core/droplets/detail/class_words.hpp"

#include <cstddef>

namespace swathbook::droplets::detail {
namespace {

constexpr std::size_t longest_text = 120;

/// Lower case, one space between words, hyphens and underscores inside a name as spaces:
/// "Very-Coarse" and "very_coarse" are "very coarse". A hyphen between two classes becomes " to ".
std::string tidied(std::string_view text) {
    std::string tidy;
    tidy.reserve(text.size());
    for (const char c : text.substr(0, longest_text)) {
        const bool upper = c >= 'A' && c <= 'Z';
        const char low = upper ? static_cast<char>(c - 'A' + 'a') : c;
        const bool gap = low == ' ' || low == '\t' || low == '_' || low == '-';
        if (!gap) {
            tidy += low;
        } else if (!tidy.empty() && tidy.back() != ' ') {
            tidy += ' ';
        }
    }
    while (!tidy.empty() && tidy.back() == ' ') {
        tidy.pop_back();
    }
    return tidy;
}

/// Bytes of letters, including those outside ASCII, so that a name is never found inside a word.
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80U;
}

bool stands_alone(std::string_view text, std::size_t start, std::size_t length) {
    const bool free_before = start == 0 || !is_letter(text[start - 1]);
    const std::size_t after = start + length;
    return free_before && (after >= text.size() || !is_letter(text[after]));
}

struct Match {
    std::size_t length = 0;
    DropletClass value = DropletClass::medium;
};

/// The longest name that starts here: "very coarse" before "coarse".
Match match_at(std::string_view text, std::size_t start) {
    Match best;
    const auto consider = [&](std::string_view name, DropletClass value) {
        if (name.size() > best.length && text.substr(start).starts_with(name) &&
            stands_alone(text, start, name.size())) {
            best = {name.size(), value};
        }
    };
    for (const ClassInfo& info : all_classes()) {
        consider(info.english, info.value);
        consider(info.spanish, info.value);
        std::string letters;
        for (const char c : info.letters) {
            letters += static_cast<char>(c - 'A' + 'a');
        }
        consider(letters, info.value);
    }
    return best;
}

}  // namespace

FoundClasses find_classes(std::string_view text) {
    FoundClasses found;
    const std::string tidy = tidied(text);
    std::size_t at = 0;
    while (at < tidy.size()) {
        const Match match = match_at(tidy, at);
        if (match.length == 0) {
            found.rest += tidy[at];
            ++at;
            continue;
        }
        if (found.count < 2) {
            found.classes[static_cast<std::size_t>(found.count)] = match.value;
        }
        ++found.count;
        found.rest += '#';
        at += match.length;
    }
    return found;
}

std::string_view class_list() {
    return "XF, VF, F, M, C, VC, XC or UC";
}

}  // namespace swathbook::droplets::detail
