#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/notes.hpp"
#include "core/base/result.hpp"
#include "core/mix/product.hpp"
#include "core/quantity/quantity.hpp"

/// When people, stock, hay crews and seed may go back.
namespace swathbook::mix {

/// What waits for the spray.
enum class Act : std::uint8_t {
    enter,         ///< people without the label's protection
    graze,         ///< livestock other than dairy
    graze_dairy,   ///< lactating dairy animals
    cut_hay,       ///< hay or forage
    harvest,       ///< of the crop
    replant,       ///< seed or plants
    be_rained_on,  ///< rain or irrigation without washing the spray off
    slaughter,     ///< animals taken off treated forage before slaughter
};
[[nodiscard]] std::string_view word_of(Act act);

/// What can be said of one act at one place.
enum class ReentryStatus : std::uint8_t {
    known,      ///< every label was read for it; the time is the latest of theirs
    not_known,  ///< at least one label was not read for it: no time allows the act
};

/// A paddock, stand or other ground, and what was sprayed on it last.
struct ReentryPlace {
    std::string name{};
    std::string ended{};                  ///< end of the last load there, "2031-05-04T14:20-05:00"
    std::vector<std::string> products{};  ///< names of cards; empty means all of them
};

struct ReentryRequest {
    std::vector<ProductCard> products{};
    std::vector<ReentryPlace> places{};
    std::string slaughter_planned{};  ///< as `ended`; empty when none is
};

/// One act at one place.
struct ReentryAct {
    Act act = Act::enter;
    ReentryStatus status = ReentryStatus::not_known;
    std::string from{};            ///< moment it may begin, when known
    std::string animals_off_by{};  ///< for slaughter at the planned time
    std::string not_before{};      ///< when not known: what the labels that were read ask at least
    std::optional<Duration> wait{};  ///< longest wait that was entered
    /// And not before the spray has dried; absent while no label read says so and some was not
    /// read.
    std::optional<bool> until_dry{};
    std::string product{};  ///< whose label binds
    std::string where{};    ///< place on that label
    std::vector<std::string> not_entered_by{};
    std::string text{};  ///< the same in a sentence
};

struct ReentryPlaceAnswer {
    std::string name{};
    std::string ended{};
    std::vector<ReentryAct> acts{};
    std::optional<bool> until_dry{};  ///< some label asks for dry spray besides; absent as above
    std::string everything_from{};    ///< when all acts after spraying are known: the last of them
};

struct ReentryAnswer {
    std::vector<ReentryPlaceAnswer> places{};
};

/// Works out, place by place, when each act may begin: end of the last load plus the longest wait
/// of the labels used there. A day is 24 hours; parts of a minute count as a whole one.
///
/// A wait that was not typed is not zero: the act stays not known until somebody reads the label,
/// and a label that says there is no wait is entered as "0 h". Waits before slaughter run from the
/// day animals leave treated forage, so they give no time after spraying; with a planned slaughter
/// they give the last moment to take the animals off.
///
/// @errors invalid_input: no product, no place, unreadable time, name used twice; not_found: a
///         place names a product that has no card; as check_card
/// @source the label; re-entry counted from the end of the application: 40 CFR 170.305 (from
/// memory)
/// @cases  tests/cases/stems/reentry.case
[[nodiscard]] Result<ReentryAnswer> reentry(const ReentryRequest& request, Notes& notes);

}  // namespace swathbook::mix
