// Any operation by name, JSON in and JSON out: what the command and the phone both call.
#include "api/call.hpp"

#include "api/json/json.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_call() {
    const api::Called called =
        api::call("course", R"({"width": "26 ft", "part": "1/8 ac", "units": "us"})");
    if (called.error) {
        return fail(*called.error, "course", called.json);
    }
    const api::Json answer = api::Json::parse(called.json);
    const api::Json& length = answer["chosen"]["length"];
    // By hand: 1/8 ac is 43,560 / 8 = 5,445 ft2; / 26 ft = 209.4 ft. Every quantity has its unit.
    const bool is_right = examples::agrees("Length in the answer: " + length.dump(),
                                           length["value"].get<double>(), {209.4, "ft", 0.05}) &&
                          length["unit"] == "ft";

    // A slip of the pen is an answer too: the code for programs, the sentence for people.
    const api::Called refused = api::call("course", R"({"width": "0 ft"})");
    std::printf("Refused: %s\n", refused.json.c_str());
    const api::Json error = api::Json::parse(refused.json)["error"];
    return is_right && refused.error == ErrorCode::out_of_range && error["field"] == "width";
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_call());
}
