#include "core/tips/rate_working.hpp"

#include <string_view>

#include <fmt/format.h>

#include "core/quantity/print.hpp"

namespace swathbook::tips {
namespace {

std::string_view constant(UnitSystem units) {
    return units == UnitSystem::us ? "5940" : "600";
}

std::string width_text(Length width, UnitSystem units) {
    return show(width, units == UnitSystem::us ? "in" : "m");
}

}  // namespace

std::string rate_expression(Flow flow, Speed speed, Length width, UnitSystem units) {
    return fmt::format("{} x {} / ({} x {})", constant(units), show(flow, units),
                       show(speed, units), width_text(width, units));
}

std::string flow_expression(MixPerArea rate, Speed speed, Length width, UnitSystem units) {
    return fmt::format("{} x {} x {} / {}", show(rate, units), show(speed, units),
                       width_text(width, units), constant(units));
}

}  // namespace swathbook::tips
