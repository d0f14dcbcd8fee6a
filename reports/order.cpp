#include "reports/order.hpp"

#include <fmt/format.h>

#include "api/json/json.hpp"
#include "reports/packet/packet.hpp"
#include "reports/packet/worksheet.hpp"

namespace swathbook::reports {
namespace {

using api::Json;

std::string text_in(const Json& object, std::string_view key) {
    const auto found = object.find(key);
    return found != object.end() && found->is_string() ? found->get<std::string>() : "";
}

/// One of two words.
Result<bool> is_second(const Json& order, std::string_view key, std::string_view first,
                       std::string_view second) {
    const std::string word = text_in(order, key);
    if (word != first && word != second) {
        return fail(ErrorCode::invalid_input, key,
                    fmt::format("\"{}\" is neither \"{}\" nor \"{}\".", word, first, second));
    }
    return word == second;
}

JobText job_in(const Json& job) {
    JobText text;
    text.name = text_in(job, "name");
    text.place = text_in(job, "place");
    text.customer = text_in(job, "customer");
    text.target = text_in(job, "target");
    text.planned_for = text_in(job, "planned_for");
    text.operator_name = text_in(job, "operator_name");
    text.licence = text_in(job, "licence");
    text.supervised = text_in(job, "supervised");
    return text;
}

Result<PacketInput> packet_in(const Json& order) {
    PacketInput packet;
    packet.job = job_in(order.value("job", Json::object()));
    SWATHBOOK_TRY(is_spanish, is_second(order, "language", "en", "es"));
    SWATHBOOK_TRY(is_a4, is_second(order, "paper", "letter", "a4"));
    SWATHBOOK_TRY(is_metric, is_second(order, "units", "us", "metric"));
    packet.language = is_spanish ? Language::spanish : Language::english;
    packet.paper = is_a4 ? PaperSize::a4 : PaperSize::letter;
    packet.units = is_metric ? UnitSystem::metric : UnitSystem::us;
    packet.printed_at = text_in(order, "printed_at");
    packet.notebook = text_in(order, "notebook");
    packet.model_version = text_in(order, "model_version");
    const Json values = order.value("record_values", Json::object());
    for (const auto& [field, value] : values.items()) {
        packet.record_values.push_back(
            {field, value.is_string() ? value.get<std::string>() : api::json_text(value)});
    }
    for (const Json& part : order.value("parts", Json::array())) {
        auto added = add_to_packet(packet, text_in(part, "name"), text_in(part, "operation"),
                                   text_in(part, "request"));
        if (!added) {
            Error error = std::move(added).error();
            error.field = text_in(part, "file") + (error.field.empty() ? "" : ": ") + error.field;
            return tl::unexpected<Error>(std::move(error));
        }
    }
    return packet;
}

Result<Document> worksheet_in(const Json& order) {
    WorksheetInput input;
    SWATHBOOK_TRY(is_spanish, is_second(order, "language", "en", "es"));
    SWATHBOOK_TRY(is_a4, is_second(order, "paper", "letter", "a4"));
    SWATHBOOK_TRY(is_metric, is_second(order, "units", "us", "metric"));
    input.language = is_spanish ? Language::spanish : Language::english;
    input.paper = is_a4 ? PaperSize::a4 : PaperSize::letter;
    input.units = is_metric ? UnitSystem::metric : UnitSystem::us;
    input.model_version = text_in(order, "model_version");
    if (const auto tips = order.find("tips"); tips != order.end() && tips->is_number_integer()) {
        input.tips = tips->get<int>();
    }
    return worksheet_document(input);
}

}  // namespace

Result<Document> document_of(std::string_view order_json) {
    SWATHBOOK_TRY(order, api::parse_json(order_json));
    if (!order.is_object()) {
        return fail(ErrorCode::invalid_input, "",
                    "The order of a packet is a JSON object; see swathbook packet.");
    }
    if (text_in(order, "sheet") == "worksheet") {
        return worksheet_in(order);
    }
    SWATHBOOK_TRY(packet, packet_in(order));
    return packet_document(packet);
}

}  // namespace swathbook::reports
