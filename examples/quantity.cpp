// Label text in, quantity with a kind, and text for a person out.
#include "core/quantity/measure_text.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_quantities() {
    // By hand: 1 qt is 32 fl oz; 32 + 10 = 42 fl oz.
    SWATHBOOK_TRY(jug, parse<Kind::volume>("1 qt + 10 fl oz"));
    bool all = examples::agrees(jug.text + " is " + show(jug.value, "fl oz"),
                                jug.value.in(us_fluid_ounces), {42, "fl oz", 1e-9});

    // Back into what the jug has marks for.
    const std::string to_pour = show_measured(jug.value, UnitSystem::us);
    std::printf("To pour: %s\n", to_pour.c_str());
    all &= to_pour == "1 qt + 10 fl oz";

    // By hand: 2-2/3 pt is 8/3 of 16 fl oz, 42.67 fl oz. The text says the basis too: volume of
    // product on an area, which never adds to gallons of mix on an area.
    SWATHBOOK_TRY(rate, parse_label_rate("2-2/3 pt/ac"));
    all &= rate.basis == RateBasis::volume_per_area;
    all &= examples::agrees(rate.text + " is " + show(rate.si, kind_of(rate.basis), "fl oz/ac"),
                            number_in(rate.si, kind_of(rate.basis), "fl oz/ac"),
                            {42.67, "fl oz/ac", 0.005});

    // Text with two meanings is refused, not guessed.
    const Result<LabelRate> refused = parse_label_rate("32 oz/ac");
    if (refused) {
        return false;
    }
    std::printf("Refused: %s\n", refused.error().detail.c_str());
    return all && refused.error().code == ErrorCode::invalid_input;
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_quantities());
}
