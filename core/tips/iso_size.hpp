#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

#include "core/base/result.hpp"
#include "core/tips/capacity.hpp"

namespace swathbook::tips {

/// Which rating a size number stands for. The two are 1.3 % apart and are never mixed.
enum class SizeConvention : std::uint8_t {
    us_gallons_at_40_psi,  ///< 04 = 0.40 US gal/min at 40 psi
    litres_at_3_bar,       ///< 04 = 1.6 L/min at 3 bar, the ISO nominal
};

/// One size of the ISO 10625 colour code.
///
/// @source data/tips/iso_10625.tsv, data/tips/source.txt
struct IsoSize {
    std::string_view size;  ///< "04"
    std::string_view colour_english;
    std::string_view colour_spanish;
    double litres_per_minute_at_3_bar;
    double us_gallons_per_minute_at_40_psi;
    int strainer_mesh;  ///< tip strainer printed for the size; 0 where none was seen
    bool seen;          ///< read in a publication; otherwise from memory
};

/// All sizes, smallest first.
[[nodiscard]] std::span<const IsoSize> iso_sizes();

/// The rating of a size in one convention, as a plain orifice.
[[nodiscard]] Rating rating_of(const IsoSize& size, SizeConvention convention);

/// Finds a size as typed: "04", "015", or with the spray angle before it, "110-04", "11004",
/// "80-08".
///
/// @param field path of the request member, for the error
/// @errors not_found, with the sizes known
[[nodiscard]] Result<IsoSize> iso_size_from_text(std::string_view text, std::string_view field);

/// The size whose flow at a pressure is nearest to a flow, by ratio.
struct NearestSize {
    IsoSize size;
    Flow flow;             ///< of the size at that pressure
    double deviation = 0;  ///< of the given flow from it, as a fraction of it
};
[[nodiscard]] NearestSize nearest_size(Flow flow, Pressure pressure, SizeConvention convention);

}  // namespace swathbook::tips
