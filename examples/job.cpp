// Where subjects meet: worn tips against their rating, and three ways to another rate.
#include "core/job/adjust.hpp"
#include "core/job/tip_check.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_tips(Notes& notes) {
    job::TipCheckRequest request;
    for (const char* text : {"0.40 gal/min", "0.41 gal/min", "0.46 gal/min"}) {
        SWATHBOOK_TRY(flow, parse<Kind::flow>(text));
        request.flows.push_back(flow);
    }
    SWATHBOOK_TRY(rated, parse<Kind::flow>("0.40 gal/min"));
    request.rated_flow = rated;
    SWATHBOOK_TRY(answer, job::tip_check(request, notes));
    // By hand: 0.46 / 0.40 is 15 % over the rating, past the usual 10 %; 0.41 / 0.40 is 2.5 %. So
    // the third tip alone goes, and the mean is 1.27 / 3 = 0.4233 gal/min.
    std::printf("Limit used: %s\n", answer.limit_text.c_str());
    return examples::agrees("Mean of the tips " + show(answer.mean, UnitSystem::us),
                            answer.mean.in(us_gallons_per_minute), {0.4233, "gal/min", 0.0001}) &&
           answer.replace == std::vector<int>{3};
}

Result<bool> show_adjusting(Notes& notes) {
    job::AdjustRequest request;
    SWATHBOOK_TRY(rate, parse<Kind::mix_per_area>("10 gal/ac"));
    SWATHBOOK_TRY(target, parse<Kind::mix_per_area>("12 gal/ac"));
    SWATHBOOK_TRY(speed, parse<Kind::speed>("4 mph"));
    SWATHBOOK_TRY(pressure, parse<Kind::pressure>("30 psi"));
    request.rate = rate;
    request.target = target;
    request.speed = speed;
    request.pressure = pressure;
    SWATHBOOK_TRY(answer, job::adjust(request, notes));
    // By hand: 12 / 10 = 1.2 times as much: 4 mph / 1.2 = 3.33 mph, or 30 psi x 1.2^2 = 43.2 psi.
    return answer.by_speed && answer.by_pressure &&
           examples::agrees("Either drive " + show(answer.by_speed->speed, UnitSystem::us),
                            answer.by_speed->speed.in(miles_per_hour), {3.333, "mph", 0.001}) &&
           examples::agrees("or set " + show(answer.by_pressure->pressure, UnitSystem::us),
                            answer.by_pressure->pressure.in(pounds_per_square_inch),
                            {43.2, "psi", 1e-6});
}

}  // namespace
}  // namespace swathbook

int main() {
    swathbook::Notes notes;
    return swathbook::examples::status_of(swathbook::show_tips(notes)) +
           swathbook::examples::status_of(swathbook::show_adjusting(notes));
}
