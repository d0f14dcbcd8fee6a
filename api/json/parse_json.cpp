#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include <fmt/format.h>

#include "api/json/json.hpp"

namespace swathbook::api {
namespace {

constexpr std::size_t max_text_bytes = std::size_t{64} << 20;
constexpr std::size_t max_depth = 64;

std::string place_of(std::string_view text, std::size_t byte) {
    const std::string_view before = text.substr(0, std::min(byte, text.size()));
    const auto line = std::count(before.begin(), before.end(), '\n') + 1;
    const std::size_t line_start =
        before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
    return fmt::format("line {}, column {}", line, before.size() - line_start + 1);
}

/// Builds the value from the parser's events, so that a repeated key is seen when it is read.
class StrictBuilder {
public:
    using number_integer_t = Json::number_integer_t;
    using number_unsigned_t = Json::number_unsigned_t;
    using number_float_t = Json::number_float_t;
    using string_t = Json::string_t;
    using binary_t = Json::binary_t;

    explicit StrictBuilder(Json& root) : root_(root) {}

    bool null() { return put(nullptr); }
    bool boolean(bool value) { return put(value); }
    bool number_integer(number_integer_t value) { return put(value); }
    bool number_unsigned(number_unsigned_t value) { return put(value); }
    bool number_float(number_float_t value, const string_t& text) {
        return std::isfinite(value) ? put(value) : refuse("The number " + text + " is too large.");
    }
    bool string(string_t& value) { return put(std::move(value)); }
    bool binary(binary_t&) { return refuse("Binary values are not JSON."); }
    bool start_object(std::size_t) { return open(Json::object()); }
    bool start_array(std::size_t) { return open(Json::array()); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }
    bool key(string_t& name) {
        if (open_.back()->contains(name)) {
            return refuse("The key \"" + name + "\" stands twice in one object; keep one of them.");
        }
        key_ = std::move(name);
        return true;
    }
    bool parse_error(std::size_t byte, const std::string&, const nlohmann::detail::exception&) {
        byte_ = byte;
        return false;
    }

    [[nodiscard]] const std::string& refusal() const { return refusal_; }
    [[nodiscard]] std::size_t byte() const { return byte_; }

private:
    template <class Value>
    bool put(Value&& value) {
        place(std::forward<Value>(value));
        return true;
    }
    template <class Value>
    Json* place(Value&& value) {
        if (open_.empty()) {
            root_ = std::forward<Value>(value);
            return &root_;
        }
        Json& parent = *open_.back();
        if (parent.is_array()) {
            parent.push_back(std::forward<Value>(value));
            return &parent.back();
        }
        Json& child = parent[key_];
        child = std::forward<Value>(value);
        return &child;
    }
    bool open(Json container) {
        if (open_.size() >= max_depth) {
            return refuse(fmt::format("The JSON is nested deeper than {} levels.", max_depth));
        }
        // A parent's storage may move while a sibling is added, never while one of its children is
        // open.
        open_.push_back(place(std::move(container)));
        return true;
    }
    bool close() {
        open_.pop_back();
        return true;
    }
    bool refuse(std::string why) {
        refusal_ = std::move(why);
        return false;
    }

    Json& root_;
    std::vector<Json*> open_;
    std::string key_;
    std::string refusal_;
    std::size_t byte_ = 0;
};

}  // namespace

Result<Json> parse_json(std::string_view text) {
    if (text.size() > max_text_bytes) {
        return fail(
            ErrorCode::out_of_range, "",
            fmt::format("The JSON text is {} bytes long; the limit is {} bytes. Split the request.",
                        text.size(), max_text_bytes));
    }
    Json value;
    StrictBuilder builder(value);
    if (Json::sax_parse(text, &builder)) {
        return value;
    }
    if (!builder.refusal().empty()) {
        return fail(ErrorCode::invalid_input, "", builder.refusal());
    }
    const std::size_t byte = builder.byte() == 0 ? 0 : builder.byte() - 1;
    return fail(
        ErrorCode::invalid_input, "",
        fmt::format(
            "The request is not JSON: it breaks at {}. Check quotes, commas and brackets there.",
            place_of(text, byte)));
}

}  // namespace swathbook::api
