#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/notes.hpp"
#include "core/mix/product.hpp"

/// Label rates on every basis, turned into the one thing a person can measure: product as sold.
namespace swathbook::mix {

/// What the mass or share in a rate counts. "3 lb/100 gal" can mean product, active ingredient or
/// acid equivalent; a rate whose unit says a.i. or a.e. speaks for itself.
enum class RateCounts : std::uint8_t { product, ingredient, acid };

/// What a percentage or a "per 100 gallons" is counted in.
enum class MixShare : std::uint8_t {
    finished_mix,  ///< everything in the tank, products and all
    carrier,       ///< the water (or oil) alone
};

/// What a product rate is spread over.
enum class Per : std::uint8_t { area, mix };

/// A rate of product as sold, in the measure of its form: m3 for a liquid, kg for a dry product;
/// per m2 of ground or per m3 of mix (or carrier, whichever the label's rate was counted in).
struct ProductRate {
    double si = 0.0;
    Per per = Per::area;
};

/// Water at 20 degrees C: what a mix is taken to weigh when nobody entered its density.
/// @source 998.2 kg/m3, IAPWS-95 and every steam table, here from memory; handbooks use 8.34 lb/gal
///         (999.4 kg/m3), 0.12 % more
inline constexpr double water_kg_per_m3 = 998.2;

/// What else a rate needs before it means an amount.
struct RateReading {
    RateCounts counts = RateCounts::product;
    std::string_view ingredient{};  ///< which one, when the product holds several
    /// Of the mix or carrier; water is taken when absent. Only percent by weight uses it.
    std::optional<Density> mix_density{};
};

/// The ingredient a rate speaks of: the named one, or the only one.
/// @errors invalid_input{field} when none was entered, or several and none named; not_found when
/// the name is not on the card
[[nodiscard]] Result<const Ingredient*> ingredient_of(const ProductCard& card,
                                                      std::string_view name,
                                                      std::string_view field);

/// Active ingredient in one measure of product: kg per m3 of a liquid, kg per kg of a dry product.
/// Taken from the strength by volume, or from the share by weight and the density. Never from the
/// acid equivalent.
/// @errors invalid_input{field} naming the figure that is missing from the card
[[nodiscard]] Result<double> ingredient_content(const ProductCard& card,
                                                const Ingredient& ingredient,
                                                std::string_view field);

/// The same for acid equivalent. Never from the active ingredient: the share of acid in a salt
/// depends on the salt.
/// @errors invalid_input{field} naming the figure that is missing from the card
[[nodiscard]] Result<double> acid_content(const ProductCard& card, const Ingredient& ingredient,
                                          std::string_view field);

/// A label rate as an amount of product as sold.
///
///   lb a.i./ac  / (lb a.i./gal)   = gal/ac          (liquid)
///   lb a.i./ac  / (share a.i.)    = lb/ac           (dry)
///   % w/w * density of the mix    = mass of product in a volume of mix
///
/// @return the amount per area or per volume; for a liquid a volume, for a dry product a mass
/// @accuracy at most 4 roundings
/// @valid    any rate of 0 or more; the caller says which limits apply
/// @errors   out_of_range{field} for a rate below 0 or not finite; inconsistent for a basis the
///           form cannot have (percent by volume of a dry product) or a measure said twice;
///           invalid_input naming the strength or density that the card lacks
/// @source   unit arithmetic; the same relations are printed by University of Minnesota Extension
///           and the Pacific Northwest Pest Management Handbooks (cases)
/// @cases    tests/cases/mix/rates.case, tests/unit/mix/rates_test.cpp
[[nodiscard]] Result<ProductRate> product_rate(const LabelRate& rate, const ProductCard& card,
                                               const RateReading& reading,
                                               std::string_view field = "rate");

/// An amount of product as it is measured out. A liquid always has a volume, a dry product always a
/// mass; the other measure is there when the density is known.
struct ProductAmount {
    std::optional<Volume> volume{};
    std::optional<Mass> mass{};
    std::string text{};  ///< in handy units: "1 gal 26 fl oz", "11.09 mL", "6.4 oz wt"
};

/// @param measure m3 for a liquid, kg for a dry product
[[nodiscard]] ProductAmount amount_of(double measure, const ProductCard& card, UnitSystem units);

/// A measure in handy units, as a person would pour or weigh it.
[[nodiscard]] std::string handy_text(double measure, Form form, UnitSystem units);

/// A product rate in handy units: "32 fl oz/ac", "4.25 lb/100 gal".
[[nodiscard]] std::string handy_text(ProductRate rate, Form form, UnitSystem units);

/// The path of a member: path_to("products[1]", "rate") is "products[1].rate".
[[nodiscard]] std::string path_to(std::string_view front, std::string_view member);

}  // namespace swathbook::mix
