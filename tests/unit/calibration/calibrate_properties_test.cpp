// The identities that core/calibration/calibrate.hpp and course.hpp state, on random measurements.

#include <algorithm>
#include <cmath>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/calibration/calibrate.hpp"
#include "core/calibration/course.hpp"
#include "core/quantity/units.hpp"
#include "tests/unit/calibration/entered.hpp"

namespace swathbook::calibration {
namespace {

double between(double low, double high) {
    const int step = *rc::gen::inRange(0, 1000001);
    return low + (high - low) * step / 1e6;
}

Reading<Kind::volume> ounces(double count) {
    return Reading<Kind::volume>(Volume::of(count, us_fluid_ounces));
}

CalibrateRequest any_request() {
    CalibrateRequest request;
    request.sprayer = *rc::gen::element(SprayerKind::boom, SprayerKind::boomless,
                                        SprayerKind::backpack, SprayerKind::handgun);
    request.width = Reading<Kind::length>(Length::of(between(1.0, 60.0), feet));
    request.course_length = Reading<Kind::length>(Length::of(between(50.0, 600.0), feet));
    const double seconds_mean = request.course_length->value.in(feet) / between(2.0, 10.0);
    const int times = *rc::gen::inRange(1, 6);
    for (int i = 0; i < times; ++i) {
        request.course_times.emplace_back(
            Duration::of(seconds_mean * between(0.95, 1.05), seconds));
    }
    const double amount = between(10.0, 1000.0);
    const int catches = *rc::gen::inRange(1, 6);
    for (int i = 0; i < catches; ++i) {
        Catch one;
        one.amount = ounces(amount * between(0.95, 1.05));
        request.catches.push_back(one);
    }
    return request;
}

CalibrateAnswer answered(const CalibrateRequest& request) {
    Notes notes;
    const auto answer = calibrate(request, notes);
    RC_ASSERT(answer.has_value());
    return *answer;
}

bool same(double a, double b) {
    return std::fabs(a - b) <= 1e-12 * std::max(std::fabs(a), std::fabs(b));
}

RC_GTEST_PROP(CalibrateProperties, TwiceTheCatchIsTwiceTheOutput, ()) {
    CalibrateRequest request = any_request();
    const double once = answered(request).output.value.si();
    for (Catch& one : request.catches) {
        one.amount->value = one.amount->value * 2.0;
    }
    RC_ASSERT(same(answered(request).output.value.si(), 2.0 * once));
}

RC_GTEST_PROP(CalibrateProperties, TwiceTheWidthOrLengthIsHalfTheOutput, ()) {
    const CalibrateRequest request = any_request();
    const double once = answered(request).output.value.si();
    CalibrateRequest wide = request;
    wide.width->value = wide.width->value * 2.0;
    RC_ASSERT(same(answered(wide).output.value.si(), once / 2.0));
    CalibrateRequest narrow = request;
    narrow.course_length->value = narrow.course_length->value * 0.5;
    RC_ASSERT(same(answered(narrow).output.value.si(), once * 2.0));
}

RC_GTEST_PROP(CalibrateProperties, AFasterCourseAtTheSameFlowPutsOnLess, ()) {
    CalibrateRequest request = any_request();
    for (Catch& one : request.catches) {
        one.time = Reading<Kind::duration>(Duration::of(30.0, seconds));
    }
    const double slow = answered(request).output.value.si();
    for (auto& time : request.course_times) {
        time.value = time.value * 0.9;
    }
    RC_ASSERT(same(answered(request).output.value.si(), 0.9 * slow));
}

RC_GTEST_PROP(CalibrateProperties, TheUnitOfEntryNeverMatters, ()) {
    const CalibrateRequest request = any_request();
    CalibrateRequest metric = request;
    metric.width = length(fmt::format("{:.17g} m", request.width->value.si()));
    metric.course_length =
        length(fmt::format("{:.17g} cm", request.course_length->value.si() * 100));
    for (std::size_t i = 0; i < request.catches.size(); ++i) {
        const Volume volume = request.catches[i].amount->value;
        const bool small = *rc::gen::arbitrary<bool>();
        metric.catches[i].amount = typed<Kind::volume>(
            small ? fmt::format("{:.17g} mL", volume.in(millilitres))
                  : fmt::format("{:.17g} imp gal", volume.in(imperial_gallons)));
    }
    RC_ASSERT(same(answered(metric).output.value.si(), answered(request).output.value.si()));
}

RC_GTEST_PROP(CalibrateProperties, TheOrderOfRepeatsNeverMatters, ()) {
    const CalibrateRequest request = any_request();
    CalibrateRequest turned = request;
    std::ranges::reverse(turned.catches);
    std::ranges::reverse(turned.course_times);
    const CalibrateAnswer a = answered(request);
    const CalibrateAnswer b = answered(turned);
    RC_ASSERT(same(a.output.value.si(), b.output.value.si()));
    RC_ASSERT(std::fabs(a.plus_minus.si() - b.plus_minus.si()) < 1e-9);
}

RC_GTEST_PROP(CalibrateProperties, EqualRepeatsNeverWidenTheInterval, ()) {
    CalibrateRequest request = any_request();
    request.course_times.resize(1);
    request.catches.resize(1);
    double before = answered(request).plus_minus.si();
    for (int i = 0; i < 5; ++i) {
        request.course_times.push_back(request.course_times.front());
        request.catches.push_back(request.catches.front());
        const double now = answered(request).plus_minus.si();
        RC_ASSERT(now < before);
        before = now;
    }
}

RC_GTEST_PROP(CalibrateProperties, TheIntervalHoldsTheValueAndTheSharesAddUp, ()) {
    const CalibrateAnswer answer = answered(any_request());
    RC_ASSERT(*answer.output.low <= answer.output.value);
    RC_ASSERT(*answer.output.high >= answer.output.value);
    double shares = 0.0;
    double before = 2.0;
    for (const BudgetLine& line : answer.error_budget) {
        RC_ASSERT(line.share.si() <= before);
        before = line.share.si();
        shares += line.share.si();
    }
    RC_ASSERT(std::fabs(shares - 1.0) < 1e-9);
    RC_ASSERT(answer.largest_term == answer.error_budget.front().source);
}

RC_GTEST_PROP(CalibrateProperties, FlowAndSpeedSayTheSameAsCourseAndCatch, ()) {
    CalibrateRequest request = any_request();
    const CalibrateAnswer by_course = answered(request);
    CalibrateRequest by_flow = request;
    by_flow.course_times.clear();
    by_flow.course_length.reset();
    by_flow.catches.clear();
    by_flow.flow = Reading<Kind::flow>(by_course.flow->value);
    by_flow.speed = Reading<Kind::speed>(by_course.speed->value);
    RC_ASSERT(same(answered(by_flow).output.value.si(), by_course.output.value.si()));
}

RC_GTEST_PROP(CalibrateProperties, OuncesAreGallonsOnOne128thAcreOnly, ()) {
    CalibrateRequest request = any_request();
    request.catches.resize(1);
    const double off = between(0.2, 30.0);
    request.course_length =
        Reading<Kind::length>(Length::from_si(acres.si / 128.0 * off / request.width->value.si()));
    RC_PRE(request.course_length->value.in(feet) > 1.0);
    request.course_times.clear();
    const CalibrateAnswer answer = answered(request);
    const double caught_ounces = request.catches[0].amount->value.in(us_fluid_ounces);
    RC_ASSERT(std::fabs(answer.output.value.in(us_gallons_per_acre)*off / caught_ounces - 1.0) <
              1e-12);
    RC_ASSERT(std::fabs(answer.shortcut->fluid_ounces_divisor / off - 1.0) < 1e-12);
    RC_ASSERT((answer.shortcut->course == "1/128 ac") == (std::fabs(off - 1.0) <= 0.01));
}

RC_GTEST_PROP(CourseProperties, LengthTimesWidthIsTheAreaAndOuncesFollow, ()) {
    CourseRequest request;
    request.width = Reading<Kind::length>(Length::of(between(0.5, 200.0), feet));
    request.speed = Reading<Kind::speed>(Speed::of(between(0.5, 20.0), miles_per_hour));
    Notes notes;
    const auto answer = course(request, notes);
    RC_ASSERT(answer.has_value());
    int recommended = 0;
    for (const CourseRow& row : answer->rows) {
        RC_ASSERT(same(row.length.si() * request.width.value.si(), row.area.si()));
        RC_ASSERT(same(row.one_gallon.si(), 128.0 * row.one_fluid_ounce.si()));
        RC_ASSERT(same(row.one_litre.si(), 1000.0 * row.one_millilitre.si()));
        RC_ASSERT(same(row.timing_error->si(), 0.25 / row.time->si()));
        recommended += row.recommended.value_or(false) ? 1 : 0;
        RC_ASSERT(!row.recommended.value_or(false) || row.timing_error->si() < 0.02);
        RC_ASSERT(!row.recommended.value_or(false) || row.length >= *answer->shortest_length);
    }
    RC_ASSERT(recommended == (answer->recommended ? 1 : 0));
}

}  // namespace
}  // namespace swathbook::calibration
