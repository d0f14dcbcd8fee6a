// The notebook from the command line: what is acknowledged is there for the next process.

#include <filesystem>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/cli/process.hpp"

namespace swathbook::tests {
namespace {

using testing::HasSubstr;
using testing::Not;

class NotebookCommand : public testing::Test {
protected:
    void SetUp() override {
        std::string pattern =
            (std::filesystem::temp_directory_path() / "swathbook-XXXXXX").string();
        ASSERT_NE(mkdtemp(pattern.data()), nullptr);
        folder_ = pattern;
        ASSERT_EQ(ask({"notebook", "new", file("book.gpkg"), "--author", "Ada Quill"}).status, 0);
    }
    void TearDown() override { std::filesystem::remove_all(folder_); }

    [[nodiscard]] std::string file(const char* name) const { return (folder_ / name).string(); }
    [[nodiscard]] Ended ask(const std::vector<std::string>& words) const {
        return swathbook(words, "", {"SWATHBOOK_NOTEBOOK=" + file("book.gpkg")});
    }
    [[nodiscard]] std::string add(std::vector<std::string> words) const {
        words.insert(words.begin(), {"notebook", "add"});
        const Ended ended = ask(words);
        EXPECT_EQ(ended.status, 0) << ended.err;
        return ended.out.substr(0, ended.out.find('\n'));
    }

private:
    std::filesystem::path folder_;
};

TEST_F(NotebookCommand, AnAnswerIsKeptWithExactlyWhatItWasAsked) {
    const Ended kept =
        ask({"calibrate", "--refill", "4", "gal", "--area", "0.1", "ac", "--keep", "Boom rig"});
    ASSERT_EQ(kept.status, 0) << kept.err;
    const Ended shown = ask({"notebook", "show", "Boom rig", "--json"});
    EXPECT_THAT(shown.out, HasSubstr(R"("request":{"refill":"4 gal","area":"0.1 ac"})"));
    EXPECT_THAT(shown.out, HasSubstr("\"model\":\"swathbook " SWATHBOOK_VERSION "\""));
    EXPECT_THAT(shown.out, HasSubstr("40"));
}

TEST_F(NotebookCommand, ACopyCarriesTheNotebookAndTwiceDoesNoHarm) {
    ASSERT_FALSE(add({"sprayer", "name=Boom rig"}).empty());
    EXPECT_EQ(ask({"notebook", "export", "--to", file("copy.zip")}).status, 0);
    ASSERT_EQ(
        swathbook({"notebook", "new", file("other.gpkg"), "--author", "Bo Tansy"}, "", {}).status,
        0);
    const std::vector<std::string> merge = {"notebook", "merge", file("copy.zip"), "--notebook",
                                            file("other.gpkg")};
    EXPECT_THAT(swathbook(merge, "", {}).out, HasSubstr("1 entries added, 0 were here already"));
    EXPECT_THAT(swathbook(merge, "", {}).out, HasSubstr("0 entries added, 1 were here already"));
    EXPECT_THAT(swathbook({"notebook", "list", "--notebook", file("other.gpkg")}, "", {}).out,
                HasSubstr("Boom rig"));
}

TEST_F(NotebookCommand, AClosedRecordIsAmendedNeverChanged) {
    const std::string record = add({"record", "name=14 May", "area_treated=7.4 ac"});
    EXPECT_EQ(ask({"notebook", "amend", record, "--date", "2031-05-16", "--reason", "early", "x=1"})
                  .status,
              4);
    EXPECT_EQ(ask({"notebook", "close", record}).status, 0);
    const Ended changed = ask({"notebook", "add", "record", "--to", record, "area_treated=6 ac"});
    EXPECT_EQ(changed.status, 4);
    EXPECT_THAT(changed.err, HasSubstr("[not_permitted]"));
    EXPECT_EQ(
        ask({"notebook", "amend", record, "--date", "2031-05-16", "--reason", "", "wind=5 mph"})
            .status,
        3);
    EXPECT_EQ(ask({"notebook", "amend", "14 May", "--date", "2031-05-16", "--reason",
                   "wind left out", "wind=5 mph"})
                  .status,
              0);
    const std::string shown = ask({"notebook", "show", record}).out;
    EXPECT_THAT(shown, HasSubstr("7.4 ac"));
    EXPECT_THAT(shown, HasSubstr("wind left out"));
    EXPECT_THAT(shown, Not(HasSubstr("6 ac")));
}

TEST_F(NotebookCommand, AnAreaBecomesAStandOnTheMap) {
    const Ended kept =
        ask({"area", "--request", "data/demo/05-area-heron-flat.json", "--keep", "Heron Flat"});
    ASSERT_EQ(kept.status, 0) << kept.err;
    EXPECT_THAT(ask({"notebook", "list", "stand"}).out, HasSubstr("Heron Flat"));
}

TEST_F(NotebookCommand, BackupRestoreExportAndMergeKeepEveryEntry) {
    EXPECT_EQ(add({"sprayer", "name=Boom rig"}).size(), 36U);
    EXPECT_EQ(ask({"notebook", "backup", file("copy.gpkg")}).status, 0);
    EXPECT_EQ(ask({"notebook", "backup", file("copy.gpkg")}).status, 6)
        << "a backup overwrites nothing";
    EXPECT_EQ(ask({"notebook", "restore", file("copy.gpkg"), file("again.gpkg")}).status, 0);
    EXPECT_EQ(ask({"notebook", "export", "--to", file("entries.txt")}).status, 0);
    EXPECT_EQ(ask({"notebook", "new", file("other.gpkg"), "--author", "Bo Tansy"}).status, 0);
    const auto merge = [this] {
        return ask({"notebook", "merge", file("entries.txt"), "--notebook", file("other.gpkg")})
            .out;
    };
    EXPECT_THAT(merge(), HasSubstr("1 entries added, 0 were here already, 0 refused"));
    EXPECT_THAT(merge(), HasSubstr("0 entries added, 1 were here already, 0 refused"));
    for (const char* name : {"book.gpkg", "again.gpkg", "other.gpkg"}) {
        EXPECT_THAT(ask({"notebook", "list", "--notebook", file(name)}).out, HasSubstr("Boom rig"))
            << name;
        EXPECT_EQ(ask({"notebook", "check", "--notebook", file(name)}).status, 0) << name;
    }
}

TEST_F(NotebookCommand, WhatIsNotThereIsNotFound) {
    EXPECT_EQ(ask({"notebook", "show", "no such thing"}).status, 5);
    EXPECT_EQ(ask({"notebook", "list", "--notebook", file("missing.gpkg")}).status, 5);
    EXPECT_EQ(swathbook({"notebook", "list"}).status, 5);
    EXPECT_EQ(ask({"notebook", "add", "spaceship", "name=x"}).status, 3);
    EXPECT_EQ(ask({"notebook"}).status, 2);
}

TEST_F(NotebookCommand, ThePacketIsAPdfOfTheScenario) {
    const Ended printed = ask({"packet", "data/demo", "--output", file("packet.pdf")});
    ASSERT_EQ(printed.status, 0) << printed.err;
    const Ended text = run({{"pdftotext", file("packet.pdf"), "-"}});
    EXPECT_THAT(text.out, HasSubstr("12.99 gal/ac"));
    EXPECT_THAT(text.out, HasSubstr("Ada Quill"));
}

}  // namespace
}  // namespace swathbook::tests
