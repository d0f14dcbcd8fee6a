#pragma once

#include <optional>
#include <string>

#include "core/quantity/quantity.hpp"

namespace swathbook {

/// A quantity as a person entered it: the value, the words typed, and how finely it was read.
template <Kind K>
struct Reading {
    Quantity<K> value;
    /// Half the last digit typed, in SI: "31.5 s" -> 0.05 s. 0 when the number came without digits
    /// (from a program).
    double half_step_si = 0.0;
    std::string text{};  ///< exactly what was typed, "176 ft"

    Reading() = default;
    /// A bare quantity is a reading of unknown resolution.
    // NOLINTNEXTLINE(google-explicit-constructor): so callers may pass one
    Reading(Quantity<K> quantity) : value(quantity) {}
};

/// A quantity worked out from measurements, with its 95 % interval where one is known.
template <Kind K>
struct Estimate {
    Quantity<K> value;
    std::optional<Quantity<K>> low{};
    std::optional<Quantity<K>> high{};

    Estimate() = default;
    /// An exact quantity is an estimate without interval.
    // NOLINTNEXTLINE(google-explicit-constructor): so callers may pass one
    Estimate(Quantity<K> quantity) : value(quantity) {}
    Estimate(Quantity<K> middle, Quantity<K> lower, Quantity<K> upper)
        : value(middle), low(lower), high(upper) {}
};

}  // namespace swathbook
