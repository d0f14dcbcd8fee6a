#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/calibration/error_budget.hpp"
#include "core/calibration/shortcut.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook::calibration {

enum class SprayerKind : std::uint8_t {
    boom,      ///< several tips at an even spacing
    boomless,  ///< one cluster of tips that throws a wide swath
    backpack,  ///< one person, one wand
    handgun,   ///< hose and gun
    band,      ///< bands over rows, or directed under plants
};

enum class CalibrationMethod : std::uint8_t {
    course_and_catch,  ///< drive a measured course, then catch for as long
    flow_and_speed,    ///< flow from a timed catch or a meter, speed from a clock or a meter
    refill,            ///< spray a known area and measure what refills the tank
    timed_plot,        ///< spray a measured plot, time it, then catch for as long
};

enum class CatchCovers : std::uint8_t {
    one_tip,   ///< each catch is the spray of a single tip
    all_tips,  ///< each catch is the spray of all tips that serve the width
};

enum class CarrierCaught : std::uint8_t { water, solution };

/// One catch. The amount is a volume or a weight; the time is that of the course when not entered.
struct Catch {
    std::optional<Reading<Kind::volume>> amount{};
    std::optional<Reading<Kind::mass>> weight{};  ///< of the liquid on a scale, jug taken off
    std::optional<Reading<Kind::duration>> time{};
    std::string tip{};  ///< number or place of the tip, when a single one was caught
};

/// A stretch of the job at a speed of its own, the flow staying as it is.
struct SpeedShare {
    Reading<Kind::speed> speed;
    double parts = 1.0;  ///< parts of the distance driven at it, in whatever measure
};

/// What somebody assumed in place of measuring: a sticker, a chart.
struct AssumedSettings {
    std::optional<Reading<Kind::length>> width{};
    std::optional<Reading<Kind::speed>> speed{};
};

/// A person's own answer, with the figures rounded on the way that were used in it.
struct HandWork {
    Reading<Kind::mix_per_area> output;
    std::optional<Reading<Kind::speed>> speed{};
    std::optional<Reading<Kind::flow>> flow{};
    std::optional<Reading<Kind::length>> width{};
    std::optional<Reading<Kind::area>> area{};
};

/// What was measured. Repeats are entered one by one: their scatter is the best judge of them.
struct CalibrateRequest {
    SprayerKind sprayer = SprayerKind::boom;
    std::optional<CalibrationMethod> method{};  ///< told from what is entered, when it can be

    std::optional<Reading<Kind::length>> width{};  ///< effective width served by the tips caught
    std::optional<Reading<Kind::length>> wetted_width{};  ///< out to the last drops
    std::optional<int> tips{};                            ///< that serve the width
    std::optional<Reading<Kind::length>> spacing{};       ///< between tips of a boom
    std::optional<Reading<Kind::length>> band_width{};
    std::optional<Reading<Kind::length>> row_spacing{};

    std::optional<Reading<Kind::length>> course_length{};
    std::vector<Reading<Kind::duration>> course_times{};  ///< repeated passes over course or plot
    std::optional<Reading<Kind::speed>> speed{};          ///< read from a meter instead
    std::vector<Catch> catches{};
    std::optional<CatchCovers> catch_covers{};
    std::optional<Reading<Kind::flow>> flow{};           ///< of all tips that serve the width
    std::optional<Reading<Kind::volume>> refill{};       ///< put back to the mark
    std::optional<Reading<Kind::area>> area{};           ///< plot or field, when measured as area
    std::optional<Reading<Kind::volume>> tank_volume{};  ///< usable

    std::optional<Reading<Kind::density>> carrier_density{};  ///< of the liquid of the job
    CarrierCaught caught = CarrierCaught::water;              ///< what ran while calibrating

    std::optional<Reading<Kind::mix_per_area>> believed_output{};  ///< sticker or shortcut figure
    std::optional<AssumedSettings> assumed{};
    std::vector<SpeedShare> speed_swings{};
    std::optional<HandWork> hand{};

    std::optional<Reading<Kind::duration>> timing_slip{};       ///< 0.25 s when not entered
    std::optional<Reading<Kind::fraction>> length_tolerance{};  ///< 0.3 % when not entered
    std::optional<Reading<Kind::fraction>> width_tolerance{};   ///< by sprayer when not entered
    std::optional<Reading<Kind::fraction>> volume_tolerance{};  ///< 1 % when not entered
    std::optional<Reading<Kind::fraction>> speed_tolerance{};   ///< 2 % when not entered
    std::optional<Reading<Kind::volume>> mark_tolerance{};      ///< of the refill mark
};

/// One line of the error budget.
struct BudgetLine {
    ErrorSource source = ErrorSource::width;
    std::string text{};
    Fraction plus_minus{};      ///< what this term alone would make the 95 % interval
    Fraction share{};           ///< of the variance
    bool repeats_help = false;  ///< whether measuring again shrinks it
};

struct RepeatAdvice {
    bool reachable = false;  ///< whether repeats alone bring the interval to +-5 %
    int more_course_times = 0;
    int more_catches = 0;
    Fraction plus_minus{};  ///< with those repeats; with endless ones when not reachable
    std::string text{};
};

/// Water and the liquid of the job flow differently through the same tip.
struct DensityAnswer {
    double specific_gravity = 1.0;  ///< against water at 8.34 lb/gal
    double factor = 1.0;            ///< square root of it
    MixPerArea water_output{};      ///< with water in the tank
    MixPerArea solution_output{};   ///< with the liquid of the job in the tank
    /// What water would have to show, for the liquid of the job to come out at `output`.
    MixPerArea water_setting{};
};

/// A believed or assumed output beside the measured one.
struct BelievedAnswer {
    MixPerArea output{};
    double ratio = 1.0;      ///< believed over measured
    Fraction delivered{};    ///< product delivered more (+) or less (-) than the recipe meant
    std::string shortcut{};  ///< code of the shortcut that would give this figure; empty if none
    std::string text{};
};

struct SpeedOutput {
    Speed speed{};
    Fraction share{};  ///< of the distance
    MixPerArea output{};
};

struct SpeedSwings {
    std::vector<SpeedOutput> stretches{};
    MixPerArea mean_output{};      ///< over the distance: what the ground gets on average
    Speed harmonic_speed{};        ///< distance over time
    MixPerArea at_mean_speed{};    ///< the wrong figure that the plain mean of speeds would give
    Fraction highest_over_mean{};  ///< the most dosed stretch against the mean
    Fraction lowest_over_mean{};
};

enum class HandVerdict : std::uint8_t {
    agrees,    ///< the same to the last digit given
    rounding,  ///< the figures rounded on the way explain the difference
    slip,      ///< the answer does not follow from the person's own figures
};

struct HandStep {
    std::string text{};
    Fraction moved{};  ///< what rounding this figure alone did to the answer
};

struct HandCheck {
    Fraction difference{};  ///< hand answer against the exact one
    std::vector<HandStep> roundings{};
    /// What is left when the rounded figures are put in: arithmetic, or a final rounding.
    Fraction unexplained{};
    HandVerdict verdict = HandVerdict::agrees;
    std::string text{};
};

struct CalibrateAnswer {
    CalibrationMethod method = CalibrationMethod::course_and_catch;
    /// Spray mix per area of the width entered: for a band sprayer, of the ground under the bands.
    Estimate<Kind::mix_per_area> output{};
    std::optional<Estimate<Kind::mix_per_area>> band_output{};   ///< per acre under the bands
    std::optional<Estimate<Kind::mix_per_area>> field_output{};  ///< per acre of the whole field
    std::optional<Estimate<Kind::flow>> flow{};                  ///< of all tips serving the width
    std::optional<Estimate<Kind::flow>> flow_per_tip{};
    std::optional<Estimate<Kind::speed>> speed{};
    std::optional<Length> width{};  ///< effective width that was used
    std::optional<Area> course_area{};
    std::optional<Duration> mean_course_time{};
    std::optional<Estimate<Kind::area>> tank_area{};  ///< ground that one tank covers
    std::optional<AreaPerTime> area_per_time{};       ///< while spraying, no turns counted

    Fraction plus_minus{};  ///< half the 95 % interval of the output
    std::vector<BudgetLine> error_budget{};
    std::optional<ErrorSource> largest_term{};
    RepeatAdvice repeats{};

    std::optional<CourseShortcut> shortcut{};
    std::optional<DensityAnswer> density{};
    std::optional<BelievedAnswer> believed{};
    std::optional<BelievedAnswer> assumed{};
    std::optional<SpeedSwings> speed_swings{};
    std::optional<HandCheck> hand{};
};

/// What a sprayer and its operator really put on the ground, and how well that is known.
///
///   output = flow / (speed * width) = catch * (course time / catch time) / (width * length)
///
/// @valid    members within the limits of entry_limits.hpp; 1 to 1000 catches and times
/// @errors   invalid_input (a needed member is missing, NaN, or could mean two things),
///           out_of_range, inconsistent; each names the member
/// @accuracy the relation itself to a few roundings; the interval is first order, within 3 % of a
///           Monte Carlo run for terms below 10 %
/// @source   unit arithmetic; 80 % rule for boomless swaths: LSU AgCenter and University of
///           Kentucky ENTFACT-805; density: University of Nebraska CropWatch 2016; tolerances that
///           are not entered: common practice, named in docs/methods/calibration.md
/// @cases    tests/cases/calibration/*.case
/// Identities: twice the catch is twice the output; twice the width is half; the unit of entry
/// never matters; equal repeats never widen the interval.
[[nodiscard]] Result<CalibrateAnswer> calibrate(const CalibrateRequest& request, Notes& notes);

}  // namespace swathbook::calibration
