#pragma once

#include <vector>

#include "core/base/civil_time.hpp"
#include "core/weather/direction.hpp"
#include "core/weather/spray_window.hpp"

namespace swathbook::weather::detail {

inline constexpr double calm_mph = 3.0;

/// The readings of a request that still count, with what was read from their texts.
struct Observed {
    CivilTime now{};
    Duration good_for{};
    std::vector<const WeatherReading*> used{};
    std::vector<Direction> from{};   ///< of the used ones that have wind and a direction
    bool direction_missing = false;  ///< a used reading with wind has none
    CivilTime last_taken{};          ///< of all readings
    int old = 0;
};

/// Reads and checks every entry of the request; nothing past this point can be nonsense.
[[nodiscard]] Result<Observed> observed_of(const SprayWindowRequest& request);

}  // namespace swathbook::weather::detail
