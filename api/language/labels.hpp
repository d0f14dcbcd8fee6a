#pragma once

#include <string>
#include <string_view>

#include "api/describe/type.hpp"
#include "core/language/catalogue.hpp"

namespace swathbook::api {

/// What stands before fields and for choices, in one language: data/language/labels.es.tsv, or the
/// descriptions themselves for English.
class Labels {
public:
    /// English, and any language whose labels are not here.
    Labels() = default;
    /// @param language "en" or "es"
    [[nodiscard]] static const Labels& in(std::string_view language);

    /// "Mean course time" of a field. @param owner name of the struct it is in; a line
    /// "@Owner.field" goes before the label's own
    [[nodiscard]] std::string label_of(std::string_view owner, const Field& field) const;
    /// One sentence on what the field is.
    [[nodiscard]] std::string doc_of(const Field& field) const;
    /// A choice in words: "flow and speed".
    [[nodiscard]] std::string choice(std::string_view word) const;
    /// A text of a description, or a word of the tables: "yes", "Working".
    [[nodiscard]] std::string text(std::string_view core_text) const;

private:
    explicit Labels(language::Catalogue catalogue) : catalogue_(std::move(catalogue)) {}

    language::Catalogue catalogue_;
};

/// Labels, docs and choices of every operation as JSON:
///   {"language": "es",
///    "operations": {"calibrate": {"summary": "..."}},
///    "structs": {"CalibrateRequest": {"width": {"label": "Ancho", "doc": "..."}}},
///    "choices": {"SprayerKind": {"boom": {"label": "barra", "doc": "..."}}}}
[[nodiscard]] std::string labels_json(std::string_view language);

}  // namespace swathbook::api
