#include "core/geometry/track.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "core/geometry/local_plane.hpp"
#include "core/quantity/print.hpp"

namespace swathbook::geometry {
namespace {

constexpr double fastest_m_per_s = 30.0;
constexpr std::size_t most_gaps_shown = 20;

Result<void> check_fix(const TrackFix& fix, std::size_t index, std::string_view field) {
    const bool place = std::fabs(fix.lat) <= 90.0 && std::fabs(fix.lon) <= 180.0;
    const bool time = std::fabs(fix.t_seconds) <= 1e12;
    const bool accuracy = !fix.accuracy_m || (*fix.accuracy_m >= 0.0 && *fix.accuracy_m <= 1e6);
    if (place && time && accuracy) {
        return {};
    }
    return fail(ErrorCode::out_of_range, fmt::format("{}[{}]", field, index),
                fmt::format("The fix at latitude {}, longitude {}, {} s is none: latitude goes to "
                            "90, longitude to 180 degrees, accuracy is not below 0.",
                            show_number(fix.lat, 9), show_number(fix.lon, 9),
                            show_number(fix.t_seconds, 9)));
}

double step_of(const TrackFix& from, const TrackFix& to) {
    Position start{from.lon, from.lat};
    const Position end{to.lon, to.lat};
    if (end.longitude_deg - start.longitude_deg > 180.0) {
        start.longitude_deg += 360.0;
    } else if (start.longitude_deg - end.longitude_deg > 180.0) {
        start.longitude_deg -= 360.0;
    }
    return near_distance_m(start, end);
}

/// Running sums in SI.
struct Running {
    double on_length = 0.0;
    double on_time = 0.0;
    double off_length = 0.0;
    double gap_time = 0.0;
    double gap_time_on = 0.0;
    double worst_accuracy = -1.0;
};

void keep_longest(std::vector<TrackGap>& gaps) {
    std::stable_sort(gaps.begin(), gaps.end(), [](const TrackGap& a, const TrackGap& b) {
        return a.to_s - a.from_s > b.to_s - b.from_s;
    });
    if (gaps.size() > most_gaps_shown) {
        gaps.resize(most_gaps_shown);
    }
}

void add_gap(TrackSums& sums, Running& run, const TrackFix& from, const TrackFix& to, double step) {
    const double time = to.t_seconds - from.t_seconds;
    ++sums.gaps;
    run.gap_time += time;
    run.gap_time_on += from.on ? time : 0.0;
    TrackGap gap;
    gap.from_s = from.t_seconds;
    gap.to_s = to.t_seconds;
    gap.straight = Length::from_si(step);
    gap.was_on = from.on;
    gap.is_jump = step > fastest_m_per_s * time;
    sums.longest_gaps.push_back(gap);
    if (sums.longest_gaps.size() >= 8 * most_gaps_shown) {
        keep_longest(sums.longest_gaps);
    }
}

}  // namespace

Result<TrackSums> sum_of_track(const std::vector<TrackFix>& fixes, Duration gap_after,
                               std::string_view field) {
    TrackSums sums;
    Running run;
    sums.fixes = static_cast<int>(fixes.size());
    for (std::size_t i = 0; i < fixes.size(); ++i) {
        SWATHBOOK_CHECK(check_fix(fixes[i], i, field));
        run.worst_accuracy = std::max(run.worst_accuracy, fixes[i].accuracy_m.value_or(-1.0));
        if (i == 0) {
            continue;
        }
        const double time = fixes[i].t_seconds - fixes[i - 1].t_seconds;
        if (time < 0.0) {
            return fail(ErrorCode::inconsistent, fmt::format("{}[{}].t_seconds", field, i),
                        fmt::format("Time runs backward: {} s after {} s. Sort the fixes by time.",
                                    show_number(fixes[i].t_seconds, 9),
                                    show_number(fixes[i - 1].t_seconds, 9)));
        }
        if (time == 0.0) {
            continue;  // one moment: two readings of one place
        }
        const double step = step_of(fixes[i - 1], fixes[i]);
        if (time > gap_after.si() || step > fastest_m_per_s * time) {
            add_gap(sums, run, fixes[i - 1], fixes[i], step);
        } else if (fixes[i - 1].on) {
            run.on_length += step;
            run.on_time += time;
        } else {
            run.off_length += step;
        }
    }
    keep_longest(sums.longest_gaps);
    sums.sprayed_length = Length::from_si(run.on_length);
    sums.sprayed_time = Duration::from_si(run.on_time);
    sums.other_length = Length::from_si(run.off_length);
    sums.gap_time = Duration::from_si(run.gap_time);
    sums.gap_time_on = Duration::from_si(run.gap_time_on);
    if (run.worst_accuracy >= 0.0) {
        sums.worst_accuracy = Length::from_si(run.worst_accuracy);
    }
    return sums;
}

}  // namespace swathbook::geometry
