#include "reports/packet/crew_sheet.hpp"

namespace swathbook::reports {
namespace {

using calibration::CrewAnswer;
using calibration::CrewLimit;
using calibration::CrewMember;

/// What one person breaks or meets, in words; "not entered" is said, never taken for "within".
std::string standing_of(const CrewMember& person, const Voice& voice) {
    std::vector<std::string> words;
    bool is_entered = false;
    const auto judge = [&](CrewLimit limit, Phrase what) {
        const std::string name = voice.say(what);
        is_entered = is_entered || limit != CrewLimit::not_entered;
        if (limit == CrewLimit::over) {
            words.push_back(voice.say(Phrase::crew_over, {name}));
        } else if (limit == CrewLimit::under) {
            words.push_back(voice.say(Phrase::crew_under, {name}));
        } else if (limit == CrewLimit::at_limit) {
            words.push_back(voice.say(Phrase::crew_at_limit, {name}));
        }
    };
    judge(person.product_low, Phrase::crew_product_limit);
    judge(person.product_high, Phrase::crew_product_limit);
    judge(person.carrier_low, Phrase::crew_carrier_limit);
    judge(person.carrier_high, Phrase::crew_carrier_limit);
    if (!is_entered) {
        return voice.say(Phrase::not_entered);
    }
    return words.empty() ? voice.say(Phrase::crew_within) : joined(words, "\n");
}

bool breaks_a_limit(const CrewMember& person) {
    for (const CrewLimit limit :
         {person.product_low, person.product_high, person.carrier_low, person.carrier_high}) {
        if (limit == CrewLimit::over || limit == CrewLimit::under) {
            return true;
        }
    }
    return false;
}

void add_rate(Sheet& sheet, const CrewAnswer& answer, const Voice& voice) {
    Facts rate;
    rate.columns = 2;
    rate.style = Style::large;
    rate.facts.push_back({voice.say(Phrase::crew_rate), voice.show(answer.crew_rate)});
    const Phrase verdict = !answer.one_recipe_is_lawful   ? Phrase::crew_cannot_tell
                           : *answer.one_recipe_is_lawful ? Phrase::crew_lawful
                                                          : Phrase::crew_unlawful;
    rate.facts.push_back({voice.say(Phrase::crew_one_recipe), voice.say(verdict)});
    sheet.add(std::move(rate));
    Facts facts;
    facts.columns = 3;
    facts.facts.push_back({voice.say(Phrase::crew_plain_mean), voice.show(answer.arithmetic_mean)});
    facts.facts.push_back({voice.say(Phrase::crew_spread), signed_percent(answer.spread.si(), 0)});
    add_fact(facts, voice.say(Phrase::crew_recipe_for), voice.show(answer.recipe_tested));
    sheet.add(std::move(facts));
}

void add_people(Sheet& sheet, const CrewAnswer& answer, const Voice& voice) {
    Table table;
    table.columns = {{voice.say(Phrase::crew_person), 1.6},
                     {voice.say(Phrase::crew_output), 1.2, Align::right},
                     {voice.say(Phrase::crew_off), 1, Align::right},
                     {voice.say(Phrase::crew_product), 1.3, Align::right},
                     {voice.say(Phrase::crew_limits), 2},
                     {voice.say(Phrase::crew_tank_covers), 1.2, Align::right}};
    for (const CrewMember& person : answer.people) {
        const bool strong = breaks_a_limit(person);
        table.rows.push_back(
            {{person.name, true},
             {voice.show(person.output)},
             {signed_percent(person.from_crew.si())},
             {person.delivered ? show(*person.delivered, voice.units) : "", strong},
             {standing_of(person, voice), strong},
             {voice.show(person.area_per_tank)}});
    }
    sheet.add(std::move(table));
}

void add_recipes(Sheet& sheet, const CrewAnswer& answer, const Voice& voice) {
    if (answer.recipes.empty()) {
        return;
    }
    Table table;
    table.columns = {{voice.say(Phrase::crew_recipe_number), 0.7},
                     {voice.say(Phrase::crew_people), 3},
                     {voice.say(Phrase::crew_recipe_for), 1.4, Align::right},
                     {voice.say(Phrase::crew_may_be), 2, Align::right}};
    int number = 1;
    for (const calibration::RecipeGroup& group : answer.recipes) {
        const std::string range =
            group.mixed_for_low && group.mixed_for_high
                ? voice.show(*group.mixed_for_low) + " \u2013 " + voice.show(*group.mixed_for_high)
                : "";
        table.rows.push_back({{std::to_string(number++), true},
                              {joined(group.people)},
                              {voice.show(group.mixed_for), true},
                              {range}});
    }
    sheet.add(Heading{voice.say(Phrase::crew_recipes), 1});
    sheet.add(std::move(table));
}

}  // namespace

Sheet crew_sheet(const ComputedCrew& crew, const Voice& voice) {
    Sheet sheet = titled(voice.say(Phrase::crew_title, {crew.name}), "", voice);
    add_rate(sheet, crew.answer, voice);
    add_people(sheet, crew.answer, voice);
    add_recipes(sheet, crew.answer, voice);
    add_findings(sheet, crew.notes, voice);
    add_working(sheet, crew.notes, voice);
    return sheet;
}

}  // namespace swathbook::reports
