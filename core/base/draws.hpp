#pragma once

#include <cstdint>

namespace swathbook {

/// Whole numbers that look drawn by lot and are the same for the same seed on every machine: 64-bit
/// integers only, no library, no clock.
///
/// @source G. L. Steele, D. Lea and C. H. Flood, Fast splittable pseudorandom number generators,
///         OOPSLA 2014 (SplitMix64)
/// @cases  tests/unit/base/draws_test.cpp
/// Not for anything that must not be guessed.
class Draws {
public:
    explicit constexpr Draws(std::uint64_t seed) : state_(seed) {}

    [[nodiscard]] constexpr std::uint64_t next() {
        state_ += 0x9e3779b97f4a7c15U;
        std::uint64_t mixed = state_;
        mixed = (mixed ^ (mixed >> 30U)) * 0xbf58476d1ce4e5b9U;
        mixed = (mixed ^ (mixed >> 27U)) * 0x94d049bb133111ebU;
        return mixed ^ (mixed >> 31U);
    }

    /// One of low, low + step, ... up to high.
    /// @valid step above 0, high not below low; the lowest are favoured by less than 1e-12
    [[nodiscard]] constexpr int among(int low, int high, int step = 1) {
        const auto choices =
            static_cast<std::uint32_t>(high - low) / static_cast<std::uint32_t>(step) +
            std::uint64_t{1};
        return low + step * static_cast<int>(next() % choices);
    }

private:
    std::uint64_t state_;
};

}  // namespace swathbook
