#pragma once

#include <optional>
#include <string>
#include <vector>

namespace swathbook::judges {

/// One question to a reference program: how many `to` is one `from`?
struct Question {
    std::string from;
    std::string to;
};

/// Asks GNU units (the `units` binary, Debian package units) all questions in one run.
/// @return NaN where it had no answer; empty when the program could not be run
std::vector<double> gnu_units(const std::vector<Question>& questions);

/// Which words GNU units has a meaning for, in one run; one answer for each word.
std::vector<bool> known_to_gnu_units(const std::vector<std::string>& words);

/// Asks udunits2 (the C library, Debian package libudunits2-dev) to convert a value.
/// @return nothing when a unit is unknown to it or the two do not convert
std::optional<double> udunits(double number, const std::string& from, const std::string& to);

}  // namespace swathbook::judges
