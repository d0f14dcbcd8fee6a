#include "core/base/sort.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <string>
#include <vector>

namespace swathbook {
namespace {

RC_GTEST_PROP(Sort, is_what_the_stable_sort_of_the_library_gives,
              (std::vector<std::pair<int, int>> list)) {
    for (auto& [key, place] : list) {
        key %= 5;  // many equals
    }
    const auto by_key = [](const auto& a, const auto& b) { return a.first < b.first; };
    auto wanted = list;
    std::stable_sort(wanted.begin(), wanted.end(), by_key);
    sort_list(list, by_key);
    RC_ASSERT(list == wanted);
}

TEST(Sort, takes_lists_that_are_empty_turned_round_or_cannot_be_copied_cheaply) {
    std::vector<std::string> none;
    sort_list(none);
    EXPECT_TRUE(none.empty());
    std::vector<std::string> texts;
    for (int i = 999; i >= 0; --i) {
        texts.push_back("a text too long to be kept in place " + std::to_string(1000 + i));
    }
    auto wanted = texts;
    std::sort(wanted.begin(), wanted.end());
    sort_list(texts);
    EXPECT_EQ(texts, wanted);
    sort_list(texts, std::greater<>());
    EXPECT_TRUE(std::is_sorted(texts.rbegin(), texts.rend()));
}

}  // namespace
}  // namespace swathbook
