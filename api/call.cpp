#include "api/call.hpp"

#include <utility>

#include "api/language/languages.hpp"
#include "api/operation.hpp"

namespace swathbook::api {
namespace {

/// Read before anything else of a request, so that its faults too are told in its language.
Result<const language::Catalogue*> language_in(const Json& body) {
    if (!body.is_object()) {
        return fail(ErrorCode::invalid_input, "",
                    "A request is a JSON object: {\"width\": \"26 ft\", ...}.");
    }
    const auto asked = body.find("language");
    if (asked == body.end()) {
        return nullptr;
    }
    if (*asked != english && *asked != spanish) {
        return fail(ErrorCode::invalid_input, "language",
                    "\"language\" says what the answer's sentences are written in: \"en\" or "
                    "\"es\". Got " +
                        json_text(*asked) + ".");
    }
    return catalogue_of(asked->get_ref<const std::string&>());
}

Result<CallOptions> options_in(const Json& body) {
    CallOptions options;
    if (const auto units = body.find("units"); units != body.end()) {
        if (*units != "us" && *units != "metric") {
            return fail(ErrorCode::invalid_input, "units",
                        "\"units\" says how the answer is written: \"us\" or \"metric\". Got " +
                            json_text(*units) + ".");
        }
        options.units = *units == "us" ? UnitSystem::us : UnitSystem::metric;
    }
    if (const auto working = body.find("working"); working != body.end()) {
        if (!working->is_boolean()) {
            return fail(ErrorCode::invalid_input, "working",
                        "\"working\" is true or false. Got " + json_text(*working) + ".");
        }
        options.working = working->get<bool>();
    }
    return options;
}

/// @param catalogue set as soon as the language of the request is known
Result<std::string> answer(std::string_view operation, std::string_view request,
                           const language::Catalogue*& catalogue) {
    SWATHBOOK_TRY(found, find_operation(operation));
    SWATHBOOK_TRY(body, parse_json(request));
    SWATHBOOK_TRY(language, language_in(body));
    catalogue = language;
    SWATHBOOK_TRY(options, options_in(body));
    options.catalogue = catalogue;
    JsonWriter out;
    SWATHBOOK_CHECK(found->run(body, options, out));
    return out.take();
}

}  // namespace

Called call(std::string_view operation, std::string_view request) {
    const language::Catalogue* catalogue = nullptr;
    auto answered = answer(operation, request, catalogue);
    if (!answered) {
        Error error = std::move(answered).error();
        if (catalogue != nullptr) {
            error.detail = catalogue->say(error.detail).text;
        }
        return {error_json(error), error.code};
    }
    return {std::move(*answered), std::nullopt};
}

}  // namespace swathbook::api
