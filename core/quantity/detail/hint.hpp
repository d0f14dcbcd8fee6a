#pragma once

#include <string>
#include <string_view>

#include "core/quantity/detail/fault.hpp"

namespace swathbook::detail {

/// What to type in place of text that people write and that is no amount here: "4 months", "1:50",
/// "1m20s", "66 ft x 66 ft". Slow: for error messages only.
/// @return a sentence, empty when the text is none of these
[[nodiscard]] std::string hint_for(const Fault& fault, std::string_view text, const KindInfo* info);

}  // namespace swathbook::detail
