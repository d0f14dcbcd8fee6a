#include <fmt/format.h>

#include "api/json/json.hpp"
#include "api/json/writer.hpp"

namespace swathbook::api {
namespace {

/// A number in the shortest form that reads back the same; with a point, as it was not whole.
std::string fraction_text(double number) {
    std::string text = fmt::format("{}", number);
    if (text.find_first_of(".e") == std::string::npos) {
        text += ".0";
    }
    return text;
}

void write(JsonWriter& out, const Json& json) {
    if (json.is_object()) {
        out.open_object();
        for (auto member = json.begin(); member != json.end(); ++member) {
            out.key(member.key());
            write(out, *member);
        }
        out.close_object();
    } else if (json.is_array()) {
        out.open_list();
        for (const Json& element : json) {
            write(out, element);
        }
        out.close_list();
    } else if (json.is_string()) {
        out.text(json.get_ref<const std::string&>());
    } else if (json.is_boolean()) {
        out.boolean(json.get<bool>());
    } else if (json.is_number_unsigned()) {
        out.raw(fmt::format("{}", json.get<std::uint64_t>()));
    } else if (json.is_number_integer()) {
        out.integer(json.get<std::int64_t>());
    } else if (json.is_number()) {
        out.raw(fraction_text(json.get<double>()));
    } else {
        out.null();
    }
}

}  // namespace

std::string json_text(const Json& json) {
    JsonWriter out;
    write(out, json);
    return out.take();
}

}  // namespace swathbook::api
