#include "core/weather/direction.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/base/elementary.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::weather {
namespace {

constexpr double full_circle_deg = 360.0;
constexpr double point_deg = 22.5;
constexpr std::array<std::string_view, 16> points{"N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE",
                                                  "S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"};

/// "South-West" -> "SW"; empty when a part is no cardinal word.
std::string letters_of(std::string_view text) {
    static constexpr std::array<std::pair<std::string_view, char>, 4> words{
        {{"north", 'N'}, {"east", 'E'}, {"south", 'S'}, {"west", 'W'}}};
    std::string lower;
    for (const char letter : text) {
        if (letter != ' ' && letter != '-') {
            lower +=
                letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
        }
    }
    std::string letters;
    std::string_view rest = lower;
    while (!rest.empty()) {
        bool taken = false;
        for (const auto& [word, letter] : words) {
            if (rest.starts_with(word)) {
                letters += letter;
                rest.remove_prefix(word.size());
                taken = true;
                break;
            }
        }
        if (!taken) {
            if (rest.front() < 'a' || rest.front() > 'z') {
                return {};
            }
            letters += static_cast<char>(rest.front() - 'a' + 'A');
            rest.remove_prefix(1);
        }
    }
    return letters;
}

double wrapped(double degrees_round) {
    const double turns = std::floor(degrees_round / full_circle_deg);
    const double rest = degrees_round - turns * full_circle_deg;
    return rest >= full_circle_deg ? 0.0 : rest;
}

}  // namespace

Result<Direction> parse_direction(std::string_view text, std::string_view field) {
    const std::string letters = letters_of(text);
    for (std::size_t i = 0; i < points.size() && !letters.empty(); ++i) {
        if (points[i] == letters) {
            return Direction{Angle::of(point_deg * static_cast<double>(i), degrees),
                             Angle::of(point_deg / 2.0, degrees)};
        }
    }
    auto parsed = parse_amount(text, Kind::angle);
    if (!parsed) {
        parsed = parse_amount(fmt::format("{} deg", text), Kind::angle);
    }
    if (!parsed) {
        return fail(ErrorCode::invalid_input, field,
                    fmt::format("\"{}\" is no direction. Write degrees clockwise from north (225) "
                                "or one of the 16 points of the compass (SW, WSW).",
                                text));
    }
    const double from_north = Angle::from_si(parsed->si).in(degrees);
    if (!(from_north >= 0.0 && from_north <= full_circle_deg + 1e-9)) {
        return fail(ErrorCode::out_of_range, field,
                    fmt::format("A direction of {} deg is not on the compass, 0 to 360 degrees "
                                "clockwise from north.",
                                show_number(from_north)));
    }
    return Direction{Angle::of(wrapped(from_north), degrees), Angle::from_si(parsed->half_step_si)};
}

std::string_view compass_word(Angle direction) {
    const double step = std::floor(wrapped(direction.in(degrees)) / point_deg + 0.5);
    return points[static_cast<std::size_t>(step) % points.size()];
}

std::string direction_words(Angle direction) {
    return fmt::format("{} ({} deg)", compass_word(direction),
                       show_number(direction.in(degrees), 3));
}

Angle angle_between(Angle a, Angle b) {
    const double apart = wrapped(a.in(degrees)-b.in(degrees));
    return Angle::of(apart > full_circle_deg / 2.0 ? full_circle_deg - apart : apart, degrees);
}

Angle opposite(Angle direction) {
    return Angle::of(wrapped(direction.in(degrees) + full_circle_deg / 2.0), degrees);
}

MeanDirection mean_of(std::span<const Angle> directions) {
    constexpr double cancelled = 1e-9;
    double east = 0.0;
    double north = 0.0;
    for (const Angle direction : directions) {
        east += elementary::sine(direction.si());
        north += elementary::cosine(direction.si());
    }
    MeanDirection answer;
    const auto count = static_cast<double>(directions.size());
    const double length = directions.empty() ? 0.0 : std::sqrt(east * east + north * north) / count;
    answer.resultant_length = length > 1.0 ? 1.0 : length;
    if (length < cancelled) {
        return answer;
    }
    const double mean_deg = Angle::from_si(elementary::angle_of(east, north)).in(degrees);
    answer.mean = Angle::of(wrapped(mean_deg), degrees);
    answer.deviation =
        Angle::from_si(std::sqrt(-2.0 * elementary::logarithm(answer.resultant_length)));
    return answer;
}

}  // namespace swathbook::weather
