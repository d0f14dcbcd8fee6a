#include "reports/packet/worksheet.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reports/phrases.hpp"
#include "tests/unit/reports/pdf_probe.hpp"

namespace swathbook::reports {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

probe::Pdf printed(const WorksheetInput& input, const std::string& name) {
    const Result<std::string> bytes = worksheet_pdf(input);
    EXPECT_TRUE(bytes.has_value()) << (bytes ? "" : bytes.error().detail);
    return bytes ? probe::look_at(*bytes, name) : probe::Pdf{};
}

TEST(Worksheet, every_edition_is_one_page_with_nothing_clipped) {
    for (const Language language : {Language::english, Language::spanish}) {
        for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
            for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
                const std::string name = std::string("worksheet_") +
                                         (language == Language::english ? "en" : "es") +
                                         (units == UnitSystem::us ? "_us" : "_metric") +
                                         (paper == PaperSize::letter ? "_letter" : "_a4");
                const probe::Pdf pdf =
                    printed({language, units, paper, "2031-04-05", "Swathbook 0.1.0", 16}, name);
                EXPECT_EQ(pdf.pages.size(), 1U) << name;
                EXPECT_THAT(probe::words_outside(pdf, 50), IsEmpty()) << name;
                EXPECT_THAT(probe::words_overlapping(pdf), IsEmpty()) << name;
            }
        }
    }
}

TEST(Worksheet, the_us_edition_prints_the_exact_factors_and_warns_of_the_tenfold_error) {
    // 43,560 ft2 / 128 = 340.3125 ft2; 3,600 s / 5,280 ft = 0.681818: unit arithmetic.
    const std::string words = probe::flowed(printed({}, "worksheet_words_us"));
    EXPECT_THAT(words, HasSubstr("340.3"));
    EXPECT_THAT(words, HasSubstr("0.6818"));
    EXPECT_THAT(words, HasSubstr("ONLY if W × L = 340 sq ft"));
    EXPECT_THAT(words, HasSubstr("divide the ounces by 10"));
    EXPECT_THAT(words, HasSubstr("Clean water only"));
    EXPECT_THAT(words, HasSubstr("gal/ac"));
    EXPECT_THAT(words, Not(HasSubstr("L/ha")));
}

TEST(Worksheet, the_metric_edition_has_no_us_units_in_it) {
    // 1 mL on 1 m2 is 10 L/ha; 1 m/s is 3.6 km/h: unit arithmetic.
    const std::string words =
        probe::flowed(printed({Language::spanish, UnitSystem::metric}, "worksheet_words_metric"));
    EXPECT_THAT(words, HasSubstr("SOLO si W × L = 10 m²"));
    EXPECT_THAT(words, HasSubstr("3.6"));
    EXPECT_THAT(words, HasSubstr("Hoja de calibración"));
    for (const char* us_unit : {"gal", "fl oz", "mph", "psi", "340"}) {
        EXPECT_THAT(words, Not(HasSubstr(us_unit)));
    }
}

TEST(Worksheet, more_tips_than_fit_are_refused) {
    WorksheetInput input;
    input.tips = 17;
    const Result<Sheet> sheet = worksheet_sheet(input);
    ASSERT_FALSE(sheet.has_value());
    EXPECT_EQ(sheet.error().code, ErrorCode::out_of_range);
    EXPECT_EQ(sheet.error().field, "tips");
}

}  // namespace
}  // namespace swathbook::reports
