#pragma once

#include <string_view>

#include "core/base/result.hpp"
#include "core/quantity/label_rate.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook {

/// What a piece of quantity text meant, before it is given its C++ type.
struct ParsedAmount {
    double si = 0.0;
    double half_step_si = 0.0;  ///< half the last digit typed, in SI
};

/// Reads what labels and clipboards say: "26 ft", "6 ft 2 in", "1 qt + 10 fl oz", "2-2/3 pt/ac",
/// "17 lb/100 gal", "12,5 L/ha", "0.75 lb a.e./gal", "72 °F". The unit must be written; a bare
/// number is refused unless the kind is a fraction or count. Text with two meanings ("oz", "1,250",
/// "%" in a rate) is refused with the choices named.
///
/// @param text what was typed; at most 200 bytes
/// @param kind what it is meant to be
/// @return value in SI, with half the last typed digit as its resolution
/// @errors invalid_input when it cannot be understood, is ambiguous, or has a unit of another kind
[[nodiscard]] Result<ParsedAmount> parse_amount(std::string_view text, Kind kind);

/// How many SI units one of the named unit is, for the kinds without an offset; "lb/100 gal", "fl
/// oz/ac".
/// @errors invalid_input as parse_amount
[[nodiscard]] Result<double> parse_unit(std::string_view unit, Kind kind);

/// Reads a number and a unit kept apart, as in {"value": 20, "unit": "gal/ac"}.
[[nodiscard]] Result<ParsedAmount> parse_amount(double number, std::string_view unit, Kind kind);

/// Reads a label rate on whatever basis the text says: "2 qt/ac", "17 lb/100 gal", "0.25 % v/v",
/// "1.5 lb a.e./ac".
/// @errors invalid_input when the basis is missing or ambiguous; the message names the choices
[[nodiscard]] Result<LabelRate> parse_label_rate(std::string_view text);

template <Kind K>
[[nodiscard]] Result<Reading<K>> parse(std::string_view text) {
    return parse_amount(text, K).map([text](ParsedAmount parsed) {
        Reading<K> reading{Quantity<K>::from_si(parsed.si)};
        reading.half_step_si = parsed.half_step_si;
        reading.text = std::string(text);
        return reading;
    });
}

}  // namespace swathbook
