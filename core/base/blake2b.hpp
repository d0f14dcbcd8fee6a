#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.hpp"

namespace swathbook {

/// A BLAKE2b digest of 32 bytes: names an entry or a blob by its content.
using Digest = std::array<std::uint8_t, 32>;

/// BLAKE2b without a key, fed in pieces. Written here because the same code must run in
/// WebAssembly, where the platform library is absent; the tests judge it against that library.
///
/// @source RFC 7693, "The BLAKE2 Cryptographic Hash and Message Authentication Code (MAC)" (2015)
class Blake2b {
public:
    /// @param length bytes of digest wanted, 1 to 64
    explicit Blake2b(std::size_t length = 32);

    void add(std::span<const std::uint8_t> bytes);
    void add(std::string_view text);

    /// The digest in the first `length` bytes, zeros after them. Nothing may be added afterwards.
    [[nodiscard]] std::array<std::uint8_t, 64> finish();

private:
    void add(const std::uint8_t* bytes, std::size_t count);
    void compress(bool last);

    std::array<std::uint64_t, 8> state_{};
    std::array<std::uint8_t, 128> block_{};
    std::size_t filled_ = 0;
    std::uint64_t counted_ = 0;  ///< 2^64 bytes are out of reach: one word of the counter is enough
    std::size_t length_;
};

/// BLAKE2b-256 of some bytes; the same as `b2sum -l 256` prints.
[[nodiscard]] Digest blake2b_256(std::span<const std::uint8_t> bytes);
[[nodiscard]] Digest blake2b_256(std::string_view text);

/// Lower-case hexadecimal, two characters a byte.
[[nodiscard]] std::string hex_of(std::span<const std::uint8_t> bytes);

/// Reads exactly 64 hexadecimal digits, either case.
/// @errors invalid_input{field}
[[nodiscard]] Result<Digest> parse_digest(std::string_view text, std::string_view field);

namespace detail {
/// Reads 2 * out.size() hexadecimal digits; false when the length or a digit is wrong.
[[nodiscard]] bool read_hex(std::string_view text, std::span<std::uint8_t> out);
}  // namespace detail

}  // namespace swathbook
