#pragma once

#include "core/base/result.hpp"
#include "reports/document.hpp"

namespace swathbook::reports {

/// Which edition of the blank worksheet to print.
struct WorksheetInput {
    Language language = Language::english;
    UnitSystem units = UnitSystem::us;
    PaperSize paper = PaperSize::letter;
    std::string printed_on{};  ///< "2026-05-14"; nothing is printed when empty
    std::string model_version{};
    int tips = 12;  ///< columns for catches, 1 to 16
};

/// One page to calibrate by hand: the course, times, a catch for each tip, the formula with boxes,
/// and the warning that the shortcut holds on one size of course only.
///
///   gal/ac = fl oz * 340.3125 / (ft * ft);  L/ha = mL * 10 / (m * m)
///   mph = ft / s * 0.6818;                  km/h = m / s * 3.6
///
/// @source unit arithmetic: 43,560 ft2 / 128 = 340.3125 ft2; 15/22 = 0.6818; 1 mL/m2 = 10 L/ha
/// @errors out_of_range{tips}
[[nodiscard]] Result<Sheet> worksheet_sheet(const WorksheetInput& input);
[[nodiscard]] Result<Document> worksheet_document(const WorksheetInput& input);
/// The same as the bytes of a one-page PDF.
[[nodiscard]] Result<std::string> worksheet_pdf(const WorksheetInput& input);

}  // namespace swathbook::reports
