#include "core/mix/leftover.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "core/base/sort.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::mix {
namespace {

constexpr double rounding_room = 1e-9;
constexpr std::size_t most_grounds = 50;

/// The leftover mix, worked out once.
struct Remains {
    const LeftoverRequest* request = nullptr;
    MixBasis basis;
    MixContents contents;
    double left = 0.0;  ///< m3
    double mix_per_area = 0.0;
    UnitSystem units = UnitSystem::us;

    [[nodiscard]] double measure(std::size_t product) const {
        return contents.products[product].per_mix * left;
    }
    [[nodiscard]] const ProductCard& card(std::size_t product) const {
        return request->products[product].card;
    }
    [[nodiscard]] std::size_t count() const { return request->products.size(); }
};

template <Kind K>
Result<void> require(const Reading<K>& reading, double most_si, std::string_view field,
                     std::string_view what) {
    const double si = reading.value.si();
    if (std::isfinite(si) && si > 0.0 && si <= most_si) {
        return {};
    }
    return fail(ErrorCode::out_of_range, field,
                fmt::format("{} is {}: it must be a number above 0, and of a size that a sprayer "
                            "can have.",
                            what, show(reading, UnitSystem::us)));
}

constexpr double most_volume_m3 = 1e4;
constexpr double most_area_m2 = 1e9;
constexpr double most_mix_per_area = 10.0;

Result<Remains> remains_of(const LeftoverRequest& request, UnitSystem units) {
    SWATHBOOK_CHECK(require(request.left, most_volume_m3, "left", "The leftover volume"));
    SWATHBOOK_CHECK(
        require(request.mix_per_area, most_mix_per_area, "mix_per_area", "The mix per area"));
    if (request.ground.size() > most_grounds) {
        return fail(ErrorCode::invalid_input, "ground",
                    fmt::format("{} pieces of ground: give at most {}, the likeliest ones.",
                                request.ground.size(), most_grounds));
    }
    Remains remains;
    remains.request = &request;
    remains.units = units;
    remains.basis.mix_per_treated_area = request.mix_per_area.value;
    if (request.mix_density) {
        remains.basis.mix_density = request.mix_density->value;
    }
    SWATHBOOK_TRY(contents, contents_of(request.products, remains.basis));
    remains.contents = std::move(contents);
    remains.left = request.left.value.si();
    remains.mix_per_area = request.mix_per_area.value.si();
    return remains;
}

// ---- judging ---------------------------------------------------------------------------------

/// The worse of two verdicts.
Lawful worse(Lawful a, Lawful b) {
    return std::max(a, b);
}

/// What the label limits say of an option, and why.
struct Verdict {
    Lawful lawful = Lawful::by_what_was_entered;
    std::string reasons{};

    void add(Lawful verdict, const std::string& reason) {
        lawful = worse(lawful, verdict);
        reasons += (reasons.empty() ? "" : " ") + reason;
    }
};

bool is_cap(const LimitCheck& check) {
    return check.limit == "max_single_rate" || check.limit == "max_yearly_rate";
}

void judge(const ProductCard& card, const std::vector<LimitCheck>& checks, Verdict& verdict) {
    for (const LimitCheck& check : checks) {
        const bool breaks_least =
            check.status == LimitStatus::below && check.limit == "min_carrier";
        if (check.status == LimitStatus::above || breaks_least) {
            verdict.add(Lawful::no,
                        fmt::format("{}: it would be {}, against the label's {}, {}.", card.name,
                                    check.delivered, spoken_limit(check.limit), check.allowed));
        } else if (check.status == LimitStatus::cannot_tell) {
            verdict.add(Lawful::cannot_tell,
                        fmt::format("{}: {} could not be checked: {}.", card.name,
                                    spoken_limit(check.limit), check.why));
        } else if (check.status == LimitStatus::not_entered && is_cap(check) &&
                   !is_unregistered_adjuvant(card)) {
            verdict.add(Lawful::cannot_tell, fmt::format("{}: {} was not entered.", card.name,
                                                         spoken_limit(check.limit)));
        }
    }
}

void judge_site(const LeftoverGround& ground, Verdict& verdict) {
    if (ground.on_label == Answered::no) {
        verdict.add(Lawful::no, fmt::format("\"{}\" is not a site on the labels.", ground.name));
    } else if (ground.on_label == Answered::not_said) {
        verdict.add(Lawful::cannot_tell,
                    fmt::format("Is \"{}\" a site on the label of every product?", ground.name));
    }
}

// ---- spraying --------------------------------------------------------------------------------

const AlreadyApplied* applied_on(const LeftoverGround& ground, const std::string& product) {
    for (const AlreadyApplied& applied : ground.applied_this_year) {
        if (applied.product == product) {
            return &applied;
        }
    }
    return nullptr;
}

/// What the ground had of a product this year, this job included where it was sprayed.
struct History {
    std::optional<double> per_area{};
    std::optional<int> applications{};
};

Result<History> history_of(const Remains& remains, std::size_t product,
                           const LeftoverGround& ground, const std::string& field) {
    History history;
    const AlreadyApplied* applied = applied_on(ground, remains.card(product).name);
    if (applied == nullptr) {
        return history;
    }
    TankProduct earlier = remains.request->products[product];
    earlier.applied_this_year = applied->rate;
    earlier.applications_this_year = applied->applications;
    SWATHBOOK_TRY(delivery,
                  delivery_of(earlier, remains.contents.products[product], remains.basis, field));
    history.per_area = delivery.earlier_area_si;
    history.applications = delivery.earlier_applications;
    const double job = *remains.contents.products[product].per_treated;
    if (ground.sprayed_in_this_job && *history.per_area < job * (1.0 - 1e-6)) {
        return fail(
            ErrorCode::inconsistent, field,
            fmt::format("{} had {} of {} this year, which is less than this job alone put "
                        "there ({}). Count this job in.",
                        ground.name, show(applied->rate, remains.units), remains.card(product).name,
                        handy_text({job, Per::area}, remains.card(product).form, remains.units)));
    }
    return history;
}

LabelRate area_rate(double si, Form form) {
    return LabelRate{
        si, form == Form::liquid ? RateBasis::volume_per_area : RateBasis::mass_per_area, 0.0, ""};
}

/// What the ground would get of one product if a share of the leftover went on it.
Delivery delivery_on(const Remains& remains, std::size_t product, const History& history,
                     double before, double added) {
    Delivery delivery;
    delivery.per_area_si = before + added;
    delivery.mix_per_area_si = remains.mix_per_area;
    delivery.per_mix_si = remains.contents.products[product].per_mix;
    if (history.per_area) {
        delivery.earlier_area_si = std::max(0.0, *history.per_area - before);
    }
    if (history.applications) {
        // A thin second pass belongs to the application just made.
        delivery.earlier_applications =
            before > 0.0 ? std::max(0, *history.applications - 1) : *history.applications;
    }
    return delivery;
}

/// The largest share of an addition that keeps every known cap; 1 when all of it does.
double share_that_fits(const std::vector<LimitCheck>& checks, const Delivery& delivery,
                       double added) {
    double fits = 1.0;
    for (const LimitCheck& check : checks) {
        if (!is_cap(check) || check.status != LimitStatus::above || !(added > 0.0)) {
            continue;
        }
        const bool is_yearly = check.limit == "max_yearly_rate";
        const double whole =
            *delivery.per_area_si + (is_yearly ? delivery.earlier_area_si.value_or(0.0) : 0.0);
        const double cap = whole / *check.share;
        fits = std::min(fits, std::max(0.0, (cap - (whole - added)) / added));
    }
    return fits;
}

/// One piece of ground with the mix that would go on it.
struct Placement {
    const LeftoverGround* ground = nullptr;
    std::string field{};
    double area = 0.0;  ///< m2 to be sprayed
    double mix = 0.0;   ///< m3 of leftover mix
    bool is_second_pass = false;
};

struct Judged {
    std::vector<LeftoverProduct> products{};
    Verdict verdict{};
    double fits = 1.0;  ///< share of the placement's mix that keeps every known cap
};

Result<Judged> judge_placement(const Remains& remains, const Placement& placement) {
    Judged judged;
    judge_site(*placement.ground, judged.verdict);
    for (std::size_t i = 0; i < remains.count(); ++i) {
        const ProductCard& card = remains.card(i);
        SWATHBOOK_TRY(history, history_of(remains, i, *placement.ground, placement.field));
        const Dissolved& dissolved = remains.contents.products[i];
        const double added = dissolved.per_mix * placement.mix / placement.area;
        const double before = placement.is_second_pass ? *dissolved.per_treated : 0.0;
        const Delivery delivery = delivery_on(remains, i, history, before, added);
        LeftoverProduct product;
        product.name = card.name;
        product.amount = amount_of(dissolved.per_mix * placement.mix, card, remains.units);
        product.adds = area_rate(added, card.form);
        product.limits = check_limits(card, delivery,
                                      {RateCounts::product, remains.request->products[i].ingredient,
                                       remains.basis.mix_density},
                                      remains.units);
        judge(card, product.limits, judged.verdict);
        judged.fits = std::min(judged.fits, share_that_fits(product.limits, delivery, added));
        judged.products.push_back(std::move(product));
    }
    return judged;
}

std::string volume_text(const Remains& remains, double cubic_metres) {
    return show(Volume::from_si(cubic_metres), remains.units);
}
std::string area_text(const Remains& remains, double square_metres) {
    return show(NetArea::from_si(square_metres), remains.units);
}

void describe_untreated(const Remains& remains, const Placement& placement, const Judged& judged,
                        LeftoverOption& option) {
    option.text = fmt::format("Spray {} on {} of \"{}\" at the job's rate.",
                              volume_text(remains, placement.mix),
                              area_text(remains, placement.area), placement.ground->name);
    if (placement.mix < remains.left * (1.0 - rounding_room)) {
        option.text += fmt::format(" {} remain: the ground is too small for all of it.",
                                   volume_text(remains, remains.left - placement.mix));
    }
    option.text += judged.verdict.reasons.empty() ? "" : " " + judged.verdict.reasons;
}

Result<LeftoverOption> spray_untreated(const Remains& remains, const LeftoverGround& ground,
                                       std::string field) {
    Placement placement;
    placement.ground = &ground;
    placement.field = std::move(field);
    placement.area = std::min(ground.net_area.value.si(), remains.left / remains.mix_per_area);
    placement.mix = std::min(remains.left, placement.area * remains.mix_per_area);
    SWATHBOOK_TRY(judged, judge_placement(remains, placement));
    LeftoverOption option;
    option.way = LeftoverWay::spray_untreated;
    option.lawful = judged.verdict.lawful;
    option.ground = ground.name;
    option.mix = Volume::from_si(placement.mix);
    option.area = NetArea::from_si(placement.area);
    describe_untreated(remains, placement, judged, option);
    option.products = std::move(judged.products);
    return option;
}

/// Spreads as much of the leftover as the caps allow over ground sprayed in this job.
Result<LeftoverOption> spray_again_thin(const Remains& remains, const LeftoverGround& ground,
                                        const std::string& field) {
    Placement placement;
    placement.ground = &ground;
    placement.field = field;
    placement.area = ground.net_area.value.si();
    placement.is_second_pass = true;
    const double room = placement.area * remains.mix_per_area;
    placement.mix = std::min(remains.left, room);
    SWATHBOOK_TRY(whole, judge_placement(remains, placement));
    Judged judged = std::move(whole);
    const bool some_fits = judged.fits > rounding_room && judged.fits < 1.0;
    if (some_fits) {
        placement.mix *= judged.fits;
        SWATHBOOK_TRY(part, judge_placement(remains, placement));
        judged = std::move(part);
    }
    LeftoverOption option;
    option.way = LeftoverWay::spray_again_thin;
    option.lawful = judged.verdict.lawful;
    option.ground = ground.name;
    option.mix = Volume::from_si(placement.mix);
    option.area = ground.net_area.value;
    option.water = Volume::from_si(room - placement.mix);
    option.text = fmt::format(
        "Thin {} with {} of water and spray it evenly over the {} of {} "
        "again.",
        volume_text(remains, placement.mix), volume_text(remains, room - placement.mix),
        area_text(remains, placement.area), ground.name);
    if (some_fits) {
        option.text += fmt::format(" More than {} would pass a label cap here.",
                                   volume_text(remains, placement.mix));
    }
    option.text += judged.verdict.reasons.empty() ? "" : " " + judged.verdict.reasons;
    option.products = std::move(judged.products);
    return option;
}

// ---- the next load ---------------------------------------------------------------------------

std::size_t find_product(const std::vector<TankProduct>& products, const std::string& name) {
    std::size_t i = 0;
    while (i < products.size() && products[i].card.name != name) {
        ++i;
    }
    return i;
}

/// How much of the leftover the next load can take before some product would be too strong in it.
double share_for_next(const Remains& remains, const NextJob& next, const MixContents& contents,
                      Verdict& verdict) {
    const double load = next.next_load.value.si();
    double share = std::min(1.0, load / remains.left);
    for (std::size_t i = 0; i < remains.count(); ++i) {
        const std::string& name = remains.card(i).name;
        const std::size_t j = find_product(next.products, name);
        if (j == next.products.size()) {
            verdict.add(Lawful::no, fmt::format("{} is not part of {}.", name, next.name));
            share = 0.0;
        } else if (remains.measure(i) > 0.0) {
            share = std::min(share, contents.products[j].per_mix * load / remains.measure(i));
        }
    }
    return share;
}

Result<LeftoverOption> into_next_load(const Remains& remains, const NextJob& next) {
    SWATHBOOK_CHECK(
        require(next.mix_per_area, most_mix_per_area, "next_job.mix_per_area", "The mix per area"));
    SWATHBOOK_CHECK(require(next.next_load, most_volume_m3, "next_job.next_load", "The next load"));
    MixBasis basis = remains.basis;
    basis.mix_per_treated_area = next.mix_per_area.value;
    SWATHBOOK_TRY(contents, contents_of(next.products, basis, "next_job.products"));
    LeftoverOption option;
    option.way = LeftoverWay::into_next_load;
    option.ground = next.name;
    Verdict verdict;
    const double share = share_for_next(remains, next, contents, verdict);
    const double load = next.next_load.value.si();
    const double mix = remains.left * share;
    double room = load - mix;
    for (std::size_t j = 0; j < next.products.size(); ++j) {
        const TankProduct& product = next.products[j];
        const std::size_t i = find_product(remains.request->products, product.card.name);
        const double from_leftover = i < remains.count() ? remains.measure(i) * share : 0.0;
        const double needed = contents.products[j].per_mix * load;
        const double still = std::max(0.0, needed - from_leftover);
        room -= product.card.form == Form::liquid ? still : 0.0;
        LeftoverProduct row;
        row.name = product.card.name;
        row.amount = amount_of(from_leftover, product.card, remains.units);
        row.still_to_add = amount_of(still, product.card, remains.units);
        SWATHBOOK_TRY(delivery, delivery_of(product, contents.products[j], basis,
                                            fmt::format("next_job.products[{}]", j)));
        row.limits =
            check_limits(product.card, delivery, reading_of(product, basis), remains.units);
        judge(product.card, row.limits, verdict);
        option.products.push_back(std::move(row));
    }
    option.lawful = verdict.lawful;
    option.mix = Volume::from_si(mix);
    option.water = Volume::from_si(std::max(0.0, room));
    option.text = share > 0.0
                      ? fmt::format(
                            "Use {} as part of the first load of {} ({}); add only the "
                            "product still missing, and {} of water.",
                            volume_text(remains, mix), next.name, volume_text(remains, load),
                            volume_text(remains, std::max(0.0, room)))
                      : fmt::format("It cannot become part of {}.", next.name);
    option.text += verdict.reasons.empty() ? "" : " " + verdict.reasons;
    return option;
}

// ---- keeping and handing in ------------------------------------------------------------------

LeftoverOption keep(const Remains& remains) {
    LeftoverOption option;
    option.way = LeftoverWay::keep;
    option.mix = remains.request->left.value;
    switch (remains.request->labels_allow_keeping) {
        case Answered::yes:
            option.lawful = Lawful::by_what_was_entered;
            option.text =
                "Keep it closed, marked with its products and date, out of reach and frost, and "
                "spray it soon at the same rates; agitate well first.";
            break;
        case Answered::no:
            option.lawful = Lawful::no;
            option.text = "The labels do not let the mix be kept.";
            break;
        case Answered::not_said:
            option.lawful = Lawful::cannot_tell;
            option.text =
                "Do the labels let the mix be kept, and for how long? Some products "
                "settle or break down overnight.";
            break;
    }
    return option;
}

LeftoverOption hand_in(const Remains& remains) {
    LeftoverOption option;
    option.way = LeftoverWay::hand_in;
    option.lawful = Lawful::cannot_tell;
    option.mix = remains.request->left.value;
    option.text =
        "Hand it in as pesticide waste, as the labels and the local collection "
        "programme say. Never empty it on a heap, in a ditch, a drain or a septic tank.";
    return option;
}

Result<void> check_ground(const LeftoverRequest& request, std::size_t index) {
    const LeftoverGround& ground = request.ground[index];
    const std::string field = fmt::format("ground[{}]", index);
    SWATHBOOK_CHECK(require(ground.net_area, most_area_m2, field + ".net_area", "The net area"));
    for (std::size_t i = 0; i < ground.applied_this_year.size(); ++i) {
        const std::string& name = ground.applied_this_year[i].product;
        if (find_product(request.products, name) == request.products.size()) {
            return fail(ErrorCode::not_found,
                        fmt::format("{}.applied_this_year[{}].product", field, i),
                        fmt::format("\"{}\" is not a product of this mix.", name));
        }
    }
    return {};
}

Result<std::vector<LeftoverOption>> options_of(const Remains& remains) {
    const LeftoverRequest& request = *remains.request;
    std::vector<LeftoverOption> options;
    for (std::size_t i = 0; i < request.ground.size(); ++i) {
        SWATHBOOK_CHECK(check_ground(request, i));
        const LeftoverGround& ground = request.ground[i];
        const std::string field = fmt::format("ground[{}].applied_this_year", i);
        SWATHBOOK_TRY(option, ground.sprayed_in_this_job ? spray_again_thin(remains, ground, field)
                                                         : spray_untreated(remains, ground, field));
        options.push_back(std::move(option));
    }
    if (request.next_job) {
        SWATHBOOK_TRY(option, into_next_load(remains, *request.next_job));
        options.push_back(std::move(option));
    }
    options.push_back(keep(remains));
    options.push_back(hand_in(remains));
    return options;
}

int place_of(LeftoverWay way) {
    switch (way) {
        case LeftoverWay::spray_untreated: return 0;
        case LeftoverWay::into_next_load: return 1;
        case LeftoverWay::spray_again_thin: return 2;
        case LeftoverWay::keep: return 3;
        case LeftoverWay::hand_in: return 4;
    }
    return 4;
}

void rank(std::vector<LeftoverOption>& options) {
    sort_list(options, [](const LeftoverOption& a, const LeftoverOption& b) {
        if (a.lawful != b.lawful) {
            return a.lawful < b.lawful;
        }
        if (place_of(a.way) != place_of(b.way)) {
            return place_of(a.way) < place_of(b.way);
        }
        return a.mix > b.mix;
    });
    for (std::size_t i = 0; i < options.size(); ++i) {
        options[i].rank = static_cast<int>(i) + 1;
    }
}

}  // namespace

Result<LeftoverAnswer> leftover(const LeftoverRequest& request, Notes& notes) {
    SWATHBOOK_TRY(remains, remains_of(request, notes.units()));
    LeftoverAnswer answer;
    answer.absorbing_area = NetArea::from_si(remains.left / remains.mix_per_area);
    notes.show([&] {
        return Step{"Ground that would take it at the job's rate",
                    fmt::format("{} / {}", show(request.left, notes.units()),
                                show(request.mix_per_area, notes.units())),
                    show(answer.absorbing_area, notes.units())};
    });
    for (std::size_t i = 0; i < remains.count(); ++i) {
        LeftoverProduct product;
        product.name = remains.card(i).name;
        product.amount = amount_of(remains.measure(i), remains.card(i), notes.units());
        notes.show([&] {
            return Step{fmt::format("{} in it", product.name),
                        fmt::format("{} * {}", show(request.left, notes.units()),
                                    handy_text({remains.contents.products[i].per_mix, Per::mix},
                                               remains.card(i).form, notes.units())),
                        product.amount.text};
        });
        answer.products.push_back(std::move(product));
    }
    SWATHBOOK_TRY(options, options_of(remains));
    answer.options = std::move(options);
    rank(answer.options);
    if (answer.options.front().lawful != Lawful::by_what_was_entered) {
        notes.find(Severity::warning, "no_way_is_clear",
                   "Nothing that was entered makes any way clearly lawful. The list says what is "
                   "missing; read it on the labels before doing anything with the mix.");
    }
    notes.find(Severity::advice, "mix_less_next_time",
               "A smaller last load leaves nothing over: measure the net area and split the job "
               "into equal loads.",
               "Alberta Agdex 606-1 p. 15: mix only what is needed");
    return answer;
}

}  // namespace swathbook::mix
