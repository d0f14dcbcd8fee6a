#include "core/base/uuid.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace swathbook {
namespace {

// RFC 9562 appendix A.6: Unix time 0x017F22E279B0 ms, rand_a 0xCC3, rand_b 0x18C4DC0C0C07398F.
TEST(Uuid, the_published_version_7_example_comes_out) {
    const Uuid id =
        make_uuid(0x017F22E279B0, {0x0C, 0xC3, 0x18, 0xC4, 0xDC, 0x0C, 0x0C, 0x07, 0x39, 0x8F});
    EXPECT_EQ(text_of(id), "017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
}

TEST(Uuid, text_that_is_no_id_is_refused) {
    for (const char* text :
         {"", "017f22e2-79b0-7cc3-98c4-dc0c0c07398", "017f22e279b07cc398c4dc0c0c07398f",
          "017f22e2-79b0-7cc3-98c4-dc0c0c07398g", "017f22e2-79b0-7cc3-98c4xdc0c0c07398f"}) {
        const auto id = parse_uuid(text, "subject");
        ASSERT_FALSE(id.has_value()) << text;
        EXPECT_EQ(id.error().code, ErrorCode::invalid_input);
        EXPECT_EQ(id.error().field, "subject");
    }
}

RC_GTEST_PROP(Uuid, ids_sort_by_age_and_read_back, ()) {
    const auto random = *rc::gen::arbitrary<std::array<std::uint8_t, 10>>();
    const auto other = *rc::gen::arbitrary<std::array<std::uint8_t, 10>>();
    const auto now = *rc::gen::inRange<std::int64_t>(0, std::int64_t{1} << 47);
    const Uuid id = make_uuid(now, random);
    RC_ASSERT(parse_uuid(text_of(id), "id").value() == id);
    RC_ASSERT(id < make_uuid(now + 1, other));
    RC_ASSERT(text_of(id) < text_of(make_uuid(now + 1, other)));
}

}  // namespace
}  // namespace swathbook
