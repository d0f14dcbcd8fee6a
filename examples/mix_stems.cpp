// Stem by stem: how many cuts a ceiling per acre allows.
#include "core/mix/stems.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_stems() {
    mix::StemsRequest request;
    SWATHBOOK_TRY(dose, parse<Kind::volume_each>("0.5 mL per cut"));
    SWATHBOOK_TRY(strength, parse<Kind::acid_strength>("240 g a.e./L"));
    SWATHBOOK_TRY(ceiling, parse_label_rate("0.5 lb a.e./ac"));
    SWATHBOOK_TRY(earlier, parse_label_rate("0 lb a.e./ac"));
    mix::StemProduct product;
    product.card.name = "Demoherb 4 SL";
    product.card.ingredients.emplace_back();
    product.card.ingredients[0].name = "fictionate acid";
    product.card.ingredients[0].acid_strength = strength;
    product.ceiling = ceiling;
    product.applied_this_year = earlier;
    request.products = {product};
    request.dose = dose;

    Notes notes;
    SWATHBOOK_TRY(answer, mix::stems(request, notes));
    const mix::StemDose& in_a_cut = answer.doses.front();
    if (!in_a_cut.acid || !answer.cuts_per_acre) {
        return false;
    }
    // By hand: 0.5 mL of 240 g/L holds 0.12 g of acid. 0.5 lb is 226.796 g; 226.796 / 0.12 =
    // 1889.97, and part of a cut does not count: 1889 cuts on an acre.
    const double grams = in_a_cut.acid->in(grams_each);
    bool all = examples::agrees("Acid in a cut: " + show(*in_a_cut.acid, UnitSystem::us), grams,
                                {0.12, "g", 1e-9});
    all &= examples::agrees("Cuts on an acre", *answer.cuts_per_acre, {1889, "", 0});
    return all;
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_stems());
}
