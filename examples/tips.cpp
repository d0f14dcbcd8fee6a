// Which tip of a maker's table gives a volume at a speed, inside its pressures.
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "core/tips/choose_tip.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

// What the table does not say stays unknown: without the window the tip would be "unproven".
Result<tips::TableTip> tip_of(std::string name, std::string size) {
    tips::TableTip tip;
    tip.name = std::move(name);
    tip.size = std::move(size);
    tip.convention = tips::SizeConvention::us_gallons_at_40_psi;
    SWATHBOOK_TRY(low, parse<Kind::pressure>("20 psi"));
    SWATHBOOK_TRY(high, parse<Kind::pressure>("60 psi"));
    tip.pressure_low = low;
    tip.pressure_high = high;
    return tip;
}

Result<bool> show_choice() {
    tips::ChooseTipRequest request;
    SWATHBOOK_TRY(rate, parse<Kind::mix_per_area>("15 gal/ac"));
    SWATHBOOK_TRY(speed, parse<Kind::speed>("4 mph"));
    SWATHBOOK_TRY(spacing, parse<Kind::length>("20 in"));
    SWATHBOOK_TRY(small, tip_of("invented fan, size 01", "01"));
    SWATHBOOK_TRY(middle, tip_of("invented fan, size 02", "02"));
    request.rate = rate;
    request.speed = speed;
    request.spacing = spacing;
    request.table = {small, middle};

    Notes notes;
    SWATHBOOK_TRY(answer, tips::choose_tip(request, notes));
    const tips::TipChoice& best = answer.choices.front();
    // By hand: 15 x 4 x 20 / 5940 = 0.2020 gal/min. Size 02 gives 0.20 gal/min at 40 psi, and flow
    // goes with the square root of pressure: 40 x (0.2020 / 0.20)^2 = 40.8 psi, inside 20 to 60.
    // Size 01 would need four times that, 163 psi: refused.
    bool all = examples::agrees("Each tip must give " + show(answer.flow_needed, UnitSystem::us),
                                answer.flow_needed.in(us_gallons_per_minute),
                                {0.2020, "gal/min", 0.00005});
    all &= examples::agrees(best.name + " at " + show(best.pressure, UnitSystem::us),
                            best.pressure.in(pounds_per_square_inch), {40.8, "psi", 0.05});
    return all && best.size == "02" && best.fit == tips::TipFit::fits &&
           answer.choices.back().fit == tips::TipFit::refused;
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_choice());
}
