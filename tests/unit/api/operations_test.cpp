// What holds of every operation, whatever it computes.

#include <algorithm>
#include <set>

#include <gtest/gtest.h>

#include "api/call.hpp"
#include "api/operation.hpp"
#include "api/schema.hpp"

namespace swathbook::api {
namespace {

class EveryOperation : public testing::TestWithParam<Operation> {};

void collect_references(const Json& json, std::set<std::string>& names) {
    if (json.is_object() && json.contains("$ref")) {
        names.insert(json["$ref"].get<std::string>());
    }
    for (const Json& child : json) {
        if (child.is_structured()) {
            collect_references(child, names);
        }
    }
}

TEST_P(EveryOperation, has_a_schema_whose_references_resolve) {
    const auto schema = parse_json(schema_of(GetParam()));
    ASSERT_TRUE(schema);
    std::set<std::string> names;
    collect_references(*schema, names);
    EXPECT_FALSE(names.empty());
    for (const std::string& name : names) {
        EXPECT_TRUE(schema->contains(Json::json_pointer(name.substr(1)))) << name;
    }
}

TEST_P(EveryOperation, says_in_a_sentence_what_each_field_is) {
    const auto look = [](const ObjectType& type, const auto& self,
                         std::set<const ObjectType*>& seen) -> void {
        if (!seen.insert(&type).second) {
            return;
        }
        for (const Field& field : type.fields()) {
            EXPECT_GE(field.doc.size(), 4U) << type.name() << "." << field.name;
            EXPECT_TRUE(std::all_of(field.name.begin(), field.name.end(), [](char letter) {
                return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') ||
                       letter == '_';
            })) << field.name;
            const Type* inner = &field.type();
            while (inner->inner() != nullptr) {
                inner = inner->inner();
            }
            if (inner->as_object() != nullptr) {
                self(*inner->as_object(), self, seen);
            }
        }
    };
    std::set<const ObjectType*> seen;
    look(GetParam().request(), look, seen);
    look(GetParam().answer(), look, seen);
    EXPECT_GE(GetParam().summary.size(), 20U);
}

TEST_P(EveryOperation, answers_an_empty_request_with_an_error_that_names_a_field_or_a_reason) {
    const Called called = call(GetParam().name, "{}");
    const auto json = parse_json(called.json);
    ASSERT_TRUE(json) << called.json;
    if (called.error) {
        EXPECT_EQ(called.error, ErrorCode::invalid_input) << called.json;
        EXPECT_GE((*json)["error"]["detail"].get<std::string>().size(), 10U) << called.json;
    }
}

TEST_P(EveryOperation, refuses_what_is_not_a_request) {
    for (const char* text :
         {"", "[]", "7", "\"x\"", "null", "{\"units\": 7}", "{\"working\": \"yes\"}"}) {
        EXPECT_EQ(call(GetParam().name, text).error, ErrorCode::invalid_input) << text;
    }
}

TEST_P(EveryOperation, stands_in_the_typescript_declarations) {
    const std::string text = typescript_of_all();
    EXPECT_NE(text.find("\"" + std::string(GetParam().name) + "\":"), std::string::npos);
    EXPECT_NE(text.find("interface " + std::string(GetParam().request().name()) + " {"),
              std::string::npos);
    EXPECT_NE(text.find("interface " + std::string(GetParam().answer().name()) + " {"),
              std::string::npos);
}

INSTANTIATE_TEST_SUITE_P(Operations, EveryOperation,
                         testing::ValuesIn(operations().begin(), operations().end()),
                         [](const testing::TestParamInfo<Operation>& given) {
                             std::string name(given.param.name);
                             std::replace(name.begin(), name.end(), '-', '_');
                             return name;
                         });

TEST(Operations, stand_in_alphabetical_order_without_repeats) {
    const auto all = operations();
    EXPECT_TRUE(std::is_sorted(all.begin(), all.end(), [](const Operation& a, const Operation& b) {
        return a.name < b.name;
    }));
    EXPECT_EQ(
        std::adjacent_find(all.begin(), all.end(),
                           [](const Operation& a, const Operation& b) { return a.name == b.name; }),
        all.end());
}

}  // namespace
}  // namespace swathbook::api
