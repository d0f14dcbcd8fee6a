#include "core/weather/spray_window.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "core/quantity/parse.hpp"

namespace swathbook::weather {
namespace {

template <Kind K>
Reading<K> read(std::string_view text) {
    return *parse<K>(text);
}

WeatherReading reading(std::string_view wind, std::string from = "SW") {
    WeatherReading made;
    made.taken = "2031-05-14T11:10-05:00";
    made.wind = read<Kind::speed>(wind);
    made.wind_from = std::move(from);
    made.cues = {InversionCue::none_seen};
    return made;
}

WeatherLimits limits(std::string name) {
    WeatherLimits made;
    made.name = std::move(name);
    made.max_wind = read<Kind::speed>("10 mph");
    return made;
}

SprayWindowRequest asked(std::vector<WeatherReading> readings, std::vector<WeatherLimits> all) {
    SprayWindowRequest request;
    request.readings = std::move(readings);
    request.limits = std::move(all);
    request.now = "2031-05-14T11:20-05:00";
    return request;
}

SprayWindowAnswer answered(const SprayWindowRequest& request) {
    Notes notes;
    const auto answer = spray_window(request, notes);
    EXPECT_TRUE(answer.has_value()) << (answer ? "" : answer.error().detail);
    return answer.value_or(SprayWindowAnswer{});
}

const WindowRow& row(const SprayWindowAnswer& answer, WindowCheck what) {
    return *std::find_if(answer.checks.begin(), answer.checks.end(),
                         [&](const WindowRow& each) { return each.what == what; });
}

TEST(SprayWindow, goes_by_the_limits_entered_and_lists_what_was_not) {
    const SprayWindowAnswer answer = answered(asked({reading("6 mph")}, {limits("label")}));
    EXPECT_EQ(answer.verdict, WindowVerdict::go);
    EXPECT_NE(answer.text.find("Go by the limits entered"), std::string::npos);
    EXPECT_GE(answer.not_entered.size(), 7U);
    EXPECT_EQ(row(answer, WindowCheck::max_gust).verdict, CheckVerdict::not_entered);
    EXPECT_EQ(row(answer, WindowCheck::max_wind).margin, "4 mph");
}

TEST(SprayWindow, takes_the_strictest_of_several_and_says_whose_it_is) {
    WeatherLimits strict = limits("contract");
    strict.max_wind = read<Kind::speed>("5 mph");
    const SprayWindowAnswer answer =
        answered(asked({reading("6 mph")}, {limits("label"), strict, limits("state")}));
    EXPECT_EQ(answer.verdict, WindowVerdict::stop);
    EXPECT_EQ(row(answer, WindowCheck::max_wind).whose, "contract");
    EXPECT_EQ(row(answer, WindowCheck::max_wind).margin, "-1 mph");
}

TEST(SprayWindow, is_not_known_when_nobody_typed_a_limit) {
    EXPECT_EQ(answered(asked({reading("6 mph")}, {})).verdict, WindowVerdict::not_known);
}

TEST(SprayWindow, is_not_known_when_nobody_looked_for_an_inversion) {
    WeatherReading unlooked = reading("6 mph");
    unlooked.cues.clear();
    const SprayWindowAnswer answer = answered(asked({unlooked}, {limits("label")}));
    EXPECT_EQ(answer.verdict, WindowVerdict::not_known);
    EXPECT_EQ(row(answer, WindowCheck::inversion).verdict, CheckVerdict::not_known);
}

TEST(SprayWindow, does_not_judge_by_a_reading_that_is_too_old) {
    SprayWindowRequest request = asked({reading("6 mph")}, {limits("label")});
    request.now = "2031-05-14T11:41-05:00";
    Notes notes;
    const auto answer = spray_window(request, notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->verdict, WindowVerdict::not_known);
    EXPECT_EQ(answer->readings_used, 0);
    EXPECT_FALSE(answer->mean_wind);
    EXPECT_EQ(notes.findings().front().code, "reading_old");
    request.now = "2031-05-14T11:40-05:00";
    EXPECT_EQ(answered(request).verdict, WindowVerdict::go);
}

TEST(SprayWindow, stops_for_every_cue_of_an_inversion_whatever_the_limits) {
    for (const InversionCue cue : {InversionCue::still_air, InversionCue::smoke_or_dust_hangs,
                                   InversionCue::fog_or_dew, InversionCue::clear_calm_dusk_to_dawn,
                                   InversionCue::clouds_dying_out, InversionCue::cold_air_pools}) {
        WeatherReading seen = reading("6 mph");
        seen.cues = {cue};
        const SprayWindowAnswer answer = answered(asked({seen}, {limits("label")}));
        EXPECT_EQ(answer.verdict, WindowVerdict::stop);
    }
}

MeasuredInversion pair(std::string_view low, std::string_view high) {
    return {read<Kind::length>("3 ft"), read<Kind::temperature>(low), read<Kind::length>("10 ft"),
            read<Kind::temperature>(high)};
}

TEST(SprayWindow, stops_for_air_measured_warmer_above) {
    WeatherReading measured = reading("6 mph");
    measured.measured_inversion = pair("61 degF", "64 degF");
    const SprayWindowAnswer answer = answered(asked({measured}, {limits("label")}));
    EXPECT_EQ(answer.verdict, WindowVerdict::stop);
    EXPECT_EQ(row(answer, WindowCheck::inversion).margin, "-3 degF");
}

TEST(SprayWindow, stops_in_calm_unless_the_air_above_was_measured_cooler) {
    WeatherReading calm = reading("2 mph");
    EXPECT_EQ(answered(asked({calm}, {limits("label")})).verdict, WindowVerdict::stop);
    calm.measured_inversion = pair("64 degF", "62 degF");
    EXPECT_EQ(answered(asked({calm}, {limits("label")})).verdict, WindowVerdict::go);
    calm.measured_inversion = pair("64 degF", "64 degF");
    EXPECT_EQ(answered(asked({calm}, {limits("label")})).verdict, WindowVerdict::stop);
    EXPECT_EQ(answered(asked({reading("3 mph")}, {limits("label")})).verdict, WindowVerdict::go);
}

TEST(SprayWindow, is_not_known_where_a_limit_has_no_reading) {
    WeatherLimits all = limits("label");
    all.max_temperature = read<Kind::temperature>("85 degF");
    EXPECT_EQ(answered(asked({reading("6 mph")}, {all})).verdict, WindowVerdict::not_known);
    WeatherLimits away = limits("label");
    away.keep_away = {{"school", "N", {}}};
    EXPECT_EQ(answered(asked({reading("6 mph", "")}, {away})).verdict, WindowVerdict::not_known);
}

TEST(SprayWindow, stops_when_the_wind_blows_towards_a_place_to_keep_away_from) {
    WeatherLimits away = limits("label");
    away.keep_away = {{"school", "10 deg", read<Kind::angle>("30 deg")}};
    EXPECT_EQ(answered(asked({reading("6 mph", "170")}, {away})).verdict, WindowVerdict::stop);
    EXPECT_EQ(answered(asked({reading("6 mph", "220")}, {away})).verdict, WindowVerdict::stop);
    EXPECT_EQ(answered(asked({reading("6 mph", "221")}, {away})).verdict, WindowVerdict::go);
    EXPECT_EQ(answered(asked({reading("6 mph", "350")}, {away})).verdict, WindowVerdict::go);
    // One reading of three is enough.
    EXPECT_EQ(
        answered(asked({reading("6 mph", "350"), reading("6 mph", "190"), reading("6 mph", "350")},
                       {away}))
            .verdict,
        WindowVerdict::stop);
}

TEST(SprayWindow, stops_when_the_wind_comes_from_where_it_is_not_allowed) {
    WeatherLimits from = limits("label");
    from.wind_from_allowed = {{"", "N", read<Kind::angle>("20 deg")},
                              {"", "E", read<Kind::angle>("20 deg")}};
    EXPECT_EQ(answered(asked({reading("6 mph", "345")}, {from})).verdict, WindowVerdict::go);
    EXPECT_EQ(answered(asked({reading("6 mph", "100")}, {from})).verdict, WindowVerdict::go);
    EXPECT_EQ(answered(asked({reading("6 mph", "45")}, {from})).verdict, WindowVerdict::stop);
}

TEST(SprayWindow, subtracts_the_longest_rainfast_time_from_the_rain) {
    WeatherLimits all = limits("label");
    all.rainfast = read<Kind::duration>("4 h");
    SprayWindowRequest request = asked({reading("6 mph")}, {all, limits("contract")});
    request.rainfast = read<Kind::duration>("2 h");
    request.rain_expected = "2031-05-14T17:00-05:00";
    EXPECT_EQ(answered(request).latest_stop, "2031-05-14T13:00-05:00");
    EXPECT_EQ(answered(request).time_left->si(), 6000.0);
    request.rain_expected = "2031-05-14T15:20-05:00";
    EXPECT_EQ(answered(request).verdict, WindowVerdict::stop);
    request.limits[0].rainfast.reset();
    request.rainfast.reset();
    EXPECT_EQ(answered(request).verdict, WindowVerdict::not_known);
}

TEST(SprayWindow, warns_of_a_gust_above_a_wind_limit_and_of_a_reading_at_the_limit) {
    WeatherReading gusty = reading("10 mph");
    gusty.gust = read<Kind::speed>("14 mph");
    Notes notes;
    const auto answer = spray_window(asked({gusty}, {limits("label")}), notes);
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->verdict, WindowVerdict::go);
    const auto has = [&](std::string_view code) {
        return std::any_of(notes.findings().begin(), notes.findings().end(),
                           [&](const Finding& finding) { return finding.code == code; });
    };
    EXPECT_TRUE(has("gust_over_wind_limit"));
    EXPECT_TRUE(has("within_the_reading"));
    EXPECT_FALSE(has("wind_turns"));
}

void expect_refused(const SprayWindowRequest& request, ErrorCode code, std::string_view field) {
    Notes notes;
    const auto answer = spray_window(request, notes);
    ASSERT_FALSE(answer) << field;
    EXPECT_EQ(answer.error().code, code) << field;
    EXPECT_EQ(answer.error().field, field);
}

TEST(SprayWindow, refuses_what_cannot_be_weather) {
    expect_refused(asked({}, {}), ErrorCode::invalid_input, "readings");
    SprayWindowRequest request = asked({reading("6 mph")}, {limits("")});
    expect_refused(request, ErrorCode::invalid_input, "limits[0].name");
    request.limits.clear();
    request.now.clear();
    expect_refused(request, ErrorCode::invalid_input, "now");
    request.now = "2031-05-14T10:00-05:00";
    expect_refused(request, ErrorCode::inconsistent, "readings[0].taken");
    request.now = "2031-05-20T10:00-05:00";
    expect_refused(request, ErrorCode::inconsistent, "readings[0].taken");
    request.now = "2031-05-14T11:20-05:00";
    request.readings[0].wind = read<Kind::speed>("200 mph");
    expect_refused(request, ErrorCode::out_of_range, "readings[0].wind");
    request.readings[0] = reading("6 mph");
    request.readings[0].gust = read<Kind::speed>("5 mph");
    expect_refused(request, ErrorCode::inconsistent, "readings[0].gust");
    request.readings[0] = reading("6 mph");
    request.readings[0].cues.push_back(InversionCue::fog_or_dew);
    expect_refused(request, ErrorCode::inconsistent, "readings[0].cues");
    request.readings[0] = reading("6 mph");
    request.readings[0].temperature = read<Kind::temperature>("200 degF");
    expect_refused(request, ErrorCode::out_of_range, "readings[0].temperature");
    request.readings[0] = reading("6 mph");
    request.readings[0].measured_inversion = pair("60 degF", "61 degF");
    request.readings[0].measured_inversion->high_height = read<Kind::length>("2 ft");
    expect_refused(request, ErrorCode::inconsistent, "readings[0].measured_inversion.high_height");
    request.readings[0] = reading("6 mph", "upwind");
    expect_refused(request, ErrorCode::invalid_input, "readings[0].wind_from");
    request.readings[0] = reading("6 mph");
    request.rain_expected = "tonight";
    expect_refused(request, ErrorCode::invalid_input, "rain_expected");
}

RC_GTEST_PROP(SprayWindow, a_further_limit_never_allows_what_was_not_allowed, ()) {
    const auto limit_of = [](const std::string& name) {
        WeatherLimits made;
        made.name = name;
        if (*rc::gen::arbitrary<bool>()) {
            made.max_wind = read<Kind::speed>(fmt::format("{} mph", *rc::gen::inRange(1, 15)));
        }
        if (*rc::gen::arbitrary<bool>()) {
            made.min_wind = read<Kind::speed>(fmt::format("{} mph", *rc::gen::inRange(1, 8)));
        }
        return made;
    };
    const std::string wind = fmt::format("{} mph", *rc::gen::inRange(0, 16));
    const WeatherLimits first = limit_of("first");
    const WeatherLimits second = limit_of("second");
    const SprayWindowAnswer one = answered(asked({reading(wind)}, {limits("base"), first}));
    const SprayWindowAnswer two = answered(asked({reading(wind)}, {limits("base"), first, second}));
    RC_ASSERT(one.verdict == WindowVerdict::go || two.verdict != WindowVerdict::go);
    RC_ASSERT(two.text.find("safe") == std::string::npos);
}

}  // namespace
}  // namespace swathbook::weather
