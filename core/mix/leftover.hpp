#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/limits.hpp"
#include "core/mix/recipe.hpp"

/// Mix left in the tank when the job is done: what may lawfully be done with it.
namespace swathbook::mix {

enum class Answered : std::uint8_t { not_said, yes, no };

/// What one product has put on a piece of ground this year, this job included.
struct AlreadyApplied {
    std::string product{};
    LabelRate rate{};  ///< per area; 0 is an entry
    std::optional<int> applications{};
};

/// Ground that could take the leftover mix.
struct LeftoverGround {
    std::string name{};
    Reading<Kind::net_area> net_area{};
    Answered on_label = Answered::not_said;  ///< is this site on the label of every product?
    bool sprayed_in_this_job = false;        ///< at the job's rate, just now
    std::vector<AlreadyApplied> applied_this_year{};  ///< products left out are not entered, not 0
};

/// The next mix of the same products.
struct NextJob {
    std::string name{};
    std::vector<TankProduct> products{};
    Reading<Kind::mix_per_area> mix_per_area{};
    Reading<Kind::volume> next_load{};  ///< how much mix its first load is
};

struct LeftoverRequest {
    Reading<Kind::volume> left{};
    std::vector<TankProduct> products{};  ///< the mix as it was made
    Reading<Kind::mix_per_area> mix_per_area{};
    std::optional<Reading<Kind::density>> mix_density{};
    std::vector<LeftoverGround> ground{};
    std::optional<NextJob> next_job{};
    /// Do the labels let this mix be kept (some break down, settle or may not be stored)?
    Answered labels_allow_keeping = Answered::not_said;
};

enum class LeftoverWay : std::uint8_t {
    spray_untreated,   ///< at the job's rate on ground of this label that was not sprayed yet
    spray_again_thin,  ///< thinned with water over ground sprayed in this job
    into_next_load,    ///< part of the next load of the same products
    keep,              ///< in the closed, labelled tank for the same use
    hand_in,           ///< as pesticide waste, by the label and the local programme
};

enum class Lawful : std::uint8_t {
    by_what_was_entered,  ///< nothing that was entered forbids it
    cannot_tell,          ///< a limit or an answer is missing
    no,                   ///< something that was entered forbids it
};

/// A product in one of the ways.
struct LeftoverProduct {
    std::string name{};
    ProductAmount amount{};           ///< of product in the leftover mix that goes this way
    std::optional<LabelRate> adds{};  ///< on the ground
    std::optional<ProductAmount> still_to_add{};  ///< into the next load, beside the leftover
    std::vector<LimitCheck> limits{};             ///< with what the ground had before
};

struct LeftoverOption {
    int rank = 1;  ///< 1 first
    LeftoverWay way = LeftoverWay::spray_untreated;
    Lawful lawful = Lawful::cannot_tell;
    std::string ground{};           ///< which ground, for the spraying ways
    Volume mix{};                   ///< leftover mix that can go this way
    std::optional<NetArea> area{};  ///< ground it goes on
    std::optional<Volume> water{};  ///< to add to it first
    std::vector<LeftoverProduct> products{};
    std::string text{};  ///< what to do, and why not where it is not lawful
};

struct LeftoverAnswer {
    NetArea absorbing_area{};                 ///< ground that would take it all at the job's rate
    std::vector<LeftoverProduct> products{};  ///< product in the leftover mix
    std::vector<LeftoverOption> options{};    ///< best first
};

/// The lawful ways to use leftover mix, best first.
///
///   area that would take it = left / mix per area
///   sprayed thin: added rate = product left / area;  checked as earlier + added against the single
///   and the yearly caps, since both passes are one application to the ground
///
/// Rank: ways that nothing entered forbids, then ways that cannot be told, then forbidden ones with
/// the reason; within that, spraying untreated ground, the next load, thinning, keeping, handing
/// in. Handing in is never forbidden and never computed: it follows the label and the local
/// programme.
///
/// @valid    the mix is even; the same products, in the same shares, as it was made
/// @errors   those of contents_of; out_of_range for volumes or areas not above 0; not_found for
///           ground that names a product not in the mix; invalid_input for more than 50 grounds
/// @source   mix only what is needed and spray the rest on a labelled site: Alberta Agdex 606-1
///           p. 15; rinse water where the rate is not exceeded: University of Illinois Extension,
///           50 Ways no. 30. The ranking itself is common practice.
/// @cases    tests/cases/stories/16-*.case, tests/unit/mix/leftover_test.cpp
[[nodiscard]] Result<LeftoverAnswer> leftover(const LeftoverRequest& request, Notes& notes);

}  // namespace swathbook::mix
