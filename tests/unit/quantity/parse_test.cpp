#include "core/quantity/parse.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "core/quantity/print.hpp"

namespace swathbook {
namespace {

struct Example {
    std::string_view text;
    Kind kind;
    double number;
    std::string_view unit;
};

/// The unit on the right is itself judged against GNU units and udunits2 in units_test.cpp.
constexpr std::array examples{
    // Fluid ounces, however they are written
    Example{"10 fl oz", Kind::volume, 10, "fl oz"},
    Example{"10 fl. oz.", Kind::volume, 10, "fl oz"},
    Example{"10 fl.oz.", Kind::volume, 10, "fl oz"},
    Example{"10floz", Kind::volume, 10, "fl oz"},
    Example{"10 \uFB02 oz", Kind::volume, 10, "fl oz"},
    Example{"10 FL OZ", Kind::volume, 10, "fl oz"},
    Example{"10 fluid ounces", Kind::volume, 10, "fl oz"},
    Example{"1 fluid ounce", Kind::volume, 1, "fl oz"},
    Example{"10 US fl oz", Kind::volume, 10, "fl oz"},
    Example{"10 U.S. fluid ounces", Kind::volume, 10, "fl oz"},
    Example{"10 fl-oz", Kind::volume, 10, "fl oz"},
    Example{"10 imp fl oz", Kind::volume, 10, "imp fl oz"},
    Example{"10 imperial fluid ounces", Kind::volume, 10, "imp fl oz"},
    Example{"10 UK fl oz", Kind::volume, 10, "imp fl oz"},
    Example{"10 onzas líquidas", Kind::volume, 10, "fl oz"},
    Example{"10 onzas fluidas", Kind::volume, 10, "fl oz"},
    // Ounces of weight
    Example{"4 oz wt", Kind::mass, 4, "oz wt"},
    Example{"4 wt oz", Kind::mass, 4, "oz wt"},
    Example{"4 wt. oz.", Kind::mass, 4, "oz wt"},
    Example{"4 dry oz", Kind::mass, 4, "oz wt"},
    Example{"4 oz dry", Kind::mass, 4, "oz wt"},
    Example{"4 oz (wt)", Kind::mass, 4, "oz wt"},
    Example{"4 ounces weight", Kind::mass, 4, "oz wt"},
    Example{"4 ounces by weight", Kind::mass, 4, "oz wt"},
    Example{"4 oz av", Kind::mass, 4, "oz wt"},
    Example{"4 oz avdp", Kind::mass, 4, "oz wt"},
    // Other volumes
    Example{"47 gal", Kind::volume, 47, "gal"},
    Example{"3\uFF0F4 gal", Kind::volume, 0.75, "gal"},
    Example{"3/2 gal", Kind::volume, 1.5, "gal"},
    Example{"16/3 gal", Kind::volume, 16.0 / 3.0, "gal"},
    Example{"10/128 gal", Kind::volume, 0.078125, "gal"},
    Example{"47 gallons", Kind::volume, 47, "gal"},
    Example{"47 US gal", Kind::volume, 47, "gal"},
    Example{"47 gal US", Kind::volume, 47, "gal"},
    Example{"47 imp gal", Kind::volume, 47, "imp gal"},
    Example{"47 imp. gal.", Kind::volume, 47, "imp gal"},
    Example{"47 UK gal", Kind::volume, 47, "imp gal"},
    Example{"47 U.K. gallons", Kind::volume, 47, "imp gal"},
    Example{"47 imperial gallons", Kind::volume, 47, "imp gal"},
    Example{"47 galones", Kind::volume, 47, "gal"},
    Example{"47 galones imperiales", Kind::volume, 47, "imp gal"},
    Example{"3 qts.", Kind::volume, 3, "qt"},
    Example{"3 quarts", Kind::volume, 3, "qt"},
    Example{"3 liquid pints", Kind::volume, 3, "pt"},
    Example{"2 cups", Kind::volume, 2, "cup"},
    Example{"2 tbsp", Kind::volume, 2, "tbsp"},
    Example{"2 Tbsp.", Kind::volume, 2, "tbsp"},
    Example{"2 tablespoons", Kind::volume, 2, "tbsp"},
    Example{"2 tsp", Kind::volume, 2, "tsp"},
    Example{"5 cc", Kind::volume, 5, "mL"},
    Example{"5 ml", Kind::volume, 5, "mL"},
    Example{"5 mL of product", Kind::volume, 5, "mL"},
    Example{"5 litres", Kind::volume, 5, "L"},
    Example{"5 liters", Kind::volume, 5, "L"},
    Example{"5 litros", Kind::volume, 5, "L"},
    Example{"5 \u2113", Kind::volume, 5, "L"},
    Example{"2 cu ft", Kind::volume, 2, "ft3"},
    Example{"2 ft\u00b3", Kind::volume, 2, "cubic feet"},
    // Lengths
    Example{"26 ft", Kind::length, 26, "ft"},
    Example{"26ft", Kind::length, 26, "ft"},
    Example{"26-ft", Kind::length, 26, "ft"},
    Example{"26\u00a0ft", Kind::length, 26, "ft"},
    Example{"26'", Kind::length, 26, "ft"},
    Example{"26 pies", Kind::length, 26, "ft"},
    Example{"20\"", Kind::length, 20, "in"},
    Example{"20 in.", Kind::length, 20, "in"},
    Example{"20 pulgadas", Kind::length, 20, "in"},
    Example{"8 m", Kind::length, 8, "m"},
    Example{"8 metros", Kind::length, 8, "m"},
    Example{"350 \u00b5m", Kind::length, 350, "um"},
    Example{"350 microns", Kind::length, 350, "um"},
    Example{"2 chains", Kind::length, 132, "ft"},
    Example{"1 sq rod", Kind::area, 272.25, "ft2"},
    // Sums
    Example{"6 ft 2 in", Kind::length, 74, "in"},
    Example{"6ft2in", Kind::length, 74, "in"},
    Example{"6 ft, 2 in", Kind::length, 74, "in"},
    Example{"5'6\"", Kind::length, 66, "in"},
    Example{"5' 6\"", Kind::length, 66, "in"},
    Example{"5'-6\"", Kind::length, 66, "in"},
    Example{"5\u20326\u2033", Kind::length, 66, "in"},
    Example{"5' 6 1/2\"", Kind::length, 66.5, "in"},
    Example{"1 qt + 10 fl oz", Kind::volume, 42, "fl oz"},
    Example{"1 qt and 10 fl oz", Kind::volume, 42, "fl oz"},
    Example{"1 gal 2 qt", Kind::volume, 6, "qt"},
    Example{"1 gal 2 qt 8 oz", Kind::volume, 200, "fl oz"},
    Example{"1 lb 4 oz", Kind::mass, 20, "oz wt"},
    Example{"1 min 30 s", Kind::duration, 90, "s"},
    Example{"1 qt + 10 fl oz per acre", Kind::product_volume_per_area, 42, "fl oz/ac"},
    Example{"1 qt/ac + 10 fl oz/ac", Kind::product_volume_per_area, 42, "fl oz/ac"},
    Example{"1 lb + 4 oz a.e./ac", Kind::acid_per_area, 1.25, "lb a.e./ac"},
    // Durations
    Example{"31.5 s", Kind::duration, 31.5, "s"},
    Example{"31.5 sec.", Kind::duration, 31.5, "s"},
    Example{"31.5 segundos", Kind::duration, 31.5, "s"},
    Example{"12 h", Kind::duration, 12, "hours"},
    Example{"5 min", Kind::duration, 300, "s"},
    Example{"1:30", Kind::duration, 90, "s"},
    Example{"0:31.5", Kind::duration, 31.5, "s"},
    Example{"1:02:03", Kind::duration, 3723, "s"},
    // Rates on an area
    Example{"20 gal/ac", Kind::mix_per_area, 20, "gpa"},
    Example{"20 GPA", Kind::mix_per_area, 20, "gal/ac"},
    Example{"20 gallons per acre", Kind::mix_per_area, 20, "gal/ac"},
    Example{"20 gal/A", Kind::mix_per_area, 20, "gal/ac"},
    Example{"20 gal/a", Kind::mix_per_area, 20, "gal/ac"},
    Example{"20 gal of spray per acre", Kind::mix_per_area, 20, "gal/ac"},
    Example{"200 L/ha", Kind::mix_per_area, 200, "litres per hectare"},
    Example{"200 litros por hectárea", Kind::mix_per_area, 200, "L/ha"},
    Example{"200 LITROS POR HECTÁREA", Kind::mix_per_area, 200, "L/ha"},
    Example{"0.5 gal/1000 ft2", Kind::mix_per_area, 21.78, "gal/ac"},
    Example{"0.5 gal per 1,000 sq ft", Kind::mix_per_area, 21.78, "gal/ac"},
    Example{"0.5 gal per 1000 ft²", Kind::mix_per_area, 21.78, "gal/ac"},
    Example{"0.5 gal per 1000 square feet", Kind::mix_per_area, 21.78, "gal/ac"},
    Example{"0.5 gal/1000 sq. ft.", Kind::mix_per_area, 21.78, "gal/ac"},
    Example{"10 mL/m2", Kind::mix_per_area, 100, "L/ha"},
    Example{"2 pt per acre", Kind::product_volume_per_area, 2, "pt/ac"},
    Example{"4 oz wt/A", Kind::product_mass_per_area, 4, "oz wt/ac"},
    Example{"4 dry oz/acre", Kind::product_mass_per_area, 4, "oz wt/ac"},
    Example{"2 lb product/ac", Kind::product_mass_per_area, 2, "lb/ac"},
    Example{"2 lbs/A", Kind::product_mass_per_area, 2, "lb/ac"},
    // Active ingredient and acid equivalent in every sensible place
    Example{"1.5 lb ai/A", Kind::ingredient_per_area, 1.5, "lb a.i./ac"},
    Example{"4 oz ai/A", Kind::ingredient_per_area, 0.25, "lb a.i./ac"},
    Example{"4 oz/ac a.i.", Kind::ingredient_per_area, 0.25, "lb a.i./ac"},
    Example{"4 oz a.e. per acre", Kind::acid_per_area, 4, "oz wt a.e./ac"},
    Example{"1.5 lb a.i./ac", Kind::ingredient_per_area, 1.5, "lb a.i./ac"},
    Example{"1.5 lbs. AI per acre", Kind::ingredient_per_area, 1.5, "lb a.i./ac"},
    Example{"1.5 lb active ingredient per acre", Kind::ingredient_per_area, 1.5, "lb a.i./ac"},
    Example{"1.5 lb of active ingredient/ac", Kind::ingredient_per_area, 1.5, "lb a.i./ac"},
    Example{"1.5 lb active/ac", Kind::ingredient_per_area, 1.5, "lb a.i./ac"},
    Example{"1.5 lb a. i./ac", Kind::ingredient_per_area, 1.5, "lb a.i./ac"},
    Example{"1.5 lb/ac a.e.", Kind::acid_per_area, 1.5, "lb a.e./ac"},
    Example{"1.5 lb/ac (a.e.)", Kind::acid_per_area, 1.5, "lb a.e./ac"},
    Example{"1.5 kg de ingrediente activo por hectárea", Kind::ingredient_per_area, 1.5,
            "kg a.i./ha"},
    Example{"3 lb a.e. per gallon", Kind::acid_strength, 3, "lb a.e./gal"},
    Example{"3 lb acid equivalent/gal", Kind::acid_strength, 3, "lb a.e./gal"},
    Example{"3 lb/gal a.e.", Kind::acid_strength, 3, "lb a.e./gal"},
    Example{"240 g ae/L", Kind::acid_strength, 240, "g a.e./L"},
    Example{"240 g/L ae", Kind::acid_strength, 240, "g a.e./L"},
    Example{"240 gae/L", Kind::acid_strength, 240, "g a.e./L"},
    Example{"4 lb ai/gal", Kind::ingredient_strength, 4, "lb a.i./gal"},
    Example{"1.5 lb a.e.", Kind::acid_mass, 24, "oz wt a.e."},
    // In a volume of mix
    Example{"1 qt/100 gal", Kind::product_volume_per_mix, 0.32, "fl oz/gal"},
    Example{"1 qt per 100 gallons", Kind::product_volume_per_mix, 0.32, "fl oz/gal"},
    Example{"1 qt per 100 gallons of spray solution", Kind::product_volume_per_mix, 1,
            "qt/100 gal"},
    Example{"1 qt in 100 gal of water", Kind::product_volume_per_mix, 1, "qt/100 gal"},
    Example{"5 mL/10 L", Kind::product_volume_per_mix, 0.5, "mL/L"},
    Example{"0.5 mL per litre of water", Kind::product_volume_per_mix, 0.5, "mL/L"},
    Example{"5 mL por cada 10 litros de agua", Kind::product_volume_per_mix, 0.5, "mL/L"},
    Example{"17 lb/100 gal", Kind::product_mass_per_mix, 0.17, "lb/gal"},
    Example{"17 lbs per 100 gal. water", Kind::product_mass_per_mix, 0.17, "lb/gal"},
    Example{"2 % v/v", Kind::percent_by_volume, 2, "% v/v"},
    Example{"2% (v/v)", Kind::percent_by_volume, 2, "% v/v"},
    Example{"2 percent vol/vol", Kind::percent_by_volume, 2, "% v/v"},
    Example{"2% by volume", Kind::percent_by_volume, 2, "% v/v"},
    Example{"2 % por volumen", Kind::percent_by_volume, 2, "% v/v"},
    Example{"2 por ciento v/v", Kind::percent_by_volume, 2, "% v/v"},
    Example{"2% v/v solution", Kind::percent_by_volume, 2, "% v/v"},
    Example{"2 % w/w", Kind::percent_by_weight, 2, "% w/w"},
    Example{"2 % wt/wt", Kind::percent_by_weight, 2, "% w/w"},
    Example{"2 % by weight", Kind::percent_by_weight, 2, "% w/w"},
    Example{"80 %", Kind::fraction, 80, "percent"},
    Example{"80%", Kind::fraction, 80, "%"},
    // The rest
    Example{"4 mph", Kind::speed, 4, "mi/h"},
    Example{"4 M.P.H.", Kind::speed, 4, "mph"},
    Example{"4 miles per hour", Kind::speed, 4, "mph"},
    Example{"4 millas por hora", Kind::speed, 4, "mph"},
    Example{"88 ft/min", Kind::speed, 1, "mph"},
    Example{"6 kph", Kind::speed, 6, "km/h"},
    Example{"5 knots", Kind::speed, 5, "kn"},
    Example{"5 nudos", Kind::speed, 5, "kn"},
    Example{"2 m/s", Kind::speed, 120, "m/min"},
    Example{"2.60 gal/min", Kind::flow, 2.6, "gpm"},
    Example{"2.60 GPM", Kind::flow, 2.6, "gal/min"},
    Example{"12 fl oz/min", Kind::flow, 12, "fluid ounces per minute"},
    Example{"40 psi", Kind::pressure, 40, "lb/in2"},
    Example{"40 p.s.i.", Kind::pressure, 40, "pounds per square inch"},
    Example{"40 lb/sq in", Kind::pressure, 40, "psi"},
    Example{"2.8 bar", Kind::pressure, 280, "kPa"},
    Example{"0.28 MPa", Kind::pressure, 2.8, "bar"},
    Example{"110 deg", Kind::angle, 110, "degrees"},
    Example{"110\u00b0", Kind::angle, 110, "deg"},
    Example{"-15 deg", Kind::angle, -15, "deg"},
    Example{"72 \u00b0F", Kind::temperature_change, 40, "delta degC"},
    Example{"8 F\u00b0", Kind::temperature_change, 8, "delta degF"},
    Example{"8 \u2109", Kind::temperature_change, 8, "degF"},
    Example{"5 ac/h", Kind::area_per_time, 5, "acres per hour"},
    Example{"0.5 mL per cut", Kind::volume_each, 0.5, "mL each"},
    Example{"0.5 mL/stem", Kind::volume_each, 0.5, "mL each"},
    Example{"0.5 mL cada uno", Kind::volume_each, 0.5, "mL each"},
    Example{"0.12 g ae per stem", Kind::acid_each, 0.12, "g a.e. each"},
    Example{"412 cuts/ac", Kind::count_per_area, 412, "each/ac"},
    Example{"412 per ac", Kind::count_per_area, 412, "each/ac"},
    Example{"412/ac", Kind::count_per_area, 412, "each/ac"},
    Example{"412 stems per acre", Kind::count_per_area, 412, "each/ac"},
    Example{"100 ppm", Kind::dissolved, 100, "mg/L"},
    Example{"10.65 lb/gal", Kind::density, 10.65, "lb/gal"},
    Example{"1.28 g/mL", Kind::density, 1.28, "kg/L"},
    Example{"1.28 g/cm3", Kind::density, 1280, "kg/m3"},
    // Numbers
    Example{"1/2 pt", Kind::volume, 0.5, "pt"},
    Example{"1 / 2 pt", Kind::volume, 0.5, "pt"},
    Example{"2 2/3 pt", Kind::volume, 8.0 / 3.0, "pt"},
    Example{"2-2/3 pt", Kind::volume, 8.0 / 3.0, "pt"},
    Example{"2 - 2/3 pt", Kind::volume, 8.0 / 3.0, "pt"},
    Example{"\u00bd pt", Kind::volume, 0.5, "pt"},
    Example{"2\u00bd pt", Kind::volume, 2.5, "pt"},
    Example{"2 \u2154 pt", Kind::volume, 8.0 / 3.0, "pt"},
    Example{"1\u20444 pt", Kind::volume, 0.25, "pt"},
    Example{"12,5 L/ha", Kind::mix_per_area, 12.5, "L/ha"},
    Example{"0,250 L/ha", Kind::mix_per_area, 0.25, "L/ha"},
    Example{"1,250.5 L", Kind::volume, 1250.5, "L"},
    Example{"1.250,5 L", Kind::volume, 1250.5, "L"},
    Example{"1,250,000 L", Kind::volume, 1250000, "L"},
    Example{"1.250 L", Kind::volume, 1.25, "L"},
    Example{".5 gal", Kind::volume, 0.5, "gal"},
    Example{"5. gal", Kind::volume, 5, "gal"},
    Example{"1e-3 m", Kind::length, 1, "mm"},
    Example{"1E3 m", Kind::length, 1, "km"},
    Example{"+5 gal", Kind::volume, 5, "gal"},
    Example{"  5   gal  ", Kind::volume, 5, "gal"},
};

TEST(Parse, reads_what_labels_and_clipboards_say) {
    for (const Example& example : examples) {
        SCOPED_TRACE(example.text);
        const auto parsed = parse_amount(example.text, example.kind);
        if (!parsed) {
            ADD_FAILURE() << parsed.error().detail;
            continue;
        }
        const auto unit = parse_unit(example.unit, example.kind);
        ASSERT_TRUE(unit) << unit.error().detail;
        const double expected = example.number * *unit;
        EXPECT_NEAR(parsed->si, expected, 1e-14 * std::abs(expected));
    }
}

TEST(Parse, reads_every_kinds_own_example_and_units) {
    for (const KindInfo& info : all_kinds()) {
        SCOPED_TRACE(info.word);
        const auto example = parse_amount(info.example, info.kind);
        EXPECT_TRUE(example) << example.error().detail;
        for (const std::string_view unit : {info.us_unit, info.metric_unit}) {
            const auto parsed = parse_amount(3.0, unit, info.kind);
            ASSERT_TRUE(parsed) << parsed.error().detail;
            EXPECT_GT(parsed->si, 0.0);
        }
    }
}

}  // namespace
}  // namespace swathbook
