// Tankfuls for a job, and what was never typed from the label.
#include "core/mix/loads.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_loads() {
    mix::LoadsRequest request;
    SWATHBOOK_TRY(net_area, parse<Kind::net_area>("7.5 ac"));
    SWATHBOOK_TRY(mix_per_area, parse<Kind::mix_per_area>("20 gal/ac"));
    SWATHBOOK_TRY(tank_usable, parse<Kind::volume>("60 gal"));
    SWATHBOOK_TRY(rate, parse_label_rate("2 qt/ac"));
    request.net_area = net_area;
    request.mix_per_area = mix_per_area;
    request.tank_usable = tank_usable;
    request.products.emplace_back();
    request.products[0].card.name = "Demoherb 4 SL";
    request.products[0].rate = rate;

    Notes notes;
    SWATHBOOK_TRY(answer, mix::loads(request, notes));
    const mix::Load& load = answer.loads.front();
    const mix::ProductAmount& amount = load.products.front().amount;
    // By hand: 7.5 ac x 20 gal/ac = 150 gal; 150 / 60 is more than 2, so 3 equal loads of 50 gal,
    // each for 2.5 ac. Product in each: 2.5 x 2 qt = 5 qt. The rest, 50 - 1.25 = 48.75 gal, is
    // water.
    bool all = examples::agrees("Loads", answer.load_count, {3, "", 0});
    all &= examples::agrees("Mix in each: " + show(load.fill, UnitSystem::us),
                            load.fill.in(us_gallons), {50, "gal", 1e-9});
    all &= examples::agrees("Product in each: " + amount.text, amount.volume->in(us_quarts),
                            {5, "qt", 1e-9});
    all &= examples::agrees("Water in each: " + show(load.carrier, UnitSystem::us),
                            load.carrier.in(us_gallons), {48.75, "gal", 1e-9});

    // No limit was typed, so none is known; that is said, and is not the same as no limit.
    const auto& not_entered = answer.products.front().not_entered;
    std::printf("Limits nobody typed: %zu\n", not_entered.size());
    return all && !not_entered.empty() && !notes.findings().empty();
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_loads());
}
