#include "core/calibration/calibrate.hpp"

#include "api/operation.hpp"
#include "api/operations/calibration_words.hpp"

namespace swathbook::api {

using namespace calibration;  // NOLINT: this file describes the structs of that one subject

template <>
struct Description<CalibrationMethod> {
    static constexpr std::string_view name = "CalibrationMethod";
    static Choices<CalibrationMethod> choices() {
        using M = CalibrationMethod;
        return {{M::course_and_catch, "course_and_catch", "measured course, then a catch as long"},
                {M::flow_and_speed, "flow_and_speed", "flow and speed, each measured for itself"},
                {M::refill, "refill", "known area sprayed, refill measured"},
                {M::timed_plot, "timed_plot", "measured plot timed, then a catch as long"}};
    }
};

template <>
struct Description<CarrierCaught> {
    static constexpr std::string_view name = "CarrierCaught";
    static Choices<CarrierCaught> choices() {
        return {{CarrierCaught::water, "water", "clean water"},
                {CarrierCaught::solution, "solution", "the liquid of the job"}};
    }
};

template <>
struct Description<ErrorSource> {
    static constexpr std::string_view name = "ErrorSource";
    static Choices<ErrorSource> choices() {
        using E = ErrorSource;
        return {{E::course_time, "course_time", "timing the course"},
                {E::catch_amount, "catch_amount", "the amount caught"},
                {E::catch_time, "catch_time", "timing the catch"},
                {E::vessel, "vessel", "the measuring jug or meter"},
                {E::tips_not_caught, "tips_not_caught", "the tips not caught"},
                {E::course_length, "course_length", "the length of the course"},
                {E::width, "width", "the width served"},
                {E::area, "area", "the measured area"},
                {E::speed, "speed", "an entered speed"},
                {E::flow, "flow", "an entered flow"},
                {E::refill_mark, "refill_mark", "the refill mark"}};
    }
};

template <>
struct Description<HandVerdict> {
    static constexpr std::string_view name = "HandVerdict";
    static Choices<HandVerdict> choices() {
        return {{HandVerdict::agrees, "agrees", "the same to the last digit given"},
                {HandVerdict::rounding, "rounding", "figures rounded on the way explain it"},
                {HandVerdict::slip, "slip", "does not follow from the person's own figures"}};
    }
};

template <>
struct Description<Catch> {
    static constexpr std::string_view name = "Catch";
    static constexpr auto fields() {
        using T = Catch;
        return std::array{
            field<&T::amount>("amount", "Volume caught"),
            field<&T::weight>("weight", "Weight caught, jug taken off, when it was weighed"),
            field<&T::time>("time", "How long it was caught; the course time when not entered"),
            field<&T::tip>("tip", "Number or place of the tip, when a single one was caught")};
    }
};

template <>
struct Description<SpeedShare> {
    static constexpr std::string_view name = "SpeedShare";
    static constexpr auto fields() {
        using T = SpeedShare;
        return std::array{
            field<&T::speed>("speed", "Ground speed on this stretch").required(),
            field<&T::parts>("parts", "Parts of the distance driven at it; 1 when not entered")};
    }
};

template <>
struct Description<AssumedSettings> {
    static constexpr std::string_view name = "AssumedSettings";
    static constexpr auto fields() {
        using T = AssumedSettings;
        return std::array{field<&T::width>("width", "Width that was assumed"),
                          field<&T::speed>("speed", "Speed that was assumed")};
    }
};

template <>
struct Description<HandWork> {
    static constexpr std::string_view name = "HandWork";
    static constexpr auto fields() {
        using T = HandWork;
        return std::array{field<&T::output>("output", "The answer worked out by hand").required(),
                          field<&T::speed>("speed", "Speed as rounded on the way"),
                          field<&T::flow>("flow", "Flow as rounded on the way"),
                          field<&T::width>("width", "Width as rounded on the way"),
                          field<&T::area>("area", "Area as rounded on the way").like("0.105 ac")};
    }
};

template <>
struct Description<CalibrateRequest> {
    static constexpr std::string_view name = "CalibrateRequest";
    static constexpr auto fields() {
        using T = CalibrateRequest;
        return std::array{
            field<&T::sprayer>("sprayer", "Sort of sprayer"),
            field<&T::method>("method", "Way of calibrating; told from the entries if left out"),
            field<&T::width>("width", "Effective width served by the tips that were caught"),
            field<&T::wetted_width>("wetted_width", "Width out to the last drops").like("30 ft"),
            field<&T::tips>("tips", "Number of tips that serve the width"),
            field<&T::spacing>("spacing", "Distance between the tips of a boom").like("20 in"),
            field<&T::band_width>("band_width", "Width of one band").like("10 in"),
            field<&T::row_spacing>("row_spacing", "Distance between rows").like("30 in"),
            field<&T::course_length>("course_length", "Distance between the stakes").like("176 ft"),
            field<&T::course_times>("course_times", "Times of repeated passes"),
            field<&T::speed>("speed", "Ground speed, when read from a meter"),
            field<&T::catches>("catches", "What was caught, one entry for each catch"),
            field<&T::catch_covers>("catch_covers",
                                    "Whether a catch, or the flow, is of one tip or of all"),
            field<&T::flow>("flow", "Flow of all tips that serve the width"),
            field<&T::refill>("refill", "Water that brought the tank back to its mark")
                .like("4 gal"),
            field<&T::area>("area", "Plot or field, when measured as an area").like("0.1 ac"),
            field<&T::tank_volume>("tank_volume", "Usable volume of the tank"),
            field<&T::carrier_density>("carrier_density", "Density of the liquid of the job"),
            field<&T::caught>("caught", "What ran while calibrating"),
            field<&T::believed_output>("believed_output", "Figure believed so far"),
            field<&T::assumed>("assumed", "Width and speed a recipe assumed"),
            field<&T::speed_swings>("speed_swings", "Other speeds on parts of the distance"),
            field<&T::hand>("hand", "A hand answer to check"),
            field<&T::timing_slip>("timing_slip", "Stopwatch slip; 0.25 s when not entered")
                .like("0.3 s"),
            field<&T::length_tolerance>("length_tolerance",
                                        "How far off a taped length may be; 0.3 %")
                .like("0.5 %"),
            field<&T::width_tolerance>(
                "width_tolerance",
                "How far off the width may be; boom 0.5 %, band 2 %, without boom 4 %")
                .like("3 %"),
            field<&T::volume_tolerance>("volume_tolerance",
                                        "How far off the jug or meter may be; 1 %")
                .like("2 %"),
            field<&T::speed_tolerance>("speed_tolerance",
                                       "How far off an entered speed may be; 2 %")
                .like("3 %"),
            field<&T::mark_tolerance>("mark_tolerance",
                                      "How closely the fill mark can be met; 0.5 % of the tank")
                .like("1 qt")};
    }
};

template <>
struct Description<BudgetLine> {
    static constexpr std::string_view name = "BudgetLine";
    static constexpr auto fields() {
        using T = BudgetLine;
        return std::array{
            field<&T::source>("source", "Where the uncertainty comes from").labelled("Term"),
            field<&T::text>("text", "The same in words").spoken().labelled("In words"),
            field<&T::plus_minus>("plus_minus", "Half the 95 % interval from this alone")
                .labelled("Interval ±"),
            field<&T::share>("share", "Share of the variance"),
            field<&T::repeats_help>("repeats_help", "Whether measuring again shrinks it")
                .labelled("Repeats help")};
    }
};

template <>
struct Description<RepeatAdvice> {
    static constexpr std::string_view name = "RepeatAdvice";
    static constexpr auto fields() {
        using T = RepeatAdvice;
        return std::array{
            field<&T::reachable>("reachable", "Whether repeats alone bring it to +-5 %")
                .labelled("By repeats alone"),
            field<&T::more_course_times>("more_course_times", "Further timed passes"),
            field<&T::more_catches>("more_catches", "Further catches"),
            field<&T::plus_minus>("plus_minus", "Half the interval then").labelled("Interval ±"),
            field<&T::text>("text", "The same in words").spoken().labelled("In words")};
    }
};

template <>
struct Description<CourseShortcut> {
    static constexpr std::string_view name = "CourseShortcut";
    static constexpr auto fields() {
        using T = CourseShortcut;
        return std::array{
            field<&T::course>("course", "Standard course that this one is; empty when none"),
            field<&T::rule>("rule", "Short rule that holds here; empty when none does")
                .spoken()
                .labelled("Short rule"),
            field<&T::error>("error", "What the rule reads too much here"),
            field<&T::fluid_ounces_divisor>("fluid_ounces_divisor",
                                            "Divide US fluid ounces caught by this for gal/ac")
                .labelled("Divide fl oz by"),
            field<&T::text>("text", "The same in words").spoken().labelled("In words")};
    }
};

template <>
struct Description<DensityAnswer> {
    static constexpr std::string_view name = "DensityAnswer";
    static constexpr auto fields() {
        using T = DensityAnswer;
        return std::array{
            field<&T::specific_gravity>("specific_gravity", "Against water at 8.34 lb/gal"),
            field<&T::factor>("factor", "Square root of the specific gravity"),
            field<&T::water_output>("water_output", "Output with water in the tank"),
            field<&T::solution_output>("solution_output", "Output with the liquid of the job"),
            field<&T::water_setting>(
                "water_setting",
                "Output that water must show for the liquid of the job to give the output")};
    }
};

template <>
struct Description<BelievedAnswer> {
    static constexpr std::string_view name = "BelievedAnswer";
    static constexpr auto fields() {
        using T = BelievedAnswer;
        return std::array{
            field<&T::output>("output", "Output that was believed"),
            field<&T::ratio>("ratio", "Believed over measured"),
            field<&T::delivered>("delivered", "Product delivered more or less than meant"),
            field<&T::shortcut>("shortcut", "Shortcut that gives this figure; empty if none"),
            field<&T::text>("text", "The same in words").spoken().labelled("In words")};
    }
};

template <>
struct Description<SpeedOutput> {
    static constexpr std::string_view name = "SpeedOutput";
    static constexpr auto fields() {
        using T = SpeedOutput;
        return std::array{field<&T::speed>("speed", "Speed of the stretch"),
                          field<&T::share>("share", "Share of the distance"),
                          field<&T::output>("output", "Output there")};
    }
};

template <>
struct Description<SpeedSwings> {
    static constexpr std::string_view name = "SpeedSwings";
    static constexpr auto fields() {
        using T = SpeedSwings;
        return std::array{
            field<&T::stretches>("stretches", "Output on each stretch, the flow unchanged"),
            field<&T::mean_output>("mean_output", "Mean over the distance"),
            field<&T::harmonic_speed>("harmonic_speed", "Distance over time"),
            field<&T::at_mean_speed>("at_mean_speed",
                                     "The wrong figure that the plain mean speed would give"),
            field<&T::highest_over_mean>("highest_over_mean", "Most dosed stretch, over the mean")
                .labelled("Highest over mean"),
            field<&T::lowest_over_mean>("lowest_over_mean", "Least dosed stretch, over the mean")
                .labelled("Lowest over mean")};
    }
};

template <>
struct Description<HandStep> {
    static constexpr std::string_view name = "HandStep";
    static constexpr auto fields() {
        using T = HandStep;
        return std::array{
            field<&T::text>("text", "Which figure").spoken().labelled("Rounded figure"),
            field<&T::moved>("moved", "What rounding it did to the answer")};
    }
};

template <>
struct Description<HandCheck> {
    static constexpr std::string_view name = "HandCheck";
    static constexpr auto fields() {
        using T = HandCheck;
        return std::array{
            field<&T::difference>("difference", "Hand answer against the exact one"),
            field<&T::roundings>("roundings", "What each rounded figure did"),
            field<&T::unexplained>("unexplained", "What the rounded figures leave unexplained"),
            field<&T::verdict>("verdict", "Agreement, rounding or a slip"),
            field<&T::text>("text", "The same in words").spoken().labelled("In words")};
    }
};

template <>
struct Description<CalibrateAnswer> {
    static constexpr std::string_view name = "CalibrateAnswer";
    static constexpr auto fields() {
        using T = CalibrateAnswer;
        return std::array{
            field<&T::method>("method", "Way of calibrating"),
            field<&T::output>("output",
                              "Spray mix per area of the width entered, with its 95 % interval"),
            field<&T::band_output>("band_output", "Per acre of ground under the bands"),
            field<&T::field_output>("field_output", "Per acre of the whole field"),
            field<&T::flow>("flow", "Flow of all tips that serve the width"),
            field<&T::flow_per_tip>("flow_per_tip", "Mean flow of one tip"),
            field<&T::speed>("speed", "Ground speed"),
            field<&T::width>("width", "Effective width used"),
            field<&T::course_area>("course_area", "Area of course, plot or field")
                .shown_in("ft2", "m2"),
            field<&T::mean_course_time>("mean_course_time", "Mean of the timed passes"),
            field<&T::tank_area>("tank_area", "Ground that one tank covers"),
            field<&T::area_per_time>("area_per_time", "Ground covered while spraying"),
            field<&T::plus_minus>("plus_minus", "Half the 95 % interval, as a share")
                .labelled("Interval ±"),
            field<&T::error_budget>("error_budget", "Terms of the uncertainty, largest first")
                .labelled("Where the uncertainty comes from"),
            field<&T::largest_term>("largest_term", "The term to improve first"),
            field<&T::repeats>("repeats", "What repeats can do").labelled("To bring it to ± 5 %"),
            field<&T::shortcut>("shortcut", "Which short rule belongs to this course"),
            field<&T::density>("density", "Water against the liquid of the job"),
            field<&T::believed>("believed", "The believed figure against the measured one"),
            field<&T::assumed>("assumed", "The assumed settings against the measured ones"),
            field<&T::speed_swings>("speed_swings", "What other speeds do at the same flow"),
            field<&T::hand>("hand", "The hand answer against the exact one")};
    }
};

Operation calibrate_operation();
Operation calibrate_operation() {
    return operation<&calibration::calibrate>(
        "calibrate",
        "What a sprayer and its operator really put on the ground, with the interval, the largest "
        "error and any shortcut that does not hold.",
        {1, 9, 24});
}

}  // namespace swathbook::api
