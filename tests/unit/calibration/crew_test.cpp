#include "core/calibration/crew.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::Field;

LabelRate ounces(double number) {
    return {number * us_fluid_ounces_per_acre.si, RateBasis::volume_per_area, 0.0, "typed"};
}

MixPerArea gallons(double number) {
    return MixPerArea::of(number, us_gallons_per_acre);
}

CrewRequest crew_of(const std::vector<double>& outputs) {
    CrewRequest request;
    for (const double output : outputs) {
        CrewPerson person;
        person.output = gallons(output);
        request.people.push_back(person);
    }
    return request;
}

CrewAnswer answered(const CrewRequest& request) {
    Notes notes;
    return crew(request, notes).value();
}

const std::vector<double> story{22, 27, 31, 38, 46};

// Story 2: the shared-tank rate is 30.7, not the plain average 32.8; one recipe needs a label range
// of at least 2.09.
TEST(Crew, the_five_backpacks_of_story_2) {
    const CrewAnswer answer = answered(crew_of(story));
    EXPECT_NEAR(answer.crew_rate.in(us_gallons_per_acre), 30.7, 0.05);
    EXPECT_NEAR(answer.arithmetic_mean.in(us_gallons_per_acre), 32.8, 0.05);
    EXPECT_NEAR(answer.ratio_needed, 2.09, 0.005);
    EXPECT_FALSE(answer.one_recipe_is_lawful.has_value());
}

TEST(Crew, one_recipe_is_lawful_exactly_when_the_label_range_reaches) {
    CrewRequest request = crew_of(story);
    request.product_rate = ounces(30);
    request.product_min = ounces(22);
    request.product_max = ounces(46);
    const CrewAnswer just = answered(request);
    EXPECT_EQ(just.one_recipe_is_lawful, true);
    EXPECT_EQ(just.recipes.size(), 1U);
    EXPECT_NEAR(just.recipes[0].mixed_for->in(us_gallons_per_acre), 30.0, 1e-9);
    request.product_max = ounces(45.9);
    const CrewAnswer beyond = answered(request);
    EXPECT_EQ(beyond.one_recipe_is_lawful, false);
    EXPECT_EQ(beyond.recipes.size(), 2U);
}

TEST(Crew, who_breaks_which_limit_is_named) {
    CrewRequest request = crew_of(story);
    request.product_rate = ounces(32);
    request.product_min = ounces(24);
    request.product_max = ounces(40);
    request.carrier_min = gallons(25);
    Notes notes;
    const CrewAnswer answer = crew(request, notes).value();
    EXPECT_EQ(answer.people[0].product_low, CrewLimit::under);
    EXPECT_EQ(answer.people[0].carrier_low, CrewLimit::under);
    EXPECT_EQ(answer.people[2].product_low, CrewLimit::within);
    EXPECT_EQ(answer.people[4].product_high, CrewLimit::over);
    EXPECT_EQ(answer.people[4].carrier_high, CrewLimit::not_entered);
    EXPECT_THAT(notes.findings(), Contains(Field(&Finding::code, "one_recipe_not_lawful")));
    EXPECT_THAT(notes.findings(), Contains(Field(&Finding::code, "product_over_label")));
    EXPECT_THAT(notes.findings(), Contains(Field(&Finding::code, "carrier_under_label")));
}

TEST(Crew, recipes_are_as_few_as_the_label_allows) {
    CrewRequest request = crew_of(story);
    request.product_rate = ounces(32);
    request.product_min = ounces(24);
    request.product_max = ounces(40);
    const CrewAnswer answer = answered(request);  // reach 1.667: 22-31, 38-46
    ASSERT_EQ(answer.recipes.size(), 2U);
    EXPECT_THAT(answer.recipes[0].people, ElementsAre("person 1", "person 2", "person 3"));
    EXPECT_THAT(answer.recipes[1].people, ElementsAre("person 4", "person 5"));
    for (const RecipeGroup& group : answer.recipes) {
        EXPECT_LE(*group.mixed_for_low, *group.mixed_for);
        EXPECT_LE(*group.mixed_for, *group.mixed_for_high);
    }
}

TEST(Crew, mixed_for_another_output_everyone_shifts) {
    CrewRequest request = crew_of({20, 30});
    request.product_rate = ounces(32);
    request.mixed_for = gallons(20);
    const CrewAnswer answer = answered(request);
    EXPECT_NEAR(answer.people[0].delivered->si, ounces(32).si, 1e-18);
    EXPECT_NEAR(answer.people[1].delivered->si, ounces(48).si, 1e-18);
}

TEST(Crew, own_tanks_give_everyone_the_wanted_rate_and_their_own_measure) {
    CrewRequest request = crew_of({20, 40});
    request.sharing = CrewSharing::own_tanks;
    request.product_rate = ounces(32);
    request.tank = Volume::of(4, us_gallons);
    const CrewAnswer answer = answered(request);
    EXPECT_NEAR(answer.people[0].delivered->si, ounces(32).si, 1e-18);
    EXPECT_NEAR(answer.people[0].product_per_tank->volume->in(us_fluid_ounces), 6.4, 1e-9);
    EXPECT_NEAR(answer.people[1].product_per_tank->volume->in(us_fluid_ounces), 3.2, 1e-9);
    EXPECT_NEAR(answer.people[1].area_per_tank->in(acres), 0.1, 1e-12);
    EXPECT_FALSE(answer.recipe_tested.has_value());
}

TEST(Crew, own_flows_weigh_by_flow) {
    CrewRequest request = crew_of({20, 40});
    request.sharing = CrewSharing::own_flow;
    request.people[0].flow = Flow::of(0.2, us_gallons_per_minute);
    request.people[1].flow = Flow::of(0.4, us_gallons_per_minute);
    // 0.6 gal/min over 0.02 ac/min: both cover the same ground, so the plain average.
    EXPECT_NEAR(answered(request).crew_rate.in(us_gallons_per_acre), 30.0, 1e-9);
}

TEST(Crew, bad_requests_are_refused_with_the_field) {
    Notes notes;
    EXPECT_EQ(crew(crew_of({22}), notes).error().field, "people");
    EXPECT_EQ(crew(crew_of({22, 0}), notes).error().field, "people[1].output");
    EXPECT_EQ(crew(crew_of({22, NAN}), notes).error().code, ErrorCode::out_of_range);
    CrewRequest percent = crew_of({22, 27});
    percent.product_rate = LabelRate{0.02, RateBasis::percent_by_volume, 0.0, "2 % v/v"};
    EXPECT_EQ(crew(percent, notes).error().code, ErrorCode::unsupported);
    CrewRequest mixed = crew_of({22, 27});
    mixed.product_rate = ounces(32);
    mixed.product_max = LabelRate{1e-4, RateBasis::acid_per_area, 0.0, "0.9 lb a.e./ac"};
    EXPECT_EQ(crew(mixed, notes).error().code, ErrorCode::inconsistent);
    CrewRequest crossed = crew_of({22, 27});
    crossed.product_min = ounces(40);
    crossed.product_max = ounces(30);
    EXPECT_EQ(crew(crossed, notes).error().field, "product_min");
    CrewRequest no_flow = crew_of({22, 27});
    no_flow.sharing = CrewSharing::own_flow;
    EXPECT_EQ(crew(no_flow, notes).error().field, "people[0].flow");
}

TEST(Crew, working_shows_the_relation) {
    Notes notes(UnitSystem::us, true);
    ASSERT_TRUE(crew(crew_of({20, 40}), notes).has_value());
    EXPECT_EQ(notes.steps().at(0).expression, "2 / (1 / 20 gal/ac + 1 / 40 gal/ac)");
    EXPECT_EQ(notes.steps().at(0).result, "26.67 gal/ac");
}

CrewRequest any_crew() {
    const auto outputs = *rc::gen::resize(
        12, rc::gen::suchThat(rc::gen::container<std::vector<int>>(rc::gen::inRange(50, 1000)),
                              [](const std::vector<int>& all) { return all.size() >= 2; }));
    std::vector<double> values(outputs.begin(), outputs.end());
    for (double& value : values) {
        value /= 10.0;
    }
    CrewRequest request = crew_of(values);
    request.sharing =
        *rc::gen::element(CrewSharing::equal_flow, CrewSharing::own_flow, CrewSharing::equal_area);
    for (CrewPerson& person : request.people) {
        person.flow = Flow::of(*rc::gen::inRange(10, 100) / 100.0, us_gallons_per_minute);
    }
    return request;
}

RC_GTEST_PROP(Crew, the_crew_rate_lies_between_lowest_and_highest, ()) {
    const CrewRequest request = any_crew();
    const auto [low, high] = std::minmax_element(
        request.people.begin(), request.people.end(),
        [](const auto& a, const auto& b) { return a.output.value < b.output.value; });
    const MixPerArea rate = answered(request).crew_rate;
    RC_ASSERT(rate.si() >= low->output.value.si() * (1 - 1e-12));
    RC_ASSERT(rate.si() <= high->output.value.si() * (1 + 1e-12));
}

RC_GTEST_PROP(Crew, advised_recipes_keep_everyone_within_the_label, ()) {
    CrewRequest request = any_crew();
    request.product_rate = ounces(*rc::gen::inRange(20, 40));
    request.product_min = ounces(*rc::gen::inRange(10, 20));
    request.product_max = ounces(*rc::gen::inRange(40, 60));
    for (std::size_t i = 0; i < request.people.size(); ++i) {
        request.people[i].name = std::to_string(i);
    }
    for (const RecipeGroup& group : answered(request).recipes) {
        for (const std::string& name : group.people) {
            const double output = request.people[std::stoul(name)].output.value.si();
            const double put_on = request.product_rate->si * output / group.mixed_for->si();
            RC_ASSERT(put_on >= request.product_min->si * (1 - 1e-9));
            RC_ASSERT(put_on <= request.product_max->si * (1 + 1e-9));
        }
    }
}

}  // namespace
}  // namespace swathbook::calibration
