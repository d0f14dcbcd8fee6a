#pragma once

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/calibration/calibrate.hpp"
#include "core/calibration/error_budget.hpp"

/// The two halves of a calibration: the ground that was covered and the liquid that was caught.
namespace swathbook::calibration::detail {

/// SI values; 0 where a thing was not measured.
struct Ground {
    double width = 0.0;
    double length = 0.0;
    double area = 0.0;         ///< of the course, plot or field
    double course_time = 0.0;  ///< mean
    double speed = 0.0;
};

/// How catches, tips and width belong together.
struct TipPlan {
    bool one_tip = false;    ///< each catch is of a single tip
    double tips = 1.0;       ///< tips that serve the width
    bool tips_known = true;  ///< false for a sample of tips of a boom of unknown length
};

struct Caught {
    double flow = 0.0;           ///< of all tips serving the width; 0 when no time is known
    double flow_per_tip = 0.0;   ///< 0 when tips are not known
    double volume = 0.0;         ///< for one course or plot, or the refill
    double catch_time = 0.0;     ///< mean of the entered catch times; 0 when none was entered
    double mean_catch = 0.0;     ///< volume of one catch as made
    double repeats_ratio = 1.0;  ///< largest over smallest repeat of the same tip or tips
    int catches = 0;
    bool weighed = false;
};

/// Member names and limits of everything entered.
[[nodiscard]] Result<void> check_entries(const CalibrateRequest& request, const Notes& notes);

/// The method said, or the one that the entries allow.
/// @errors invalid_input when the entries allow none
[[nodiscard]] Result<CalibrationMethod> method_of(const CalibrateRequest& request);

/// @errors invalid_input when catches do not say whether they are of one tip or of all
[[nodiscard]] Result<TipPlan> tip_plan_of(const CalibrateRequest& request);

[[nodiscard]] Result<Ground> ground_of(const CalibrateRequest& request, CalibrationMethod method,
                                       const TipPlan& plan, ErrorBudget& budget, Notes& notes);

[[nodiscard]] Result<Caught> caught_of(const CalibrateRequest& request, CalibrationMethod method,
                                       const TipPlan& plan, const Ground& ground,
                                       ErrorBudget& budget, Notes& notes);

inline constexpr double usual_slip_s = 0.25;
inline constexpr double usual_length_tolerance = 0.003;
inline constexpr double usual_volume_tolerance = 0.01;
inline constexpr double usual_speed_tolerance = 0.02;
/// Tips that nobody caught may be worn up to the usual limit for replacing them.
inline constexpr double uncaught_tip_limit = 0.10;
inline constexpr double water_lb_per_gal = 8.34;

/// Slip of the person at the stopwatch, in seconds.
[[nodiscard]] double slip_of(const CalibrateRequest& request);

}  // namespace swathbook::calibration::detail
