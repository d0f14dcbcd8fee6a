#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/quantity/reading.hpp"

/// Minerals in the spray water and the ammonium sulphate (AMS) that ties them up.
namespace swathbook::mix {

/// How a test strip or a water report counts hardness. All of them lump calcium and magnesium.
enum class HardnessScale : std::uint8_t {
    ppm_calcium_carbonate,  ///< mg/L as CaCO3
    grains_per_gallon,      ///< grains of CaCO3 in a US gallon
    german_degrees,         ///< 10 mg CaO in a litre
};

struct WaterRequest {
    std::optional<Reading<Kind::dissolved>> potassium{};
    std::optional<Reading<Kind::dissolved>> sodium{};
    std::optional<Reading<Kind::dissolved>> calcium{};
    std::optional<Reading<Kind::dissolved>> magnesium{};
    std::optional<Reading<Kind::dissolved>> iron{};
    std::optional<double> hardness{};               ///< only where the ions were not measured
    std::optional<HardnessScale> hardness_scale{};  ///< needed with hardness
    std::optional<Reading<Kind::product_mass_per_mix>> label_least{};  ///< AMS, as typed
    std::optional<Reading<Kind::product_mass_per_mix>> label_most{};
    std::vector<Reading<Kind::volume>> tanks{};               ///< fills to work amounts out for
    std::optional<Reading<Kind::density>> liquid_strength{};  ///< AMS in a volume of liquid AMS
};

/// What one mineral asks for.
struct IonShare {
    std::string ion{};
    swathbook::Dissolved amount;
    ProductMassPerMix ams;
};

/// AMS for one fill.
struct TankAms {
    Volume tank;
    std::optional<Mass> by_minerals{};
    std::string by_minerals_text{};
    std::optional<Mass> label_least{};
    std::string label_least_text{};
    std::optional<Mass> label_most{};
    std::string label_most_text{};
    std::optional<Volume> liquid{};  ///< liquid AMS for the larger of minerals and label_least
};

struct WaterAnswer {
    std::optional<ProductMassPerMix> ams{};  ///< by the minerals; absent when none was entered
    bool complete = false;                   ///< all five minerals entered
    std::vector<IonShare> ions{};
    std::vector<std::string> not_entered{};
    std::optional<swathbook::Dissolved> hardness{};          ///< of calcium and magnesium, as CaCO3
    std::optional<double> hardness_grains{};                 ///< the same in grains per US gallon
    std::optional<ProductMassPerMix> hardness_asks_least{};  ///< were it all magnesium
    std::optional<ProductMassPerMix> hardness_asks_most{};   ///< were it all calcium
    std::vector<TankAms> tanks{};
};

/// AMS that the minerals of the water ask for, beside the range the label asks for.
///
///   lb AMS / 100 gal = 0.002 K + 0.005 Na + 0.009 Ca + 0.014 Mg + 0.042 Fe      (ppm)
///
/// A mineral that was not entered is not zero: the sum is then a least value and says so. Hardness
/// alone does not say how much is calcium and how much magnesium and nothing of sodium and iron, so
/// it gives only bounds for its own part.
///
/// @accuracy the coefficients are printed to one or two digits: 5 to 25 % each
/// @valid    0 to 5,000 ppm of each mineral
/// @errors   out_of_range below 0 or above; inconsistent when label_least is above label_most or
///           when both ions and hardness are given and contradict; invalid_input when nothing is
///           given
/// @source   North Dakota State University, Crop and Pest Report, 2 July 2015 (equation used to
///           calculate rate of AMS); the same in Purdue Pest and Crop. 1 grain per gallon = 17.118
///           mg/L: a grain is 64.79891 mg, a gallon 3.785411784 L. Atomic masses: Ca 40.078, Mg
///           24.305, CaCO3 100.087, CaO 56.077 (IUPAC)
/// @cases    tests/cases/stems/water.case
[[nodiscard]] Result<WaterAnswer> water(const WaterRequest& request, Notes& notes);

/// Milligrams of CaCO3 in a litre, as mass fraction of water.
[[nodiscard]] swathbook::Dissolved as_calcium_carbonate(double hardness, HardnessScale scale);

}  // namespace swathbook::mix
