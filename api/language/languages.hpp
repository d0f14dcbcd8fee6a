#pragma once

#include <string>
#include <string_view>

#include "core/language/catalogue.hpp"

namespace swathbook::api {

/// The languages a request may ask for. English is what the core says by itself.
inline constexpr std::string_view english = "en";
inline constexpr std::string_view spanish = "es";

/// The catalogue of a language; nullptr for English, and for a language whose catalogue is not
/// here. Native programs carry the Spanish one; the WebAssembly module is given it
/// (load_language).
[[nodiscard]] const language::Catalogue* catalogue_of(std::string_view language);

/// Takes the text of data/language/es.tsv in place of what is there. Not to be called while
/// another thread asks for an answer.
/// @errors corrupt_data when it is no catalogue; the one before stays
[[nodiscard]] Result<void> load_language(std::string text);

/// A sentence of the core in a language; English when there is no catalogue.
[[nodiscard]] std::string in_language(const language::Catalogue* catalogue, std::string_view text);

}  // namespace swathbook::api
