#include "core/droplets/droplet_class.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "core/droplets/class_by_pressure.hpp"
#include "core/droplets/class_window.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::droplets {
namespace {

using enum DropletClass;
using ::testing::HasSubstr;

constexpr std::size_t class_count = 8;

DropletClass any_class() {
    return all_classes()[*rc::gen::inRange<std::size_t>(0, class_count)].value;
}

TEST(DropletClass, classes_run_from_finest_to_coarsest) {
    ASSERT_EQ(all_classes().size(), class_count);
    for (std::size_t i = 1; i < all_classes().size(); ++i) {
        EXPECT_TRUE(is_coarser(all_classes()[i].value, all_classes()[i - 1].value));
    }
}

// Grainews, "Nozzle colour and flow rate confusion": VF red, F orange, M yellow, C blue, VC green,
// XC white.
TEST(DropletClass, colours_are_the_published_ones) {
    EXPECT_EQ(info_of(very_fine).colour_english, "red");
    EXPECT_EQ(info_of(fine).colour_english, "orange");
    EXPECT_EQ(info_of(medium).colour_english, "yellow");
    EXPECT_EQ(info_of(coarse).colour_english, "blue");
    EXPECT_EQ(info_of(very_coarse).colour_english, "green");
    EXPECT_EQ(info_of(extremely_coarse).colour_english, "white");
}

TEST(DropletClass, colours_not_read_in_a_publication_say_so) {
    EXPECT_FALSE(info_of(extremely_fine).colour_seen);
    EXPECT_FALSE(info_of(ultra_coarse).colour_seen);
    EXPECT_TRUE(info_of(medium).colour_seen);
}

RC_GTEST_PROP(DropletClass, every_way_of_writing_a_class_reads_back, ()) {
    const DropletClass wanted = any_class();
    const ClassInfo& info = info_of(wanted);
    RC_ASSERT(class_from_text(info.letters).value() == wanted);
    RC_ASSERT(class_from_text(info.english).value() == wanted);
    RC_ASSERT(class_from_text(info.spanish).value() == wanted);
}

TEST(DropletClass, capitals_hyphens_and_spaces_do_not_matter) {
    EXPECT_EQ(class_from_text("Very-Coarse").value(), very_coarse);
    EXPECT_EQ(class_from_text("  vc ").value(), very_coarse);
    EXPECT_EQ(class_from_text("extremely_coarse").value(), extremely_coarse);
}

TEST(DropletClass, what_is_no_class_is_refused_with_the_list) {
    for (const char* text : {"", "big", "coarser", "300 um", "M C", "medium coarse fine"}) {
        const auto read = class_from_text(text);
        ASSERT_FALSE(read.has_value()) << text;
        EXPECT_EQ(read.error().code, ErrorCode::invalid_input);
        EXPECT_THAT(read.error().detail, HasSubstr("VC"));
    }
}

struct WindowCase {
    const char* text;
    ClassWindow window;
};

TEST(ClassWindow, label_words_are_read) {
    const WindowCase cases[] = {
        {"coarse or coarser", {coarse, {}}},
        {"Coarse or coarser droplets", {coarse, {}}},
        {"at least VC", {very_coarse, {}}},
        {"no finer than medium", {medium, {}}},
        {"C+", {coarse, {}}},
        {"medium or finer", {{}, medium}},
        {"at most C", {{}, coarse}},
        {"medium to coarse", {medium, coarse}},
        {"M-C", {medium, coarse}},
        {"coarse - medium", {medium, coarse}},
        {"medium or coarse", {medium, coarse}},
        {"very coarse to ultra coarse", {very_coarse, ultra_coarse}},
        {"VC", {very_coarse, very_coarse}},
        {"gruesa o más gruesa", {coarse, {}}},
        {"muy gruesa o más gruesa", {very_coarse, {}}},
        {"media o más fina", {{}, medium}},
        {"media a gruesa", {medium, coarse}},
    };
    for (const WindowCase& one : cases) {
        const auto read = class_window_from_text(one.text);
        ASSERT_TRUE(read.has_value()) << one.text;
        EXPECT_EQ(*read, one.window) << one.text;
    }
}

TEST(ClassWindow, words_that_leave_doubt_are_refused) {
    for (const char* text : {"", "coarser", "not coarse", "fine or coarse", "coarse, or finer",
                             "fine medium coarse", "about medium", "250-350 um"}) {
        EXPECT_FALSE(class_window_from_text(text).has_value()) << text;
    }
}

RC_GTEST_PROP(ClassWindow, at_least_allows_exactly_the_class_and_coarser, ()) {
    const DropletClass limit = any_class();
    const DropletClass tried = any_class();
    RC_ASSERT(allows(ClassWindow{limit, {}}, tried) == !is_coarser(limit, tried));
}

TEST(ClassWindow, describes_itself) {
    EXPECT_EQ(describe({coarse, {}}), "coarse (C) or coarser");
    EXPECT_EQ(describe({medium, coarse}), "medium (M) to coarse (C)");
    EXPECT_EQ(describe({{}, medium}), "medium (M) or finer");
    EXPECT_EQ(describe({fine, fine}), "fine (F)");
    EXPECT_EQ(describe({}), "any class");
}

ClassBand band(double from, double to, DropletClass droplet_class) {
    return {Pressure::of(from, pounds_per_square_inch), Pressure::of(to, pounds_per_square_inch),
            droplet_class};
}

// Grainews, "Nozzle colour and flow rate confusion": a 025 twin-fan tip is VC at 20 psi, C at
// 30-60, M at 70-90 psi.
const ClassBand twin_fan[] = {band(20, 20, very_coarse), band(30, 60, coarse),
                              band(70, 90, medium)};

TEST(ClassByPressure, follows_the_printed_table_and_never_fills_its_gaps) {
    const auto at = [](double psi) {
        return class_at(twin_fan, Pressure::of(psi, pounds_per_square_inch));
    };
    EXPECT_EQ(at(20), very_coarse);
    EXPECT_EQ(at(30), coarse);
    EXPECT_EQ(at(45), coarse);
    EXPECT_EQ(at(60), coarse);
    EXPECT_EQ(at(90), medium);
    EXPECT_EQ(at(25), std::nullopt);
    EXPECT_EQ(at(65), std::nullopt);
    EXPECT_EQ(at(100), std::nullopt);
    EXPECT_EQ(class_at({}, Pressure::of(40, pounds_per_square_inch)), std::nullopt);
}

TEST(ClassByPressure, where_two_bands_meet_the_finer_class_counts) {
    const ClassBand meeting[] = {band(20, 40, coarse), band(40, 60, medium)};
    EXPECT_TRUE(check_bands(meeting, "classes").has_value());
    EXPECT_EQ(class_at(meeting, Pressure::of(40, pounds_per_square_inch)), medium);
}

TEST(ClassByPressure, bad_tables_are_refused) {
    const ClassBand reversed[] = {band(60, 30, coarse)};
    const ClassBand overlapping[] = {band(20, 50, coarse), band(40, 60, medium)};
    const ClassBand nothing[] = {band(0, 0, coarse)};
    EXPECT_EQ(check_bands(reversed, "classes").error().field, "classes[0]");
    EXPECT_EQ(check_bands(reversed, "classes").error().code, ErrorCode::inconsistent);
    EXPECT_EQ(check_bands(overlapping, "classes").error().field, "classes[1]");
    EXPECT_EQ(check_bands(nothing, "classes").error().code, ErrorCode::out_of_range);
}

}  // namespace
}  // namespace swathbook::droplets
