#pragma once

#include "core/quantity/quantity.hpp"

/// Units a program can name, each with its exact factor. What people type is read by parse.hpp.
///
/// @source International yard and pound (1959): 1 ft = 0.3048 m, 1 lb = 0.45359237 kg exactly.
///         US gallon = 231 cubic inches, imperial gallon = 4.54609 L, both exact by definition
///         (NIST Special Publication 811, appendix B; UK Units of Measurement Regulations 1995).
///         Acre = 43,560 international square feet = 4046.8564224 m2; not the survey acre, 4 ppm
///         larger.
/// @cases  tests/unit/quantity/units_test.cpp judges every factor against GNU units and udunits2
namespace swathbook {

inline constexpr double square_feet_per_acre = 43560.0;
inline constexpr double cubic_inches_per_us_gallon = 231.0;
inline constexpr double fluid_ounces_per_us_gallon = 128.0;
inline constexpr double fluid_ounces_per_imperial_gallon = 160.0;
inline constexpr double standard_gravity_m_per_s2 = 9.80665;

inline constexpr Unit<Dimension::length> metres{1.0};
inline constexpr Unit<Dimension::length> centimetres{0.01};
inline constexpr Unit<Dimension::length> millimetres{0.001};
inline constexpr Unit<Dimension::length> kilometres{1000.0};
inline constexpr Unit<Dimension::length> inches{0.0254};
inline constexpr Unit<Dimension::length> feet{0.3048};
inline constexpr Unit<Dimension::length> yards{0.9144};
inline constexpr Unit<Dimension::length> miles{1609.344};

inline constexpr Unit<Dimension::area> square_metres{1.0};
inline constexpr Unit<Dimension::area> square_feet{0.3048 * 0.3048};
inline constexpr Unit<Dimension::area> acres{4046.8564224};
inline constexpr Unit<Dimension::area> hectares{10000.0};

inline constexpr Unit<Dimension::volume> litres{0.001};
inline constexpr Unit<Dimension::volume> millilitres{1e-6};
inline constexpr Unit<Dimension::volume> us_gallons{3.785411784e-3};
inline constexpr Unit<Dimension::volume> us_quarts{0.946352946e-3};
inline constexpr Unit<Dimension::volume> us_pints{0.473176473e-3};
inline constexpr Unit<Dimension::volume> us_fluid_ounces{29.5735295625e-6};
inline constexpr Unit<Dimension::volume> imperial_gallons{4.54609e-3};
inline constexpr Unit<Dimension::volume> imperial_fluid_ounces{28.4130625e-6};

inline constexpr Unit<Dimension::mass> kilograms{1.0};
inline constexpr Unit<Dimension::mass> grams{0.001};
inline constexpr Unit<Dimension::mass> pounds{0.45359237};
inline constexpr Unit<Dimension::mass> ounces_weight{0.028349523125};

inline constexpr Unit<Dimension::time> seconds{1.0};
inline constexpr Unit<Dimension::time> minutes{60.0};
inline constexpr Unit<Dimension::time> hours{3600.0};
inline constexpr Unit<Dimension::time> days{86400.0};

inline constexpr Unit<Dimension::speed> metres_per_second{1.0};
inline constexpr Unit<Dimension::speed> miles_per_hour{0.44704};
inline constexpr Unit<Dimension::speed> kilometres_per_hour{1.0 / 3.6};

inline constexpr Unit<Dimension::flow> cubic_metres_per_second{1.0};
inline constexpr Unit<Dimension::flow> us_gallons_per_minute{3.785411784e-3 / 60.0};
inline constexpr Unit<Dimension::flow> litres_per_minute{0.001 / 60.0};
inline constexpr Unit<Dimension::flow> us_fluid_ounces_per_minute{29.5735295625e-6 / 60.0};

inline constexpr Unit<Dimension::pressure> pascals{1.0};
inline constexpr Unit<Dimension::pressure> kilopascals{1000.0};
inline constexpr Unit<Dimension::pressure> bars{1e5};
inline constexpr Unit<Dimension::pressure> pounds_per_square_inch{
    0.45359237 * standard_gravity_m_per_s2 / (0.0254 * 0.0254)};

inline constexpr Unit<Dimension::angle> radians{1.0};
inline constexpr Unit<Dimension::angle> degrees{3.14159265358979323846 / 180.0};

inline constexpr Unit<Dimension::temperature> kelvins{1.0};
inline constexpr Unit<Dimension::temperature> degrees_celsius{1.0, 273.15};
inline constexpr Unit<Dimension::temperature> degrees_fahrenheit{5.0 / 9.0, 459.67 * 5.0 / 9.0};

inline constexpr Unit<Dimension::ratio> ones{1.0};
inline constexpr Unit<Dimension::ratio> percents{0.01};

inline constexpr Unit<Dimension::volume_per_area> us_gallons_per_acre{3.785411784e-3 /
                                                                      4046.8564224};
inline constexpr Unit<Dimension::volume_per_area> us_fluid_ounces_per_acre{29.5735295625e-6 /
                                                                           4046.8564224};
inline constexpr Unit<Dimension::volume_per_area> litres_per_hectare{1e-7};

inline constexpr Unit<Dimension::mass_per_area> pounds_per_acre{0.45359237 / 4046.8564224};
inline constexpr Unit<Dimension::mass_per_area> ounces_weight_per_acre{0.028349523125 /
                                                                       4046.8564224};
inline constexpr Unit<Dimension::mass_per_area> kilograms_per_hectare{1e-4};

inline constexpr Unit<Dimension::mass_per_volume> pounds_per_us_gallon{0.45359237 / 3.785411784e-3};
inline constexpr Unit<Dimension::mass_per_volume> pounds_per_100_us_gallons{0.45359237 /
                                                                            0.3785411784};
inline constexpr Unit<Dimension::mass_per_volume> kilograms_per_litre{1000.0};
inline constexpr Unit<Dimension::mass_per_volume> grams_per_litre{1.0};

inline constexpr Unit<Dimension::volume_per_volume> litres_per_litre{1.0};

inline constexpr Unit<Dimension::area_per_time> acres_per_hour{4046.8564224 / 3600.0};
inline constexpr Unit<Dimension::area_per_time> hectares_per_hour{10000.0 / 3600.0};

inline constexpr Unit<Dimension::volume_each> millilitres_each{1e-6};
inline constexpr Unit<Dimension::mass_each> grams_each{0.001};
inline constexpr Unit<Dimension::count_per_area> per_acre{1.0 / 4046.8564224};
inline constexpr Unit<Dimension::count_per_area> per_hectare{1e-4};
inline constexpr Unit<Dimension::mass_fraction> parts_per_million{1e-6};

}  // namespace swathbook
