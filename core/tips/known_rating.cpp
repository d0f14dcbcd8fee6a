#include "core/tips/known_rating.hpp"

#include <fmt/format.h>

#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::tips {
namespace {

SizeConvention usual_convention(UnitSystem units) {
    return units == UnitSystem::us ? SizeConvention::us_gallons_at_40_psi
                                   : SizeConvention::litres_at_3_bar;
}

Result<std::optional<KnownRating>> from_size(const RatingInput& input, const std::string& where,
                                             Notes& notes) {
    SWATHBOOK_TRY(size, iso_size_from_text(input.size, where + "size"));
    KnownRating known;
    known.size = size;
    known.convention = input.convention.value_or(usual_convention(notes.units()));
    known.rating = rating_of(size, known.convention);
    known.rating.exponent = input.exponent;
    if (!input.convention) {
        notes.find(
            Severity::note, "size_convention_assumed",
            fmt::format("Size {} is read as {} at {}. The other convention differs by 1.3 %: "
                        "give the convention of the maker's table to settle it.",
                        size.size, show(known.rating.flow, notes.units()),
                        show(known.rating.pressure, notes.units())),
            "US rating against ISO 10625 nominal, data/tips/source.txt");
    }
    if (!size.seen) {
        notes.find(Severity::warning, "size_from_memory",
                   fmt::format("The flow of size {} was not read in a publication. Compare it with "
                               "the maker's table before relying on it.",
                               size.size));
    }
    return known;
}

}  // namespace

Result<std::optional<KnownRating>> understand_rating(const RatingInput& input,
                                                     const std::string& where, Notes& notes) {
    SWATHBOOK_CHECK(check_exponent(input.exponent, where + "exponent"));
    SWATHBOOK_CHECK(require_usable(input.flow, where + "rated_flow", "The rated flow"));
    SWATHBOOK_CHECK(require_usable(input.pressure, where + "rated_pressure", "The rated pressure"));
    if (!input.size.empty() && input.flow) {
        return fail(ErrorCode::inconsistent, where + "rated_flow",
                    fmt::format("Both a size ({}) and a rated flow ({}) are given. Give one: the "
                                "flow from the maker's table is the surer.",
                                input.size, show(*input.flow, notes.units())));
    }
    if (!input.size.empty()) {
        if (input.pressure) {
            return fail(ErrorCode::inconsistent, where + "rated_pressure",
                        "A size carries its own rated pressure. Give the rated pressure with a "
                        "rated flow, or give the size alone.");
        }
        return from_size(input, where, notes);
    }
    if (!input.flow) {
        return std::nullopt;
    }
    KnownRating known;
    known.convention = input.convention.value_or(usual_convention(notes.units()));
    known.has_pressure = input.pressure.has_value();
    known.rating = {input.flow->value,
                    input.pressure ? input.pressure->value : Pressure::of(3.0, bars),
                    input.exponent};
    return known;
}

Flow rated_flow_at(const KnownRating& known, std::optional<Pressure> pressure) {
    return pressure && known.has_pressure ? flow_at(known.rating, *pressure) : known.rating.flow;
}

std::string describe(const KnownRating& known, UnitSystem units) {
    const std::string size = known.size ? fmt::format("size {}, ", known.size->size) : "";
    const std::string flow = show(known.rating.flow, units);
    return known.has_pressure
               ? fmt::format("{}{} at {}", size, flow, show(known.rating.pressure, units))
               : size + flow;
}

}  // namespace swathbook::tips
