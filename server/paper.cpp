#include "server/paper.hpp"

#include "api/json/json.hpp"
#include "core/notebook/hybrid_time.hpp"
#include "server/status.hpp"
#include "store/outside.hpp"

namespace swathbook::server {
namespace {

using api::Json;

Result<Json> order_in(const Request& request, const Desk& desk) {
    SWATHBOOK_TRY(order, api::parse_json(request.body));
    if (!order.is_object()) {
        return fail(ErrorCode::invalid_input, "",
                    "An order to print is a JSON object; see docs/serving.md.");
    }
    for (const auto& [name, usual] :
         {std::pair{"language", "en"}, {"paper", "letter"}, {"units", "us"}}) {
        if (!order.contains(name)) {
            order[name] = usual;
        }
    }
    if (!order.contains("printed_at")) {
        const std::int64_t now_ms = store::system_outside().now_ms();
        order["printed_at"] = notebook::utc_text(now_ms - now_ms % 1000);
    }
    order["model_version"] = "Swathbook " + desk.version;
    return order;
}

/// The printing program says what is wrong in the words of the operations.
Response fault_of(const std::string& text) {
    const auto said = api::parse_json(text);
    if (said && said->is_object() && said->contains("error")) {
        const Json& error = said->at("error");
        const std::string word = error.value("code", "");
        for (int number = 1; number <= static_cast<int>(ErrorCode::internal); ++number) {
            const auto code = static_cast<ErrorCode>(number);
            if (word_of(code) == word) {
                return refusal({code, error.value("field", ""), error.value("detail", "")});
            }
        }
    }
    return refusal({ErrorCode::internal, "",
                    "The printing program swathbook-paper did not answer. It belongs beside "
                    "swathbook; build or install both."});
}

Response print(const Desk& desk, const Json& order) {
    ProgramEnd ended = run_program(desk.paper_program, "-", order.dump());
    if (!ended.is_well) {
        return fault_of(ended.err);
    }
    Response response;
    response.type = "application/pdf";
    response.body = std::move(ended.out);
    return response;
}

}  // namespace

Response packet(Desk& desk, const Request& request, std::string_view) {
    auto order = order_in(request, desk);
    if (!order) {
        return refusal(order.error());
    }
    (*order)["sheet"] = "packet";
    return print(desk, *order);
}

Response worksheet(Desk& desk, const Request& request, std::string_view) {
    auto order = order_in(request, desk);
    if (!order) {
        return refusal(order.error());
    }
    (*order)["sheet"] = "worksheet";
    return print(desk, *order);
}

}  // namespace swathbook::server
