#pragma once

/// Sines, angles, logarithms and powers from + - * / and square root alone.
///
/// The C libraries of two machines round the last bit of sin, pow or log each in their own way. The
/// arithmetic of IEEE 754 does not: with no contraction of a * b + c, what is written here gives
/// the same bits natively and in WebAssembly, and so does every answer of the core. The core asks
/// these, never std::sin and the like (tools/check_layers.py).
///
/// @accuracy 1e-15 relative where nothing else is said, and near a zero of sine or cosine 1e-16
///           absolute; measured against the C library on a million arguments each in
///           tests/unit/base/elementary_test.cpp
/// @source   the power series: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions,
///           4.1.27, 4.2.1, 4.3.65, 4.3.66, 4.4.42 (https://dlmf.nist.gov/4)
namespace swathbook::elementary {

/// @param radians -1000 to 1000; NaN beyond
[[nodiscard]] double sine(double radians);
/// @param radians -1000 to 1000; NaN beyond
[[nodiscard]] double cosine(double radians);

/// Angle of the direction (across, along) from the direction along: atan2.
/// @return radians in [-pi, pi]; 0 when both are 0; NaN when one is not finite
[[nodiscard]] double angle_of(double across, double along);

/// sqrt(a^2 + b^2).
/// @param a,b 0 or 1e-150 to 1e150 in size
[[nodiscard]] double hypotenuse(double a, double b);

/// Natural logarithm.
/// @param number above 0; 0 gives minus infinity, less gives NaN
[[nodiscard]] double logarithm(double number);

/// e to the power; infinity above 709.78, 0 below -746.
[[nodiscard]] double exponential(double exponent);

/// e to the power, less one, with all its digits where that is small.
[[nodiscard]] double exponential_less_one(double exponent);

/// @param base 0 or above (0 to a power above 0 is 0); less gives NaN
/// @accuracy 1e-15 times (1 + |exponent x log base|), relative
[[nodiscard]] double power(double base, double exponent);

}  // namespace swathbook::elementary
