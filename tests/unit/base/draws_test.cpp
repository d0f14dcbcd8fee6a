#include "core/base/draws.hpp"

#include <array>

#include <gtest/gtest.h>

namespace swathbook {
namespace {

// The first five numbers for seed 1234567 as printed by Rosetta Code, "Pseudo-random
// numbers/Splitmix64".
TEST(Draws, AreTheNumbersOfThePublishedGenerator) {
    Draws draws(1234567);
    for (const std::uint64_t printed :
         {6457827717110365317U, 3203168211198807973U, 9817491932198370423U, 4593380528125082431U,
          16408922859458223821U}) {
        EXPECT_EQ(draws.next(), printed);
    }
}

TEST(Draws, ReachEveryChoiceAndNoOther) {
    Draws draws(7);
    std::array<int, 30> seen{};
    for (int i = 0; i < 6000; ++i) {
        const int drawn = draws.among(10, 29, 3);
        ASSERT_GE(drawn, 10);
        ASSERT_LE(drawn, 28);
        ++seen[static_cast<std::size_t>(drawn)];
    }
    for (int choice = 10; choice <= 28; ++choice) {
        const int count = seen[static_cast<std::size_t>(choice)];
        EXPECT_EQ(count > 0, (choice - 10) % 3 == 0) << choice;
    }
}

}  // namespace
}  // namespace swathbook
