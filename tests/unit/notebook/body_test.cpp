#include "core/notebook/body.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <map>
#include <nlohmann/json.hpp>

namespace swathbook::notebook {
namespace {

TEST(Body, space_goes_members_are_sorted_and_digits_stay_as_typed) {
    EXPECT_EQ(canonical_body(" {\n \"rate\" : \"12.50 fl oz/ac\", \"area\":1.50e0 , \"on\": true }")
                  .value(),
              R"({"area":1.50e0,"on":true,"rate":"12.50 fl oz/ac"})");
    EXPECT_EQ(canonical_body("{}").value(), "{}");
    EXPECT_EQ(canonical_body(R"({"a":[ 1 , {"z": null, "b":[]} ]})").value(),
              R"({"a":[1,{"z":null,"b":[]}]})");
}

TEST(Body, what_is_not_a_canonical_object_is_refused_with_the_place) {
    const std::string deep = "{\"a\":" + std::string(40, '[') + std::string(40, ']') + "}";
    for (const std::string& text :
         std::vector<std::string>{"",
                                  "[]",
                                  "{",
                                  "{\"a\"}",
                                  "{\"a\":}",
                                  "{\"a\":1",
                                  "{\"a\":1,}",
                                  "{\"a\":1}x",
                                  "{\"a\":01}",
                                  "{\"a\":1.}",
                                  "{\"a\":.5}",
                                  "{\"a\":1e}",
                                  "{\"a\":+1}",
                                  "{\"a\":NaN}",
                                  "{\"a\":tru}",
                                  "{\"a\":\"\\x\"}",
                                  "{\"a\":\"\\u12g4\"}",
                                  "{\"a\":\"\x01\"}",
                                  "{\"a\":\"\n\"}",
                                  "{\"A\":1}",
                                  "{\"\":1}",
                                  "{\"a b\":1}",
                                  "{\"a\":1,\"a\":2}",
                                  "{\"a\":\"\xC3\x28\"}",
                                  "{\"a\":\"\xED\xA0\x80\"}",
                                  "{\"a\":\"\xF5\x80\x80\x80\"}",
                                  "{\"a\":\"\xC0\xAF\"}",
                                  "{\"a\":\"unended}",
                                  "{'a':1}",
                                  deep,
                                  "{\"" + std::string(65, 'a') + "\":1}"}) {
        const auto body = canonical_body(text);
        ASSERT_FALSE(body.has_value()) << text;
        EXPECT_EQ(body.error().code, ErrorCode::invalid_input) << text;
        EXPECT_EQ(body.error().field, "body") << text;
    }
    EXPECT_NE(canonical_body("{\"a\":1,}").error().detail.find("byte 8"), std::string::npos);
}

TEST(Body, too_much_is_refused) {
    const std::string text = "{\"a\":\"" + std::string(largest_body, 'x') + "\"}";
    EXPECT_FALSE(canonical_body(text).has_value());
    std::string many = "{";
    for (std::size_t i = 0; i <= most_fields; ++i) {
        many += (i > 0 ? ",\"f" : "\"f") + std::to_string(i) + "\":1";
    }
    EXPECT_FALSE(canonical_body(many + "}").has_value());
}

TEST(Body, the_reader_hands_out_members_and_stops_at_a_fault) {
    BodyReader reader(R"({"a":"x,}\"y","b":[1,{"c":2}],"d":-1.5})");
    const auto a = reader.next();
    const auto b = reader.next();
    const auto d = reader.next();
    ASSERT_TRUE(a && b && d);
    EXPECT_EQ(a->value, R"("x,}\"y")");
    EXPECT_EQ(b->value, R"([1,{"c":2}])");
    EXPECT_EQ(d->value, "-1.5");
    EXPECT_FALSE(reader.next().has_value());
    EXPECT_FALSE(reader.is_broken());
    for (const char* text : {"", "{", "{a}", "{\"a\":}", "{\"a\":1}}", "{\"a\":\"x}", "{\"a\"1}",
                             "{\"a\":1,}", "{\"a\":[1}"}) {
        BodyReader broken{text};
        while (broken.next()) {
        }
        EXPECT_TRUE(broken.is_broken()) << text;
    }
}

TEST(Body, strings_go_there_and_back) {
    EXPECT_EQ(json_string("a\"b\\c\n\x01"), "\"a\\\"b\\\\c\\n\\u0001\"");
    EXPECT_EQ(text_of_json_string(R"("\u00f1 \ud83c\udf3e \/ \t")").value(), "ñ \U0001F33E / \t");
    EXPECT_EQ(text_of_json_string(R"("\ud800x")").value(), "\uFFFDx");
    EXPECT_FALSE(text_of_json_string("12").has_value());
    EXPECT_FALSE(text_of_json_string("\"\\").has_value());
    EXPECT_FALSE(text_of_json_string(R"("\q")").has_value());
    EXPECT_FALSE(text_of_json_string(R"("\u12")").has_value());
}

TEST(Body, null_reads_as_absent) {
    EXPECT_FALSE(field_of(R"({"a":null})", "a").has_value());
    EXPECT_EQ(field_of(R"({"a":0})", "a").value(), "0");
}

/// Any JSON object, made and printed by a general JSON library (nlohmann-json), which sorts
/// members.
RC_GTEST_PROP(Body, agrees_with_a_general_json_library, ()) {
    const auto letters =
        rc::gen::container<std::string>(rc::gen::element('a', 'b', 'z', '_', '.', '0'));
    const auto fields = *rc::gen::container<std::map<std::string, std::string>>(
        rc::gen::nonEmpty(letters), rc::gen::string<std::string>());
    nlohmann::json object = nlohmann::json::object();
    for (const auto& [name, value] : fields) {
        if (name.size() <= 64) {
            object[name] = is_utf8(value) ? nlohmann::json(value) : nlohmann::json(value.size());
        }
    }
    const std::string compact = object.dump();
    RC_ASSERT(canonical_body(object.dump(3)).value() == compact);
    RC_ASSERT(is_canonical_body(compact));
    std::size_t count = 0;
    BodyReader reader(compact);
    while (const auto field = reader.next()) {
        const auto& expected = object.at(std::string(field->name));
        RC_ASSERT(nlohmann::json::parse(field->value) == expected);
        if (expected.is_string()) {
            RC_ASSERT(text_of_json_string(field->value).value() == expected.get<std::string>());
            RC_ASSERT(text_of_json_string(json_string(expected.get<std::string>())).value() ==
                      expected.get<std::string>());
        }
        ++count;
    }
    RC_ASSERT(!reader.is_broken());
    RC_ASSERT(count == object.size());
}

RC_GTEST_PROP(Body, any_bytes_are_refused_or_made_canonical_once_for_all, ()) {
    const auto text = *rc::gen::container<std::string>(rc::gen::element(
        '{', '}', '[', ']', '"', ':', ',', 'a', '1', '-', '.', 'e', '\\', 'u', ' ', 'n', '\xC3'));
    const auto once = canonical_body(text);
    if (once) {
        RC_ASSERT(is_canonical_body(*once));
        RC_ASSERT(nlohmann::json::accept(text));
    }
}

}  // namespace
}  // namespace swathbook::notebook
