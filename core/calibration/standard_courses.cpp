#include "core/calibration/standard_courses.hpp"

#include <array>
#include <cmath>

namespace swathbook::calibration {
namespace {

constexpr double acre = acres.si;

constexpr std::array courses{
    StandardCourse{"1/128 ac", acre / 128.0, "fl oz caught = gal/ac", false, 340.0},
    StandardCourse{"10/128 ac", 10.0 * acre / 128.0, "fl oz caught / 10 = gal/ac", false, 3400.0},
    StandardCourse{"1/10 ac", acre / 10.0, "gal caught x 10 = gal/ac", false, 4356.0},
    StandardCourse{"1/8 ac", acre / 8.0, "pt caught = gal/ac", false, 5445.0},
    StandardCourse{"1/4 ac", acre / 4.0, "gal caught x 4 = gal/ac", false, 10890.0},
    StandardCourse{"10 m2", 10.0, "mL caught = L/ha", true, 0.0},
    StandardCourse{"25 m2", 25.0, "L caught x 400 = L/ha", true, 0.0},
    StandardCourse{"100 m2", 100.0, "L caught x 100 = L/ha", true, 0.0},
    StandardCourse{"1000 m2", 1000.0, "L caught x 10 = L/ha", true, 0.0},
};

}  // namespace

std::span<const StandardCourse> standard_courses() {
    return courses;
}

const StandardCourse* standard_course_near(double area_si, double closeness) {
    const StandardCourse* nearest = nullptr;
    double nearest_off = closeness;
    for (const StandardCourse& course : courses) {
        const double off = std::fabs(area_si / course.area_si - 1.0);
        if (off <= nearest_off) {
            nearest = &course;
            nearest_off = off;
        }
    }
    return nearest;
}

}  // namespace swathbook::calibration
