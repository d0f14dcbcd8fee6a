#pragma once

namespace swathbook::calibration {

/// The factor that makes a standard uncertainty with so many degrees of freedom a 95 % interval:
/// the 97.5 % point of Student's t.
///
/// @param degrees_of_freedom  at least 1, may be fractional; infinity gives the normal 1.96
/// @return factor, falling from 12.706 at 1 to 1.960 at infinity
/// @accuracy relative error below 1e-10
/// @valid    degrees below 1 (or NaN) count as 1: nothing can be said with fewer
/// @source   tail by the continued fraction of the incomplete beta function (NIST Digital Library
///           of Mathematical Functions 8.17.22); from 100 degrees up by the expansion in 1/degrees
///           (Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.5)
/// @cases    tests/unit/calibration/student_t_test.cpp
[[nodiscard]] double student_t_95(double degrees_of_freedom);

/// Probability that a t-distributed number with so many degrees of freedom exceeds t.
///
/// @param t  above 0
[[nodiscard]] double student_t_upper_tail(double t, double degrees_of_freedom);

}  // namespace swathbook::calibration
