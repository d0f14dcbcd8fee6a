#include "core/job/balance.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

template <>
struct Description<geometry::TrackFix> {
    static constexpr std::string_view name = "TrackFix";
    static constexpr auto fields() {
        using T = geometry::TrackFix;
        return std::array{
            field<&T::t_seconds>("t_seconds",
                                 "Time of the fix, on any clock that only runs forward.")
                .required(),
            field<&T::lat>("lat", "Latitude in degrees, north positive.").required().in_full(),
            field<&T::lon>("lon", "Longitude in degrees, east positive.").required().in_full(),
            field<&T::on>("on", "Whether the spray is on from here to the next fix.").required(),
            field<&T::accuracy_m>("accuracy_m", "Accuracy in metres, as the receiver gives it.")};
    }
};

template <>
struct Description<geometry::TrackGap> {
    static constexpr std::string_view name = "TrackGap";
    static constexpr auto fields() {
        using T = geometry::TrackGap;
        return std::array{
            field<&T::from_s>("from_s", "Time of the last fix before it."),
            field<&T::to_s>("to_s", "Time of the first fix after it."),
            field<&T::straight>("straight", "Straight line between them; not counted."),
            field<&T::was_on>("was_on", "The spray was on before it."),
            field<&T::is_jump>("is_jump", "Faster than any sprayer, not a lack of fixes.")};
    }
};

template <>
struct Description<job::BalanceExclusion> {
    static constexpr std::string_view name = "BalanceExclusion";
    static constexpr auto fields() {
        using T = job::BalanceExclusion;
        return std::array{field<&T::name>("name", "What is left out."),
                          field<&T::area>("area", "How much ground.").required()};
    }
};

template <>
struct Description<job::BalancePass> {
    static constexpr std::string_view name = "BalancePass";
    static constexpr auto fields() {
        using T = job::BalancePass;
        return std::array{
            field<&T::name>("name", "Name or number of the pass."),
            field<&T::length>("length", "Length sprayed.").like("2640 ft"),
            field<&T::width>("width", "Width; that of the job unless said."),
            field<&T::area>("area", "Area sprayed, instead of length and width."),
            field<&T::spray_time>("spray_time", "Time with the spray on.").like("9 min"),
            field<&T::flow>("flow", "Flow; that of the job unless said."),
            field<&T::track>("track", "Fixes of a receiver, instead of length and time.")};
    }
};

template <>
struct Description<job::BalanceLoadProduct> {
    static constexpr std::string_view name = "BalanceLoadProduct";
    static constexpr auto fields() {
        using T = job::BalanceLoadProduct;
        return std::array{field<&T::name>("name", "Name of the product.").required(),
                          field<&T::amount>("amount", "What was poured in.").like("64 fl oz"),
                          field<&T::weight>("weight", "What was weighed in.")};
    }
};

template <>
struct Description<job::BalanceLoad> {
    static constexpr std::string_view name = "BalanceLoad";
    static constexpr auto fields() {
        using T = job::BalanceLoad;
        return std::array{
            field<&T::mix>("mix", "Everything in the load; carrier and liquids unless said.")
                .like("47 gal"),
            field<&T::carrier>("carrier", "Water or oil run in.").like("46 gal"),
            field<&T::products>("products", "What went in.")};
    }
};

template <>
struct Description<job::BalanceProduct> {
    static constexpr std::string_view name = "BalanceProduct";
    static constexpr auto fields() {
        using T = job::BalanceProduct;
        return std::array{
            field<&T::name>("name", "Name of the product.").required(),
            field<&T::rate>("rate", "Wanted rate of product."),
            field<&T::used>("used", "What was put on the ground.").like("5.6 gal"),
            field<&T::used_weight>("used_weight", "The same by weight."),
            field<&T::stock_before>("stock_before", "In stock before, with what was brought in.")
                .like("10 gal"),
            field<&T::stock_after>("stock_after", "In stock after.").like("4.4 gal"),
            field<&T::stock_before_weight>("stock_before_weight", "The same by weight."),
            field<&T::stock_after_weight>("stock_after_weight", "The same by weight.")};
    }
};

template <>
struct Description<job::BalanceRequest> {
    static constexpr std::string_view name = "BalanceRequest";
    static constexpr auto fields() {
        using T = job::BalanceRequest;
        return std::array{
            field<&T::planned_area>("planned_area", "Ground in the plan or contract."),
            field<&T::exclusions>("exclusions", "Ground of it that was not to be sprayed."),
            field<&T::covered_area>("covered_area", "Ground wetted, overlap taken off."),
            field<&T::payable_area>("payable_area", "Ground paid for."),
            field<&T::mix_per_area>("mix_per_area", "Wanted mix per area."),
            field<&T::width>("width", "Width of the passes."),
            field<&T::flow>("flow", "Flow of all tips."),
            field<&T::passes>("passes", "Runs of the sprayer, typed or recorded."),
            field<&T::loads>("loads", "Tankfuls as they were made."),
            field<&T::leftover>("leftover", "Mix left in the tank.").like("6 gal"),
            field<&T::products>("products", "Products, their rates and stock."),
            field<&T::area_plus_minus>("area_plus_minus", "Half the 95 % interval of the ground.")
                .like("1 %"),
            field<&T::amount_plus_minus>("amount_plus_minus",
                                         "Half the 95 % interval of the amounts.")
                .like("1 %"),
            field<&T::explain_over>("explain_over",
                                    "Difference that needs explaining; 5 % unless said.")
                .like("5 %"),
            field<&T::gap_after>("gap_after", "Time without a fix that is a gap; 10 s unless said.")
                .like("10 s")};
    }
};

template <>
struct Description<job::BalanceGround> {
    static constexpr std::string_view name = "BalanceGround";
    static Choices<job::BalanceGround> choices() {
        using G = job::BalanceGround;
        return {{G::covered, "covered", "Wetted ground, overlap taken off."},
                {G::swept, "swept", "Length times width of the passes, overlap in it."},
                {G::planned, "planned", "Planned less exclusions."},
                {G::none, "none", "No ground is known."}};
    }
};

template <>
struct Description<job::PassTrack> {
    static constexpr std::string_view name = "PassTrack";
    static constexpr auto fields() {
        using T = job::PassTrack;
        return std::array{
            field<&T::fixes>("fixes", "Fixes."),
            field<&T::sprayed_length>("sprayed_length", "Length with the spray on."),
            field<&T::sprayed_time>("sprayed_time", "Time with the spray on.").shown_in("s", "s"),
            field<&T::other_length>("other_length", "Length driven with the spray off."),
            field<&T::gaps>("gaps", "Stretches without fixes, or jumps."),
            field<&T::gap_time>("gap_time", "Time in them.").shown_in("s", "s"),
            field<&T::gap_time_on>("gap_time_on", "Of those that the spray was on before.")
                .shown_in("s", "s"),
            field<&T::longest_gaps>("longest_gaps", "The longest of them."),
            field<&T::worst_accuracy>("worst_accuracy", "Worst accuracy the receiver gave.")};
    }
};

template <>
struct Description<job::PassBalance> {
    static constexpr std::string_view name = "PassBalance";
    static constexpr auto fields() {
        using T = job::PassBalance;
        return std::array{
            field<&T::name>("name", "Which pass."),
            field<&T::length>("length", "Length sprayed."),
            field<&T::swept_area>("swept_area", "Length times width."),
            field<&T::spray_time>("spray_time", "Time with the spray on.").shown_in("min", "min"),
            field<&T::speed>("speed", "Length over time."),
            field<&T::mix>("mix", "Flow times time.").shown_in("gal", "L"),
            field<&T::output>("output", "Mix over area."),
            field<&T::track>("track", "What the fixes add up to.")};
    }
};

template <>
struct Description<job::MixBalance> {
    static constexpr std::string_view name = "MixBalance";
    static constexpr auto fields() {
        using T = job::MixBalance;
        return std::array{
            field<&T::expected>("expected", "Wanted mix on the ground of the plan.")
                .shown_in("gal", "L"),
            field<&T::by_loads>("by_loads", "Made, less what is left.").shown_in("gal", "L"),
            field<&T::by_passes>("by_passes", "Flow times time.").shown_in("gal", "L"),
            field<&T::used>("used", "By the loads where entered.").shown_in("gal", "L"),
            field<&T::applied>("applied", "On the ground."),
            field<&T::difference>("difference", "Against the wanted mix, with its 95 % interval.")};
    }
};

template <>
struct Description<job::ProductBalance> {
    static constexpr std::string_view name = "ProductBalance";
    static constexpr auto fields() {
        using T = job::ProductBalance;
        return std::array{
            field<&T::name>("name", "Which product."),
            field<&T::expected>("expected", "Wanted rate on the ground of the plan.")
                .shown_in("gal", "L"),
            field<&T::expected_weight>("expected_weight", "The same by weight."),
            field<&T::used>("used", "Put on the ground.").shown_in("gal", "L"),
            field<&T::used_weight>("used_weight", "The same by weight."),
            field<&T::in_leftover>("in_leftover", "In the mix left.").shown_in("fl oz", "mL"),
            field<&T::in_leftover_weight>("in_leftover_weight", "The same by weight."),
            field<&T::applied>("applied", "Rate really applied.").shown_in("fl oz/ac", "L/ha"),
            field<&T::applied_weight>("applied_weight", "The same by weight."),
            field<&T::difference>("difference", "Against the wanted rate, with its 95 % interval."),
            field<&T::amount_difference>("amount_difference", "Used against expected."),
            field<&T::stock_used>("stock_used", "Out of stock.").shown_in("gal", "L"),
            field<&T::stock_used_weight>("stock_used_weight", "The same by weight."),
            field<&T::stock_difference>("stock_difference",
                                        "Out of stock against what went into the loads."),
            field<&T::text>("text", "The same in words.").labelled("In words")};
    }
};

template <>
struct Description<job::BalanceAnswer> {
    static constexpr std::string_view name = "BalanceAnswer";
    static constexpr auto fields() {
        using T = job::BalanceAnswer;
        return std::array{
            field<&T::planned_area>("planned_area", "Ground in the plan."),
            field<&T::excluded_area>("excluded_area", "Ground left out."),
            field<&T::covered_area>("covered_area", "Ground wetted, overlap taken off."),
            field<&T::payable_area>("payable_area", "Ground paid for."),
            field<&T::swept_area>("swept_area",
                                  "Length times width of all passes; overlap is in it."),
            field<&T::sprayed_length>("sprayed_length", "Length of all passes."),
            field<&T::spray_time>("spray_time", "Time of all passes.").shown_in("min", "min"),
            field<&T::mean_speed>("mean_speed", "Length over time."),
            field<&T::ground>("ground", "Which ground the rates count."),
            field<&T::ground_area>("ground_area", "How much that is."),
            field<&T::mix>("mix", "The mix."),
            field<&T::products>("products", "Product by product."),
            field<&T::passes>("passes", "Pass by pass.")};
    }
};

Operation balance_operation() {
    return operation<&job::balance>(
        "balance",
        "Closes a job: ground swept, mix and product used against the plan, and what to explain.",
        {6, 9});
}

}  // namespace swathbook::api
