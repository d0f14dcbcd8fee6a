// A job packet for paper: answers become sheets, sheets become one PDF, and no file is written.
#include "examples/example.hpp"
#include "reports/packet/packet.hpp"

namespace swathbook {
namespace {

Result<bool> show_packet() {
    reports::PacketInput packet;
    packet.printed_at = "2031-05-14T06:30:00Z";  // said, never taken from a clock
    SWATHBOOK_CHECK(reports::add_to_packet(packet, "Boomless rig", "calibrate", R"({
        "sprayer": "boomless", "width": "26 ft", "course_length": "176 ft",
        "course_times": ["29.8 s", "30.0 s", "30.2 s"], "flow": "2.60 gal/min"})"));

    SWATHBOOK_TRY(document, reports::packet_document(packet));
    for (const reports::Sheet& sheet : document.sheets) {
        std::printf("Sheet: %s\n", sheet.title.c_str());
    }
    SWATHBOOK_TRY(pdf, reports::packet_pdf(packet));
    std::printf("The PDF has %zu bytes.\n", pdf.size());
    // By hand: cover and job sheet are always there, and one calibration was added: 3 sheets.
    return examples::agrees("Sheets", static_cast<double>(document.sheets.size()), {3, "", 0}) &&
           pdf.starts_with("%PDF-");
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_packet());
}
