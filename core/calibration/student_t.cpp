#include "core/calibration/student_t.hpp"

#include <array>
#include <cmath>

#include "core/base/elementary.hpp"

namespace swathbook::calibration {
namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double normal_97_5 = 1.959963984540054;
constexpr double upper_tail_wanted = 0.025;

/// gamma(x + 1/2) / gamma(x): steps up to where the series in 1/x is good to the last digit.
double gamma_half_step(double x) {
    double factor = 1.0;
    while (x < 20.0) {
        factor *= x / (x + 0.5);
        x += 1.0;
    }
    // Expansion of gamma(x+1/2)/gamma(x) / sqrt(x): DLMF 5.11.13 with a = 1/2, b = 0.
    constexpr std::array coefficients{-1.0 / 8.0,          1.0 / 128.0,       5.0 / 1024.0,
                                      -21.0 / 32768.0,     -399.0 / 262144.0, 869.0 / 4194304.0,
                                      39325.0 / 33554432.0};
    const double inverse = 1.0 / x;
    double power = 1.0;
    double series = 1.0;
    for (const double coefficient : coefficients) {
        power *= inverse;
        series += coefficient * power;
    }
    return factor * std::sqrt(x) * series;
}

/// Continued fraction of the incomplete beta function by Lentz's rule; DLMF 8.17.22.
double beta_fraction(double x, double a, double b) {
    constexpr double tiny = 1e-300;
    constexpr double enough = 1e-16;
    const auto not_zero = [](double number) { return std::fabs(number) < tiny ? tiny : number; };
    double c = 1.0;
    double d = 1.0 / not_zero(1.0 - (a + b) * x / (a + 1.0));
    double value = d;
    for (int m = 1; m < 1000; ++m) {
        const double even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        d = 1.0 / not_zero(1.0 + even * d);
        c = not_zero(1.0 + even / c);
        value *= d * c;
        const double odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        d = 1.0 / not_zero(1.0 + odd * d);
        c = not_zero(1.0 + odd / c);
        const double step = d * c;
        value *= step;
        if (std::fabs(step - 1.0) < enough) {
            break;
        }
    }
    return value;
}

double expansion_for_many(double degrees) {
    const double z = normal_97_5;
    const double z2 = z * z;
    const double first = z * (z2 + 1.0) / 4.0;
    const double second = z * ((5.0 * z2 + 16.0) * z2 + 3.0) / 96.0;
    const double third = z * (((3.0 * z2 + 19.0) * z2 + 17.0) * z2 - 15.0) / 384.0;
    const double fourth =
        z * ((((79.0 * z2 + 776.0) * z2 + 1482.0) * z2 - 1920.0) * z2 - 945.0) / 92160.0;
    const double inverse = 1.0 / degrees;
    return z + inverse * (first + inverse * (second + inverse * (third + inverse * fourth)));
}

/// Density of t, with the constant of the degrees taken out so that it is computed once.
double density(double t, double degrees, double constant) {
    return constant * elementary::power(1.0 + t * t / degrees, -0.5 * (degrees + 1.0));
}

}  // namespace

double student_t_upper_tail(double t, double degrees) {
    const double a = 0.5 * degrees;
    constexpr double b = 0.5;
    const double x = degrees / (degrees + t * t);
    const double inverse_beta = gamma_half_step(a) / std::sqrt(pi);
    const double front = elementary::power(x, a) * std::sqrt(1.0 - x) * inverse_beta;
    if (x < (a + 1.0) / (a + b + 2.0)) {
        return 0.5 * front * beta_fraction(x, a, b) / a;
    }
    return 0.5 * (1.0 - front * beta_fraction(1.0 - x, b, a) / b);
}

double student_t_95(double degrees) {
    if (!(degrees >= 1.0)) {
        degrees = 1.0;
    }
    if (degrees > 1e15) {
        return normal_97_5;
    }
    const double start = expansion_for_many(degrees);
    if (degrees >= 100.0) {
        return start;
    }
    // The tail is convex and the start lies left of the point, so Newton's steps only climb.
    const double constant = gamma_half_step(0.5 * degrees) / std::sqrt(pi * degrees);
    double t = start;
    for (int round = 0; round < 60; ++round) {
        const double step =
            (student_t_upper_tail(t, degrees) - upper_tail_wanted) / density(t, degrees, constant);
        t += step;
        if (std::fabs(step) < 1e-12 * t) {
            break;
        }
    }
    return t;
}

}  // namespace swathbook::calibration
