// swathbook-paper: makes the PDF of a packet or of the blank worksheet. Reads the order that
// `swathbook packet` or `swathbook worksheet` writes (JSON)
// on standard input; its one argument is the file to write, or "-" for standard output: then a
// fault is told as the JSON of a refused operation. A program of its own, because fonts and PDF
// take longer to load than all the other answers take to give.

#include <string>

#include <fmt/format.h>

#include "api/call.hpp"
#include "api/json/json.hpp"
#include "cli/files.hpp"
#include "cli/terminal.hpp"
#include "reports/packet/packet.hpp"
#include "reports/packet/worksheet.hpp"

namespace swathbook::cli {
namespace {

using api::Json;

constexpr std::string_view standard_output = "-";

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

reports::JobText job_in(const Json& job) {
    reports::JobText text;
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

Result<reports::PacketInput> packet_in(const Json& order) {
    reports::PacketInput packet;
    packet.job = job_in(order.value("job", Json::object()));
    SWATHBOOK_TRY(is_spanish, is_second(order, "language", "en", "es"));
    SWATHBOOK_TRY(is_a4, is_second(order, "paper", "letter", "a4"));
    SWATHBOOK_TRY(is_metric, is_second(order, "units", "us", "metric"));
    packet.language = is_spanish ? reports::Language::spanish : reports::Language::english;
    packet.paper = is_a4 ? reports::PaperSize::a4 : reports::PaperSize::letter;
    packet.units = is_metric ? UnitSystem::metric : UnitSystem::us;
    packet.printed_at = text_in(order, "printed_at");
    packet.notebook = text_in(order, "notebook");
    packet.model_version = text_in(order, "model_version");
    const Json values = order.value("record_values", Json::object());
    for (const auto& [field, value] : values.items()) {
        packet.record_values.push_back(
            {field, value.is_string() ? value.get<std::string>() : value.dump()});
    }
    for (const Json& part : order.value("parts", Json::array())) {
        auto added = reports::add_to_packet(packet, text_in(part, "name"),
                                            text_in(part, "operation"), text_in(part, "request"));
        if (!added) {
            Error error = std::move(added).error();
            error.field = text_in(part, "file") + (error.field.empty() ? "" : ": ") + error.field;
            return tl::unexpected<Error>(std::move(error));
        }
    }
    return packet;
}

Result<std::string> worksheet_in(const Json& order) {
    reports::WorksheetInput input;
    SWATHBOOK_TRY(is_spanish, is_second(order, "language", "en", "es"));
    SWATHBOOK_TRY(is_a4, is_second(order, "paper", "letter", "a4"));
    SWATHBOOK_TRY(is_metric, is_second(order, "units", "us", "metric"));
    input.language = is_spanish ? reports::Language::spanish : reports::Language::english;
    input.paper = is_a4 ? reports::PaperSize::a4 : reports::PaperSize::letter;
    input.units = is_metric ? UnitSystem::metric : UnitSystem::us;
    input.model_version = text_in(order, "model_version");
    if (const auto tips = order.find("tips"); tips != order.end() && tips->is_number_integer()) {
        input.tips = tips->get<int>();
    }
    return reports::worksheet_pdf(input);
}

Result<std::string> pdf_in(const Json& order) {
    if (text_in(order, "sheet") == "worksheet") {
        return worksheet_in(order);
    }
    SWATHBOOK_TRY(packet, packet_in(order));
    return reports::packet_pdf(packet);
}

Result<void> print(const std::string& file) {
    SWATHBOOK_TRY(text, read_file("-"));
    SWATHBOOK_TRY(order, api::parse_json(text));
    if (!order.is_object()) {
        return fail(ErrorCode::invalid_input, "",
                    "The order of a packet is a JSON object; see swathbook packet.");
    }
    SWATHBOOK_TRY(pdf, pdf_in(order));
    if (file == standard_output) {
        write_output(pdf);
        return {};
    }
    SWATHBOOK_CHECK(write_file(file, pdf));
    write_output(file + "\n");
    return {};
}

ExitStatus tell(const std::string& file, const Error& error) {
    if (file != standard_output) {
        return report(error);
    }
    write_error(api::error_json(error) + "\n");
    return exit_status_of(error.code);
}

}  // namespace
}  // namespace swathbook::cli

int main(int count, char** words) {
    using namespace swathbook::cli;  // NOLINT: the program is its main function
    if (count != 2) {
        return static_cast<int>(
            usage_fault("swathbook-paper is started by 'swathbook packet'.", "packet"));
    }
    const auto printed = print(words[1]);
    return static_cast<int>(
        finish_output(printed ? ExitStatus::ok : tell(words[1], printed.error())));
}
