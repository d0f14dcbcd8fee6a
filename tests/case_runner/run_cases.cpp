// Every case of every case file is one test.

#include <iostream>
#include <map>
#include <set>

#include <gtest/gtest.h>

#include "api/call.hpp"
#include "tests/case_runner/case_file.hpp"
#include "tests/case_runner/judge.hpp"

namespace swathbook::tests {
namespace {

class CaseTest : public testing::Test {
public:
    explicit CaseTest(const Case& checked) : case_(checked) {}
    void TestBody() override {
        const api::Called called = api::call(case_.operation, case_.request);
        const auto answer = api::parse_json(called.json);
        ASSERT_TRUE(answer) << called.json;
        for (const Demand& demand : case_.demands) {
            EXPECT_EQ(complaint(demand, *answer), "")
                << case_.file << ":" << demand.line << "\n  source: " << case_.source
                << "\n  request: " << case_.request;
        }
    }

private:
    const Case& case_;
};

void add_tests(const std::vector<Case>& cases) {
    std::set<std::string> names;
    for (const Case& each : cases) {
        if (!names.insert(each.name).second) {
            std::cerr << each.file << ":" << each.line << ": the case name \"" << each.name
                      << "\" stands twice\n";
            std::exit(1);
        }
        testing::RegisterTest(each.kind.c_str(), each.name.c_str(), nullptr, nullptr,
                              each.file.c_str(), each.line,
                              [&each]() -> CaseTest* { return new CaseTest(each); });
    }
}

void print_counts(const std::vector<Case>& cases) {
    std::map<std::string, int> counts;
    for (const Case& each : cases) {
        ++counts[each.kind];
    }
    for (const auto& [kind, count] : counts) {
        std::cout << count << " " << kind << " cases\n";
    }
}

}  // namespace
}  // namespace swathbook::tests

int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    const std::string folder = argc > 1 ? argv[1] : "tests/cases";
    const auto cases = swathbook::tests::read_case_folder(folder);
    if (!cases) {
        std::cerr << cases.error().detail << "\n";
        return 1;
    }
    swathbook::tests::print_counts(*cases);
    swathbook::tests::add_tests(*cases);
    return RUN_ALL_TESTS();
}
