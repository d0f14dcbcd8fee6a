#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"

/// Rinsing: how much of the last mix is left in a sprayer, and rinse water of jugs as carrier.
namespace swathbook::mix {

/// Jugs emptied into the tank and rinsed into it.
struct JugRinse {
    Reading<Kind::volume> size{};
    int jugs = 1;
    std::optional<Reading<Kind::fraction>>
        fill{};  ///< of the jug, each rinse; usual share if absent
    int rinses = 3;
    std::optional<Reading<Kind::volume>> left_in_jug{};  ///< product clinging after draining
};

struct RinseRequest {
    std::optional<Reading<Kind::volume>> trapped{};       ///< stays in pump, hoses, boom, sump
    std::optional<Reading<Kind::volume>> rinse_volume{};  ///< clean water of one rinse
    std::optional<int> rinses{};
    std::optional<Reading<Kind::fraction>> target{};  ///< strength wanted in what stays, of the old
    std::optional<Reading<Kind::volume>> tank{};      ///< size, for the one-tenth rule of thumb
    std::optional<JugRinse> jug{};
};

/// After so many rinses.
struct RinseStep {
    int rinses = 0;
    Volume water;      ///< used so far
    Fraction residue;  ///< strength of what stays, of the old mix
};

/// The least water that reaches the target in so many equal rinses.
struct LeastWater {
    int rinses = 0;
    Volume each;
    Volume total;
};

struct JugRinseAnswer {
    Volume each_rinse;               ///< water in one jug, one rinse
    Volume water;                    ///< all jugs and rinses: counts as carrier in the load
    double fill = 0.0;               ///< share of the jug filled
    std::optional<Fraction> left{};  ///< of the product that clung to the jug
};

struct RinseAnswer {
    std::optional<Fraction> residue{};        ///< after the rinses asked for
    std::optional<Fraction> one_big_rinse{};  ///< the same water at once
    std::optional<double> times_better{};     ///< one_big_rinse over residue
    std::vector<RinseStep> steps{};
    std::optional<int> rinses_needed{};  ///< of rinse_volume, to reach the target
    std::optional<Volume> water_needed{};
    std::optional<Fraction> residue_reached{};
    std::vector<LeastWater> least_water{};  ///< for 1, 2, 3 ... rinses
    std::optional<JugRinseAnswer> jug{};
};

/// What rinsing leaves. Each rinse mixes the trapped liquid fully with clean water and drains to
/// the same trapped volume:
///
///   residue after n rinses of w = (t / (t + w))^n
///   least water for n rinses:  w = t (residue^(-1/n) - 1), equal rinses being the best
///
/// Identities: residue falls with every rinse and with every drop of water; the same water in more
/// rinses leaves less, down to exp(-water/t).
///
/// @errors out_of_range: volumes not above 0, targets outside 0 to 100 %, more than 1000 rinses;
///         invalid_input: neither a sprayer nor a jug, or too little to compute anything
/// @valid  full mixing; dead ends, filters and swollen hoses hold more and give it up slowly
/// @source dilution arithmetic; jugs a quarter full under 5 gal and a fifth from 5 gal: University
/// of
///         Illinois Extension, 50 Ways to Keep Your Farm Safe no. 30; one-tenth of the tank: Purdue
///         Extension (Whitford) in a farm magazine
/// @cases  tests/cases/stems/rinse.case
[[nodiscard]] Result<RinseAnswer> rinse(const RinseRequest& request, Notes& notes);

/// (trapped / (trapped + water))^rinses.
[[nodiscard]] double residue_after(Volume trapped, Volume water, int rinses);

/// Clean water of each of `rinses` equal rinses that leaves `residue`.
[[nodiscard]] Volume water_for(Volume trapped, double residue, int rinses);

}  // namespace swathbook::mix
