#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace swathbook {

/// The name of a thing, unique without asking anybody.
struct Uuid {
    std::array<std::uint8_t, 16> bytes{};

    auto operator<=>(const Uuid&) const = default;
};

/// A version 7 UUID: 48 bits of Unix milliseconds, then random bits, so that ids sort by age.
///
/// @param now_ms Unix time in milliseconds, 0 to 2^48 - 1 (clamped)
/// @param random ten bytes that nobody can guess; 74 of their 80 bits are used
/// @source RFC 9562 section 5.7
[[nodiscard]] Uuid make_uuid(std::int64_t now_ms, const std::array<std::uint8_t, 10>& random);

/// Lower case, in five groups: "01890a5d-ac96-774b-bcce-b302099a8057".
[[nodiscard]] std::string text_of(const Uuid& id);

/// Reads the five-group form, either case, any version.
/// @errors invalid_input{field}
[[nodiscard]] Result<Uuid> parse_uuid(std::string_view text, std::string_view field);

}  // namespace swathbook
