#include "core/mix/rinse.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

template <>
struct Description<mix::JugRinse> {
    static constexpr std::string_view name = "JugRinse";
    static constexpr auto fields() {
        using T = mix::JugRinse;
        return std::array{
            field<&T::size>("size", "What the jug held.").like("2.5 gal").required(),
            field<&T::jugs>("jugs", "How many; 1 unless said."),
            field<&T::fill>("fill",
                            "How full it is for each rinse; a quarter under 5 gal and a fifth "
                            "from there unless said.")
                .like("25 %"),
            field<&T::rinses>("rinses", "Rinses of each jug; 3 unless said."),
            field<&T::left_in_jug>("left_in_jug", "Product that clings to it after draining.")
                .like("4 fl oz")};
    }
};

template <>
struct Description<mix::RinseRequest> {
    static constexpr std::string_view name = "RinseRequest";
    static constexpr auto fields() {
        using T = mix::RinseRequest;
        return std::array{
            field<&T::trapped>("trapped",
                               "Liquid that stays in pump, hoses, filters and sump when the "
                               "sprayer has run empty.")
                .like("2 gal"),
            field<&T::rinse_volume>("rinse_volume", "Clean water of one rinse.").like("5 gal"),
            field<&T::rinses>("rinses", "How many rinses."),
            field<&T::target>("target", "Strength that may be left in what stays, of the old mix.")
                .like("0.5 %"),
            field<&T::tank>("tank", "Size of the tank, for the one-tenth rule of thumb."),
            field<&T::jug>("jug", "Jugs rinsed into the tank.")};
    }
};

template <>
struct Description<mix::RinseStep> {
    static constexpr std::string_view name = "RinseStep";
    static constexpr auto fields() {
        using T = mix::RinseStep;
        return std::array{field<&T::rinses>("rinses", "Rinses so far."),
                          field<&T::water>("water", "Water used so far."),
                          field<&T::residue>("residue", "Strength left, of the old mix.")
                              .labelled("Strength left")};
    }
};

template <>
struct Description<mix::LeastWater> {
    static constexpr std::string_view name = "LeastWater";
    static constexpr auto fields() {
        using T = mix::LeastWater;
        return std::array{field<&T::rinses>("rinses", "Equal rinses."),
                          field<&T::each>("each", "Water of each."),
                          field<&T::total>("total", "Water of all.")};
    }
};

template <>
struct Description<mix::JugRinseAnswer> {
    static constexpr std::string_view name = "JugRinseAnswer";
    static constexpr auto fields() {
        using T = mix::JugRinseAnswer;
        return std::array{
            field<&T::each_rinse>("each_rinse", "Water in one jug for one rinse."),
            field<&T::water>("water", "All of it; counts as carrier in the load."),
            field<&T::fill>("fill", "Share of the jug filled."),
            field<&T::left>("left", "Of the product that clung to the jug, still there.")};
    }
};

template <>
struct Description<mix::RinseAnswer> {
    static constexpr std::string_view name = "RinseAnswer";
    static constexpr auto fields() {
        using T = mix::RinseAnswer;
        return std::array{
            field<&T::residue>("residue", "Strength left, of the old mix.")
                .labelled("Strength left"),
            field<&T::one_big_rinse>("one_big_rinse", "Left by the same water at once.")
                .labelled("One big rinse leaves"),
            field<&T::times_better>("times_better", "One big rinse over the rinses asked for.")
                .labelled("Better by a factor of"),
            field<&T::steps>("steps", "After each rinse."),
            field<&T::rinses_needed>("rinses_needed", "Rinses that reach the target."),
            field<&T::water_needed>("water_needed", "Water of them all."),
            field<&T::residue_reached>("residue_reached", "Strength they leave.")
                .labelled("Strength they leave"),
            field<&T::least_water>("least_water",
                                   "Least water that reaches the target, by the number of "
                                   "rinses."),
            field<&T::jug>("jug", "Rinse water of the jugs.")};
    }
};

Operation rinse_operation() {
    return operation<&mix::rinse>(
        "rinse", "What rinsing leaves in a sprayer, and the rinses or water a target takes.", {17});
}

}  // namespace swathbook::api
