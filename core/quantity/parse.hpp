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
/// "17 lb/100 gal", "12,5 L/ha", "0.75 lb a.e./gal", "72 °F", "1:30". English and Spanish words.
/// The unit must be written; a bare number is refused. Text with two meanings ("oz", "1,250", "%"
/// in a rate, "ton", "gr", "#") is refused with the choices named. gal, qt, pt and fl oz are US;
/// imperial must be written. An ounce is a fluid ounce or of weight without saying so only behind
/// "1 qt" or "1 lb", or where it counts a.i. or a.e. Below zero only temperatures and angles.
///
/// @param text what was typed; at most 200 bytes
/// @param kind what it is meant to be
/// @return value in SI, with half the last typed digit as its resolution: of a fraction half of one
///         part ("2-2/3 pt" -> 1/6 pt), of a sum the finest term's
/// @accuracy the number correctly rounded up to 15 digits, then one rounding for each unit and for
///           each term of a sum; no heap allocation unless refused
/// @errors invalid_input when it cannot be understood, is ambiguous, or has a unit of another kind;
///         out_of_range below absolute zero
/// @source docs/methods/quantity.md
/// @cases  tests/unit/quantity/parse_test.cpp, refusals_test.cpp, resolution_test.cpp
[[nodiscard]] Result<ParsedAmount> parse_amount(std::string_view text, Kind kind);

/// How many SI units one of the named unit is, for the kinds without an offset; "lb/100 gal", "fl
/// oz/ac".
/// @errors invalid_input as parse_amount
[[nodiscard]] Result<double> parse_unit(std::string_view unit, Kind kind);

/// Reads a number and a unit kept apart, as in {"value": 20, "unit": "gal/ac"}.
[[nodiscard]] Result<ParsedAmount> parse_amount(double number, std::string_view unit, Kind kind);

/// Reads a label rate on whatever basis the text says: "2 qt/ac", "17 lb/100 gal", "0.25 % v/v",
/// "1.5 lb a.e./ac".
/// @return the rate with the basis the text says: mass per area without a.i. or a.e. is product
/// @errors invalid_input when the basis is missing or ambiguous; the message names the choices;
///         unsupported for a rate on a basis no label rate has here (a.e. per volume of mix, volume
///         per cut)
/// @cases  tests/unit/quantity/label_rate_test.cpp
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
