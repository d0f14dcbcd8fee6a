#include "server/compute.hpp"

#include "api/call.hpp"
#include "api/json/writer.hpp"
#include "api/schema.hpp"
#include "server/status.hpp"

namespace swathbook::server {

Response compute(Desk&, const Request& request, std::string_view name) {
    api::Called called = api::call(name, request.body);
    Response response;
    response.status = called.error ? status_of(*called.error) : Status::ok;
    response.body = std::move(called.json);
    response.body += '\n';
    return response;
}

Response list_operations(Desk&, const Request&, std::string_view) {
    static const std::string list = api::list_of_operations();
    Response response;
    response.kept_body = list;
    return response;
}

Response tell_health(Desk& desk, const Request&, std::string_view) {
    api::JsonWriter out;
    out.open_object();
    out.key("status");
    out.text("ok");
    out.key("version");
    out.text(desk.version);
    out.key("notebook");
    out.boolean(desk.notebook != nullptr);
    out.key("web");
    out.boolean(!desk.shelf.is_empty());
    out.close_object();
    Response response;
    response.body = out.take() + "\n";
    return response;
}

}  // namespace swathbook::server
