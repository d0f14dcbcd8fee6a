#include <gtest/gtest.h>

#include "api/call.hpp"
#include "api/describe/describe.hpp"
#include "api/json/json.hpp"
#include "api/operation.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::api {
namespace {

enum class Sort { boom, backpack };

struct Catch {
    Reading<Kind::volume> amount;
    std::optional<int> tip;
};

struct SampleRequest {
    Reading<Kind::length> width;
    std::optional<Reading<Kind::speed>> speed;
    std::vector<Catch> catches;
    Sort sort = Sort::boom;
    double share = 0.5;
};

struct SampleAnswer {
    Estimate<Kind::mix_per_area> output;
    std::optional<Volume> spare;
    std::string words;
};

Result<SampleAnswer> sample(const SampleRequest& request, Notes& notes) {
    if (request.width.value.si() <= 0) {
        return fail(ErrorCode::out_of_range, "width", "Width is 0 ft. Enter more than 0.");
    }
    notes.find(Severity::note, "sample", "A \"quoted\" remark.");
    notes.show([] { return Step{"Double", "2 * 2", "4"}; });
    const auto rate = [](double number) { return MixPerArea::of(number, us_gallons_per_acre); };
    return SampleAnswer{{rate(20), rate(19), rate(21)}, std::nullopt, request.width.text};
}

}  // namespace

template <>
struct Description<Sort> {
    static constexpr std::string_view name = "Sort";
    static Choices<Sort> choices() {
        return {{Sort::boom, "boom", "A boom."}, {Sort::backpack, "backpack", "A tank."}};
    }
};
template <>
struct Description<Catch> {
    static constexpr std::string_view name = "Catch";
    static constexpr auto fields() {
        return std::array{field<&Catch::amount>("amount", "What was caught.").required(),
                          field<&Catch::tip>("tip", "Which tip.")};
    }
};
template <>
struct Description<SampleRequest> {
    static constexpr std::string_view name = "SampleRequest";
    static constexpr auto fields() {
        using T = SampleRequest;
        return std::array{
            field<&T::width>("width", "Ground width served.").required(),
            field<&T::speed>("speed", "Speed."), field<&T::catches>("catches", "What was caught."),
            field<&T::sort>("sort", "Sort of sprayer."), field<&T::share>("share", "A share.")};
    }
};
template <>
struct Description<SampleAnswer> {
    static constexpr std::string_view name = "SampleAnswer";
    static constexpr auto fields() {
        using T = SampleAnswer;
        return std::array{field<&T::output>("output", "Output."),
                          field<&T::spare>("spare", "Left over.").shown_in("fl oz", "mL"),
                          field<&T::words>("words", "As typed.")};
    }
};

namespace {

Called ask(std::string_view body, bool working = false, UnitSystem units = UnitSystem::us) {
    JsonWriter out;
    const auto json = parse_json(body);
    if (!json) {
        return {error_json(json.error()), json.error().code};
    }
    const auto done =
        operation<&sample>("sample", "A sample.", {}).run(*json, {units, working}, out);
    return done ? Called{out.take(), std::nullopt}
                : Called{error_json(done.error()), done.error().code};
}

TEST(Describe, answers_with_value_unit_and_interval) {
    EXPECT_EQ(ask(R"({"width": "26 ft"})").json,
              R"({"output":{"value":20,"unit":"gal/ac","low":19,"high":21},"words":"26 ft",)"
              R"("findings":[{"code":"sample","severity":"note","text":"A \"quoted\" remark."}]})");
}

TEST(Describe, working_is_written_only_when_asked_for) {
    EXPECT_EQ(ask(R"({"width": "26 ft"})").json.find("working"), std::string::npos);
    EXPECT_NE(ask(R"({"width": "26 ft"})", true).json.find(R"("working":[{"text":"Double")"),
              std::string::npos);
}

TEST(Describe, metric_answers_use_the_metric_unit) {
    EXPECT_NE(ask(R"({"width": "26 ft"})", false, UnitSystem::metric).json.find(R"("unit":"L/ha")"),
              std::string::npos);
}

TEST(Describe, a_missing_required_field_is_named_with_an_example) {
    const auto called = ask("{}");
    EXPECT_EQ(called.error, ErrorCode::invalid_input);
    EXPECT_NE(called.json.find(R"("field":"width")"), std::string::npos) << called.json;
    EXPECT_NE(called.json.find("26 ft"), std::string::npos) << called.json;
}

TEST(Describe, an_unknown_field_suggests_the_nearest) {
    EXPECT_NE(ask(R"({"widht": "26 ft"})").json.find(R"(Did you mean \"width\")"),
              std::string::npos);
}

TEST(Describe, an_error_inside_a_list_carries_its_path) {
    const auto called =
        ask(R"({"width": "26 ft", "catches": [{"amount": "14 fl oz"}, {"amount": 14}]})");
    EXPECT_NE(called.json.find(R"("field":"catches[1].amount")"), std::string::npos) << called.json;
}

TEST(Describe, an_unknown_choice_lists_the_choices) {
    EXPECT_NE(ask(R"({"width": "26 ft", "sort": "kite"})").json.find("boom, backpack"),
              std::string::npos);
}

TEST(Json, duplicate_keys_are_refused) {
    EXPECT_EQ(parse_json(R"({"a": 1, "a": 2})").error().code, ErrorCode::invalid_input);
}

TEST(Json, broken_text_is_placed_by_line_and_column) {
    const auto parsed = parse_json("{\n \"a\": }");
    ASSERT_FALSE(parsed);
    EXPECT_NE(parsed.error().detail.find("line 2"), std::string::npos) << parsed.error().detail;
}

TEST(Json, nesting_beyond_the_limit_is_refused) {
    EXPECT_FALSE(parse_json(std::string(100, '[') + std::string(100, ']')));
    EXPECT_TRUE(parse_json(std::string(60, '[') + std::string(60, ']')));
}

TEST(Json, nested_values_come_back_as_written) {
    const std::string text = R"({"a":[1,{"b":[true,null,"x"]},[]],"c":{"d":-2.5}})";
    EXPECT_EQ(parse_json(text)->dump(), text);
}

TEST(Writer, rounds_to_12_digits) {
    EXPECT_EQ(to_12_digits(1.0 / 3.0), 0.333333333333);
    EXPECT_EQ(to_12_digits(-2.0 / 3.0e-3), -666.666666667);
    EXPECT_EQ(to_12_digits(0.1 + 0.2), 0.3);
    EXPECT_EQ(to_12_digits(123456789012.4), 123456789012.0);
    EXPECT_EQ(to_12_digits(4046.8564224), 4046.8564224);
    EXPECT_EQ(to_12_digits(0.0), 0.0);
}

TEST(Call, an_unknown_operation_is_not_found) {
    EXPECT_EQ(call("callibrate", "{}").error, ErrorCode::not_found);
}

}  // namespace
}  // namespace swathbook::api
