// Any bytes as GeoJSON, then through the whole area operation: no crash, no hang, an answer that is
// finite and not negative, or a refusal with words and a field.
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "api/describe/geojson.hpp"
#include "core/geometry/area.hpp"
#include "core/quantity/units.hpp"

namespace {

using namespace swathbook;

void require(bool holds) {
    if (!holds) {
        std::abort();
    }
}

void check_answer(const geometry::AreaAnswer& answer) {
    const double area = answer.area.value.si();
    // Less than nothing is rounding of a hole that fills its ring to the last digit.
    require(std::isfinite(area) && area > -1.0);
    require(std::isfinite(answer.perimeter.si()) && answer.perimeter.si() >= 0.0);
    require(answer.area.low && answer.area.high && *answer.area.low <= *answer.area.high);
    require(!answer.parts.empty());
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data),
                                size);  // NOLINT: bytes as text
    const auto json = api::parse_json(text);
    if (!json) {
        return 0;
    }
    geometry::AreaRequest request;
    const api::Path path{nullptr, "geometry", 0};
    auto set = api::polygons_in(*json, path);
    if (!set) {
        require(!set.error().detail.empty() && !set.error().field.empty());
        return 0;
    }
    request.geometry = std::move(*set);
    request.position_error = Reading<Kind::length>(Length::of(3.0, metres));
    request.edge_offset = Reading<Kind::length>(Length::of(1.0, metres));
    Notes notes(UnitSystem::us, true);
    const auto answer = geometry::area(request, notes);
    if (!answer) {
        require(!answer.error().detail.empty());
        require(answer.error().code != ErrorCode::internal);
        return 0;
    }
    check_answer(*answer);
    return 0;
}
