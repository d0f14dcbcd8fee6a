#pragma once

#include <optional>
#include <span>
#include <string>

#include "core/base/result.hpp"
#include "core/droplets/droplet_class.hpp"
#include "core/quantity/reading.hpp"

namespace swathbook::droplets {

/// One line of a maker's droplet table: this tip is this class between these pressures.
struct ClassBand {
    Reading<Kind::pressure> from{};
    Reading<Kind::pressure> to{};
    DropletClass droplet_class = DropletClass::medium;
};

/// Checks a table of bands: pressures above 0, each band the right way round, bands not
/// overlapping in more than an end point.
///
/// @param field path of the request member that holds the bands, for the error
/// @errors out_of_range, inconsistent
[[nodiscard]] Result<void> check_bands(std::span<const ClassBand> bands, std::string_view field);

/// The class a tip is at a pressure. Where two bands meet, the finer one: it drifts more, so it is
/// the one to plan for. Nothing where the table says nothing: a gap is "not entered", never a
/// guess.
///
/// @source one tip crosses classes as pressure rises, so the class is kept by pressure: a 025
///         twin-fan tip is VC at 20 psi, C at 30-60, M at 70-90 psi (Grainews, "Nozzle colour and
///         flow rate confusion")
[[nodiscard]] std::optional<DropletClass> class_at(std::span<const ClassBand> bands,
                                                   Pressure pressure);

}  // namespace swathbook::droplets
