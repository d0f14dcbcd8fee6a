#pragma once

#include <string_view>

#include <gtest/gtest.h>

#include "core/base/notes.hpp"
#include "core/calibration/calibrate.hpp"
#include "core/calibration/course.hpp"
#include "core/quantity/parse.hpp"

/// Requests written as a person types them.
namespace swathbook::calibration {

template <Kind K>
Reading<K> typed(std::string_view text) {
    const auto reading = parse<K>(text);
    EXPECT_TRUE(reading) << text;
    return reading ? *reading : Reading<K>{};
}
inline Reading<Kind::length> length(std::string_view text) {
    return typed<Kind::length>(text);
}
inline Reading<Kind::duration> lasting(std::string_view text) {
    return typed<Kind::duration>(text);
}
inline Reading<Kind::speed> at_speed(std::string_view text) {
    return typed<Kind::speed>(text);
}
inline Reading<Kind::mix_per_area> output_of(std::string_view text) {
    return typed<Kind::mix_per_area>(text);
}
inline Catch caught(std::string_view amount, std::string_view time = {},
                    std::string_view tip = {}) {
    Catch made;
    made.amount = typed<Kind::volume>(amount);
    if (!time.empty()) {
        made.time = lasting(time);
    }
    made.tip = tip;
    return made;
}

/// A boomless rig on a 113 ft course: 46 fl oz in 15.4 s from all tips over 30 ft.
inline CalibrateRequest boomless_request() {
    CalibrateRequest request;
    request.sprayer = SprayerKind::boomless;
    request.width = length("30 ft");
    request.course_length = length("113.4 ft");
    request.course_times = {lasting("19.4 s"), lasting("19.2 s"), lasting("19.6 s")};
    request.catches = {caught("140 fl oz"), caught("142 fl oz"), caught("139 fl oz")};
    return request;
}

inline bool has_finding(const Notes& notes, std::string_view code) {
    for (const Finding& finding : notes.findings()) {
        if (finding.code == code) {
            return true;
        }
    }
    return false;
}
inline std::string text_of(const Notes& notes, std::string_view code) {
    for (const Finding& finding : notes.findings()) {
        if (finding.code == code) {
            return finding.text;
        }
    }
    return {};
}

}  // namespace swathbook::calibration
