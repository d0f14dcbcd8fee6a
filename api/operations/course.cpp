#include "core/calibration/course.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

using calibration::CourseAnswer;
using calibration::CourseRequest;
using calibration::CourseRow;

template <>
struct Description<CourseRequest> {
    static constexpr std::string_view name = "CourseRequest";
    static constexpr auto fields() {
        using T = CourseRequest;
        return std::array{
            field<&T::width>("width", "Ground width served by the tips whose spray is caught")
                .required(),
            field<&T::speed>("speed", "Ground speed, to tell how long each course takes"),
            field<&T::part>("part", "One course wanted, by its area").like("1/8 ac"),
            field<&T::laid_length>("laid_length", "A course length already laid out")
                .like("209 ft"),
            field<&T::timing_slip>("timing_slip",
                                   "Slip of the stopwatch and its user; 0.25 s when not entered")
                .like("0.3 s"),
            field<&T::timing_limit>("timing_limit",
                                    "Largest timing error accepted; 2 % when not entered")
                .like("3 %")};
    }
};

template <>
struct Description<CourseRow> {
    static constexpr std::string_view name = "CourseRow";
    static constexpr auto fields() {
        using T = CourseRow;
        return std::array{
            field<&T::part>("part", "Part of an acre, or the area").labelled("Course"),
            field<&T::rule>("rule", "Short rule that holds on this course; empty when none does")
                .spoken()
                .labelled("Short rule"),
            field<&T::area>("area", "Ground the catch stands for").shown_in("ft2", "m2"),
            field<&T::length>("length", "Exact course length"),
            field<&T::practical_length>("practical_length",
                                        "Length to stake out: whole feet or tenths of a metre")
                .labelled("Length to stake out"),
            field<&T::practical_error>("practical_error",
                                       "What the short rule reads too much on the practical length")
                .labelled("Rule then errs"),
            field<&T::printed_length>("printed_length",
                                      "Length as tables in print give it (340 ft2 over the width)")
                .labelled("Length in print"),
            field<&T::time>("time", "Time to cover the course at the speed"),
            field<&T::timing_error>("timing_error", "Stopwatch slip as a share of that time"),
            field<&T::one_fluid_ounce>("one_fluid_ounce", "Output that one fl oz caught means")
                .labelled("1 fl oz caught is"),
            field<&T::one_pint>("one_pint", "Output that one pint caught means")
                .labelled("1 pint caught is"),
            field<&T::one_gallon>("one_gallon", "Output that one gallon caught means")
                .labelled("1 gallon caught is"),
            field<&T::one_millilitre>("one_millilitre", "Output that one millilitre caught means")
                .labelled("1 mL caught is"),
            field<&T::one_litre>("one_litre", "Output that one litre caught means")
                .labelled("1 L caught is"),
            field<&T::fluid_ounces_divisor>("fluid_ounces_divisor",
                                            "Divide US fluid ounces caught by this to get gal/ac")
                .labelled("Divide fl oz by"),
            field<&T::recommended>("recommended",
                                   "The shortest standard course that can be timed well enough")};
    }
};

template <>
struct Description<CourseAnswer> {
    static constexpr std::string_view name = "CourseAnswer";
    static constexpr auto fields() {
        using T = CourseAnswer;
        return std::array{
            field<&T::rows>("rows", "Standard courses for the width").labelled("Courses"),
            field<&T::recommended>("recommended", "Part of the course to lay out"),
            field<&T::shortest_length>("shortest_length",
                                       "Shortest course whose timing error is within the limit"),
            field<&T::chosen>("chosen", "The course of the part asked for"),
            field<&T::laid>("laid", "The course of the length already laid out")};
    }
};

Operation course_operation();
Operation course_operation() {
    return operation<&calibration::course>(
        "course",
        "How long a calibration course must be for a width, whether it can be timed, and what a "
        "catch on it means.",
        {1, 24});
}

}  // namespace swathbook::api
