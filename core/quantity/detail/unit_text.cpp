#include "core/quantity/detail/unit_text.hpp"

#include <array>

namespace swathbook::detail {
namespace {

/// What was gathered about one side of "per".
struct Side {
    Atom atom = Atom::each;
    bool has_atom = false;
    unsigned flags = no_flag;
    unsigned power = 1;
    PercentOf percent = PercentOf::unsaid;
    std::string_view atom_text{};
    std::string_view modifier_text{};
};

constexpr unsigned substance_flags = ingredient | acid | substance_noun | product;

bool refuse(Fault& fault, Problem problem, std::string_view where, std::string_view other = {}) {
    fault = {problem, where, other};
    return false;
}

/// Reads the units and modifiers on one side of "per".
class SideReader {
public:
    SideReader(Cursor& cursor, bool below, Side& side, Fault& fault)
        : cursor_(cursor), side_(side), fault_(fault), below_(below) {}

    bool read(Stop& stop) {
        while (!stopped_) {
            cursor_.skip_space();
            if (cursor_.at_end()) {
                return stop_at(Stop::end, stop);
            }
            const bool taken = cursor_.at_letter()  ? take_word()
                               : at_number(cursor_) ? stop_here(Stop::number)
                                                    : take_sign();
            if (!taken) {
                return false;
            }
        }
        return stop_at(stop_, stop);
    }

private:
    static bool stop_at(Stop why, Stop& stop) {
        stop = why;
        return true;
    }
    bool stop_here(Stop why) {
        stopped_ = true;
        stop_ = why;
        return true;
    }

    bool take_word() {
        const WordText word = cursor_.read_word();
        const Spelling* const spelling = find_word(word.key);
        if (spelling == nullptr) {
            return refuse(fault_, Problem::unknown_word, word.raw);
        }
        switch (spelling->role) {
            case Role::atom: return take_unit_word(*spelling, word);
            case Role::modifier:
                side_.flags |= spelling->flags;
                side_.modifier_text = word.raw;
                return true;
            case Role::per: return take_per();
            case Role::join: return stop_here(Stop::join);
            case Role::of:
            case Role::by:
            case Role::stuff:
                return side_.has_atom || refuse(fault_, Problem::modifier_misplaced, word.raw);
            case Role::volume:
            case Role::hundred: return refuse(fault_, Problem::modifier_misplaced, word.raw);
            case Role::range: return refuse(fault_, Problem::range, word.raw);
            case Role::ambiguous:
                return refuse(fault_, Problem::ambiguous_word, word.raw, spelling->choices);
        }
        return true;
    }

    /// "per"; but "por ciento" is percent.
    bool take_per() {
        const char* const behind = cursor_.place();
        cursor_.skip_space();
        if (cursor_.at_letter()) {
            const Spelling* const next = find_word(cursor_.read_word().key);
            if (next != nullptr && next->role == Role::hundred) {
                return take_atom(Atom::percent, "%");
            }
        }
        cursor_.go_to(behind);
        return stop_here(Stop::per);
    }

    bool take_unit_word(const Spelling& spelling, const WordText& word) {
        const Atom atom = spelling.atom;
        if (atom == Atom::inch && side_.has_atom && !below_) {  // "17 lb in 100 gal"
            const char* const behind = cursor_.place();
            cursor_.skip_space();
            if (at_number(cursor_)) {
                return stop_here(Stop::per);
            }
            cursor_.go_to(behind);
        }
        if (atom == Atom::acre && word.key.length == 1 && take_spaced_substance(word)) {
            return true;
        }
        if (word.raw[0] == 'm' && word.raw.size() > 1 && word.raw[1] == 'P' &&
            atom == Atom::megapascal) {
            return refuse(fault_, Problem::ambiguous_case, word.raw, "\"MPa\" or \"kPa\"");
        }
        if (atom == Atom::milligram && word.raw.substr(0, 2) == "Mg") {
            return refuse(fault_, Problem::ambiguous_case, word.raw,
                          "\"mg\" (milligram) or \"tonne\" (1000 kg)");
        }
        side_.flags |= spelling.flags;
        if (!take_atom(atom, word.raw)) {
            return false;
        }
        if (row_of(atom).dimension == Dimension::length) {
            take_power();
        }
        return true;
    }

    /// "a. e." and "a i" with a space between.
    bool take_spaced_substance(const WordText& word) {
        const char* const behind = cursor_.place();
        cursor_.skip_space();
        if (side_.has_atom && cursor_.at_letter()) {
            const WordText next = cursor_.read_word();
            const bool is_acid = is_key(next.key, "e");
            if (is_acid || is_key(next.key, "i")) {
                side_.flags |= is_acid ? acid : ingredient;
                side_.modifier_text = word.raw;
                return true;
            }
        }
        cursor_.go_to(behind);
        return false;
    }

    /// "ft2", "ft^2"; but "6ft2in" and "6 ft2.5" go on with a number.
    void take_power() {
        const char* const behind = cursor_.place();
        (void)cursor_.pass(Sign::caret);
        const unsigned char digit = cursor_.byte();
        if (digit == '2' || digit == '3') {
            cursor_.advance(1);
            const unsigned char next = cursor_.byte();
            if (!Cursor::is_digit(next) && next != '.' && next != ',' && !cursor_.at_letter()) {
                side_.power = digit == '2' ? 2 : 3;
                return;
            }
        }
        cursor_.go_to(behind);
    }

    bool take_atom(Atom atom, std::string_view text) {
        const bool is_temperature = atom == Atom::celsius || atom == Atom::fahrenheit;
        if (side_.has_atom && side_.atom == Atom::degree && is_temperature) {
            side_.atom = atom;  // "deg F", "° C"
            return true;
        }
        if (side_.has_atom && atom == Atom::degree &&
            row_of(side_.atom).dimension == Dimension::temperature) {
            return true;  // "72 F°"
        }
        if (side_.has_atom && atom == Atom::each && !below_) {
            return stop_here(Stop::per_each);
        }
        if (side_.has_atom) {
            return refuse(fault_, Problem::two_units, side_.atom_text, text);
        }
        side_.has_atom = true;
        side_.atom = atom;
        side_.atom_text = text;
        return atom != Atom::percent || read_percent_of();
    }

    /// "v", "volume", "w", "weight" and their kin; a single letter only in a pair, as in "w/w".
    PercentOf percent_word(bool& is_letter) {
        cursor_.skip_space();
        if (!cursor_.at_letter()) {
            return PercentOf::unsaid;
        }
        const char* const start = cursor_.place();
        const WordKey key = cursor_.read_word().key;
        const Spelling* const spelling = find_word(key);
        is_letter = key.length == 1;
        if (spelling != nullptr && spelling->role == Role::volume) {
            return PercentOf::volume;
        }
        constexpr std::array weights{std::string_view("w"),    std::string_view("wt"),
                                     std::string_view("p"),    std::string_view("weight"),
                                     std::string_view("m"),    std::string_view("mass"),
                                     std::string_view("peso"), std::string_view("masa")};
        for (const std::string_view word : weights) {
            if (is_key(key, word)) {
                return PercentOf::weight;
            }
        }
        cursor_.go_to(start);
        return PercentOf::unsaid;
    }

    /// Behind a percent sign: "v/v", "w/w", "by volume", "por peso", or nothing.
    bool read_percent_of() {
        const char* const start = cursor_.place();
        cursor_.skip_space();
        const char* const words = cursor_.place();
        bool is_letter = false;
        if (cursor_.at_letter()) {
            const Spelling* const joining = find_word(cursor_.read_word().key);
            const bool says_by =
                joining != nullptr && (joining->role == Role::by || joining->role == Role::per);
            if (says_by) {
                side_.percent = percent_word(is_letter);
                if (side_.percent != PercentOf::unsaid) {
                    return true;
                }
                cursor_.go_to(start);
                return true;
            }
        }
        cursor_.go_to(words);
        const PercentOf top = percent_word(is_letter);
        cursor_.skip_space();
        const bool is_pair =
            top != PercentOf::unsaid && (cursor_.pass(Sign::slash) || cursor_.pass(Sign::colon));
        if (top == PercentOf::unsaid || (!is_pair && is_letter)) {
            cursor_.go_to(start);
            return true;
        }
        if (!is_pair) {
            side_.percent = top;  // "% vol"
            return true;
        }
        side_.percent = percent_word(is_letter);
        return side_.percent == top ||
               refuse(fault_, Problem::mixed_percent,
                      {words, static_cast<std::size_t>(cursor_.place() - words)});
    }

    bool take_sign() {
        const SignText sign = cursor_.sign();
        const char* const start = cursor_.place();
        if (sign.sign == Sign::none && cursor_.byte() == ',' && side_.has_atom) {
            cursor_.advance(1);  // "5 ft, 6 in"
            return true;
        }
        cursor_.advance(sign.bytes);
        const std::string_view text(start, sign.bytes);
        switch (sign.sign) {
            case Sign::slash: return stop_here(Stop::per);
            case Sign::plus: return stop_here(Stop::join);
            case Sign::percent: return take_atom(Atom::percent, text);
            case Sign::degree: return take_atom(Atom::degree, text);
            case Sign::celsius: return take_atom(Atom::celsius, text);
            case Sign::fahrenheit: return take_atom(Atom::fahrenheit, text);
            case Sign::foot: return take_atom(Atom::foot, text);
            case Sign::inch: return take_atom(Atom::inch, text);
            case Sign::number_sign:
                return refuse(fault_, Problem::ambiguous_word, text,
                              "\"lb\" (pound) or \"each\" (a count)");
            case Sign::squared:
            case Sign::cubed:
                side_.power = sign.sign == Sign::squared ? 2 : 3;
                return side_.has_atom || refuse(fault_, Problem::modifier_misplaced, text);
            case Sign::minus: return take_hyphen(text);
            default: return refuse(fault_, Problem::unknown_sign, cursor_.rest());
        }
    }

    /// "fl-oz", "26-ft", and "5'-6\"" as drawings have it; any other dash before a number is a
    /// range.
    bool take_hyphen(std::string_view text) {
        cursor_.skip_space();
        if (cursor_.at_letter()) {
            return true;
        }
        if (at_number(cursor_) && side_.has_atom && side_.atom == Atom::foot) {
            return stop_here(Stop::number);
        }
        return refuse(fault_, Problem::range, text);
    }

    Cursor& cursor_;
    Side& side_;
    Fault& fault_;
    bool below_;
    bool stopped_ = false;
    Stop stop_ = Stop::end;
};

/// The imperial unit of the same name, or the unit itself when there is none.
Atom imperial_of(Atom atom) {
    switch (atom) {
        case Atom::gallon: return Atom::imperial_gallon;
        case Atom::quart: return Atom::imperial_quart;
        case Atom::pint: return Atom::imperial_pint;
        case Atom::fluid_ounce: return Atom::imperial_fluid_ounce;
        default: return atom;
    }
}

bool take_flags(unsigned& flags, unsigned wanted) {
    const bool any = (flags & wanted) != 0;
    flags &= ~wanted;
    return any;
}

/// Settles what a bare ounce is, or refuses it. An ounce of active ingredient or acid is a weight:
/// neither is ever counted by volume.
bool settle_ounce(Side& side, std::optional<Dimension> summed_with, Fault& fault) {
    const bool says_fluid = take_flags(side.flags, fluid) || summed_with == Dimension::volume;
    const bool says_weight = take_flags(side.flags, weight) || summed_with == Dimension::mass ||
                             (!says_fluid && (side.flags & (ingredient | acid)) != 0);
    if (says_fluid && says_weight) {
        return refuse(fault, Problem::contradictory, side.atom_text, "fluid and weight");
    }
    if (!says_fluid && !says_weight) {
        return refuse(fault, Problem::ambiguous_ounce, side.atom_text);
    }
    side.atom = says_fluid ? Atom::fluid_ounce : Atom::ounce;
    return true;
}

bool settle_ton(Side& side, Fault& fault) {
    if (!take_flags(side.flags, ton)) {
        return true;
    }
    const bool is_short = take_flags(side.flags, short_size | us);
    const bool is_long = take_flags(side.flags, long_size | imperial);
    const bool is_metric = take_flags(side.flags, metric);
    if (int{is_short} + int{is_long} + int{is_metric} != 1) {
        return refuse(fault, Problem::ambiguous_ton, side.atom_text);
    }
    side.atom = is_short ? Atom::short_ton : (is_long ? Atom::long_ton : Atom::tonne);
    return true;
}

struct SideMeaning {
    Dimension dimension = Dimension::ratio;
    double si = 1.0;
    double zero = 0.0;
    bool is_change = false;
};

/// Squares and cubes of lengths.
bool raise(Side& side, SideMeaning& meaning, Fault& fault) {
    if (take_flags(side.flags, square)) {
        side.power = side.power == 1 ? 2 : 0;
    }
    if (take_flags(side.flags, cubic)) {
        side.power = side.power == 1 ? 3 : 0;
    }
    if (side.power == 1) {
        return true;
    }
    if (meaning.dimension != Dimension::length || side.power == 0) {
        return refuse(fault, Problem::modifier_misplaced, side.atom_text);
    }
    const double length_si = meaning.si;
    meaning.dimension = side.power == 2 ? Dimension::area : Dimension::volume;
    meaning.si = side.power == 2 ? length_si * length_si : length_si * length_si * length_si;
    return true;
}

/// Makes a unit of an atom and its modifiers; every modifier must have found a use.
bool resolve(Side& side, std::optional<Dimension> summed_with, SideMeaning& meaning, Fault& fault) {
    if (side.atom == Atom::ounce && !settle_ounce(side, summed_with, fault)) {
        return false;
    }
    if (!settle_ton(side, fault)) {
        return false;
    }
    const Atom imperial_atom = imperial_of(side.atom);
    if (imperial_atom != side.atom) {
        (void)take_flags(side.flags, fluid);
        const bool is_us = take_flags(side.flags, us);
        const bool is_imperial = take_flags(side.flags, imperial);
        if (is_us && is_imperial) {
            return refuse(fault, Problem::contradictory, side.atom_text, "US and imperial");
        }
        side.atom = is_imperial ? imperial_atom : side.atom;
    } else if (side.atom == Atom::cup || side.atom == Atom::tablespoon ||
               side.atom == Atom::teaspoon) {
        (void)take_flags(side.flags, us);
    }
    const UnitRow& row = row_of(side.atom);
    meaning = {row.dimension, row.si, row.zero, false};
    if (row.dimension == Dimension::mass) {
        (void)take_flags(side.flags, weight);
    }
    if (row.dimension == Dimension::temperature) {
        meaning.is_change = take_flags(side.flags, delta);
    }
    if (!raise(side, meaning, fault)) {
        return false;
    }
    if ((side.flags & ~substance_flags) != 0) {
        return refuse(fault, Problem::modifier_misplaced, side.modifier_text, side.atom_text);
    }
    return true;
}

bool settle_substance(const Side& top, Dimension dimension, UnitMeaning& meaning, Fault& fault) {
    const unsigned flags = top.flags;
    const bool is_ingredient = (flags & ingredient) != 0;
    const bool is_acid = (flags & acid) != 0;
    const bool is_product = (flags & product) != 0;
    if (int{is_ingredient} + int{is_acid} + int{is_product} > 1) {
        return refuse(fault, Problem::contradictory, top.atom_text,
                      "active ingredient, acid equivalent and product");
    }
    const bool named = is_ingredient || is_acid;
    if ((named && dimension != Dimension::mass) || (!named && (flags & substance_noun) != 0)) {
        return refuse(fault, Problem::modifier_misplaced, top.modifier_text, top.atom_text);
    }
    meaning.substance = is_ingredient ? Substance::ingredient
                        : is_acid     ? Substance::acid
                                      : Substance::any;
    return true;
}

struct Quotient {
    Dimension top;
    Dimension bottom;
    Dimension result;
};
constexpr std::array quotients{
    Quotient{Dimension::length, Dimension::time, Dimension::speed},
    Quotient{Dimension::area, Dimension::time, Dimension::area_per_time},
    Quotient{Dimension::volume, Dimension::time, Dimension::flow},
    Quotient{Dimension::volume, Dimension::area, Dimension::volume_per_area},
    Quotient{Dimension::mass, Dimension::area, Dimension::mass_per_area},
    Quotient{Dimension::mass, Dimension::volume, Dimension::mass_per_volume},
    Quotient{Dimension::volume, Dimension::volume, Dimension::volume_per_volume},
    Quotient{Dimension::volume, Dimension::count, Dimension::volume_each},
    Quotient{Dimension::mass, Dimension::count, Dimension::mass_each},
    Quotient{Dimension::count, Dimension::area, Dimension::count_per_area},
};

bool divide(Dimension top, Dimension bottom, Dimension& result) {
    for (const Quotient& quotient : quotients) {
        if (quotient.top == top && quotient.bottom == bottom) {
            result = quotient.result;
            return true;
        }
    }
    return false;
}

/// "a": an acre in "oz/a", but in metric countries an are.
bool is_lower_case_a(const Side& side) {
    return side.has_atom && side.atom == Atom::acre && side.atom_text == "a";
}

/// "/100 gal": passes the divisor; "por cada 100 galones" too.
bool read_divisor(Cursor& cursor, double& divisor, Fault& fault) {
    divisor = 1.0;
    cursor.skip_space();
    if (cursor.at_letter()) {
        const char* const start = cursor.place();
        const Spelling* const spelling = find_word(cursor.read_word().key);
        cursor.skip_space();
        const bool says_each =
            spelling != nullptr && spelling->role == Role::atom && spelling->atom == Atom::each;
        if (!says_each || !(at_number(cursor) || cursor.at_letter())) {
            cursor.go_to(start);
        }
    }
    if (!at_number(cursor)) {
        return true;
    }
    const char* const start = cursor.place();
    Number number;
    if (!read_number(cursor, NumberPlace::after_per, number, fault)) {
        return false;
    }
    divisor = number.value;
    return divisor > 0.0 || refuse(fault, Problem::zero_denominator,
                                   {start, static_cast<std::size_t>(cursor.place() - start)});
}

/// Reads what stands behind "per". What is said there of the substance ("lb/gal a.e.") belongs to
/// the top; "per gallon of product" says nothing about it.
bool read_bottom(Cursor& cursor, Side& top, Side& bottom, double& divisor, Stop& stop,
                 Fault& fault) {
    divisor = 1.0;
    if (stop == Stop::per_each) {
        bottom.has_atom = true;
        bottom.atom = Atom::each;
        bottom.atom_text = "each";
    } else if (!read_divisor(cursor, divisor, fault)) {
        return false;
    }
    if (!SideReader(cursor, true, bottom, fault).read(stop)) {
        return false;
    }
    if (!bottom.has_atom) {
        return refuse(fault, stop == Stop::number ? Problem::number_in_unit : Problem::per_nothing,
                      top.atom_text);
    }
    if (stop == Stop::per) {
        return refuse(fault, Problem::two_pers, bottom.atom_text);
    }
    const bool metric_top = top.atom == Atom::litre || top.atom == Atom::millilitre ||
                            top.atom == Atom::gram || top.atom == Atom::kilogram;
    if (is_lower_case_a(bottom) && metric_top) {
        return refuse(fault, Problem::ambiguous_are, bottom.atom_text);
    }
    top.flags |= bottom.flags & substance_flags & ~unsigned{product};
    if (top.modifier_text.empty()) {
        top.modifier_text = bottom.modifier_text;
    }
    return true;
}

/// Makes the quotient of two resolved sides.
bool make_quotient(Side& bottom, double divisor, bool implied_count, UnitMeaning& meaning,
                   Fault& fault) {
    SideMeaning below;
    if (!resolve(bottom, std::nullopt, below, fault)) {
        return false;
    }
    if (!divide(meaning.top, below.dimension, meaning.dimension)) {
        return refuse(fault, implied_count ? Problem::nothing_per : Problem::no_such_quotient,
                      phrase_of(meaning.top), phrase_of(below.dimension));
    }
    meaning.has_bottom = true;
    meaning.bottom = below.dimension;
    meaning.bottom_si = divisor * below.si;
    meaning.si = meaning.top_si / meaning.bottom_si;
    return true;
}

/// A side without a unit is a fault, except the unsaid count of "412 per ac".
bool check_top(const Side& top, bool says_per, Stop stop, Fault& fault) {
    if (!top.has_atom && top.flags != no_flag) {
        return refuse(fault, Problem::modifier_alone, top.modifier_text);
    }
    if (!top.has_atom && !says_per) {
        return refuse(fault, stop == Stop::number ? Problem::two_numbers : Problem::no_unit, {});
    }
    return says_per || !is_lower_case_a(top) ||
           refuse(fault, Problem::ambiguous_are, top.atom_text);
}

}  // namespace

bool read_unit(Cursor& cursor, std::optional<Dimension> summed_with, UnitMeaning& meaning,
               Stop& stop, Fault& fault) {
    Side top;
    Side bottom;
    double divisor = 1.0;
    if (!SideReader(cursor, false, top, fault).read(stop)) {
        return false;
    }
    const bool says_per = stop == Stop::per || stop == Stop::per_each;
    if (!check_top(top, says_per, stop, fault)) {
        return false;
    }
    if (says_per && !read_bottom(cursor, top, bottom, divisor, stop, fault)) {
        return false;
    }
    SideMeaning above;
    if (!resolve(top, summed_with, above, fault)) {
        return false;
    }
    meaning = UnitMeaning{};
    meaning.dimension = meaning.top = above.dimension;
    meaning.si = meaning.top_si = above.si;
    meaning.zero = above.zero;
    meaning.is_change = above.is_change;
    meaning.percent = top.percent;
    meaning.is_grains = top.atom == Atom::grain || top.atom == Atom::grain_per_gallon;
    if (says_per && !make_quotient(bottom, divisor, !top.has_atom, meaning, fault)) {
        return false;
    }
    return settle_substance(top, meaning.top, meaning, fault);
}

}  // namespace swathbook::detail
