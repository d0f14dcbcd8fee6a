#include "core/mix/water.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/mix/rates.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

constexpr double most_ppm = 5000.0;
constexpr const char* ndsu = "North Dakota State University, Crop and Pest Report, 2 July 2015";

constexpr double carbonate_per_calcium = 100.087 / 40.078;
constexpr double carbonate_per_magnesium = 100.087 / 24.305;
constexpr double ppm_per_grain = 64.79891 / 3.785411784;
constexpr double ppm_per_german_degree = 10.0 * 100.087 / 56.077;

struct Mineral {
    const char* word;
    const char* symbol;
    double pounds_per_100_gallons;  // for each ppm
    std::optional<Reading<Kind::dissolved>> WaterRequest::* amount;
};
constexpr std::array<Mineral, 5> minerals{{
    {"potassium", "K", 0.002, &WaterRequest::potassium},
    {"sodium", "Na", 0.005, &WaterRequest::sodium},
    {"calcium", "Ca", 0.009, &WaterRequest::calcium},
    {"magnesium", "Mg", 0.014, &WaterRequest::magnesium},
    {"iron", "Fe", 0.042, &WaterRequest::iron},
}};

ProductMassPerMix pounds_per_100(double pounds_ams) {
    return ProductMassPerMix::of(pounds_ams, pounds_per_100_us_gallons);
}

Result<void> check_label(const WaterRequest& request, UnitSystem units) {
    for (const auto& [reading, field] :
         {std::pair{&request.label_least, "label_least"}, {&request.label_most, "label_most"}}) {
        const double pounds_ams = *reading ? (*reading)->value.in(pounds_per_100_us_gallons) : 0.0;
        if (!(pounds_ams >= 0.0 && pounds_ams <= 200.0)) {
            return fail(ErrorCode::out_of_range, field,
                        fmt::format("AMS on labels lies between 0 and 200 lb/100 gal; got {}.",
                                    show(**reading, units)));
        }
    }
    if (request.label_least && request.label_most &&
        request.label_least->value > request.label_most->value) {
        return fail(
            ErrorCode::inconsistent, "label_least",
            fmt::format("The label's least AMS ({}) is above its most ({}). Read them "
                        "again.",
                        show(*request.label_least, units), show(*request.label_most, units)));
    }
    return {};
}

Result<void> check(const WaterRequest& request, UnitSystem units) {
    bool any = request.hardness.has_value() || request.label_least || request.label_most;
    for (const Mineral& mineral : minerals) {
        const auto& amount = request.*mineral.amount;
        any = any || amount;
        const double ppm = amount ? amount->value.in(parts_per_million) : 0.0;
        if (!(ppm >= 0.0 && ppm <= most_ppm)) {
            return fail(ErrorCode::out_of_range, mineral.word,
                        fmt::format("Water for spraying holds between 0 and {} ppm of {}; got {}. "
                                    "Look at the unit of the report.",
                                    most_ppm, mineral.word, show(*amount, units)));
        }
    }
    if (!any) {
        return fail(
            ErrorCode::invalid_input, "calcium",
            "Give the minerals of a water report (K, Na, Ca, Mg, Fe in ppm), or the AMS the "
            "label asks for.");
    }
    if (request.hardness && !request.hardness_scale) {
        return fail(
            ErrorCode::invalid_input, "hardness_scale",
            fmt::format("A hardness of {0} is {0} ppm as CaCO3, or {1} ppm if it is in grains "
                        "per gallon, or {2} ppm in German degrees. Say which: "
                        "ppm_calcium_carbonate, grains_per_gallon or german_degrees.",
                        show_number(*request.hardness),
                        show_number(*request.hardness * ppm_per_grain),
                        show_number(*request.hardness * ppm_per_german_degree)));
    }
    if (request.hardness && !(*request.hardness >= 0.0 && *request.hardness <= most_ppm)) {
        return fail(ErrorCode::out_of_range, "hardness",
                    fmt::format("Hardness lies between 0 and {}; got {}.", most_ppm,
                                show_number(*request.hardness)));
    }
    for (std::size_t i = 0; i < request.tanks.size(); ++i) {
        if (!(request.tanks[i].value.si() > 0.0 && request.tanks[i].value.si() <= 1000.0)) {
            return fail(ErrorCode::out_of_range, fmt::format("tanks[{}]", i),
                        fmt::format("A fill is above 0; got {}.", show(request.tanks[i], units)));
        }
    }
    if (request.liquid_strength &&
        !(request.liquid_strength->value.in(kilograms_per_litre) > 0.01 &&
          request.liquid_strength->value.in(kilograms_per_litre) < 1.5)) {
        return fail(
            ErrorCode::out_of_range, "liquid_strength",
            fmt::format("Liquid AMS holds between 0.1 and 12 lb/gal of AMS; got {}. Take it "
                        "from the jug.",
                        show(*request.liquid_strength, units)));
    }
    return check_label(request, units);
}

void put_minerals(const WaterRequest& request, WaterAnswer& answer, Notes& notes) {
    double sum = 0.0;
    std::string expression;
    for (const Mineral& mineral : minerals) {
        const auto& amount = request.*mineral.amount;
        if (!amount) {
            answer.not_entered.emplace_back(mineral.word);
            continue;
        }
        const double ppm = amount->value.in(parts_per_million);
        const double pounds_ams = mineral.pounds_per_100_gallons * ppm;
        sum += pounds_ams;
        answer.ions.push_back({mineral.word, amount->value, pounds_per_100(pounds_ams)});
        expression += fmt::format("{}{} x {} {}", expression.empty() ? "" : " + ",
                                  mineral.pounds_per_100_gallons, show_number(ppm), mineral.symbol);
    }
    if (answer.ions.empty()) {
        return;
    }
    answer.ams = pounds_per_100(sum);
    answer.complete = answer.not_entered.empty();
    notes.show([&] {
        return Step{answer.complete ? "AMS that the minerals ask for"
                                    : "AMS that the minerals ask for, at least",
                    expression, show(*answer.ams, "lb/100 gal"), ndsu};
    });
    if (!answer.complete) {
        std::string missing;
        for (const std::string& word : answer.not_entered) {
            missing += (missing.empty() ? "" : ", ") + word;
        }
        notes.find(Severity::warning, "minerals_not_entered",
                   fmt::format("Not entered: {}. Not entered is not zero, so {} is the least the "
                               "water asks for. A water report has all five.",
                               missing, show(*answer.ams, "lb/100 gal")));
    }
}

/// Lumped hardness bounds its own part only; calcium and magnesium give hardness exactly.
Result<void> put_hardness(const WaterRequest& request, WaterAnswer& answer, Notes& notes) {
    std::optional<double> from_ions;
    if (request.calcium && request.magnesium) {
        from_ions = carbonate_per_calcium * request.calcium->value.in(parts_per_million) +
                    carbonate_per_magnesium * request.magnesium->value.in(parts_per_million);
    }
    std::optional<double> stated;
    if (request.hardness) {
        stated =
            as_calcium_carbonate(*request.hardness, *request.hardness_scale).in(parts_per_million);
        answer.hardness_asks_least = pounds_per_100(0.014 * *stated / carbonate_per_magnesium);
        answer.hardness_asks_most = pounds_per_100(0.009 * *stated / carbonate_per_calcium);
    }
    if (stated && from_ions && std::abs(*stated - *from_ions) > 20.0 + 0.25 * *from_ions) {
        return fail(ErrorCode::inconsistent, "hardness",
                    fmt::format("Calcium and magnesium make a hardness of {} ppm as CaCO3 ({} "
                                "grains/gal), but {} ppm was entered. One of them is in another "
                                "unit.",
                                show_number(*from_ions), show_number(*from_ions / ppm_per_grain),
                                show_number(*stated)));
    }
    const std::optional<double> hardness = from_ions ? from_ions : stated;
    if (!hardness) {
        return {};
    }
    answer.hardness = swathbook::Dissolved::of(*hardness, parts_per_million);
    answer.hardness_grains = *hardness / ppm_per_grain;
    if (from_ions) {
        notes.show([&] {
            return Step{"Hardness as CaCO3",
                        fmt::format("2.497 x {} Ca + 4.118 x {} Mg",
                                    show_number(request.calcium->value.in(parts_per_million)),
                                    show_number(request.magnesium->value.in(parts_per_million))),
                        fmt::format("{} ppm = {} grains/gal", show_number(*hardness),
                                    show_number(*hardness / ppm_per_grain)),
                        "ratios of molar masses"};
        });
        return {};
    }
    notes.find(Severity::warning, "hardness_is_not_enough",
               fmt::format(
                   "A hardness of {} ppm as CaCO3 asks for {} to {} of AMS by itself, but "
                   "it does not tell calcium from magnesium and leaves out sodium, "
                   "potassium and iron, which counts most for each ppm. Get the minerals measured.",
                   show_number(*stated), show(*answer.hardness_asks_least, "lb/100 gal", 3),
                   show(*answer.hardness_asks_most, "lb/100 gal", 3)));
    return {};
}

void put_tanks(const WaterRequest& request, WaterAnswer& answer, Notes& notes) {
    for (const auto& fill : request.tanks) {
        TankAms tank;
        tank.tank = fill.value;
        const auto amount = [&](ProductMassPerMix rate, std::optional<Mass>& mass,
                                std::string& text) {
            mass = Mass::from_si(rate.si() * fill.value.si());
            text = handy_text(mass->si(), Form::dry, notes.units());
        };
        double rate = 0.0;
        if (answer.ams) {
            amount(*answer.ams, tank.by_minerals, tank.by_minerals_text);
            rate = answer.ams->si();
        }
        if (request.label_least) {
            amount(request.label_least->value, tank.label_least, tank.label_least_text);
            rate = std::max(rate, request.label_least->value.si());
        }
        if (request.label_most) {
            amount(request.label_most->value, tank.label_most, tank.label_most_text);
        }
        if (request.liquid_strength && (answer.ams || request.label_least)) {
            tank.liquid =
                Volume::from_si(rate * fill.value.si() / request.liquid_strength->value.si());
        }
        notes.show([&] {
            return Step{
                fmt::format("AMS in {}", show(fill, notes.units())),
                fmt::format("minerals {}, label {} to {}",
                            tank.by_minerals_text.empty() ? "not known" : tank.by_minerals_text,
                            tank.label_least_text.empty() ? "not entered" : tank.label_least_text,
                            tank.label_most_text.empty() ? "not entered" : tank.label_most_text),
                tank.liquid ? show(*tank.liquid, notes.units()) + " of the liquid" : ""};
        });
        answer.tanks.push_back(std::move(tank));
    }
}

void remark(const WaterRequest& request, const WaterAnswer& answer, Notes& notes) {
    if (!request.label_least && !request.label_most) {
        notes.find(
            Severity::note, "label_range_not_entered",
            "The AMS range on the herbicide's label was not entered. Not entered is not \"no "
            "AMS\": read it on the label, which rules over the formula.");
        return;
    }
    if (answer.ams && request.label_least && *answer.ams < request.label_least->value) {
        notes.find(Severity::note, "label_asks_more_than_minerals",
                   fmt::format("The minerals ask for {}, the label for at least {}. The formula "
                               "covers the minerals only; AMS also helps some herbicides into the "
                               "leaf. The label rules.",
                               show(*answer.ams, "lb/100 gal", 3),
                               show(*request.label_least, notes.units())),
                   ndsu);
    }
    if (answer.ams && request.label_most && *answer.ams > request.label_most->value) {
        notes.find(
            Severity::warning, "minerals_ask_more_than_label",
            fmt::format("The minerals ask for {}, more than the label's most of {}. Look for "
                        "other water; do not go over the label.",
                        show(*answer.ams, "lb/100 gal", 3),
                        show(*request.label_most, notes.units())));
    }
}

}  // namespace

swathbook::Dissolved as_calcium_carbonate(double hardness, HardnessScale scale) {
    switch (scale) {
        case HardnessScale::ppm_calcium_carbonate: break;
        case HardnessScale::grains_per_gallon: hardness *= ppm_per_grain; break;
        case HardnessScale::german_degrees: hardness *= ppm_per_german_degree; break;
    }
    return swathbook::Dissolved::of(hardness, parts_per_million);
}

Result<WaterAnswer> water(const WaterRequest& request, Notes& notes) {
    SWATHBOOK_CHECK(check(request, notes.units()));
    WaterAnswer answer;
    put_minerals(request, answer, notes);
    SWATHBOOK_CHECK(put_hardness(request, answer, notes));
    put_tanks(request, answer, notes);
    remark(request, answer, notes);
    return answer;
}

}  // namespace swathbook::mix
