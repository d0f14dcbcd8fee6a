// The area of a stand drawn on a map, and what a loosely walked boundary leaves open.
#include "core/geometry/area.hpp"

#include "api/describe/geojson.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

// On the equator, in mid-ocean: no place anybody stewards.
constexpr auto stand = R"({"type": "Polygon", "coordinates":
    [[[-30.0, 0.0], [-29.998, 0.0], [-29.998, 0.001], [-30.0, 0.001], [-30.0, 0.0]]]})";

Result<bool> show_area() {
    geometry::AreaRequest request;
    SWATHBOOK_TRY(polygons, api::polygons_in(api::Json::parse(stand), api::Path{}));
    request.geometry = polygons;
    // Each corner may be 3 m off along each axis: the answer becomes an interval.
    SWATHBOOK_TRY(position_error, parse<Kind::length>("3 m"));
    request.position_error = position_error;

    Notes notes(UnitSystem::metric);
    SWATHBOOK_TRY(answer, geometry::area(request, notes));
    // By hand: on the equator a degree is 111.32 km east and 110.57 km north, so the sides are
    // 222.64 m and 110.57 m, and the ground 24,617 m2 or 2.462 ha.
    bool all = examples::agrees("The stand covers " + show(answer.area.value, UnitSystem::metric),
                                answer.area.value.in(hectares), {2.462, "ha", 0.001});
    // By hand: a corner moves half its diagonal; four corners at 3 m with a diagonal of 248.6 m
    // give 3 x 248.6 / 2 x sqrt 4 = 746 m2 as standard deviation, x 1.96 = 1,462 m2 each way.
    const Area half_interval = (*answer.area.high - *answer.area.low) / 2;
    all &= examples::agrees("Give or take " + show(half_interval, "m2"),
                            half_interval.in(square_metres), {1462, "m2", 3});
    return all;
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_area());
}
