#include "core/base/uuid.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "core/base/blake2b.hpp"

namespace swathbook {

Uuid make_uuid(std::int64_t now_ms, const std::array<std::uint8_t, 10>& random) {
    const std::int64_t clamped = std::clamp<std::int64_t>(now_ms, 0, (std::int64_t{1} << 48) - 1);
    Uuid id;
    for (std::size_t i = 0; i < 6; ++i) {
        id.bytes[i] = static_cast<std::uint8_t>(clamped >> (8 * (5 - i)));
    }
    std::copy(random.begin(), random.end(), id.bytes.begin() + 6);
    id.bytes[6] = static_cast<std::uint8_t>(0x70 | (id.bytes[6] & 0x0f));  // version 7
    id.bytes[8] = static_cast<std::uint8_t>(0x80 | (id.bytes[8] & 0x3f));  // variant of RFC 9562
    return id;
}

std::string text_of(const Uuid& id) {
    std::string text = hex_of(id.bytes);
    for (const std::size_t place : {8U, 13U, 18U, 23U}) {
        text.insert(place, 1, '-');
    }
    return text;
}

Result<Uuid> parse_uuid(std::string_view text, std::string_view field) {
    std::array<char, 32> digits{};
    std::size_t count = 0;
    bool is_well_formed = text.size() == 36;
    for (std::size_t i = 0; is_well_formed && i < text.size(); ++i) {
        const bool is_dash_place = i == 8 || i == 13 || i == 18 || i == 23;
        if (is_dash_place) {
            is_well_formed = text[i] == '-';
        } else {
            digits[count++] = text[i];
        }
    }
    Uuid id;
    if (!is_well_formed || !detail::read_hex({digits.data(), digits.size()}, id.bytes)) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("\"{}\" is not an id. An id looks like "
                                "01890a5d-ac96-774b-bcce-b302099a8057.",
                                text.substr(0, 50)));
    }
    return id;
}

}  // namespace swathbook
