#include "api/operation.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace swathbook::api {

#define OPERATION(name) Operation name##_operation();
#include "api/operations/list.def"
#undef OPERATION

namespace {

constexpr std::array<std::string_view, 2> option_names{"units", "working"};

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

void write_answer(const ObjectType& type, const void* answer, const Notes& notes, JsonWriter& out) {
    out.open_object();
    type.write_members(out, answer, WriteStyle{notes.units(), nullptr});
    out.key("findings");
    out.open_list();
    for (const Finding& finding : notes.findings()) {
        out.open_object();
        out.key("code");
        out.text(finding.code);
        out.key("severity");
        out.text(word_of(finding.severity));
        out.key("text");
        out.text(finding.text);
        if (!finding.source.empty()) {
            out.key("source");
            out.text(finding.source);
        }
        out.close_object();
    }
    out.close_list();
    if (notes.wants_working()) {
        out.key("working");
        out.open_list();
        for (const Step& step : notes.steps()) {
            out.open_object();
            out.key("text");
            out.text(step.text);
            out.key("expression");
            out.text(step.expression);
            out.key("result");
            out.text(step.result);
            if (!step.source.empty()) {
                out.key("source");
                out.text(step.source);
            }
            out.close_object();
        }
        out.close_list();
    }
    out.close_object();
}

}  // namespace detail
}  // namespace swathbook::api
