#pragma once

#include <cmath>
#include <cstdio>
#include <string>

#include "core/base/result.hpp"

/// What every example ends with: the answer in words, beside the figure worked out by hand.
namespace swathbook::examples {

/// What a person works out with a pencil, and how far the answer may be from it.
struct ByHand {
    double figure = 0.0;
    const char* unit = "";
    double within = 0.0;
};

/// Prints the answer beside the hand figure.
/// @return whether they agree
[[nodiscard]] inline bool agrees(const std::string& words, double answer, const ByHand& hand) {
    const bool is_same = std::fabs(answer - hand.figure) <= hand.within;
    std::printf("%s (by hand %.7g%s%s: %s)\n", words.c_str(), hand.figure,
                *hand.unit == '\0' ? "" : " ", hand.unit, is_same ? "agrees" : "DIFFERS");
    return is_same;
}

/// The status main returns: 0 only when every answer agreed.
[[nodiscard]] inline int status_of(const Result<bool>& all_agreed) {
    if (!all_agreed) {
        std::printf("%s: %s\n", all_agreed.error().field.c_str(),
                    all_agreed.error().detail.c_str());
        return 1;
    }
    return *all_agreed ? 0 : 1;
}

}  // namespace swathbook::examples
