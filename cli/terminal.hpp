#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "cli/exit_status.hpp"
#include "core/base/error.hpp"

namespace swathbook::cli {

enum class Ink { plain, bold, faint, red, yellow, blue };

/// Where text for people goes: how wide it is and whether it takes colour.
struct Paper {
    std::size_t width = 80;
    bool colour = false;

    /// The text in that ink, or the bare text where there is no colour.
    [[nodiscard]] std::string in(Ink ink, std::string_view text) const;
};

/// What standard output can show. Colour only on a terminal that is not "dumb", and never when
/// NO_COLOR is set and not empty (no-color.org); width from the terminal, 80 elsewhere.
[[nodiscard]] Paper paper_of_output();
[[nodiscard]] Paper paper_of_errors();

/// Data, to standard output. A full disk is noticed by finish_output().
void write_output(std::string_view text);
/// For people, to standard error.
void write_error(std::string_view text);
/// "swathbook: field: what happened [code]" on standard error, and the status to end with.
[[nodiscard]] ExitStatus report(const Error& error);
/// A wrong command line: the fault and where help is.
[[nodiscard]] ExitStatus usage_fault(std::string_view what, std::string_view command = {});
/// Flushes standard output. @errors io when something could not be written
[[nodiscard]] ExitStatus finish_output(ExitStatus status);

/// Breaks text into lines of at most `width` columns, each begun with `indent` spaces.
[[nodiscard]] std::string wrapped(std::string_view text, std::size_t width, std::size_t indent);
/// Core writes plain letters; people read signs: "+-5 %" becomes "±5 %".
[[nodiscard]] std::string with_signs(std::string text);
/// How many columns UTF-8 text takes: one for each code point.
[[nodiscard]] std::size_t columns_of(std::string_view text);
/// The text filled up with spaces to so many columns.
[[nodiscard]] std::string padded(std::string_view text, std::size_t columns,
                                 bool to_the_right = false);

}  // namespace swathbook::cli
