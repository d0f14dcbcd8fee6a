#include "core/mix/loads.hpp"

#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

LoadsRequest job(std::string_view area, std::string_view per_area, std::string_view tank) {
    LoadsRequest request;
    request.net_area = net(area);
    request.mix_per_area = mix_rate(per_area);
    request.tank_usable = volume(tank);
    request.products = {liquid("Example liquid", "2 qt/ac")};
    return request;
}

LoadsRequest batch(std::string_view mix, std::string_view per_area) {
    LoadsRequest request;
    request.mix_volume = volume(mix);
    request.mix_per_area = mix_rate(per_area);
    request.products = {liquid("Example liquid", "2 qt/ac")};
    return request;
}

double ounces(const Load& load, std::size_t product) {
    return load.products[product].amount.volume->in(us_fluid_ounces);
}

TEST(Loads, SplitsAJobIntoEqualLoads) {
    Notes notes;
    const auto answer = loads(job("7.4 ac", "18.6 gal/ac", "47 gal"), notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(answer->total_mix.in(us_gallons), 137.64, 1e-9);
    ASSERT_EQ(answer->load_count, 3);
    for (const Load& load : answer->loads) {
        EXPECT_NEAR(load.fill.in(us_gallons), 45.88, 1e-9);
        EXPECT_NEAR(load.area->in(acres), 7.4 / 3, 1e-12);
        EXPECT_NEAR(ounces(load, 0), 64 * 7.4 / 3, 1e-9);
    }
}

TEST(Loads, FillsFullTanksAndLeavesTheRestForLast) {
    LoadsRequest request = job("7.4 ac", "18.6 gal/ac", "47 gal");
    request.split = Split::full_then_rest;
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    ASSERT_EQ(answer->load_count, 3);
    EXPECT_EQ(answer->loads[0].fill, Volume::of(47, us_gallons));
    EXPECT_EQ(answer->loads[1].fill, Volume::of(47, us_gallons));
    EXPECT_NEAR(answer->loads[2].fill.in(us_gallons), 43.64, 1e-9);
}

TEST(Loads, MixesThreeRateBasesInOneTank) {
    LoadsRequest request = batch("25 gal", "20 gal/ac");
    request.products = {liquid("Example A", "1 qt/ac"), liquid("Example B", "10 fl oz/ac"),
                        liquid("Example oil", "1 qt/ac"), ammonium_sulphate("17 lb/100 gal")};
    Notes notes;
    auto answer = loads(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    EXPECT_NEAR(answer->treated_area->in(acres), 1.25, 1e-12);
    const Load& load = answer->loads.front();
    EXPECT_NEAR(ounces(load, 0), 40, 1e-9);
    EXPECT_NEAR(ounces(load, 1), 12.5, 1e-9);
    EXPECT_NEAR(ounces(load, 2), 40, 1e-9);
    EXPECT_NEAR(load.products[3].amount.mass->in(pounds), 4.25, 1e-12);

    request.mix_per_area = mix_rate("17.2 gal/ac");
    answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->treated_area->in(acres), 1.453, 0.0005);
    EXPECT_NEAR(ounces(answer->loads.front(), 0), 46.5, 0.05);
    EXPECT_NEAR(ounces(answer->loads.front(), 1), 14.5, 0.05);
    EXPECT_NEAR(answer->loads.front().products[3].amount.mass->in(pounds), 4.25, 1e-12);
}

TEST(Loads, CountsRinseWaterOfJugsAsCarrier) {
    LoadsRequest request = job("10 ac", "10 gal/ac", "50 gal");
    request.products = {liquid("Example liquid", "1 gal/ac")};
    request.products[0].jug = volume("2.5 gal");
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer) << answer.error().detail;
    ASSERT_EQ(answer->load_count, 2);
    for (const Load& load : answer->loads) {  // 5 gal from 2 jugs; 2 * 2.5 gal * 1/4 * 3
        EXPECT_EQ(load.products[0].jugs_emptied, 2);
        EXPECT_NEAR(load.rinse_water.in(us_gallons), 3.75, 1e-9);
        EXPECT_NEAR(load.carrier.in(us_gallons), 50 - 5 - 3.75, 1e-9);
    }
}

TEST(Loads, HoldsRinseWaterOverAndSaysWhatIsLeft) {
    LoadsRequest request = batch("2 gal", "2 gal/ac");
    request.products = {liquid("Example liquid", "1.5 gal/ac")};
    request.products[0].jug = volume("1.5 gal");
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->loads[0].rinse_water.in(us_gallons), 0.5, 1e-12);
    EXPECT_EQ(answer->loads[0].carrier.si(), 0.0);
    EXPECT_TRUE(has_finding(notes, "rinse_water_left"));  // 1.125 gal of rinse water, room for 0.5
}

TEST(Loads, PutsDeadVolumeIntoTheFirstFillOnly) {
    LoadsRequest request = job("2 ac", "20 gal/ac", "20 gal");
    request.dead_volume = volume("2 gal");
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->loads[0].fill.in(us_gallons), 22, 1e-12);
    EXPECT_NEAR(answer->loads[1].fill.in(us_gallons), 20, 1e-12);
    EXPECT_NEAR(ounces(answer->loads[0], 0), 64 * 1.1, 1e-9);
    EXPECT_NEAR(answer->sprayed_mix.in(us_gallons), 40, 1e-12);
    EXPECT_NEAR(answer->total_mix.in(us_gallons), 42, 1e-12);
    EXPECT_TRUE(has_finding(notes, "dead_volume_left"));
}

TEST(Loads, AsksWhichAcreTheLabelMeansWhenOnlyBandsAreSprayed) {
    LoadsRequest request = job("30 ac", "10 gal/ac", "100 gal");
    request.net_area.reset();
    request.planned_area = read<Kind::planned_area>("30 ac");
    request.bands = Bands{read<Kind::length>("10 in"), read<Kind::length>("30 in")};
    Notes notes;
    auto answer = loads(request, notes);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().field, "mix_counts");
    request.mix_counts = Counts::treated;
    answer = loads(request, notes);
    ASSERT_FALSE(answer);
    EXPECT_EQ(answer.error().field, "products[0].counts");
    request.products[0].counts = Counts::treated;
    answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->treated_area->in(acres), 10, 1e-12);
    EXPECT_NEAR(answer->total_mix.in(us_gallons), 100, 1e-9);
    EXPECT_NEAR(ounces(answer->loads[0], 0), 640, 1e-9);
}

TEST(Loads, TakesFieldAcresOnBothSidesToTheSameMix) {
    LoadsRequest request = job("30 ac", "10 gal/ac", "100 gal");
    request.net_area.reset();
    request.planned_area = read<Kind::planned_area>("30 ac");
    request.bands = Bands{read<Kind::length>("10 in"), read<Kind::length>("30 in")};
    request.mix_counts = Counts::field;  // 10 gal per field acre is 30 on the bands
    request.products[0].counts = Counts::field;
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->mix_per_treated_area->in(us_gallons_per_acre), 30, 1e-9);
    EXPECT_NEAR(answer->sprayed_mix.in(us_gallons), 300, 1e-9);
    EXPECT_NEAR(answer->products[0].total.volume->in(us_fluid_ounces), 64 * 30, 1e-9);
}

TEST(Loads, StopsAboveALabelLimitAndSaysWhere) {
    LoadsRequest request = job("1 ac", "20 gal/ac", "25 gal");
    request.products[0].card.limits.max_single_rate = RateLimit{rate("1 qt/ac"), "page 4"};
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_TRUE(has_finding(notes, "above_label_limit"));
    EXPECT_EQ(answer->products[0].limits[1].status, LimitStatus::above);
    EXPECT_NEAR(*answer->products[0].limits[1].share, 2.0, 1e-12);
}

TEST(Loads, ListsWhatWasNotEntered) {
    Notes notes;
    const auto answer = loads(job("1 ac", "20 gal/ac", "25 gal"), notes);
    ASSERT_TRUE(answer);
    EXPECT_TRUE(has_finding(notes, "limits_not_entered"));
    EXPECT_EQ(answer->products[0].not_entered.size(), 24U);
    EXPECT_EQ(answer->strictest.grazing.not_entered_by.size(), 1U);
}

TEST(Loads, SuggestsTheBatchThatFitsTheMarks) {
    LoadsRequest request = batch("3 gal", "40 gal/ac");
    request.products = {liquid("Example liquid", "5 fl oz/ac")};
    request.tank_usable = volume("4 gal");
    MeasuringTool syringe;
    syringe.name = "cup";
    syringe.marks = {volume("5 mL"), volume("10 mL"), volume("12.5 mL"), volume("15 mL")};
    request.tools = {syringe};
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    ASSERT_EQ(answer->measuring.size(), 1U);
    const MeasureAdvice& advice = answer->measuring[0];
    EXPECT_EQ(advice.exact, "11.09 mL");
    ASSERT_EQ(advice.choices.size(), 2U);
    EXPECT_NEAR(advice.choices[0].error.si(), -0.098, 0.0005);
    EXPECT_NEAR(advice.choices[1].error.si(), 0.127, 0.0005);
    EXPECT_NEAR(advice.choices[0].batch->in(us_gallons), 3 * 10 / 11.09007359, 1e-7);
    EXPECT_NEAR(advice.choices[1].batch->in(us_gallons), 3 * 12.5 / 11.09007359, 1e-7);
    EXPECT_FALSE(advice.fits);
    EXPECT_TRUE(has_finding(notes, "measure_does_not_fit"));
}

TEST(Loads, NeverAdvisesAMarkThatPassesTheLabelLimit) {
    LoadsRequest request = batch("3 gal", "40 gal/ac");
    request.products = {liquid("Example liquid", "5 fl oz/ac")};
    request.products[0].card.limits.max_single_rate = RateLimit{rate("5.2 fl oz/ac"), ""};
    MeasuringTool syringe;
    syringe.name = "syringe";
    syringe.marks = {volume("10 mL"), volume("11.6 mL")};
    request.tools = {syringe};
    Notes notes;
    const auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_TRUE(answer->measuring[0].choices[1].is_over_label);
    EXPECT_EQ(*answer->measuring[0].best->volume, Volume::of(10, millilitres));
}

TEST(Loads, CountsSharesInTheFinishedMixOrInTheWaterAlone) {
    LoadsRequest request;
    request.mix_volume = volume("10 gal");
    request.products = {liquid("Example liquid", "25 % v/v")};
    Notes notes;
    auto answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->products[0].total.volume->in(us_gallons), 2.5, 1e-12);
    EXPECT_TRUE(has_finding(notes, "share_counted_in"));
    request.products[0].share_of = MixShare::carrier;
    answer = loads(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_NEAR(answer->products[0].total.volume->in(us_gallons), 2.0, 1e-12);
    EXPECT_NEAR(answer->loads[0].carrier.in(us_gallons), 8.0, 1e-12);
}

TEST(Loads, WarnsThatOneIngredientIsInTwoProducts) {
    LoadsRequest request = job("1 ac", "20 gal/ac", "25 gal");
    request.products = {product(liquid_card("A", "3 lb a.e./gal", "Same acid"), "1 qt/ac"),
                        product(liquid_card("B", "4 lb a.e./gal", "same acid"), "1 qt/ac")};
    Notes notes;
    ASSERT_TRUE(loads(request, notes));
    EXPECT_TRUE(has_finding(notes, "ingredient_in_two_products"));
}

TEST(Loads, ShowsWorkingOnlyWhenAsked) {
    Notes silent;
    ASSERT_TRUE(loads(job("7.4 ac", "18.6 gal/ac", "47 gal"), silent));
    EXPECT_TRUE(silent.steps().empty());
    Notes spoken(UnitSystem::us, true);
    ASSERT_TRUE(loads(job("7.4 ac", "18.6 gal/ac", "47 gal"), spoken));
    ASSERT_GE(spoken.steps().size(), 3U);
    EXPECT_EQ(spoken.steps()[0].result, "137.64 gal");
}

TEST(Loads, ShowsHowAcidEquivalentBecomesProduct) {
    LoadsRequest request = job("1 ac", "20 gal/ac", "25 gal");
    request.products = {liquid("Example liquid", "1.5 lb a.e./ac")};
    Notes notes(UnitSystem::us, true);
    ASSERT_TRUE(loads(request, notes));
    const auto& steps = notes.steps();
    const auto found = std::find_if(steps.begin(), steps.end(), [](const Step& step) {
        return step.expression == "1.5 lb a.e./ac / 3 lb a.e./gal";
    });
    ASSERT_NE(found, steps.end());
    EXPECT_EQ(found->result, "64 fl oz/ac");
    EXPECT_EQ(steps.back().text, "Carrier to run in, load 1");
    EXPECT_EQ(steps.back().result, "19.5 gal");
}

TEST(Loads, ShowsTheProductThatStaysInTheSprayer) {
    LoadsRequest request = job("2 ac", "20 gal/ac", "20 gal");
    request.dead_volume = volume("2 gal");
    Notes notes(UnitSystem::us, true);
    ASSERT_TRUE(loads(request, notes));
    const auto& steps = notes.steps();
    const auto found = std::find_if(steps.begin(), steps.end(), [](const Step& step) {
        return step.text == "Example liquid in load 1";
    });
    ASSERT_NE(found, steps.end());
    EXPECT_EQ(found->expression,
              "64 fl oz/ac (label: 2 qt/ac) * 1 ac + 3.2 fl oz/gal * 2 gal that stays in the "
              "sprayer");
    EXPECT_EQ(found->result, "70.4 fl oz");
}

struct Refusal {
    const char* field;
    ErrorCode code;
    void (*spoil)(LoadsRequest&);
};

constexpr double not_a_number = std::numeric_limits<double>::quiet_NaN();
const Refusal mistakes[] = {
    {"net_area", ErrorCode::invalid_input, [](LoadsRequest& r) { r.net_area.reset(); }},
    {"net_area", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.net_area = NetArea::from_si(0.0); }},
    {"net_area", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.net_area = NetArea::from_si(not_a_number); }},
    {"net_area", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.net_area = NetArea::from_si(1e12); }},
    {"mix_per_area", ErrorCode::invalid_input, [](LoadsRequest& r) { r.mix_per_area.reset(); }},
    {"mix_per_area", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.mix_per_area = MixPerArea::from_si(-1.0); }},
    {"tank_usable", ErrorCode::invalid_input, [](LoadsRequest& r) { r.tank_usable.reset(); }},
    {"tank_usable", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.tank_usable = Volume::of(1, millilitres); }},
    {"mix_volume", ErrorCode::inconsistent,
     [](LoadsRequest& r) { r.mix_volume = Volume::of(3, us_gallons); }},
    {"dead_volume", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.dead_volume = Volume::from_si(-1.0); }},
    {"products", ErrorCode::invalid_input, [](LoadsRequest& r) { r.products.clear(); }},
    {"products[1]", ErrorCode::inconsistent,
     [](LoadsRequest& r) { r.products.push_back(r.products[0]); }},
    {"products[0].rate", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products[0].rate.si = not_a_number; }},
    {"products", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products[0].rate = rate("25 gal/ac"); }},
    {"rinse_times", ErrorCode::out_of_range, [](LoadsRequest& r) { r.rinse_times = -1; }},
    {"rinse_fill", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.rinse_fill = Fraction::from_si(0.0); }},
    {"products[0].jug", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products[0].jug = Volume::from_si(0.0); }},
    {"mix_density", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.mix_density = Density::from_si(1.0); }},
    {"measure_within", ErrorCode::out_of_range,
     [](LoadsRequest& r) {
         r.tools = {MeasuringTool{"jug", "", {volume("1 qt")}, {}, {}, {}, {}, {}}};
         r.measure_within = Fraction::from_si(0.0);
     }},
    {"tools[0]", ErrorCode::invalid_input, [](LoadsRequest& r) { r.tools = {MeasuringTool{}}; }},
    {"products[0].applied_this_year", ErrorCode::inconsistent,
     [](LoadsRequest& r) { r.products[0].applied_this_year = rate("2 % v/v"); }},
    {"products[0].applications_this_year", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products[0].applications_this_year = -1; }},
    {"products[0].applications_this_year", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products[0].applications_this_year = 2147483647; }},
    {"products[0].rate", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products[0].rate = rate("0 qt/ac"); }},
    {"products[0].rate", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products[0].rate.si = 1e7; }},
    {"products[0].rate", ErrorCode::out_of_range,
     [](LoadsRequest& r) { r.products = {product(dry_card("D"), "2000 lb/ac")}; }},
    {"net_area", ErrorCode::inconsistent,
     [](LoadsRequest& r) { r.planned_area = PlannedArea::of(1, acres); }},
    {"bands.band_width", ErrorCode::inconsistent,
     [](LoadsRequest& r) {
         r.bands = Bands{read<Kind::length>("40 in"), read<Kind::length>("30 in")};
     }},
    {"label_order[0]", ErrorCode::not_found,
     [](LoadsRequest& r) { r.label_order = {"No such product"}; }},
};

TEST(Loads, RefusesEverydayMistakesNamingTheMember) {
    for (const Refusal& refusal : mistakes) {
        LoadsRequest request = job("7.4 ac", "18.6 gal/ac", "47 gal");
        refusal.spoil(request);
        Notes notes;
        const auto answer = loads(request, notes);
        ASSERT_FALSE(answer) << refusal.field;
        EXPECT_EQ(answer.error().field, refusal.field) << answer.error().detail;
        EXPECT_EQ(answer.error().code, refusal.code) << answer.error().detail;
        EXPECT_GT(answer.error().detail.size(), 20U);
    }
}

TEST(Loads, SumsToTheLastBitAndNeverPassesTheTank) {
    EXPECT_TRUE(rc::check([] {
        const double area = *rc::gen::inRange(1, 400000) / 997.0;
        const double per_area = *rc::gen::inRange(20, 2000) / 13.0;
        const double tank = *rc::gen::inRange(10, 3000) / 7.0;
        LoadsRequest request;
        request.net_area = NetArea::of(area, acres);
        request.mix_per_area = MixPerArea::of(per_area, us_gallons_per_acre);
        request.tank_usable = Volume::of(tank, us_gallons);
        request.split = *rc::gen::element(Split::equal, Split::full_then_rest);
        request.products = {liquid("A", "1 fl oz/ac"), liquid("B", "0.5 % v/v"),
                            ammonium_sulphate("17 lb/100 gal")};
        RC_PRE(area * per_area / tank < 490);
        Notes notes;
        const auto answer = loads(request, notes);
        RC_ASSERT(answer.has_value());
        Volume sum;
        Volume ounces_of_a;
        for (const Load& load : answer->loads) {
            sum += load.fill;
            ounces_of_a += *load.products[0].amount.volume;
            RC_ASSERT(load.fill.in(us_gallons) <= tank * (1 + 2e-9));
            RC_ASSERT(load.fill.si() > 0.0);
            RC_ASSERT(request.split == Split::full_then_rest ||
                      load.fill == answer->loads.front().fill);
        }
        RC_ASSERT(sum == answer->total_mix);
        RC_ASSERT(ounces_of_a == *answer->products[0].total.volume);
        RC_ASSERT(std::abs(sum.in(us_gallons) / (area * per_area) - 1.0) < 1e-12);
        RC_ASSERT(std::abs(ounces_of_a.in(us_fluid_ounces) / area - 1.0) < 1e-12);
    }));
}

TEST(Loads, ScalesWithTheAreaAndIgnoresTheOrderOfProducts) {
    EXPECT_TRUE(rc::check([] {
        const double area = *rc::gen::inRange(1, 5000) / 31.0;
        LoadsRequest request;
        request.net_area = NetArea::of(area, acres);
        request.mix_per_area = mix_rate("15 gal/ac");
        request.tank_usable = Volume::of(area * 40.0, us_gallons);
        request.products = {liquid("A", "20 fl oz/ac"), liquid("B", "2 % v/v"),
                            liquid("C", "1 qt/100 gal"), ammonium_sulphate("8.5 lb/100 gal")};
        request.products[2].share_of = MixShare::carrier;
        Notes notes;
        const auto once = loads(request, notes);
        std::reverse(request.products.begin(), request.products.end());
        const auto turned = loads(request, notes);
        request.net_area = NetArea::of(2.0 * area, acres);
        const auto twice = loads(request, notes);
        RC_ASSERT(once && turned && twice);
        for (std::size_t i = 0; i < 4; ++i) {
            const ProductAmount& a = once->products[i].total;
            const ProductAmount& b = turned->products[3 - i].total;
            const ProductAmount& c = twice->products[3 - i].total;
            const auto measure = [](const ProductAmount& amount) {
                return amount.volume ? amount.volume->si() : amount.mass->si();
            };
            RC_ASSERT(std::abs(measure(b) / measure(a) - 1.0) < 1e-12);
            RC_ASSERT(std::abs(measure(c) / measure(a) - 2.0) < 1e-12);
        }
    }));
}

}  // namespace
}  // namespace swathbook::mix
