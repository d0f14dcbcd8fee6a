#pragma once

#include <cstdint>
#include <span>
#include <string_view>

#include "core/base/result.hpp"

namespace swathbook::droplets {

/// Droplet classes in the order of the standard, finest first. A class is what a tip at a pressure
/// is when measured beside reference nozzles on one instrument; it is not a size in micrometres, so
/// none is given here.
///
/// @source ASABE S572 and ISO 25358 name the classes; that a class is a comparison with reference
///         nozzles: GRDC Spray application manual 4.2, citing ASABE 572.3
enum class DropletClass : std::uint8_t {
    extremely_fine,
    very_fine,
    fine,
    medium,
    coarse,
    very_coarse,
    extremely_coarse,
    ultra_coarse,
};

/// How the trade writes a class, in letters, words and colour.
struct ClassInfo {
    DropletClass value;
    std::string_view letters;  ///< "VC"
    std::string_view english;
    std::string_view spanish;
    std::string_view colour_english;  ///< of the class, never of the tip: tip colour means flow
    std::string_view colour_spanish;
    bool colour_seen;  ///< read in a publication; otherwise from memory and only for show
};

/// All classes, finest first.
///
/// @source colours VF, F, M, C, VC, XC: Grainews, "Nozzle colour and flow rate confusion"
///         https://www.grainews.ca/news/nozzle-colour-and-flow-rate-confusion/ ; XF and UC from
///         memory
[[nodiscard]] std::span<const ClassInfo> all_classes();
[[nodiscard]] const ClassInfo& info_of(DropletClass droplet_class);

/// Whether the first makes larger drops than the second.
[[nodiscard]] constexpr bool is_coarser(DropletClass first, DropletClass second) {
    return first > second;
}

/// Reads one class as typed: "VC", "Very Coarse", "muy gruesa"; upper or lower case.
///
/// @errors invalid_input when it is no class; the message lists them
[[nodiscard]] Result<DropletClass> class_from_text(std::string_view text);

}  // namespace swathbook::droplets
