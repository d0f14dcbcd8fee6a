#include "core/notebook/hybrid_time.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include "tests/unit/notebook/entry_maker.hpp"

namespace swathbook::notebook {
namespace {

TEST(HybridTime, the_text_is_utc_as_gnu_date_writes_it) {
    // date -u -d @1775743385 +%FT%TZ
    EXPECT_EQ(text_of(HybridTime{april_ninth + 123, 7}), "2026-04-09T14:03:05.123Z#00007");
    EXPECT_EQ(text_of(HybridTime{0, 0}), "1970-01-01T00:00:00.000Z#00000");
    EXPECT_EQ(text_of(HybridTime{last_millisecond, 65535}), "9999-12-31T23:59:59.999Z#65535");
}

TEST(HybridTime, a_clock_that_runs_back_does_not_run_the_stamps_back) {
    const HybridTime last{april_ninth, 3};
    EXPECT_EQ(next_stamp(last, april_ninth - 3600000).value(), (HybridTime{april_ninth, 4}));
    EXPECT_EQ(next_stamp(last, april_ninth).value(), (HybridTime{april_ninth, 4}));
    EXPECT_EQ(next_stamp(last, april_ninth + 1).value(), (HybridTime{april_ninth + 1, 0}));
    EXPECT_EQ(next_stamp({april_ninth, 65535}, april_ninth).value(),
              (HybridTime{april_ninth + 1, 0}));
}

TEST(HybridTime, a_clock_outside_the_years_1970_to_9999_is_refused) {
    EXPECT_EQ(next_stamp({}, -1).error().code, ErrorCode::out_of_range);
    EXPECT_EQ(next_stamp({}, last_millisecond + 1).error().code, ErrorCode::out_of_range);
    EXPECT_EQ(next_stamp({last_millisecond, 65535}, april_ninth).error().field, "made");
}

TEST(HybridTime, a_stamp_a_day_ahead_passes_and_one_beyond_is_refused) {
    EXPECT_TRUE(check_not_ahead({april_ninth + largest_lead_ms, 0}, april_ninth).has_value());
    const auto refused = check_not_ahead({april_ninth + largest_lead_ms + 1, 0}, april_ninth);
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(refused.error().code, ErrorCode::out_of_range);
    EXPECT_EQ(refused.error().field, "made");
    EXPECT_NE(refused.error().detail.find("2026-04-10T14:03:05.001Z"), std::string::npos);
}

TEST(HybridTime, text_of_another_shape_is_refused) {
    for (const char* text : {"", "2026-04-09T14:03:05.123Z", "2026-04-09 14:03:05.123Z#00007",
                             "2026-02-30T14:03:05.123Z#00007", "2026-04-09T24:03:05.123Z#00007",
                             "2026-04-09T14:60:05.123Z#00007", "2026-04-09T14:03:60.123Z#00007",
                             "2026-04-09T14:03:05.123Z#65536", "1969-04-09T14:03:05.123Z#00007",
                             "2026-04-09T14:03:05.123Z#0000a"}) {
        const auto read = parse_hybrid_time(text, "made");
        ASSERT_FALSE(read.has_value()) << text;
        EXPECT_EQ(read.error().code, ErrorCode::invalid_input);
    }
}

RC_GTEST_PROP(HybridTime, text_reads_back_and_sorts_as_the_stamps_do, ()) {
    const auto stamps = *rc::gen::container<std::vector<std::pair<std::int64_t, std::uint16_t>>>(
        2, rc::gen::pair(rc::gen::inRange<std::int64_t>(0, last_millisecond + 1),
                         rc::gen::arbitrary<std::uint16_t>()));
    const HybridTime a{stamps[0].first, stamps[0].second};
    const HybridTime b{stamps[1].first, stamps[1].second};
    RC_ASSERT(parse_hybrid_time(text_of(a), "made").value() == a);
    RC_ASSERT((a < b) == (text_of(a) < text_of(b)));
}

RC_GTEST_PROP(HybridTime, stamps_of_a_device_always_grow, (std::vector<std::int32_t> steps)) {
    HybridTime last{april_ninth, 65530};
    std::int64_t clock = april_ninth;
    for (const std::int32_t step : steps) {
        clock += step % 5;
        const HybridTime next = next_stamp(last, clock).value();
        RC_ASSERT(next > last);
        last = next;
    }
}

}  // namespace
}  // namespace swathbook::notebook
