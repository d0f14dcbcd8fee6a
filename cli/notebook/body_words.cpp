#include "cli/notebook/body_words.hpp"

#include <fmt/format.h>

#include "cli/files.hpp"

namespace swathbook::cli {
namespace {

using api::Json;

Result<Json> start_from(const std::string& text) {
    if (text.empty()) {
        return Json(Json::object());
    }
    if (text.starts_with('@')) {
        SWATHBOOK_TRY(content, read_file(text.substr(1)));
        return api::parse_json(content);
    }
    return api::parse_json(text);
}

/// Text that is no text but a number, a list, ...; a bare word is text.
Json json_or_text(const std::string& value) {
    const auto parsed = api::parse_json(value);
    return parsed && !parsed->is_string() ? *parsed : Json(value);
}

}  // namespace

Result<std::string> body_from(const std::string& json, std::span<const std::string> words) {
    SWATHBOOK_TRY(body, start_from(json));
    if (!body.is_object()) {
        return fail(ErrorCode::invalid_input, "body",
                    "A body is a JSON object: {\"name\": \"Boom rig\"}.");
    }
    for (const std::string& word : words) {
        const std::size_t equals = word.find('=');
        if (equals == std::string::npos || equals == 0) {
            return fail(ErrorCode::invalid_input, word,
                        fmt::format("\"{}\" is not name=value, like name=\"Boom rig\".", word));
        }
        body[word.substr(0, equals)] = json_or_text(word.substr(equals + 1));
    }
    return body.dump();
}

}  // namespace swathbook::cli
