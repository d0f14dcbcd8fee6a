#include "reports/packet/packet.hpp"
#include "reports/packet/worksheet.hpp"
#include "reports/pdf/render.hpp"

namespace swathbook::reports {

Result<std::string> packet_pdf(const PacketInput& input) {
    SWATHBOOK_TRY(document, packet_document(input));
    return pdf::render(document);
}

Result<std::string> worksheet_pdf(const WorksheetInput& input) {
    SWATHBOOK_TRY(document, worksheet_document(input));
    return pdf::render(document);
}

}  // namespace swathbook::reports
