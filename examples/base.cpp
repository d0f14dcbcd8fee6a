// An operation of one's own, in the shape all of them have: a Result, and Notes beside it.
#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

// A failure is a value: it names the input at fault and says what to do. A finding stands beside an
// answer that is still given. Working is made only when somebody asked for it, hence the lambda.
Result<double> tank_share(double gallons, double tank_gallons, Notes& notes) {
    if (!(tank_gallons > 0)) {
        return fail(ErrorCode::out_of_range, "tank", "The tank is 0 gal. It must be above 0.");
    }
    const double share = gallons / tank_gallons;
    notes.show([&] {
        return Step{"Share of the tank",
                    std::to_string(gallons) + " gal / " + std::to_string(tank_gallons) + " gal",
                    std::to_string(share)};
    });
    if (share > 1) {
        notes.find(Severity::warning, "more_than_the_tank", "It does not fit: make two loads.");
    }
    return share;
}

Result<bool> show() {
    Notes notes(UnitSystem::us, true);
    // By hand: 12 gal in a tank of 48 gal is a quarter, and nothing is to be warned of.
    SWATHBOOK_TRY(share, tank_share(12, 48, notes));
    bool all = examples::agrees("Share of the tank", share, {0.25, "", 0});
    for (const Step& step : notes.steps()) {
        std::printf("  %s = %s\n", step.expression.c_str(), step.result.c_str());
    }
    // By hand: 60 gal in that tank is a load and a quarter: one warning.
    SWATHBOOK_TRY(too_much, tank_share(60, 48, notes));
    all &= examples::agrees("Loads", too_much, {1.25, "", 0}) && notes.findings().size() == 1;
    // No tank, no answer; the error says which input to look at.
    const Result<double> refused = tank_share(12, 0, notes);
    return all && !refused && refused.error().field == "tank";
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show());
}
