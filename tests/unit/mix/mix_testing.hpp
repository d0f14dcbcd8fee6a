#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <string>
#include <string_view>

#include "core/base/notes.hpp"
#include "core/mix/recipe.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/units.hpp"

/// Short ways to write mixes in tests. All products are invented.
namespace swathbook::mix::testing {

template <Kind K>
Reading<K> read(std::string_view text) {
    const auto reading = parse<K>(text);
    EXPECT_TRUE(reading) << text << ": " << (reading ? "" : reading.error().detail);
    return reading.value_or(Reading<K>{});
}
inline Reading<Kind::volume> volume(std::string_view text) {
    return read<Kind::volume>(text);
}
inline Reading<Kind::net_area> net(std::string_view text) {
    return read<Kind::net_area>(text);
}
inline Reading<Kind::mix_per_area> mix_rate(std::string_view text) {
    return read<Kind::mix_per_area>(text);
}
inline LabelRate rate(std::string_view text) {
    auto parsed = parse_label_rate(text);
    EXPECT_TRUE(parsed) << text << ": " << (parsed ? "" : parsed.error().detail);
    if (parsed) {
        parsed->text = std::string(text);
    }
    return parsed.value_or(LabelRate{});
}

inline ProductCard liquid_card(std::string name, std::string_view acid = "3 lb a.e./gal",
                               std::string ingredient = "example acid") {
    ProductCard card;
    card.name = std::move(name);
    card.registration = "000-00";
    card.formulation = Formulation::soluble_liquid;
    card.ingredients = {Ingredient{std::move(ingredient), std::nullopt,
                                   read<Kind::acid_strength>(acid), std::nullopt, std::nullopt}};
    return card;
}
inline ProductCard dry_card(std::string name, std::string_view part = "80 % w/w") {
    ProductCard card;
    card.name = std::move(name);
    card.registration = "000-01";
    card.form = Form::dry;
    card.formulation = Formulation::dispersible_granule;
    card.ingredients = {Ingredient{"example powder", std::nullopt, std::nullopt,
                                   read<Kind::percent_by_weight>(part), std::nullopt}};
    return card;
}
inline TankProduct product(ProductCard card, std::string_view label_rate) {
    TankProduct made;
    made.card = std::move(card);
    made.rate = rate(label_rate);
    return made;
}
inline TankProduct liquid(std::string name, std::string_view label_rate) {
    return product(liquid_card(std::move(name)), label_rate);
}
inline TankProduct ammonium_sulphate(std::string_view label_rate) {
    ProductCard card;
    card.name = "Ammonium sulphate";
    card.form = Form::dry;
    card.formulation = Formulation::water_conditioner;
    return product(std::move(card), label_rate);
}

inline bool has_finding(const Notes& notes, std::string_view code) {
    const auto& all = notes.findings();
    return std::any_of(all.begin(), all.end(),
                       [&](const Finding& finding) { return finding.code == code; });
}

}  // namespace swathbook::mix::testing
