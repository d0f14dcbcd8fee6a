#include "core/base/elementary.hpp"

#include <array>
#include <cmath>
#include <limits>
#include <span>

namespace swathbook::elementary {
namespace {

// Constants that one double cannot hold are cut in pieces: the first ones so short that a small
// whole multiple of them is exact.
constexpr double half_pi_1 = 0x1.921fb544p+0;
constexpr double half_pi_2 = 0x1.0b4611a6p-34;
constexpr double half_pi_3 = 0x1.3198a2e037073p-69;
constexpr double half_pi = 0x1.921fb54442d18p+0;
constexpr double half_pi_rest = 0x1.1a62633145c07p-54;
constexpr double log_two_1 = 0x1.62e42feep-1;
constexpr double log_two_2 = 0x1.a39ef35793c76p-33;

/// c[0] + c[1] z + c[2] z^2 + ...
double polynomial(std::span<const double> coefficients, double z) {
    double sum = 0.0;
    for (std::size_t i = coefficients.size(); i-- > 0;) {
        sum = sum * z + coefficients[i];
    }
    return sum;
}

/// (-1)^(n+1) / (2n + first)! for n = 0, 1, ...: the sines and cosines without their first terms.
template <std::size_t Count>
constexpr std::array<double, Count> inverse_factorials(int first) {
    std::array<double, Count> terms{};
    double factorial = 1.0;
    for (int i = 2; i <= first; ++i) {
        factorial *= i;
    }
    double sign = -1.0;
    for (std::size_t n = 0; n < Count; ++n) {
        terms[n] = sign / factorial;
        sign = -sign;
        first += 2;
        factorial *= static_cast<double>(first) * (first - 1);
    }
    return terms;
}

/// scale / (2n + 3) with the signs of the arctangent (alternating) or of its hyperbolic twin.
template <std::size_t Count>
constexpr std::array<double, Count> odd_fractions(double scale, double sign) {
    std::array<double, Count> terms{};
    double factor = scale * sign;
    for (std::size_t n = 0; n < Count; ++n) {
        terms[n] = factor / (2.0 * static_cast<double>(n) + 3.0);
        factor *= sign;
    }
    return terms;
}

/// An angle less a whole number of right angles: within pi/4 of zero.
struct Reduced {
    double angle;
    int quarter;  // 0 to 3
};

constexpr double largest_angle = 1000.0;
constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();

Reduced reduce(double radians) {
    if (!(std::fabs(radians) <= largest_angle)) {
        return {not_a_number, 0};
    }
    const double turns = std::nearbyint(radians / half_pi);
    const double angle = ((radians - turns * half_pi_1) - turns * half_pi_2) - turns * half_pi_3;
    return {angle, static_cast<int>(turns) & 3};
}

double sine_near_zero(double x) {
    static constexpr auto terms = inverse_factorials<8>(3);
    const double square = x * x;
    return x + x * square * polynomial(terms, square);
}

double cosine_near_zero(double x) {
    static constexpr auto terms = inverse_factorials<8>(4);
    const double square = x * x;
    const double half = 0.5 * square;
    const double head = 1.0 - half;
    return head + (((1.0 - head) - half) - square * square * polynomial(terms, square));
}

/// Of the quarter turns that an angle was reduced by: sine, cosine, -sine, -cosine.
double wave(Reduced reduced, int shift) {
    const int quarter = (reduced.quarter + shift) & 3;
    const double value =
        (quarter & 1) != 0 ? cosine_near_zero(reduced.angle) : sine_near_zero(reduced.angle);
    return quarter >= 2 ? -value : value;
}

/// atan(y / x) for 0 <= y <= x, x > 0: the nearest of the angles of 0, 1/4, ... 1, and the rest by
/// its series.
double first_octant(double y, double x) {
    static constexpr std::array angles{0.0, 0x1.f5b75f92c80ddp-3, 0x1.dac670561bb4fp-2,
                                       0x1.4978fa3269ee1p-1, 0x1.921fb54442d18p-1};
    static constexpr auto terms = odd_fractions<8>(1.0, -1.0);
    const double nearest = std::nearbyint(4.0 * (y / x));
    const double step = nearest / 4.0;
    const double rest = (y - step * x) / (x + step * y);
    const double square = rest * rest;
    return angles[static_cast<std::size_t>(nearest)] +
           (rest + rest * square * polynomial(terms, square));
}

/// e^x - 1 for |x| <= 0.35.
double little_exponential(double x) {
    constexpr int terms = 14;
    double sum = 0.0;
    for (int n = terms; n >= 2; --n) {
        sum = (sum + 1.0) * x / n;
    }
    return x + x * sum;
}

struct PowerOfTwo {
    double rest;  // within half of log 2
    int power;
};

PowerOfTwo powers_of_two_in(double exponent) {
    const double power = std::nearbyint(exponent / (log_two_1 + log_two_2));
    return {(exponent - power * log_two_1) - power * log_two_2, static_cast<int>(power)};
}

constexpr double largest_exponent = 709.782712893384;
constexpr double smallest_exponent = -746.0;

}  // namespace

double sine(double radians) {
    return wave(reduce(radians), 0);
}

double cosine(double radians) {
    return wave(reduce(radians), 1);
}

double angle_of(double across, double along) {
    const double y = std::fabs(across);
    const double x = std::fabs(along);
    if (!std::isfinite(x) || !std::isfinite(y)) {
        return not_a_number;
    }
    double angle = 0.0;
    if (y > x) {
        angle = half_pi - (first_octant(x, y) - half_pi_rest);
    } else if (x > 0.0) {
        angle = first_octant(y, x);
    }
    if (along < 0.0) {
        angle = 2.0 * half_pi - (angle - 2.0 * half_pi_rest);
    }
    return across < 0.0 ? -angle : angle;
}

double hypotenuse(double a, double b) {
    return std::sqrt(a * a + b * b);
}

double logarithm(double number) {
    if (!(number > 0.0) || std::isinf(number)) {
        return number == 0.0  ? -std::numeric_limits<double>::infinity()
               : number > 0.0 ? number
                              : not_a_number;
    }
    // 2 / (2n + 3) z^n with z at most 0.0295
    static constexpr auto terms = odd_fractions<10>(2.0, 1.0);
    constexpr double root_half = 0.70710678118654752440;
    int power = 0;
    double mantissa = std::frexp(number, &power);
    if (mantissa < root_half) {
        mantissa *= 2.0;
        --power;
    }
    // log(1 + f) = f - f^2/2 + s (f^2/2 + R) with s = f / (2 + f), R = 2/3 s^2 + 2/5 s^4 + ...
    const double f = mantissa - 1.0;
    const double s = f / (2.0 + f);
    const double square = s * s;
    const double half = 0.5 * f * f;
    const double series = square * polynomial(terms, square);
    return power * log_two_1 - ((half - (s * (half + series) + power * log_two_2)) - f);
}

double exponential(double exponent) {
    if (std::isnan(exponent)) {
        return exponent;
    }
    if (exponent > largest_exponent) {
        return std::numeric_limits<double>::infinity();
    }
    if (exponent < smallest_exponent) {
        return 0.0;
    }
    const PowerOfTwo split = powers_of_two_in(exponent);
    return std::ldexp(1.0 + little_exponential(split.rest), split.power);
}

double exponential_less_one(double exponent) {
    constexpr double little = 0.35;
    return std::fabs(exponent) <= little ? little_exponential(exponent)
                                         : exponential(exponent) - 1.0;
}

double power(double base, double exponent) {
    if (base == 0.0 && exponent > 0.0) {
        return 0.0;
    }
    return exponential(exponent * logarithm(base));
}

}  // namespace swathbook::elementary
