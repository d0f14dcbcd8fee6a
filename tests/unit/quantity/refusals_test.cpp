// What the reader refuses, and what it then says: the choices of every ambiguity, the nearest
// spelling, the limit.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <string_view>

#include "core/quantity/parse.hpp"

namespace swathbook {
namespace {

using testing::AnyOf;
using testing::HasSubstr;

struct Refusal {
    std::string_view text;
    Kind kind;
    std::string_view said;    ///< part of the message
    std::string_view also{};  ///< another part
};

void expect_refused(const Error& error, const Refusal& refusal) {
    EXPECT_THAT(error.detail, HasSubstr(std::string(refusal.said)));
    EXPECT_THAT(error.detail, HasSubstr(std::string(refusal.also)));
}

constexpr std::array refusals{
    // Two meanings: the choices
    Refusal{"10 oz", Kind::volume, "fl oz", "oz wt"},
    Refusal{"4 ounces", Kind::mass, "fl oz", "oz wt"},
    Refusal{"4 oz/ac", Kind::product_mass_per_area, "fl oz", "oz wt"},
    Refusal{"4 onzas", Kind::volume, "fl oz", "oz wt"},
    Refusal{"4 imp oz", Kind::volume, "fl oz", "oz wt"},
    Refusal{"4 fl oz a.i./ac", Kind::ingredient_per_area, "does not go with"},
    Refusal{"10 oz + 1 lb", Kind::mass, "fl oz", "oz wt"},
    Refusal{"1,250 L", Kind::volume, "\"1250\"", "\"1.250\""},
    Refusal{"12,500 L", Kind::volume, "\"12500\"", "\"12.500\""},
    Refusal{"1,000 ft2", Kind::area, "\"1000\"", "\"1.000\""},
    Refusal{"2 qt/1,250 gal", Kind::product_volume_per_mix, "\"1250\"", "\"1.250\""},
    Refusal{"2 %", Kind::percent_by_volume, "v/v", "w/w"},
    Refusal{"2 % solution", Kind::percent_by_weight, "v/v", "w/w"},
    Refusal{"2 % w/v", Kind::percent_by_volume, "mixes", "g/L"},
    Refusal{"2 % v", Kind::percent_by_volume, "does not belong"},
    Refusal{"2 % m", Kind::percent_by_weight, "stand together"},
    Refusal{"2 % dry", Kind::percent_by_weight, "does not go with"},
    Refusal{"2 % w/ac", Kind::percent_by_weight, "mixes"},
    Refusal{"20 gal ac", Kind::mix_per_area, "stand together"},
    Refusal{"10 ft 6", Kind::length, "unit is missing"},
    Refusal{"3. 5 gal", Kind::volume, "Two numbers"},
    Refusal{"1'000 L", Kind::volume, "\"1000 L\""},
    Refusal{"2/3/4 pt", Kind::volume, "only a count"},
    Refusal{"1 ton", Kind::mass, "short ton", "tonne"},
    Refusal{"1 tonelada", Kind::mass, "short ton", "tonne"},
    Refusal{"1 T", Kind::volume, "tbsp", "tonne"},
    Refusal{"2 t", Kind::volume, "tsp", "tonne"},
    Refusal{"5 gr", Kind::mass, "gram", "grain"},
    Refusal{"5 Mg", Kind::mass, "milligram", "tonne"},
    Refusal{"5 mPa", Kind::pressure, "MPa", "kPa"},
    Refusal{"5 #", Kind::mass, "lb", "each"},
    Refusal{"5 #/ac", Kind::count_per_area, "lb", "each"},
    Refusal{"5 g/a", Kind::product_mass_per_area, "acre", "are"},
    Refusal{"5 a", Kind::area, "\"ac\"", "are"},
    Refusal{"72 \u00b0", Kind::temperature, "degF", "degC"},
    Refusal{"1 cuarto", Kind::volume, "qt", "1/4 gal"},
    Refusal{"11/2 pt/A", Kind::product_volume_per_area, "\"1-1/2\"", "\"5.5\""},
    Refusal{"11\u20442 pt", Kind::volume, "\"1-1/2\"", "\"5.5\""},
    Refusal{"22/3 qt", Kind::volume, "\"2-2/3\"", "\"7.33333\""},
    Refusal{"12/3 qt", Kind::volume, "\"1-2/3\"", "\"4\""},
    Refusal{"12 / 3 qt", Kind::volume, "\"1-2/3\"", "\"4\""},
    Refusal{"111/12 ft", Kind::length, "\"11-1/12\"", "\"1-11/12\""},
    Refusal{"1 are", Kind::area, "\"ac\"", "100 m2"},
    // Grains are counted as CaCO3
    Refusal{"5 gpg", Kind::dissolved, "not one mineral", "grains_per_gallon"},
    Refusal{"5 grains/gal", Kind::dissolved, "not one mineral", "ppm"},
    // A strength or rate of a substance must name it
    Refusal{"3 lb/gal", Kind::acid_strength, "lb a.e.", "lb a.i."},
    Refusal{"4 lb/gal", Kind::ingredient_strength, "lb a.i.", "lb a.e."},
    Refusal{"1 lb/ac", Kind::ingredient_per_area, "lb a.i.", "lb a.e."},
    Refusal{"1 lb product/ac", Kind::acid_per_area, "lb a.e."},
    Refusal{"3 lb a.i./gal", Kind::acid_strength, "acid equivalent"},
    Refusal{"1 lb a.e./ac", Kind::product_mass_per_area, "product as sold"},
    Refusal{"10 lb ai/gal", Kind::density, "product as sold"},
    // Not a value
    Refusal{"", Kind::volume, "Nothing was entered"},
    Refusal{"  \t ", Kind::volume, "Nothing was entered"},
    Refusal{"gal", Kind::volume, "no number"},
    Refusal{"NaN gal", Kind::volume, "not finite"},
    Refusal{"-inf gal", Kind::volume, "not finite"},
    Refusal{"1e999 gal", Kind::volume, "too large or too small"},
    Refusal{"1e-60 gal", Kind::volume, "too large or too small"},
    Refusal{"12345678901234567890 gal", Kind::volume, "19 digits"},
    Refusal{"-2 gal", Kind::volume, "below zero"},
    Refusal{"\u22122 gal", Kind::volume, "below zero"},
    Refusal{"-2 s", Kind::duration, "below zero"},
    Refusal{"-460 F", Kind::temperature, "absolute zero"},
    Refusal{"3-5 gal", Kind::volume, "range"},
    Refusal{"3 \u2013 5 gal", Kind::volume, "range"},
    Refusal{"3 gal - 5 gal", Kind::volume, "range"},
    Refusal{"3 to 5 gal", Kind::volume, "range"},
    Refusal{"1.2.3 gal", Kind::volume, "do not make a number"},
    Refusal{"1,2,3 gal", Kind::volume, "do not make a number"},
    Refusal{"1 250 L", Kind::volume, "Two numbers"},
    Refusal{"1/0 gal", Kind::volume, "divides by zero"},
    Refusal{"1 qt/0 gal", Kind::product_volume_per_mix, "divides by zero"},
    Refusal{"2 5/3 gal", Kind::volume, "not a proper one"},
    Refusal{"1/20000 gal", Kind::volume, "not a proper one"},
    // Units missing, unknown or wrong
    Refusal{"412", Kind::count_per_area, "unit is missing"},
    Refusal{"0.8", Kind::fraction, "percent sign is missing", "80 %"},
    Refusal{"1/2", Kind::fraction, "percent sign is missing", "80 %"},
    Refusal{"20", Kind::mix_per_area, "unit is missing", "20 gal/ac"},
    Refusal{"5 gallns", Kind::volume, "Did you mean \"gallons\""},
    Refusal{"5 liter s", Kind::volume, "\"liter\" and \"s\""},
    Refusal{"5 acer", Kind::area, "Did you mean \"acre\""},
    Refusal{"5 xyzzy", Kind::area, "\"xyzzy\" is not a unit"},
    Refusal{"5 supercalifragilisticexpialidocious", Kind::area, "is not a unit"},
    Refusal{"5 imp cups", Kind::volume, "does not go with"},
    Refusal{"5 dry qt", Kind::volume, "does not go with"},
    Refusal{"5 fl lb", Kind::mass, "does not go with"},
    Refusal{"5 sq gal", Kind::volume, "does not belong"},
    Refusal{"5 sq ft2", Kind::area, "does not belong"},
    Refusal{"5 US imp gal", Kind::volume, "US and imperial"},
    Refusal{"5 fl oz wt", Kind::volume, "fluid and weight"},
    Refusal{"5 lb ai ae", Kind::ingredient_mass, "at once"},
    Refusal{"5 gal ai", Kind::volume, "does not go with"},
    Refusal{"5 lb equivalent", Kind::mass, "does not go with"},
    Refusal{"5 fl", Kind::volume, "needs a unit beside it"},
    Refusal{"5 gal $", Kind::volume, "cannot be read as a unit"},
    Refusal{"4 mi", Kind::speed, "This is a length, but a speed is wanted"},
    Refusal{"5 m", Kind::duration, "Minutes are written \"min\""},
    Refusal{"80 % v/v", Kind::fraction, "plain percent"},
    Refusal{"2 % w/w", Kind::percent_by_volume, "% v/v"},
    Refusal{"8 delta degF", Kind::temperature, "not clear"},
    Refusal{"2 gal/100 gal", Kind::percent_by_volume, "a volume per volume"},
    // Quotients
    Refusal{"1 qt/", Kind::product_volume_per_area, "No unit follows"},
    Refusal{"1 qt per", Kind::product_volume_per_area, "No unit follows"},
    Refusal{"1 qt/ac/yr", Kind::product_volume_per_area, "max_yearly_rate", "\"1 qt/ac\""},
    Refusal{"1 qt/mph", Kind::product_volume_per_area, "not a unit used here"},
    Refusal{"412 per 100 gal", Kind::count_per_area, "only a count"},
    // Sums
    Refusal{"1 qt + 4 lb", Kind::volume, "cannot be added"},
    Refusal{"1 qt +", Kind::volume, "no number"},
    Refusal{"2 in 6 ft", Kind::length, "each unit must be smaller"},
    Refusal{"6 ft 6 ft", Kind::length, "each unit must be smaller"},
    Refusal{"1 qt/ac 10 fl oz/ac", Kind::product_volume_per_area, "each unit must be smaller"},
    Refusal{"1 qt/ac + 1 qt/100 gal", Kind::product_volume_per_area, "not on the same basis"},
    Refusal{"1 qt/ac + 10 fl oz", Kind::product_volume_per_area, "not on the same basis"},
    Refusal{"1 lb a.e. + 4 oz a.i.", Kind::acid_mass, "not on the same basis"},
    Refusal{"4 mph + 1 mph", Kind::speed, "can be added"},
    Refusal{"1 gal + 1 qt + 1 pt + 1 cup + 1 tbsp", Kind::volume, "up to four"},
    // Written often, and no amount here: what to type
    Refusal{"4 months", Kind::duration, "differ in length", "\"124 days\""},
    Refusal{"18 mo", Kind::duration, "differ in length", "\"558 days\""},
    Refusal{"1-1/2 mos.", Kind::duration, "differ in length", "\"47 days\""},
    Refusal{"1 year", Kind::duration, "differ in length", "\"366 days\""},
    Refusal{"until dry", Kind::duration, "until_dry"},
    Refusal{"2-2/3 pts per acre per year", Kind::product_volume_per_area, "max_yearly_rate",
            "\"2-2/3 pts per acre\""},
    Refusal{"8 qt/A/yr", Kind::product_volume_per_area, "max_yearly_rate", "\"8 qt/A\""},
    Refusal{"1 qt/ac/gal", Kind::product_volume_per_area, "one \"per\""},
    Refusal{"1:50", Kind::percent_by_volume, "\"2 % v/v\"", "\"1.96 % v/v\""},
    Refusal{"1 to 100", Kind::percent_by_volume, "\"1 % v/v\"", "\"0.99 % v/v\""},
    Refusal{"1 part in 50", Kind::percent_by_volume, "\"2 % v/v\""},
    Refusal{"1000 ppm", Kind::percent_by_volume, "\"0.1 % v/v\"", "\"0.1 % w/w\""},
    Refusal{"1000 ppm v/v", Kind::percent_by_volume, "\"0.1 % v/v\""},
    Refusal{"1.5 pt/treated acre", Kind::product_volume_per_area, "\"counts\"", "\"1.5 pt/acre\""},
    Refusal{"1 pt/broadcast acre", Kind::product_volume_per_area, "\"counts\""},
    Refusal{"1m20s", Kind::duration, "metres", "\"1 min 20 s\""},
    Refusal{"1 m 20 s", Kind::duration, "metres", "\"1 min 20 s\""},
    Refusal{"66 ft x 66 ft", Kind::area, "\"4356 ft2\"", "course_length"},
    Refusal{"66 x 66 ft", Kind::area, "\"4356 ft2\""},
    Refusal{"20 m \u00d7 50 m", Kind::area, "\"1000 m2\"", "width"},
    Refusal{"1/128th acre", Kind::area, "\"1/128 acre\""},
    Refusal{"12 +/- 0.5 gal", Kind::volume, "\"12 gal\"", "last digit"},
    Refusal{"12\u00b11 gal", Kind::volume, "\"12 gal\"", "last digit"},
    Refusal{"1'000 mL", Kind::volume, "\"1000 mL\""},
    Refusal{"SG 1.28", Kind::density, "\"1.28 kg/L\""},
    Refusal{"1.28 SG", Kind::density, "\"1.28 kg/L\""},
    Refusal{"100 ppm CaCO3", Kind::dissolved, "\"hardness\""},
    Refusal{"100 parts per million", Kind::dissolved, "\"100 ppm\""},
    // A count that was not read makes no figure; a unit of two words stays whole
    Refusal{"2-3 months", Kind::duration, "Give the days of the longest reading"},
    Refusal{"four months", Kind::duration, "Give the days of the longest reading"},
    Refusal{"12 +/- 0.5 fl oz", Kind::volume, "alone, \"12 fl oz\""},
    // Clocks
    Refusal{"1:75", Kind::duration, "not a time"},
    Refusal{"1:5", Kind::duration, "not a time"},
    Refusal{"1:30 s", Kind::duration, "not a time"},
    Refusal{"1:30.5:10", Kind::duration, "not a time"},
    Refusal{"1:02:03:04", Kind::duration, "not a time"},
    Refusal{"1:30", Kind::volume, "looks like a time"},
};

TEST(Refusals, each_is_refused_with_its_reason_and_what_to_type) {
    for (const Refusal& refusal : refusals) {
        SCOPED_TRACE(refusal.text);
        const auto parsed = parse_amount(refusal.text, refusal.kind);
        ASSERT_FALSE(parsed) << parsed->si;
        expect_refused(parsed.error(), refusal);
        const bool too_cold = refusal.said == "absolute zero";
        EXPECT_EQ(parsed.error().code,
                  too_cold ? ErrorCode::out_of_range : ErrorCode::invalid_input);
        // An example of the kind, or a hint made from what was typed.
        const std::string detail = parsed.error().detail.substr(refusal.text.size());
        EXPECT_THAT(detail, AnyOf(HasSubstr(std::string(info_of(refusal.kind).example)),
                                  HasSubstr("ype "), HasSubstr("rite "), HasSubstr("ive ")));
    }
}

TEST(Refusals, a_label_rate_needs_a_known_basis) {
    struct RateRefusal {
        std::string_view text;
        ErrorCode code;
        std::string_view said;
    };
    for (const RateRefusal& refusal : {
             RateRefusal{"2 qt", ErrorCode::invalid_input, "basis is missing"},
             RateRefusal{"2 lb a.e.", ErrorCode::invalid_input, "basis is missing"},
             RateRefusal{"2", ErrorCode::invalid_input, "unit is missing"},
             RateRefusal{"2 %", ErrorCode::invalid_input, "\"% v/v\""},
             RateRefusal{"4 oz/ac", ErrorCode::invalid_input, "\"oz wt\""},
             RateRefusal{"4 mph", ErrorCode::invalid_input, "a speed"},
             RateRefusal{"1:50", ErrorCode::invalid_input, "\"2 % v/v\""},
             RateRefusal{"1:5", ErrorCode::invalid_input, "\"20 % v/v\""},
             RateRefusal{"1000 ppm", ErrorCode::invalid_input, "\"0.1 % v/v\""},
             RateRefusal{"1 to 2 qt/ac", ErrorCode::invalid_input, "range"},
             RateRefusal{"-2 qt/ac", ErrorCode::invalid_input, "below zero"},
             RateRefusal{"2 lb a.e./100 gal", ErrorCode::unsupported, "not read as a label rate"},
             RateRefusal{"0.5 mL per cut", ErrorCode::unsupported, "not read as a label rate"},
             RateRefusal{"0.1 g a.e./stem", ErrorCode::unsupported, "not read as a label rate"},
         }) {
        SCOPED_TRACE(refusal.text);
        const auto parsed = parse_label_rate(refusal.text);
        ASSERT_FALSE(parsed);
        EXPECT_EQ(parsed.error().code, refusal.code);
        EXPECT_THAT(parsed.error().detail, HasSubstr(std::string(refusal.said)));
    }
}

TEST(Refusals, numbers_from_programs_must_be_finite_and_not_negative) {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double infinity = std::numeric_limits<double>::infinity();
    for (const double bad : {nan, infinity, -infinity, -1.0, 1e308 * 10}) {
        EXPECT_FALSE(parse_amount(bad, "gal", Kind::volume)) << bad;
    }
    const auto overflow = parse_amount(1e308, "km", Kind::length);
    ASSERT_FALSE(overflow);
    EXPECT_THAT(overflow.error().detail, HasSubstr("too large"));
    EXPECT_TRUE(parse_amount(-40.0, "degF", Kind::temperature));
    EXPECT_EQ(parse_amount(20.0, "gal/ac", Kind::mix_per_area)->half_step_si, 0.0);
}

TEST(Refusals, a_unit_is_read_without_a_number) {
    for (const std::string_view unit : {"3 gal", "100 gal/ac", "", "gal 3", "gal + qt"}) {
        EXPECT_FALSE(parse_unit(unit, Kind::volume)) << unit;
    }
    const auto offset = parse_unit("degF", Kind::temperature);
    ASSERT_FALSE(offset);
    EXPECT_THAT(offset.error().detail, HasSubstr("offset"));
    EXPECT_NEAR(*parse_unit("degF", Kind::temperature_change), 5.0 / 9.0, 1e-16);
}

TEST(Refusals, long_and_broken_text_is_quoted_safely) {
    const std::string longest = std::string(196, ' ') + "5 m ";
    EXPECT_TRUE(parse_amount(longest, Kind::length));
    const auto too_long = parse_amount(longest + " ", Kind::length);
    ASSERT_FALSE(too_long);
    EXPECT_THAT(too_long.error().detail, HasSubstr("200 bytes"));
    EXPECT_LT(too_long.error().detail.size(), 200U);
    // Bytes that are no UTF-8 would break the JSON the message travels in.
    const auto broken = parse_amount("5 \xff\xc3\xe2\x80 gal\x01", Kind::volume);
    ASSERT_FALSE(broken);
    for (const char byte : broken.error().detail) {
        EXPECT_TRUE(static_cast<unsigned char>(byte) >= 0x20 &&
                    static_cast<unsigned char>(byte) < 0x80);
    }
    // A hint repeats what was typed, too.
    const auto hinted = parse_amount("1/128th acre\x07", Kind::area);
    ASSERT_FALSE(hinted);
    EXPECT_EQ(hinted.error().detail.find('\x07'), std::string::npos);
    EXPECT_FALSE(parse_amount(std::string_view("5 g\0al", 6), Kind::volume));
}

}  // namespace
}  // namespace swathbook
