#include "core/calibration/crew.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>

#include <fmt/format.h>

#include "core/base/sort.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/require.hpp"

namespace swathbook::calibration {
namespace {

constexpr std::size_t most_people = 200;
constexpr double arithmetic_blur = 1e-9;  ///< what binary arithmetic can blur in a typed quotient

std::string percent(double fraction) {
    return fmt::format("{}{} %", fraction > 0.0 ? "+" : "", show_fixed(fraction * 100.0, 1));
}

std::string name_of(const CrewPerson& person, std::size_t index) {
    return person.name.empty() ? fmt::format("person {}", index + 1) : person.name;
}

Result<void> check_people(const CrewRequest& request) {
    const std::size_t count = request.people.size();
    if (count < 2 || count > most_people) {
        return fail(ErrorCode::out_of_range, "people",
                    fmt::format("The crew has {} people; 2 to {} can be joined. One person alone "
                                "needs only a calibration.",
                                count, most_people));
    }
    SWATHBOOK_CHECK(require_usable(request.tank, "tank", "The tank"));
    SWATHBOOK_CHECK(require_usable(request.carrier_min, "carrier_min", "The least carrier"));
    SWATHBOOK_CHECK(require_usable(request.carrier_max, "carrier_max", "The most carrier"));
    SWATHBOOK_CHECK(require_usable(request.mixed_for, "mixed_for", "The output mixed for"));
    for (std::size_t i = 0; i < count; ++i) {
        const CrewPerson& person = request.people[i];
        const std::string where = fmt::format("people[{}].", i);
        const std::string name = name_of(person, i);
        for (std::size_t earlier = 0; earlier < i && !person.name.empty(); ++earlier) {
            if (request.people[earlier].name == person.name) {
                return fail(ErrorCode::inconsistent, where + "name",
                            fmt::format("Two people are called {}. Name them apart, or nobody can "
                                        "tell whose recipe is whose.",
                                        name));
            }
        }
        SWATHBOOK_CHECK(require_usable(person.output, where + "output", "The output of " + name));
        SWATHBOOK_CHECK(require_usable(person.flow, where + "flow", "The flow of " + name));
        SWATHBOOK_CHECK(require_usable(person.tank, where + "tank", "The tank of " + name));
        if (request.sharing == CrewSharing::own_flow && !person.flow) {
            return fail(ErrorCode::invalid_input, where + "flow",
                        fmt::format("Sharing by own flow needs the flow of each, and {} has none. "
                                    "Catch their flow, or choose equal_flow.",
                                    name));
        }
    }
    return {};
}

bool is_per_area(RateBasis basis) {
    return basis == RateBasis::volume_per_area || basis == RateBasis::mass_per_area ||
           basis == RateBasis::ingredient_per_area || basis == RateBasis::acid_per_area;
}

Result<void> check_rate(const std::optional<LabelRate>& rate, const std::optional<LabelRate>& first,
                        std::string_view field) {
    if (!rate) {
        return {};
    }
    if (!is_per_area(rate->basis)) {
        return fail(ErrorCode::unsupported, field,
                    fmt::format("\"{}\" is a rate per volume of mix: the same recipe serves "
                                "everyone, whatever their output. What differs is the product put "
                                "on an area; give the label's limits per area to see that.",
                                rate->text));
    }
    SWATHBOOK_CHECK(
        require_usable(rate->si, kind_of(rate->basis), rate->text, field, "The product rate"));
    if (first && first->basis != rate->basis) {
        return fail(ErrorCode::inconsistent, field,
                    fmt::format("\"{}\" and \"{}\" are on different bases. Write all product rates "
                                "on the label's one basis.",
                                first->text, rate->text));
    }
    return {};
}

Result<void> check_rates(const CrewRequest& request) {
    const auto& first = request.product_rate  ? request.product_rate
                        : request.product_min ? request.product_min
                                              : request.product_max;
    SWATHBOOK_CHECK(check_rate(request.product_rate, first, "product_rate"));
    SWATHBOOK_CHECK(check_rate(request.product_min, first, "product_min"));
    SWATHBOOK_CHECK(check_rate(request.product_max, first, "product_max"));
    if (request.product_min && request.product_max &&
        request.product_min->si > request.product_max->si) {
        return fail(ErrorCode::inconsistent, "product_min",
                    fmt::format("The least product rate {} is above the most, {}. Read the label "
                                "again.",
                                request.product_min->text, request.product_max->text));
    }
    if (request.carrier_min && request.carrier_max &&
        request.carrier_min->value > request.carrier_max->value) {
        return fail(ErrorCode::inconsistent, "carrier_min",
                    fmt::format("The least carrier {} is above the most, {}. Read the label again.",
                                request.carrier_min->text, request.carrier_max->text));
    }
    return {};
}

/// Total mix over total ground.
double shared_rate(const CrewRequest& request) {
    double mix = 0.0;
    double ground = 0.0;
    for (const CrewPerson& person : request.people) {
        const double output = person.output.value.si();
        switch (request.sharing) {
            case CrewSharing::equal_area:
                mix += output;
                ground += 1.0;
                break;
            case CrewSharing::own_flow:
                mix += person.flow->value.si();
                ground += person.flow->value.si() / output;
                break;
            case CrewSharing::equal_flow:
            case CrewSharing::own_tanks:
                mix += 1.0;
                ground += 1.0 / output;
                break;
        }
    }
    return mix / ground;
}

CrewLimit against_low(double value, std::optional<double> limit) {
    if (!limit) {
        return CrewLimit::not_entered;
    }
    const double off = value / *limit - 1.0;
    return std::fabs(off) <= arithmetic_blur ? CrewLimit::at_limit
           : off < 0.0                       ? CrewLimit::under
                                             : CrewLimit::within;
}

CrewLimit against_high(double value, std::optional<double> limit) {
    if (!limit) {
        return CrewLimit::not_entered;
    }
    const double off = value / *limit - 1.0;
    return std::fabs(off) <= arithmetic_blur ? CrewLimit::at_limit
           : off > 0.0                       ? CrewLimit::over
                                             : CrewLimit::within;
}

std::optional<double> si_of(const std::optional<LabelRate>& rate) {
    return rate ? std::optional<double>(rate->si) : std::nullopt;
}
template <Kind K>
std::optional<double> si_of(const std::optional<Reading<K>>& reading) {
    return reading ? std::optional<double>(reading->value.si()) : std::nullopt;
}

ProductAmount amount_of(double si, RateBasis basis) {
    ProductAmount amount;
    switch (basis) {
        case RateBasis::volume_per_area: amount.volume = Volume::from_si(si); break;
        case RateBasis::mass_per_area: amount.mass = Mass::from_si(si); break;
        case RateBasis::ingredient_per_area: amount.ingredient = IngredientMass::from_si(si); break;
        default: amount.acid = AcidMass::from_si(si); break;
    }
    return amount;
}

CrewMember member_of(const CrewRequest& request, std::size_t index, double crew_rate,
                     double mixed_for) {
    const CrewPerson& person = request.people[index];
    const double output = person.output.value.si();
    CrewMember member;
    member.name = name_of(person, index);
    member.output = person.output.value;
    member.from_crew = Fraction::from_si(output / crew_rate - 1.0);
    member.carrier_low = against_low(output, si_of(request.carrier_min));
    member.carrier_high = against_high(output, si_of(request.carrier_max));
    const double recipe_output = request.sharing == CrewSharing::own_tanks ? output : mixed_for;
    const auto& tank = person.tank ? person.tank : request.tank;
    if (tank) {
        member.area_per_tank = Area::from_si(tank->value.si() / output);
    }
    if (!request.product_rate) {
        return member;
    }
    LabelRate delivered = *request.product_rate;
    delivered.si *= output / recipe_output;
    delivered.half_step_si = 0.0;
    delivered.text.clear();
    member.product_low = against_low(delivered.si, si_of(request.product_min));
    member.product_high = against_high(delivered.si, si_of(request.product_max));
    member.delivered = delivered;
    if (tank) {
        member.product_per_tank =
            amount_of(request.product_rate->si * tank->value.si() / recipe_output, delivered.basis);
    }
    return member;
}

/// What the outputs of a group allow a recipe to be mixed for: output * rate / mixed_for must stay
/// within the label for the lowest and for the highest.
RecipeGroup group_of(const CrewRequest& request, const std::vector<std::size_t>& members,
                     double wished) {
    RecipeGroup group;
    double low = HUGE_VAL;
    double high = 0.0;
    for (const std::size_t i : members) {
        group.people.push_back(name_of(request.people[i], i));
        low = std::min(low, request.people[i].output.value.si());
        high = std::max(high, request.people[i].output.value.si());
    }
    if (!request.product_rate) {
        return group;
    }
    double advised = std::clamp(wished, low, high);
    if (request.product_max) {
        const double least = high * request.product_rate->si / request.product_max->si;
        group.mixed_for_low = MixPerArea::from_si(least);
        advised = std::max(advised, least);
    }
    if (request.product_min) {
        const double most = low * request.product_rate->si / request.product_min->si;
        group.mixed_for_high = MixPerArea::from_si(most);
        advised = std::min(advised, most);
    }
    group.mixed_for = MixPerArea::from_si(advised);
    return group;
}

/// Fewest groups whose outputs differ by no more than the label allows: taking the lowest left and
/// everyone within its reach is best, because whoever shares with the lowest must be in reach of
/// it.
std::vector<RecipeGroup> recipes_for(const CrewRequest& request, double wished) {
    std::vector<std::size_t> order(request.people.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    sort_list(order, [&](std::size_t a, std::size_t b) {
        return request.people[a].output.value < request.people[b].output.value;
    });
    const double reach = request.product_min && request.product_max
                             ? request.product_max->si / request.product_min->si
                             : HUGE_VAL;
    std::vector<RecipeGroup> groups;
    std::vector<std::size_t> members;
    for (const std::size_t i : order) {
        const bool in_reach =
            members.empty() ||
            request.people[i].output.value.si() <=
                request.people[members.front()].output.value.si() * reach * (1.0 + arithmetic_blur);
        if (!in_reach) {
            groups.push_back(group_of(request, members, wished));
            members.clear();
        }
        members.push_back(i);
    }
    groups.push_back(group_of(request, members, wished));
    return groups;
}

void show_crew_rate(const CrewRequest& request, const CrewAnswer& answer, Notes& notes) {
    notes.show([&] {
        std::string terms;
        for (const CrewPerson& person : request.people) {
            const std::string output = show(person.output, notes.units());
            terms += terms.empty() ? "" : " + ";
            terms += request.sharing == CrewSharing::equal_area ? output
                     : request.sharing == CrewSharing::own_flow
                         ? fmt::format("{} / {}", show(*person.flow, notes.units()), output)
                         : fmt::format("1 / {}", output);
        }
        const std::size_t count = request.people.size();
        const std::string relation = request.sharing == CrewSharing::equal_area
                                         ? fmt::format("({}) / {}", terms, count)
                                     : request.sharing == CrewSharing::own_flow
                                         ? fmt::format("sum of the flows / ({})", terms)
                                         : fmt::format("{} / ({})", count, terms);
        return Step{"Crew rate: all the mix over all the ground", relation,
                    show(answer.crew_rate, notes.units())};
    });
    notes.show([&] {
        const auto [low, high] = std::minmax_element(
            answer.people.begin(), answer.people.end(),
            [](const CrewMember& a, const CrewMember& b) { return a.output < b.output; });
        return Step{"Label maximum over minimum that one recipe needs",
                    fmt::format("{} / {}", show(high->output, notes.units()),
                                show(low->output, notes.units())),
                    show_fixed(answer.ratio_needed, 2)};
    });
    for (const CrewMember& member : answer.people) {
        if (member.delivered) {
            notes.show([&] {
                return Step{fmt::format("Product put on by {}", member.name),
                            fmt::format("{} x {} / {}", show(*request.product_rate, notes.units()),
                                        show(member.output, notes.units()),
                                        show(request.sharing == CrewSharing::own_tanks
                                                 ? member.output
                                                 : *answer.recipe_tested,
                                             notes.units())),
                            show(*member.delivered, notes.units())};
            });
        }
    }
}

void find_person(const CrewRequest& request, const CrewMember& member, Notes& notes) {
    if (member.product_low == CrewLimit::under) {
        notes.find(Severity::warning, "product_under_label",
                   fmt::format("{} would put on {}, below the label's {}.", member.name,
                               show(*member.delivered, notes.units()),
                               show(*request.product_min, notes.units())),
                   "the label, as entered");
    }
    if (member.product_high == CrewLimit::over) {
        notes.find(Severity::stop, "product_over_label",
                   fmt::format("{} would put on {}, above the label's {}. Give them a mix of their "
                               "own or calibrate them again.",
                               member.name, show(*member.delivered, notes.units()),
                               show(*request.product_max, notes.units())),
                   "the label, as entered");
    }
    if (member.carrier_low == CrewLimit::under) {
        notes.find(Severity::stop, "carrier_under_label",
                   fmt::format("{} puts out {}, less than the label's least carrier {}. No recipe "
                               "mends that: walk slower, or use a larger tip, and calibrate again.",
                               member.name, show(member.output, notes.units()),
                               show(*request.carrier_min, notes.units())),
                   "the label, as entered");
    }
    if (member.carrier_high == CrewLimit::over) {
        notes.find(
            Severity::warning, "carrier_over_label",
            fmt::format("{} puts out {}, more than the label's most carrier {}. Walk faster, "
                        "or use a smaller tip, and calibrate again.",
                        member.name, show(member.output, notes.units()),
                        show(*request.carrier_max, notes.units())),
            "the label, as entered");
    }
}

void find_lawful(const CrewRequest& request, CrewAnswer& answer, Notes& notes) {
    if (!request.product_min || !request.product_max) {
        notes.find(
            Severity::advice, "label_range_not_entered",
            fmt::format("The label's {} not entered, so it cannot be said whether one recipe "
                        "is lawful. It needs a maximum at least {} times the minimum.",
                        request.product_max   ? "least product rate is"
                        : request.product_min ? "most product rate is"
                                              : "least and most product rates are",
                        show_fixed(answer.ratio_needed, 2)));
        return;
    }
    const double ratio = request.product_max->si / request.product_min->si;
    answer.ratio_of_label = ratio;
    const bool lawful = ratio >= answer.ratio_needed * (1.0 - arithmetic_blur);
    answer.one_recipe_is_lawful = lawful;
    if (!lawful) {
        notes.find(
            Severity::stop, "one_recipe_not_lawful",
            fmt::format("One recipe cannot keep everyone within the label: the outputs "
                        "differ by a factor {}, the label allows {}. Use {} recipes, or bring "
                        "the outputs together and calibrate again.",
                        show_fixed(answer.ratio_needed, 2), show_fixed(ratio, 2),
                        answer.recipes.size()),
            "the label, as entered");
        return;
    }
    if (request.product_rate && request.sharing != CrewSharing::own_tanks) {
        const RecipeGroup& group = answer.recipes.front();
        notes.find(Severity::note, "one_recipe_lawful",
                   fmt::format("One recipe serves everyone if it is mixed for {} to {}.",
                               show(*group.mixed_for_low, notes.units()),
                               show(*group.mixed_for_high, notes.units())),
                   "the label, as entered");
    }
}

void find_plain_average(const CrewRequest& request, const CrewAnswer& answer, Notes& notes) {
    const double off = answer.arithmetic_mean / answer.crew_rate - 1.0;
    constexpr double worth_saying = 0.005;
    if (request.sharing != CrewSharing::own_tanks && std::fabs(off) > worth_saying) {
        notes.find(Severity::note, "plain_average_differs",
                   fmt::format("The plain average of the outputs is {}, {} from the crew rate: who "
                               "puts out less covers more ground with the same mix, and counts for "
                               "more.",
                               show(answer.arithmetic_mean, notes.units()), percent(off)));
    }
}

}  // namespace

Result<CrewAnswer> crew(const CrewRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check_people(request));
    SWATHBOOK_CHECK(check_rates(request));
    const double crew_rate = shared_rate(request);
    const double mixed_for = request.mixed_for ? request.mixed_for->value.si() : crew_rate;

    CrewAnswer answer;
    answer.crew_rate = MixPerArea::from_si(crew_rate);
    double low = HUGE_VAL;
    double high = 0.0;
    double sum = 0.0;
    for (std::size_t i = 0; i < request.people.size(); ++i) {
        const double output = request.people[i].output.value.si();
        low = std::min(low, output);
        high = std::max(high, output);
        sum += output;
        answer.people.push_back(member_of(request, i, crew_rate, mixed_for));
    }
    answer.arithmetic_mean = MixPerArea::from_si(sum / static_cast<double>(request.people.size()));
    answer.ratio_needed = high / low;
    answer.spread = Fraction::from_si(answer.ratio_needed - 1.0);
    if (request.sharing != CrewSharing::own_tanks) {
        answer.recipe_tested = MixPerArea::from_si(mixed_for);
    }
    answer.recipes = recipes_for(request, mixed_for);

    show_crew_rate(request, answer, notes);
    for (const CrewMember& member : answer.people) {
        find_person(request, member, notes);
    }
    find_lawful(request, answer, notes);
    find_plain_average(request, answer, notes);
    return answer;
}

}  // namespace swathbook::calibration
