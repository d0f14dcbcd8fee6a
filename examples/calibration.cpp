// A boomless rig: how long a course to stake out, and what the rig then turned out to do.
#include "core/calibration/calibrate.hpp"
#include "core/calibration/course.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_calibration() {
    Notes notes;
    SWATHBOOK_TRY(width, parse<Kind::length>("26 ft"));
    SWATHBOOK_TRY(part, parse<Kind::area>("1/8 ac"));
    calibration::CourseRequest laying_out{width};
    laying_out.part = part;
    SWATHBOOK_TRY(course, calibration::course(laying_out, notes));
    if (!course.chosen) {
        return false;
    }
    // By hand: 1/8 ac is 43,560 / 8 = 5,445 ft2; / 26 ft = 209.4 ft.
    bool all = examples::agrees("Stake out " + show(course.chosen->length, UnitSystem::us),
                                course.chosen->length.in(feet), {209.4, "ft", 0.05});

    // Three passes over another course, and the flow of all the tips. Readings keep how finely they
    // were read: that, and the scatter of the passes, is where the interval comes from.
    calibration::CalibrateRequest measured;
    measured.sprayer = calibration::SprayerKind::boomless;
    measured.width = width;
    SWATHBOOK_TRY(course_length, parse<Kind::length>("176 ft"));
    measured.course_length = course_length;
    for (const char* text : {"29.8 s", "30.0 s", "30.2 s"}) {
        SWATHBOOK_TRY(time, parse<Kind::duration>(text));
        measured.course_times.push_back(time);
    }
    SWATHBOOK_TRY(flow, parse<Kind::flow>("2.60 gal/min"));
    measured.flow = flow;
    SWATHBOOK_TRY(answer, calibration::calibrate(measured, notes));
    // By hand: 176 ft in 30 s is 4 mph; 26 ft at 4 mph is 26 x 352 ft/min = 9,152 ft2/min, or
    // 0.2101 ac/min; 2.60 / 0.2101 = 12.375 gal/ac.
    all &= examples::agrees("It puts out " + show(answer.output.value, UnitSystem::us),
                            answer.output.value.in(us_gallons_per_acre), {12.375, "gal/ac", 0.001});
    std::printf("95 %% sure: %s to %s\n", show(*answer.output.low, UnitSystem::us).c_str(),
                show(*answer.output.high, UnitSystem::us).c_str());
    return all && answer.output.low < answer.output.value;
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_calibration());
}
