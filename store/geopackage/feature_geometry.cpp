#include "store/geopackage/feature_geometry.hpp"

#include <fmt/format.h>

#include <bit>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>

#include "store/geopackage/bounds.hpp"

namespace swathbook::store {

namespace {

using Json = nlohmann::json;

enum WkbType : std::uint32_t {
    point = 1,
    line = 2,
    polygon = 3,
    multi_point = 4,
    multi_line = 5,
    multi_polygon = 6
};

/// Writes well-known binary, and keeps the box of what it has written.
class WkbWriter {
public:
    explicit WkbWriter(std::string_view field) : field_(field) {}

    void type(std::uint32_t wkb_type) {
        bytes_.push_back(1);
        number(wkb_type);
    }
    void number(std::uint32_t value) { put(value); }

    Result<void> position(const Json& position) {
        if (!position.is_array() || position.size() < 2 || !position[0].is_number() ||
            !position[1].is_number()) {
            return refuse("a position must be [longitude, latitude]");
        }
        const double x = position[0].get<double>();
        const double y = position[1].get<double>();
        if (!(x >= -180.0 && x <= 180.0 && y >= -90.0 && y <= 90.0)) {
            return fail(ErrorCode::out_of_range, field_,
                        fmt::format("The position [{}, {}] is not on the globe: longitude is -180 "
                                    "to 180, latitude -90 to 90 degrees, in this order (WGS 84).",
                                    x, y));
        }
        put(std::bit_cast<std::uint64_t>(x));
        put(std::bit_cast<std::uint64_t>(y));
        include(bounds_, x, y);
        return {};
    }
    Result<void> positions(const Json& positions, std::size_t fewest) {
        if (!positions.is_array() || positions.size() < fewest) {
            return refuse(fmt::format("at least {} positions are wanted here", fewest));
        }
        number(static_cast<std::uint32_t>(positions.size()));
        for (const Json& each : positions) {
            SWATHBOOK_CHECK(position(each));
        }
        return {};
    }
    Result<void> rings(const Json& rings) {
        if (!rings.is_array() || rings.empty()) {
            return refuse("a polygon is a list of rings");
        }
        number(static_cast<std::uint32_t>(rings.size()));
        for (const Json& ring : rings) {
            SWATHBOOK_CHECK(positions(ring, 4));
            if (ring.front() != ring.back()) {
                return refuse("a ring must end where it begins");
            }
        }
        return {};
    }
    [[nodiscard]] tl::unexpected<Error> refuse(std::string_view what) const {
        return fail(ErrorCode::invalid_input, field_,
                    fmt::format("{} is not a GeoJSON geometry that fits here: {}.", field_, what));
    }
    [[nodiscard]] std::vector<std::uint8_t> with_header() const {
        std::vector<std::uint8_t> blob = {'G', 'P', 0, 0x03};  // little endian, box of x and y
        const auto append = [&blob](std::uint64_t value, int count) {
            for (int i = 0; i < count; ++i) {
                blob.push_back(static_cast<std::uint8_t>(value >> (8 * i)));
            }
        };
        append(4326, 4);
        const Bounds bounds = bounds_.value_or(Bounds{});
        for (const double edge : {bounds.min_x, bounds.max_x, bounds.min_y, bounds.max_y}) {
            append(std::bit_cast<std::uint64_t>(edge), 8);
        }
        blob.insert(blob.end(), bytes_.begin(), bytes_.end());
        return blob;
    }

private:
    template <class Unsigned>
    void put(Unsigned value) {
        for (std::size_t i = 0; i < sizeof(Unsigned); ++i) {
            bytes_.push_back(static_cast<std::uint8_t>(value >> (8 * i)));
        }
    }

    std::string_view field_;
    std::vector<std::uint8_t> bytes_;
    std::optional<Bounds> bounds_;
};

Result<void> write_single(WkbWriter& out, std::uint32_t type, const Json& coordinates) {
    out.type(type);
    switch (type) {
        case WkbType::point: return out.position(coordinates);
        case WkbType::line: return out.positions(coordinates, 2);
        default: return out.rings(coordinates);
    }
}

Result<void> write_multi(WkbWriter& out, std::uint32_t single, const Json& parts) {
    if (!parts.is_array() || parts.empty()) {
        return out.refuse("it has no parts");
    }
    out.type(single + 3);
    out.number(static_cast<std::uint32_t>(parts.size()));
    for (const Json& part : parts) {
        SWATHBOOK_CHECK(write_single(out, single, part));
    }
    return {};
}

struct Named {
    std::string_view name;
    std::uint32_t type;
};
constexpr Named names[] = {{"Point", point},
                           {"LineString", line},
                           {"Polygon", polygon},
                           {"MultiPoint", multi_point},
                           {"MultiLineString", multi_line},
                           {"MultiPolygon", multi_polygon}};

std::uint32_t type_named(const Json& geometry) {
    if (!geometry.is_object() || !geometry.contains("type") || !geometry["type"].is_string()) {
        return 0;
    }
    for (const Named& named : names) {
        if (geometry["type"] == named.name) {
            return named.type;
        }
    }
    return 0;
}

bool fits(std::uint32_t type, FeatureShape shape) {
    switch (shape) {
        case FeatureShape::multi_polygon: return type == polygon || type == multi_polygon;
        case FeatureShape::multi_line: return type == line || type == multi_line;
        case FeatureShape::any: return type != 0;
    }
    return false;
}

}  // namespace

Result<std::vector<std::uint8_t>> feature_geometry(std::string_view geojson, FeatureShape shape,
                                                   std::string_view field) {
    WkbWriter out(field);
    const Json geometry = Json::parse(geojson, nullptr, false);
    const std::uint32_t type = geometry.is_discarded() ? 0 : type_named(geometry);
    if (!fits(type, shape) || !geometry.contains("coordinates")) {
        return out.refuse(
            shape == FeatureShape::multi_polygon ? "a Polygon or MultiPolygon is wanted"
            : shape == FeatureShape::multi_line  ? "a LineString or MultiLineString is wanted"
                                                 : "a type of RFC 7946 with coordinates is wanted");
    }
    const Json& coordinates = geometry["coordinates"];
    if (type > polygon) {
        SWATHBOOK_CHECK(write_multi(out, type - 3, coordinates));
    } else if (shape == FeatureShape::any) {
        SWATHBOOK_CHECK(write_single(out, type, coordinates));
    } else {
        SWATHBOOK_CHECK(write_multi(out, type, Json::array({coordinates})));
    }
    return out.with_header();
}

}  // namespace swathbook::store
