#pragma once

#include <optional>
#include <string_view>

#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook {

/// Fails unless an amount is a number, above 0, and of a size that could be meant on the ground: a
/// speed of 300 mph or a pressure of 40 bar typed as 40 MPa is a slip of the pen, not an input.
/// The bounds are wide (a hand bottle to a tank car) and are no agronomic limits.
///
/// @param si    the amount in SI
/// @param typed what was typed; empty when it came from a program
/// @param field path of the request member, for the error
/// @param what  how a person calls it, e.g. "Ground speed"
/// @errors out_of_range
[[nodiscard]] Result<void> require_usable(double si, Kind kind, std::string_view typed,
                                          std::string_view field, std::string_view what);

template <Kind K>
[[nodiscard]] Result<void> require_usable(const Reading<K>& reading, std::string_view field,
                                          std::string_view what) {
    return require_usable(reading.value.si(), K, reading.text, field, what);
}

/// The same where the amount may be left out.
template <Kind K>
[[nodiscard]] Result<void> require_usable(const std::optional<Reading<K>>& reading,
                                          std::string_view field, std::string_view what) {
    return reading ? require_usable(*reading, field, what) : Result<void>{};
}

}  // namespace swathbook
