#include <cmath>
#include <cstring>

#include "store/geopackage/bounds.hpp"
#include "store/geopackage/feature_geometry.hpp"
#include "tests/store/temp_notebook.hpp"

namespace swathbook::store {
namespace {

using notebook::EntryKind;

const std::string square =
    R"({"type":"Polygon","coordinates":[[[-98.2,40.1],[-98.1,40.1],[-98.1,40.2],[-98.2,40.2],[-98.2,40.1]]]})";

class GeoPackageTest : public testing::Test {
protected:
    TempFolder folder;
    TestOutside world;
    std::unique_ptr<SqliteNotebook> store =
        SqliteNotebook::open(folder.file("a.gpkg"), {OpenMode::create}, world.outside()).value();

    Result<void> add(EntryKind kind, std::uint8_t subject, const std::string& body) {
        world.now_ms += 10;
        auto appended = store->append(std::vector{draft(kind, subject, body)});
        return appended ? Result<void>() : tl::unexpected(appended.error());
    }
    std::int64_t number(const std::string& sql) { return store->connection().number(sql).value(); }
    std::string word(const std::string& sql) { return store->connection().word(sql).value(); }
    /// A program of Debian's GDAL reads the layer.
    std::string layer(const std::string& name) {
        return run_command("ogrinfo -ro -al '" + folder.file("a.gpkg") + "' " + name).output;
    }
};

TEST_F(GeoPackageTest, an_empty_and_a_filled_notebook_pass_the_validator) {
    auto verdict = validate_geopackage(folder.file("a.gpkg"));
    EXPECT_EQ(verdict.status, 0) << verdict.output;
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"name":"North","boundary":)" + square + "}"));
    ASSERT_TRUE(add(EntryKind::setback, 2,
                    R"({"name":"Well","geometry":{"type":"Point","coordinates":[-98.15,40.15]}})"));
    ASSERT_TRUE(add(
        EntryKind::pass, 3,
        R"({"track":{"type":"LineString","coordinates":[[-98.2,40.1],[-98.1,40.2]]},"covered":)" +
            square + "}"));
    verdict = validate_geopackage(folder.file("a.gpkg"));
    EXPECT_EQ(verdict.status, 0) << verdict.output;
}

TEST_F(GeoPackageTest, a_gis_reads_the_stand_with_its_name_and_place) {
    ASSERT_TRUE(add(EntryKind::stand, 1,
                    R"({"area":"12 ac","name":"Loma del ca\u00f1o","boundary":)" + square + "}"));
    const std::string seen = layer("stands");
    EXPECT_NE(seen.find("Feature Count: 1"), std::string::npos) << seen;
    // The spatial index keeps single-precision boxes, rounded outwards.
    EXPECT_NE(seen.find("Extent: (-98.2000"), std::string::npos) << seen;
    EXPECT_NE(seen.find("name (String) = Loma del caño"), std::string::npos) << seen;
    EXPECT_NE(seen.find("MULTIPOLYGON (((-98.2 40.1,-98.1 40.1"), std::string::npos) << seen;
    EXPECT_NE(seen.find(R"(details (String) = {"area":"12 ac","name")"), std::string::npos) << seen;
    EXPECT_EQ(seen.find("Warning"), std::string::npos) << seen;
}

TEST_F(GeoPackageTest, the_row_follows_the_fold_and_the_spatial_index_follows_the_row) {
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"name":"North","boundary":)" + square + "}"));
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"name":"North field"})"));
    EXPECT_EQ(word("SELECT name FROM stands"), "North field");
    EXPECT_EQ(number("SELECT count(*) FROM rtree_stands_geom"), 1);
    ASSERT_TRUE(add(
        EntryKind::stand, 1,
        R"({"boundary":{"type":"Polygon","coordinates":[[[10,20],[11,20],[11,21],[10,20]]]}})"));
    EXPECT_EQ(number("SELECT count(*) FROM rtree_stands_geom WHERE minx >= 9.99 AND maxx <= 11.01"),
              1);
    EXPECT_EQ(number("SELECT count(*) FROM stands"), 1);
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"removed":true})"));
    EXPECT_EQ(number("SELECT count(*) FROM stands"), 0);
    EXPECT_EQ(number("SELECT count(*) FROM rtree_stands_geom"), 0);
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"removed":null})"));
    EXPECT_EQ(number("SELECT count(*) FROM stands"), 1);
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"boundary":null})"));
    EXPECT_EQ(number("SELECT count(*) FROM stands"), 0);
}

TEST_F(GeoPackageTest, merging_in_any_order_gives_the_same_rows) {
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"name":"first","boundary":)" + square + "}"));
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"name":"second"})"));
    std::vector<notebook::Entry> entries =
        store->entries_of(EntryKind::stand, subject_number(1)).value();
    std::reverse(entries.begin(), entries.end());
    auto other =
        SqliteNotebook::open(folder.file("b.gpkg"), {OpenMode::create}, world.outside()).value();
    for (const auto& entry : entries) {
        ASSERT_EQ(other->merge(std::vector{entry}).value().added, 1U);
    }
    EXPECT_EQ(other->connection().word("SELECT name || hex(geom) FROM stands").value(),
              word("SELECT name || hex(geom) FROM stands"));
}

TEST_F(GeoPackageTest, a_track_kept_as_a_blob_becomes_a_pass) {
    const std::string track =
        R"({"type":"MultiLineString","coordinates":[[[-98.2,40.1],[-98.1,40.2]],[[-98.2,40.2],[-98.1,40.1]]]})";
    const auto digest =
        store
            ->put_blob(std::span(reinterpret_cast<const std::uint8_t*>(track.data()), track.size()))
            .value();
    ASSERT_TRUE(add(EntryKind::pass, 3,
                    R"({"name":"pass 1","track":{"blob":")" + hex_of(digest) + R"("}})"));
    EXPECT_NE(
        layer("passes").find("MULTILINESTRING ((-98.2 40.1,-98.1 40.2),(-98.2 40.2,-98.1 40.1))"),
        std::string::npos);
    const auto unknown =
        add(EntryKind::pass, 4, R"({"track":{"blob":")" + std::string(64, '0') + R"("}})");
    EXPECT_EQ(unknown.error().code, ErrorCode::not_found);
    EXPECT_EQ(unknown.error().field, "track");
}

TEST_F(GeoPackageTest, what_another_program_did_to_the_rows_is_undone_by_rebuilding) {
    ASSERT_TRUE(add(EntryKind::stand, 1, R"({"name":"North","boundary":)" + square + "}"));
    ASSERT_TRUE(add(EntryKind::stand, 2, R"({"name":"South","boundary":)" + square + "}"));
    const auto edited = run_command(
        "ogrinfo -dialect SQLite -sql \"UPDATE stands SET name = 'changed' WHERE name = 'North'\" "
        "'" +
        folder.file("a.gpkg") + "'");
    ASSERT_EQ(edited.status, 0) << edited.output;
    EXPECT_EQ(number("SELECT count(*) FROM stands WHERE name = 'changed'"), 1);
    ASSERT_TRUE(store->rebuild_features());
    EXPECT_EQ(number("SELECT count(*) FROM stands WHERE name IN ('North', 'South')"), 2);
    EXPECT_EQ(number("SELECT count(*) FROM rtree_stands_geom"), 2);
    EXPECT_EQ(validate_geopackage(folder.file("a.gpkg")).status, 0);
}

TEST_F(GeoPackageTest, a_gis_may_append_and_the_index_stays_right) {
    ASSERT_EQ(run_command("printf '%s' "
                          "'{\"type\":\"FeatureCollection\",\"features\":[{\"type\":\"Feature\","
                          "\"properties\":{\"thing\":\"x\",\"name\":\"pond\"},\"geometry\":{"
                          "\"type\":\"Point\",\"coordinates\":[-98,40]}}]}' > " +
                          folder.file("p.geojson"))
                  .status,
              0);
    const auto appended = run_command("ogr2ogr -append -update '" + folder.file("a.gpkg") + "' '" +
                                      folder.file("p.geojson") + "' -nln setbacks");
    ASSERT_EQ(appended.status, 0) << appended.output;
    EXPECT_EQ(
        number("SELECT count(*) FROM rtree_setbacks_geom WHERE minx > -98.01 AND maxx < -97.99"),
        1);
    EXPECT_EQ(validate_geopackage(folder.file("a.gpkg")).status, 0);
    // and our own functions read what that program wrote (a point without a box)
    ASSERT_TRUE(store->connection().execute("UPDATE setbacks SET geom = geom"));
    EXPECT_EQ(
        number("SELECT count(*) FROM rtree_setbacks_geom WHERE miny > 39.99 AND maxy < 40.01"), 1);
}

TEST_F(GeoPackageTest, shapes_that_are_none_are_refused_and_nothing_is_kept) {
    struct Bad {
        EntryKind kind;
        std::string body;
        std::string field;
        ErrorCode code;
    };
    const std::vector<Bad> bad = {
        {EntryKind::stand, R"({"boundary":"POLYGON"})", "boundary", ErrorCode::invalid_input},
        {EntryKind::stand, R"({"boundary":{"type":"Point","coordinates":[1,2]}})", "boundary",
         ErrorCode::invalid_input},
        {EntryKind::stand,
         R"({"boundary":{"type":"Polygon","coordinates":[[[0,0],[1,0],[1,1],[0,1]]]}})", "boundary",
         ErrorCode::invalid_input},
        {EntryKind::stand, R"({"boundary":{"type":"Polygon","coordinates":[[[0,0],[1,0],[0,0]]]}})",
         "boundary", ErrorCode::invalid_input},
        {EntryKind::stand, R"({"boundary":{"type":"Polygon","coordinates":[]}})", "boundary",
         ErrorCode::invalid_input},
        {EntryKind::stand, R"({"boundary":{"type":"MultiPolygon","coordinates":[]}})", "boundary",
         ErrorCode::invalid_input},
        {EntryKind::stand, R"({"boundary":{"type":"Polygon"}})", "boundary",
         ErrorCode::invalid_input},
        {EntryKind::stand,
         R"({"boundary":{"type":"Polygon","coordinates":[[[40,-98.2],[41,-98.2],[41,-98],[40,-98.2]]]}})",
         "boundary", ErrorCode::out_of_range},
        {EntryKind::pass, R"({"track":{"type":"LineString","coordinates":[[0,0]]}})", "track",
         ErrorCode::invalid_input},
        {EntryKind::pass, R"({"track":{"type":"LineString","coordinates":[[0,0],["a",1]]}})",
         "track", ErrorCode::invalid_input},
        {EntryKind::setback, R"({"geometry":{"type":"Circle","coordinates":[0,0]}})", "geometry",
         ErrorCode::invalid_input},
        {EntryKind::setback, R"({"geometry":{"type":"Point","coordinates":[1e400,0]}})", "geometry",
         ErrorCode::invalid_input},
    };
    for (const Bad& each : bad) {
        const auto added = add(each.kind, 1, each.body);
        ASSERT_FALSE(added.has_value()) << each.body;
        EXPECT_EQ(added.error().code, each.code) << each.body;
        EXPECT_EQ(added.error().field, each.field) << each.body;
    }
    EXPECT_EQ(number("SELECT count(*) FROM entries"), 0);
}

TEST(FeatureGeometry, a_point_is_byte_for_byte_what_the_standards_say) {
    // Header of GeoPackage clause 2.1.3, then well-known binary of a point, written out by hand;
    // 1.5 is 3FF8000000000000 and -2 is C000000000000000 in IEEE 754.
    const auto blob = feature_geometry(R"({"type":"Point","coordinates":[1.5,-2,300]})",
                                       FeatureShape::any, "geometry")
                          .value();
    EXPECT_EQ(hex_of(blob),
              "47500003e6100000"
              "000000000000f83f000000000000f83f00000000000000c000000000000000c0"
              "0101000000000000000000f83f00000000000000c0");
}

TEST(Bounds, boxes_are_read_from_headers_and_from_coordinates_alike) {
    const std::string text =
        R"({"type":"MultiPolygon","coordinates":[[[[0,0],[4,0],[4,3],[0,0]]],[[[-5,1],[1,1],[1,9],[-5,1]]]]})";
    auto blob = feature_geometry(text, FeatureShape::multi_polygon, "boundary").value();
    const auto with_box = read_header(blob).value();
    blob.erase(blob.begin() + 8, blob.begin() + 40);
    blob[3] = 0x01;
    const auto without_box = read_header(blob).value();
    for (const auto& header : {with_box, without_box}) {
        EXPECT_FALSE(header.is_empty);
        EXPECT_EQ(header.bounds->min_x, -5);
        EXPECT_EQ(header.bounds->max_x, 4);
        EXPECT_EQ(header.bounds->min_y, 0);
        EXPECT_EQ(header.bounds->max_y, 9);
    }
    for (std::size_t size = 0; size < blob.size(); ++size) {
        EXPECT_FALSE(read_header({blob.data(), size}).has_value()) << size;
    }
    blob[3] = 0x11;
    EXPECT_TRUE(read_header(blob).value().is_empty);
}

}  // namespace
}  // namespace swathbook::store
