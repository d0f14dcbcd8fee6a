#include "core/quantity/detail/fault.hpp"

#include <fmt/format.h>

#include "core/quantity/detail/amount_text.hpp"
#include "core/quantity/detail/hint.hpp"

namespace swathbook::detail {
namespace {

constexpr std::size_t longest_quote = 60;
constexpr std::size_t longest_hint = 600;  // hints repeat what was typed

/// Bytes of the well-formed UTF-8 character at the start, 0 when there is none to show.
std::size_t shown_bytes(std::string_view text) {
    const auto first = static_cast<unsigned char>(text[0]);
    const std::size_t bytes = first < 0x80                    ? 1
                              : first >= 0xC2 && first < 0xE0 ? 2
                              : first >= 0xE0 && first < 0xF0 ? 3
                              : first >= 0xF0 && first < 0xF5 ? 4
                                                              : 0;
    if (bytes == 0 || bytes > text.size() || (bytes == 1 && (first < 0x20 || first == 0x7F))) {
        return 0;
    }
    for (std::size_t i = 1; i < bytes; ++i) {
        if ((static_cast<unsigned char>(text[i]) & 0xC0U) != 0x80U) {
            return 0;
        }
    }
    // Second bytes that would make an overlong form, a surrogate or a number past the last one.
    const auto second =
        bytes > 1 ? static_cast<unsigned char>(text[1]) : static_cast<unsigned char>(0);
    const bool bad = (first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ||
                     (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F);
    return bad ? 0 : bytes;
}

std::string fold(std::string_view text) {
    std::string folded;
    for (const char letter : text) {
        if (letter >= 'A' && letter <= 'Z') {
            folded += static_cast<char>(letter - 'A' + 'a');
        } else if (letter != '.') {
            folded += letter;
        }
    }
    return folded;
}

/// The same digits with another mark, or none, for the comma.
std::string with_mark(std::string_view digits, std::string_view mark) {
    const std::size_t comma = digits.find(',');
    if (comma == std::string_view::npos) {
        return std::string(digits);
    }
    return fmt::format("{}{}{}", digits.substr(0, comma), mark, digits.substr(comma + 1));
}

std::string unknown_word_text(const Fault& fault) {
    const std::string_view near = nearest_spelling(fold(fault.where));
    if (near.empty()) {
        return fmt::format("{} is not a unit or unit word known here.", in_quotes(fault.where));
    }
    return fmt::format("{} is not a unit known here. Did you mean \"{}\"?", in_quotes(fault.where),
                       near);
}

std::string_view substance_phrase(Substance substance) {
    switch (substance) {
        case Substance::ingredient: return "active ingredient (a.i.)";
        case Substance::acid: return "acid equivalent (a.e.)";
        case Substance::any: return "product as sold";
    }
    return "product as sold";
}

/// "11/2" split every way that leaves a proper fraction, and worked out.
std::string run_together_text(std::string_view typed) {
    std::uint64_t top = 0;
    std::uint64_t bottom = 0;
    std::size_t digits = 0;
    bool below = false;
    for (const char letter : typed) {
        const bool is_digit = letter >= '0' && letter <= '9';
        below = below || (!is_digit && digits > 0);
        std::uint64_t& part = below ? bottom : top;
        part = is_digit ? part * 10 + static_cast<std::uint64_t>(letter - '0') : part;
        digits += is_digit ? 1U : 0U;
    }
    std::string choices;
    for (std::uint64_t place = 10; place <= top; place *= 10) {
        const std::uint64_t rest = top % place;
        if (rest >= place / 10 && rest < bottom) {
            choices += fmt::format("\"{}-{}/{}\" or ", top / place, rest, bottom);
        }
    }
    return fmt::format("{} can be a whole number and a fraction run together. Write {}\"{:.6g}\".",
                       in_quotes(typed), choices,
                       static_cast<double>(top) / static_cast<double>(bottom));
}

/// Problems of the number.
std::string number_text(const Fault& fault) {
    const std::string where = in_quotes(fault.where);
    switch (fault.problem) {
        case Problem::no_number:
            return "There is no number where one is needed: write digits first, then the unit.";
        case Problem::not_a_number: return "The number is not finite (NaN or infinity).";
        case Problem::negative:
            return "The value is below zero; only temperatures and angles may be.";
        case Problem::below_absolute_zero: return "The temperature is below absolute zero.";
        case Problem::number_too_long:
            return fmt::format("{} has more than 19 digits: write fewer.", where);
        case Problem::number_out_of_range:
            return fmt::format("{} is too large or too small to be a measurement.", where);
        case Problem::comma_or_thousands:
            return fmt::format("{} can mean thousands or a decimal comma. Write \"{}\" or \"{}\".",
                               where, with_mark(fault.where, {}), with_mark(fault.where, "."));
        case Problem::digit_groups:
            return fmt::format(
                "The points and commas in {} do not make a number. Write digits with one "
                "decimal point.",
                where);
        case Problem::zero_denominator: return fmt::format("{} divides by zero.", where);
        case Problem::bad_fraction:
            return fmt::format(
                "The fraction in {} is not a proper one: write it as \"2-2/3\" or \"2.67\".",
                where);
        case Problem::run_together: return run_together_text(fault.where);
        case Problem::range:
            return "A range is not one value: write the one rate or reading that is meant.";
        case Problem::two_numbers:
            return "Two numbers stand together without a unit between them. Write thousands "
                   "without a space (\"1250\"), a fraction as \"2-2/3\", and a sum as "
                   "\"1 qt + 10 fl oz\".";
        case Problem::bad_clock:
            return fmt::format(
                "{} is not a time: write minutes and seconds as \"1:30\", hours too as "
                "\"1:02:30\" or \"1:02 h\", or \"90 s\".",
                where);
        case Problem::clock_not_duration:
            return fmt::format("{} looks like a time, and a time is not wanted here.", where);
        default: return {};
    }
}

/// Text with two meanings: always the choices.
std::string ambiguity_text(const Fault& fault) {
    const std::string where = in_quotes(fault.where);
    switch (fault.problem) {
        case Problem::ambiguous_word:
        case Problem::ambiguous_case:
            return fmt::format("{} has more than one meaning. Write {}.", where, fault.other);
        case Problem::ambiguous_ounce:
            return fmt::format(
                "{} can be a fluid ounce (volume) or an ounce of weight. Write \"fl oz\" or "
                "\"oz wt\".",
                where);
        case Problem::ambiguous_ton:
            return fmt::format(
                "{} can be 2000 lb, 2240 lb or 1000 kg. Write \"short ton\", \"long ton\" or "
                "\"tonne\", or give lb or kg.",
                where);
        case Problem::ambiguous_are:
            return fmt::format(
                "{} can be an acre or, beside metric units, an are (100 m2). Write \"ac\" or "
                "\"100 m2\".",
                where);
        case Problem::ambiguous_percent:
            return "Percent of what is not said. Write \"% v/v\" (by volume) or \"% w/w\" (by "
                   "weight).";
        case Problem::mixed_percent:
            return fmt::format(
                "{} mixes weight and volume. Write \"% v/v\" (by volume), \"% w/w\" (by weight), "
                "or a mass per volume such as \"g/L\".",
                where);
        default: return {};
    }
}

/// Problems of the unit's shape.
std::string unit_text(const Fault& fault) {
    const std::string where = in_quotes(fault.where);
    switch (fault.problem) {
        case Problem::number_in_unit:
            return "A number stands where only a unit is read. Write the unit alone, such as "
                   "\"gal/ac\" or \"lb/100 gal\".";
        case Problem::unknown_word: return unknown_word_text(fault);
        case Problem::unknown_sign: return fmt::format("{} cannot be read as a unit.", where);
        case Problem::two_units:
            return fmt::format("{} and {} stand together with no number or \"per\" between them.",
                               where, in_quotes(fault.other));
        case Problem::contradictory:
            return fmt::format("{} cannot be {} at once.", where, fault.other);
        case Problem::modifier_misplaced:
            return fault.other.empty()
                       ? fmt::format("{} does not belong where it stands.", where)
                       : fmt::format("{} does not go with {}.", where, in_quotes(fault.other));
        case Problem::modifier_alone:
            return fmt::format("{} needs a unit beside it, as in \"fl oz\" or \"lb a.e.\".", where);
        case Problem::nothing_per:
            return "Nothing is named before \"per\": only a count such as \"412 per ac\" may do "
                   "that.";
        case Problem::per_nothing: return fmt::format("No unit follows \"per\" after {}.", where);
        case Problem::two_pers: return "A unit has one \"per\" here; a second one cannot be read.";
        case Problem::no_such_quotient:
            return fmt::format("{} per {} is not a unit used here.", fault.where, fault.other);
        case Problem::sum_of_kinds:
            return fmt::format("{} and {} cannot be added.", fault.where, fault.other);
        case Problem::sum_order:
            return "In a sum without \"+\" each unit must be smaller than the one before, as in "
                   "\"6 ft 2 in\". Put \"+\" between the parts.";
        case Problem::sum_bases:
            return "The parts of the sum are not on the same basis. Write \"1 qt + 10 fl oz per "
                   "acre\", or the same \"per\" on every part.";
        case Problem::sum_not_allowed:
            return "Only up to four lengths, areas, volumes, masses or times can be added.";
        default: return {};
    }
}

/// Understood, but not what is wanted.
std::string kind_text(const Fault& fault, const KindInfo* info) {
    const std::string_view wanted = info == nullptr ? "a label rate" : phrase_of(info->dimension);
    switch (fault.problem) {
        case Problem::offset_unit:
            return "This temperature scale has an offset: a single factor cannot convert it.";
        case Problem::wrong_dimension:
            return fmt::format(
                "This is {}, but {} is wanted here.{}", fault.where, wanted,
                wanted == phrase_of(Dimension::time) && fault.where == phrase_of(Dimension::length)
                    ? " Minutes are written \"min\"."
                    : "");
        case Problem::substance_missing:
            return info->substance == Substance::acid
                       ? "The text must say that it counts acid equivalent: \"lb a.e.\", not \"lb "
                         "a.i.\" "
                         "(active ingredient) or product. The label says which."
                       : "The text must say that it counts active ingredient: \"lb a.i.\", not "
                         "\"lb "
                         "a.e.\" (acid equivalent) or product. The label says which.";
        case Problem::substance_wrong:
            return fmt::format("This counts another substance: {} is wanted here.",
                               substance_phrase(info->substance));
        case Problem::percent_wrong:
            return info->dimension == Dimension::ratio && info->kind == Kind::fraction
                       ? "A plain percent is wanted here: write \"80 %\"."
                       : fmt::format(
                             "Percent on the other basis: {} is wanted here.",
                             info->kind == Kind::percent_by_volume ? "\"% v/v\"" : "\"% w/w\"");
        case Problem::grains_of_mineral:
            return "Grains count hardness as CaCO3, not one mineral. Give the mineral in ppm from "
                   "the water report, or the grains as hardness with hardness_scale "
                   "grains_per_gallon.";
        case Problem::temperature_scale:
            return info->kind == Kind::temperature
                       ? "The scale is not clear. Write \"degF\" or \"degC\"; a change is \"delta "
                         "degF\"."
                       : "A change of temperature is not wanted here.";
        case Problem::basis_missing:
            return "The basis is missing: per what? Write for example \"1 qt/ac\" (per area) or "
                   "\"1 qt/100 gal\" (per volume of mix).";
        case Problem::basis_not_supported:
            return "This basis is not read as a label rate. Known are volume or mass per area, "
                   "\"lb a.i./ac\", \"lb a.e./ac\", product per volume of mix (\"1 qt/100 gal\", "
                   "\"17 lb/100 gal\"), \"% v/v\" and \"% w/w\".";
        default: return {};
    }
}

std::string_view example_of(const KindInfo* info) {
    return info == nullptr ? std::string_view("1 qt/ac") : info->example;
}

std::string no_unit_text(const KindInfo* info) {
    if (info == nullptr) {
        return "The unit is missing.";
    }
    switch (info->dimension) {
        case Dimension::ratio:
            return fmt::format(
                "The percent sign is missing: a bare number could be a fraction or "
                "a percent.");
        default: return "The unit is missing.";
    }
}

std::string explain(const Fault& fault, const KindInfo* info) {
    switch (fault.problem) {
        case Problem::empty: return "Nothing was entered.";
        case Problem::too_long:
            return fmt::format("The text is longer than {} bytes.", longest_text);
        case Problem::no_unit: return no_unit_text(info);
        default: break;
    }
    std::string text = number_text(fault);
    if (text.empty()) {
        text = ambiguity_text(fault);
    }
    if (text.empty()) {
        text = unit_text(fault);
    }
    if (text.empty()) {
        text = kind_text(fault, info);
    }
    return text;
}

ErrorCode code_of(Problem problem) {
    switch (problem) {
        case Problem::below_absolute_zero: return ErrorCode::out_of_range;
        case Problem::basis_not_supported: return ErrorCode::unsupported;
        default: return ErrorCode::invalid_input;
    }
}

}  // namespace

namespace {

/// The text with what cannot be shown as "?", cut where it grows too long.
std::string printable(std::string_view text, std::size_t longest) {
    std::string shown;
    std::size_t at = 0;
    while (at < text.size() && at < longest) {
        const std::size_t bytes = shown_bytes(text.substr(at));
        if (bytes == 0) {
            shown += '?';
            ++at;
        } else {
            shown += text.substr(at, bytes);
            at += bytes;
        }
    }
    if (at < text.size()) {
        shown += "...";
    }
    return shown;
}

}  // namespace

std::string in_quotes(std::string_view text) {
    return "\"" + printable(text, longest_quote) + "\"";
}

std::string_view phrase_of(Dimension dimension) {
    switch (dimension) {
        case Dimension::length: return "a length";
        case Dimension::area: return "an area";
        case Dimension::volume: return "a volume";
        case Dimension::mass: return "a mass";
        case Dimension::time: return "a time";
        case Dimension::speed: return "a speed";
        case Dimension::flow: return "a volume per time";
        case Dimension::pressure: return "a pressure";
        case Dimension::angle: return "an angle";
        case Dimension::temperature: return "a temperature";
        case Dimension::temperature_change: return "a change of temperature";
        case Dimension::ratio: return "a percentage";
        case Dimension::volume_per_area: return "a volume per area";
        case Dimension::mass_per_area: return "a mass per area";
        case Dimension::mass_per_volume: return "a mass per volume";
        case Dimension::volume_per_volume: return "a volume per volume";
        case Dimension::area_per_time: return "an area per time";
        case Dimension::volume_each: return "a volume for each plant or cut";
        case Dimension::mass_each: return "a mass for each plant or cut";
        case Dimension::count_per_area: return "a count per area";
        case Dimension::mass_fraction: return "parts per million";
        case Dimension::count: return "a count";
    }
    return "a number";
}

Error error_of(const Fault& fault, std::string_view text, const Kind* kind) {
    const KindInfo* const info = kind == nullptr ? nullptr : &info_of(*kind);
    // A hint says what to type; an explanation of the rule is made plain by an example.
    const std::string hint = hint_for(fault, text, info);
    const std::string detail =
        hint.empty() ? fmt::format("{}: {} Example: \"{}\".", in_quotes(text), explain(fault, info),
                                   example_of(info))
                     : fmt::format("{}: {}", in_quotes(text), printable(hint, longest_hint));
    return Error{code_of(fault.problem), {}, detail};
}

}  // namespace swathbook::detail
