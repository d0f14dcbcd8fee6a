#include <algorithm>
#include <array>
#include <span>

#include <fmt/format.h>

#include "api/describe/values.hpp"
#include "core/quantity/parse.hpp"

namespace swathbook::api {
namespace {

constexpr std::array members{std::string_view("value"), std::string_view("unit"),
                             std::string_view("low"), std::string_view("high"),
                             std::string_view("basis")};

/// An answer may be pasted back as it is; any other member would be passed over in silence.
Result<void> check_members(const Json& json, const KindInfo* info, const Path& path) {
    const auto known = std::span(members).first(members.size() - (info == nullptr ? 0 : 1));
    for (const auto& [key, value] : json.items()) {
        if (std::find(known.begin(), known.end(), key) == known.end()) {
            return fail(
                ErrorCode::invalid_input, path.member(key).text(),
                fmt::format("There is no field \"{}\" in an amount. {}{}", key, suggest(key, known),
                            key == "basis" ? " The unit says it all: \"imp gal\"." : ""));
        }
    }
    if (json.contains("value") && !json.contains("unit")) {
        return fail(
            ErrorCode::invalid_input, path.member("unit").text(),
            fmt::format("The unit is missing beside the value {}. Add it: \"unit\": \"{}\".",
                        json_text(json["value"]), info == nullptr ? "qt/ac" : info->us_unit));
    }
    return {};
}

Result<ParsedAmount> amount_in(const Json& json, Kind kind) {
    if (json.is_string()) {
        return parse_amount(json.get_ref<const std::string&>(), kind);
    }
    const KindInfo& info = info_of(kind);
    if (!json.is_object() || !json.contains("value") || !json.contains("unit") ||
        !json["value"].is_number() || !json["unit"].is_string()) {
        return fail(
            ErrorCode::invalid_input, "",
            json.is_number()
                ? fmt::format("{} has no unit. Write it like \"{}\".", json_text(json),
                              info.example)
                : fmt::format("Expected an amount with its unit, like \"{}\" or {{\"value\": 1, "
                              "\"unit\": \"{}\"}}, got {}.",
                              info.example, info.us_unit, json.type_name()));
    }
    return parse_amount(json["value"].get<double>(), json["unit"].get_ref<const std::string&>(),
                        kind);
}

double shown(double si, const DisplayUnit& unit) {
    return (si - unit.zero) / unit.si;
}

Json quantity_schema(std::string_view doc, std::string_view example) {
    return {
        {"description", doc},
        {"oneOf",
         Json::array(
             {Json{{"type", "string"}, {"examples", Json::array({example})}},
              Json{{"type", "object"},
                   {"properties",
                    {{"value", {{"type", "number"}}},
                     {"unit", {{"type", "string"}}},
                     {"low",
                      {{"type", "number"}, {"description", "lower end of the 95 % interval"}}},
                     {"high",
                      {{"type", "number"}, {"description", "upper end of the 95 % interval"}}}}},
                   {"required", Json::array({"value", "unit"})},
                   {"additionalProperties", false}}})}};
}

}  // namespace

QuantityType::QuantityType(const QuantityLayout& layout)
    : layout_(layout), info_(info_of(layout.kind)), usual_(display_of(layout.kind)) {}

Result<void> QuantityType::read(const Json& json, void* into, const Path& path) const {
    if (json.is_object()) {
        SWATHBOOK_CHECK(check_members(json, &info_, path));
    }
    auto amount = amount_in(json, layout_.kind);
    if (!amount) {
        return fail(amount.error().code, path.text(), std::move(amount.error().detail));
    }
    const bool was_typed = json.is_string();
    layout_.put(
        into, amount->si, was_typed ? amount->half_step_si : 0.0,
        was_typed ? std::string_view(json.get_ref<const std::string&>()) : std::string_view());
    return {};
}

void QuantityType::write(JsonWriter& out, const void* from, const WriteStyle& style) const {
    const DisplayUnit& unit = (style.display != nullptr ? *style.display : usual_).in(style.units);
    out.open_object();
    out.key("value");
    out.number(shown(layout_.value(from), unit));
    out.key("unit");
    out.text(unit.text);
    if (const double* low = layout_.low(from)) {
        out.key("low");
        out.number(shown(*low, unit));
    }
    if (const double* high = layout_.high(from)) {
        out.key("high");
        out.number(shown(*high, unit));
    }
    out.close_object();
}

Json QuantityType::schema(Json& definitions) const {
    const std::string key(info_.word);
    if (!definitions.contains(key)) {
        definitions[key] = quantity_schema(
            fmt::format("An amount with its unit, like {}.", info_.example), info_.example);
    }
    return {{"$ref", "#/$defs/" + key}};
}

std::string QuantityType::typescript(Json& declarations) const {
    declarations["Quantity"] =
        "/** \"20 gal/ac\" going in; value, unit and 95 % interval coming out. */\n"
        "export type Quantity = string | { value: number; unit: string; low?: number; high?: "
        "number };\n";
    return "Quantity";
}

std::string QuantityType::example() const {
    return fmt::format("\"{}\"", info_.example);
}

namespace {

/// A label rate: "2 qt/ac" going in; number, unit, basis and the words typed coming out.
class LabelRateType final : public Type {
public:
    [[nodiscard]] Shape shape() const override { return Shape::rate; }

    [[nodiscard]] Result<void> read(const Json& json, void* into, const Path& path) const override {
        std::string text;
        if (json.is_object()) {
            SWATHBOOK_CHECK(check_members(json, nullptr, path));
        }
        if (json.is_string()) {
            text = json.get<std::string>();
        } else if (json.is_object() && json.contains("value") && json["value"].is_number() &&
                   json.contains("unit") && json["unit"].is_string()) {
            text =
                fmt::format("{} {}", json["value"].get<double>(), json["unit"].get<std::string>());
        } else {
            return fail(ErrorCode::invalid_input, path.text(),
                        "A label rate is written with its unit and basis, like \"2 qt/ac\", \"17 "
                        "lb/100 gal\" or "
                        "\"0.25 % v/v\".");
        }
        auto rate = parse_label_rate(text);
        if (!rate) {
            return fail(rate.error().code, path.text(), std::move(rate.error().detail));
        }
        if (json.is_object() && json.contains("basis") && json["basis"] != word_of(rate->basis)) {
            return fail(ErrorCode::inconsistent, path.member("basis").text(),
                        fmt::format("The basis {} is not what \"{}\" says, which is \"{}\". "
                                    "Leave the basis out or correct the unit.",
                                    json_text(json["basis"]), text, word_of(rate->basis)));
        }
        rate->text = std::move(text);
        *static_cast<LabelRate*>(into) = std::move(*rate);
        return {};
    }

    void write(JsonWriter& out, const void* from, const WriteStyle& style) const override {
        const auto& rate = *static_cast<const LabelRate*>(from);
        const Display usual = display_of(kind_of(rate.basis));
        const DisplayUnit& unit =
            (style.display != nullptr ? *style.display : usual).in(style.units);
        out.open_object();
        out.key("value");
        out.number(shown(rate.si, unit));
        out.key("unit");
        out.text(unit.text);
        out.key("basis");
        out.text(word_of(rate.basis));
        out.close_object();
    }

    [[nodiscard]] Json schema(Json& definitions) const override {
        if (!definitions.contains("label_rate")) {
            Json made = quantity_schema(
                "A rate as the label states it, with unit and basis: per area (\"2 qt/ac\", \"1.5 "
                "lb a.e./ac\"), per "
                "volume of mix (\"17 lb/100 gal\") or percent (\"0.25 % v/v\", \"2 % w/w\").",
                "2 qt/ac");
            made["oneOf"][1]["properties"]["basis"] = {{"type", "string"}};
            definitions["label_rate"] = std::move(made);
        }
        return {{"$ref", "#/$defs/label_rate"}};
    }

    [[nodiscard]] std::string typescript(Json& declarations) const override {
        declarations["LabelRate"] =
            "/** \"2 qt/ac\" going in; value, unit and basis coming out. */\n"
            "export type LabelRate = string | { value: number; unit: string; basis?: string };\n";
        return "LabelRate";
    }

    [[nodiscard]] std::string example() const override { return "\"2 qt/ac\""; }
};

}  // namespace

const Type& label_rate_type() {
    static const LabelRateType type;
    return type;
}

}  // namespace swathbook::api
