#include "core/job/detail/tip_catches.hpp"

#include <cstddef>
#include <string>

#include <fmt/format.h>

#include "core/quantity/require.hpp"

namespace swathbook::job::detail {
namespace {

using calibration::TipFlow;

constexpr std::size_t most_tips = 500;

TipFlow caught_flow(const Reading<Kind::flow>& flow) {
    return {flow.value, flow.half_step_si / flow.value.si()};
}

TipFlow caught_flow(const Reading<Kind::volume>& volume, const Reading<Kind::duration>& time) {
    return {Flow::from_si(volume.value.si() / time.value.si()),
            volume.half_step_si / volume.value.si() + time.half_step_si / time.value.si()};
}

Result<std::vector<TipFlow>> flows_of_volumes(const TipCheckRequest& request) {
    if (!request.catch_time) {
        return fail(ErrorCode::invalid_input, "catch_time",
                    "The catches are volumes, so the time they were caught for is needed. Give it "
                    "as \"30 s\".");
    }
    SWATHBOOK_CHECK(require_usable(request.catch_time, "catch_time", "The catch time"));
    std::vector<TipFlow> flows;
    for (std::size_t i = 0; i < request.volumes.size(); ++i) {
        SWATHBOOK_CHECK(require_usable(request.volumes[i], fmt::format("volumes[{}]", i),
                                       fmt::format("The catch of tip {}", i + 1)));
        flows.push_back(caught_flow(request.volumes[i], *request.catch_time));
    }
    return flows;
}

Result<TipFlow> flow_of_catch(const TipCatch& one, std::size_t index,
                              const TipCheckRequest& request) {
    const std::string where = fmt::format("catches[{}]", index);
    const std::string what = fmt::format("The catch of tip {}", index + 1);
    if (one.flow.has_value() == one.volume.has_value()) {
        return fail(ErrorCode::invalid_input, where,
                    what + " needs either a flow, or a volume with its time; not both.");
    }
    if (one.flow) {
        SWATHBOOK_CHECK(require_usable(one.flow, where + ".flow", what));
        return caught_flow(*one.flow);
    }
    const auto& time = one.time ? one.time : request.catch_time;
    if (!time) {
        return fail(
            ErrorCode::invalid_input, where + ".time",
            what + " is a volume without a time. Give its time, or one catch_time for all.");
    }
    SWATHBOOK_CHECK(require_usable(one.volume, where + ".volume", what));
    SWATHBOOK_CHECK(require_usable(*time, where + ".time", "The catch time"));
    return caught_flow(*one.volume, *time);
}

Result<std::vector<TipFlow>> flows_of_catches(const TipCheckRequest& request) {
    std::vector<TipFlow> flows;
    for (std::size_t i = 0; i < request.catches.size(); ++i) {
        SWATHBOOK_TRY(flow, flow_of_catch(request.catches[i], i, request));
        flows.push_back(flow);
    }
    return flows;
}

Result<std::vector<TipFlow>> flows_given(const TipCheckRequest& request) {
    std::vector<TipFlow> flows;
    for (std::size_t i = 0; i < request.flows.size(); ++i) {
        SWATHBOOK_CHECK(require_usable(request.flows[i], fmt::format("flows[{}]", i),
                                       fmt::format("The flow of tip {}", i + 1)));
        flows.push_back(caught_flow(request.flows[i]));
    }
    return flows;
}

}  // namespace

Result<std::vector<TipFlow>> read_tip_flows(const TipCheckRequest& request) {
    const std::size_t ways = (request.flows.empty() ? 0U : 1U) +
                             (request.volumes.empty() ? 0U : 1U) +
                             (request.catches.empty() ? 0U : 1U);
    if (ways != 1) {
        return fail(ErrorCode::invalid_input, "flows",
                    "Give what each tip was caught at in one way: flows (\"0.405 gal/min\", ...), "
                    "or volumes with one catch_time, or catches one by one.");
    }
    const std::size_t count =
        request.flows.size() + request.volumes.size() + request.catches.size();
    if (count > most_tips) {
        return fail(ErrorCode::out_of_range, "flows",
                    fmt::format("There are {} tips; the limit is {}. Check them by section.", count,
                                most_tips));
    }
    if (!request.volumes.empty()) {
        return flows_of_volumes(request);
    }
    return request.catches.empty() ? flows_given(request) : flows_of_catches(request);
}

}  // namespace swathbook::job::detail
