// What a percent solution really puts on the ground, and the strongest a yearly cap allows.
#include "core/mix/spot.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_spot() {
    mix::SpotRequest request;
    SWATHBOOK_TRY(rate, parse_label_rate("2 % v/v"));
    SWATHBOOK_TRY(cap, parse_label_rate("1 gal/ac"));
    SWATHBOOK_TRY(earlier, parse_label_rate("0 gal/ac"));
    SWATHBOOK_TRY(sprayed, parse<Kind::volume>("21 gal"));
    SWATHBOOK_TRY(area, parse<Kind::net_area>("0.35 ac"));
    mix::TankProduct product;
    product.card.name = "Demoherb 4 SL";
    product.card.limits.max_yearly_rate = mix::RateLimit{cap, "page 2, invented"};
    product.rate = rate;
    product.applied_this_year = earlier;  // nothing yet: said, not assumed
    request.products = {product};
    request.sprayed = sprayed;
    request.area = area;

    Notes notes;
    SWATHBOOK_TRY(answer, mix::spot(request, notes));
    const mix::SpotProduct& spot = answer.products.front();
    if (!answer.mix_per_area || !spot.volume_per_area || !spot.strongest) {
        return false;
    }
    // By hand: 21 gal / 0.35 ac = 60 gal/ac, and 2 % of it is 1.2 gal/ac: over the cap of 1 gal/ac.
    // The strongest mix that keeps it is 1 / 60 = 1.667 %.
    bool all = examples::agrees("Mix on the ground: " + show(*answer.mix_per_area, UnitSystem::us),
                                answer.mix_per_area->in(us_gallons_per_acre), {60, "gal/ac", 1e-9});
    all &= examples::agrees("Product on the ground: " + spot.per_area_text,
                            spot.volume_per_area->in(us_gallons_per_acre), {1.2, "gal/ac", 1e-9});
    all &= examples::agrees("Strongest mix: " + show(*spot.strongest, "% v/v"),
                            spot.strongest->in(percents), {1.667, "%", 0.001});
    for (const Finding& finding : notes.findings()) {
        std::printf("%s\n", finding.text.c_str());
    }
    return all && !notes.findings().empty();
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_spot());
}
