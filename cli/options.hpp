#pragma once

#include <span>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace swathbook::cli {

/// The most words one flag takes: a list may be long (a track is a file, not a list of words).
inline constexpr int many_words = 1 << 20;

/// The arguments as the option reader takes them: a word like "-4.5" is a value, not a flag, and is
/// marked so; restored() takes the mark off again. A flag may be written with the underscores of
/// its JSON key: --course_length is --course-length.
[[nodiscard]] std::vector<std::string> marked(std::span<const std::string> arguments);
[[nodiscard]] std::vector<std::string> restored(std::vector<std::string> words);

/// A flag given twice that takes one value: its name, or nothing.
[[nodiscard]] std::string repeated_flag(const CLI::App& app,
                                        std::span<const std::string> arguments);

/// Every long flag of a command: "--width", ...
[[nodiscard]] std::vector<std::string> flags_in(const CLI::App& app);

}  // namespace swathbook::cli
