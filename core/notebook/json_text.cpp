#include <array>
#include <cstdint>

#include "core/base/blake2b.hpp"
#include "core/notebook/body.hpp"

namespace swathbook::notebook {

namespace {

void append_utf8(std::string& out, std::uint32_t code) {
    const auto push = [&](std::uint32_t byte) { out.push_back(static_cast<char>(byte)); };
    if (code < 0x80) {
        push(code);
    } else if (code < 0x800) {
        push(0xC0 | (code >> 6));
        push(0x80 | (code & 0x3F));
    } else if (code < 0x10000) {
        push(0xE0 | (code >> 12));
        push(0x80 | ((code >> 6) & 0x3F));
        push(0x80 | (code & 0x3F));
    } else {
        push(0xF0 | (code >> 18));
        push(0x80 | ((code >> 12) & 0x3F));
        push(0x80 | ((code >> 6) & 0x3F));
        push(0x80 | (code & 0x3F));
    }
}

/// The 16 bits of four hexadecimal digits; nothing when there are not four.
std::optional<std::uint32_t> code_unit(std::string_view text) {
    std::array<std::uint8_t, 2> bytes{};
    if (text.size() < 4 || !swathbook::detail::read_hex(text.substr(0, 4), bytes)) {
        return std::nullopt;
    }
    return static_cast<std::uint32_t>(bytes[0]) << 8 | bytes[1];
}

/// Appends the character of "\uXXXX" (or a surrogate pair) at the front of `rest`.
/// @return bytes of `rest` used after the "u", 0 at a fault
std::size_t append_unicode(std::string& out, std::string_view rest) {
    const auto first = code_unit(rest);
    if (!first) {
        return 0;
    }
    if (*first < 0xD800 || *first > 0xDFFF) {
        append_utf8(out, *first);
        return 4;
    }
    const auto second =
        rest.substr(4, 2) == "\\u" ? code_unit(rest.substr(6)) : std::optional<std::uint32_t>();
    if (*first > 0xDBFF || !second || *second < 0xDC00 || *second > 0xDFFF) {
        append_utf8(out, 0xFFFD);  // half of a pair stands for no character
        return 4;
    }
    append_utf8(out, 0x10000 + ((*first - 0xD800) << 10) + (*second - 0xDC00));
    return 10;
}

}  // namespace

std::string json_string(std::string_view text) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string out = "\"";
    for (const char character : text) {
        const auto byte = static_cast<unsigned char>(character);
        if (character == '"' || character == '\\') {
            out.push_back('\\');
            out.push_back(character);
        } else if (character == '\n') {
            out += "\\n";
        } else if (character == '\t') {
            out += "\\t";
        } else if (byte < 0x20) {
            out += "\\u00";
            out.push_back(digits[byte >> 4]);
            out.push_back(digits[byte & 15]);
        } else {
            out.push_back(character);
        }
    }
    out.push_back('"');
    return out;
}

std::optional<std::string> text_of_json_string(std::string_view json) {
    if (json.size() < 2 || json.front() != '"' || json.back() != '"') {
        return std::nullopt;
    }
    const std::string_view inside = json.substr(1, json.size() - 2);
    constexpr std::string_view letters = "\"\\/bfnrt";
    constexpr std::string_view meanings = "\"\\/\b\f\n\r\t";
    std::string out;
    for (std::size_t i = 0; i < inside.size(); ++i) {
        if (inside[i] != '\\') {
            out.push_back(inside[i]);
            continue;
        }
        ++i;
        if (i < inside.size() && inside[i] == 'u') {
            const std::size_t used = append_unicode(out, inside.substr(i + 1));
            if (used == 0) {
                return std::nullopt;
            }
            i += used;
            continue;
        }
        const std::size_t which = i < inside.size() ? letters.find(inside[i]) : letters.npos;
        if (which == letters.npos) {
            return std::nullopt;
        }
        out.push_back(meanings[which]);
    }
    return out;
}

}  // namespace swathbook::notebook
