#include "core/quantity/detail/cursor.hpp"

namespace swathbook::detail {

Cursor::Letter Cursor::letter() const {
    const unsigned char first = byte();
    if (first >= 'a' && first <= 'z') {
        return {first, 1};
    }
    if (first >= 'A' && first <= 'Z') {
        return {static_cast<unsigned char>(first + ('a' - 'A')), 1};
    }
    return first < 0x80 ? Letter{} : wide_letter();
}

/// Accented Spanish letters, both micro signs and the script l.
Cursor::Letter Cursor::wide_letter() const {
    const unsigned char second = byte(1);
    switch (byte()) {
        case 0xC2: return second == 0xB5 ? Letter{'u', 2} : Letter{};
        case 0xCE: return second == 0xBC ? Letter{'u', 2} : Letter{};
        case 0xC3:
            switch (second | 0x20) {  // capital and small differ in this bit
                case 0xA1: return {'a', 2};
                case 0xA9: return {'e', 2};
                case 0xAD: return {'i', 2};
                case 0xB1: return {'n', 2};
                case 0xB3: return {'o', 2};
                case 0xBA:
                case 0xBC: return {'u', 2};
                default: return {};
            }
        case 0xE2: return second == 0x84 && byte(2) == 0x93 ? Letter{'l', 3} : Letter{};
        case 0xEF:  // the ligature of f and l, as a PDF has it in "fl oz"
            return second == 0xAC && byte(2) == 0x82 ? Letter{'l', 3} : Letter{};
        default: return {};
    }
}

void Cursor::skip_space() {
    for (;;) {
        switch (byte()) {
            case ' ':
            case '\t':
            case '\n':
            case '\r':
            case '(':
            case ')':
            case '_': ++at_; continue;
            case 0xC2:
                if (byte(1) == 0xA0) {  // no-break space
                    at_ += 2;
                    continue;
                }
                return;
            case 0xE2:  // U+2000 to U+200B, U+202F
                if (byte(1) == 0x80 && ((byte(2) >= 0x80 && byte(2) <= 0x8B) || byte(2) == 0xAF)) {
                    at_ += 3;
                    continue;
                }
                return;
            default: return;
        }
    }
}

SignText Cursor::sign() const {
    switch (byte()) {
        case '/': return {Sign::slash, 1};
        case '+': return {Sign::plus, 1};
        case '-': return {Sign::minus, 1};
        case '%': return {Sign::percent, 1};
        case '"': return {Sign::inch, 1};
        case '#': return {Sign::number_sign, 1};
        case '^': return {Sign::caret, 1};
        case ':': return {Sign::colon, 1};
        case '*': return {Sign::times, 1};
        case '\'':
            if (byte(1) == '\'') {
                return {Sign::inch, 2};
            }
            return {Sign::foot, 1};
        default: return byte() < 0x80 ? SignText{} : wide_sign();
    }
}

SignText Cursor::wide_sign() const {
    const unsigned char second = byte(1);
    const unsigned char third = byte(2);
    if (byte() == 0xC2) {
        switch (second) {
            case 0xB0:
            case 0xBA: return {Sign::degree, 2};  // degree sign, and the ordinal often typed for it
            case 0xB2: return {Sign::squared, 2};
            case 0xB3: return {Sign::cubed, 2};
            default: return {};
        }
    }
    if (byte() == 0xC3 && second == 0x97) {
        return {Sign::times, 2};
    }
    if (byte() == 0xEF && second == 0xBC && third == 0x8F) {
        return {Sign::slash, 3};  // of full width
    }
    if (byte() != 0xE2) {
        return {};
    }
    if (second == 0x80) {
        switch (third) {
            case 0x90:
            case 0x91:
            case 0x93: return {Sign::minus, 3};  // hyphens, en dash
            case 0x98:
            case 0x99:
            case 0xB2: return {Sign::foot, 3};  // curly quotes, prime
            case 0x9C:
            case 0x9D:
            case 0xB3: return {Sign::inch, 3};
            default: return {};
        }
    }
    if (second == 0x81 && third == 0x84) {
        return {Sign::fraction_slash, 3};
    }
    if (second == 0x88 && third == 0x92) {
        return {Sign::minus, 3};
    }
    if (second == 0x88 && third == 0x95) {
        return {Sign::slash, 3};
    }
    if (second == 0x84 && third == 0x83) {
        return {Sign::celsius, 3};
    }
    if (second == 0x84 && third == 0x89) {
        return {Sign::fahrenheit, 3};
    }
    return {};
}

bool Cursor::pass(Sign wanted) {
    const SignText here = sign();
    if (here.sign != wanted) {
        return false;
    }
    at_ += here.bytes;
    return true;
}

WordText Cursor::read_word() {
    WordText word;
    const char* const start = at_;
    for (;;) {
        const Letter here = letter();
        if (here.bytes != 0) {
            if (byte() == 0xEF) {
                word.key.add('f');
            }
            word.key.add(here.folded);
            at_ += here.bytes;
        } else if (byte() == '.' && word.key.length > 0) {
            ++at_;
        } else {
            break;
        }
    }
    word.raw = std::string_view(start, static_cast<std::size_t>(at_ - start));
    return word;
}

}  // namespace swathbook::detail
