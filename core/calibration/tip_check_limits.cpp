#include "core/calibration/tip_check_limits.hpp"

#include <array>
#include <cstddef>

#include "core/base/assert.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::calibration {
namespace {

using enum TipLimitRule;

constexpr double five_percent = 0.05;
constexpr double ten_percent = 0.10;
constexpr double fifteen_percent = 0.15;
constexpr double third_of_set = 0.33;

constexpr std::array rules{
    PublishedTipLimit{
        worn_10_low_5,
        "replace above 110 % of the maker's rating; clean and catch again below 95 % of it",
        "high: 10 % over nominal as threshold of nozzle tests, Agricultural Engineering 2018, doi "
        "10.1515/agriceng-2018-0037; low: UK sprayer test tolerance as reported by a trade "
        "magazine, https://www.eioperator.com/?p=165701",
        true},
    PublishedTipLimit{rating_10, "within 10 % of the maker's rating",
                      "Agricultural Engineering 2018, doi 10.1515/agriceng-2018-0037 (high side); "
                      "common practice on the low side",
                      true},
    PublishedTipLimit{rating_5, "within 5 % of the maker's rating",
                      "UK sprayer test tolerance as reported by a trade magazine, "
                      "https://www.eioperator.com/?p=165701",
                      true},
    PublishedTipLimit{rating_10_and_mean_5,
                      "within 10 % of the maker's rating and within 5 % of the mean",
                      "R. Klein, University of Nebraska, in The Joplin Globe", true},
    PublishedTipLimit{mean_5, "within 5 % of the mean",
                      "Montana State University MontGuide MT 2000-14; University of Idaho "
                      "calibration worksheet",
                      true},
    PublishedTipLimit{mean_5_clean_low,
                      "replace above 105 % of the mean; clean and catch again below 95 %",
                      "Alberta Agriculture Agdex 606-1, p. 11", true},
    PublishedTipLimit{mean_10, "within 10 % of the mean",
                      "Texas Cooperative Extension (Redmon), Take time to calibrate your sprayer",
                      true},
    PublishedTipLimit{
        french_inspection,
        "within 15 % of the rating, 10 % for ratings under 1 L/min (of the mean where "
        "the rating is not known); when more than 33 % are bad, replace all",
        "France, arrete of 18 December 2008 (AGRP0828914A), annex IV part B", true},
    PublishedTipLimit{european_in_use, "within 10 % of the rating, 15 % for ratings under 1 L/min",
                      "from memory of the European in-use inspection standards, not read; the "
                      "French text has the two figures the other way round",
                      false},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < rules.size(); ++i) {
        if (static_cast<std::size_t>(rules[i].rule) != i) {
            return false;
        }
    }
    return rules.size() == static_cast<std::size_t>(own);
}
static_assert(in_order(), "published_tip_limit looks rules up by their number");

constexpr TipLimits of_rating(double limit) {
    return {limit, limit, std::nullopt, std::nullopt, std::nullopt};
}

constexpr TipLimits of_mean(double limit) {
    return {std::nullopt, std::nullopt, limit, limit, std::nullopt};
}

bool is_small(std::optional<Flow> nominal) {
    return nominal && *nominal < Flow::of(1.0, litres_per_minute);
}

TipLimits french(std::optional<Flow> nominal) {
    const double limit = is_small(nominal) ? ten_percent : fifteen_percent;
    TipLimits limits = nominal ? of_rating(limit) : of_mean(limit);
    limits.replace_all_over = third_of_set;
    return limits;
}

}  // namespace

std::span<const PublishedTipLimit> published_tip_limits() {
    return rules;
}

const PublishedTipLimit& published_tip_limit(TipLimitRule rule) {
    SWATHBOOK_ASSERT(rule != own, "the user's own limits are not published");
    return rules[static_cast<std::size_t>(rule)];
}

TipLimits limits_of(TipLimitRule rule, std::optional<Flow> nominal) {
    switch (rule) {
        case worn_10_low_5:
            return {ten_percent, five_percent, std::nullopt, std::nullopt, std::nullopt};
        case rating_10: return of_rating(ten_percent);
        case rating_5: return of_rating(five_percent);
        case rating_10_and_mean_5:
            return {ten_percent, ten_percent, five_percent, five_percent, std::nullopt};
        case mean_5:
        case mean_5_clean_low: return of_mean(five_percent);
        case mean_10: return of_mean(ten_percent);
        case french_inspection: return french(nominal);
        case european_in_use: return of_rating(is_small(nominal) ? fifteen_percent : ten_percent);
        case own: break;
    }
    return {};
}

}  // namespace swathbook::calibration
