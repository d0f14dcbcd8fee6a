#pragma once

#include "api/describe/describe.hpp"
#include "core/droplets/class_by_pressure.hpp"
#include "core/droplets/droplet_class.hpp"
#include "core/tips/iso_size.hpp"
#include "core/tips/pressure_window.hpp"

/// Descriptions that several tip operations share.
namespace swathbook::api {

template <>
struct Description<tips::SizeConvention> {
    static constexpr std::string_view name = "SizeConvention";
    static Choices<tips::SizeConvention> choices() {
        using enum tips::SizeConvention;
        return {{us_gallons_at_40_psi, "us_40_psi", "04 is 0.40 US gal/min at 40 psi."},
                {litres_at_3_bar, "iso_3_bar", "04 is 1.6 L/min at 3 bar, the ISO nominal."}};
    }
};

template <>
struct Description<tips::InWindow> {
    static constexpr std::string_view name = "InWindow";
    static Choices<tips::InWindow> choices() {
        using enum tips::InWindow;
        return {{not_entered, "not_entered", "An end of the window was not entered."},
                {within, "within", "Inside the window."},
                {below, "below", "Under its low end."},
                {above, "above", "Over its high end."}};
    }
};

template <>
struct Description<droplets::DropletClass> {
    static constexpr std::string_view name = "DropletClass";
    static Choices<droplets::DropletClass> choices() {
        using enum droplets::DropletClass;
        return {{extremely_fine, "XF", "Extremely fine."},
                {very_fine, "VF", "Very fine."},
                {fine, "F", "Fine."},
                {medium, "M", "Medium."},
                {coarse, "C", "Coarse."},
                {very_coarse, "VC", "Very coarse."},
                {extremely_coarse, "XC", "Extremely coarse."},
                {ultra_coarse, "UC", "Ultra coarse."}};
    }
};

template <>
struct Description<droplets::ClassBand> {
    static constexpr std::string_view name = "ClassBand";
    static constexpr auto fields() {
        using T = droplets::ClassBand;
        return std::array{
            field<&T::from>("from", "Lowest pressure of this class.").required(),
            field<&T::to>("to", "Highest pressure of this class.").required(),
            field<&T::droplet_class>("class", "The class the maker prints.").required()};
    }
};

}  // namespace swathbook::api
