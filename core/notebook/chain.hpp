#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/notebook/entry.hpp"

namespace swathbook::notebook {

/// What can be wrong with the place of an entry in its device's chain.
enum class ChainFault : std::uint8_t {
    altered,       ///< the content does not give the hash
    missing_link,  ///< the entry before it is not here
    fork,          ///< another entry follows the same entry
    out_of_order,  ///< its stamp is not later than that of the entry before it
    same_id,       ///< another entry with the same id but other content is here
};
[[nodiscard]] std::string_view word_of(ChainFault fault);

struct ChainProblem {
    Uuid device;
    Uuid entry;
    ChainFault fault = ChainFault::altered;

    auto operator<=>(const ChainProblem&) const = default;
};

/// One sentence for people, naming the entry and what to do.
[[nodiscard]] std::string text_of(const ChainProblem& problem);

/// What one link of a chain needs to be checked; 100 bytes an entry, so that a long notebook can be
/// verified without holding its bodies.
struct Link {
    Uuid id;
    Uuid device;
    HybridTime made;
    Digest previous{};
    Digest hash{};
    bool is_altered = false;  ///< the content did not give the hash

    bool operator==(const Link&) const = default;
};
[[nodiscard]] Link link_of(const EntryView& entry);

/// Checks the chains of all devices.
///
/// The answer is the same whatever the order of the links; one link given twice counts once. A
/// chain whose last entries were cut off looks whole: only a head kept elsewhere (on a printed
/// record, on another device) can show that.
///
/// @return problems sorted by device and entry; empty when all is well
[[nodiscard]] std::vector<ChainProblem> verify_chains(std::span<const Link> given);
[[nodiscard]] std::vector<ChainProblem> verify_chains(std::span<const Entry> entries);

}  // namespace swathbook::notebook
