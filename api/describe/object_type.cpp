#include <algorithm>
#include <array>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "api/describe/type.hpp"
#include "core/base/assert.hpp"
#include "core/quantity/parse.hpp"

namespace swathbook::api {
namespace {

std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) {
        row[j] = j;
    }
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const std::size_t changed = diagonal + (a[i - 1] == b[j - 1] ? 0U : 1U);
            diagonal = row[j];
            row[j] = std::min({row[j] + 1, row[j - 1] + 1, changed});
        }
    }
    return row[b.size()];
}

const Kind* quantity_kind_of(const Type& type) {
    const Type* current = &type;
    while (current->inner() != nullptr) {
        current = current->inner();
    }
    return current->kind() != nullptr ? &current->kind()->kind : nullptr;
}

}  // namespace

std::string Path::text() const {
    if (parent == nullptr) {
        return std::string(name);
    }
    const std::string text = parent->text();
    if (name.empty()) {
        return text + fmt::format("[{}]", index);
    }
    return text.empty() ? std::string(name) : text + "." + std::string(name);
}

std::string label_from_name(std::string_view name) {
    std::string label(name);
    std::replace(label.begin(), label.end(), '_', ' ');
    if (!label.empty() && label[0] >= 'a' && label[0] <= 'z') {
        label[0] = static_cast<char>(label[0] - 'a' + 'A');
    }
    return label;
}

std::string Field::label() const {
    return short_label.empty() ? label_from_name(name) : std::string(short_label);
}

Display display_of(Kind kind, std::string_view us, std::string_view metric) {
    const KindInfo& info = info_of(kind);
    const auto resolve = [kind](std::string_view text) {
        // Temperatures have a zero point; one reading at 0 and one at 1 give both numbers of any
        // unit.
        const auto zero = parse_amount(0.0, text, kind);
        const auto one = parse_amount(1.0, text, kind);
        SWATHBOOK_ASSERT(zero && one, "the units of a description are ones the parser reads");
        return DisplayUnit{text, one->si - zero->si, zero->si};
    };
    return {resolve(us.empty() ? info.us_unit : us),
            resolve(metric.empty() ? info.metric_unit : metric)};
}

namespace {

/// As the field asks to be shown; empty where it does not ask.
Display display_of_field(const Field& field) {
    if (field.us_unit.empty()) {
        return {};
    }
    const Kind* kind = quantity_kind_of(field.type());
    SWATHBOOK_ASSERT(kind != nullptr, "shown_in is for fields that hold quantities");
    return display_of(*kind, field.us_unit, field.metric_unit);
}

}  // namespace

std::string suggest(std::string_view wrong, std::span<const std::string_view> names) {
    const auto nearest = std::min_element(names.begin(), names.end(), [wrong](auto a, auto b) {
        return edit_distance(wrong, a) < edit_distance(wrong, b);
    });
    if (nearest != names.end() && edit_distance(wrong, *nearest) <= 1 + nearest->size() / 3) {
        return fmt::format("Did you mean \"{}\"?", *nearest);
    }
    return fmt::format("Known: {}.", fmt::join(names, ", "));
}

ObjectType::ObjectType(std::string_view name, Fields fields) : name_(name), fields_(fields) {
    displays_.reserve(fields_.size());
    for (const Field& field : fields_) {
        displays_.push_back(display_of_field(field));
    }
}

Result<void> ObjectType::read(const Json& json, void* into, const Path& path) const {
    return read_members(json, into, path, {});
}

Result<void> ObjectType::read_members(const Json& json, void* into, const Path& path,
                                      std::span<const std::string_view> also_allowed) const {
    if (!json.is_object()) {
        return fail(ErrorCode::invalid_input, path.text(),
                    fmt::format("Expected an object with named values, got {}.", json.type_name()));
    }
    std::vector<bool> seen(fields_.size(), false);
    for (const auto& [key, value] : json.items()) {
        const auto found =
            std::find_if(fields_.begin(), fields_.end(),
                         [&wanted = key](const Field& field) { return field.name == wanted; });
        if (found == fields_.end()) {
            if (std::find(also_allowed.begin(), also_allowed.end(), key) != also_allowed.end()) {
                continue;
            }
            std::vector<std::string_view> names;
            std::transform(fields_.begin(), fields_.end(), std::back_inserter(names),
                           [](const Field& field) { return field.name; });
            return fail(ErrorCode::invalid_input, path.member(key).text(),
                        fmt::format("There is no field \"{}\" here. {}", key, suggest(key, names)));
        }
        if (value.is_null()) {
            continue;
        }
        seen[static_cast<std::size_t>(found - fields_.begin())] = true;
        SWATHBOOK_CHECK(found->type().read(value, found->member(into), path.member(found->name)));
    }
    for (std::size_t i = 0; i < fields_.size(); ++i) {
        if (fields_[i].is_required && !seen[i]) {
            return fail(ErrorCode::invalid_input, path.member(fields_[i].name).text(),
                        fmt::format("\"{}\" is missing: {} Write it like {}.", fields_[i].name,
                                    fields_[i].doc, fields_[i].type().example()));
        }
    }
    return {};
}

void ObjectType::write(JsonWriter& out, const void* from, const WriteStyle& style) const {
    out.open_object();
    write_members(out, from, style);
    out.close_object();
}

void ObjectType::write_members(JsonWriter& out, const void* from, const WriteStyle& style) const {
    for (std::size_t i = 0; i < fields_.size(); ++i) {
        const Field& field = fields_[i];
        // Members are reached through one accessor for reading and writing; writing never changes
        // them.
        const void* member =
            field.member(const_cast<void*>(from));  // NOLINT(cppcoreguidelines-pro-type-const-cast)
        if (!field.type().is_present(member)) {
            continue;
        }
        out.key(field.name);
        const bool own_units = !field.us_unit.empty();
        field.type().write(out, member,
                           WriteStyle{style.units, own_units ? &displays_[i] : nullptr,
                                      style.catalogue, field.is_spoken});
    }
}

Json ObjectType::schema(Json& definitions) const {
    const std::string key(name_);
    if (!definitions.contains(key)) {
        definitions[key] = Json::object();  // in place before the members, so that a struct may
                                            // hold itself in a list
        Json properties = Json::object();
        Json required = Json::array();
        for (const Field& field : fields_) {
            Json property = field.type().schema(definitions);
            property["title"] = field.label();
            property["description"] = field.doc;
            properties[std::string(field.name)] = std::move(property);
            if (field.is_required) {
                required.push_back(field.name);
            }
        }
        Json made = {{"type", "object"},
                     {"properties", std::move(properties)},
                     {"additionalProperties", false}};
        if (!required.empty()) {
            made["required"] = std::move(required);
        }
        definitions[key] = std::move(made);
    }
    return {{"$ref", "#/$defs/" + key}};
}

std::string ObjectType::typescript(Json& declarations) const {
    const std::string key(name_);
    if (!declarations.contains(key)) {
        declarations[key] = "";
        std::string text = fmt::format("export interface {} {{\n", name_);
        for (const Field& field : fields_) {
            text +=
                fmt::format("  /** {} */\n  {}{}: {};\n", field.doc, field.name,
                            field.is_required ? "" : "?", field.type().typescript(declarations));
        }
        declarations[key] = text + "}\n";
    }
    return key;
}

}  // namespace swathbook::api
