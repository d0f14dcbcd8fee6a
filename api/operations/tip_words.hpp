#pragma once

#include "api/describe/describe.hpp"
#include "core/tips/iso_size.hpp"

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

}  // namespace swathbook::api
