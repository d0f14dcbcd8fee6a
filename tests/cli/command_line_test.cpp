// The command line as scripts and people meet it: exit statuses, streams, help, unknown words.

#include <algorithm>
#include <filesystem>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "api/operation.hpp"
#include "cli/command.hpp"
#include "tests/cli/process.hpp"

namespace swathbook::tests {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

std::string in_double_quotes(std::string line) {
    std::replace(line.begin(), line.end(), '\'', '"');
    return line;
}

TEST(CommandLine, NoArgumentsGivesExamplesFirstAndSucceeds) {
    const Ended ended = swathbook({});
    EXPECT_EQ(ended.status, 0);
    EXPECT_THAT(ended.err, IsEmpty());
    EXPECT_LT(ended.out.find("Examples"), ended.out.find("Computing"));
}

TEST(CommandLine, HelpWinsOverEverythingElse) {
    const Ended plain = swathbook({"help", "operations"});
    EXPECT_EQ(plain.status, 0);
    EXPECT_EQ(swathbook({"operations", "--help"}).out, plain.out);
    EXPECT_EQ(swathbook({"operations", "-h", "--no-such-flag"}).out, plain.out);
    EXPECT_EQ(swathbook({"--help"}).out, swathbook({}).out);
}

TEST(CommandLine, UnknownCommandIsAUsageFaultWithASuggestionAndRunsNothing) {
    const Ended ended = swathbook({"operation"});
    EXPECT_EQ(ended.status, 2);
    EXPECT_THAT(ended.out, IsEmpty());
    EXPECT_THAT(ended.err, HasSubstr("Did you mean \"operations\"?"));
}

TEST(CommandLine, UnknownFlagIsAUsageFaultWithASuggestion) {
    const Ended ended = swathbook({"operations", "--typscript"});
    EXPECT_EQ(ended.status, 2);
    EXPECT_THAT(ended.out, IsEmpty());
    EXPECT_THAT(ended.err, HasSubstr("Did you mean \"--typescript\"?"));
}

TEST(CommandLine, AWordTooManyIsNamed) {
    const Ended ended = swathbook({"operations", "surplus"});
    EXPECT_EQ(ended.status, 2);
    EXPECT_THAT(ended.err, HasSubstr("\"surplus\" is one word too many"));
}

TEST(CommandLine, AFlagWithoutItsValueIsAUsageFault) {
    EXPECT_EQ(swathbook({"operations", "--schema"}).status, 2);
}

TEST(CommandLine, VersionIsOneLine) {
    const Ended ended = swathbook({"--version"});
    EXPECT_EQ(ended.status, 0);
    EXPECT_EQ(ended.out, "swathbook " SWATHBOOK_VERSION "\n");
}

TEST(CommandLine, ComputeOfAnUnknownOperationAnswersInJsonWithStatusFive) {
    const Ended ended = swathbook({"compute", "no-such-operation"}, "{}");
    EXPECT_EQ(ended.status, 5);
    EXPECT_THAT(ended.out, StartsWith(R"({"error":{"code":"not_found")"));
}

TEST(CommandLine, AMissingRequestFileIsNotFound) {
    const Ended ended = swathbook({"compute", "any", "--request", "/no/such/file.json"});
    EXPECT_EQ(ended.status, 5);
    EXPECT_THAT(ended.err, HasSubstr("/no/such/file.json"));
}

TEST(CommandLine, NothingInTheEnvironmentIsNeeded) {
    const Ended ended = run({{"/usr/bin/env", "-i", SWATHBOOK_PROGRAM, "operations"}});
    EXPECT_EQ(ended.status, 0);
    EXPECT_THAT(ended.err, IsEmpty());
}

TEST(CommandLine, NoColourReachesAPipe) {
    for (const auto& arguments :
         {std::vector<std::string>{}, {"help", "operations"}, {"nonsense"}}) {
        const Ended ended = swathbook(arguments, "", {"TERM=xterm-256color"});
        EXPECT_THAT(ended.out + ended.err, Not(HasSubstr("\x1b")));
    }
}

TEST(CommandLine, AFullDiskIsAFailureAndSaysSo) {
    const Ended ended = swathbook_line("swathbook operations --typescript > /dev/full");
    EXPECT_NE(ended.status, 0);
    EXPECT_THAT(ended.err, HasSubstr("could not be written"));
}

TEST(CommandLine, EveryOperationHasItsCommandAndItsSchema) {
    for (const api::Operation& operation : api::operations()) {
        const std::string name(operation.name);
        ASSERT_NE(cli::find_command(name), nullptr) << name;
        const Ended help = swathbook({name, "--help"});
        EXPECT_EQ(help.status, 0) << name << help.err;
        EXPECT_THAT(help.out, HasSubstr("--working")) << name;
        const Ended schema = swathbook({"operations", "--schema", name});
        EXPECT_EQ(schema.status, 0) << name;
        EXPECT_THAT(schema.out, HasSubstr("https://json-schema.org/draft/2020-12/schema")) << name;
    }
}

TEST(CommandLine, EveryExampleInTheHelpRuns) {
    const std::string root = std::filesystem::current_path().string();
    std::string script = "set -e; cd $(mktemp -d); ln -s " + root + "/data data; exec 2>&1\n";
    for (const cli::Command& command : cli::commands()) {
        EXPECT_FALSE(command.examples.empty()) << command.name;
        std::string_view lines = command.examples;
        while (!lines.empty()) {
            std::string line(lines.substr(0, lines.find('\n')));
            lines.remove_prefix(std::min(lines.find('\n'), lines.size() - 1) + 1);
            // Serving ends when it is told to; told once, because a second Ctrl-C ends it at once.
            if (line.starts_with("swathbook serve")) {
                line = "timeout --foreground --preserve-status -s INT 1 " + line +
                       (line.find("--port") == std::string::npos ? " --port 0" : "");
            }
            script += "answer=$(" + line +
                      ") || { echo \"$answer\"; echo 'FAILED: " + in_double_quotes(line) +
                      "'; exit 1; }\n";
        }
    }
    const Ended ended = swathbook_line(script);
    EXPECT_EQ(ended.status, 0) << ended.out;
}

}  // namespace
}  // namespace swathbook::tests
