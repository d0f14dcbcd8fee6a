#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace swathbook {

/// How loudly a finding must be shown.
enum class Severity : std::uint8_t {
    note,     ///< good to know
    advice,   ///< a better way exists
    warning,  ///< the answer may mislead or a limit is near or exceeded
    stop,     ///< do not act on this answer until the finding is settled
};

[[nodiscard]] std::string_view word_of(Severity severity);

/// A remark returned beside an answer: advice, a limit hit, an extrapolation, a shortcut misused.
struct Finding {
    std::string code;  ///< permanent snake_case word for programs, e.g. "shortcut_tenfold"
    Severity severity = Severity::note;
    std::string text;  ///< for people: what was seen, the figures with units, what to do
    std::string
        source{};  ///< publication or label the remark rests on; empty when it is arithmetic

    // Out of line, as those of Error.
    Finding();
    Finding(std::string_view word, Severity how_loud, std::string_view sentences,
            std::string_view publication = {});
    Finding(const Finding& other);
    Finding(Finding&& other) noexcept;
    Finding& operator=(const Finding& other);
    Finding& operator=(Finding&& other) noexcept;
    ~Finding();
};

}  // namespace swathbook
