// The blank worksheet from the command line: a file is written, a wrong wish writes none.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdio>
#include <fstream>
#include <iterator>

#include "tests/cli/process.hpp"

namespace swathbook::tests {
namespace {

using testing::HasSubstr;

std::string bytes_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

TEST(Worksheet, IsWrittenAsAPdf) {
    const std::string path = testing::TempDir() + "swathbook_worksheet.pdf";
    std::remove(path.c_str());
    const Ended ended =
        swathbook({"worksheet", "--output", path, "--language", "es", "--units", "metric"});
    EXPECT_EQ(ended.status, 0) << ended.err;
    EXPECT_EQ(bytes_of(path).substr(0, 5), "%PDF-");
    std::remove(path.c_str());
}

TEST(Worksheet, TooManyTipsAreRefusedAndNothingIsWritten) {
    const std::string path = testing::TempDir() + "swathbook_no_worksheet.pdf";
    std::remove(path.c_str());
    const Ended ended = swathbook({"worksheet", "--output", path, "--tips", "17"});
    EXPECT_NE(ended.status, 0);
    EXPECT_THAT(ended.err, HasSubstr("17 tips do not fit"));
    EXPECT_TRUE(bytes_of(path).empty());
}

}  // namespace
}  // namespace swathbook::tests
