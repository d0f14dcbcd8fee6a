// How long one piece of label-unit text takes to read, beside GNU units doing the same conversions
// in one batch run. Answers are checked against each other: a fast wrong answer is no answer.
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "core/quantity/parse.hpp"

namespace {

using namespace swathbook;
using Clock = std::chrono::steady_clock;

struct Unit {
    Kind kind;
    std::string_view ours;
    std::string_view gnu;
    std::string_view gnu_si;
};

constexpr std::array units{
    Unit{Kind::product_volume_per_area, "fl oz/ac", "usfloz/acre", "m"},
    Unit{Kind::product_volume_per_area, "pt per acre", "uspint/acre", "m"},
    Unit{Kind::product_volume_per_area, "imp. fl. oz./A", "brfloz/acre", "m"},
    Unit{Kind::product_volume_per_area, "mL/1000 sq ft", "mL/(1000 ft^2)", "m"},
    Unit{Kind::product_mass_per_area, "oz wt/A", "ounce/acre", "kg/m^2"},
    Unit{Kind::ingredient_per_area, "lb a.i./ac", "lb/acre", "kg/m^2"},
    Unit{Kind::acid_strength, "lb a.e./gal", "lb/usgallon", "kg/m^3"},
    Unit{Kind::acid_strength, "g ae/L", "g/L", "kg/m^3"},
    Unit{Kind::product_volume_per_mix, "qt/100 gal", "usquart/(100 usgallon)", "1"},
    Unit{Kind::product_mass_per_mix, "lbs per 100 gallons of water", "lb/(100 usgallon)", "kg/m^3"},
    Unit{Kind::mix_per_area, "gal/ac", "usgallon/acre", "m"},
    Unit{Kind::mix_per_area, "L/ha", "L/hectare", "m"},
    Unit{Kind::percent_by_volume, "% v/v", "percent", "1"},
    Unit{Kind::speed, "mph", "mph", "m/s"},
    Unit{Kind::pressure, "psi", "psi", "Pa"},
    Unit{Kind::length, "ft", "ft", "m"},
};

struct Conversion {
    std::string ours;
    Kind kind;
    std::string gnu;
    std::string_view gnu_si;
};

std::vector<Conversion> make_conversions(std::size_t count) {
    std::vector<Conversion> made;
    made.reserve(count);
    for (std::size_t i = 0; i < count; ++i) {
        const Unit& unit = units[i % units.size()];
        const std::size_t step = i / units.size();
        const double number = 0.25 + static_cast<double>(step % 4001) * 0.0625;
        made.push_back({fmt::format("{} {}", number, unit.ours), unit.kind,
                        fmt::format("{} {}", number, unit.gnu), unit.gnu_si});
    }
    return made;
}

double seconds_since(Clock::time_point start) {
    return std::chrono::duration<double>(Clock::now() - start).count();
}

/// Feeds GNU units one batch; returns its answers, NaN where it gave none.
std::vector<double> ask_gnu_units(const std::vector<Conversion>& conversions, double& seconds) {
    std::vector<double> answers;
    std::FILE* const questions = std::tmpfile();
    if (questions == nullptr) {
        return answers;
    }
    for (const Conversion& conversion : conversions) {
        std::fputs(fmt::format("{}\n{}\n", conversion.gnu, conversion.gnu_si).c_str(), questions);
    }
    std::fflush(questions);
    const auto start = Clock::now();
    std::FILE* const pipe =
        popen(fmt::format("units --terse --digits 15 < /proc/{}/fd/{}", getpid(), fileno(questions))
                  .c_str(),
              "r");
    std::array<char, 256> line{};
    while (pipe != nullptr && std::fgets(line.data(), line.size(), pipe) != nullptr) {
        char* end = nullptr;
        const double answer = std::strtod(line.data(), &end);
        answers.push_back(end == line.data() ? std::nan("") : answer);
    }
    const bool sound = pipe != nullptr && pclose(pipe) == 0;
    seconds = seconds_since(start);
    std::fclose(questions);
    if (!sound) {
        answers.clear();
    }
    return answers;
}

/// Best of several rounds over all texts, in seconds; 0 when a text was refused.
double time_parsing(const std::vector<Conversion>& conversions, std::vector<double>& answers) {
    constexpr int rounds = 15;
    double best = 1e9;
    for (int round = 0; round < rounds; ++round) {
        const auto start = Clock::now();
        for (std::size_t i = 0; i < conversions.size(); ++i) {
            const auto parsed = parse_amount(conversions[i].ours, conversions[i].kind);
            answers[i] = parsed ? parsed->si : std::nan("");
        }
        best = std::min(best, seconds_since(start));
    }
    return best;
}

}  // namespace

int main() {
    constexpr std::size_t count = 100000;
    constexpr double tolerance = 2e-14;  // GNU units prints 15 digits
    const std::vector<Conversion> conversions = make_conversions(count);
    std::vector<double> ours(count);
    const double parsing = time_parsing(conversions, ours);

    double gnu_start_up = 0.0;
    double gnu_total = 0.0;
    (void)ask_gnu_units({conversions.front()}, gnu_start_up);
    const std::vector<double> gnu = ask_gnu_units(conversions, gnu_total);
    if (gnu.size() != count) {
        fmt::print(stderr, "GNU units gave {} answers to {} questions\n", gnu.size(), count);
        return 1;
    }
    double worst = 0.0;
    for (std::size_t i = 0; i < count; ++i) {
        const double difference = std::abs(ours[i] / gnu[i] - 1.0);
        if (!(difference <= tolerance)) {
            fmt::print(stderr, "\"{}\": {} here, {} by GNU units\n", conversions[i].ours, ours[i],
                       gnu[i]);
            return 1;
        }
        worst = std::max(worst, difference);
    }
    const double per_text = parsing / count * 1e9;
    const double gnu_per_text = (gnu_total - gnu_start_up) / count * 1e9;
    fmt::print("unit_text: {} texts in {:.4f} s, {:.0f} ns each (target 1000)\n", count, parsing,
               per_text);
    fmt::print("GNU units, one batch: {:.3f} s, {:.0f} ns each beyond its start of {:.3f} s\n",
               gnu_total, gnu_per_text, gnu_start_up);
    fmt::print("ratio {:.1f} without and {:.1f} with its start; largest difference {:.1e}\n",
               gnu_per_text / per_text, gnu_total / parsing, worst);
    return per_text <= 1000.0 ? 0 : 2;
}
