#pragma once

#include <string>
#include <string_view>

#include "core/base/notes.hpp"
#include "core/quantity/label_rate.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook {

/// A number for people: four significant digits, never dropping a digit before the point, no
/// trailing zeros, point as decimal mark, U+2212 never used. The one rounding rule of the project;
/// half rounds away from zero on the decimal digits of the shortest round-trip text. 43560 ->
/// "43560", 12.9874 -> "12.99", 0.1 -> "0.1".
[[nodiscard]] std::string show_number(double number, int significant = 4);

/// The same with a fixed count of decimals: show_fixed(45.88, 2) -> "45.88".
[[nodiscard]] std::string show_fixed(double number, int decimals);

/// A value of a kind in a unit written as parse_unit reads it: "12.99 gal/ac".
[[nodiscard]] std::string show(double si, Kind kind, std::string_view unit, int significant = 4);
/// The same in the kind's usual unit of the system.
[[nodiscard]] std::string show(double si, Kind kind, UnitSystem units, int significant = 4);

/// The number of a value in a unit text, without printing it; unit text must be one parse_unit
/// reads for the kind.
[[nodiscard]] double number_in(double si, Kind kind, std::string_view unit);

template <Kind K>
[[nodiscard]] std::string show(Quantity<K> quantity, UnitSystem units, int significant = 4) {
    return show(quantity.si(), K, units, significant);
}
template <Kind K>
[[nodiscard]] std::string show(Quantity<K> quantity, std::string_view unit, int significant = 4) {
    return show(quantity.si(), K, unit, significant);
}
/// What was typed, or the value in the system's unit when nothing was.
template <Kind K>
[[nodiscard]] std::string show(const Reading<K>& reading, UnitSystem units) {
    return reading.text.empty() ? show(reading.value, units) : reading.text;
}
[[nodiscard]] std::string show(const LabelRate& rate, UnitSystem units);

}  // namespace swathbook
