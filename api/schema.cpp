#include "api/schema.hpp"

#include <fmt/format.h>

namespace swathbook::api {
namespace {

Json options_schema() {
    return {{"units",
             {{"enum", Json::array({"us", "metric"})},
              {"description", "Units the answer is written in; us when not said."}}},
            {"working",
             {{"type", "boolean"},
              {"description", "true: the answer carries every step of its working."}}},
            {"language",
             {{"enum", Json::array({"en", "es"})},
              {"description", "Language of the sentences in the answer; en when not said."}}}};
}

Json remarks_schema() {
    const Json text = {{"type", "string"}};
    return {{"findings",
             {{"type", "array"},
              {"description", "Remarks on the answer: advice, limits hit, shortcuts misused."},
              {"items",
               {{"type", "object"},
                {"properties",
                 {{"code", text},
                  {"severity", {{"enum", Json::array({"note", "advice", "warning", "stop"})}}},
                  {"text", text},
                  {"source", text}}}}}}},
            {"working",
             {{"type", "array"},
              {"description", "The steps, when the request asks for them."},
              {"items",
               {{"type", "object"},
                {"properties",
                 {{"text", text}, {"expression", text}, {"result", text}, {"source", text}}}}}}}};
}

void add_properties(Json& definitions, const ObjectType& type, const Json& properties) {
    Json& own = definitions[std::string(type.name())]["properties"];
    for (const auto& [name, schema] : properties.items()) {
        own[name] = schema;
    }
}

}  // namespace

std::string schema_of(const Operation& operation) {
    Json definitions = Json::object();
    const Json request = operation.request().schema(definitions);
    const Json answer = operation.answer().schema(definitions);
    add_properties(definitions, operation.request(), options_schema());
    add_properties(definitions, operation.answer(), remarks_schema());
    const Json schema = {{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                         {"title", operation.name},
                         {"description", operation.summary},
                         {"type", "object"},
                         {"properties", {{"request", request}, {"answer", answer}}},
                         {"$defs", std::move(definitions)}};
    return schema.dump(2);
}

std::string list_of_operations() {
    Json list = Json::array();
    for (const Operation& operation : operations()) {
        list.push_back({{"name", operation.name},
                        {"summary", operation.summary},
                        {"stories", operation.stories}});
    }
    return list.dump(2) + "\n";
}

std::string typescript_of_all() {
    Json declarations = Json::object();
    std::string map = "export interface Operations {\n";
    for (const Operation& operation : operations()) {
        map += fmt::format(
            "  /** {} */\n  \"{}\": {{ request: {} & CallOptions; answer: {} & Remarks }};\n",
            operation.summary, operation.name, operation.request().typescript(declarations),
            operation.answer().typescript(declarations));
    }
    std::string text =
        "// Made from the descriptions of the operations; do not edit.\n"
        "export interface CallOptions { units?: \"us\" | \"metric\"; working?: boolean; language?: "
        "\"en\" | \"es\" }\n"
        "export interface Finding { code: string; severity: \"note\" | \"advice\" | \"warning\" | "
        "\"stop\"; text: string; "
        "source?: string }\n"
        "export interface Step { text: string; expression: string; result: string; source?: string "
        "}\n"
        "export interface Remarks { findings: Array<Finding>; working?: Array<Step> }\n\n";
    for (const auto& [name, declaration] : declarations.items()) {
        text += declaration.get<std::string>() + "\n";
    }
    return text + map + "}\n";
}

}  // namespace swathbook::api
