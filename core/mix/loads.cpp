#include "core/mix/loads.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/mix/load_plan.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::mix {
namespace {

constexpr double rounding_room = 1e-9;
constexpr double wanted_closeness = 0.05;
constexpr double small_load = 0.1;  // of the tank: pumps draw air and agitation fails

/// Everything the parts of the answer are made from.
struct Job {
    const LoadsRequest* request = nullptr;
    GroundPlan ground;
    MixBasis basis;
    MixContents contents;
    std::vector<Delivery> deliveries;
};

std::string element(std::size_t index) {
    return fmt::format("products[{}]", index);
}

Result<Job> job_of(const LoadsRequest& request, Notes& notes) {
    Job job;
    job.request = &request;
    SWATHBOOK_TRY(ground, plan_ground(request, notes));
    job.ground = ground;
    job.basis.mix_per_treated_area = ground.mix_per_treated;
    job.basis.band_share = ground.band_share;
    if (request.mix_density) {
        const double density = request.mix_density->value.si();
        if (!(density > 100.0 && density < 5000.0)) {
            return fail(ErrorCode::out_of_range, "mix_density",
                        fmt::format("The density of the mix is {}: liquids weigh between 0.1 and 5 "
                                    "kg/L (0.8 and 42 lb/gal).",
                                    show(*request.mix_density, notes.units())));
        }
        job.basis.mix_density = request.mix_density->value;
    }
    SWATHBOOK_TRY(contents, contents_of(request.products, job.basis));
    job.contents = std::move(contents);
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        SWATHBOOK_TRY(delivery, delivery_of(request.products[i], job.contents.products[i],
                                            job.basis, element(i)));
        job.deliveries.push_back(delivery);
    }
    return job;
}

// ---- loads -----------------------------------------------------------------------------------

/// A product in one fill: by the area of the load where the rate is per area, so that 1.25 ac at
/// 32 fl oz/ac is 40 fl oz and not 25 gal of a rounded strength.
double measure_in(const Dissolved& dissolved, const Load& load) {
    const double by_share = dissolved.per_mix * load.fill.si();
    if (!dissolved.is_per_area || !load.area) {
        return by_share;
    }
    const double beyond = (load.fill - load.sprayed).si();
    return *dissolved.per_treated * load.area->si() + dissolved.per_mix * beyond;
}

/// Illinois Extension, 50 Ways no. 30: a quarter full under 5 gallons, a fifth from 5 gallons on.
double usual_rinse_fill(Volume jug) {
    return jug < Volume::of(5.0, us_gallons) ? 0.25 : 0.2;
}

/// Counts the jugs of one product emptied so far.
struct JugCount {
    double used = 0.0;
    int emptied = 0;
};

/// @return rinse water of the jugs this load empties
double rinse_of(const LoadsRequest& request, const TankProduct& product, double measure,
                JugCount& count, LoadAmount& amount) {
    if (!product.jug || product.card.form == Form::dry) {
        return 0.0;
    }
    const Volume jug = product.jug->value;
    count.used += measure;
    constexpr double most_jugs = 1e9;  // so that the count stays a count
    const int emptied =
        static_cast<int>(std::min(most_jugs, std::floor(count.used / jug.si() + rounding_room)));
    amount.jugs_emptied = emptied - count.emptied;
    count.emptied = emptied;
    const double fill = request.rinse_fill ? request.rinse_fill->value.si() : usual_rinse_fill(jug);
    return amount.jugs_emptied * jug.si() * fill * request.rinse_times;
}

/// Rinse water beyond what a load can take is held over to the next.
struct RinseStore {
    double held = 0.0;
};

Load load_of(const Job& job, int number, Volume sprayed, std::vector<JugCount>& jugs,
             RinseStore& rinse, UnitSystem units) {
    const LoadsRequest& request = *job.request;
    Load load;
    load.number = number;
    load.sprayed = sprayed;
    load.fill = number == 1 ? sprayed + job.ground.dead : sprayed;
    if (job.ground.treated) {
        load.area = NetArea::from_si(job.ground.treated->si() * (sprayed / job.ground.sprayed));
    }
    double liquid = 0.0;
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        const TankProduct& product = request.products[i];
        const double measure = measure_in(job.contents.products[i], load);
        LoadAmount amount;
        amount.name = product.card.name;
        amount.amount = amount_of(measure, product.card, units);
        liquid += product.card.form == Form::liquid ? measure : 0.0;
        rinse.held += rinse_of(request, product, measure, jugs[i], amount);
        load.products.push_back(std::move(amount));
    }
    const double room = std::max(0.0, load.fill.si() - liquid);
    const double taken = std::min(room, rinse.held);
    rinse.held -= taken;
    load.rinse_water = Volume::from_si(taken);
    load.carrier = Volume::from_si(room - taken);
    return load;
}

Result<void> check_rinse(const LoadsRequest& request) {
    if (request.rinse_times < 0 || request.rinse_times > 10) {
        return fail(ErrorCode::out_of_range, "rinse_times",
                    fmt::format("Rinsing each jug {} times: give 0 to 10; three is usual.",
                                request.rinse_times));
    }
    if (request.rinse_fill) {
        const double fill = request.rinse_fill->value.si();
        if (!(fill > 0.0 && fill <= 1.0)) {
            return fail(ErrorCode::out_of_range, "rinse_fill",
                        fmt::format("Rinsing a jug {} % full: give more than 0 and at most 100 %.",
                                    show_number(fill * 100.0)));
        }
    }
    for (std::size_t i = 0; i < request.products.size(); ++i) {
        const auto& jug = request.products[i].jug;
        if (jug && !(jug->value.si() > 1e-6 && jug->value.si() < 10.0)) {
            return fail(ErrorCode::out_of_range, element(i) + ".jug",
                        fmt::format("The jug holds {}: give the size of one container.",
                                    show(*jug, UnitSystem::us)));
        }
    }
    return {};
}

Result<void> add_loads(const Job& job, LoadsAnswer& answer, Notes& notes) {
    const LoadsRequest& request = *job.request;
    SWATHBOOK_CHECK(check_rinse(request));
    const Volume usable = request.tank_usable ? request.tank_usable->value : job.ground.sprayed;
    SWATHBOOK_TRY(parts, split_volume(job.ground.sprayed, usable, request.split));
    answer.load_count = static_cast<int>(parts.size());
    std::vector<JugCount> jugs(request.products.size());
    RinseStore rinse;
    answer.loads.reserve(parts.size());
    for (const Volume& part : parts) {
        const int number = static_cast<int>(answer.loads.size()) + 1;
        answer.loads.push_back(load_of(job, number, part, jugs, rinse, notes.units()));
        answer.sprayed_mix += answer.loads.back().sprayed;
        answer.total_mix += answer.loads.back().fill;
    }
    answer.dead_volume = job.ground.dead;
    notes.show([&] {
        return Step{"Loads",
                    fmt::format("{} / {}", show(job.ground.sprayed, notes.units(), 5),
                                show(usable, notes.units())),
                    fmt::format("{} {} of {}{}", parts.size(), parts.size() == 1 ? "load" : "loads",
                                show(parts.front(), notes.units()),
                                parts.back() < parts.front() * (1.0 - rounding_room)
                                    ? ", the last of " + show(parts.back(), notes.units())
                                    : "")};
    });
    if (parts.back() < usable * small_load && parts.size() > 1) {
        notes.find(Severity::advice, "small_last_load",
                   fmt::format("The last load is only {}. Many pumps draw air and stop agitating "
                               "with so little in the tank; {} equal loads of {} avoid it.",
                               show(parts.back(), notes.units()), parts.size(),
                               show(job.ground.sprayed / static_cast<double>(parts.size()),
                                    notes.units())));
    }
    if (rinse.held > rounding_room * answer.total_mix.si()) {
        notes.find(Severity::warning, "rinse_water_left",
                   fmt::format("{} of rinse water does not fit into the loads. It holds product: "
                               "keep it for the next mix of the same products, or spray it on "
                               "ground where the label's rate is not passed.",
                               show(Volume::from_si(rinse.held), notes.units())),
                   "University of Illinois Extension, 50 Ways no. 30");
    }
    return {};
}

// ---- products --------------------------------------------------------------------------------

std::vector<IngredientTotal> ingredient_totals(const TankProduct& product, double total,
                                               const Delivery& delivery) {
    std::vector<IngredientTotal> totals;
    for (const Ingredient& ingredient : product.card.ingredients) {
        IngredientTotal made;
        made.name = ingredient.name;
        if (const auto content = ingredient_content(product.card, ingredient, "")) {
            made.ingredient = IngredientMass::from_si(total * *content);
            if (delivery.per_area_si) {
                made.ingredient_per_area =
                    IngredientPerArea::from_si(*delivery.per_area_si * *content);
            }
        }
        if (const auto content = acid_content(product.card, ingredient, "")) {
            made.acid = AcidMass::from_si(total * *content);
            if (delivery.per_area_si) {
                made.acid_per_area = AcidPerArea::from_si(*delivery.per_area_si * *content);
            }
        }
        totals.push_back(std::move(made));
    }
    return totals;
}

std::string typed(const LabelRate& rate, UnitSystem units) {
    return rate.text.empty() ? show(rate, units) : rate.text;
}

LabelRate plain_rate(double si, Per per, Form form) {
    const bool is_liquid = form == Form::liquid;
    const RateBasis basis =
        per == Per::area ? (is_liquid ? RateBasis::volume_per_area : RateBasis::mass_per_area)
                         : (is_liquid ? RateBasis::volume_per_mix : RateBasis::mass_per_mix);
    return LabelRate{si, basis, 0.0, ""};
}

/// How a rate in a.i. or a.e. becomes product: the step people get wrong most.
void show_conversion(const TankProduct& product, const Dissolved& dissolved, double band_share,
                     Notes& notes) {
    const RateBasis basis = product.rate.basis;
    const bool is_acid = basis == RateBasis::acid_per_area || product.measures == RateCounts::acid;
    const bool is_substance = is_acid || basis == RateBasis::ingredient_per_area ||
                              product.measures == RateCounts::ingredient;
    const auto ingredient = ingredient_of(product.card, product.ingredient, "");
    if (!notes.wants_working() || !is_substance || !ingredient) {
        return;
    }
    const double content = (is_acid ? acid_content(product.card, **ingredient, "")
                                    : ingredient_content(product.card, **ingredient, ""))
                               .value_or(0.0);
    const Form form = product.card.form;
    const double counted = product.counts == Counts::field ? band_share : 1.0;
    notes.show([&] {
        const bool is_liquid = form == Form::liquid;
        const Kind kind = is_acid ? Kind::acid_strength : Kind::ingredient_strength;
        return Step{
            fmt::format("{} for {}", product.card.name, typed(product.rate, notes.units())),
            fmt::format("{} / {}", typed(product.rate, notes.units()),
                        is_liquid ? show(content, kind, notes.units())
                                  : show_number(content * 100.0) + " %"),
            dissolved.is_per_area
                ? handy_text({*dissolved.per_treated * counted, Per::area}, form, notes.units())
                : handy_text({dissolved.per_mix, Per::mix}, form, notes.units())};
    });
}

/// A rate that counts the whole field, gathered on the bands.
void show_bands(const TankProduct& product, const Dissolved& dissolved, double band_share,
                Notes& notes) {
    if (product.counts != Counts::field || band_share == 1.0 || !dissolved.is_per_area) {
        return;
    }
    notes.show([&] {
        const Form form = product.card.form;
        const double on_bands = *dissolved.per_treated;
        return Step{fmt::format("{} on the bands themselves", product.card.name),
                    fmt::format("{} of field / {} %",
                                handy_text({on_bands * band_share, Per::area}, form, notes.units()),
                                show_number(band_share * 100.0)),
                    handy_text({on_bands, Per::area}, form, notes.units())};
    });
}

/// " + 3.2 fl oz/gal * 2 gal that stays in the sprayer", where the first fill makes that up too.
std::string dead_part(const Dissolved& dissolved, const Load& load, Form form, UnitSystem units) {
    const Volume beyond = load.fill - load.sprayed;
    if (beyond.si() <= 0.0) {
        return "";
    }
    return fmt::format(" + {} * {} that stays in the sprayer",
                       handy_text({dissolved.per_mix, Per::mix}, form, units), show(beyond, units));
}

void show_carrier(const Load& load, Notes& notes) {
    notes.show([&] {
        const Volume products = load.fill - load.carrier - load.rinse_water;
        return Step{fmt::format("Carrier to run in, load {}", load.number),
                    fmt::format("{} - {} of liquid products - {} of rinse water",
                                show(load.fill, notes.units()), show(products, notes.units()),
                                show(load.rinse_water, notes.units())),
                    show(load.carrier, notes.units())};
    });
}

void show_product(const TankProduct& product, const Dissolved& dissolved, const Load& load,
                  const ProductAmount& amount, Notes& notes) {
    notes.show([&] {
        const std::string asked = typed(product.rate, notes.units());
        const Form form = product.card.form;
        if (dissolved.is_per_area && load.area) {
            return Step{
                fmt::format("{} in load {}", product.card.name, load.number),
                fmt::format("{} (label: {}) * {}{}",
                            handy_text({*dissolved.per_treated, Per::area}, form, notes.units()),
                            asked, show(*load.area, notes.units()),
                            dead_part(dissolved, load, form, notes.units())),
                amount.text};
        }
        return Step{fmt::format("{} in load {}", product.card.name, load.number),
                    fmt::format("{} (label: {}) * {}",
                                handy_text({dissolved.per_mix, Per::mix}, form, notes.units()),
                                asked, show(load.fill, notes.units())),
                    amount.text};
    });
}

void add_products(const Job& job, LoadsAnswer& answer, Notes& notes) {
    const auto& products = job.request->products;
    for (std::size_t i = 0; i < products.size(); ++i) {
        const TankProduct& product = products[i];
        const bool is_liquid = product.card.form == Form::liquid;
        double total = 0.0;
        for (const Load& load : answer.loads) {
            const ProductAmount& amount = load.products[i].amount;
            total += is_liquid ? amount.volume->si() : amount.mass->si();
        }
        ProductTotal made;
        made.name = product.card.name;
        made.total = amount_of(total, product.card, notes.units());
        const Delivery& delivery = job.deliveries[i];
        if (delivery.per_area_si) {
            made.per_area = plain_rate(*delivery.per_area_si, Per::area, product.card.form);
        }
        made.per_mix = plain_rate(*delivery.per_mix_si, Per::mix, product.card.form);
        made.ingredients = ingredient_totals(product, total, delivery);
        made.limits =
            check_limits(product.card, delivery, reading_of(product, job.basis), notes.units());
        report_checks(product.card, made.limits, notes);
        if (is_unregistered_adjuvant(product.card)) {
            std::erase_if(made.limits, [](const LimitCheck& check) {
                return check.status == LimitStatus::not_entered;
            });
        } else {
            made.not_entered = not_entered(product.card.limits);
        }
        show_conversion(product, job.contents.products[i], job.ground.band_share, notes);
        show_bands(product, job.contents.products[i], job.ground.band_share, notes);
        show_product(product, job.contents.products[i], answer.loads.front(),
                     answer.loads.front().products[i].amount, notes);
        answer.products.push_back(std::move(made));
    }
    show_carrier(answer.loads.front(), notes);
}

// ---- measuring -------------------------------------------------------------------------------

/// How many times the amount may grow before a label limit is passed; absent when no limit is
/// known, or one is passed already.
std::optional<double> room_to_grow(const ProductTotal& product, const Delivery& delivery) {
    std::optional<double> room;
    for (const LimitCheck& check : product.limits) {
        const bool is_cap = check.limit == "max_single_rate" || check.limit == "max_percent" ||
                            check.limit == "max_yearly_rate";
        if (!is_cap || check.status != LimitStatus::within || !check.share || *check.share <= 0.0) {
            continue;
        }
        double factor = 1.0 / *check.share;
        if (check.limit == "max_yearly_rate" && delivery.per_area_si && delivery.earlier_area_si &&
            *delivery.per_area_si > 0.0) {
            const double used = *delivery.per_area_si + *delivery.earlier_area_si;
            factor = (used * factor - *delivery.earlier_area_si) / *delivery.per_area_si;
        }
        room = room ? std::min(*room, factor) : factor;
    }
    return room;
}

void report_measure(const MeasureAdvice& advice, double within, Volume fill, Notes& notes) {
    if (advice.fits) {
        return;
    }
    const std::string finest =
        advice.finest_volume ? handy_text(advice.finest_volume->si(), Form::liquid, notes.units())
                             : handy_text(advice.finest_mass->si(), Form::dry, notes.units());
    std::string text = fmt::format("{}: {} cannot be measured within {} % with these marks.",
                                   advice.product, advice.exact, show_number(within * 100.0));
    for (const MarkChoice& choice : advice.choices) {
        text += fmt::format(" {} {}: {}{} %", choice.tool, choice.text,
                            choice.error.si() > 0.0 ? "+" : "",
                            show_number(choice.error.si() * 100.0, 3));
        if (choice.batch) {
            text += fmt::format(" (exact for {} of mix instead of {})",
                                show(*choice.batch, notes.units()), show(fill, notes.units()));
        }
        text += choice.is_over_label ? ", passes the label's limit." : ".";
    }
    text += fmt::format(" Make the batch that fits, or use a measure marked every {} or finer.",
                        finest);
    notes.find(Severity::warning, "measure_does_not_fit", std::move(text));
}

bool same_amounts(const Load& a, const Load& b, std::size_t product) {
    const ProductAmount& x = a.products[product].amount;
    const ProductAmount& y = b.products[product].amount;
    return x.volume == y.volume && x.mass == y.mass;
}

Result<double> wanted_closeness_of(const LoadsRequest& request) {
    for (std::size_t i = 0; i < request.tools.size(); ++i) {
        SWATHBOOK_CHECK(check_tool(request.tools[i], fmt::format("tools[{}]", i)));
    }
    const double within =
        request.measure_within ? request.measure_within->value.si() : wanted_closeness;
    if (!(within > 0.0 && within < 1.0)) {
        return fail(ErrorCode::out_of_range, "measure_within",
                    "How closely amounts must be measured is a share above 0 % and below 100 %.");
    }
    return within;
}

void measure_product(const Job& job, std::size_t product, double within, LoadsAnswer& answer,
                     Notes& notes) {
    const LoadsRequest& request = *job.request;
    const ProductCard& card = request.products[product].card;
    const auto room = room_to_grow(answer.products[product], job.deliveries[product]);
    for (std::size_t n = 0; n < answer.loads.size(); ++n) {
        const Load& load = answer.loads[n];
        if (n > 0 && same_amounts(answer.loads[n - 1], load, product)) {
            answer.measuring.back().last_load = load.number;
            continue;
        }
        const ProductAmount& amount = load.products[product].amount;
        MeasureTask task;
        task.card = &card;
        task.measure_si = card.form == Form::liquid ? amount.volume->si() : amount.mass->si();
        task.mix = load.fill;
        task.within = within;
        if (room) {
            task.most_si = task.measure_si * *room;
        }
        if (request.tank_usable) {
            task.largest_batch = request.tank_usable->value + job.ground.dead;
        }
        MeasureAdvice advice = measure_with(request.tools, task, notes.units());
        advice.first_load = advice.last_load = load.number;
        report_measure(advice, within, load.fill, notes);
        answer.measuring.push_back(std::move(advice));
    }
}

Result<void> add_measuring(const Job& job, LoadsAnswer& answer, Notes& notes) {
    SWATHBOOK_TRY(within, wanted_closeness_of(*job.request));
    if (job.request->tools.empty()) {
        return {};
    }
    for (std::size_t i = 0; i < job.request->products.size(); ++i) {
        if (job.contents.products[i].per_mix > 0.0) {
            measure_product(job, i, within, answer, notes);
        }
    }
    return {};
}

// ---- remarks ---------------------------------------------------------------------------------

void remark_on_percent(const Job& job, Notes& notes) {
    for (const TankProduct& product : job.request->products) {
        const RateBasis basis = product.rate.basis;
        const bool is_share =
            basis == RateBasis::percent_by_volume || basis == RateBasis::percent_by_weight ||
            basis == RateBasis::volume_per_mix || basis == RateBasis::mass_per_mix;
        if (!is_share) {
            continue;
        }
        notes.find(
            Severity::note, "share_counted_in",
            fmt::format(
                "{}: {} is counted {}.", product.card.name,
                product.rate.text.empty() ? show(product.rate, notes.units()) : product.rate.text,
                product.share_of == MixShare::carrier ? "in the water (carrier) alone"
                                                      : "in the finished mix, products and all"));
        if (basis == RateBasis::percent_by_weight && !job.basis.mix_density) {
            notes.find(Severity::advice, "mix_density_assumed",
                       "Percent by weight needs the weight of the mix; it was taken as water, "
                       "0.998 kg/L (8.33 lb/gal). Enter mix_density if the carrier is anything "
                       "else.");
        }
    }
}

char lower(char character) {
    return character >= 'A' && character <= 'Z' ? static_cast<char>(character - 'A' + 'a')
                                                : character;
}

bool same_name(std::string_view a, std::string_view b) {
    return !a.empty() && std::equal(a.begin(), a.end(), b.begin(), b.end(),
                                    [](char x, char y) { return lower(x) == lower(y); });
}

void remark_on_shared(const ProductTotal& one, const IngredientTotal& a, const ProductTotal& other,
                      const IngredientTotal& b, Notes& notes) {
    std::string sum;
    if (a.acid_per_area && b.acid_per_area) {
        sum = ", together " + show(*a.acid_per_area + *b.acid_per_area, notes.units());
    } else if (a.ingredient_per_area && b.ingredient_per_area) {
        sum = ", together " + show(*a.ingredient_per_area + *b.ingredient_per_area, notes.units());
    }
    notes.find(Severity::warning, "ingredient_in_two_products",
               fmt::format("{} and {} both hold {}{}. Label limits on the ingredient count both; "
                           "the checks here see each product alone.",
                           one.name, other.name, a.name, sum));
}

struct Holding {
    const ProductTotal* product = nullptr;
    const IngredientTotal* ingredient = nullptr;
};

/// Two products with one ingredient share its yearly and single limits, which no card alone sees.
void remark_on_shared_ingredients(const LoadsAnswer& answer, Notes& notes) {
    std::vector<Holding> holdings;
    for (const ProductTotal& product : answer.products) {
        for (const IngredientTotal& ingredient : product.ingredients) {
            holdings.push_back({&product, &ingredient});
        }
    }
    for (std::size_t i = 0; i < holdings.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            const auto& [one, in_one] = holdings[j];
            const auto& [other, in_other] = holdings[i];
            if (one != other && same_name(in_one->name, in_other->name)) {
                remark_on_shared(*one, *in_one, *other, *in_other, notes);
            }
        }
    }
}

void remark_on_missing_limits(const LoadsAnswer& answer, Notes& notes) {
    for (const ProductTotal& product : answer.products) {
        std::string missing;
        for (const LimitCheck& check : product.limits) {
            const bool matters =
                check.limit == "max_single_rate" || check.limit == "max_yearly_rate";
            const bool is_listed = std::find(product.not_entered.begin(), product.not_entered.end(),
                                             check.limit) != product.not_entered.end();
            if (matters && is_listed) {
                missing +=
                    (missing.empty() ? "" : " and ") + std::string(spoken_limit(check.limit));
            }
        }
        if (!missing.empty()) {
            notes.find(Severity::warning, "limits_not_entered",
                       fmt::format("{}: {} not entered from the label. That is not the same as no "
                                   "limit; the rate was not checked against it.",
                                   product.name, missing));
        }
    }
}

void add_cautions(const Job& job, LoadsAnswer& answer) {
    for (const TankProduct& product : job.request->products) {
        if (const auto& equipment = product.card.limits.protective_equipment) {
            answer.cautions.push_back(
                fmt::format("{}: {}{}", product.card.name, equipment->text,
                            equipment->where.empty() ? "" : " (label, " + equipment->where + ")"));
        } else if (!is_unregistered_adjuvant(product.card)) {
            answer.cautions.push_back(fmt::format(
                "{}: wear what its label asks for mixing and loading; it was not entered here.",
                product.card.name));
        }
    }
    answer.cautions.emplace_back(
        "Mix away from wells, streams and drains; keep the fill hose above the water line.");
    answer.cautions.emplace_back(
        "Rinse each emptied jug three times into the tank while filling, so that the rinse water "
        "is sprayed as part of this mix.");
    if (job.request->products.size() > 1) {
        answer.cautions.emplace_back(
            "Products mixed together for the first time: try them in a jar first, unless the "
            "label names the mix.");
    }
}

void add_ground(const Job& job, LoadsAnswer& answer) {
    answer.treated_area = job.ground.treated;
    answer.field_area = job.ground.field;
    answer.mix_per_treated_area = job.ground.mix_per_treated;
}

Result<void> add_order(const Job& job, LoadsAnswer& answer, Notes& notes) {
    const LoadsRequest& request = *job.request;
    const std::vector<const ProductCard*> cards = cards_of(request.products);
    const OrderConvention convention =
        request.label_order.empty() ? request.order : OrderConvention::as_label;
    SWATHBOOK_TRY(order, mixing_order(cards, convention, request.label_order, notes));
    answer.order = std::move(order);
    answer.strictest = strictest_of(cards);
    report_conflicts(answer.strictest, notes);
    return {};
}

}  // namespace

Result<LoadsAnswer> loads(const LoadsRequest& request, Notes& notes) {
    SWATHBOOK_TRY(job, job_of(request, notes));
    LoadsAnswer answer;
    add_ground(job, answer);
    SWATHBOOK_CHECK(add_loads(job, answer, notes));
    add_products(job, answer, notes);
    SWATHBOOK_CHECK(add_measuring(job, answer, notes));
    SWATHBOOK_CHECK(add_order(job, answer, notes));
    remark_on_percent(job, notes);
    remark_on_shared_ingredients(answer, notes);
    remark_on_missing_limits(answer, notes);
    add_cautions(job, answer);
    if (answer.dead_volume.si() > 0.0) {
        notes.find(Severity::note, "dead_volume_left",
                   fmt::format("{} of mix stays in the sprayer at the end. Plan where its rinse "
                               "water goes.",
                               show(answer.dead_volume, notes.units())));
    }
    return answer;
}

}  // namespace swathbook::mix
