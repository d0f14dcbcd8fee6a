#pragma once

#include <string>
#include <string_view>

#include "core/base/result.hpp"
#include "core/base/uuid.hpp"

namespace swathbook::cli {

/// A name for a thing that is not in any notebook yet.
[[nodiscard]] Result<Uuid> new_thing();

/// An answered operation that is to be kept, with exactly what it was asked.
struct Kept {
    std::string notebook;  ///< --notebook
    std::string author;    ///< --author
    std::string name;      ///< what the user calls it
    std::string_view operation;
    std::string_view request;  ///< JSON
    std::string_view answer;   ///< JSON
};

/// Writes it into the notebook: the request, the answer and the version that gave it. An area
/// becomes a stand with its boundary, loads become a load, everything measured a calibration.
/// @return the id of the new thing
[[nodiscard]] Result<Uuid> keep(const Kept& kept);

}  // namespace swathbook::cli
