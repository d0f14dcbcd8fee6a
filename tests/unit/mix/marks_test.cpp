#include "core/mix/marks.hpp"

#include <rapidcheck.h>

#include <cmath>
#include <limits>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

MeasuringTool marked(std::string name, std::initializer_list<std::string_view> marks) {
    MeasuringTool tool;
    tool.name = std::move(name);
    for (const std::string_view mark : marks) {
        tool.marks.push_back(volume(mark));
    }
    return tool;
}

MeasuringTool scale(std::string_view step) {
    MeasuringTool tool;
    tool.name = "scale";
    tool.weight_step = read<Kind::mass>(step);
    return tool;
}

MeasureTask task_for(const ProductCard& card, double measure) {
    MeasureTask task;
    task.card = &card;
    task.measure_si = measure;
    task.mix = Volume::of(10, us_gallons);
    return task;
}

MeasureAdvice advise(const ProductCard& card, double measure, std::vector<MeasuringTool> tools) {
    return measure_with(tools, task_for(card, measure), UnitSystem::us);
}

TEST(MeasureWith, CountsFullMeasuresFirst) {
    const ProductCard card = liquid_card("L");
    const auto advice = advise(card, 40 * us_fluid_ounces.si,
                               {marked("quart jug", {"8 fl oz", "16 fl oz", "24 fl oz", "1 qt"})});
    ASSERT_TRUE(advice.best);
    EXPECT_EQ(advice.choices.size(), 1U);  // exact: no second choice
    EXPECT_EQ(advice.best->full_measures, 1);
    EXPECT_EQ(*advice.best->mark, Volume::of(8, us_fluid_ounces));
    EXPECT_NEAR(advice.best->error.si(), 0.0, 1e-12);
    EXPECT_EQ(advice.best->text, "1 full 32 fl oz and to 8 fl oz");
}

TEST(MeasureWith, TakesTheTopMarkAsAFullMeasure) {
    const ProductCard card = liquid_card("L");
    const auto advice = advise(card, 3 * us_quarts.si, {marked("jug", {"1 pt", "1 qt"})});
    ASSERT_TRUE(advice.best);
    EXPECT_EQ(advice.best->full_measures, 3);
    EXPECT_EQ(advice.best->text, "3 full 32 fl oz");
    EXPECT_EQ(advice.choices.size(), 1U);
}

TEST(MeasureWith, NeverAdvisesNothingAtAll) {
    const ProductCard card = liquid_card("L");
    const auto advice = advise(card, 1e-6, {marked("jug", {"1 qt"})});  // 1 mL with a quart jug
    ASSERT_EQ(advice.choices.size(), 1U);
    EXPECT_GT(advice.choices[0].error.si(), 100.0);
    EXPECT_FALSE(advice.fits);
}

TEST(MeasureWith, WeighsDryProductsToTheStepOfTheScale) {
    const ProductCard card = dry_card("D");
    const auto advice = advise(card, 4.25 * pounds.si, {scale("0.1 oz wt")});
    ASSERT_TRUE(advice.best);
    EXPECT_NEAR(advice.best->mass->in(ounces_weight), 68.0, 1e-9);
    EXPECT_TRUE(advice.fits);
}

TEST(MeasureWith, UsesACupOnlyForItsOwnProduct) {
    MeasuringTool cup;
    cup.name = "cup of product D";
    cup.only_for = "D";
    cup.weight_marks = {read<Kind::mass>("50 g"), read<Kind::mass>("100 g")};
    EXPECT_TRUE(advise(dry_card("D"), 0.1, {cup}).best);
    EXPECT_TRUE(advise(dry_card("E"), 0.1, {cup}).choices.empty());
}

TEST(MeasureWith, NeverMeasuresADryProductByVolume) {
    EXPECT_TRUE(advise(dry_card("D"), 0.1, {marked("jug", {"1 pt", "1 qt"})}).choices.empty());
}

TEST(MeasureWith, WeighsALiquidOnlyWhenItsDensityIsKnown) {
    ProductCard card = liquid_card("L");
    EXPECT_TRUE(advise(card, 0.001, {scale("1 g")}).choices.empty());
    card.density = read<Kind::density>("1.25 kg/L");
    const auto advice = advise(card, 0.001, {scale("1 g")});
    ASSERT_TRUE(advice.best);
    EXPECT_NEAR(advice.best->mass->in(grams), 1250.0, 1e-9);
}

TEST(MeasureWith, PrefersFewFillingsAmongGoodOnes) {
    const ProductCard card = liquid_card("L");
    const auto advice =
        advise(card, 0.001, {marked("syringe", {"10 mL"}), marked("jug", {"1.005 L"})});
    ASSERT_TRUE(advice.best);
    EXPECT_EQ(advice.best->tool, "jug");
}

TEST(MeasureWith, SaysWhichMarksWouldAlwaysFit) {
    const ProductCard card = liquid_card("L");
    const auto advice = advise(card, 1e-5, {});
    EXPECT_NEAR(advice.finest_volume->in(millilitres), 1.0, 1e-12);  // half a step is 5 % of 10 mL
    EXPECT_FALSE(advice.best);
}

TEST(MeasureWith, OffersNoBatchThatTheTankCannotHold) {
    const ProductCard card = liquid_card("L");
    MeasureTask task = task_for(card, 11.09e-6);
    task.largest_batch = Volume::of(10, us_gallons);
    const std::vector<MeasuringTool> tools{marked("cup", {"10 mL", "12.5 mL"})};
    const auto advice = measure_with(tools, task, UnitSystem::us);
    EXPECT_TRUE(advice.choices[0].batch);
    EXPECT_FALSE(advice.choices[1].batch);
}

TEST(CheckTool, RefusesToolsWithoutOneSortOfMarks) {
    EXPECT_FALSE(check_tool(MeasuringTool{}, "tools[0]"));
    MeasuringTool both = marked("jug", {"1 qt"});
    both.weight_step = read<Kind::mass>("1 g");
    EXPECT_FALSE(check_tool(both, "tools[0]"));
    MeasuringTool zero = marked("jug", {});
    zero.marks = {Reading<Kind::volume>(Volume::from_si(0.0))};
    EXPECT_EQ(check_tool(zero, "tools[0]").error().field, "tools[0].marks[0]");
    MeasuringTool many = marked("jug", {});
    many.marks.assign(201, volume("1 qt"));
    EXPECT_EQ(check_tool(many, "tools[0]").error().code, ErrorCode::out_of_range);
    MeasuringTool lidded;
    lidded.step = volume("10 mL");
    lidded.holds = volume("5 mL");
    EXPECT_EQ(check_tool(lidded, "tools[0]").error().field, "tools[0].holds");
    MeasuringTool step;
    step.weight_step = Mass::from_si(std::numeric_limits<double>::quiet_NaN());
    EXPECT_EQ(check_tool(step, "tools[0]").error().field, "tools[0].weight_step");
}

/// The obvious way: try every mark after every number of full measures.
double nearest_by_trying(const std::vector<double>& marks, double amount) {
    const double top = *std::max_element(marks.begin(), marks.end());
    double nearest = top;
    for (double fills = 0; fills * top <= amount + top; fills += 1) {
        for (const double mark : marks) {
            const double measured = fills * top + mark;
            if (std::abs(measured - amount) < std::abs(nearest - amount)) {
                nearest = measured;
            }
        }
    }
    return nearest;
}

TEST(MeasureWith, FindsTheNearestMarkThatTryingEveryoneFinds) {
    EXPECT_TRUE(rc::check([] {
        const ProductCard card = liquid_card("L");
        const auto raw =
            *rc::gen::nonEmpty(rc::gen::container<std::vector<int>>(rc::gen::inRange(1, 400)));
        const double amount = *rc::gen::inRange(1, 4000) * 1e-6;
        MeasuringTool tool;
        tool.name = "jug";
        std::vector<double> marks;
        for (const int mark : raw) {
            marks.push_back(mark * 1e-6);
            tool.marks.emplace_back(Volume::from_si(marks.back()));
        }
        RC_PRE(raw.size() <= 200U);
        const auto advice = advise(card, amount, {tool});
        double nearest = std::numeric_limits<double>::infinity();
        for (const MarkChoice& choice : advice.choices) {
            const double measured = choice.volume->si();
            RC_ASSERT(std::abs(choice.error.si() - (measured / amount - 1.0)) < 1e-12);
            if (std::abs(measured - amount) < std::abs(nearest - amount)) {
                nearest = measured;
            }
        }
        RC_ASSERT(std::abs(std::abs(nearest - amount) -
                           std::abs(nearest_by_trying(marks, amount) - amount)) < 1e-12);
    }));
}

}  // namespace
}  // namespace swathbook::mix
