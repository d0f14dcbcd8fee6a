#include "core/job/adjust.hpp"

#include "api/operation.hpp"
#include "api/operations/tip_words.hpp"

namespace swathbook::api {

template <>
struct Description<job::AdjustRequest> {
    static constexpr std::string_view name = "AdjustRequest";
    static constexpr auto fields() {
        using T = job::AdjustRequest;
        return std::array{
            field<&T::target>("target", "Rate wanted on the ground.").like("12 gal/ac").required(),
            field<&T::rate>("rate", "Rate now, as calibrated with water."),
            field<&T::tip_flow>("tip_flow", "Flow of one tip now, in place of the rate.")
                .like("0.40 gal/min"),
            field<&T::speed>("speed", "Ground speed now."),
            field<&T::pressure>("pressure", "Pressure now, at the tips."),
            field<&T::spacing>("spacing", "Distance between tips.").like("20 in"),
            field<&T::width>("width", "Ground width served, in place of spacing."),
            field<&T::tips>("tips", "How many tips serve that width; left out: one."),
            field<&T::size>("size", "Size of the tips, in place of a measured flow."),
            field<&T::convention>("convention", "What the size number stands for."),
            field<&T::rated_flow>("rated_flow", "Maker's flow, in place of a size.")
                .like("0.40 gal/min"),
            field<&T::rated_pressure>("rated_pressure", "Pressure of the maker's flow."),
            field<&T::exponent>("exponent", "How flow follows pressure; 0.5 for plain tips."),
            field<&T::classes>("classes", "Droplet class of the tip by pressure, as printed."),
            field<&T::droplets>("droplets",
                                "Droplet class wanted, in the label's words: coarse or coarser."),
            field<&T::pressure_low>("pressure_low", "Lowest pressure tip and sprayer allow.")
                .like("20 psi"),
            field<&T::pressure_high>("pressure_high", "Highest pressure tip and sprayer allow.")
                .like("60 psi"),
            field<&T::speed_low>("speed_low", "Slowest speed the ground allows.").like("3 mph"),
            field<&T::speed_high>("speed_high", "Fastest speed the ground allows.").like("6 mph"),
            field<&T::carrier_min>("carrier_min", "Least carrier the label allows.")
                .like("10 gal/ac"),
            field<&T::carrier_density>("carrier_density",
                                       "Density of the mix, where it is not like water."),
            field<&T::speeds>("speeds", "Other speeds to tell rate and pressure at.")};
    }
};

template <>
struct Description<job::BySpeed> {
    static constexpr std::string_view name = "BySpeed";
    static constexpr auto fields() {
        using T = job::BySpeed;
        return std::array{field<&T::speed>("speed", "Speed that gives the target."),
                          field<&T::factor>("factor", "Times the present speed."),
                          field<&T::window>("window", "Against the speeds entered.")};
    }
};

template <>
struct Description<job::ByPressure> {
    static constexpr std::string_view name = "ByPressure";
    static constexpr auto fields() {
        using T = job::ByPressure;
        return std::array{
            field<&T::pressure>("pressure", "Pressure that gives the target."),
            field<&T::factor>("factor", "Times the present pressure."),
            field<&T::window>("window", "Against the pressures entered."),
            field<&T::class_now>("class_now", "Droplet class now."),
            field<&T::class_then>("class_then", "Droplet class then."),
            field<&T::class_allowed>("class_allowed", "Whether the label's words allow it.")};
    }
};

template <>
struct Description<job::SizeAtPressure> {
    static constexpr std::string_view name = "SizeAtPressure";
    static constexpr auto fields() {
        using T = job::SizeAtPressure;
        return std::array{field<&T::size>("size", "Size of the colour code."),
                          field<&T::colour>("colour", "Its colour: flow, not droplets."),
                          field<&T::pressure>("pressure", "Pressure at which it gives the flow."),
                          field<&T::window>("window", "Against the pressures entered.")};
    }
};

template <>
struct Description<job::ByTip> {
    static constexpr std::string_view name = "ByTip";
    static constexpr auto fields() {
        using T = job::ByTip;
        return std::array{field<&T::flow>("flow", "Flow through one tip that gives the target."),
                          field<&T::us_sizes>("us_sizes", "Sizes rated in gal/min at 40 psi.")
                              .labelled("Sizes rated at 40 psi"),
                          field<&T::iso_sizes>("iso_sizes", "Sizes rated in L/min at 3 bar.")
                              .labelled("Sizes rated at 3 bar")};
    }
};

template <>
struct Description<job::AtSpeed> {
    static constexpr std::string_view name = "AtSpeed";
    static constexpr auto fields() {
        using T = job::AtSpeed;
        return std::array{
            field<&T::speed>("speed", "The speed."),
            field<&T::rate>("rate", "Rate with the present pressure and tips."),
            field<&T::controller_pressure>("controller_pressure",
                                           "Pressure a rate controller needs for the target.")
                .labelled("A rate controller would run at"),
            field<&T::window>("window", "That pressure against the pressures entered."),
            field<&T::droplet_class>("droplet_class", "Droplet class at that pressure.")};
    }
};

template <>
struct Description<job::AdjustAnswer> {
    static constexpr std::string_view name = "AdjustAnswer";
    static constexpr auto fields() {
        using T = job::AdjustAnswer;
        return std::array{
            field<&T::rate_now>("rate_now", "Rate now, with water."),
            field<&T::target_as_water>("target_as_water", "Rate of water that stands for it.")
                .labelled("Target, as water"),
            field<&T::factor>("factor", "Target over rate now."),
            field<&T::by_speed>("by_speed", "By speed alone."),
            field<&T::by_pressure>("by_pressure", "By pressure alone."),
            field<&T::by_tip>("by_tip", "By other tips, at the present speed."),
            field<&T::controller_slowest>("controller_slowest",
                                          "Slowest speed a rate controller can hold the target.")
                .labelled("Controller holds it down to"),
            field<&T::controller_fastest>("controller_fastest",
                                          "Fastest speed a rate controller can hold the target.")
                .labelled("Controller holds it up to"),
            field<&T::at_speeds>("at_speeds", "What the other speeds do."),
            field<&T::rate_equal_distance>("rate_equal_distance",
                                           "Mean rate over equal distances at those speeds."),
            field<&T::rate_equal_time>("rate_equal_time",
                                       "Mean rate over equal times at those speeds."),
            field<&T::speed_equal_distance>("speed_equal_distance",
                                            "Speed that stands for equal distances.")};
    }
};

Operation adjust_operation() {
    return operation<&job::adjust>(
        "adjust",
        "Reaches a wanted rate by speed, pressure or tip, with the window of each and what it does "
        "to the droplets.",
        {9});
}

}  // namespace swathbook::api
