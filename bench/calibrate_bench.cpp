// How long one calibration takes from JSON text to JSON text, beside CPython 3 with its own json
// module doing the bare sum (flow over speed and width, mean of the repeats) on the same JSON. The
// rival reads no units, works out no interval and looks for no wrong shortcut; its answer and ours
// are checked against each other.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include "api/call.hpp"
#include "api/json/json.hpp"

namespace {

using Clock = std::chrono::steady_clock;

constexpr double target_microseconds = 20.0;
constexpr double true_output = 140.0 * 340.3125 / (30.0 * 113.4375);

struct Request {
    std::string_view name;
    std::string_view json;
    double output;
};

constexpr std::array requests{
    Request{"flow and speed",
            R"({"sprayer":"boomless","flow":"2.60 gal/min","course_length":"176 ft",)"
            R"("course_times":["31.5 s"],"width":"26 ft"})",
            12.99375},
    Request{"course and three catches",
            R"({"sprayer":"boomless","width":"30 ft","course_length":"113.4375 ft",)"
            R"("course_times":["19.4 s","19.2 s","19.6 s"],"catches":[{"amount":"140 fl oz"},)"
            R"({"amount":"142 fl oz"},{"amount":"138 fl oz"}]})",
            true_output},
    Request{"the same with everything asked",
            R"({"sprayer":"boomless","width":"30 ft","course_length":"113.4375 ft",)"
            R"("course_times":["19.4 s","19.2 s","19.6 s"],"catches":[{"amount":"140 fl oz"},)"
            R"({"amount":"142 fl oz"},{"amount":"138 fl oz"}],"tank_volume":"47 gal",)"
            R"("believed_output":"140 gal/ac","assumed":{"width":"26 ft","speed":"5 mph"},)"
            R"("carrier_density":"10.65 lb/gal","speed_swings":[{"speed":"2.5 mph"},)"
            R"({"speed":"5 mph"}],"working":true})",
            true_output},
};

double output_in(const std::string& json) {
    const auto answer = swathbook::api::parse_json(json);
    if (!answer || !answer->contains("output")) {
        return std::nan("");
    }
    return (*answer)["output"]["value"].get<double>();
}

/// Best of several rounds, in microseconds for one call.
double microseconds_per_call(std::string_view request) {
    constexpr int calls = 100;
    constexpr int rounds = 200;
    double best = 1e300;
    for (int round = 0; round < rounds; ++round) {
        const auto start = Clock::now();
        std::size_t bytes = 0;
        for (int i = 0; i < calls; ++i) {
            bytes += swathbook::api::call("calibrate", request).json.size();
        }
        const std::chrono::duration<double, std::micro> took = Clock::now() - start;
        best = bytes > 0 ? std::min(best, took.count() / calls) : best;
    }
    return best;
}

std::string output_of_command(const std::string& command) {
    std::string text;
    std::FILE* const pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return text;
    }
    std::array<char, 512> piece{};
    while (std::fgets(piece.data(), piece.size(), pipe) != nullptr) {
        text += piece.data();
    }
    pclose(pipe);
    return text;
}

struct Rival {
    double microseconds = std::nan("");
    double output = std::nan("");
};

Rival ask_python() {
    const std::string setup =
        "import json, statistics as s; q = json.dumps({\"width_ft\": 30, \"length_ft\": 113.4375, "
        "\"times_s\": [19.4, 19.2, 19.6], \"catches_fl_oz\": [140, 142, 138]})\n"
        "def f(q):\n"
        " r = json.loads(q); t = s.fmean(r[\"times_s\"]); flow = s.fmean(r[\"catches_fl_oz\"]) / t "
        "* 60 / 128\n"
        " mph = r[\"length_ft\"] / t * 3600 / 5280\n"
        " return json.dumps({\"output\": 495 * flow / (mph * r[\"width_ft\"])})\n";
    Rival rival;
    rival.output =
        std::strtod(output_of_command("python3 -c '" + setup +
                                      "\nprint(json.loads(f(q))[\"output\"])' 2>/dev/null")
                        .c_str(),
                    nullptr);
    const std::string timed =
        output_of_command("python3 -m timeit -u usec -s '" + setup + "' 'f(q)' 2>/dev/null");
    const auto colon = timed.find(": ");
    if (colon != std::string::npos) {
        rival.microseconds = std::strtod(timed.c_str() + colon + 2, nullptr);
    }
    return rival;
}

bool close(double a, double b) {
    return std::fabs(a / b - 1.0) < 1e-9;
}

}  // namespace

int main() {
    bool good = true;
    std::vector<double> times;
    for (const Request& request : requests) {
        const double answered = output_in(swathbook::api::call("calibrate", request.json).json);
        const double took = microseconds_per_call(request.json);
        times.push_back(took);
        const bool plain = &request != &requests.back();
        std::printf("calibrate, %-31.*s %7.2f us JSON to JSON, output %.6g gal/ac%s\n",
                    static_cast<int>(request.name.size()), request.name.data(), took, answered,
                    plain && took > target_microseconds ? "  ABOVE 20 us" : "");
        good = good && close(answered, request.output) && (!plain || took <= target_microseconds);
    }
    const Rival rival = ask_python();
    std::printf("%-42s %7.2f us JSON to JSON, output %.6g gal/ac\n",
                "CPython json, the bare sum of the second", rival.microseconds, rival.output);
    // The rival reads no units, gives no interval, no error budget, no findings and no working.
    std::printf("ratio, CPython's bare sum over the whole second answer: %.2f\n",
                rival.microseconds / times[1]);
    if (!std::isnan(rival.microseconds) && !close(rival.output, true_output)) {
        std::puts("the two answers differ");
        good = false;
    }
    return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
