#include "core/quantity/label_rate.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string_view>

#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"

namespace swathbook {
namespace {

struct Rate {
    std::string_view text;
    RateBasis basis;
    double number;
    std::string_view unit;
};

TEST(LabelRate, the_basis_is_read_from_the_text) {
    using enum RateBasis;
    for (const Rate& rate : {
             Rate{"2 qt/ac", volume_per_area, 64, "fl oz/ac"},
             Rate{"2-2/3 pt per acre", volume_per_area, 8.0 / 3.0, "pt/ac"},
             Rate{"1 qt + 10 fl oz per acre", volume_per_area, 42, "fl oz/ac"},
             Rate{"2.5 L/ha", volume_per_area, 2.5, "L/ha"},
             Rate{"1.5 fl oz/1000 ft2", volume_per_area, 65.34, "fl oz/ac"},
             Rate{"4 oz wt/A", mass_per_area, 4, "oz wt/ac"},
             Rate{"2 lb/ac", mass_per_area, 32, "oz wt/ac"},
             Rate{"1.5 lb a.i./ac", ingredient_per_area, 1.5, "lb a.i./ac"},
             Rate{"1.5 lb a.e. per acre", acid_per_area, 1.5, "lb a.e./ac"},
             Rate{"1680 g ae/ha", acid_per_area, 1.68, "kg a.e./ha"},
             Rate{"1 qt/100 gal", volume_per_mix, 0.32, "fl oz/gal"},
             Rate{"5 mL/10 L", volume_per_mix, 0.5, "mL/L"},
             Rate{"17 lb/100 gal", mass_per_mix, 0.17, "lb/gal"},
             Rate{"0.25 % v/v", percent_by_volume, 0.25, "% v/v"},
             Rate{"2 % w/w", percent_by_weight, 2, "% w/w"},
         }) {
        SCOPED_TRACE(rate.text);
        const auto parsed = parse_label_rate(rate.text);
        ASSERT_TRUE(parsed) << parsed.error().detail;
        EXPECT_EQ(parsed->basis, rate.basis) << word_of(parsed->basis);
        EXPECT_EQ(parsed->text, rate.text);
        EXPECT_GT(parsed->half_step_si, 0.0);
        EXPECT_NEAR(number_in(parsed->si, kind_of(parsed->basis), rate.unit), rate.number,
                    1e-13 * rate.number);
    }
}

TEST(LabelRate, prints_what_was_typed_or_else_the_systems_unit) {
    auto rate = *parse_label_rate("1 qt/ac");
    EXPECT_EQ(show(rate, UnitSystem::metric), "1 qt/ac");
    rate.text.clear();
    EXPECT_EQ(show(rate, UnitSystem::us), "32 fl oz/ac");
    EXPECT_EQ(show(rate, UnitSystem::metric), "2.338 L/ha");
}

TEST(LabelRate, every_basis_has_its_own_kind_and_word) {
    using enum RateBasis;
    constexpr std::array bases{volume_per_area,   mass_per_area,    ingredient_per_area,
                               acid_per_area,     volume_per_mix,   mass_per_mix,
                               percent_by_volume, percent_by_weight};
    for (const RateBasis a : bases) {
        for (const RateBasis b : bases) {
            EXPECT_EQ(a == b, word_of(a) == word_of(b));
            EXPECT_EQ(a == b, kind_of(a) == kind_of(b));
        }
    }
}

}  // namespace
}  // namespace swathbook
