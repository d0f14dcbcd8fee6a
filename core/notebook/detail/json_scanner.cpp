#include "core/notebook/detail/json_scanner.hpp"

namespace swathbook::notebook::detail {

namespace {

bool is_hex_digit(char character) {
    return (character >= '0' && character <= '9') || (character >= 'a' && character <= 'f') ||
           (character >= 'A' && character <= 'F');
}

}  // namespace

bool JsonScanner::refuse(const char* fault) {
    fault_ = fault;
    return false;
}

void JsonScanner::skip_space() {
    while (!at_end() && (text_[place_] == ' ' || text_[place_] == '\t' || text_[place_] == '\n' ||
                         text_[place_] == '\r')) {
        ++place_;
    }
}

bool JsonScanner::take(char character) {
    if (at_end() || text_[place_] != character) {
        return false;
    }
    ++place_;
    return true;
}

bool JsonScanner::escape() {
    const char kind = next();
    ++place_;
    if (kind == 'u') {
        for (int i = 0; i < 4; ++i, ++place_) {
            if (!is_hex_digit(next())) {
                return refuse("four hexadecimal digits after \\u");
            }
        }
        return true;
    }
    const bool is_known =
        kind != '\0' && std::string_view("\"\\/bfnrt").find(kind) != std::string_view::npos;
    return is_known || refuse("a known escape after \\");
}

bool JsonScanner::string(std::string& out) {
    const std::size_t begin = place_;
    if (!take('"')) {
        return refuse("a string in double quotes");
    }
    while (!at_end() && text_[place_] != '"') {
        const char character = text_[place_++];
        if (static_cast<unsigned char>(character) < 0x20) {
            return refuse("no control character inside a string");
        }
        if (character == '\\' && !escape()) {
            return false;
        }
    }
    if (!take('"')) {
        return refuse("the closing double quote of a string");
    }
    out.append(text_.substr(begin, place_ - begin));
    return true;
}

bool JsonScanner::digits() {
    const std::size_t begin = place_;
    while (next() >= '0' && next() <= '9') {
        ++place_;
    }
    return place_ > begin;
}

bool JsonScanner::number(std::string& out) {
    const std::size_t begin = place_;
    static_cast<void>(take('-'));
    if (!take('0') && !digits()) {
        return refuse("a value");
    }
    if (take('.') && !digits()) {
        return refuse("a digit after the decimal point");
    }
    if (take('e') || take('E')) {
        static_cast<void>(take('+') || take('-'));
        if (!digits()) {
            return refuse("a digit in the exponent");
        }
    }
    out.append(text_.substr(begin, place_ - begin));
    return true;
}

bool JsonScanner::word(std::string_view word, std::string& out) {
    if (text_.substr(place_, word.size()) != word) {
        return refuse("a value");
    }
    place_ += word.size();
    out.append(word);
    return true;
}

bool JsonScanner::list(std::string& out, int levels_left) {
    out.push_back('[');
    skip_space();
    for (bool is_first = true; !take(']'); is_first = false) {
        if (!is_first && !take(',')) {
            return refuse("a comma or ]");
        }
        if (!is_first) {
            out.push_back(',');
        }
        if (!value(out, levels_left)) {
            return false;
        }
        skip_space();
    }
    out.push_back(']');
    return true;
}

bool JsonScanner::object(std::string& out, int levels_left) {
    out.push_back('{');
    skip_space();
    for (bool is_first = true; !take('}'); is_first = false) {
        if (!is_first && !take(',')) {
            return refuse("a comma or }");
        }
        if (!is_first) {
            out.push_back(',');
            skip_space();
        }
        if (!string(out)) {
            return false;
        }
        skip_space();
        if (!take(':')) {
            return refuse("a colon after the name");
        }
        out.push_back(':');
        if (!value(out, levels_left)) {
            return false;
        }
        skip_space();
    }
    out.push_back('}');
    return true;
}

bool JsonScanner::value(std::string& out, int levels_left) {
    if (levels_left <= 0) {
        return refuse("at most 32 levels of nesting");
    }
    skip_space();
    switch (next()) {
        case '"': return string(out);
        case '{': ++place_; return object(out, levels_left - 1);
        case '[': ++place_; return list(out, levels_left - 1);
        case 't': return word("true", out);
        case 'f': return word("false", out);
        case 'n': return word("null", out);
        default: return number(out);
    }
}

}  // namespace swathbook::notebook::detail
