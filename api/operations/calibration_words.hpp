#pragma once

#include "api/describe/describe.hpp"
#include "core/calibration/calibrate.hpp"

/// Descriptions that several calibration operations share.
namespace swathbook::api {

template <>
struct Description<calibration::SprayerKind> {
    static constexpr std::string_view name = "SprayerKind";
    static Choices<calibration::SprayerKind> choices() {
        using S = calibration::SprayerKind;
        return {{S::boom, "boom", "several tips at an even spacing"},
                {S::boomless, "boomless", "one cluster of tips with a wide swath"},
                {S::backpack, "backpack", "one person, one wand"},
                {S::handgun, "handgun", "hose and gun"},
                {S::band, "band", "bands over rows, or directed under plants"}};
    }
};

template <>
struct Description<calibration::CatchCovers> {
    static constexpr std::string_view name = "CatchCovers";
    static Choices<calibration::CatchCovers> choices() {
        using C = calibration::CatchCovers;
        return {{C::one_tip, "one_tip", "each catch is of a single tip"},
                {C::all_tips, "all_tips", "each catch is of all tips of the width"}};
    }
};

}  // namespace swathbook::api
