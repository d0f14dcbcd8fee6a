#pragma once

#include <compare>

#include "core/quantity/kind.hpp"

namespace swathbook {

/// The dimension of each kind, known at compile time so that a unit of the wrong sort does not
/// compile.
[[nodiscard]] constexpr Dimension dimension_of(Kind kind) {
    switch (kind) {
        case Kind::length: return Dimension::length;
        case Kind::area:
        case Kind::planned_area:
        case Kind::gross_area:
        case Kind::net_area:
        case Kind::payable_area:
        case Kind::band_area: return Dimension::area;
        case Kind::volume: return Dimension::volume;
        case Kind::mass:
        case Kind::ingredient_mass:
        case Kind::acid_mass: return Dimension::mass;
        case Kind::duration: return Dimension::time;
        case Kind::speed: return Dimension::speed;
        case Kind::flow: return Dimension::flow;
        case Kind::pressure: return Dimension::pressure;
        case Kind::angle: return Dimension::angle;
        case Kind::temperature: return Dimension::temperature;
        case Kind::temperature_change: return Dimension::temperature_change;
        case Kind::fraction:
        case Kind::percent_by_volume:
        case Kind::percent_by_weight: return Dimension::ratio;
        case Kind::mix_per_area:
        case Kind::product_volume_per_area: return Dimension::volume_per_area;
        case Kind::product_mass_per_area:
        case Kind::ingredient_per_area:
        case Kind::acid_per_area: return Dimension::mass_per_area;
        case Kind::ingredient_strength:
        case Kind::acid_strength:
        case Kind::density:
        case Kind::product_mass_per_mix: return Dimension::mass_per_volume;
        case Kind::product_volume_per_mix: return Dimension::volume_per_volume;
        case Kind::area_per_time: return Dimension::area_per_time;
        case Kind::volume_each: return Dimension::volume_each;
        case Kind::ingredient_each:
        case Kind::acid_each: return Dimension::mass_each;
        case Kind::count_per_area: return Dimension::count_per_area;
        case Kind::dissolved: return Dimension::mass_fraction;
    }
    return Dimension::ratio;
}

/// A unit a program can name. `si` is how many SI units one of it is; `zero` is its zero point in
/// SI (temperatures).
template <Dimension D>
struct Unit {
    double si = 1.0;
    double zero = 0.0;
};

/// A number with its kind. Held in SI; goes in and comes out only by naming a unit.
///
///   const auto swath = Length::of(26, feet);
///   const double metres_wide = swath.in(metres);
///
/// Sums and ratios of one kind are allowed; relations between kinds are written out where they are
/// used, with `si()` on both sides, so that every formula can be read next to its source.
template <Kind K>
class Quantity {
public:
    static constexpr Kind kind = K;
    using UnitType = Unit<dimension_of(K)>;

    constexpr Quantity() = default;
    [[nodiscard]] static constexpr Quantity of(double number, UnitType unit) {
        return from_si(number * unit.si + unit.zero);
    }
    [[nodiscard]] static constexpr Quantity from_si(double amount) {
        Quantity made;
        made.si_ = amount;
        return made;
    }
    [[nodiscard]] constexpr double in(UnitType unit) const { return (si_ - unit.zero) / unit.si; }
    [[nodiscard]] constexpr double si() const { return si_; }

    constexpr auto operator<=>(const Quantity&) const = default;

    constexpr Quantity& operator+=(Quantity other) {
        si_ += other.si_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity other) {
        si_ -= other.si_;
        return *this;
    }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return from_si(a.si_ + b.si_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return from_si(a.si_ - b.si_); }
    friend constexpr Quantity operator*(Quantity a, double factor) {
        return from_si(a.si_ * factor);
    }
    friend constexpr Quantity operator*(double factor, Quantity a) {
        return from_si(factor * a.si_);
    }
    friend constexpr Quantity operator/(Quantity a, double divisor) {
        return from_si(a.si_ / divisor);
    }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.si_ / b.si_; }

private:
    double si_ = 0.0;
};

using Length = Quantity<Kind::length>;
using Area = Quantity<Kind::area>;
using PlannedArea = Quantity<Kind::planned_area>;
using GrossArea = Quantity<Kind::gross_area>;
using NetArea = Quantity<Kind::net_area>;
using PayableArea = Quantity<Kind::payable_area>;
using BandArea = Quantity<Kind::band_area>;
using Volume = Quantity<Kind::volume>;
using Mass = Quantity<Kind::mass>;
using IngredientMass = Quantity<Kind::ingredient_mass>;
using AcidMass = Quantity<Kind::acid_mass>;
using Duration = Quantity<Kind::duration>;
using Speed = Quantity<Kind::speed>;
using Flow = Quantity<Kind::flow>;
using Pressure = Quantity<Kind::pressure>;
using Angle = Quantity<Kind::angle>;
using Temperature = Quantity<Kind::temperature>;
using TemperatureChange = Quantity<Kind::temperature_change>;
using Fraction = Quantity<Kind::fraction>;
using MixPerArea = Quantity<Kind::mix_per_area>;
using ProductVolumePerArea = Quantity<Kind::product_volume_per_area>;
using ProductMassPerArea = Quantity<Kind::product_mass_per_area>;
using IngredientPerArea = Quantity<Kind::ingredient_per_area>;
using AcidPerArea = Quantity<Kind::acid_per_area>;
using IngredientStrength = Quantity<Kind::ingredient_strength>;
using AcidStrength = Quantity<Kind::acid_strength>;
using Density = Quantity<Kind::density>;
using ProductVolumePerMix = Quantity<Kind::product_volume_per_mix>;
using ProductMassPerMix = Quantity<Kind::product_mass_per_mix>;
using PercentByVolume = Quantity<Kind::percent_by_volume>;
using PercentByWeight = Quantity<Kind::percent_by_weight>;
using AreaPerTime = Quantity<Kind::area_per_time>;
using VolumeEach = Quantity<Kind::volume_each>;
using IngredientEach = Quantity<Kind::ingredient_each>;
using AcidEach = Quantity<Kind::acid_each>;
using CountPerArea = Quantity<Kind::count_per_area>;
using Dissolved = Quantity<Kind::dissolved>;

}  // namespace swathbook
