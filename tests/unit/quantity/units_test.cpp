// Every factor against two reference programs that know nothing of ours: GNU units (the binary) and
// udunits2 (the library).
#include "core/quantity/units.hpp"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/parse.hpp"
#include "core/quantity/unit_table.hpp"
#include "tests/unit/quantity/judges.hpp"

namespace swathbook {
namespace {

/// GNU units prints 15 digits: half a unit in the last, times two roundings of ours.
constexpr double gnu_tolerance = 6e-15;
/// udunits2 computes in double through several factors.
constexpr double udunits_tolerance = 2e-15 * 4;

/// How each reference program calls a unit.
struct Names {
    Atom atom;
    std::string_view gnu;
    std::string_view udunits;
    /// udunits2 2.2.28 keeps some customary units as decimals rounded at 7 to 9 digits
    /// (udunits2-common.xml and udunits2-accepted.xml: US gallon 3.785412e-3 m3, ounce
    /// 2.834952e-2 kg); 0 where it has the exact value.
    double udunits_rounding = 0.0;
};

constexpr double us_gallon_rounding = 1e-6;
constexpr double ounce_rounding = 2e-7;

constexpr std::array names{
    Names{Atom::metre, "m", "m"},
    Names{Atom::centimetre, "cm", "cm"},
    Names{Atom::millimetre, "mm", "mm"},
    Names{Atom::kilometre, "km", "km"},
    Names{Atom::micrometre, "micrometer", "um"},
    Names{Atom::inch, "inch", "international_inch"},
    Names{Atom::foot, "foot", "international_foot"},
    Names{Atom::yard, "yard", "international_yard"},
    Names{Atom::mile, "mile", "international_mile"},
    Names{Atom::rod, "rod", "16.5 international_foot"},
    Names{Atom::chain, "chain", "66 international_foot"},
    Names{Atom::acre, "intacre", "43560 international_foot^2"},
    Names{Atom::hectare, "hectare", "hectare"},
    Names{Atom::litre, "liter", "liter"},
    Names{Atom::millilitre, "milliliter", "mL"},
    Names{Atom::centilitre, "centiliter", "cL"},
    Names{Atom::decilitre, "deciliter", "dL"},
    Names{Atom::hectolitre, "hectoliter", "hL"},
    Names{Atom::gallon, "usgallon", "US_liquid_gallon", us_gallon_rounding},
    Names{Atom::quart, "usquart", "US_liquid_quart", us_gallon_rounding},
    Names{Atom::pint, "uspint", "US_liquid_pint", us_gallon_rounding},
    Names{Atom::fluid_ounce, "usfloz", "US_fluid_ounce", us_gallon_rounding},
    Names{Atom::cup, "uscup", "US_liquid_cup", us_gallon_rounding},
    Names{Atom::tablespoon, "ustablespoon", "tablespoon", us_gallon_rounding},
    Names{Atom::teaspoon, "usteaspoon", "teaspoon", us_gallon_rounding},
    Names{Atom::imperial_gallon, "brgallon", "UK_liquid_gallon"},
    Names{Atom::imperial_quart, "brquart", "UK_liquid_quart"},
    Names{Atom::imperial_pint, "brpint", "UK_liquid_pint"},
    Names{Atom::imperial_fluid_ounce, "brfloz", "UK_liquid_ounce"},
    Names{Atom::ounce, "ounce", "avoirdupois_ounce", ounce_rounding},
    Names{Atom::pound, "lb", "avoirdupois_pound"},
    Names{Atom::gram, "gram", "g"},
    Names{Atom::kilogram, "kg", "kg"},
    Names{Atom::milligram, "mg", "mg"},
    Names{Atom::microgram, "microgram", "ug"},
    Names{Atom::tonne, "tonne", "metric_ton"},
    Names{Atom::short_ton, "shortton", "short_ton"},
    Names{Atom::long_ton, "longton", "long_ton"},
    Names{Atom::grain, "grain", "grain"},
    Names{Atom::second, "s", "s"},
    Names{Atom::minute, "minute", "minute"},
    Names{Atom::hour, "hour", "hour"},
    Names{Atom::day, "day", "day"},
    Names{Atom::week, "week", "week"},
    Names{Atom::mile_per_hour, "mile/hour", "international_mile/hour"},
    Names{Atom::kilometre_per_hour, "km/hour", "km/hour"},
    Names{Atom::knot, "knot", "international_knot"},
    Names{Atom::foot_per_second, "foot/s", "international_foot/s"},
    Names{Atom::foot_per_minute, "foot/minute", "international_foot/minute"},
    Names{Atom::gallon_per_minute, "gpm", "US_liquid_gallon/minute", us_gallon_rounding},
    Names{Atom::gallon_per_hour, "usgallon/hour", "US_liquid_gallon/hour", us_gallon_rounding},
    Names{Atom::litre_per_minute, "liter/minute", "liter/minute"},
    Names{Atom::psi, "psi", "psi"},
    Names{Atom::bar, "bar", "bar"},
    Names{Atom::millibar, "millibar", "millibar"},
    Names{Atom::pascal, "Pa", "Pa"},
    Names{Atom::hectopascal, "hPa", "hPa"},
    Names{Atom::kilopascal, "kPa", "kPa"},
    Names{Atom::megapascal, "MPa", "MPa"},
    Names{Atom::degree, "degree", "degree"},
    Names{Atom::radian, "radian", "radian"},
    Names{Atom::kelvin, "K", "K"},
    Names{Atom::celsius, "degC", "celsius"},
    Names{Atom::fahrenheit, "degF", "fahrenheit"},
    Names{Atom::percent, "percent", "percent"},
    Names{Atom::gallon_per_acre, "usgallon/intacre",
          "US_liquid_gallon/(43560 international_foot^2)", us_gallon_rounding},
    Names{Atom::ppm, "ppm", "ppm"},
    Names{Atom::grain_per_gallon, "grain/usgallon / (kg/liter)",
          "grain/US_liquid_gallon/(kg/liter)", us_gallon_rounding},
    Names{Atom::each, "1", "1"},
};

constexpr std::string_view si_of(Dimension dimension) {
    switch (dimension) {
        case Dimension::length: return "m";
        case Dimension::area: return "m^2";
        case Dimension::volume: return "m^3";
        case Dimension::mass: return "kg";
        case Dimension::time: return "s";
        case Dimension::speed: return "m/s";
        case Dimension::flow: return "m^3/s";
        case Dimension::pressure: return "Pa";
        case Dimension::angle: return "radian";
        case Dimension::temperature:
        case Dimension::temperature_change: return "K";
        case Dimension::volume_per_area: return "m";
        case Dimension::mass_per_area: return "kg/m^2";
        case Dimension::mass_per_volume: return "kg/m^3";
        case Dimension::area_per_time: return "m^2/s";
        case Dimension::volume_each: return "m^3";
        case Dimension::mass_each: return "kg";
        case Dimension::count_per_area: return "m^-2";
        case Dimension::ratio:
        case Dimension::volume_per_volume:
        case Dimension::mass_fraction:
        case Dimension::count: return "1";
    }
    return "1";
}

const Names& names_of(Atom atom) {
    return names[static_cast<std::size_t>(atom)];
}

TEST(Units, every_unit_is_judged) {
    ASSERT_EQ(names.size(), all_units().size());
    for (const UnitRow& row : all_units()) {
        EXPECT_EQ(names_of(row.atom).atom, row.atom) << row.name;
    }
}

TEST(Units, every_factor_is_the_one_of_gnu_units) {
    std::vector<judges::Question> questions;
    for (const UnitRow& row : all_units()) {
        questions.push_back(
            {std::string(names_of(row.atom).gnu), std::string(si_of(row.dimension))});
    }
    const std::vector<double> answers = judges::gnu_units(questions);
    ASSERT_EQ(answers.size(), questions.size()) << "is the Debian package units installed?";
    for (std::size_t i = 0; i < answers.size(); ++i) {
        const UnitRow& row = all_units()[i];
        EXPECT_NEAR(row.si, answers[i], gnu_tolerance * answers[i]) << row.name;
    }
}

TEST(Units, every_factor_is_the_one_of_udunits2) {
    for (const UnitRow& row : all_units()) {
        const Names& name = names_of(row.atom);
        // A factor is a difference of two points, which an offset leaves alone.
        const std::string from(name.udunits);
        const std::string to(si_of(row.dimension));
        const auto one = judges::udunits(1.0, from, to);
        const auto none = judges::udunits(0.0, from, to);
        ASSERT_TRUE(one && none) << row.name << ": " << from << " to " << to;
        const double factor = *one - *none;
        const double offset_rounding = *none == 0.0 ? 0.0 : 1e-13;
        const double tolerance = udunits_tolerance + name.udunits_rounding + offset_rounding;
        EXPECT_NEAR(row.si, factor, tolerance * factor) << row.name;
        if (row.dimension == Dimension::temperature) {
            EXPECT_NEAR(row.zero, *none, 1e-12) << row.name;
        }
    }
}

/// What udunits2 rounds in its tables it still computes exactly from the inch and the grain.
TEST(Units, customary_volumes_and_the_ounce_are_exact_in_cubic_inches_and_grains) {
    struct Exact {
        Atom atom;
        std::string_view udunits;
        std::string_view to;
    };
    for (const Exact& exact : {
             Exact{Atom::gallon, "231 international_inch^3", "m^3"},
             Exact{Atom::quart, "57.75 international_inch^3", "m^3"},
             Exact{Atom::pint, "28.875 international_inch^3", "m^3"},
             Exact{Atom::fluid_ounce, "1.8046875 international_inch^3", "m^3"},
             Exact{Atom::cup, "14.4375 international_inch^3", "m^3"},
             Exact{Atom::tablespoon, "0.90234375 international_inch^3", "m^3"},
             Exact{Atom::teaspoon, "0.30078125 international_inch^3", "m^3"},
             Exact{Atom::ounce, "437.5 grain", "kg"},
         }) {
        const auto si = judges::udunits(1.0, std::string(exact.udunits), std::string(exact.to));
        ASSERT_TRUE(si);
        EXPECT_NEAR(row_of(exact.atom).si, *si, udunits_tolerance * *si) << exact.udunits;
    }
}

/// The acre of udunits2 stands on the survey foot, 1200/3937 m: 4 ppm larger than the acre of
/// 43,560 international square feet, and by that much only.
TEST(Units, the_acre_is_international_not_survey) {
    const auto survey = judges::udunits(1.0, "acre", "m^2");
    ASSERT_TRUE(survey);
    EXPECT_NEAR(*survey / row_of(Atom::acre).si - 1.0, 4.000004e-6, 1e-11);
}

/// The unit names of the program against the unit names of the reference, pair by pair: the text
/// "oz wt/ac" must divide what "oz wt" and "ac" stand for.
TEST(Units, every_quotient_a_label_can_write_is_the_one_of_gnu_units) {
    struct Pair {
        Dimension top;
        Dimension bottom;
        Kind kind;
    };
    constexpr std::array pairs{
        Pair{Dimension::volume, Dimension::area, Kind::product_volume_per_area},
        Pair{Dimension::mass, Dimension::area, Kind::product_mass_per_area},
        Pair{Dimension::mass, Dimension::volume, Kind::product_mass_per_mix},
        Pair{Dimension::volume, Dimension::volume, Kind::product_volume_per_mix},
        Pair{Dimension::volume, Dimension::time, Kind::flow},
        Pair{Dimension::length, Dimension::time, Kind::speed},
        Pair{Dimension::area, Dimension::time, Kind::area_per_time},
        Pair{Dimension::count, Dimension::area, Kind::count_per_area},
        Pair{Dimension::volume, Dimension::count, Kind::volume_each},
    };
    std::vector<judges::Question> questions;
    std::vector<double> ours;
    std::vector<std::string> texts;
    for (const Pair& pair : pairs) {
        for (const UnitRow& top : all_units()) {
            for (const UnitRow& bottom : all_units()) {
                if (top.dimension != pair.top || bottom.dimension != pair.bottom) {
                    continue;
                }
                const std::string text = fmt::format("{}/100 {}", top.name, bottom.name);
                const auto parsed = parse_unit(text, pair.kind);
                ASSERT_TRUE(parsed) << parsed.error().detail;
                ours.push_back(*parsed);
                texts.push_back(text);
                questions.push_back(
                    {fmt::format("({})/(100 {})", names_of(top.atom).gnu,
                                 names_of(bottom.atom).gnu),
                     fmt::format("({})/({})", si_of(top.dimension), si_of(bottom.dimension))});
            }
        }
    }
    const std::vector<double> answers = judges::gnu_units(questions);
    ASSERT_EQ(answers.size(), questions.size());
    EXPECT_GT(answers.size(), 500U);
    for (std::size_t i = 0; i < answers.size(); ++i) {
        EXPECT_NEAR(ours[i], answers[i], gnu_tolerance * answers[i]) << texts[i];
    }
}

TEST(Units, squares_cubes_and_weights_as_pressures_are_those_of_gnu_units) {
    struct Text {
        std::string_view ours;
        Kind kind;
        std::string_view gnu;
        std::string_view si;
    };
    const std::vector<Text> texts{
        {"sq ft", Kind::area, "foot^2", "m^2"},
        {"sq yd", Kind::area, "yard^2", "m^2"},
        {"square miles", Kind::area, "mile^2", "m^2"},
        {"in2", Kind::area, "inch^2", "m^2"},
        {"cm²", Kind::area, "cm^2", "m^2"},
        {"km^2", Kind::area, "km^2", "m^2"},
        {"cu ft", Kind::volume, "foot^3", "m^3"},
        {"in³", Kind::volume, "inch^3", "m^3"},
        {"cubic yards", Kind::volume, "yard^3", "m^3"},
        {"cm3", Kind::volume, "cm^3", "m^3"},
        {"lb/in2", Kind::pressure, "lbf/inch^2", "Pa"},
        {"kg/cm2", Kind::pressure, "kgf/cm^2", "Pa"},
        {"lb/ft2", Kind::pressure, "lbf/foot^2", "Pa"},
        {"mg/L", Kind::dissolved, "(mg/liter)/(kg/liter)", "1"},
    };
    std::vector<judges::Question> questions;
    for (const Text& text : texts) {
        questions.push_back({std::string(text.gnu), std::string(text.si)});
    }
    const std::vector<double> answers = judges::gnu_units(questions);
    ASSERT_EQ(answers.size(), texts.size());
    for (std::size_t i = 0; i < texts.size(); ++i) {
        const auto ours = parse_unit(texts[i].ours, texts[i].kind);
        ASSERT_TRUE(ours) << ours.error().detail;
        EXPECT_NEAR(*ours, answers[i], gnu_tolerance * answers[i]) << texts[i].ours;
    }
}

TEST(Units, temperatures_are_those_of_gnu_units) {
    for (const double degrees : {-40.0, 0.0, 32.0, 72.0, 212.0}) {
        const auto answers = judges::gnu_units(
            {{fmt::format("tempF({})", degrees), "K"}, {fmt::format("tempC({})", degrees), "K"}});
        ASSERT_EQ(answers.size(), 2U);
        EXPECT_NEAR(parse_amount(degrees, "degF", Kind::temperature)->si, answers[0], 1e-12);
        EXPECT_NEAR(parse_amount(degrees, "degC", Kind::temperature)->si, answers[1], 1e-12);
    }
}

/// The constants a program names (units.hpp) are the units people type.
TEST(Units, named_constants_equal_typed_units) {
    const auto check = [](double si, std::string_view unit, Kind kind) {
        const auto typed = parse_unit(unit, kind);
        ASSERT_TRUE(typed) << typed.error().detail;
        EXPECT_NEAR(si, *typed, 4e-16 * *typed) << unit;
    };
    check(us_gallons_per_acre.si, "gal/ac", Kind::mix_per_area);
    check(us_fluid_ounces_per_acre.si, "fl oz/ac", Kind::product_volume_per_area);
    check(litres_per_hectare.si, "L/ha", Kind::mix_per_area);
    check(pounds_per_acre.si, "lb/ac", Kind::product_mass_per_area);
    check(ounces_weight_per_acre.si, "oz wt/ac", Kind::product_mass_per_area);
    check(kilograms_per_hectare.si, "kg/ha", Kind::product_mass_per_area);
    check(pounds_per_us_gallon.si, "lb/gal", Kind::density);
    check(pounds_per_100_us_gallons.si, "lb/100 gal", Kind::product_mass_per_mix);
    check(kilograms_per_litre.si, "kg/L", Kind::density);
    check(grams_per_litre.si, "g/L", Kind::density);
    check(acres_per_hour.si, "ac/h", Kind::area_per_time);
    check(hectares_per_hour.si, "ha/h", Kind::area_per_time);
    check(us_fluid_ounces_per_minute.si, "fl oz/min", Kind::flow);
    check(millilitres_each.si, "mL each", Kind::volume_each);
    check(per_acre.si, "each/ac", Kind::count_per_area);
    check(per_hectare.si, "each/ha", Kind::count_per_area);
    check(parts_per_million.si, "mg/L", Kind::dissolved);
    check(pounds_per_square_inch.si, "psi", Kind::pressure);
}

}  // namespace
}  // namespace swathbook
