#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/mix/rates.hpp"

/// Stem-by-stem work: cuts, stumps and basal bark, counted against ceilings per area.
namespace swathbook::mix {

/// One product of the liquid in the bottle.
struct StemProduct {
    ProductCard card{};
    std::optional<Reading<Kind::percent_by_volume>>
        share{};                                ///< of the liquid; undiluted if absent
    std::optional<LabelRate> ceiling{};         ///< most per area, as the label writes it
    RateCounts measures = RateCounts::product;  ///< what a weight in the ceiling counts
    std::string ingredient{};                   ///< which one, when the product holds several
    std::optional<LabelRate>
        applied_this_year{};  ///< on this ground, before this job; 0 is an entry
};

/// Stems of one size.
struct StemClass {
    Reading<Kind::length> diameter{};  ///< at breast height (dbh)
    int stems = 0;
};

struct StemsRequest {
    std::vector<StemProduct> products{};
    Reading<Kind::volume_each> dose{};      ///< liquid for each cut, or for each stem
    std::optional<double> cuts_per_inch{};  ///< of diameter; a stem gets at least one cut
    std::optional<double> cuts_per_stem{};
    std::vector<StemClass> stems_by_size{};
    std::optional<int> stems{};                          ///< where they were not sorted by size
    std::optional<Reading<Kind::net_area>> area{};       ///< ground of the whole job
    std::optional<Reading<Kind::net_area>> area_done{};  ///< ground walked so far
    std::optional<int> cuts_made{};                      ///< so far, the live count
};

/// One ceiling of one product, as a number of cuts.
struct StemCeiling {
    std::string product{};
    std::string limit{};    ///< "ceiling", "max_single_rate" or "max_yearly_rate"
    std::string allowed{};  ///< as typed from the label
    std::string where{};
    std::string
        left{};         ///< of a yearly one, after what was applied earlier, where that was entered
    CountPerArea cuts;  ///< exact; may not be reached in part of a cut
    int per_acre = 0;   ///< whole cuts, rounded down
    int per_hectare = 0;
    bool governs = false;
};

/// One product in one cut.
struct StemDose {
    std::string product{};
    VolumeEach volume;  ///< product as sold
    std::optional<AcidEach> acid{};
    std::optional<IngredientEach> ingredient{};
    std::optional<Volume> stock{};  ///< product for all cuts planned
    std::string stock_text{};
};

struct StemsAnswer {
    std::vector<StemDose> doses{};
    std::vector<StemCeiling> ceilings{};
    std::optional<int> cuts_per_acre{};  ///< the strictest ceiling, whole cuts
    std::optional<int> cuts_per_hectare{};
    std::optional<int> cuts_on_area{};         ///< on the whole ground
    std::optional<int> cuts_planned{};         ///< for the stems counted
    std::optional<int> cuts_remaining{};       ///< on the whole ground, after cuts_made
    std::optional<Fraction> share_used{};      ///< of the strictest ceiling, on the whole ground
    std::optional<int> cuts_remaining_here{};  ///< on the ground walked so far
    std::optional<CountPerArea> density{};     ///< cuts made on the ground walked so far
    std::optional<NetArea>
        area_left_to_cover{};         ///< ground the remaining cuts cover at that density
    std::optional<Volume> liquid{};   ///< in the bottle, for all cuts planned
    std::optional<Volume> carrier{};  ///< oil or water in it
};

/// Dose of each cut, the cuts a ceiling per area allows, and what is left of them.
///
///   product in a cut  = dose x share
///   cuts per area     = (ceiling - applied earlier this year) / product in a cut, rounded down
///
/// Identities: cuts allowed times dose never exceed the ceiling; more dose, more dilution or a
/// lower ceiling never change the count the wrong way; the strictest of all ceilings counts.
///
/// @errors out_of_range: dose, share, counts, areas; inconsistent: a ceiling per volume of mix, dry
///         products, shares over 100 %, ground done larger than the whole; invalid_input: no
///         product, strength missing for a ceiling in a.i. or a.e.; as check_card
/// @valid  ceilings count the ground the cuts are spread over; a label may count stems instead
/// @source unit arithmetic; 0.5 mL of 240 g/L: S. F. Enloe et al., Invasive Plant Science and
///         Management (2023), hack and squirt
/// @cases  tests/cases/stems/stems.case
[[nodiscard]] Result<StemsAnswer> stems(const StemsRequest& request, Notes& notes);

}  // namespace swathbook::mix
