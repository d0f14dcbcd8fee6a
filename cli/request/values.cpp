#include "cli/request/values.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "cli/files.hpp"

namespace swathbook::cli {
namespace {

using api::Json;
using api::Shape;

constexpr std::string_view spaces = " \t\r\n";

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(spaces);
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(spaces) - first + 1);
}

bool is_one_of(char character, std::string_view set) {
    return set.find(character) != std::string_view::npos;
}

bool begins_value(std::string_view word) {
    return !word.empty() &&
           (std::isdigit(static_cast<unsigned char>(word[0])) != 0 || is_one_of(word[0], "+-.[{@"));
}

/// Whether a value of this shape is written as a number and a unit, and so may come in pieces.
bool is_amount(Shape shape) {
    return shape == Shape::quantity || shape == Shape::rate;
}

std::string joined(std::span<const std::string> words) {
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() ? "" : " ") + word;
    }
    return text;
}

bool is_bare_number(std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789.+-") == std::string_view::npos;
}

/// "0.405 0.410 0.398 gal/min": the unit of the last value is that of the bare numbers before it.
void spread_last_unit(std::vector<std::string>& values) {
    if (values.size() < 2) {
        return;
    }
    const std::string& last = values.back();
    const std::size_t unit = last.find_first_not_of("0123456789.+- ");
    if (unit == std::string::npos || unit == 0 || !is_bare_number(trimmed(last.substr(0, unit)))) {
        return;
    }
    for (std::size_t i = 0; i + 1 < values.size(); ++i) {
        if (is_bare_number(values[i])) {
            values[i] += " " + last.substr(unit);
        }
    }
}

/// One text for each value of a list.
std::vector<std::string> values_in(Shape shape, std::span<const std::string> words) {
    std::vector<std::string> values;
    for (const std::string& word : words) {
        if (is_amount(shape) && !values.empty() && !begins_value(word)) {
            values.back() += " " + word;
        } else {
            values.push_back(word);
        }
    }
    if (is_amount(shape)) {
        spread_last_unit(values);
    }
    return values;
}

Json number_or_text(const std::string& text) {
    double number = 0.0;
    const char* first = text.data() + (text.starts_with('+') ? 1 : 0);
    const char* last = text.data() + text.size();
    const auto [end, fault] = std::from_chars(first, last, number);
    if (fault == std::errc() && end == last && std::isfinite(number)) {
        return number;
    }
    return text;
}

Result<Json> json_in(const Flag& flag, const std::string& text) {
    auto json = api::parse_json(text);
    if (!json) {
        return fail(json.error().code, flag.name, std::move(json.error().detail));
    }
    return json;
}

Result<Json> text_to_json(const Flag& flag, const api::Type& type, const std::string& text);

const Flag* member_named(const std::vector<Flag>& members, std::string_view name) {
    const auto found = std::find_if(members.begin(), members.end(), [name](const Flag& member) {
        return member.name.substr(2) == name ||
               fmt::format("{}", fmt::join(member.path, ".")) == name;
    });
    return found == members.end() ? nullptr : &*found;
}

/// Adds one "name=value" to the object that is being made.
Result<void> add_pair(Json& object, const Flag& flag, const std::vector<Flag>& members,
                      std::string_view pair) {
    const std::size_t equals = pair.find('=');
    if (equals == std::string_view::npos) {
        return fail(
            ErrorCode::invalid_input, flag.name,
            fmt::format("\"{}\" has no \"=\". Write name=value; name=value, or JSON.", pair));
    }
    const std::string name(trimmed(pair.substr(0, equals)));
    const std::string value(trimmed(pair.substr(equals + 1)));
    const Flag* member = member_named(members, name);
    if (member == nullptr) {
        object[name] = value;  // the operation refuses it and says which fields there are
        return {};
    }
    SWATHBOOK_TRY(json, text_to_json(flag, *member->type, value));
    if (member->is_list && !json.is_array()) {
        json = Json::array({std::move(json)});
    }
    return put(object, *member, std::move(json));
}

/// "name=Product A; rate=1 qt/ac" with the members of the object's type.
Result<Json> fields_in(const Flag& flag, const api::ObjectType& object, std::string_view text) {
    Json made = Json::object();
    const std::vector<Flag> members = flags_of(object);
    while (!trimmed(text).empty()) {
        const std::size_t end = std::min(text.find(';'), text.size());
        if (const std::string_view pair = trimmed(text.substr(0, end)); !pair.empty()) {
            SWATHBOOK_CHECK(add_pair(made, flag, members, pair));
        }
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return made;
}

Result<Json> text_to_json(const Flag& flag, const api::Type& type, const std::string& text) {
    const Shape shape = type.shape();
    if (text.starts_with('{') || (text.starts_with('[') && shape != Shape::text)) {
        return json_in(flag, text);
    }
    if (text.starts_with('@')) {
        auto content = read_file(text.substr(1));
        if (!content) {
            return fail(content.error().code, flag.name, std::move(content.error().detail));
        }
        return shape == Shape::text ? Result<Json>(Json(*content)) : json_in(flag, *content);
    }
    switch (shape) {
        case Shape::number:
        case Shape::integer: return number_or_text(text);
        case Shape::boolean:
            if (text == "true" || text == "yes") {
                return Json(true);
            }
            return text == "false" || text == "no" ? Json(false) : Json(text);
        case Shape::object: return fields_in(flag, *type.as_object(), text);
        default: return Json(text);
    }
}

}  // namespace

Result<Json> value_of(const Flag& flag, std::span<const std::string> words) {
    if (flag.type->shape() == Shape::boolean && words.empty() && !flag.is_list) {
        return Json(true);
    }
    if (!flag.is_list) {
        return text_to_json(flag, *flag.type, joined(words));
    }
    Json list = Json::array();
    for (const std::string& text : values_in(flag.type->shape(), words)) {
        SWATHBOOK_TRY(value, text_to_json(flag, *flag.type, text));
        if (value.is_array()) {
            list.insert(list.end(), value.begin(), value.end());
        } else {
            list.push_back(std::move(value));
        }
    }
    return list;
}

Result<void> put(Json& request, const Flag& flag, Json value) {
    Json* here = &request;
    for (std::size_t i = 0; i + 1 < flag.path.size(); ++i) {
        here = &(*here)[flag.path[i]];
        if (here->is_null()) {
            *here = Json::object();
        }
        if (!here->is_object()) {
            return fail(
                ErrorCode::inconsistent, flag.name,
                fmt::format("\"{}\" was already given as something without parts.", flag.path[i]));
        }
    }
    (*here)[flag.path.back()] = std::move(value);
    return {};
}

}  // namespace swathbook::cli
