#include "core/calibration/student_t.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace swathbook::calibration {
namespace {

struct TableRow {
    double degrees;
    double printed;
};

// Table A.3, Student's t distribution, column 0.975 (Journal of the American Statistical
// Association, 1959, as reprinted); 100 degrees and infinity from the NIST/SEMATECH e-Handbook of
// Statistical Methods, table of upper critical values. All to 0.001.
constexpr TableRow table[] = {
    {1, 12.706}, {2, 4.303},  {3, 3.182},  {4, 2.776},  {5, 2.571},  {6, 2.447},  {7, 2.365},
    {8, 2.306},  {9, 2.262},  {10, 2.228}, {11, 2.201}, {12, 2.179}, {13, 2.160}, {14, 2.145},
    {15, 2.131}, {16, 2.120}, {17, 2.110}, {18, 2.101}, {19, 2.093}, {20, 2.086}, {21, 2.080},
    {22, 2.074}, {23, 2.069}, {24, 2.064}, {25, 2.060}, {26, 2.056}, {27, 2.052}, {28, 2.048},
    {29, 2.045}, {30, 2.042}, {40, 2.021}, {60, 2.000}, {100, 1.984}};

TEST(StudentT, AgreesWithThePublishedTableToItsLastDigit) {
    for (const TableRow& row : table) {
        EXPECT_NEAR(student_t_95(row.degrees), row.printed, 0.000501) << row.degrees;
    }
    EXPECT_NEAR(student_t_95(std::numeric_limits<double>::infinity()), 1.960, 0.0005);
}

TEST(StudentT, OneAndTwoDegreesHaveClosedForms) {
    constexpr double pi = 3.14159265358979323846;
    // One degree is the Cauchy distribution: tan(pi (p - 1/2)).
    EXPECT_NEAR(student_t_95(1.0), std::tan(0.475 * pi), 1e-9);
    // Two degrees: (2p - 1) / sqrt(2 p (1 - p)).
    EXPECT_NEAR(student_t_95(2.0), 0.95 / std::sqrt(2.0 * 0.975 * 0.025), 1e-9);
    // Four degrees: 2 sqrt(q - 1), q = cos(acos(sqrt a) / 3) / sqrt a, a = 4 p (1 - p).
    const double a = 4.0 * 0.975 * 0.025;
    const double q = std::cos(std::acos(std::sqrt(a)) / 3.0) / std::sqrt(a);
    EXPECT_NEAR(student_t_95(4.0), 2.0 * std::sqrt(q - 1.0), 1e-9);
}

TEST(StudentT, FallsSteadilyAlsoBetweenWholeDegreesAndAcrossTheChangeOfMethod) {
    double before = student_t_95(1.0);
    for (double degrees = 1.01; degrees < 2000.0; degrees *= 1.01) {
        const double here = student_t_95(degrees);
        EXPECT_LT(here, before) << degrees;
        before = here;
    }
    EXPECT_NEAR(student_t_95(99.999999), student_t_95(100.0), 1e-8);
}

TEST(StudentT, TheTailBeyondTheFactorIsTwoAndAHalfPercent) {
    for (const double degrees : {1.0, 1.5, 3.7, 12.0, 55.5, 99.0, 150.0, 4000.0}) {
        EXPECT_NEAR(student_t_upper_tail(student_t_95(degrees), degrees), 0.025, 1e-12) << degrees;
    }
    EXPECT_NEAR(student_t_upper_tail(0.5, 1.0), 0.5 - std::atan(0.5) / 3.14159265358979323846,
                1e-14);
}

TEST(StudentT, FewerThanOneDegreeCountsAsOne) {
    EXPECT_DOUBLE_EQ(student_t_95(0.2), student_t_95(1.0));
    EXPECT_DOUBLE_EQ(student_t_95(std::nan("")), student_t_95(1.0));
}

}  // namespace
}  // namespace swathbook::calibration
