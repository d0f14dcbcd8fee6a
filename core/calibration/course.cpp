#include "core/calibration/course.hpp"

#include <cmath>

#include <fmt/format.h>

#include "core/calibration/entry_limits.hpp"
#include "core/calibration/standard_courses.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

constexpr double usual_slip_s = 0.25;
constexpr double usual_limit = 0.02;
/// Nearer than this to a standard course, its rule may be used and the rest is named in percent.
constexpr double standard_closeness = 0.01;
constexpr double largest_course_si = 10.0 * acres.si;

struct Setting {
    double width = 0.0;
    double speed = 0.0;  ///< 0 when not entered
    double slip = usual_slip_s;
    double limit = usual_limit;
    UnitSystem units = UnitSystem::us;
};

Result<void> check(const CourseRequest& request, const Notes& notes) {
    SWATHBOOK_CHECK(within(request.width, width_limits, "width", "Width", notes));
    SWATHBOOK_CHECK(within(request.speed, speed_limits, "speed", "Speed", notes));
    SWATHBOOK_CHECK(within(request.part, area_limits, "part", "Part of an acre", notes));
    SWATHBOOK_CHECK(within(request.laid_length, course_length_limits, "laid_length",
                           "Length already laid out", notes));
    SWATHBOOK_CHECK(
        within(request.timing_slip, slip_limits, "timing_slip", "Stopwatch slip", notes));
    constexpr EntryLimits limit_limits{Kind::fraction, 0.001, 0.5,
                                       "a wanted timing error is between 0.1 and 50 %"};
    SWATHBOOK_CHECK(
        within(request.timing_limit, limit_limits, "timing_limit", "Timing limit", notes));
    if (request.part && request.part->value.si() > largest_course_si) {
        return fail(ErrorCode::out_of_range, "part",
                    fmt::format("The course is {}. A catch or refill course larger than 10 ac is a "
                                "field: calibrate by refill of the known area instead.",
                                show(*request.part, notes.units())));
    }
    return {};
}

/// Tables in print divide 340 (not 340.3125) square feet by the width; an exact half goes down.
double printed_feet(double area_ft2, double width_ft) {
    return std::ceil(area_ft2 / width_ft - 0.5);
}

double practical(double length_si, UnitSystem units) {
    const double step = units == UnitSystem::us ? feet.si : 0.1;
    const double rounded = std::round(length_si / step) * step;
    return rounded > 0.0 ? rounded : length_si;
}

void tell_what_a_catch_means(CourseRow& row) {
    const double per_volume = 1.0 / row.area.si();
    row.one_fluid_ounce = MixPerArea::from_si(us_fluid_ounces.si * per_volume);
    row.one_pint = MixPerArea::from_si(us_pints.si * per_volume);
    row.one_gallon = MixPerArea::from_si(us_gallons.si * per_volume);
    row.one_millilitre = MixPerArea::from_si(millilitres.si * per_volume);
    row.one_litre = MixPerArea::from_si(litres.si * per_volume);
    row.fluid_ounces_divisor = ounces_per_gallon_per_acre(row.area.si());
}

void tell_the_time(CourseRow& row, const Setting& setting) {
    if (setting.speed > 0.0) {
        row.time = Duration::from_si(row.length.si() / setting.speed);
        row.timing_error = Fraction::from_si(setting.slip / row.time->si());
    }
}

CourseRow row_of(double area_si, const StandardCourse* standard, const Setting& setting) {
    CourseRow row;
    row.area = Area::from_si(area_si);
    row.length = Length::from_si(area_si / setting.width);
    const double laid = practical(row.length.si(), setting.units);
    row.practical_length = Length::from_si(laid);
    // The rule takes the catch for one of the exact area: on a shorter course it reads too little.
    row.practical_error = Fraction::from_si(laid / row.length.si() - 1.0);
    if (standard != nullptr) {
        row.part = standard->name;
        row.rule = standard->rule;
        if (standard->printed_area_ft2 > 0.0) {
            row.printed_length =
                Length::of(printed_feet(standard->printed_area_ft2, setting.width / feet.si), feet);
        }
    } else {
        row.part = show(row.area, setting.units == UnitSystem::us ? "ft2" : "m2");
    }
    tell_what_a_catch_means(row);
    tell_the_time(row, setting);
    return row;
}

CourseRow laid_row(double length_si, const Setting& setting) {
    const double area = length_si * setting.width;
    const StandardCourse* standard = standard_course_near(area, standard_closeness);
    CourseRow row = row_of(area, nullptr, setting);
    row.practical_length = row.length;
    row.practical_error = Fraction::from_si(0.0);
    if (standard != nullptr) {
        row.part = standard->name;
        row.rule = standard->rule;
        row.practical_error = Fraction::from_si(area / standard->area_si - 1.0);
    }
    return row;
}

void say_laid(const CourseRow& laid, const Setting& setting, Notes& notes) {
    if (!laid.rule.empty()) {
        notes.find(Severity::note, "shortcut_belongs",
                   fmt::format("The laid course covers {}, {} ({} from it): {}.",
                               show(laid.area, notes.units() == UnitSystem::us ? "ft2" : "m2"),
                               laid.part, show(laid.practical_error, notes.units(), 2), laid.rule));
        return;
    }
    const double metric_divisor = laid.area.si() / 10.0;
    notes.find(
        Severity::warning, "shortcut_does_not_belong",
        fmt::format("The laid course covers {}; no shortcut belongs to it. Divide fluid ounces "
                    "caught by {} for gal/ac, or millilitres by {} for L/ha.",
                    show(laid.area, setting.units == UnitSystem::us ? "ft2" : "m2"),
                    show_number(laid.fluid_ounces_divisor, 4), show_number(metric_divisor, 4)));
}

/// The shortest standard course of the person's own units that can be timed well enough.
void recommend(CourseAnswer& answer, const Setting& setting, Notes& notes) {
    if (setting.speed <= 0.0) {
        notes.find(Severity::advice, "speed_not_entered",
                   "Enter the ground speed: without it nobody can say whether a course is long "
                   "enough to time.");
        return;
    }
    answer.shortest_length = Length::from_si(setting.speed * setting.slip / setting.limit);
    const bool metric = setting.units == UnitSystem::metric;
    for (CourseRow& row : answer.rows) {
        row.recommended = false;
    }
    for (std::size_t i = 0; i < answer.rows.size(); ++i) {
        CourseRow& row = answer.rows[i];
        if (standard_courses()[i].metric == metric && row.timing_error->si() < setting.limit) {
            row.recommended = true;
            answer.recommended = row.part;
            return;
        }
    }
    notes.find(
        Severity::warning, "no_standard_course",
        fmt::format("At {} no standard course is long enough: a slip of {} stays under {} only "
                    "from {} on. Lay out that length and let the catch be computed.",
                    show(Speed::from_si(setting.speed), notes.units()),
                    show(Duration::from_si(setting.slip), notes.units()),
                    show(Fraction::from_si(setting.limit), notes.units()),
                    show(*answer.shortest_length, notes.units())));
}

void show_work(const CourseAnswer& answer, const Setting& setting, Notes& notes) {
    for (const CourseRow& row : answer.rows) {
        notes.show([&] {
            const bool us = setting.units == UnitSystem::us;
            return Step{fmt::format("Course of {}", row.part),
                        fmt::format("{} / {}", show(row.area, us ? "ft2" : "m2", 8),
                                    show(Length::from_si(setting.width), notes.units())),
                        show(row.length, notes.units())};
        });
        if (row.time) {
            notes.show([&] {
                return Step{fmt::format("Time on {}, and {} of it", row.part,
                                        show(Duration::from_si(setting.slip), notes.units())),
                            fmt::format("{} / {}", show(row.length, notes.units()),
                                        show(Speed::from_si(setting.speed), notes.units())),
                            fmt::format("{}, {}", show(*row.time, notes.units()),
                                        show(*row.timing_error, notes.units(), 2))};
            });
        }
    }
}

}  // namespace

Result<CourseAnswer> course(const CourseRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check(request, notes));
    Setting setting;
    setting.width = request.width.value.si();
    setting.speed = request.speed ? request.speed->value.si() : 0.0;
    setting.slip = request.timing_slip ? request.timing_slip->value.si() : usual_slip_s;
    setting.limit = request.timing_limit ? request.timing_limit->value.si() : usual_limit;
    setting.units = notes.units();

    CourseAnswer answer;
    answer.rows.reserve(standard_courses().size());
    for (const StandardCourse& standard : standard_courses()) {
        answer.rows.push_back(row_of(standard.area_si, &standard, setting));
    }
    recommend(answer, setting, notes);
    if (request.part) {
        const double area = request.part->value.si();
        // The typed part may carry few digits; a ten-thousandth off is the same course.
        const StandardCourse* standard = standard_course_near(area, 1e-4);
        answer.chosen = row_of(standard != nullptr ? standard->area_si : area, standard, setting);
    }
    if (request.laid_length) {
        answer.laid = laid_row(request.laid_length->value.si(), setting);
        say_laid(*answer.laid, setting, notes);
    }
    show_work(answer, setting, notes);
    notes.find(Severity::note, "clean_water",
               "Catch clean water only, in the gear and at the pressure of the job, with a rolling "
               "start; wear what the label asks for if the sprayer has held product.",
               "Ohio State University Extension FABE-520 (2016)");
    return answer;
}

}  // namespace swathbook::calibration
