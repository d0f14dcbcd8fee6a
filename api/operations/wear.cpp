#include "core/job/wear.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

template <>
struct Description<job::WearAxis> {
    static constexpr std::string_view name = "WearAxis";
    static Choices<job::WearAxis> choices() {
        return {{job::WearAxis::area, "area", "Over ground sprayed."},
                {job::WearAxis::volume, "volume", "Over liquid passed."},
                {job::WearAxis::time, "time", "Over months."}};
    }
};

template <>
struct Description<job::WearVerdict> {
    static constexpr std::string_view name = "WearVerdict";
    static Choices<job::WearVerdict> choices() {
        using V = job::WearVerdict;
        return {{V::not_enough_points, "not_enough_points", "Fewer than three to draw a line by."},
                {V::no_trend, "no_trend", "A trend cannot be told from none."},
                {V::wearing, "wearing", "The flow rises."},
                {V::falling, "falling", "The flow falls: clogged, or not measured alike."}};
    }
};

template <>
struct Description<job::WearPoint> {
    static constexpr std::string_view name = "WearPoint";
    static constexpr auto fields() {
        using T = job::WearPoint;
        return std::array{
            field<&T::date>("date", "Day of the measurement: 2031-05-14."),
            field<&T::acres_since_new>("acres_since_new", "Ground sprayed since new.")
                .like("250 ac"),
            field<&T::volume_since_new>("volume_since_new", "Liquid passed since new.")
                .like("4000 gal"),
            field<&T::flow>("flow", "Flow of the same tips each time.").required(),
            field<&T::pressure>("pressure", "Pressure, when it was not that of the new flow.")};
    }
};

template <>
struct Description<job::WearRequest> {
    static constexpr std::string_view name = "WearRequest";
    static constexpr auto fields() {
        using T = job::WearRequest;
        return std::array{
            field<&T::points>("points", "Measurements of the same tips.").required(),
            field<&T::new_flow>("new_flow", "Flow measured when they were new."),
            field<&T::rated_flow>("rated_flow", "The maker's flow, when that is not known."),
            field<&T::reference_pressure>("reference_pressure",
                                          "Pressure of the new or rated flow."),
            field<&T::limit>("limit", "Most over new; the trade's 10 % unless said.").like("10 %")};
    }
};

template <>
struct Description<job::WearRow> {
    static constexpr std::string_view name = "WearRow";
    static constexpr auto fields() {
        using T = job::WearRow;
        return std::array{field<&T::date>("date", "Day."),
                          field<&T::at>("at", "Ground, liquid or months."),
                          field<&T::flow>("flow", "Flow at the reference pressure."),
                          field<&T::over_new>("over_new", "Over new."),
                          field<&T::trend>("trend", "The line there.")};
    }
};

template <>
struct Description<job::WearAnswer> {
    static constexpr std::string_view name = "WearAnswer";
    static constexpr auto fields() {
        using T = job::WearAnswer;
        return std::array{
            field<&T::verdict>("verdict", "What can be said of the trend."),
            field<&T::text>("text", "The same in words.").labelled("In words"),
            field<&T::new_flow>("new_flow", "Flow that wear is counted from."),
            field<&T::limit>("limit", "Most over new."),
            field<&T::limit_source>("limit_source", "Where the limit is from."),
            field<&T::axis>("axis", "What the trend runs over."),
            field<&T::points>("points", "Measurements."),
            field<&T::over_new_now>("over_new_now", "As last measured."),
            field<&T::trend_now>("trend_now", "The line at the last point."),
            field<&T::over_limit_now>("over_limit_now", "Whether the last is beyond the limit."),
            field<&T::slope>("slope", "Rise for each step, with its 95 % interval."),
            field<&T::slope_per>("slope_per", "The step: 100 ac, 1000 gal, month."),
            field<&T::explained>("explained", "Share of the scatter the line explains (R2).")
                .labelled("R2"),
            field<&T::limit_at_area>("limit_at_area", "Ground at which the limit is crossed."),
            field<&T::limit_at_volume>("limit_at_volume", "Liquid at which the limit is crossed."),
            field<&T::limit_on>("limit_on", "Day the limit is crossed."),
            field<&T::limit_on_early>("limit_on_early", "Early end of its interval."),
            field<&T::limit_on_late>("limit_on_late", "Late end of its interval."),
            field<&T::rows>("rows", "Point by point.")};
    }
};

Operation wear_operation() {
    return operation<&job::wear>(
        "wear", "How a set of tips wears, and when the trend crosses the limit.", {15});
}

}  // namespace swathbook::api
