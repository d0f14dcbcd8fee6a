#pragma once

#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace swathbook::wasm {

/// One act on the notebook that lives in this module's memory; a JSON object in, a JSON object out.
/// swathbook.d.mts tells what each act takes and gives.
///
/// @errors not_found for an act that does not exist; unavailable{device} for any act on the state
///         before `open`; as the parts of core/notebook behind the act. After an error everything
///         is as it was.
[[nodiscard]] Result<std::string> book(std::string_view act, std::string_view json);

}  // namespace swathbook::wasm
