#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace swathbook::notebook::detail {

/// Walks JSON text (RFC 8259) once, checks it, and copies it without white space. A general JSON
/// library would rewrite numbers ("12.50" to 12.5); an entry must keep them as they were typed.
class JsonScanner {
public:
    explicit JsonScanner(std::string_view text) : text_(text) {}

    void skip_space();
    /// Appends one value to `out`. On a fault returns false, and `fault()` says what was wanted.
    [[nodiscard]] bool value(std::string& out, int levels_left);
    [[nodiscard]] bool string(std::string& out);
    /// Takes one character if it is the next one.
    [[nodiscard]] bool take(char character);
    [[nodiscard]] bool at_end() const { return place_ >= text_.size(); }
    [[nodiscard]] std::size_t place() const { return place_; }
    [[nodiscard]] const char* fault() const { return fault_; }

private:
    [[nodiscard]] bool refuse(const char* fault);
    [[nodiscard]] bool number(std::string& out);
    [[nodiscard]] bool digits();
    [[nodiscard]] bool word(std::string_view word, std::string& out);
    [[nodiscard]] bool list(std::string& out, int levels_left);
    [[nodiscard]] bool object(std::string& out, int levels_left);
    [[nodiscard]] bool escape();
    [[nodiscard]] char next() const { return at_end() ? '\0' : text_[place_]; }

    std::string_view text_;
    std::size_t place_ = 0;
    const char* fault_ = "";
};

}  // namespace swathbook::notebook::detail
