#include "api/language/labels.hpp"

#include <algorithm>
#include <vector>

#include <fmt/format.h>

#include "api/language/built_in.hpp"
#include "api/language/languages.hpp"
#include "api/operation.hpp"

namespace swathbook::api {

const Labels& Labels::in(std::string_view language) {
    static const Labels in_english;
    static const Labels in_spanish = [] {
        auto read = language::Catalogue::read(std::string(built_in_spanish_labels()));
        return read ? Labels(std::move(*read)) : Labels();
    }();
    return language == spanish ? in_spanish : in_english;
}

std::string Labels::text(std::string_view core_text) const {
    return catalogue_.size() == 0 ? std::string(core_text) : catalogue_.say(core_text).text;
}

std::string Labels::label_of(std::string_view owner, const Field& field) const {
    if (catalogue_.size() == 0) {
        return field.label();
    }
    const std::string own = fmt::format("@{}.{}", owner, field.name);
    const std::string said = catalogue_.say(own).text;
    return said == own ? text(field.label()) : said;
}

std::string Labels::doc_of(const Field& field) const {
    return text(field.doc);
}

std::string Labels::choice(std::string_view word) const {
    std::string words(word);
    std::replace(words.begin(), words.end(), '_', ' ');
    return text(words);
}

namespace {

/// Walks the descriptions once, each struct and each choice type as it is met.
class LabelWriter {
public:
    explicit LabelWriter(std::string_view language) : labels_(Labels::in(language)) {
        made_ = {{"language", language},
                 {"operations", Json::object()},
                 {"structs", Json::object()},
                 {"choices", Json::object()}};
    }

    void take(const Operation& operation) {
        made_["operations"][std::string(operation.name)] = {
            {"summary", labels_.text(operation.summary)}};
        take(operation.request());
        take(operation.answer());
    }
    [[nodiscard]] std::string text() const { return made_.dump(2); }

private:
    void take(const ObjectType& type) {
        // By the type, not by its name: two structs of one name put their fields together.
        if (std::find(seen_.begin(), seen_.end(), &type) != seen_.end()) {
            return;
        }
        seen_.push_back(&type);
        Json& fields = made_["structs"][std::string(type.name())];
        for (const Field& field : type.fields()) {
            fields[std::string(field.name)] = {{"label", labels_.label_of(type.name(), field)},
                                               {"doc", labels_.doc_of(field)}};
        }
        for (const Field& field : type.fields()) {
            take(field.type());
        }
    }

    void take(const Type& type) {
        const Type* inner = &type;
        while (inner->inner() != nullptr) {
            inner = inner->inner();
        }
        if (inner->as_object() != nullptr) {
            take(*inner->as_object());
        } else if (inner->shape() == Shape::choice) {
            take_choices(*inner);
        }
    }

    void take_choices(const Type& type) {
        Json declarations = Json::object();
        Json& choices = made_["choices"][type.typescript(declarations)];
        choices = Json::object();
        for (const auto& [word, doc] : type.choices()) {
            choices[std::string(word)] = {{"label", labels_.choice(word)},
                                          {"doc", labels_.text(doc)}};
        }
    }

    const Labels& labels_;
    Json made_;
    std::vector<const ObjectType*> seen_;
};

}  // namespace

std::string labels_json(std::string_view language) {
    LabelWriter writer(language);
    for (const Operation& operation : operations()) {
        writer.take(operation);
    }
    return writer.text();
}

}  // namespace swathbook::api
