#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reports/figures/tip_bars.hpp"
#include "reports/pdf/render.hpp"
#include "tests/unit/reports/pdf_probe.hpp"

namespace swathbook::reports {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

TipBarsPicture picture_of(int count, double first, double step) {
    TipBarsPicture picture;
    picture.reference = "0.400 gal/min rated";
    picture.limits = {{0.10, "+10 % of rating"}, {-0.05, "-5 % of mean"}};
    for (int i = 0; i < count; ++i) {
        const double off = first + step * i;
        const BarPattern pattern = off > 0.1     ? BarPattern::over
                                   : off < -0.05 ? BarPattern::under
                                                 : BarPattern::within;
        picture.bars.push_back({std::to_string(i + 1), off, off > 0 ? "+3.3 %" : "-3.3 %", "0.413",
                                pattern == BarPattern::within ? "" : "clogged", pattern});
    }
    return picture;
}

std::vector<Box> bars_of(const Drawing& drawing) {
    std::vector<Box> boxes;
    for (const Shape& shape : drawing.shapes) {
        if (const Box* box = std::get_if<Box>(&shape)) {
            boxes.push_back(*box);
        }
    }
    return boxes;
}

TEST(TipBars, one_to_twelve_tips_print_without_words_over_each_other) {
    for (int count = 1; count <= 12; ++count) {
        Document document;
        document.title = "Bars";
        document.printed_at = "2031-04-05T00:00:00Z";
        Sheet sheet{"Bars", "", "", {}};
        sheet.add(Figure{tip_bars(picture_of(count, -0.14, 0.3 / count)), "caption"});
        document.sheets = {sheet};
        const Result<std::string> bytes = pdf::render(document);
        ASSERT_TRUE(bytes.has_value());
        const probe::Pdf pdf = probe::look_at(*bytes, "bars_" + std::to_string(count));
        EXPECT_THAT(probe::words_outside(pdf, 45), IsEmpty()) << count;
        EXPECT_THAT(probe::words_overlapping(pdf), IsEmpty()) << count;
    }
}

TEST(TipBars, heights_are_in_proportion_to_the_deviation_and_point_its_way) {
    TipBarsPicture picture;
    picture.bars = {{"1", 0.02, "", "", "", BarPattern::within},
                    {"2", 0.04, "", "", "", BarPattern::within},
                    {"3", -0.04, "", "", "", BarPattern::within}};
    const std::vector<Box> bars = bars_of(tip_bars(picture));
    ASSERT_EQ(bars.size(), 3U);
    EXPECT_NEAR(bars[1].height, 2 * bars[0].height, 1e-9);
    EXPECT_NEAR(bars[2].height, bars[1].height, 1e-9);
    EXPECT_NEAR(bars[0].y + bars[0].height, bars[2].y, 1e-9) << "up ends where down begins";
}

TEST(TipBars, each_verdict_has_a_pattern_of_its_own_so_that_colour_is_not_needed) {
    TipBarsPicture picture;
    for (const BarPattern pattern : {BarPattern::within, BarPattern::at_limit, BarPattern::over,
                                     BarPattern::under, BarPattern::other_size}) {
        picture.bars.push_back({"1", 0.05, "", "", "", pattern});
    }
    const std::vector<Box> bars = bars_of(tip_bars(picture));
    for (std::size_t i = 0; i < bars.size(); ++i) {
        for (std::size_t j = i + 1; j < bars.size(); ++j) {
            EXPECT_TRUE(bars[i].fill != bars[j].fill || bars[i].stroke != bars[j].stroke);
        }
    }
}

TEST(TipBars, a_tip_far_off_stays_inside_the_picture) {
    TipBarsPicture picture;
    picture.bars = {{"1", 0.9, "+90 %", "0.760", "size?", BarPattern::other_size},
                    {"2", -0.8, "-80 %", "", "", BarPattern::under}};
    const Drawing drawing = tip_bars(picture);
    for (const Box& bar : bars_of(drawing)) {
        EXPECT_GE(bar.y, 0.0);
        EXPECT_LE(bar.y + bar.height, drawing.height);
    }
}

}  // namespace
}  // namespace swathbook::reports
