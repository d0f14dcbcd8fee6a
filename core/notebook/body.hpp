#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "core/base/result.hpp"

namespace swathbook::notebook {

/// The body of an entry is one JSON object (RFC 8259) in a canonical form, so that its bytes can be
/// hashed and read without a JSON library:
/// no white space outside strings; members in ascending order of name, each once; names of 1 to 64
/// characters of a-z 0-9 _ . ; values as they were typed (digits are never rewritten); UTF-8.
/// At most 1 MiB, 1,000 members, 32 levels. A member whose value is null clears the field.

inline constexpr std::size_t largest_body = 1U << 20;
inline constexpr std::size_t most_fields = 1000;
inline constexpr int deepest_level = 32;

/// One member of a body. `value` is canonical JSON text.
struct BodyField {
    std::string_view name;
    std::string_view value;
};

/// Brings a JSON object into the canonical form.
/// @errors invalid_input{body} with the place, when it is not such an object
[[nodiscard]] Result<std::string> canonical_body(std::string_view json);

/// The same for one value of a field: any JSON value.
/// @errors invalid_input{field}
[[nodiscard]] Result<std::string> canonical_value(std::string_view json, std::string_view field);

/// True when the text already is canonical, byte for byte.
[[nodiscard]] bool is_canonical_body(std::string_view body);

/// True for valid UTF-8 (RFC 3629: no surrogates, no overlong forms).
[[nodiscard]] bool is_utf8(std::string_view text);

/// Walks the members of a canonical body without copying. On bytes that are not canonical it stops
/// and says so; it never reads outside them.
class BodyReader {
public:
    explicit BodyReader(std::string_view body);

    /// The next member, or nothing at the end or at a fault.
    [[nodiscard]] std::optional<BodyField> next();
    /// True when the walk ended at a fault.
    [[nodiscard]] bool is_broken() const { return is_broken_; }

private:
    [[nodiscard]] std::size_t end_of_value(std::size_t begin) const;
    std::optional<BodyField> break_off();

    std::string_view body_;
    std::size_t place_ = 1;
    bool is_broken_ = false;
    bool is_finished_ = false;
};

/// The value of one member; nothing when it is absent or null.
[[nodiscard]] std::optional<std::string_view> field_of(std::string_view body,
                                                       std::string_view name);

/// JSON text of a string: quoted, with the escapes of RFC 8259.
[[nodiscard]] std::string json_string(std::string_view text);

/// The characters of a JSON string; nothing when `json` is not a string.
[[nodiscard]] std::optional<std::string> text_of_json_string(std::string_view json);

/// Builds a canonical body from names and JSON values.
/// @errors invalid_input{name} when a name or a value is malformed or a name comes twice
[[nodiscard]] Result<std::string> make_body(
    const std::vector<std::pair<std::string, std::string>>& fields);

}  // namespace swathbook::notebook
