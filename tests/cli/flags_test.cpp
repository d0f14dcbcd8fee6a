// Flags of operations: derived from the descriptions, they must ask the same as the JSON does.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "api/call.hpp"
#include "api/operation.hpp"
#include "cli/request/flags.hpp"
#include "cli/request/values.hpp"
#include "core/quantity/parse.hpp"
#include "tests/cli/process.hpp"

namespace swathbook::tests {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

std::string answer_to(const std::string& operation, const std::string& request) {
    return api::call(operation, request).json + "\n";
}

TEST(Flags, WordsOfOneAmountNeedNoQuotes) {
    const std::string wanted = answer_to("course", R"({"width":"26 ft"})");
    EXPECT_EQ(swathbook_line("swathbook course --width 26 ft --json").out, wanted);
    EXPECT_EQ(swathbook_line("swathbook course --width '26 ft' --json").out, wanted);
    EXPECT_EQ(swathbook_line("swathbook course --width=26ft --json").out,
              answer_to("course", R"({"width":"26ft"})"));
}

TEST(Flags, ListsTakeSeveralWordsAndRepeats) {
    const std::string wanted = answer_to(
        "calibrate",
        R"({"sprayer":"boomless","width":"26 ft","course_length":"176 ft","course_times":["31.5 s","31.2 s"],"flow":"2.60 gal/min"})");
    const std::string rest =
        " --sprayer boomless --width 26 ft --course-length 176 ft --flow 2.60 gal/min --json";
    for (const char* times : {"--course-times 31.5 s 31.2 s", "--course-times '31.5 s' '31.2 s'",
                              "--course-times 31.5 s --course-times 31.2 s",
                              "--course-times 31.5 31.2 s", "--course_times 31.5 s 31.2 s"}) {
        EXPECT_EQ(swathbook_line(std::string("swathbook calibrate ") + times + rest).out, wanted)
            << times;
    }
}

TEST(Flags, ObjectsAreNameValuePairsOrJson) {
    const std::string wanted = answer_to(
        "crew",
        R"({"people":[{"name":"Ada","output":"22 gal/ac"},{"name":"Bo","output":"27 gal/ac"}]})");
    EXPECT_EQ(swathbook_line("swathbook crew --people 'name=Ada; output=22 gal/ac' "
                             "'name=Bo;output=27 gal/ac' --json")
                  .out,
              wanted);
    EXPECT_EQ(
        swathbook_line(R"(swathbook crew --json --people '{"name":"Ada","output":"22 gal/ac"}' )"
                       R"('{"name":"Bo","output":"27 gal/ac"}')")
            .out,
        wanted);
}

TEST(Flags, SamplesInHelpCanBeTyped) {
    int samples = 0;
    for (const api::Operation& operation : api::operations()) {
        for (const cli::Flag& flag : cli::flags_of(operation.request())) {
            if (flag.sample.empty()) {
                continue;
            }
            ++samples;
            const bool can_be_read =
                flag.type->shape() == api::Shape::rate
                    ? parse_label_rate(flag.sample).has_value()
                    : parse_amount(flag.sample, flag.type->kind()->kind).has_value();
            EXPECT_TRUE(can_be_read) << operation.name << " " << flag.name << " " << flag.sample;
        }
    }
    EXPECT_GT(samples, 50);
}

TEST(Flags, AreLaidOverARequestFile) {
    const Ended ended = swathbook({"course", "--request", "-", "--width", "20", "ft", "--json"},
                                  R"({"width":"26 ft"})");
    EXPECT_EQ(ended.out, answer_to("course", R"({"width":"20 ft"})"));
}

TEST(Flags, AValueMayBeginWithAMinus) {
    const Ended ended = swathbook({"course", "--width", "-26", "ft"});
    EXPECT_EQ(ended.status, 3);
    EXPECT_THAT(ended.err, HasSubstr("-26 ft"));
    EXPECT_THAT(ended.err, HasSubstr("below zero"));
}

TEST(Flags, OneValueGivenTwiceIsAUsageFault) {
    const Ended ended = swathbook_line("swathbook course --width 26 ft --width 30 ft");
    EXPECT_EQ(ended.status, 2);
    EXPECT_THAT(ended.err, HasSubstr("--width stands twice"));
    EXPECT_THAT(ended.out, IsEmpty());
}

TEST(Flags, ARefusalNamesFieldAndCode) {
    const Ended ended = swathbook_line("swathbook course --width 0 ft");
    EXPECT_EQ(ended.status, 3);
    EXPECT_THAT(ended.err, testing::MatchesRegex("swathbook: width: .* \\[out_of_range\\]\n"));
    const Ended as_json = swathbook_line("swathbook course --width 0 ft --json");
    EXPECT_EQ(as_json.status, 3);
    EXPECT_EQ(as_json.out, answer_to("course", R"({"width":"0 ft"})"));
}

TEST(Flags, UnitsComeFromTheFlagThenTheEnvironment) {
    const std::string metric = answer_to("course", R"({"width":"26 ft","units":"metric"})");
    EXPECT_EQ(swathbook({"course", "--width", "26 ft", "--units", "metric", "--json"}).out, metric);
    EXPECT_EQ(
        swathbook({"course", "--width", "26 ft", "--json"}, "", {"SWATHBOOK_UNITS=metric"}).out,
        metric);
    EXPECT_EQ(swathbook({"course", "--width", "26 ft", "--units", "us", "--json"}, "",
                        {"SWATHBOOK_UNITS=metric"})
                  .out,
              answer_to("course", R"({"width":"26 ft","units":"us"})"));
    EXPECT_EQ(swathbook({"course", "--width", "26 ft", "--units", "cubits"}).status, 3);
}

// Every member of every request is reachable by a flag, and no flag hides one of the common ones.
TEST(Flags, CoverEveryRequestWithoutACollision) {
    for (const api::Operation& operation : api::operations()) {
        std::vector<std::string> names{"--request", "--units",    "--working", "--json", "--brief",
                                       "--keep",    "--notebook", "--author",  "--help"};
        std::size_t top = 0;
        for (const cli::Flag& flag : cli::flags_of(operation.request())) {
            EXPECT_EQ(std::count(names.begin(), names.end(), flag.name), 0)
                << operation.name << " " << flag.name;
            names.push_back(flag.name);
            top += flag.path.size() == 1 ? 1 : 0;
        }
        EXPECT_EQ(top, operation.request().fields().size()) << operation.name;
    }
}

}  // namespace
}  // namespace swathbook::tests
