#include <cstddef>
#include <string>

#include "api/language/languages.hpp"

/// Takes the text of data/language/es.tsv: from then on requests may say "language": "es". The
/// sentences are not part of the module, so that who works in English does not fetch them.
///
/// @return 1 when it was read, 0 when it is no catalogue; the one before stays
extern "C" __attribute__((export_name("swathbook_language"), used)) int swathbook_language(
    const char* text, std::size_t bytes) {
    return swathbook::api::load_language(std::string(text, bytes)) ? 1 : 0;
}
