#include "core/geometry/area.hpp"

#include "api/describe/geojson.hpp"
#include "api/operation.hpp"

namespace swathbook::api {

using geometry::AreaAnswer;
using geometry::AreaErrorTerm;
using geometry::AreaPart;
using geometry::AreaRequest;
using geometry::BoundingBox;
using geometry::Position;
using geometry::PositionErrorMeaning;

template <>
struct Description<Position> {
    static constexpr std::string_view name = "Position";
    static constexpr auto fields() {
        return std::array{
            field<&Position::longitude_deg>("longitude", "Degrees, east positive.").required(),
            field<&Position::latitude_deg>("latitude", "Degrees, north positive.").required()};
    }
};

template <>
struct Description<PositionErrorMeaning> {
    static constexpr std::string_view name = "PositionErrorMeaning";
    static Choices<PositionErrorMeaning> choices() {
        using E = PositionErrorMeaning;
        return {{E::per_axis, "per_axis", "Standard deviation east and north each."},
                {E::radial_rms, "radial_rms", "Root mean square of the distance (RMSE)."},
                {E::radial_mean, "radial_mean", "Mean distance."},
                {E::radial_50, "radial_50", "Half of the fixes are nearer (CEP)."},
                {E::radial_95, "radial_95", "95 % of the fixes are nearer."}};
    }
};

template <>
struct Description<BoundingBox> {
    static constexpr std::string_view name = "BoundingBox";
    static constexpr auto fields() {
        return std::array{field<&BoundingBox::west_deg>("west", "Least longitude, degrees.")
                              .in_full()
                              .labelled("West, degrees"),
                          field<&BoundingBox::south_deg>("south", "Least latitude, degrees.")
                              .in_full()
                              .labelled("South, degrees"),
                          field<&BoundingBox::east_deg>("east", "Greatest longitude, degrees.")
                              .in_full()
                              .labelled("East, degrees"),
                          field<&BoundingBox::north_deg>("north", "Greatest latitude, degrees.")
                              .in_full()
                              .labelled("North, degrees")};
    }
};

template <>
struct Description<AreaRequest> {
    static constexpr std::string_view name = "AreaRequest";
    static constexpr auto fields() {
        using T = AreaRequest;
        return std::array{
            field<&T::geometry>("geometry",
                                "The ground as GeoJSON polygons, longitude first, WGS84.")
                .required(),
            field<&T::expected_near>("expected_near",
                                     "A place known to be near, to catch swapped axes and wrong "
                                     "maps."),
            field<&T::position_error>("position_error",
                                      "How far off each corner may be, each for itself (receiver "
                                      "noise).")
                .like("3 m"),
            field<&T::position_error_means>("position_error_means",
                                            "In which way the position error is stated."),
            field<&T::edge_offset>("edge_offset",
                                   "How far the whole boundary may lie too far out or in.")
                .like("2 ft")};
    }
};

template <>
struct Description<AreaPart> {
    static constexpr std::string_view name = "AreaPart";
    static constexpr auto fields() {
        using T = AreaPart;
        return std::array{
            field<&T::name>("name", "Name of the feature; empty when it has none."),
            field<&T::area>("area", "Inside the outer ring and outside the holes."),
            field<&T::holes_area>("holes_area", "Ground in the holes, taken out."),
            field<&T::holes>("holes", "Number of holes."),
            field<&T::perimeter>("perimeter", "Length of all its rings."),
            field<&T::corners>("corners", "Number of positions, closing ones not counted.")};
    }
};

template <>
struct Description<AreaErrorTerm> {
    static constexpr std::string_view name = "AreaErrorTerm";
    static constexpr auto fields() {
        using T = AreaErrorTerm;
        return std::array{
            field<&T::term>("term", "corners or edge_offset."),
            field<&T::text>("text", "What it comes from.").spoken().labelled("Comes from"),
            field<&T::deviation>("deviation", "Standard deviation of the area.")
                .labelled("Standard deviation"),
            field<&T::relative>("relative", "The same as a share of the area.")
                .labelled("Share of the area")};
    }
};

template <>
struct Description<AreaAnswer> {
    static constexpr std::string_view name = "AreaAnswer";
    static constexpr auto fields() {
        using T = AreaAnswer;
        return std::array{
            field<&T::area>("area",
                            "Ground inside the rings and outside the holes; international "
                            "acres."),
            field<&T::area_in_other_units>("area_in_other_units", "The same, hectares for acres.")
                .labelled("Area, other units")
                .shown_in("ha", "ac"),
            field<&T::perimeter>("perimeter", "Length of all rings."),
            field<&T::longest_edge>("longest_edge", "Longest line between two corners."),
            field<&T::holes>("holes", "Number of holes."),
            field<&T::corners>("corners", "Number of positions, closing ones not counted."),
            field<&T::parts>("parts", "Each polygon for itself."),
            field<&T::box>("box", "Least box that holds everything."),
            field<&T::error_terms>("error_terms", "Where the uncertainty comes from.")
                .labelled("Where the uncertainty comes from"),
            field<&T::deviation>("deviation", "Standard deviation of the area, all terms.")
                .labelled("Standard deviation"),
            field<&T::carry_more>("carry_more",
                                  "Mix to carry beyond the middle to reach the upper end.")
                .labelled("Mix to carry more")};
    }
};

Operation area_operation() {
    return operation<&geometry::area>(
        "area", "Area of mapped ground on the ellipsoid, with the error its boundary leaves.",
        {12});
}

}  // namespace swathbook::api
