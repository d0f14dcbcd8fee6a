#pragma once

#include <string_view>

#include "core/quantity/detail/words.hpp"

namespace swathbook::detail {

/// Signs that stand for a word or a unit, whatever bytes they were typed with.
enum class Sign : unsigned char {
    none,
    slash,
    plus,
    minus,  ///< hyphen, minus, en dash
    percent,
    degree,
    celsius,
    fahrenheit,
    foot,  ///< '
    inch,  ///< "
    number_sign,
    caret,
    squared,
    cubed,
    colon,
    fraction_slash,
    times,
};

struct SignText {
    Sign sign = Sign::none;
    unsigned char bytes = 0;
};

struct WordText {
    WordKey key;
    std::string_view raw;  ///< as typed, dots and all
};

/// A place in a text and what stands there. Understands the UTF-8 that labels and keyboards
/// produce; any other byte above 127 is no letter, digit, space or sign.
class Cursor {
public:
    explicit Cursor(std::string_view text) : at_(text.data()), end_(text.data() + text.size()) {}

    [[nodiscard]] bool at_end() const { return at_ == end_; }
    [[nodiscard]] const char* place() const { return at_; }
    void go_to(const char* place) { at_ = place; }
    void advance(std::size_t bytes) { at_ += bytes; }

    [[nodiscard]] unsigned char byte(std::size_t ahead = 0) const {
        return static_cast<std::size_t>(end_ - at_) > ahead ? static_cast<unsigned char>(at_[ahead])
                                                            : static_cast<unsigned char>(0);
    }
    [[nodiscard]] bool at_digit() const { return is_digit(byte()); }
    [[nodiscard]] bool at_letter() const { return letter().bytes != 0; }
    [[nodiscard]] static bool is_digit(unsigned char byte) { return byte >= '0' && byte <= '9'; }

    /// Passes spaces of every width, brackets and underscores.
    void skip_space();
    /// The sign here, without passing it.
    [[nodiscard]] SignText sign() const;
    /// Passes a sign if it is this one.
    bool pass(Sign wanted);
    /// Passes a word: letters with the dots among and behind them.
    WordText read_word();
    /// The rest, or one letter or sign of it, for messages.
    [[nodiscard]] std::string_view rest() const {
        return {at_, static_cast<std::size_t>(end_ - at_)};
    }

private:
    struct Letter {
        unsigned char folded = 0;
        unsigned char bytes = 0;
    };
    [[nodiscard]] Letter letter() const;
    [[nodiscard]] Letter wide_letter() const;
    [[nodiscard]] SignText wide_sign() const;

    const char* at_;
    const char* end_;
};

}  // namespace swathbook::detail
