#include "core/mix/order.hpp"

#include <array>

namespace swathbook::mix {
namespace {

using C = OrderConvention;
using F = Formulation;

constexpr std::uint32_t bit(Formulation formulation) {
    return 1U << static_cast<unsigned>(formulation);
}

// data/mix-orders/orders.tsv, line by line.
constexpr auto steps = std::to_array<ConventionStep>({
    ConventionStep{
        C::dry_suspension_solution_emulsion, 0.5, 0.75, 0,
        "Fill the clean tank half to three quarters full with carrier and start the agitation."},
    ConventionStep{C::dry_suspension_solution_emulsion, 0, 0,
                   bit(F::compatibility_agent) | bit(F::defoamer),
                   "Add compatibility agent and defoamer."},
    ConventionStep{
        C::dry_suspension_solution_emulsion, 0, 0, bit(F::water_conditioner),
        "Add ammonium sulphate that comes alone; one premixed with a surfactant goes in last."},
    ConventionStep{
        C::dry_suspension_solution_emulsion, 0, 0,
        bit(F::soluble_packet) | bit(F::soluble_granule) | bit(F::dispersible_granule) |
            bit(F::wettable_powder),
        "Stir water-dispersible dry products into a slurry with water, then add it slowly."},
    ConventionStep{
        C::dry_suspension_solution_emulsion, 0, 0, 0,
        "Agitate until everything dry is dispersed or dissolved; this takes a few minutes."},
    ConventionStep{C::dry_suspension_solution_emulsion, 0, 0,
                   bit(F::capsule_suspension) | bit(F::suspension),
                   "Add microcapsule suspensions and other suspensions."},
    ConventionStep{C::dry_suspension_solution_emulsion, 0, 0, bit(F::soluble_liquid),
                   "Add liquids that are soluble."},
    ConventionStep{C::dry_suspension_solution_emulsion, 0, 0, bit(F::emulsifiable_concentrate),
                   "Add emulsifiable concentrates."},
    ConventionStep{C::dry_suspension_solution_emulsion, 0, 0, bit(F::surfactant) | bit(F::oil),
                   "Add surfactants and oils."},
    ConventionStep{C::dry_suspension_solution_emulsion, 1.0, 1.0, 0,
                   "Fill up with carrier and keep agitating."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0.33, 0.33, 0,
                   "Fill the tank one third full with carrier, agitator on."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0, bit(F::water_conditioner),
                   "Add ammonium sulphate."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0, bit(F::compatibility_agent),
                   "Add compatibility agent, if the label asks for one."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0, bit(F::defoamer),
                   "Add defoamer if the mix foams."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0,
                   bit(F::soluble_packet) | bit(F::soluble_granule) | bit(F::dispersible_granule) |
                       bit(F::wettable_powder),
                   "Add dry products, wetted first with two parts of water to one of product; let "
                   "soluble packets soak. Agitate with a rolling surface until dispersed."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0.8, 0.8, 0, "Fill to 80 percent with carrier."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0,
                   bit(F::suspension) | bit(F::soluble_liquid), "Add liquids and flowables."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0, bit(F::emulsifiable_concentrate),
                   "Add emulsifiable concentrates."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0, bit(F::capsule_suspension),
                   "Add microencapsulated products, after the emulsifiable concentrates."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0, bit(F::surfactant) | bit(F::oil),
                   "Add surfactants and oils last."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 0, 0, bit(F::drift_agent), "Add drift agent."},
    ConventionStep{C::dry_liquid_emulsion_capsule, 1.0, 1.0, 0,
                   "Fill up with carrier and keep agitating."},
    ConventionStep{C::dry_suspension_emulsion_solution, 0, 0, 0,
                   "Start the agitation; mix each product evenly before the next goes in. How full "
                   "the tank should be is not part of this order: see the labels."},
    ConventionStep{C::dry_suspension_emulsion_solution, 0, 0,
                   bit(F::water_conditioner) | bit(F::soluble_granule),
                   "Add soluble powders, ammonium sulphate among them; let each dissolve."},
    ConventionStep{C::dry_suspension_emulsion_solution, 0, 0,
                   bit(F::dispersible_granule) | bit(F::wettable_powder),
                   "Add dry flowables and wettable powders."},
    ConventionStep{C::dry_suspension_emulsion_solution, 0, 0,
                   bit(F::suspension) | bit(F::capsule_suspension),
                   "Add liquid flowables and suspensions, microcapsules among them."},
    ConventionStep{C::dry_suspension_emulsion_solution, 0, 0,
                   bit(F::emulsifiable_concentrate) | bit(F::oil),
                   "Add emulsifiable concentrates and oils."},
    ConventionStep{C::dry_suspension_emulsion_solution, 0, 0, bit(F::soluble_liquid),
                   "Add true solutions last."},
    ConventionStep{C::dry_suspension_emulsion_solution, 1.0, 1.0, 0,
                   "Fill up with carrier and keep agitating."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0, 0,
                   "Start with part of the carrier, as the labels say, and agitate; wait a few "
                   "minutes between products."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0, bit(F::soluble_packet),
                   "Add water-soluble packets."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0,
                   bit(F::soluble_granule) | bit(F::dispersible_granule) | bit(F::wettable_powder),
                   "Add dry products."},
    ConventionStep{
        C::packet_dry_conditioner_liquid, 0, 0,
        bit(F::water_conditioner) | bit(F::compatibility_agent),
        "Add ammonium sulphate and compatibility agent; drift agents that are dry go in here too."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0,
                   bit(F::capsule_suspension) | bit(F::suspension),
                   "Add dispersed liquids: microcapsules, flowables, suspension concentrates."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0, bit(F::drift_agent),
                   "Add liquid drift agent, before any emulsifiable concentrate."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0,
                   bit(F::emulsifiable_concentrate) | bit(F::soluble_liquid),
                   "Add emulsifiable concentrates and soluble liquids."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0, bit(F::oil) | bit(F::surfactant),
                   "Add oils and surfactants."},
    ConventionStep{C::packet_dry_conditioner_liquid, 1.0, 1.0, 0, "Fill up with carrier."},
    ConventionStep{C::packet_dry_conditioner_liquid, 0, 0, bit(F::defoamer),
                   "Add defoamer as needed."},
});

}  // namespace

std::span<const ConventionStep> convention_steps() {
    return steps;
}

std::string_view source_of(OrderConvention convention) {
    switch (convention) {
        case C::as_label: return "product labels, as typed";
        case C::dry_suspension_solution_emulsion:
            return "Oklahoma State University Extension, Herbicide Mixing Order (A-W-A-M-L-E-S)";
        case C::dry_liquid_emulsion_capsule:
            return "South Dakota State University Extension, Preparing Spray Solutions: Mixing "
                   "Order";
        case C::dry_suspension_emulsion_solution:
            return "2021 North Dakota Weed Control Guide (A-P-P-L-E-S), read in a reprint";
        case C::packet_dry_conditioner_liquid: return "SportsField Management, May 2021, page 21";
    }
    return "";
}

std::string_view word_of(OrderConvention convention) {
    switch (convention) {
        case C::as_label: return "as_label";
        case C::dry_suspension_solution_emulsion: return "dry_suspension_solution_emulsion";
        case C::dry_liquid_emulsion_capsule: return "dry_liquid_emulsion_capsule";
        case C::dry_suspension_emulsion_solution: return "dry_suspension_emulsion_solution";
        case C::packet_dry_conditioner_liquid: return "packet_dry_conditioner_liquid";
    }
    return "";
}

}  // namespace swathbook::mix
