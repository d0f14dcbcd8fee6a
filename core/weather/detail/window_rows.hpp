#pragma once

#include <vector>

#include "core/base/notes.hpp"
#include "core/weather/detail/observed.hpp"

/// One row for each thing that is judged.
namespace swathbook::weather::detail {

/// A difference of temperatures: "2 degF".
[[nodiscard]] std::string change_words(double kelvins_apart, UnitSystem units);

[[nodiscard]] WindowRow age_row(const SprayWindowRequest& request, const Observed& seen);
[[nodiscard]] WindowRow inversion_row(const Observed& seen, Notes& notes);
[[nodiscard]] WindowRow calm_row(const Observed& seen, Notes& notes);
/// Wind, gust, temperature and humidity against the strictest limit of each.
void add_amount_rows(std::vector<WindowRow>& rows, const SprayWindowRequest& request,
                     const Observed& seen, Notes& notes);
/// Where the wind blows, or comes from.
void add_sector_rows(std::vector<WindowRow>& rows, const SprayWindowRequest& request,
                     const Observed& seen);
/// Also fills the latest stop of the answer.
[[nodiscard]] Result<WindowRow> rain_row(const SprayWindowRequest& request, const Observed& seen,
                                         SprayWindowAnswer& answer, Notes& notes);

}  // namespace swathbook::weather::detail
