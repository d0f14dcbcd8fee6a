#include "core/quantity/detail/words.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "tests/unit/quantity/judges.hpp"

namespace swathbook::detail {
namespace {

WordKey key_of(std::string_view text) {
    WordKey key;
    for (const char letter : text) {
        key.add(static_cast<unsigned char>(letter));
    }
    return key;
}

TEST(Words, every_spelling_is_found_and_nothing_else) {
    for (const Spelling& spelling : all_spellings()) {
        EXPECT_EQ(find_word(key_of(spelling.text)), &spelling) << spelling.text;
        const std::string longer = std::string(spelling.text) + "qz";
        EXPECT_EQ(find_word(key_of(longer)), nullptr) << longer;
    }
    EXPECT_EQ(find_word(key_of("")), nullptr);
    EXPECT_EQ(find_word(key_of("seventeenletterss")), nullptr);
}

TEST(Words, every_unit_has_a_spelling) {
    for (const UnitRow& row : all_units()) {
        // Imperial volumes and tons are made of two words.
        const bool two_words = row.name.find(' ') != std::string_view::npos;
        const bool spelled = std::ranges::any_of(all_spellings(), [&row](const Spelling& spelling) {
            return spelling.role == Role::atom && spelling.atom == row.atom;
        });
        EXPECT_TRUE(spelled || two_words) << row.name;
    }
}

/// GNU units knows most of the English words itself; where it does, it means the same by them.
TEST(Words, a_word_means_what_gnu_units_means_by_it) {
    // Its "a" is the are, "libra" the Roman pound, "kmph" a thousand mph and "mpa" a millipascal;
    // on labels and gauges they are the acre, the Spanish pound, km/h and MPa.
    constexpr std::array differ{std::string_view("a"), std::string_view("libra"),
                                std::string_view("libras"), std::string_view("kmph"),
                                std::string_view("mpa")};
    constexpr std::array<std::string_view, 9> si{"m",   "m^2",   "m^3", "kg",    "s",
                                                 "m/s", "m^3/s", "Pa",  "radian"};
    std::vector<std::string> words;
    std::vector<const Spelling*> candidates;
    for (const Spelling& spelling : all_spellings()) {
        const auto dimension = static_cast<std::size_t>(row_of(spelling.atom).dimension);
        if (spelling.role == Role::atom && spelling.flags == no_flag && dimension < si.size() &&
            std::ranges::find(differ, spelling.text) == differ.end()) {
            candidates.push_back(&spelling);
            words.emplace_back(spelling.text);
        }
    }
    const std::vector<bool> known = judges::known_to_gnu_units(words);
    ASSERT_EQ(known.size(), words.size());
    std::vector<judges::Question> questions;
    std::vector<const Spelling*> asked;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (known[i]) {
            const auto dimension = static_cast<std::size_t>(row_of(candidates[i]->atom).dimension);
            questions.push_back({words[i], std::string(si[dimension])});
            asked.push_back(candidates[i]);
        }
    }
    const std::vector<double> answers = judges::gnu_units(questions);
    ASSERT_EQ(answers.size(), questions.size());
    EXPECT_GT(answers.size(), 130U);
    for (std::size_t i = 0; i < answers.size(); ++i) {
        const double expected = row_of(asked[i]->atom).si;
        // "h", "rad" and the like are other quantities to it: no number, no judgement.
        if (!std::isnan(answers[i])) {
            EXPECT_NEAR(answers[i], expected, 6e-15 * expected) << asked[i]->text;
        }
    }
}

TEST(Words, the_nearest_spelling_is_one_or_two_slips_away) {
    EXPECT_EQ(nearest_spelling("galon"), "galon");
    EXPECT_EQ(nearest_spelling("gallln"), "gallon");
    EXPECT_EQ(nearest_spelling("hecatre"), "hectare");
    EXPECT_EQ(nearest_spelling("pnt"), "pt");
    EXPECT_EQ(nearest_spelling("milliliteers"), "milliliters");
    EXPECT_EQ(nearest_spelling("barrels"), "");
    EXPECT_EQ(nearest_spelling("x"), "");
    EXPECT_EQ(nearest_spelling("xyzzyxyzzy"), "");
    EXPECT_EQ(nearest_spelling("an extremely long word that is none"), "");
}

}  // namespace
}  // namespace swathbook::detail
