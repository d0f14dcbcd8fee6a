#include "api/each_operation.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace swathbook::api {

namespace {

constexpr std::array<std::string_view, 3> option_names{"units", "working", "language"};

}  // namespace

std::span<const Operation> operations() {
    static const std::vector<Operation> all{
#define OPERATION(name) name##_operation(),
#include "api/operations/list.def"
#undef OPERATION
    };
    return all;
}

Result<const Operation*> find_operation(std::string_view name) {
    const auto all = operations();
    const auto found =
        std::find_if(all.begin(), all.end(), [name](const Operation& o) { return o.name == name; });
    if (found != all.end()) {
        return &*found;
    }
    std::vector<std::string_view> names;
    for (const Operation& known : all) {
        names.push_back(known.name);
    }
    return fail(ErrorCode::not_found, "",
                fmt::format("There is no operation \"{}\". {}", name, suggest(name, names)));
}

namespace detail {

Result<void> read_request(const ObjectType& type, const Json& body, void* into) {
    return type.read_members(body, into, Path{}, option_names);
}

namespace {

/// Sentences in the language wanted; the core's own bytes where that is English.
struct Speaker {
    JsonWriter& out;
    const language::Catalogue* catalogue;

    void operator()(std::string_view key, const std::string& sentence) const {
        out.key(key);
        out.text(catalogue == nullptr ? sentence : catalogue->say(sentence).text);
    }
};

}  // namespace

void write_answer(const ObjectType& type, const void* answer, const Notes& notes,
                  const language::Catalogue* catalogue, JsonWriter& out) {
    const Speaker say{out, catalogue};
    out.open_object();
    type.write_members(out, answer, WriteStyle{notes.units(), nullptr, catalogue});
    out.key("findings");
    out.open_list();
    for (const Finding& finding : notes.findings()) {
        out.open_object();
        out.key("code");
        out.text(finding.code);
        out.key("severity");
        out.text(word_of(finding.severity));
        say("text", finding.text);
        if (!finding.source.empty()) {
            say("source", finding.source);
        }
        out.close_object();
    }
    out.close_list();
    if (notes.wants_working()) {
        out.key("working");
        out.open_list();
        for (const Step& step : notes.steps()) {
            out.open_object();
            say("text", step.text);
            say("expression", step.expression);
            say("result", step.result);
            if (!step.source.empty()) {
                say("source", step.source);
            }
            out.close_object();
        }
        out.close_list();
    }
    out.close_object();
}

}  // namespace detail
}  // namespace swathbook::api
