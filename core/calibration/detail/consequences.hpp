#pragma once

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/calibration/calibrate.hpp"
#include "core/calibration/detail/measured.hpp"

/// What follows from a measured output: for another liquid, another speed, another belief.
namespace swathbook::calibration::detail {

/// The measured output with everything that was known on the way to it.
struct Outcome {
    const CalibrateRequest& request;
    CalibrationMethod method = CalibrationMethod::course_and_catch;
    TipPlan plan;
    Ground ground;
    Caught caught;
    double output = 0.0;      ///< SI
    double plus_minus = 0.0;  ///< relative
};

/// Ground that one catch speaks for: the course under the tips it was caught from, which is what
/// the ounce rules are about. Nine catches of single tips are nine courses side by side, not one of
/// nine times the width.
[[nodiscard]] inline double area_of_one_catch(const Outcome& outcome) {
    const bool shared = outcome.plan.one_tip && outcome.plan.tips > 1.0;
    return shared ? outcome.ground.area / outcome.plan.tips : outcome.ground.area;
}

[[nodiscard]] ShortcutFacts facts_of(const Outcome& outcome);

[[nodiscard]] DensityAnswer density_of(const Outcome& outcome, Notes& notes);
[[nodiscard]] BelievedAnswer believed_of(const Outcome& outcome, Notes& notes);
/// @errors inconsistent when the flow is not known
[[nodiscard]] Result<BelievedAnswer> assumed_of(const Outcome& outcome, Notes& notes);
/// @errors inconsistent when the speed is not known
[[nodiscard]] Result<SpeedSwings> swings_of(const Outcome& outcome, Notes& notes);
[[nodiscard]] HandCheck hand_check_of(const Outcome& outcome, Notes& notes);

/// Remarks on the data themselves: signs of a shortcut that does not hold here.
void find_traps(const Outcome& outcome, Notes& notes);

}  // namespace swathbook::calibration::detail
