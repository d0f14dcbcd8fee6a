#include "core/mix/order.hpp"

#include <fstream>
#include <sstream>

#include "tests/unit/mix/mix_testing.hpp"

namespace swathbook::mix {
namespace {

using namespace testing;  // NOLINT: the helpers of this folder's tests

constexpr OrderConvention published[] = {OrderConvention::dry_suspension_solution_emulsion,
                                         OrderConvention::dry_liquid_emulsion_capsule,
                                         OrderConvention::dry_suspension_emulsion_solution,
                                         OrderConvention::packet_dry_conditioner_liquid};

ProductCard of(std::string name, Formulation formulation) {
    ProductCard card;
    card.name = std::move(name);
    card.formulation = formulation;
    return card;
}

std::vector<std::string> split(const std::string& text, char at) {
    std::vector<std::string> parts;
    std::stringstream stream(text);
    std::string part;
    while (std::getline(stream, part, at)) {
        parts.push_back(part);
    }
    return parts;
}

std::string formulations_of(const ConventionStep& step) {
    std::string text;
    for (unsigned i = 0; i <= static_cast<unsigned>(Formulation::other); ++i) {
        if (((step.formulations >> i) & 1U) != 0) {
            text += (text.empty() ? "" : ",") + std::string(word_of(static_cast<Formulation>(i)));
        }
    }
    return text;
}

std::string sorted(std::string words) {
    std::vector<std::string> parts = split(words, ',');
    std::sort(parts.begin(), parts.end());
    std::string text;
    for (const std::string& part : parts) {
        text += (text.empty() ? "" : ",") + part;
    }
    return text;
}

TEST(ConventionSteps, AreThoseOfThePublishedTableLineByLine) {
    std::ifstream table("data/mix-orders/orders.tsv");
    ASSERT_TRUE(table) << "run from the top of the source tree";
    std::string line;
    std::getline(table, line);
    std::size_t i = 0;
    while (std::getline(table, line)) {
        ASSERT_LT(i, convention_steps().size());
        const ConventionStep& step = convention_steps()[i++];
        const auto cells = split(line, '\t');
        ASSERT_EQ(cells.size(), 6U) << line;
        EXPECT_EQ(cells[0], word_of(step.convention));
        const auto fill = [](const std::string& cell) {
            return cell.empty() ? 0.0 : std::stod(cell) / 100.0;
        };
        EXPECT_DOUBLE_EQ(fill(cells[2]), step.fill_low) << line;
        EXPECT_DOUBLE_EQ(fill(cells[3]), step.fill_high) << line;
        EXPECT_EQ(sorted(cells[4]), sorted(formulations_of(step))) << line;
        EXPECT_EQ(cells[5], step.text);
    }
    EXPECT_EQ(i, convention_steps().size());
}

TEST(ConventionSteps, PlaceNoFormulationTwice) {
    for (const OrderConvention convention : published) {
        std::uint32_t placed = 0;
        for (const ConventionStep& step : convention_steps()) {
            if (step.convention == convention) {
                EXPECT_EQ(placed & step.formulations, 0U) << word_of(convention);
                placed |= step.formulations;
            }
        }
        EXPECT_FALSE(source_of(convention).empty());
    }
}

std::vector<std::string> names(const std::vector<OrderStep>& steps) {
    std::vector<std::string> all;
    for (const OrderStep& step : steps) {
        all.insert(all.end(), step.products.begin(), step.products.end());
    }
    return all;
}

TEST(MixingOrder, FollowsEachPublicationWhereTheyDisagree) {
    const ProductCard emulsion = of("emulsion", Formulation::emulsifiable_concentrate);
    const ProductCard capsules = of("capsules", Formulation::capsule_suspension);
    const ProductCard salt = of("salt", Formulation::water_conditioner);
    const ProductCard powder = of("powder", Formulation::wettable_powder);
    const std::vector<const ProductCard*> cards{&emulsion, &capsules, &salt, &powder};
    Notes notes;
    using Names = std::vector<std::string>;
    const auto order = [&](OrderConvention convention) {
        return names(*mixing_order(cards, convention, {}, notes));
    };
    // Oklahoma State A-W-A-M-L-E-S: capsules before emulsions
    EXPECT_EQ(order(OrderConvention::dry_suspension_solution_emulsion),
              (Names{"salt", "powder", "capsules", "emulsion"}));
    // South Dakota State: capsules after emulsions
    EXPECT_EQ(order(OrderConvention::dry_liquid_emulsion_capsule),
              (Names{"salt", "powder", "emulsion", "capsules"}));
    // SportsField Management: dry products before ammonium sulphate
    EXPECT_EQ(order(OrderConvention::packet_dry_conditioner_liquid),
              (Names{"powder", "salt", "capsules", "emulsion"}));
    EXPECT_TRUE(notes.findings().empty());
}

TEST(MixingOrder, NamesEveryProductOnceWhateverTheConvention) {
    std::vector<ProductCard> all;
    for (unsigned i = 0; i <= static_cast<unsigned>(Formulation::other); ++i) {
        const auto formulation = static_cast<Formulation>(i);
        all.push_back(of(std::string(word_of(formulation)), formulation));
    }
    std::vector<const ProductCard*> cards;
    for (const ProductCard& card : all) {
        cards.push_back(&card);
    }
    for (const OrderConvention convention : published) {
        Notes notes;
        const auto steps = mixing_order(cards, convention, {}, notes);
        ASSERT_TRUE(steps);
        auto named = names(*steps);
        std::sort(named.begin(), named.end());
        EXPECT_EQ(named.size(), all.size()) << word_of(convention);
        EXPECT_EQ(std::adjacent_find(named.begin(), named.end()), named.end());
        EXPECT_TRUE(has_finding(notes, "order_not_placed"));
        for (std::size_t i = 0; i < steps->size(); ++i) {
            EXPECT_EQ((*steps)[i].number, static_cast<int>(i) + 1);
        }
    }
}

TEST(MixingOrder, LeavesOutStepsWithNothingToAdd) {
    const ProductCard solution = of("solution", Formulation::soluble_liquid);
    const std::vector<const ProductCard*> cards{&solution};
    Notes notes;
    const auto steps =
        mixing_order(cards, OrderConvention::dry_suspension_solution_emulsion, {}, notes);
    ASSERT_TRUE(steps);
    ASSERT_EQ(steps->size(), 3U);
    EXPECT_NEAR((*steps)[0].fill_low->si(), 0.5, 1e-12);
    EXPECT_NEAR((*steps)[0].fill_high->si(), 0.75, 1e-12);
    EXPECT_EQ((*steps)[1].products, std::vector<std::string>{"solution"});
    EXPECT_NEAR((*steps)[2].fill_low->si(), 1.0, 1e-12);
}

TEST(MixingOrder, LetsTheLabelRule) {
    const ProductCard a = of("A", Formulation::emulsifiable_concentrate);
    const ProductCard b = of("B", Formulation::wettable_powder);
    const std::vector<const ProductCard*> cards{&a, &b};
    Notes notes;
    const std::vector<std::string> said{"A", "B"};
    EXPECT_EQ(names(*mixing_order(cards, OrderConvention::as_label, said, notes)), said);
    const std::vector<std::string> one{"A"};
    EXPECT_EQ(mixing_order(cards, OrderConvention::as_label, one, notes).error().field,
              "label_order");
    const std::vector<std::string> stranger{"A", "C"};
    EXPECT_EQ(mixing_order(cards, OrderConvention::as_label, stranger, notes).error().code,
              ErrorCode::not_found);
    EXPECT_EQ(mixing_order(cards, OrderConvention::as_label, {}, notes).error().code,
              ErrorCode::invalid_input);
    const std::vector<std::string> twice{"A", "B", "A"};
    EXPECT_EQ(mixing_order(cards, OrderConvention::as_label, twice, notes).error().field,
              "label_order[2]");
}

}  // namespace
}  // namespace swathbook::mix
