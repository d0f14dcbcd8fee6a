#include "core/base/blake2b.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <bit>

#include "core/base/assert.hpp"

namespace swathbook {

namespace {

// RFC 7693 section 2.6: the initialization vector of SHA-512.
constexpr std::array<std::uint64_t, 8> initial = {
    0x6a09e667f3bcc908, 0xbb67ae8584caa73b, 0x3c6ef372fe94f82b, 0xa54ff53a5f1d36f1,
    0x510e527fade682d1, 0x9b05688c2b3e6c1f, 0x1f83d9abfb41bd6b, 0x5be0cd19137e2179};

// RFC 7693 section 2.7: the message schedule; rounds 10 and 11 repeat rows 0 and 1.
constexpr std::array<std::array<std::uint8_t, 16>, 12> schedule = {
    {{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15},
     {14, 10, 4, 8, 9, 15, 13, 6, 1, 12, 0, 2, 11, 7, 5, 3},
     {11, 8, 12, 0, 5, 2, 15, 13, 10, 14, 3, 6, 7, 1, 9, 4},
     {7, 9, 3, 1, 13, 12, 11, 14, 2, 6, 5, 10, 4, 0, 15, 8},
     {9, 0, 5, 7, 2, 4, 10, 15, 14, 1, 11, 12, 6, 8, 3, 13},
     {2, 12, 6, 10, 0, 11, 8, 3, 4, 13, 7, 5, 15, 14, 1, 9},
     {12, 5, 1, 15, 14, 13, 4, 10, 0, 7, 6, 3, 9, 2, 8, 11},
     {13, 11, 7, 14, 12, 1, 3, 9, 5, 0, 15, 4, 8, 6, 2, 10},
     {6, 15, 14, 9, 11, 3, 0, 8, 12, 2, 13, 7, 1, 4, 10, 5},
     {10, 2, 8, 4, 7, 6, 1, 5, 15, 11, 9, 14, 3, 12, 13, 0},
     {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15},
     {14, 10, 4, 8, 9, 15, 13, 6, 1, 12, 0, 2, 11, 7, 5, 3}}};

using Working = std::array<std::uint64_t, 16>;

// NOLINTNEXTLINE(readability-function-size): the seven are those of RFC 7693, section 3.1
void mix(Working& v, int a, int b, int c, int d, std::uint64_t x, std::uint64_t y) {  // size: so
    v[a] = v[a] + v[b] + x;
    v[d] = std::rotr(v[d] ^ v[a], 32);
    v[c] = v[c] + v[d];
    v[b] = std::rotr(v[b] ^ v[c], 24);
    v[a] = v[a] + v[b] + y;
    v[d] = std::rotr(v[d] ^ v[a], 16);
    v[c] = v[c] + v[d];
    v[b] = std::rotr(v[b] ^ v[c], 63);
}

int digit_of(char character) {
    if (character >= '0' && character <= '9') {
        return character - '0';
    }
    if (character >= 'a' && character <= 'f') {
        return character - 'a' + 10;
    }
    if (character >= 'A' && character <= 'F') {
        return character - 'A' + 10;
    }
    return -1;
}

}  // namespace

Blake2b::Blake2b(std::size_t length) : state_(initial), length_(length) {
    const bool is_possible = length >= 1 && length <= 64;
    SWATHBOOK_ASSERT(is_possible, "a BLAKE2b digest has 1 to 64 bytes");
    state_[0] ^= 0x01010000 ^ static_cast<std::uint64_t>(length);
}

void Blake2b::compress(bool last) {
    Working v{};
    std::copy(state_.begin(), state_.end(), v.begin());
    std::copy(initial.begin(), initial.end(), v.begin() + 8);
    v[12] ^= counted_;
    if (last) {
        v[14] = ~v[14];
    }
    std::array<std::uint64_t, 16> m{};
    for (std::size_t word = 0; word < 16; ++word) {
        for (std::size_t byte = 0; byte < 8; ++byte) {
            m[word] |= static_cast<std::uint64_t>(block_[word * 8 + byte]) << (8 * byte);
        }
    }
    for (const auto& s : schedule) {
        mix(v, 0, 4, 8, 12, m[s[0]], m[s[1]]);
        mix(v, 1, 5, 9, 13, m[s[2]], m[s[3]]);
        mix(v, 2, 6, 10, 14, m[s[4]], m[s[5]]);
        mix(v, 3, 7, 11, 15, m[s[6]], m[s[7]]);
        mix(v, 0, 5, 10, 15, m[s[8]], m[s[9]]);
        mix(v, 1, 6, 11, 12, m[s[10]], m[s[11]]);
        mix(v, 2, 7, 8, 13, m[s[12]], m[s[13]]);
        mix(v, 3, 4, 9, 14, m[s[14]], m[s[15]]);
    }
    for (std::size_t i = 0; i < 8; ++i) {
        state_[i] ^= v[i] ^ v[i + 8];
    }
}

void Blake2b::add(const std::uint8_t* bytes, std::size_t count) {
    while (count > 0) {
        if (filled_ == block_.size()) {  // a full block waits until it is known not to be the last
            counted_ += block_.size();
            compress(false);
            filled_ = 0;
        }
        const std::size_t taken = std::min(count, block_.size() - filled_);
        std::copy(bytes, bytes + taken, block_.begin() + static_cast<std::ptrdiff_t>(filled_));
        filled_ += taken;
        bytes += taken;
        count -= taken;
    }
}

void Blake2b::add(std::span<const std::uint8_t> bytes) {
    add(bytes.data(), bytes.size());
}

void Blake2b::add(std::string_view text) {
    add(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
}

std::array<std::uint8_t, 64> Blake2b::finish() {
    counted_ += filled_;
    std::fill(block_.begin() + static_cast<std::ptrdiff_t>(filled_), block_.end(), std::uint8_t{0});
    compress(true);
    std::array<std::uint8_t, 64> digest{};
    for (std::size_t i = 0; i < length_; ++i) {
        digest[i] = static_cast<std::uint8_t>(state_[i / 8] >> (8 * (i % 8)));
    }
    return digest;
}

Digest blake2b_256(std::span<const std::uint8_t> bytes) {
    Blake2b hash(32);
    hash.add(bytes);
    const auto full = hash.finish();
    Digest digest{};
    std::copy_n(full.begin(), digest.size(), digest.begin());
    return digest;
}

Digest blake2b_256(std::string_view text) {
    return blake2b_256(std::span(reinterpret_cast<const std::uint8_t*>(text.data()), text.size()));
}

std::string hex_of(std::span<const std::uint8_t> bytes) {
    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    text.reserve(bytes.size() * 2);
    for (const std::uint8_t byte : bytes) {
        text.push_back(digits[byte >> 4]);
        text.push_back(digits[byte & 15]);
    }
    return text;
}

bool detail::read_hex(std::string_view text, std::span<std::uint8_t> out) {
    if (text.size() != out.size() * 2) {
        return false;
    }
    for (std::size_t i = 0; i < out.size(); ++i) {
        const int high = digit_of(text[2 * i]);
        const int low = digit_of(text[2 * i + 1]);
        if (high < 0 || low < 0) {
            return false;
        }
        out[i] = static_cast<std::uint8_t>(high * 16 + low);
    }
    return true;
}

Result<Digest> parse_digest(std::string_view text, std::string_view field) {
    Digest digest{};
    if (!detail::read_hex(text, digest)) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("\"{}\" is not a digest: 64 hexadecimal digits are wanted, {} "
                                "characters were given.",
                                text.substr(0, 70), text.size()));
    }
    return digest;
}

}  // namespace swathbook
