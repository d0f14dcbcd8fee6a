#include "api/call.hpp"

#include "api/operation.hpp"

namespace swathbook::api {
namespace {

Result<CallOptions> options_in(const Json& body) {
    CallOptions options;
    if (!body.is_object()) {
        return fail(ErrorCode::invalid_input, "",
                    "A request is a JSON object: {\"width\": \"26 ft\", ...}.");
    }
    if (const auto units = body.find("units"); units != body.end()) {
        if (*units != "us" && *units != "metric") {
            return fail(ErrorCode::invalid_input, "units",
                        "\"units\" says how the answer is written: \"us\" or \"metric\". Got " +
                            units->dump() + ".");
        }
        options.units = *units == "us" ? UnitSystem::us : UnitSystem::metric;
    }
    if (const auto working = body.find("working"); working != body.end()) {
        if (!working->is_boolean()) {
            return fail(ErrorCode::invalid_input, "working",
                        "\"working\" is true or false. Got " + working->dump() + ".");
        }
        options.working = working->get<bool>();
    }
    return options;
}

Result<std::string> answer(std::string_view operation, std::string_view request) {
    SWATHBOOK_TRY(found, find_operation(operation));
    SWATHBOOK_TRY(body, parse_json(request));
    SWATHBOOK_TRY(options, options_in(body));
    JsonWriter out;
    SWATHBOOK_CHECK(found->run(body, options, out));
    return out.take();
}

}  // namespace

std::string error_json(const Error& error) {
    JsonWriter out;
    out.open_object();
    out.key("error");
    out.open_object();
    out.key("code");
    out.text(word_of(error.code));
    out.key("field");
    out.text(error.field);
    out.key("detail");
    out.text(error.detail);
    out.close_object();
    out.close_object();
    return out.take();
}

Called call(std::string_view operation, std::string_view request) {
    auto answered = answer(operation, request);
    if (!answered) {
        return {error_json(answered.error()), answered.error().code};
    }
    return {std::move(*answered), std::nullopt};
}

}  // namespace swathbook::api
