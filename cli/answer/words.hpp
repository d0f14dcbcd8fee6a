#pragma once

#include <string_view>

#include "api/language/labels.hpp"

namespace swathbook::cli {

/// The labels that answers are printed with: English until speak() says another language. One
/// command prints one answer, so the language is said once.
[[nodiscard]] const api::Labels& words();
/// @param language "en" or "es"; any other is English
void speak(std::string_view language);

}  // namespace swathbook::cli
