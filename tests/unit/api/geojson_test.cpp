#include "api/describe/geojson.hpp"

#include <gtest/gtest.h>

#include "api/call.hpp"

namespace swathbook::api {
namespace {

Result<geometry::PolygonSet> read(std::string_view text) {
    const auto json = parse_json(text);
    EXPECT_TRUE(json.has_value()) << text;
    const Path path{nullptr, "geometry", 0};
    return polygons_in(*json, path);
}

Error refused(std::string_view text) {
    const auto set = read(text);
    EXPECT_FALSE(set.has_value()) << text;
    return set ? Error{} : set.error();
}

TEST(Geojson, ReadsPolygonsWhereverTheyStand) {
    const auto set = read(R"({"type": "FeatureCollection", "features": [
        {"type": "Feature", "properties": {"name": "north"}, "geometry":
            {"type": "Polygon", "coordinates": [[[1, 2, 300], [3, 4], [5, 6], [1, 2]]]}},
        {"type": "Feature", "id": "b7", "properties": null, "geometry":
            {"type": "GeometryCollection", "geometries": [
                {"type": "MultiPolygon", "coordinates": [[[[1, 2], [3, 4]], [[5, 6]]]]}]}}]})");
    ASSERT_TRUE(set.has_value());
    ASSERT_EQ(set->polygons.size(), 2U);
    EXPECT_EQ(set->polygons[0].name, "north");
    EXPECT_EQ(set->polygons[0].outer[1].longitude_deg, 3.0);
    EXPECT_EQ(set->polygons[0].outer[1].latitude_deg, 4.0);
    EXPECT_EQ(set->polygons[0].path, "geometry.features[0].geometry.coordinates");
    EXPECT_EQ(set->polygons[1].name, "b7");
    EXPECT_EQ(set->polygons[1].holes.size(), 1U);
    EXPECT_EQ(set->polygons[1].path, "geometry.features[1].geometry.geometries[0].coordinates[0]");
}

TEST(Geojson, RefusesWhatHasNoAreaAndSaysWhere) {
    EXPECT_EQ(refused(R"({"type": "Point", "coordinates": [1, 2]})").field, "geometry.type");
    EXPECT_EQ(refused(R"({"type": "FeatureCollection", "features": [{"type": "Feature",
        "geometry": {"type": "LineString", "coordinates": []}}]})")
                  .field,
              "geometry.features[0].geometry.type");
    EXPECT_EQ(refused(R"({"type": "Feature", "geometry": null})").field, "geometry.geometry");
    EXPECT_EQ(refused(R"({"type": "FeatureCollection", "features": []})").field, "geometry");
    EXPECT_EQ(refused(R"({"type": "MultiPolygon", "coordinates": []})").field, "geometry");
}

TEST(Geojson, RefusesWhatIsNotGeojson) {
    for (const char* text :
         {"3", "null", "[]", "{}", R"({"type": 3})", R"({"type": "Polygon"})",
          R"({"type": "Polygon", "coordinates": {}})", R"({"type": "Polygon", "coordinates": []})",
          R"({"type": "Polygon", "coordinates": [3]})",
          R"({"type": "Polygon", "coordinates": [[3]]})",
          R"({"type": "Polygon", "coordinates": [[[3]]]})",
          R"({"type": "Polygon", "coordinates": [[["a", "b"]]]})",
          R"({"type": "Feature", "geometry": "x"})",
          R"({"type": "FeatureCollection", "features": {}})"}) {
        EXPECT_EQ(refused(text).code, ErrorCode::invalid_input) << text;
    }
    EXPECT_EQ(refused(R"({"type": "Polygon", "coordinates": [[[1, 2], ["3", 4]]]})").field,
              "geometry.coordinates[0][1]");
}

TEST(Geojson, SaysWhatIsWrongWithATypeOrANumber) {
    EXPECT_NE(refused(R"({"type": "polygon", "coordinates": []})").detail.find("\"Polygon\""),
              std::string::npos);
    EXPECT_NE(refused(R"({"type": "Polygon", "coordinates": [[["-98", "40"]]]})")
                  .detail.find("quotes off"),
              std::string::npos);
}

TEST(Geojson, LooksAtOldReferenceSystems) {
    const std::string rest = R"(, "type": "Polygon", "coordinates": [[[1, 2]]]})";
    for (const char* fine :
         {"EPSG:4326", "urn:ogc:def:crs:OGC:1.3:CRS84", "urn:ogc:def:crs:EPSG::4326"}) {
        EXPECT_TRUE(read(R"({"crs": {"type": "name", "properties": {"name": ")" +
                         std::string(fine) + "\"}}" + rest)
                        .has_value());
    }
    for (const char* bad : {R"({"type": "name", "properties": {"name": "EPSG:3857"}})", "null",
                            R"({"type": "link"})", R"({"properties": {"name": 7}})", "\"x\""}) {
        const Error error = refused(R"({"crs": )" + std::string(bad) + rest);
        EXPECT_EQ(error.code, ErrorCode::unsupported);
        EXPECT_EQ(error.field, "geometry.crs");
    }
}

TEST(Geojson, RefusesMoreThanAMillionPositions) {
    std::string text = R"({"type": "Polygon", "coordinates": [[)";
    for (int i = 0; i < 1000001; ++i) {
        text += i == 0 ? "[0,0]" : ",[0,0]";
    }
    EXPECT_EQ(refused(text + "]]}").code, ErrorCode::out_of_range);
}

TEST(Geojson, IsWrittenBackAsItWasRead) {
    const std::string text =
        R"({"type":"MultiPolygon","coordinates":[[[[-98.5,40],[-98,40],[-98,41],[-98.5,40]]]]})";
    const auto set = read(text);
    ASSERT_TRUE(set.has_value());
    JsonWriter out;
    geojson_type().write(out, &*set, WriteStyle{});
    EXPECT_EQ(*parse_json(out.take()), *parse_json(text));
}

TEST(AreaOperation, AnswersThroughTheCall) {
    const Called called = call("area", R"({"geometry": {"type": "Polygon", "coordinates":
        [[[-98, 40], [-97.99, 40], [-97.99, 40.01], [-98, 40.01], [-98, 40]]]}, "working": true})");
    ASSERT_FALSE(called.error) << called.json;
    EXPECT_NE(called.json.find("\"unit\":\"ac\""), std::string::npos);
    EXPECT_NE(called.json.find("Karney"), std::string::npos);
    const Called refused_call = call("area", R"({"geometry": {"type": "Point"}})");
    EXPECT_EQ(refused_call.error, ErrorCode::invalid_input);
}

}  // namespace
}  // namespace swathbook::api
