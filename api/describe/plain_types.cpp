#include <algorithm>
#include <cmath>
#include <limits>

#include <fmt/format.h>

#include "api/describe/values.hpp"
#include "core/base/assert.hpp"

namespace swathbook::api {
namespace {

auto wrong_type(const Path& path, std::string_view expected, const Json& json) {
    return fail(ErrorCode::invalid_input, path.text(),
                fmt::format("Expected {}, got {}.", expected, json_text(json)));
}

class NumberType final : public Type {
public:
    [[nodiscard]] Shape shape() const override { return Shape::number; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override {
        if (!json.is_number()) {
            return wrong_type(path, "a plain number", json);
        }
        *static_cast<double*>(into) = json.get<double>();
        return {};
    }
    void write(JsonWriter& out, const void* from, const WriteStyle&) const override {
        out.number(*static_cast<const double*>(from));
    }
    [[nodiscard]] Json schema(Json&) const override { return {{"type", "number"}}; }
    [[nodiscard]] std::string typescript(Json&) const override { return "number"; }
    [[nodiscard]] std::string example() const override { return "0.5"; }
};

class IntegerType final : public Type {
public:
    [[nodiscard]] Shape shape() const override { return Shape::integer; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override {
        const double number = json.is_number() ? json.get<double>() : std::nan("");
        constexpr int most = std::numeric_limits<int>::max();
        if (std::fabs(number) > most) {
            return fail(ErrorCode::out_of_range, path.text(),
                        fmt::format("{} is beyond the limit of {}.", json_text(json), most));
        }
        if (std::floor(number) != number) {
            return wrong_type(path, "a whole number", json);
        }
        *static_cast<int*>(into) = static_cast<int>(number);
        return {};
    }
    void write(JsonWriter& out, const void* from, const WriteStyle&) const override {
        out.integer(*static_cast<const int*>(from));
    }
    [[nodiscard]] Json schema(Json&) const override { return {{"type", "integer"}}; }
    [[nodiscard]] std::string typescript(Json&) const override { return "number"; }
    [[nodiscard]] std::string example() const override { return "3"; }
};

class BooleanType final : public Type {
public:
    [[nodiscard]] Shape shape() const override { return Shape::boolean; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override {
        if (!json.is_boolean()) {
            return wrong_type(path, "true or false", json);
        }
        *static_cast<bool*>(into) = json.get<bool>();
        return {};
    }
    void write(JsonWriter& out, const void* from, const WriteStyle&) const override {
        out.boolean(*static_cast<const bool*>(from));
    }
    [[nodiscard]] Json schema(Json&) const override { return {{"type", "boolean"}}; }
    [[nodiscard]] std::string typescript(Json&) const override { return "boolean"; }
    [[nodiscard]] std::string example() const override { return "true"; }
};

class TextType final : public Type {
public:
    static constexpr std::size_t max_bytes = 20000;

    [[nodiscard]] Shape shape() const override { return Shape::text; }
    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override {
        if (!json.is_string()) {
            return wrong_type(path, "text in quotes", json);
        }
        const auto& text = json.get_ref<const std::string&>();
        if (text.size() > max_bytes) {
            return fail(ErrorCode::out_of_range, path.text(),
                        fmt::format("The text is {} bytes long; the limit is {} bytes. Shorten it.",
                                    text.size(), max_bytes));
        }
        *static_cast<std::string*>(into) = text;
        return {};
    }
    void write(JsonWriter& out, const void* from, const WriteStyle& style) const override {
        const auto& text = *static_cast<const std::string*>(from);
        if (style.catalogue != nullptr && style.is_spoken) {
            out.text(style.catalogue->say(text).text);
        } else {
            out.text(text);
        }
    }
    [[nodiscard]] Json schema(Json&) const override {
        return {{"type", "string"}, {"maxLength", max_bytes}};
    }
    [[nodiscard]] std::string typescript(Json&) const override { return "string"; }
    [[nodiscard]] std::string example() const override { return "\"text\""; }
};

template <class T>
const Type& one() {
    static const T type;
    return type;
}

}  // namespace

const Type& number_type() {
    return one<NumberType>();
}
const Type& integer_type() {
    return one<IntegerType>();
}
const Type& boolean_type() {
    return one<BooleanType>();
}
const Type& text_type() {
    return one<TextType>();
}

Result<void> ChoiceType::read(const Json& json, void* into, const Path& path) const {
    std::vector<std::string_view> words;
    for (const ChoiceRow& row : rows_) {
        if (json.is_string() && json.get_ref<const std::string&>() == row.word) {
            put_(into, row.value);
            return {};
        }
        words.push_back(row.word);
    }
    const std::string given = json.is_string() ? json.get<std::string>() : json_text(json);
    return fail(ErrorCode::invalid_input, path.text(),
                fmt::format("\"{}\" is not one of the choices. {}", given, suggest(given, words)));
}

void ChoiceType::write(JsonWriter& out, const void* from, const WriteStyle&) const {
    const long long value = get_(from);
    const auto row = std::find_if(rows_.begin(), rows_.end(),
                                  [value](const ChoiceRow& r) { return r.value == value; });
    SWATHBOOK_ASSERT(row != rows_.end(), "every enumerator has its word in the description");
    out.text(row->word);
}

Json ChoiceType::schema(Json& definitions) const {
    const std::string key(name_);
    if (!definitions.contains(key)) {
        Json options = Json::array();
        for (const ChoiceRow& row : rows_) {
            options.push_back({{"const", row.word}, {"description", row.doc}});
        }
        definitions[key] = {{"oneOf", std::move(options)}};
    }
    return {{"$ref", "#/$defs/" + key}};
}

std::string ChoiceType::typescript(Json& declarations) const {
    const std::string key(name_);
    if (!declarations.contains(key)) {
        std::string text = "export type " + key + " =";
        for (const ChoiceRow& row : rows_) {
            text += fmt::format("\n  | \"{}\" /* {} */", row.word, row.doc);
        }
        declarations[key] = text + ";\n";
    }
    return key;
}

std::vector<std::pair<std::string_view, std::string_view>> ChoiceType::choices() const {
    std::vector<std::pair<std::string_view, std::string_view>> pairs;
    pairs.reserve(rows_.size());
    for (const ChoiceRow& row : rows_) {
        pairs.emplace_back(row.word, row.doc);
    }
    return pairs;
}

std::string ChoiceType::example() const {
    return rows_.empty() ? "\"\"" : fmt::format("\"{}\"", rows_.front().word);
}

}  // namespace swathbook::api
