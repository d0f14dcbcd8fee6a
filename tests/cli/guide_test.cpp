// Manual page and completions, judged by the programs that read them: mandoc, bash, zsh and fish.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "cli/exit_status.hpp"
#include "tests/cli/process.hpp"

namespace swathbook::tests {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

TEST(Manual, MandocFindsNoFault) {
    const Ended linted = swathbook_line("swathbook man | mandoc -T lint -W warning");
    EXPECT_EQ(linted.status, 0) << linted.out;
    EXPECT_THAT(linted.out, IsEmpty());
}

TEST(Manual, NamesEveryExitStatus) {
    const std::string page = swathbook({"man"}).out;
    for (const int code : {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}) {
        const int status = static_cast<int>(cli::exit_status_of(static_cast<ErrorCode>(code)));
        EXPECT_THAT(page, HasSubstr(".It " + std::to_string(status) + "\n"));
    }
}

/// What bash offers for a line that ends where the cursor is.
std::string bash_offers(const std::string& words, int cursor) {
    return swathbook_line("source <(swathbook completion bash); COMP_WORDS=(" + words +
                          "); COMP_CWORD=" + std::to_string(cursor) +
                          "; _swathbook; printf '%s ' \"${COMPREPLY[@]}\"")
        .out;
}

TEST(Completion, BashOffersCommandsFlagsAndWords) {
    EXPECT_EQ(bash_offers("swathbook oper", 1), "operations ");
    EXPECT_EQ(bash_offers("swathbook operations --ty", 2), "--typescript ");
    EXPECT_EQ(bash_offers("swathbook completion ''", 2), "bash zsh fish --help ");
}

TEST(Completion, TheScriptsAreCleanInTheirShells) {
    for (const char* line :
         {"swathbook completion bash | bash -n", "swathbook completion zsh | zsh -n",
          "swathbook completion fish | fish -n"}) {
        const Ended ended = swathbook_line(line);
        EXPECT_EQ(ended.status, 0) << line << ended.err;
        EXPECT_THAT(ended.err, IsEmpty()) << line;
    }
}

TEST(Completion, FishOffersCommandsAndWords) {
    const auto offers = [](const std::string& line) {
        return swathbook_line(
                   "HOME=/tmp fish --no-config -c 'swathbook completion fish | source; complete -C "
                   "\"" +
                   line + "\"'")
            .out;
    };
    EXPECT_THAT(offers("swathbook oper"), HasSubstr("operations"));
    EXPECT_THAT(offers("swathbook operations --ty"), HasSubstr("--typescript"));
    EXPECT_THAT(offers("swathbook completion "), HasSubstr("zsh"));
}

TEST(Completion, AnUnknownShellIsAUsageFault) {
    const Ended ended = swathbook({"completion", "dos"});
    EXPECT_EQ(ended.status, 2);
    EXPECT_THAT(ended.err, HasSubstr("bash, zsh or fish"));
    EXPECT_THAT(ended.out, IsEmpty());
}

}  // namespace
}  // namespace swathbook::tests
