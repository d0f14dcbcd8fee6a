#include "api/describe/geojson.hpp"

#include <algorithm>
#include <array>

#include <fmt/format.h>

namespace swathbook::api {
namespace {

constexpr std::size_t most_positions = 1'000'000;
constexpr std::size_t longest_name = 200;

/// Spellings of longitude and latitude on WGS84, in small letters.
constexpr std::array<std::string_view, 8> known_systems{
    "urn:ogc:def:crs:ogc:1.3:crs84",
    "urn:ogc:def:crs:ogc::crs84",
    "ogc:crs84",
    "crs84",
    "epsg:4326",
    "urn:ogc:def:crs:epsg::4326",
    "http://www.opengis.net/def/crs/ogc/1.3/crs84",
    "http://www.opengis.net/def/crs/epsg/0/4326"};

std::string lower(std::string text) {
    for (char& character : text) {
        if (character >= 'A' && character <= 'Z') {
            character = static_cast<char>(character - 'A' + 'a');
        }
    }
    return text;
}

constexpr std::array area_types{std::string_view("Polygon"), std::string_view("MultiPolygon"),
                                std::string_view("GeometryCollection"), std::string_view("Feature"),
                                std::string_view("FeatureCollection")};

/// What is collected while walking down.
struct Walk {
    geometry::PolygonSet set{};
    std::size_t positions = 0;
    std::string name{};  ///< of the feature we are in
};

Result<void> check_reference_system(const Json& object, const Path& path) {
    const auto crs = object.find("crs");
    if (crs == object.end()) {
        return {};
    }
    std::string name;
    if (crs->is_object()) {
        const auto properties = crs->find("properties");
        if (properties != crs->end() && properties->is_object()) {
            const auto text = properties->find("name");
            name = text != properties->end() && text->is_string() ? text->get<std::string>() : "";
        }
    }
    const std::string plain = lower(name);
    if (std::find(known_systems.begin(), known_systems.end(), plain) != known_systems.end()) {
        return {};
    }
    return fail(ErrorCode::unsupported, path.member("crs").text(),
                fmt::format("The file says its numbers are in {}; only longitude and latitude on "
                            "WGS84 are taken (EPSG:4326, OGC:CRS84). Export it again in that "
                            "system. Taking the \"crs\" member out would only hide the matter.",
                            name.empty() ? "a reference system that it does not name"
                                         : "\"" + name.substr(0, longest_name) + "\""));
}

Result<void> read_position(const Json& json, const Path& path, geometry::Ring& ring) {
    if (!json.is_array() || json.size() < 2 || !json[0].is_number() || !json[1].is_number()) {
        return fail(ErrorCode::invalid_input, path.text(),
                    fmt::format("A position is a list of two numbers, [longitude, latitude]; got "
                                "{}.",
                                json.is_array() && json.size() >= 2 &&
                                        (json[0].is_string() || json[1].is_string())
                                    ? std::string("texts: take the quotes off")
                                : json.is_array() ? fmt::format("a list of {}", json.size())
                                                  : std::string("a ") + json.type_name()));
    }
    ring.push_back({json[0].get<double>(), json[1].get<double>()});
    return {};
}

Result<geometry::Ring> read_ring(const Json& json, const Path& path, Walk& walk) {
    if (!json.is_array()) {
        return fail(ErrorCode::invalid_input, path.text(),
                    std::string("A ring is a list of positions, got a ") + json.type_name() + ".");
    }
    walk.positions += json.size();
    if (walk.positions > most_positions) {
        return fail(ErrorCode::out_of_range, path.text(),
                    fmt::format("More than {} positions. Simplify the boundary or measure the "
                                "parts one at a time.",
                                most_positions));
    }
    geometry::Ring ring;
    ring.reserve(json.size());
    for (std::size_t i = 0; i < json.size(); ++i) {
        SWATHBOOK_CHECK(read_position(json[i], path.element(i), ring));
    }
    return ring;
}

Result<void> read_polygon(const Json& json, const Path& path, Walk& walk) {
    if (!json.is_array() || json.empty()) {
        return fail(ErrorCode::invalid_input, path.text(),
                    "A polygon is a list of rings, the outer one first; this one has none.");
    }
    geometry::Polygon polygon;
    polygon.name = walk.name;
    polygon.path = path.text();
    for (std::size_t i = 0; i < json.size(); ++i) {
        SWATHBOOK_TRY(ring, read_ring(json[i], path.element(i), walk));
        if (i == 0) {
            polygon.outer = std::move(ring);
        } else {
            polygon.holes.push_back(std::move(ring));
        }
    }
    walk.set.polygons.push_back(std::move(polygon));
    return {};
}

std::string name_of(const Json& feature) {
    const auto properties = feature.find("properties");
    if (properties != feature.end() && properties->is_object()) {
        const auto name = properties->find("name");
        if (name != properties->end() && name->is_string()) {
            return name->get<std::string>().substr(0, longest_name);
        }
    }
    const auto id = feature.find("id");
    if (id == feature.end()) {
        return {};
    }
    return id->is_string() ? id->get<std::string>().substr(0, longest_name)
                           : (id->is_number() ? json_text(*id) : std::string{});
}

Result<const Json*> list_member(const Json& object, std::string_view name, const Path& path) {
    const auto found = object.find(name);
    if (found == object.end() || !found->is_array()) {
        return fail(
            ErrorCode::invalid_input, path.member(name).text(),
            fmt::format("GeoJSON of this type has a list \"{}\"; it is missing here.", name));
    }
    return &*found;
}

Result<void> read_geojson(const Json& json, const Path& path, Walk& walk);

Result<void> read_each(const Json& object, std::string_view name, const Path& path, Walk& walk,
                       Result<void> (*read)(const Json&, const Path&, Walk&)) {
    SWATHBOOK_TRY(list, list_member(object, name, path));
    const Path below = path.member(name);
    for (std::size_t i = 0; i < list->size(); ++i) {
        SWATHBOOK_CHECK(read((*list)[i], below.element(i), walk));
    }
    return {};
}

Result<void> read_feature(const Json& json, const Path& path, Walk& walk) {
    const auto geometry = json.find("geometry");
    if (geometry == json.end() || !geometry->is_object()) {
        return fail(ErrorCode::invalid_input, path.member("geometry").text(),
                    "This feature has no geometry. Draw it or leave it out.");
    }
    walk.name = name_of(json);
    return read_geojson(*geometry, path.member("geometry"), walk);
}

Result<void> read_geojson(const Json& json, const Path& path, Walk& walk) {
    const auto type = json.is_object() ? json.find("type") : json.end();
    if (!json.is_object() || type == json.end() || !type->is_string()) {
        return fail(ErrorCode::invalid_input, path.text(),
                    "Expected GeoJSON: an object with a \"type\", such as {\"type\": \"Polygon\", "
                    "\"coordinates\": [[[longitude, latitude], ...]]}.");
    }
    SWATHBOOK_CHECK(check_reference_system(json, path));
    const auto& word = type->get_ref<const std::string&>();
    if (word == "Polygon") {
        SWATHBOOK_TRY(rings, list_member(json, "coordinates", path));
        return read_polygon(*rings, path.member("coordinates"), walk);
    }
    if (word == "MultiPolygon") {
        return read_each(json, "coordinates", path, walk, &read_polygon);
    }
    if (word == "GeometryCollection") {
        return read_each(json, "geometries", path, walk, &read_geojson);
    }
    if (word == "FeatureCollection") {
        return read_each(json, "features", path, walk, &read_geojson);
    }
    if (word == "Feature") {
        return read_feature(json, path, walk);
    }
    for (const std::string_view known : area_types) {
        if (lower(word) == lower(std::string(known))) {
            return fail(
                ErrorCode::invalid_input, path.member("type").text(),
                fmt::format("\"{}\" is not a GeoJSON type. Did you mean \"{}\"?", word, known));
        }
    }
    return fail(ErrorCode::invalid_input, path.member("type").text(),
                fmt::format("A {} has no area. Give polygons only, and leave points and lines out.",
                            word.substr(0, longest_name)));
}

class GeojsonType final : public Type {
public:
    [[nodiscard]] Shape shape() const override { return Shape::geometry; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override {
        SWATHBOOK_TRY(set, polygons_in(json, path));
        *static_cast<geometry::PolygonSet*>(into) = std::move(set);
        return {};
    }
    void write(JsonWriter& out, const void* from, const WriteStyle&) const override {
        out.open_object();
        out.key("type");
        out.text("MultiPolygon");
        out.key("coordinates");
        out.open_list();
        for (const auto& polygon : static_cast<const geometry::PolygonSet*>(from)->polygons) {
            out.open_list();
            write_ring(out, polygon.outer);
            for (const geometry::Ring& hole : polygon.holes) {
                write_ring(out, hole);
            }
            out.close_list();
        }
        out.close_list();
        out.close_object();
    }
    [[nodiscard]] Json schema(Json& definitions) const override {
        if (!definitions.contains("GeoJson")) {
            definitions["GeoJson"] = {
                {"type", "object"},
                {"description",
                 "GeoJSON (RFC 7946): Polygon, MultiPolygon, GeometryCollection, Feature or "
                 "FeatureCollection of polygons; longitude first, WGS84."},
                {"properties",
                 {{"type",
                   {{"enum", Json::array({"Polygon", "MultiPolygon", "GeometryCollection",
                                          "Feature", "FeatureCollection"})}}}}},
                {"required", Json::array({"type"})}};
        }
        return {{"$ref", "#/$defs/GeoJson"}};
    }
    [[nodiscard]] std::string typescript(Json& declarations) const override {
        declarations["GeoJson"] =
            "/** GeoJSON (RFC 7946) with polygons; longitude first, WGS84. */\n"
            "export interface GeoJson { type: \"Polygon\" | \"MultiPolygon\" | "
            "\"GeometryCollection\" | \"Feature\" | \"FeatureCollection\"; [member: string]: "
            "unknown }\n";
        return "GeoJson";
    }
    [[nodiscard]] std::string example() const override {
        return R"({"type": "Polygon", "coordinates": [[[-98, 40], ...]]})";
    }

private:
    static void write_ring(JsonWriter& out, const geometry::Ring& ring) {
        out.open_list();
        for (const geometry::Position& position : ring) {
            out.open_list();
            out.number(position.longitude_deg);
            out.number(position.latitude_deg);
            out.close_list();
        }
        out.close_list();
    }
};

}  // namespace

Result<geometry::PolygonSet> polygons_in(const Json& json, const Path& path) {
    Walk walk;
    SWATHBOOK_CHECK(read_geojson(json, path, walk));
    if (walk.set.polygons.empty()) {
        return fail(ErrorCode::invalid_input, path.text(),
                    "There is no polygon in this GeoJSON. Lines and points have no area.");
    }
    return std::move(walk.set);
}

const Type& geojson_type() {
    static const GeojsonType type;
    return type;
}

}  // namespace swathbook::api
