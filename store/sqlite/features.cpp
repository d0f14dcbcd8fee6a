#include "store/sqlite/features.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "core/notebook/body.hpp"
#include "store/geopackage/feature_geometry.hpp"
#include "store/sqlite/sql_text.hpp"

namespace swathbook::store {

namespace {

using notebook::EntryKind;
using notebook::FieldNow;

struct Layer {
    EntryKind kind;
    std::string_view field;
    std::string_view table;
    FeatureShape shape;
};
constexpr Layer layers[] = {{EntryKind::stand, "boundary", "stands", FeatureShape::multi_polygon},
                            {EntryKind::setback, "geometry", "setbacks", FeatureShape::any},
                            {EntryKind::pass, "track", "passes", FeatureShape::multi_line},
                            {EntryKind::pass, "covered", "coverage", FeatureShape::multi_polygon}};

Result<std::string> blob_text(Connection& connection, std::string_view value,
                              std::string_view field) {
    const auto hex = notebook::text_of_json_string(notebook::field_of(value, "blob").value_or(""));
    SWATHBOOK_TRY(digest, parse_digest(hex.value_or(""), field));
    SWATHBOOK_TRY(statement, connection.prepare(sql("blob")));
    statement.bind_bytes(1, digest);
    SWATHBOOK_TRY(has_row, statement.step());
    if (!has_row) {
        return fail(ErrorCode::not_found, field,
                    fmt::format("{} names a blob that the notebook does not hold. Keep the blob "
                                "first.",
                                field));
    }
    return std::string(statement.text(0));
}

Result<std::vector<std::uint8_t>> shape_of(Connection& connection, const Layer& layer,
                                           std::string_view value) {
    const bool is_reference = value.substr(0, 8) == "{\"blob\":";
    if (!is_reference) {
        return feature_geometry(value, layer.shape, layer.field);
    }
    SWATHBOOK_TRY(text, blob_text(connection, value, layer.field));
    return feature_geometry(text, layer.shape, layer.field);
}

std::string name_in(const std::vector<FieldNow>& fields) {
    for (const FieldNow& field : fields) {
        if (field.name == "name") {
            return notebook::text_of_json_string(field.value).value_or(std::string(field.value));
        }
    }
    return {};
}

/// Everything but the shapes, as one JSON object.
std::string details_of(const std::vector<FieldNow>& fields) {
    std::string text = "{";
    for (const FieldNow& field : fields) {
        const bool is_shape = std::any_of(std::begin(layers), std::end(layers),
                                          [&](const Layer& l) { return l.field == field.name; });
        if (!is_shape) {
            text += fmt::format("{}\"{}\":{}", text.size() > 1 ? "," : "", field.name, field.value);
        }
    }
    return text + "}";
}

std::optional<FieldNow> shape_field(const std::vector<FieldNow>& fields, const Layer& layer) {
    std::optional<FieldNow> shape;
    for (const FieldNow& field : fields) {
        if (field.name == "removed" && field.value == "true") {
            return std::nullopt;
        }
        if (field.name == layer.field) {
            shape = field;
        }
    }
    return shape;
}

Result<void> write_row(Connection& connection, const Layer& layer, std::string_view thing,
                       const std::vector<FieldNow>& fields,
                       const std::vector<std::uint8_t>& geometry) {
    const FieldNow& newest =
        *std::max_element(fields.begin(), fields.end(),
                          [](const FieldNow& a, const FieldNow& b) { return a.stamp < b.stamp; });
    const std::string name = name_in(fields);
    const std::string details = details_of(fields);
    const std::string changed = notebook::utc_text(newest.stamp.made.milliseconds);
    for (const std::string_view act : {"change", "add"}) {
        SWATHBOOK_TRY(statement, connection.prepare(sql(fmt::format("{}_{}", act, layer.table))));
        statement.bind_bytes(1, geometry).bind(2, thing).bind(3, name).bind(4, newest.author);
        SWATHBOOK_CHECK(statement.bind(5, changed).bind(6, details).run());
        SWATHBOOK_TRY(changes, connection.number("SELECT changes()"));
        if (changes > 0) {
            break;
        }
    }
    SWATHBOOK_TRY(touch, connection.prepare(sql("touch_contents")));
    return touch.bind(1, layer.table).bind(2, changed).run();
}

Result<void> write_layer(Connection& connection, const Layer& layer, std::string_view thing,
                         const std::vector<FieldNow>& fields) {
    if (const auto shape = shape_field(fields, layer)) {
        if (const auto geometry = shape_of(connection, layer, shape->value)) {
            return write_row(connection, layer, thing, fields, *geometry);
        }
    }
    SWATHBOOK_TRY(remove, connection.prepare(sql(fmt::format("remove_{}", layer.table))));
    return remove.bind(1, thing).run();
}

}  // namespace

bool has_features(EntryKind kind) {
    return std::any_of(std::begin(layers), std::end(layers),
                       [kind](const Layer& layer) { return layer.kind == kind; });
}

Result<void> check_shapes(Connection& connection, EntryKind kind, std::string_view body) {
    for (const Layer& layer : layers) {
        const auto value = layer.kind == kind ? notebook::field_of(body, layer.field)
                                              : std::optional<std::string_view>();
        if (value) {
            SWATHBOOK_CHECK(shape_of(connection, layer, *value));
        }
    }
    return {};
}

Result<void> write_features(Connection& connection, EntryKind kind, const Uuid& subject,
                            const notebook::Fold& state) {
    const std::vector<FieldNow> fields = state.fields(kind, subject);
    const std::string thing = text_of(subject);
    for (const Layer& layer : layers) {
        if (layer.kind == kind) {
            SWATHBOOK_CHECK(write_layer(connection, layer, thing, fields));
        }
    }
    return {};
}

}  // namespace swathbook::store
