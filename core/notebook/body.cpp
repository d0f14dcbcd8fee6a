#include "core/notebook/body.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/sort.hpp"
#include "core/notebook/detail/json_scanner.hpp"

namespace swathbook::notebook {

namespace {

using detail::JsonScanner;

bool is_field_name(std::string_view name) {
    return !name.empty() && name.size() <= 64 &&
           std::all_of(name.begin(), name.end(), [](char character) {
               return (character >= 'a' && character <= 'z') ||
                      (character >= '0' && character <= '9') || character == '_' ||
                      character == '.';
           });
}

tl::unexpected<Error> refuse(std::string_view detail) {
    return fail(ErrorCode::invalid_input, "body", detail);
}

tl::unexpected<Error> refuse(const JsonScanner& scanner, std::string_view wanted) {
    return refuse(fmt::format("The body is not a JSON object: at byte {} {} was expected.",
                              scanner.place() + 1, wanted));
}

struct OwnField {
    std::string name;  // with its quotes
    std::string value;
};

Result<OwnField> read_field(JsonScanner& scanner) {
    OwnField field;
    scanner.skip_space();
    if (!scanner.string(field.name)) {
        return refuse(scanner, scanner.fault());
    }
    const auto name = std::string_view(field.name).substr(1, field.name.size() - 2);
    if (!is_field_name(name)) {
        return refuse(
            fmt::format("\"{}\" is not a field name: 1 to 64 characters of a-z, 0-9, _ "
                        "and . are allowed.",
                        name.substr(0, 80)));
    }
    scanner.skip_space();
    if (!scanner.take(':')) {
        return refuse(scanner, "a colon after the name");
    }
    if (!scanner.value(field.value, deepest_level)) {
        return refuse(scanner, scanner.fault());
    }
    scanner.skip_space();
    return field;
}

Result<std::string> join(std::vector<OwnField> fields) {
    sort_list(fields, [](const OwnField& a, const OwnField& b) { return a.name < b.name; });
    std::string body = "{";
    for (std::size_t i = 0; i < fields.size(); ++i) {
        if (i > 0 && fields[i].name == fields[i - 1].name) {
            return refuse(fmt::format("The field {} comes twice. Give it once.", fields[i].name));
        }
        body += i > 0 ? "," : "";
        body += fields[i].name + ":" + fields[i].value;
    }
    body += "}";
    if (body.size() > largest_body) {
        return refuse(
            fmt::format("The body has {} bytes; the limit is {}. Keep bulk data as an "
                        "attachment.",
                        body.size(), largest_body));
    }
    return body;
}

}  // namespace

bool is_utf8(std::string_view text) {
    std::size_t i = 0;
    const auto at = [&](std::size_t place) {
        return place < text.size() ? static_cast<unsigned char>(text[place]) : 0U;
    };
    const auto is_tail = [&](std::size_t place) { return (at(place) & 0xC0U) == 0x80U; };
    while (i < text.size()) {
        const unsigned lead = at(i);
        if (lead < 0x80) {
            i += 1;
        } else if (lead >= 0xC2 && lead <= 0xDF && is_tail(i + 1)) {
            i += 2;
        } else if (lead >= 0xE0 && lead <= 0xEF && is_tail(i + 1) && is_tail(i + 2) &&
                   !(lead == 0xE0 && at(i + 1) < 0xA0) && !(lead == 0xED && at(i + 1) > 0x9F)) {
            i += 3;
        } else if (lead >= 0xF0 && lead <= 0xF4 && is_tail(i + 1) && is_tail(i + 2) &&
                   is_tail(i + 3) && !(lead == 0xF0 && at(i + 1) < 0x90) &&
                   !(lead == 0xF4 && at(i + 1) > 0x8F)) {
            i += 4;
        } else {
            return false;
        }
    }
    return true;
}

Result<std::string> canonical_body(std::string_view json) {
    if (json.size() > 4 * largest_body) {
        return refuse(
            fmt::format("The body has {} bytes; the limit is {}.", json.size(), largest_body));
    }
    if (!is_utf8(json)) {
        return refuse("The body is not valid UTF-8. Save the text as UTF-8.");
    }
    JsonScanner scanner(json);
    scanner.skip_space();
    if (!scanner.take('{')) {
        return refuse(scanner, "{");
    }
    scanner.skip_space();
    std::vector<OwnField> fields;
    while (!scanner.take('}')) {
        if (!fields.empty() && !scanner.take(',')) {
            return refuse(scanner, "a comma or }");
        }
        SWATHBOOK_TRY(field, read_field(scanner));
        fields.push_back(std::move(field));
        if (fields.size() > most_fields) {
            return refuse(fmt::format("The body has more than {} fields.", most_fields));
        }
    }
    scanner.skip_space();
    if (!scanner.at_end()) {
        return refuse(scanner, "the end of the text");
    }
    return join(std::move(fields));
}

Result<std::string> canonical_value(std::string_view json, std::string_view field) {
    JsonScanner scanner(json);
    std::string value;
    const bool is_read = is_utf8(json) && scanner.value(value, deepest_level);
    scanner.skip_space();
    if (!is_read || !scanner.at_end()) {
        return fail(
            ErrorCode::invalid_input, field,
            fmt::format("The value of {} is not JSON: stopped at byte {} ({} was expected).", field,
                        scanner.place() + 1, is_read ? "the end of the text" : scanner.fault()));
    }
    return value;
}

bool is_canonical_body(std::string_view body) {
    const auto canonical = canonical_body(body);
    return canonical && *canonical == body;
}

BodyReader::BodyReader(std::string_view body) : body_(body) {
    is_broken_ = body.size() < 2 || body.front() != '{' || body.back() != '}';
    is_finished_ = is_broken_ || body.size() == 2;
}

std::optional<BodyField> BodyReader::break_off() {
    is_broken_ = true;
    is_finished_ = true;
    return std::nullopt;
}

std::size_t BodyReader::end_of_value(std::size_t begin) const {
    int level = 0;
    bool is_in_string = false;
    for (std::size_t i = begin; i < body_.size(); ++i) {
        const char character = body_[i];
        if (is_in_string) {
            if (character == '\\') {
                ++i;
            } else if (character == '"') {
                is_in_string = false;
            }
        } else if (character == '"') {
            is_in_string = true;
        } else if (character == '{' || character == '[') {
            ++level;
        } else if (level == 0 && (character == ',' || character == '}')) {
            return i;
        } else if (character == '}' || character == ']') {
            --level;
        }
    }
    return std::string_view::npos;
}

std::optional<BodyField> BodyReader::next() {
    if (is_finished_) {
        return std::nullopt;
    }
    if (place_ >= body_.size() || body_[place_] != '"') {
        return break_off();
    }
    const std::size_t name_end = body_.find('"', place_ + 1);
    if (name_end == std::string_view::npos || name_end + 2 >= body_.size() ||
        body_[name_end + 1] != ':') {
        return break_off();
    }
    const std::size_t value_end = end_of_value(name_end + 2);
    if (value_end == std::string_view::npos || value_end == name_end + 2) {
        return break_off();
    }
    const BodyField field{body_.substr(place_ + 1, name_end - place_ - 1),
                          body_.substr(name_end + 2, value_end - name_end - 2)};
    place_ = value_end + 1;
    if (body_[value_end] == '}') {
        if (place_ != body_.size()) {
            return break_off();
        }
        is_finished_ = true;
    }
    return field;
}

std::optional<std::string_view> field_of(std::string_view body, std::string_view name) {
    BodyReader reader(body);
    while (const auto field = reader.next()) {
        if (field->name == name) {
            return field->value == "null" ? std::nullopt : std::optional(field->value);
        }
    }
    return std::nullopt;
}

Result<std::string> make_body(const std::vector<std::pair<std::string, std::string>>& fields) {
    std::vector<OwnField> own;
    own.reserve(fields.size());
    for (const auto& [name, json] : fields) {
        if (!is_field_name(name)) {
            return fail(ErrorCode::invalid_input, name.substr(0, 80),
                        fmt::format("\"{}\" is not a field name: 1 to 64 characters of a-z, 0-9, "
                                    "_ and . are allowed.",
                                    name.substr(0, 80)));
        }
        SWATHBOOK_TRY(value, canonical_value(json, name));
        own.push_back(OwnField{"\"" + name + "\"", std::move(value)});
    }
    return join(std::move(own));
}

}  // namespace swathbook::notebook
