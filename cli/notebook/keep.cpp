#include "cli/notebook/keep.hpp"

#include <array>

#include <fmt/format.h>

#include "api/json/json.hpp"
#include "cli/notebook/open_notebook.hpp"
#include "cli/version.hpp"

namespace swathbook::cli {
namespace {

using notebook::EntryKind;

struct KindOfAnswer {
    std::string_view operation;
    EntryKind kind;
};

// What is not listed is kept with the job it was worked out for.
constexpr std::array kinds{
    KindOfAnswer{"area", EntryKind::stand},
    KindOfAnswer{"calibrate", EntryKind::calibration},
    KindOfAnswer{"course", EntryKind::calibration},
    KindOfAnswer{"crew", EntryKind::calibration},
    KindOfAnswer{"tip-check", EntryKind::tip_set},
    KindOfAnswer{"loads", EntryKind::load},
    KindOfAnswer{"record-check", EntryKind::record},
};

/// Adds the polygons of any GeoJSON object to `polygons`.
void collect_polygons(const api::Json& shape, api::Json& polygons) {
    const std::string type = shape.is_object() ? shape.value("type", std::string()) : std::string();
    if (type == "Polygon" && shape.contains("coordinates")) {
        polygons.push_back(shape["coordinates"]);
    } else if (type == "MultiPolygon" && shape.contains("coordinates")) {
        polygons.insert(polygons.end(), shape["coordinates"].begin(), shape["coordinates"].end());
    } else if (type == "Feature" && shape.contains("geometry")) {
        collect_polygons(shape["geometry"], polygons);
    } else if (type == "FeatureCollection" && shape.contains("features")) {
        for (const api::Json& feature : shape["features"]) {
            collect_polygons(feature, polygons);
        }
    }
}

/// The ground of a request as one MultiPolygon: what the map layer of stands takes.
api::Json boundary_of(const api::Json& shape) {
    api::Json polygons = api::Json::array();
    collect_polygons(shape, polygons);
    return {{"type", "MultiPolygon"}, {"coordinates", std::move(polygons)}};
}

EntryKind kind_for(std::string_view operation) {
    for (const KindOfAnswer& row : kinds) {
        if (row.operation == operation) {
            return row.kind;
        }
    }
    return EntryKind::job;
}

}  // namespace

Result<Uuid> new_thing() {
    const store::Outside outside = store::system_outside();
    std::array<std::uint8_t, 10> random{};
    SWATHBOOK_CHECK(outside.random(random));
    return make_uuid(outside.now_ms(), random);
}

Result<Uuid> keep(const Kept& kept) {
    SWATHBOOK_TRY(request, api::parse_json(kept.request));
    SWATHBOOK_TRY(answer, api::parse_json(kept.answer));
    SWATHBOOK_TRY(notebook, open_notebook(kept.notebook, store::OpenMode::read_write));
    SWATHBOOK_TRY(author, author_of(*notebook, kept.author));
    SWATHBOOK_TRY(subject, new_thing());
    const EntryKind kind = kind_for(kept.operation);
    api::Json body = {{"name", kept.name},
                      {"operation", kept.operation},
                      {"request", request},
                      {"answer", std::move(answer)},
                      {"model", fmt::format("swathbook {}", version)}};
    if (kind == EntryKind::stand && request.contains("geometry")) {
        body["boundary"] = boundary_of(request["geometry"]);
    }
    const notebook::Draft draft{author, kind, subject, body.dump()};
    SWATHBOOK_CHECK(notebook->append(std::span(&draft, 1)));
    return subject;
}

}  // namespace swathbook::cli
