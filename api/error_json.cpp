#include "api/call.hpp"
#include "api/json/writer.hpp"

namespace swathbook::api {

std::string error_json(const Error& error) {
    JsonWriter out;
    out.open_object();
    out.key("error");
    out.open_object();
    out.key("code");
    out.text(word_of(error.code));
    out.key("field");
    out.text(error.field);
    out.key("detail");
    out.text(error.detail);
    out.close_object();
    out.close_object();
    return out.take();
}

}  // namespace swathbook::api
