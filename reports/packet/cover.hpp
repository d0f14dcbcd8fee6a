#pragma once

#include <string>
#include <vector>

#include "reports/packet/job_sheet.hpp"

namespace swathbook::reports {

/// A sheet of the packet and who it is for, as the cover lists it.
struct CoverLine {
    std::string sheet;
    std::string use;
};

/// The first sheet: the job's facts, what is in the packet, and the figures that matter.
[[nodiscard]] Sheet cover_sheet(const JobParts& parts, const std::vector<CoverLine>& contents,
                                const Voice& voice);

}  // namespace swathbook::reports
