#include "cli/request/flags.hpp"

#include <algorithm>
#include <cctype>

#include <fmt/format.h>

namespace swathbook::cli {
namespace {

using api::Shape;

constexpr std::size_t deepest = 3;  // --a.b.c; beyond, JSON is clearer than flags

std::string dashed(std::string_view name) {
    std::string text(name);
    std::replace(text.begin(), text.end(), '_', '-');
    return text;
}

std::string flag_name(const std::vector<std::string>& path) {
    std::string name = "--";
    for (std::size_t i = 0; i < path.size(); ++i) {
        name += (i == 0 ? "" : ".") + dashed(path[i]);
    }
    return name;
}

struct ValueType {
    const api::Type* type;
    bool is_list;
};

/// Looks through optionals, and through one list.
ValueType value_type_of(const api::Type& member) {
    ValueType value{&member, false};
    while (value.type->shape() == Shape::maybe ||
           (value.type->shape() == Shape::list && !value.is_list)) {
        value.is_list = value.is_list || value.type->shape() == Shape::list;
        value.type = value.type->inner();
    }
    return value;
}

struct Parent {
    std::vector<std::string> path;
    bool is_required;
};

void add_flags(std::vector<Flag>& flags, const api::ObjectType& object, const Parent& parent) {
    for (const api::Field& field : object.fields()) {
        const ValueType value = value_type_of(field.type());
        Flag flag;
        flag.path = parent.path;
        flag.path.emplace_back(field.name);
        flag.name = flag_name(flag.path);
        flag.type = value.type;
        flag.is_list = value.is_list;
        flag.is_required = field.is_required && parent.is_required;
        flag.doc = field.doc;
        flag.sample = field.sample;
        flags.push_back(flag);
        if (value.type->as_object() != nullptr && !value.is_list && flag.path.size() < deepest) {
            add_flags(flags, *value.type->as_object(), Parent{flag.path, flag.is_required});
        }
    }
}

std::string upper(std::string_view text) {
    std::string made(text);
    std::transform(made.begin(), made.end(), made.begin(),
                   [](unsigned char letter) { return static_cast<char>(std::toupper(letter)); });
    return made;
}

std::string joined_choices(const api::Type& type) {
    std::string words;
    for (const auto& [word, doc] : type.choices()) {
        words += (words.empty() ? "" : "|") + std::string(word);
    }
    return words;
}

}  // namespace

std::vector<Flag> flags_of(const api::ObjectType& request) {
    std::vector<Flag> flags;
    add_flags(flags, request, Parent{{}, true});
    return flags;
}

std::string placeholder_of(const Flag& flag) {
    switch (flag.type->shape()) {
        case Shape::quantity: return upper(flag.type->kind()->word);
        case Shape::rate: return "RATE";
        case Shape::number: return "NUMBER";
        case Shape::integer: return "COUNT";
        case Shape::choice: return joined_choices(*flag.type);
        case Shape::boolean: return "true|false";
        case Shape::text: return "TEXT";
        case Shape::geometry: return "@FILE";
        case Shape::object: return "FIELDS";
        case Shape::list:
        case Shape::maybe: return "JSON";
    }
    return "VALUE";
}

std::string help_of(const Flag& flag) {
    std::string text = flag.doc;
    text += text.empty() || text.ends_with('.') || text.ends_with('?') ? "" : ".";
    const Shape shape = flag.type->shape();
    if (shape == Shape::quantity || shape == Shape::rate) {
        text += flag.sample.empty() ? fmt::format(" Like {}.", flag.type->example())
                                    : fmt::format(" Like \"{}\".", flag.sample);
    }
    if (shape == Shape::object) {
        text += flag.is_list
                    ? " Each as 'name=value; name=value' or JSON; @FILE reads it from a file."
                    : " Give its parts below, or all as 'name=value; name=value' or JSON.";
    }
    if (flag.is_required) {
        text += " Required.";
    }
    if (shape == Shape::choice) {
        for (const auto& [word, doc] : flag.type->choices()) {
            text += doc.empty() ? "" : fmt::format("\n{}: {}", word, doc);
        }
    }
    return text;
}

}  // namespace swathbook::cli
