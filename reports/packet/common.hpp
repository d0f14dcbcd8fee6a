#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/notes.hpp"
#include "core/quantity/print.hpp"
#include "reports/document.hpp"
#include "reports/phrases.hpp"

/// Small helps that several sheets share.
namespace swathbook::reports {

/// Core writes plain letters; print has better ones: "+-5 %" -> "±5 %", "3 x 4" -> "3 × 4",
/// "ft2" -> "ft²", "degF" -> "°F".
[[nodiscard]] std::string typeset(std::string text);

/// How one packet speaks: the language of its fixed words and the units of its figures.
struct Voice {
    Language language = Language::english;
    UnitSystem units = UnitSystem::us;

    [[nodiscard]] std::string say(Phrase phrase) const {
        return std::string(reports::say(language, phrase));
    }
    [[nodiscard]] std::string say(Phrase phrase,
                                  std::initializer_list<std::string_view> values) const {
        return reports::say(language, phrase, values);
    }
    /// A sentence that the core wrote in English.
    [[nodiscard]] std::string core(std::string_view sentence) const {
        return in_language(language, sentence);
    }
    template <Kind K>
    [[nodiscard]] std::string show(Quantity<K> quantity) const {
        return typeset(swathbook::show(quantity, units));
    }
    template <Kind K>
    [[nodiscard]] std::string show(const Reading<K>& reading) const {
        return swathbook::show(reading, units);
    }
    template <Kind K>
    [[nodiscard]] std::string show(const std::optional<Quantity<K>>& quantity) const {
        return quantity ? show(*quantity) : std::string();
    }
    /// "18.0 – 19.2 gal/ac", for a column that says what it is.
    template <Kind K>
    [[nodiscard]] std::string range(const Estimate<K>& estimate) const {
        if (!estimate.low || !estimate.high) {
            return {};
        }
        const std::string low = show(*estimate.low);
        return low.substr(0, low.find(' ')) + " \u2013 " + show(*estimate.high);
    }
    /// "18.0 to 19.2 gal/ac (95 %)"; empty when no interval is known.
    template <Kind K>
    [[nodiscard]] std::string interval(const Estimate<K>& estimate) const {
        if (!estimate.low || !estimate.high) {
            return {};
        }
        const std::string low = show(*estimate.low);
        return say(Phrase::interval_text, {low.substr(0, low.find(' ')), show(*estimate.high)});
    }
};

/// Ground to a hundredth of an acre or hectare; small plots to four digits.
[[nodiscard]] std::string area_text(Area area, const Voice& voice);
/// "+10.0 %", "-8.8 %", "0.0 %".
[[nodiscard]] std::string signed_percent(double fraction, int decimals = 1);
/// "6.1 %".
[[nodiscard]] std::string plain_percent(double fraction, int decimals = 1);
/// "a, b, c".
[[nodiscard]] std::string joined(const std::vector<std::string>& parts,
                                 std::string_view between = ", ");

/// Whether a finding already says this sentence, so that it need not stand twice.
[[nodiscard]] bool is_said(const Notes& notes, std::string_view sentence);

/// Findings as remarks, the loudest first, under a heading of their own.
void add_findings(Sheet& sheet, const Notes& notes, const Voice& voice);
/// The answer's working as lines to tick; nothing when no working was asked for.
void add_working(Sheet& sheet, const Notes& notes, const Voice& voice);

/// A sheet with its title and the head of its further pages.
[[nodiscard]] Sheet titled(std::string title, std::string second_title, const Voice& voice);

/// Adds a fact when there is something to say.
void add_fact(Facts& facts, std::string name, std::string value);

}  // namespace swathbook::reports
