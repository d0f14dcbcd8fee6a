// Everything that the operations say to every request of tests/cases, held against the Spanish
// catalogue: a sentence, a step, a refusal that would come through in English is a failure.

#include <iostream>
#include <set>
#include <string>

#include <gtest/gtest.h>

#include "api/call.hpp"
#include "api/language/languages.hpp"
#include "api/operation.hpp"
#include "tests/case_runner/case_file.hpp"

namespace swathbook::tests {
namespace {

using api::Json;

/// Gathers the sentences of one answer: what the core says, not what people typed.
class Sentences {
public:
    void of(const api::Operation& operation, const Json& answer) {
        if (const auto error = answer.find("error"); error != answer.end()) {
            take((*error)["detail"]);
            return;
        }
        for (const Json& finding : answer["findings"]) {
            take(finding["text"]);
        }
        for (const Json& step : answer.value("working", Json::array())) {
            for (const std::string_view part : {"text", "expression", "result"}) {
                take(step[part]);
            }
        }
        of_object(operation.answer(), answer);
    }
    [[nodiscard]] const std::set<std::string>& all() const { return all_; }

private:
    void take(const Json& text) {
        if (text.is_string()) {
            all_.insert(text.get<std::string>());
        } else if (text.is_array()) {
            for (const Json& element : text) {
                take(element);
            }
        }
    }

    void of_object(const api::ObjectType& type, const Json& object) {
        for (const api::Field& field : type.fields()) {
            const auto found = object.find(field.name);
            if (found == object.end()) {
                continue;
            }
            if (field.is_spoken && !field.name.ends_with("source")) {  // titles stay as printed
                take(*found);
            }
            const api::Type* inner = &field.type();
            while (inner->inner() != nullptr) {
                inner = inner->inner();
            }
            if (inner->as_object() == nullptr) {
                continue;
            }
            if (found->is_array()) {
                for (const Json& element : *found) {
                    of_object(*inner->as_object(), element);
                }
            } else {
                of_object(*inner->as_object(), *found);
            }
        }
    }

    std::set<std::string> all_;
};

std::string with(const std::string& request, std::string_view language) {
    auto body = api::parse_json(request);
    if (!body || !body->is_object()) {
        return request;
    }
    (*body)["working"] = true;
    (*body)["language"] = language;
    return body->dump();
}

const std::vector<Case>& all_cases() {
    static const std::vector<Case> cases = [] {
        auto read = read_case_folder("tests/cases");
        EXPECT_TRUE(read) << (read ? "" : read.error().detail);
        return read ? std::move(*read) : std::vector<Case>();
    }();
    return cases;
}

TEST(Spanish, every_sentence_of_every_case_is_in_the_catalogue) {
    const language::Catalogue* catalogue = api::catalogue_of(api::spanish);
    ASSERT_NE(catalogue, nullptr);
    Sentences sentences;
    for (const Case& each : all_cases()) {
        if (each.operation == "practice") {
            continue;  // it says both languages by itself
        }
        const auto operation = api::find_operation(each.operation);
        const auto answer =
            api::parse_json(api::call(each.operation, with(each.request, api::english)).json);
        ASSERT_TRUE(operation && answer) << each.name;
        sentences.of(**operation, *answer);
    }
    EXPECT_GT(sentences.all().size(), 500U);
    std::string missing;
    for (const std::string& sentence : sentences.all()) {
        if (!catalogue->say(sentence).is_complete) {
            missing += "  " + sentence + "\n";
        }
    }
    EXPECT_EQ(missing, "") << "no Spanish in data/language/es.tsv for these";
}

/// Numbers, units, keys and codes of an answer are the same in every language.
void expect_same_but_for_sentences(const Json& english, const Json& spanish,
                                   const std::string& where) {
    ASSERT_EQ(english.type(), spanish.type()) << where;
    if (english.is_object()) {
        ASSERT_EQ(english.size(), spanish.size()) << where;
        for (const auto& [key, value] : english.items()) {
            ASSERT_TRUE(spanish.contains(key)) << where << "." << key;
            expect_same_but_for_sentences(value, spanish[key], where + "." + key);
        }
    } else if (english.is_array()) {
        ASSERT_EQ(english.size(), spanish.size()) << where;
        for (std::size_t i = 0; i < english.size(); ++i) {
            expect_same_but_for_sentences(english[i], spanish[i], where);
        }
    } else if (!english.is_string()) {
        EXPECT_EQ(english, spanish) << where;
    } else if (where.ends_with(".unit") || where.ends_with(".code") || where.ends_with(".field") ||
               where.ends_with(".severity") || where.ends_with(".name")) {
        EXPECT_EQ(english, spanish) << where;
    }
}

TEST(Spanish, answers_differ_in_their_sentences_only) {
    for (const Case& each : all_cases()) {
        if (each.operation == "practice") {
            continue;
        }
        const auto in_english =
            api::parse_json(api::call(each.operation, with(each.request, api::english)).json);
        const auto in_spanish =
            api::parse_json(api::call(each.operation, with(each.request, api::spanish)).json);
        ASSERT_TRUE(in_english && in_spanish) << each.name;
        expect_same_but_for_sentences(*in_english, *in_spanish, each.name);
    }
}

TEST(Spanish, english_is_what_nobody_asked_for_says) {
    for (const Case& each : all_cases()) {
        auto body = api::parse_json(each.request);
        if (!body || !body->is_object() || each.operation == "practice") {
            continue;
        }
        const std::string plain = api::call(each.operation, each.request).json;
        (*body)["language"] = api::english;
        EXPECT_EQ(plain, api::call(each.operation, body->dump()).json) << each.name;
    }
}

TEST(Spanish, a_refusal_is_said_in_the_language_of_the_request) {
    const std::string refused =
        api::call("calibrate", R"({"language": "es", "sprayer": "boom", "width": 26})").json;
    EXPECT_NE(refused.find("no tiene unidad"), std::string::npos) << refused;
    const std::string units = api::call("calibrate", R"({"language": "es", "units": "si"})").json;
    EXPECT_NE(units.find("Llegó"), std::string::npos) << units;
    const std::string unknown = api::call("calibrate", R"({"language": "fr"})").json;
    EXPECT_NE(unknown.find("\"language\""), std::string::npos) << unknown;
    EXPECT_NE(unknown.find("invalid_input"), std::string::npos) << unknown;
}

TEST(Spanish, a_catalogue_that_cannot_be_read_leaves_the_one_before) {
    EXPECT_FALSE(api::load_language("no tab in this"));
    EXPECT_EQ(api::in_language(api::catalogue_of(api::spanish), "The unit is missing."),
              "Falta la unidad.");
}

}  // namespace
}  // namespace swathbook::tests
