#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/label_rate.hpp"
#include "core/quantity/reading.hpp"

/// Several people, one recipe: what each really puts on, and which recipe keeps everyone lawful.
namespace swathbook::calibration {

/// How the crew shares the work, which decides what their one rate is.
enum class CrewSharing : std::uint8_t {
    equal_flow,  ///< one shared tank, each spraying the same flow for the same time
    own_flow,    ///< one shared tank, same time, each with a measured flow
    equal_area,  ///< each treats the same area
    own_tanks,   ///< each mixes for themselves: every person has a recipe of their own
};

struct CrewPerson {
    std::string name{};
    Reading<Kind::mix_per_area> output{};         ///< as calibrated, walking their own pace
    std::optional<Reading<Kind::flow>> flow{};    ///< for own_flow
    std::optional<Reading<Kind::volume>> tank{};  ///< absent: the tank of all
};

struct CrewRequest {
    std::vector<CrewPerson> people{};
    CrewSharing sharing = CrewSharing::equal_flow;
    std::optional<LabelRate> product_rate{};  ///< wanted, per area
    std::optional<LabelRate> product_min{};   ///< label limits as typed
    std::optional<LabelRate> product_max{};
    std::optional<Reading<Kind::mix_per_area>> carrier_min{};
    std::optional<Reading<Kind::mix_per_area>> carrier_max{};
    /// Recipe to test: product is mixed for this output. Absent: for the crew rate.
    std::optional<Reading<Kind::mix_per_area>> mixed_for{};
    std::optional<Reading<Kind::volume>> tank{};
};

/// How what a person does stands to a limit. "Not entered" is never "within".
enum class CrewLimit : std::uint8_t { not_entered, within, at_limit, under, over };

/// Product in one tank, in the measure the label rate is in.
struct ProductAmount {
    std::optional<Volume> volume{};
    std::optional<Mass> mass{};
    std::optional<IngredientMass> ingredient{};
    std::optional<AcidMass> acid{};
};

struct CrewMember {
    std::string name{};
    MixPerArea output{};
    Fraction from_crew{};  ///< deviation of output, and so of product, from the crew rate
    std::optional<LabelRate> delivered{};  ///< product per area under the recipe tested
    CrewLimit product_low = CrewLimit::not_entered;
    CrewLimit product_high = CrewLimit::not_entered;
    CrewLimit carrier_low = CrewLimit::not_entered;
    CrewLimit carrier_high = CrewLimit::not_entered;
    std::optional<ProductAmount> product_per_tank{};  ///< recipe tested; own recipe for own_tanks
    std::optional<Area> area_per_tank{};
};

/// People who can lawfully share one recipe, and the outputs it may be mixed for.
struct RecipeGroup {
    std::vector<std::string> people{};
    std::optional<MixPerArea> mixed_for{};       ///< the one advised
    std::optional<MixPerArea> mixed_for_low{};   ///< mixing for less would put someone over
    std::optional<MixPerArea> mixed_for_high{};  ///< mixing for more would put someone under
};

struct CrewAnswer {
    MixPerArea crew_rate{};
    MixPerArea arithmetic_mean{};  ///< what a plain average would give, to compare
    Fraction spread{};             ///< highest output over lowest, less one
    double ratio_needed = 1.0;     ///< label maximum over minimum that one recipe needs
    std::optional<double> ratio_of_label{};
    std::optional<bool> one_recipe_is_lawful{};  ///< absent while a limit is not entered
    std::optional<MixPerArea> recipe_tested{};
    std::vector<CrewMember> people{};
    std::vector<RecipeGroup> recipes{};  ///< fewest that keep everyone within the label
};

/// The crew's rate and who breaks which limit.
///
///   equal flow:  n / sum(1 / output)        total mix over total ground, same flow each
///   own flow:    sum(flow) / sum(flow / output)
///   equal area:  sum(output) / n
///   delivered product = product rate * output / output mixed for
///   one recipe is lawful only if label maximum / label minimum >= highest / lowest output
///
/// Identities: the crew rate lies between the lowest and the highest output; with equal outputs all
/// three are that output; delivered product scales with the product rate.
///
/// @valid  2 to 200 people; product rates per area on one basis
/// @errors invalid_input, out_of_range, inconsistent (mixed bases, minimum over maximum),
///         unsupported (a rate per volume of mix needs no crew rate)
/// @source arithmetic: total volume over total area
/// @cases  tests/cases/tips/crew.case
[[nodiscard]] Result<CrewAnswer> crew(const CrewRequest& request, Notes& notes);

}  // namespace swathbook::calibration
