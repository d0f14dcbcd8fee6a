// Reading text that is understood must not touch the heap: forms and replays read thousands of
// texts.
#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <string_view>

#include "core/quantity/parse.hpp"
#include "tests/unit/quantity/allocations.hpp"

namespace swathbook {
namespace {

TEST(Allocation, text_that_is_understood_costs_none) {
    struct Text {
        std::string_view text;
        Kind kind;
    };
    constexpr std::array texts{
        Text{"20 gallons of spray solution per acre", Kind::mix_per_area},
        Text{"1 qt + 10 fl oz per acre", Kind::product_volume_per_area},
        Text{"2-2/3 pt per 1,000 sq ft", Kind::product_volume_per_area},
        Text{"1.5 lb of active ingredient per acre", Kind::ingredient_per_area},
        Text{"17 lbs per 100 gallons of water", Kind::product_mass_per_mix},
        Text{"litros por hectárea", Kind::mix_per_area},
        Text{"0:31.5", Kind::duration},
        Text{"72 degrees Fahrenheit", Kind::temperature},
    };
    for (const Text& text : texts) {
        const std::size_t before = allocations_so_far();
        const bool is_unit_alone = text.text.front() == 'l';
        const bool understood = is_unit_alone ? parse_unit(text.text, text.kind).has_value()
                                              : parse_amount(text.text, text.kind).has_value();
        const std::size_t after = allocations_so_far();
        EXPECT_TRUE(understood) << text.text;
        EXPECT_EQ(after, before) << text.text;
    }
    const std::size_t before = allocations_so_far();
    EXPECT_FALSE(parse_amount("no number at all, and a sentence to say so", Kind::volume));
    EXPECT_GT(allocations_so_far(), before) << "the counter counts";
}

}  // namespace
}  // namespace swathbook
