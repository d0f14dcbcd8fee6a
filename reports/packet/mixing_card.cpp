#include "reports/packet/mixing_card.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

#include <fmt/format.h>

namespace swathbook::reports {
namespace {

using mix::Load;
using mix::LoadAmount;
using mix::MarkChoice;
using mix::MeasureAdvice;
using mix::MeasuringTool;
using mix::TankProduct;

constexpr double alike = 1e-9;  // amounts that differ by rounding alone share a card

bool is_close(double a, double b) {
    return std::abs(a - b) <= alike * std::max(std::abs(a), std::abs(b));
}

bool are_alike(const Load& a, const Load& b) {
    const bool same_water = is_close(a.carrier.si(), b.carrier.si()) &&
                            is_close(a.rinse_water.si(), b.rinse_water.si());
    if (!is_close(a.fill.si(), b.fill.si()) || !same_water ||
        a.products.size() != b.products.size()) {
        return false;
    }
    for (std::size_t i = 0; i < a.products.size(); ++i) {
        if (a.products[i].amount.text != b.products[i].amount.text) {
            return false;
        }
    }
    return true;
}

/// Loads first to last (as indices, last included) that one card serves.
struct CardRange {
    std::size_t first = 0;
    std::size_t last = 0;
};

/// What one card is made from.
struct Card {
    const ComputedLoads& loads;
    CardRange range;
    UnitSystem units = UnitSystem::us;

    [[nodiscard]] const Load& load() const { return loads.answer.loads[range.first]; }
    [[nodiscard]] Voice voice(Language language) const { return {language, units}; }
};

constexpr std::array both = {Language::english, Language::spanish};

/// The same phrase on both sides, each in its language.
BilingualRow row_of(const Card& card, Phrase phrase, Style style, bool tick,
                    std::initializer_list<std::string_view> values = {}) {
    BilingualRow row;
    for (const Language language : both) {
        auto& side = language == Language::english ? row.left : row.right;
        side.push_back(Side{card.voice(language).say(phrase, values), style, tick});
    }
    return row;
}

std::string two_names(Phrase phrase) {
    return fmt::format("{} \u00B7 {}", say(Language::english, phrase),
                       say(Language::spanish, phrase));
}

int jugs_emptied_in(const Load& load) {
    return std::accumulate(
        load.products.begin(), load.products.end(), 0,
        [](int sum, const LoadAmount& amount) { return sum + amount.jugs_emptied; });
}

/// How much of the water is in the tank already when the emptied jugs were rinsed into it.
std::string rinse_note(const Card& card) {
    const Load& load = card.load();
    if (!(load.rinse_water.si() > 0.0)) {
        return {};
    }
    const std::string all = show(load.carrier + load.rinse_water, card.units);
    const std::string rinse = show(load.rinse_water, card.units);
    const std::string jugs = std::to_string(jugs_emptied_in(load));
    const std::string run_in = show(load.carrier, card.units);
    return say(Language::english, Phrase::card_rinse_part, {all, rinse, jugs, run_in}) + "\n" +
           say(Language::spanish, Phrase::card_rinse_part, {all, rinse, jugs, run_in});
}

void add_head(Sheet& sheet, const Card& card) {
    const Load& load = card.load();
    Facts facts;
    facts.columns = 3;
    facts.style = Style::amount;
    const Voice voice = card.voice(Language::english);
    facts.facts.push_back({two_names(Phrase::card_fill), voice.show(load.fill)});
    facts.facts.push_back(
        {two_names(Phrase::card_water), voice.show(load.carrier), rinse_note(card)});
    if (load.area) {
        facts.facts.push_back({two_names(Phrase::card_covers), voice.show(*load.area)});
    }
    sheet.add(std::move(facts));
    const double dead = load.fill.si() - load.sprayed.si();
    if (dead > alike * load.fill.si()) {
        const std::string amount = voice.show(Volume::from_si(dead));
        sheet.add(Text{say(Language::english, Phrase::card_includes_dead, {amount}) + " \u00B7 " +
                           say(Language::spanish, Phrase::card_includes_dead, {amount}),
                       Style::small});
    }
}

// ---------------------------------------------------------------- measuring

const MeasuringTool* tool_named(const ComputedLoads& loads, const std::string& name) {
    for (const MeasuringTool& tool : loads.request.tools) {
        if (tool.name == name) {
            return &tool;
        }
    }
    return nullptr;
}

/// The unit a person typed: "2 fl oz" -> "fl oz".
std::string unit_typed(const std::string& text) {
    const std::size_t at = text.find_first_not_of("0123456789.,/- ");
    return at == std::string::npos ? "" : text.substr(at);
}

template <Kind K>
std::string written_as_mark(const std::vector<Reading<K>>& marks, Quantity<K> wanted) {
    for (const auto& each : marks) {
        if (is_close(each.value.si(), wanted.si())) {
            return each.text;
        }
    }
    return {};
}

/// A mark as it is written on the user's jug or scale: its own words where marks were typed one by
/// one, else in the unit of its even steps, else in handy units.
template <Kind K>
std::string mark_text(const std::vector<Reading<K>>& marks, const std::optional<Reading<K>>& step,
                      Quantity<K> mark, mix::Form form, UnitSystem units) {
    std::string text = written_as_mark(marks, mark);
    if (text.empty() && step) {
        const std::string unit = unit_typed(step->text);
        text = unit.empty() ? "" : show(mark, unit);
    }
    return text.empty() ? mix::handy_text(mark.si(), form, units) : text;
}

std::string mark_text(const MeasuringTool& tool, Volume mark, UnitSystem units) {
    return mark_text(tool.marks, tool.step, mark, mix::Form::liquid, units);
}

std::string mark_text(const MeasuringTool& tool, Mass mark, UnitSystem units) {
    return mark_text(tool.weight_marks, tool.weight_step, mark, mix::Form::dry, units);
}

template <Kind K>
std::optional<Quantity<K>> top_mark(const std::vector<Reading<K>>& marks,
                                    const std::optional<Reading<K>>& holds) {
    std::optional<Quantity<K>> top;
    for (const auto& each : marks) {
        top = top ? std::max(*top, each.value) : each.value;
    }
    return top || !holds ? top : std::optional<Quantity<K>>(holds->value);
}

/// The fillings of one measure in words: "2 x full 64 fl oz, then to the 30 fl oz mark".
template <Kind K>
std::string fillings_text(const MeasuringTool& tool, int full,
                          const std::optional<Quantity<K>>& top,
                          const std::optional<Quantity<K>>& mark, const Card& card,
                          Language language) {
    std::vector<std::string> parts;
    if (full > 0 && top) {
        parts.push_back(say(language, Phrase::card_full_times,
                            {std::to_string(full), mark_text(tool, *top, card.units)}));
    }
    if (mark && mark->si() > 0.0) {
        const Phrase first = K == Kind::mass ? Phrase::card_weigh : Phrase::card_to_mark;
        parts.push_back(say(language, parts.empty() ? first : Phrase::card_then_to,
                            {mark_text(tool, *mark, card.units)}));
    }
    return joined(parts);
}

/// "Half-gallon jug: 2 x full 64 fl oz, then to the 30 fl oz mark (+0.1 % of the exact amount)".
std::string choice_text(const Card& card, const MarkChoice& choice, Language language) {
    const MeasuringTool* tool = tool_named(card.loads, choice.tool);
    if (tool == nullptr) {
        return choice.text;
    }
    const bool weighs = choice.weight_mark.has_value() || !choice.volume.has_value();
    const std::string fillings =
        weighs ? fillings_text(*tool, choice.full_measures,
                               top_mark(tool->weight_marks, tool->weight_holds), choice.weight_mark,
                               card, language)
               : fillings_text(*tool, choice.full_measures, top_mark(tool->marks, tool->holds),
                               choice.mark, card, language);
    constexpr double exact_enough = 5e-4;
    const std::string error =
        std::abs(choice.error.si()) < exact_enough
            ? std::string(say(language, Phrase::card_measure_exact))
            : say(language,
                  choice.error.si() > 0 ? Phrase::card_measure_over : Phrase::card_measure_under,
                  {plain_percent(std::abs(choice.error.si()))});
    return say(language, Phrase::card_measure, {choice.tool, fillings}) + " " + error;
}

std::string measuring_text(const Card& card, const std::string& product, Language language) {
    const int number = card.load().number;
    for (const MeasureAdvice& advice : card.loads.answer.measuring) {
        if (advice.product != product || number < advice.first_load || number > advice.last_load) {
            continue;
        }
        if (advice.best && advice.fits) {
            return choice_text(card, *advice.best, language);
        }
        const std::string nearest = advice.best ? choice_text(card, *advice.best, language)
                                                : std::string(say(language, Phrase::tips_none));
        return say(language, Phrase::card_no_mark_fits, {advice.exact, nearest});
    }
    return std::string(say(language, Phrase::card_no_tool));
}

// ---------------------------------------------------------------- steps

void add_product(BilingualRow& row, const Card& card, const LoadAmount& amount) {
    for (const Language language : both) {
        auto& side = language == Language::english ? row.left : row.right;
        side.push_back(Side{amount.name, Style::strong, true});
        side.push_back(Side{amount.amount.text, Style::amount});
        side.push_back(Side{measuring_text(card, amount.name, language), Style::body});
    }
}

std::string fill_text(const Card& card, const mix::OrderStep& step, Language language) {
    if (!step.fill_low || !step.fill_high) {
        return {};
    }
    const Volume fill = card.load().fill;
    const std::string low = show(fill * step.fill_low->si(), card.units, 3);
    const std::string high = show(fill * step.fill_high->si(), card.units, 3);
    if (is_close(step.fill_low->si(), 1.0)) {
        return say(language, Phrase::card_fill_to, {show(fill, card.units)});
    }
    return low == high ? say(language, Phrase::card_fill_to, {high})
                       : say(language, Phrase::card_fill_between, {low, high});
}

/// The words of a step, with how full the tank then is.
BilingualRow step_row(const Card& card, const mix::OrderStep& step) {
    BilingualRow row;
    row.rule_above = true;
    for (const Language language : both) {
        auto& side = language == Language::english ? row.left : row.right;
        side.push_back(Side{fmt::format("{}  {}", step.number, in_language(language, step.text)),
                            Style::body, true});
        const std::string fill = fill_text(card, step, language);
        if (!fill.empty()) {
            side.push_back(Side{fill, Style::strong});
        }
    }
    return row;
}

void add_product_named(BilingualRow& row, const Card& card, const std::string& name) {
    for (const LoadAmount& amount : card.load().products) {
        if (amount.name == name) {
            add_product(row, card, amount);
        }
    }
}

/// A row for each step of the order. Where products go in, each has its own box to tick; a step
/// that holds several products takes further rows.
void add_steps(Bilingual& pair, const Card& card) {
    for (const mix::OrderStep& step : card.loads.answer.order) {
        BilingualRow row = step_row(card, step);
        for (std::size_t i = 0; i < step.products.size(); ++i) {
            if (i > 0) {
                pair.rows.push_back(std::exchange(row, BilingualRow{}));
            }
            add_product_named(row, card, step.products[i]);
        }
        pair.rows.push_back(std::move(row));
    }
}

/// The label's own words on protective equipment; the words around them in both languages.
void add_protection(Bilingual& pair, const Card& card) {
    for (const TankProduct& product : card.loads.request.products) {
        const auto& worn = product.card.limits.protective_equipment;
        if (!worn && mix::is_unregistered_adjuvant(product.card)) {
            continue;
        }
        BilingualRow row;
        for (const Language language : both) {
            auto& side = language == Language::english ? row.left : row.right;
            side.push_back(Side{std::string(say(language, Phrase::card_ppe)), Style::body, true});
            if (worn) {
                const std::string where = worn->where.empty() ? "" : " (" + worn->where + ")";
                side.push_back(
                    Side{fmt::format("{}: \u201C{}\u201D{}", product.card.name, worn->text, where),
                         Style::strong});
            } else {
                side.push_back(Side{say(language, Phrase::card_ppe_missing, {product.card.name}),
                                    Style::strong});
            }
        }
        pair.rows.push_back(std::move(row));
    }
}

/// How many jugs are emptied, and in which load where the card serves several.
std::string jugs_text(const Card& card) {
    std::vector<std::string> counts;
    for (std::size_t i = card.range.first; i <= card.range.last; ++i) {
        const Load& load = card.loads.answer.loads[i];
        const int emptied = jugs_emptied_in(load);
        if (emptied > 0) {
            const bool alone = card.range.first == card.range.last;
            counts.push_back(alone ? std::to_string(emptied)
                                   : fmt::format("{} (#{})", emptied, load.number));
        }
    }
    return joined(counts);
}

void add_rinsing(Bilingual& pair, const Card& card) {
    const std::string jugs = jugs_text(card);
    pair.rows.push_back(jugs.empty() ? row_of(card, Phrase::card_rinse_none, Style::body, true)
                                     : row_of(card, Phrase::card_rinse, Style::body, true, {jugs}));
    pair.rows.back().rule_above = true;
}

void add_labels(Sheet& sheet, const Card& card) {
    Table table;
    table.style = Style::small;
    table.columns = {{two_names(Phrase::product_word), 2.2},
                     {two_names(Phrase::card_registration), 1.5},
                     {two_names(Phrase::card_rate_asked), 1.6},
                     {two_names(Phrase::card_most_allowed), 2.6}};
    for (const TankProduct& product : card.loads.request.products) {
        const auto& most = product.card.limits.max_single_rate;
        std::string allowed = two_names(Phrase::not_entered);
        if (most) {
            allowed = show(most->value, card.units) +
                      (most->where.empty() ? "" : " (" + most->where + ")");
        } else if (mix::is_unregistered_adjuvant(product.card)) {
            allowed = "\u2013";
        }
        const std::string number =
            product.card.registration.empty() ? "\u2013" : product.card.registration;
        table.rows.push_back(
            {{product.card.name, true}, {number}, {show(product.rate, card.units)}, {allowed}});
    }
    sheet.add(Text{two_names(Phrase::card_label_heading), Style::small}, true);
    sheet.add(std::move(table));
}

/// A line for each load of the card, to be written on at the tank.
void add_foot(Sheet& sheet, const Card& card) {
    Table table;
    table.least_row_height = 24.0;
    table.upright_rules = true;
    table.columns = {{two_names(Phrase::card_load), 1},
                     {two_names(Phrase::time_word), 1},
                     {two_names(Phrase::card_mixed_by), 2},
                     {two_names(Phrase::card_water_from), 2}};
    for (std::size_t i = card.range.first; i <= card.range.last; ++i) {
        table.rows.push_back(
            {{std::to_string(card.loads.answer.loads[i].number), true}, {}, {}, {}});
    }
    sheet.add(std::move(table));
    const auto& order = card.loads.answer.order;
    const Phrase gloss = card.units == UnitSystem::us ? Phrase::card_units_gloss_us
                                                      : Phrase::card_units_gloss_metric;
    for (const Language language : both) {
        std::string words(say(language, gloss));
        if (!order.empty() && !order.front().source.empty()) {
            words += "\n" + say(language, Phrase::card_order_source, {order.front().source});
        }
        sheet.add(Text{std::move(words), Style::small});
    }
}

std::string title_in(Language language, const Card& card) {
    const auto number = [&](std::size_t index) {
        return std::to_string(card.loads.answer.loads[index].number);
    };
    const std::string count = std::to_string(card.loads.answer.load_count);
    if (card.range.first == card.range.last) {
        return say(language, Phrase::card_title_one, {number(card.range.first), count});
    }
    return say(language, Phrase::card_title_same,
               {number(card.range.first), number(card.range.last), count});
}

/// A sentence of the core in both languages; once, where they are the same.
std::string in_both(const std::string& text) {
    std::string spanish = in_language(Language::spanish, text);
    return typeset(spanish == text ? text : text + " / " + spanish);
}

Sheet card_sheet(const Card& card) {
    Sheet sheet = titled(title_in(Language::english, card), title_in(Language::spanish, card),
                         card.voice(Language::english));
    sheet.add(Text{card.loads.name, Style::strong});
    for (const Finding& finding : card.loads.notes.findings()) {
        if (finding.severity == Severity::stop) {
            sheet.add(Remark{finding.severity, two_names(Phrase::severity_stop),
                             in_both(finding.text), finding.source});
        }
    }
    add_head(sheet, card);
    Bilingual pair;
    pair.left_title = say(Language::english, Phrase::english_word);
    pair.right_title = say(Language::spanish, Phrase::spanish_word);
    add_protection(pair, card);
    pair.rows.push_back(row_of(card, Phrase::card_site, Style::body, true));
    add_steps(pair, card);
    add_rinsing(pair, card);
    pair.rows.push_back(row_of(card, Phrase::card_after, Style::body, true));
    pair.rows.push_back(row_of(card, Phrase::label_is_the_law, Style::small, false));
    sheet.add(std::move(pair));
    add_labels(sheet, card);
    add_foot(sheet, card);
    return sheet;
}

}  // namespace

std::vector<Sheet> mixing_cards(const ComputedLoads& loads, UnitSystem units) {
    std::vector<Sheet> sheets;
    const std::vector<Load>& all = loads.answer.loads;
    for (std::size_t first = 0; first < all.size();) {
        std::size_t last = first;
        while (last + 1 < all.size() && are_alike(all[first], all[last + 1])) {
            ++last;
        }
        sheets.push_back(card_sheet(Card{loads, {first, last}, units}));
        first = last + 1;
    }
    return sheets;
}

}  // namespace swathbook::reports
