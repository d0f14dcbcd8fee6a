#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/notes.hpp"
#include "core/mix/limits.hpp"
#include "core/mix/product.hpp"
#include "core/mix/rates.hpp"

/// What is in the tank: several products, each on the basis its own label uses, as one mix.
namespace swathbook::mix {

/// Which ground a rate counts when only bands are sprayed.
enum class Counts : std::uint8_t {
    treated,  ///< the ground under the bands
    field,    ///< the whole field, rows and all
};

/// One product of a mix as the user asks for it.
struct TankProduct {
    ProductCard card{};
    LabelRate rate{};
    std::optional<Counts> counts{};              ///< must be said when only bands are sprayed
    RateCounts measures = RateCounts::product;   ///< what a weight or share in the rate counts
    std::string ingredient{};                    ///< which one, when the product holds several
    MixShare share_of = MixShare::finished_mix;  ///< what a percentage or "/100 gal" counts
    std::optional<Reading<Kind::volume>> jug{};  ///< size of its container, to count rinse water
    std::optional<LabelRate>
        applied_this_year{};  ///< on this ground, before this job; 0 is an entry
    std::optional<int> applications_this_year{};  ///< on this ground, before this job
};

/// What the products are dissolved in and spread with.
struct MixBasis {
    std::optional<MixPerArea> mix_per_treated_area{};
    double band_share = 1.0;  ///< treated ground of field ground; 1 when all is sprayed
    std::optional<Density> mix_density{};
};

/// One product in the mix, in its own measure (m3 of a liquid, kg of a dry product).
struct Dissolved {
    double per_mix = 0.0;  ///< per m3 of finished mix
    std::optional<double>
        per_treated{};         ///< per m2 of treated ground, when the mix per area is known
    bool is_per_area = false;  ///< asked for per area: amounts follow the area
};

/// The mix as a whole.
struct MixContents {
    std::vector<Dissolved> products{};  ///< in the order asked
    double carrier_share = 1.0;         ///< carrier in a volume of mix; dry products take no room
};

/// Works out how much of each product is in a volume of mix.
///
///   per area:          c = rate / mix per area
///   of finished mix:   c = rate
///   of carrier:        c = rate * w,  w = (1 - liquids counted otherwise) / (1 + liquids so
///   counted)
///
/// Identities: the order of the products changes nothing; doubling a rate doubles its product alone
/// (when none is counted of the carrier).
///
/// @param field path of the product list, for errors
/// @errors as product_rate; invalid_input when a rate per area meets a mix without mix per area, or
///         bands without the ground the rate counts; out_of_range when the products alone would
///         fill the tank; inconsistent when one product comes twice
/// @source unit arithmetic; a dry product's own volume is left out (common practice)
/// @cases  tests/cases/mix/loads.case, tests/unit/mix/recipe_test.cpp
[[nodiscard]] Result<MixContents> contents_of(std::span<const TankProduct> products,
                                              const MixBasis& basis,
                                              std::string_view field = "products");

/// How a rate of this product is to be read.
[[nodiscard]] RateReading reading_of(const TankProduct& product, const MixBasis& basis);

/// What one application of this product does to treated ground, for the limit checks. What was
/// applied earlier is per treated area.
/// @errors as product_rate for applied_this_year; out_of_range for a negative count
[[nodiscard]] Result<Delivery> delivery_of(const TankProduct& product, const Dissolved& dissolved,
                                           const MixBasis& basis, std::string_view field);

/// Pointers to the cards of a list of products.
[[nodiscard]] std::vector<const ProductCard*> cards_of(std::span<const TankProduct> products);

}  // namespace swathbook::mix
