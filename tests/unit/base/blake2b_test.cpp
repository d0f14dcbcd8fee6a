#include "core/base/blake2b.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>
#include <sodium.h>

namespace swathbook {
namespace {

std::vector<std::uint8_t> by_library(const std::vector<std::uint8_t>& bytes, std::size_t length) {
    std::vector<std::uint8_t> digest(length);
    crypto_generichash(digest.data(), length, bytes.data(), bytes.size(), nullptr, 0);
    return digest;
}

std::vector<std::uint8_t> by_us(const std::vector<std::uint8_t>& bytes, std::size_t length) {
    Blake2b hash(length);
    hash.add(bytes);
    const auto full = hash.finish();
    return {full.begin(), full.begin() + static_cast<std::ptrdiff_t>(length)};
}

// RFC 7693 appendix A: BLAKE2b-512 of "abc".
TEST(Blake2b, the_published_example_comes_out) {
    Blake2b hash(64);
    hash.add("abc");
    EXPECT_EQ(hex_of(hash.finish()),
              "ba80a53f981c4d0d6a2797b69f12f6e94c212f14685ac4b74b12bb6fdbffa2d1"
              "7d87c5392aab792dc252d5de4533cc9518d38aa8dbf1925ab92386edd4009923");
}

// RFC 7693 appendix E: the self-test of BLAKE2b, whose inputs come from a Fibonacci generator.
std::vector<std::uint8_t> fibonacci_bytes(std::size_t count, std::uint32_t seed) {
    std::uint32_t a = 0xDEAD4BAD * seed;
    std::uint32_t b = 1;
    std::vector<std::uint8_t> out(count);
    for (std::uint8_t& byte : out) {
        const std::uint32_t t = a + b;
        a = b;
        b = t;
        byte = static_cast<std::uint8_t>(t >> 24);
    }
    return out;
}

TEST(Blake2b, the_published_unkeyed_self_test_inputs_agree_with_the_library) {
    for (const std::size_t length : {20U, 32U, 48U, 64U}) {
        for (const std::size_t size : {0U, 3U, 128U, 129U, 255U, 1024U}) {
            const auto input = fibonacci_bytes(size, static_cast<std::uint32_t>(size));
            EXPECT_EQ(by_us(input, length), by_library(input, length)) << length << " " << size;
        }
    }
}

// libsodium's generichash is BLAKE2b; its shortest digest is 16 bytes.
RC_GTEST_PROP(Blake2b, agrees_with_the_library_however_the_input_is_cut, ()) {
    const auto input = *rc::gen::container<std::vector<std::uint8_t>>(
        *rc::gen::inRange<std::size_t>(0, 700), rc::gen::arbitrary<std::uint8_t>());
    const auto length = *rc::gen::inRange<std::size_t>(16, 65);
    const auto cut = *rc::gen::inRange<std::size_t>(0, input.size() + 1);
    Blake2b hash(length);
    hash.add(std::span(input).subspan(0, cut));
    hash.add(std::span(input).subspan(cut));
    const auto full = hash.finish();
    RC_ASSERT(std::vector<std::uint8_t>(full.begin(),
                                        full.begin() + static_cast<std::ptrdiff_t>(length)) ==
              by_library(input, length));
}

TEST(Blake2b, a_digest_is_read_back_and_bad_text_is_refused) {
    const Digest digest = blake2b_256("abc");
    EXPECT_EQ(parse_digest(hex_of(digest), "previous").value(), digest);
    for (const std::string& text : {std::string(), std::string(63, 'a'), std::string(64, 'g')}) {
        const auto read = parse_digest(text, "previous");
        ASSERT_FALSE(read.has_value());
        EXPECT_EQ(read.error().code, ErrorCode::invalid_input);
        EXPECT_EQ(read.error().field, "previous");
    }
}

}  // namespace
}  // namespace swathbook
